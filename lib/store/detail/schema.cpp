#include "store/detail/schema.hpp"

#include <array>

namespace samebase::store::detail {

namespace {

// Days are whole days since 1970-01-01. Amounts are milligrams, microlitres or thousandths of a piece; money is in the
// smallest unit of the currency. `lot`, `plan`, `history`, `fact` and `list` hold the present; they follow from the
// other tables, by triggers, and `check` computes them again.
constexpr std::string_view version_1 = R"sql(
CREATE TABLE command (
    number INTEGER PRIMARY KEY,
    day INTEGER NOT NULL CHECK (day BETWEEN -719162 AND 2932896),
    name TEXT NOT NULL CHECK (name <> ''),
    line TEXT NOT NULL,
    undoes INTEGER UNIQUE REFERENCES command (number) CHECK (undoes < number),
    seal INTEGER NOT NULL
) STRICT;

CREATE TABLE lot (
    number INTEGER PRIMARY KEY CHECK (number > 0),
    ingredient TEXT NOT NULL CHECK (ingredient <> ''),
    dish TEXT,
    arrived INTEGER NOT NULL,
    dimension TEXT NOT NULL CHECK (dimension IN ('mass', 'volume', 'pieces')),
    last_entry INTEGER,
    place TEXT NOT NULL DEFAULT '',
    amount INTEGER NOT NULL DEFAULT 0 CHECK (amount >= 0),
    rough TEXT,
    packs TEXT NOT NULL DEFAULT '',
    part_of INTEGER NOT NULL DEFAULT 0,
    state TEXT NOT NULL DEFAULT 'fresh',
    since INTEGER NOT NULL DEFAULT 0,
    opened_on INTEGER,
    thaw TEXT,
    thawed_on INTEGER,
    printed_use_by INTEGER,
    use_by INTEGER,
    best_by INTEGER,
    paid INTEGER,
    paid_for INTEGER NOT NULL DEFAULT 0,
    note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX lot_there ON lot (number) WHERE amount > 0 OR rough IS NOT NULL;

CREATE TABLE entry (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    kind TEXT NOT NULL CHECK (kind IN ('got', 'moved', 'thawing', 'opened', 'cooked', 'eaten', 'tossed', 'found', 'lost',
                                       'undone')),
    counts_as TEXT NOT NULL CHECK (counts_as IN ('none', 'in', 'moved-in', 'found', 'used', 'tossed', 'lost', 'moved-out')),
    day INTEGER NOT NULL,
    lot INTEGER NOT NULL REFERENCES lot (number),
    at_place TEXT NOT NULL CHECK (at_place <> ''),
    delta INTEGER NOT NULL,
    reason TEXT NOT NULL,
    undoes INTEGER UNIQUE REFERENCES entry (number) CHECK (undoes < number),
    place TEXT NOT NULL CHECK (place <> ''),
    amount INTEGER NOT NULL CHECK (amount >= 0),
    rough TEXT CHECK (rough IN ('some', 'low', 'lots')),
    packs TEXT NOT NULL,
    part_of INTEGER NOT NULL CHECK (part_of >= 0),
    state TEXT NOT NULL CHECK (state IN ('fresh', 'frozen', 'thawing', 'thawed')),
    since INTEGER NOT NULL,
    opened_on INTEGER,
    thaw TEXT CHECK (thaw IN ('fridge', 'cold-water', 'microwave')),
    thawed_on INTEGER,
    printed_use_by INTEGER,
    use_by INTEGER,
    best_by INTEGER,
    paid INTEGER,
    paid_for INTEGER NOT NULL CHECK (paid_for >= 0),
    note TEXT NOT NULL,
    CHECK (rough IS NULL OR amount = 0),
    CHECK (counts_as <> 'none' OR delta = 0),
    CHECK ((kind = 'undone') = (undoes IS NOT NULL)),
    CHECK (kind = 'undone' OR delta = 0 OR (delta > 0) = (counts_as IN ('in', 'moved-in', 'found')))
) STRICT;
CREATE INDEX entry_lot ON entry (lot, number);
CREATE INDEX entry_command ON entry (command);

CREATE TABLE plan_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    day INTEGER NOT NULL CHECK (day BETWEEN -719162 AND 2932896),
    meal TEXT NOT NULL CHECK (meal IN ('lunch', 'dinner')),
    dish TEXT NOT NULL CHECK (dish <> ''),
    ready_meal INTEGER NOT NULL CHECK (ready_meal IN (0, 1)),
    serves INTEGER CHECK (serves > 0),
    extra INTEGER NOT NULL CHECK (extra >= 0)
) STRICT;
CREATE INDEX plan_edit_command ON plan_edit (command);
CREATE TABLE plan (
    day INTEGER NOT NULL,
    meal TEXT NOT NULL,
    dish TEXT NOT NULL,
    ready_meal INTEGER NOT NULL,
    serves INTEGER,
    extra INTEGER NOT NULL,
    PRIMARY KEY (day, meal, dish)
) STRICT, WITHOUT ROWID;

CREATE TABLE history_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    day INTEGER NOT NULL CHECK (day BETWEEN -719162 AND 2932896),
    meal TEXT NOT NULL CHECK (meal IN ('lunch', 'dinner')),
    dish TEXT NOT NULL CHECK (dish <> '')
) STRICT;
CREATE INDEX history_edit_command ON history_edit (command);
CREATE TABLE history (
    day INTEGER NOT NULL,
    meal TEXT NOT NULL,
    dish TEXT NOT NULL,
    PRIMARY KEY (day, meal, dish)
) STRICT, WITHOUT ROWID;

CREATE TABLE fact_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    kind TEXT NOT NULL CHECK (kind IN ('out', 'pack', 'price')),
    ingredient TEXT NOT NULL CHECK (ingredient <> ''),
    amount INTEGER NOT NULL CHECK (amount >= 0),
    minor INTEGER NOT NULL
) STRICT;
CREATE INDEX fact_edit_command ON fact_edit (command);
CREATE TABLE fact (
    kind TEXT NOT NULL,
    ingredient TEXT NOT NULL,
    amount INTEGER NOT NULL,
    minor INTEGER NOT NULL,
    PRIMARY KEY (kind, ingredient)
) STRICT, WITHOUT ROWID;

-- What is written stays, and the next row comes after the last.
CREATE TRIGGER command_stays BEFORE UPDATE ON command BEGIN SELECT RAISE(ABORT, 'a command is never changed'); END;
CREATE TRIGGER command_kept BEFORE DELETE ON command BEGIN SELECT RAISE(ABORT, 'a command is never deleted'); END;
CREATE TRIGGER command_next BEFORE INSERT ON command
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM command)
BEGIN SELECT RAISE(ABORT, 'commands are numbered in order'); END;
CREATE TRIGGER command_undone BEFORE INSERT ON command
WHEN (SELECT undoes FROM command WHERE number = NEW.undoes) IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an undo is not undone'); END;

CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entry_kept BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never deleted'); END;
CREATE TRIGGER entry_next BEFORE INSERT ON entry
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM entry)
BEGIN SELECT RAISE(ABORT, 'entries are numbered in order'); END;
CREATE TRIGGER entry_above_nothing BEFORE INSERT ON entry
WHEN (SELECT amount FROM lot WHERE number = NEW.lot) + NEW.delta < 0
BEGIN SELECT RAISE(ABORT, 'a lot never goes below nothing'); END;
CREATE TRIGGER entry_follows BEFORE INSERT ON entry
WHEN NEW.amount IS NOT (SELECT amount FROM lot WHERE number = NEW.lot) + NEW.delta
BEGIN SELECT RAISE(ABORT, 'a lot is the sum of its entries'); END;
CREATE TRIGGER entry_lands AFTER INSERT ON entry BEGIN
    UPDATE lot SET last_entry = NEW.number, place = NEW.place, amount = NEW.amount, rough = NEW.rough, packs = NEW.packs,
        part_of = NEW.part_of, state = NEW.state, since = NEW.since, opened_on = NEW.opened_on, thaw = NEW.thaw,
        thawed_on = NEW.thawed_on, printed_use_by = NEW.printed_use_by, use_by = NEW.use_by, best_by = NEW.best_by,
        paid = NEW.paid, paid_for = NEW.paid_for, note = NEW.note
    WHERE number = NEW.lot;
END;

CREATE TRIGGER lot_next BEFORE INSERT ON lot
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM lot) OR NEW.amount <> 0 OR NEW.last_entry IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a lot begins with nothing, and lots are numbered in order'); END;
CREATE TRIGGER lot_stays BEFORE UPDATE ON lot
WHEN NEW.number <> OLD.number OR NEW.ingredient <> OLD.ingredient OR NEW.dish IS NOT OLD.dish OR NEW.arrived <> OLD.arrived
    OR NEW.dimension <> OLD.dimension OR NEW.last_entry IS OLD.last_entry
BEGIN SELECT RAISE(ABORT, 'a lot changes by entries only'); END;
CREATE TRIGGER lot_kept BEFORE DELETE ON lot BEGIN SELECT RAISE(ABORT, 'a lot is never deleted'); END;

CREATE TRIGGER plan_edit_stays BEFORE UPDATE ON plan_edit BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER plan_edit_kept BEFORE DELETE ON plan_edit BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER plan_edit_next BEFORE INSERT ON plan_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM plan_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE TRIGGER plan_edit_follows BEFORE INSERT ON plan_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM plan WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish AND
    ready_meal = NEW.ready_meal AND serves IS NEW.serves AND extra = NEW.extra)
BEGIN SELECT RAISE(ABORT, 'what leaves the plan is in it'); END;
CREATE TRIGGER plan_edit_adds AFTER INSERT ON plan_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO plan VALUES (NEW.day, NEW.meal, NEW.dish, NEW.ready_meal, NEW.serves, NEW.extra);
END;
CREATE TRIGGER plan_edit_takes AFTER INSERT ON plan_edit WHEN NEW.adds = 0 BEGIN
    DELETE FROM plan WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish;
END;

CREATE TRIGGER history_edit_stays BEFORE UPDATE ON history_edit BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER history_edit_kept BEFORE DELETE ON history_edit BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER history_edit_next BEFORE INSERT ON history_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM history_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE TRIGGER history_edit_follows BEFORE INSERT ON history_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM history WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish)
BEGIN SELECT RAISE(ABORT, 'what leaves the history is in it'); END;
CREATE TRIGGER history_edit_adds AFTER INSERT ON history_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO history VALUES (NEW.day, NEW.meal, NEW.dish);
END;
CREATE TRIGGER history_edit_takes AFTER INSERT ON history_edit WHEN NEW.adds = 0 BEGIN
    DELETE FROM history WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish;
END;

CREATE TRIGGER fact_edit_stays BEFORE UPDATE ON fact_edit BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER fact_edit_kept BEFORE DELETE ON fact_edit BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER fact_edit_next BEFORE INSERT ON fact_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM fact_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE TRIGGER fact_edit_follows BEFORE INSERT ON fact_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM fact WHERE kind = NEW.kind AND ingredient = NEW.ingredient AND
    amount = NEW.amount AND minor = NEW.minor)
BEGIN SELECT RAISE(ABORT, 'what no longer holds did hold'); END;
CREATE TRIGGER fact_edit_adds AFTER INSERT ON fact_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO fact VALUES (NEW.kind, NEW.ingredient, NEW.amount, NEW.minor);
END;
CREATE TRIGGER fact_edit_takes AFTER INSERT ON fact_edit WHEN NEW.adds = 0 BEGIN
    DELETE FROM fact WHERE kind = NEW.kind AND ingredient = NEW.ingredient;
END;
)sql";

// A planned meal can hold what is cooked in place of what its dish asks for: see write_swaps(). A lot can hold
// allergens that its dish does not name.
constexpr std::string_view version_2 = R"sql(
ALTER TABLE lot ADD COLUMN also TEXT NOT NULL DEFAULT '';
DROP TRIGGER lot_stays;
CREATE TRIGGER lot_stays BEFORE UPDATE ON lot
WHEN NEW.number <> OLD.number OR NEW.ingredient <> OLD.ingredient OR NEW.dish IS NOT OLD.dish OR NEW.arrived <> OLD.arrived
    OR NEW.dimension <> OLD.dimension OR NEW.also <> OLD.also OR NEW.last_entry IS OLD.last_entry
BEGIN SELECT RAISE(ABORT, 'a lot changes by entries only'); END;
ALTER TABLE plan_edit ADD COLUMN swaps TEXT NOT NULL DEFAULT '';
ALTER TABLE plan ADD COLUMN swaps TEXT NOT NULL DEFAULT '';
DROP TRIGGER plan_edit_follows;
CREATE TRIGGER plan_edit_follows BEFORE INSERT ON plan_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM plan WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish AND
    ready_meal = NEW.ready_meal AND serves IS NEW.serves AND extra = NEW.extra AND swaps = NEW.swaps)
BEGIN SELECT RAISE(ABORT, 'what leaves the plan is in it'); END;
DROP TRIGGER plan_edit_adds;
CREATE TRIGGER plan_edit_adds AFTER INSERT ON plan_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO plan VALUES (NEW.day, NEW.meal, NEW.dish, NEW.ready_meal, NEW.serves, NEW.extra, NEW.swaps);
END;
)sql";

// A command can change documents of the kitchen's folder; `landing` has those that may not be in their place yet.
constexpr std::string_view version_3 = R"sql(
CREATE TABLE document_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    path TEXT NOT NULL CHECK (path <> ''),
    was TEXT,
    becomes TEXT
) STRICT;
CREATE INDEX document_edit_command ON document_edit (command);
CREATE TABLE landing (number INTEGER PRIMARY KEY REFERENCES document_edit (number)) STRICT;
CREATE TRIGGER document_edit_stays BEFORE UPDATE ON document_edit
BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER document_edit_kept BEFORE DELETE ON document_edit
BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER document_edit_next BEFORE INSERT ON document_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM document_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE INDEX entry_got ON entry (day) WHERE kind = 'got';
)sql";

// What somebody put on the shopping list by hand.
constexpr std::string_view version_4 = R"sql(
CREATE TABLE list_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    words TEXT NOT NULL CHECK (words <> ''),
    ingredient TEXT CHECK (ingredient <> ''),
    count INTEGER NOT NULL CHECK (count >= 0)
) STRICT;
CREATE INDEX list_edit_command ON list_edit (command);
CREATE TABLE list (
    words TEXT NOT NULL PRIMARY KEY,
    ingredient TEXT,
    count INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TRIGGER list_edit_stays BEFORE UPDATE ON list_edit BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER list_edit_kept BEFORE DELETE ON list_edit BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER list_edit_next BEFORE INSERT ON list_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM list_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE TRIGGER list_edit_follows BEFORE INSERT ON list_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM list WHERE words = NEW.words AND ingredient IS NEW.ingredient AND
    count = NEW.count)
BEGIN SELECT RAISE(ABORT, 'what leaves the list is on it'); END;
CREATE TRIGGER list_edit_adds AFTER INSERT ON list_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO list VALUES (NEW.words, NEW.ingredient, NEW.count);
END;
CREATE TRIGGER list_edit_takes AFTER INSERT ON list_edit WHEN NEW.adds = 0 BEGIN
    DELETE FROM list WHERE words = NEW.words;
END;
)sql";

constexpr std::array<std::string_view, 4> all{version_1, version_2, version_3, version_4};

}  // namespace

std::span<const std::string_view> migrations() {
    return all;
}

}  // namespace samebase::store::detail
