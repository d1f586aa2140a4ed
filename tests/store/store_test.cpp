#include "store/store.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <numeric>

#include "store/workbench.hpp"

using namespace samebase;
using namespace samebase::tests;
using kitchen::At;
using kitchen::Change;
using store::Mode;
using store::Store;

namespace {

const LedgerWorld& world = ledger_world();
const basics::Day today = day("2026-11-25");

template <class Compute>
store::Done carry(Store& store, Compute compute) {
    return expect(
        store::carry_out(store, world.knowledge, world.household, today,
                         [&](const At& at, const store::State&) -> basics::Result<Change> { return compute(at); }));
}

store::Done get(Store& store, const char* what, std::int64_t packs, const char* where) {
    kitchen::Got got{
        world.ingredient(what), {{}, packs * 1000, {}}, world.place(where), {}, {}, basics::Money{900}, {}, "n"};
    return carry(store, [&](const At& at) { return kitchen::got(at, {{got}}); });
}

/// With 300 g of peas in place of its mince, and without its onion.
std::vector<kitchen::LineSwap> swaps() {
    return {{world.ingredient("beef-mince"), {{world.ingredient("peas"), 300'000}}, 4'000},
            {world.ingredient("onion"), {}, 4'000}};
}

store::Done plan(Store& store, const char* dish, const std::vector<kitchen::LineSwap>& with = {}) {
    return carry(store, [&](const At& at) {
        return kitchen::set_meal(at, {today, kitchen::Meal::dinner, world.dish(dish), false, 3, 1, with});
    });
}

void undo(Store& store) {
    const auto command = expect(store.to_undo());
    REQUIRE(command);
    REQUIRE_FALSE(expect(store.undo(command->number, today)).stale);
}

/// What SQLite says to a statement that somebody runs on the file.
std::string said(const std::filesystem::path& file, const std::string& sql) {
    try {
        SQLite::Database(file.string(), SQLite::OPEN_READWRITE).exec(sql);
    } catch (const SQLite::Exception& error) {
        return error.what();
    }
    return "done";
}

}  // namespace

namespace {

/// Whether this process holds a lock on the file, as another process sees it.
bool locked(const std::filesystem::path& file) {
    const pid_t child = ::fork();
    if (child == 0) {
        struct flock asked {};
        asked.l_type = F_WRLCK;
        asked.l_whence = SEEK_SET;
        const int opened = ::open(file.c_str(), O_RDWR | O_CLOEXEC);
        const bool told = opened >= 0 && ::fcntl(opened, F_GETLK, &asked) == 0;
        ::_exit(told && asked.l_type != F_UNLCK ? 1 : 0);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    return WIFEXITED(status) && WEXITSTATUS(status) == 1;
}

}  // namespace

TEST_CASE("a store that is opened beside another one of the process leaves that its locks") {
    const Folder folder;
    Store open = expect(Store::open(folder.file(), Mode::write));
    static_cast<void>(expect(open.revision()));
    REQUIRE(locked(folder.file()));
    for (const Mode mode : {Mode::read, Mode::write}) {
        static_cast<void>(expect(Store::open(folder.file(), mode)));
        CHECK(locked(folder.file()));
    }
}

TEST_CASE("a new ledger is empty and sound") {
    const Folder folder;
    Store store = open(folder.file());
    const store::State state = state_of(store);
    CHECK(state.revision == 0);
    CHECK(state.lots.empty());
    CHECK_FALSE(expect(store.to_undo()));
    CHECK(expect(store.check()).entries == 0);
    CHECK(expect(store.export_all()) == store::Document{});
}

TEST_CASE("what is written is read back as the change left it") {
    const Folder folder;
    Store store = open(folder.file());
    kitchen::Kitchen kitchen = world.empty();
    for (const auto& done : {get(store, "beef-mince", 14, "far-freezer"), get(store, "peas", 2, "near-freezer"),
                             plan(store, "omelette")}) {
        kitchen::apply(kitchen, done.change);
    }
    Store again = open(folder.file(), Mode::read);
    const store::State state = state_of(again);
    CHECK(state.revision == 3);
    CHECK(state.next_lot == 3);
    CHECK(state.lots == kitchen.lots);
    CHECK(state.plan == kitchen.plan);
    CHECK(state.facts.size() == 2);
    CHECK(store::kitchen_of(world.knowledge, world.household, state).household.prices.size() == 2);
}

TEST_CASE("a planned meal keeps what is cooked in place of what, and undo brings back how it was") {
    const Folder folder;
    Store store = open(folder.file());
    plan(store, "meat-loaf", swaps());
    CHECK(state_of(store).plan.front().swaps == swaps());
    carry(store, [&](const At& at) -> basics::Result<Change> {
        return kitchen::set_swaps(at, at.kitchen.plan.front(), {swaps().back()});
    });
    CHECK(state_of(store).plan.front().swaps == std::vector{swaps().back()});
    CHECK(expect(store.check()).commands == 2);
    undo(store);
    REQUIRE(state_of(store).plan.size() == 1);
    CHECK(state_of(store).plan.front().swaps == swaps());
}

TEST_CASE("a lot keeps the allergens of what went into it, and so does its document") {
    const Folder folder;
    Store store = open(folder.file());
    kitchen::Cooked what;
    what.dish = world.dish("meat-loaf");
    what.serves = 5'000;
    what.leftovers = world.place("fridge");
    what.swaps = {{world.ingredient("onion"), {{world.ingredient("milk"), 100'000}}, 5'000}};
    carry(store, [&](const At& at) { return kitchen::cooked(at, what); });
    catalogue::AllergenSet milk;
    milk.add(catalogue::Allergen::milk);
    CHECK(state_of(store).lots.back().also == milk);
    CHECK(expect(store.export_all()).lots.back().also == std::vector<std::string>{"milk"});
    CHECK(said(folder.file(), "UPDATE lot SET also = '' WHERE also <> ''") == "a lot changes by entries only");
    expect(store.check());
}

TEST_CASE("a change that was computed from an older state is not written") {
    const Folder folder;
    Store store = open(folder.file());
    const store::State old = state_of(store);
    get(store, "peas", 1, "near-freezer");
    kitchen::Kitchen kitchen = world.empty();
    const Change change = expect(kitchen::out({kitchen, today, 1}, world.ingredient("oil"), true));
    const auto written = expect(store.write(change, *world.knowledge, world.household, old.revision));
    CHECK(written.stale);
    CHECK(expect(store.revision()) == 1);
}

TEST_CASE("a change that changes nothing leaves no command behind") {
    const Folder folder;
    Store store = open(folder.file());
    const auto out = [&](const At& at) { return kitchen::out(at, world.ingredient("oil"), true); };
    CHECK(carry(store, out).written.command == 1);
    CHECK(carry(store, out).written.command == 0);
    CHECK(expect(store.revision()) == 1);
}

TEST_CASE("undo takes back the last command, then the one before, the plan too") {
    const Folder folder;
    Store store = open(folder.file());
    get(store, "peas", 2, "near-freezer");
    plan(store, "meat-loaf");
    plan(store, "omelette");
    carry(store, [&](const At& at) { return kitchen::out(at, world.ingredient("oil"), true); });
    undo(store);
    CHECK(state_of(store).facts.size() == 1);
    undo(store);
    CHECK(state_of(store).plan.front().dish == world.dish("meat-loaf"));
    get(store, "rice", 1, "pantry");
    CHECK(expect(store.to_undo())->name == "got");
    undo(store);
    undo(store);
    undo(store);
    const store::State state = state_of(store);
    CHECK(state.lots.empty());
    CHECK(state.plan.empty());
    CHECK(state.facts.empty());
    CHECK(state.next_lot == 3);  // numbers of lots are never given again
    CHECK_FALSE(expect(store.to_undo()));
    CHECK(expect(store.check()).commands == 10);
    const auto log = expect(store.log(3));
    REQUIRE(log.size() == 3);
    CHECK(log[0].command.line == "undid: got 2 packs (2 kg) peas into near-freezer, best by 2027-07-23");
    CHECK(log[0].command.undoes == 1);
}

TEST_CASE("an undo that is no longer the last is stale") {
    const Folder folder;
    Store store = open(folder.file());
    get(store, "peas", 2, "near-freezer");
    get(store, "rice", 2, "pantry");
    CHECK(expect(store.undo(1, today)).stale);
    CHECK(expect(store.revision()) == 2);
}

TEST_CASE("movements hold the identity for every ingredient and place") {
    const Folder folder;
    Store store = open(folder.file());
    get(store, "beef-mince", 14, "far-freezer");
    kitchen::Item item{{{}, world.ingredient("beef-mince"), {}, {}}, {{}, 4000, {}}, {}};
    carry(store, [&](const At& at) { return kitchen::moved(at, {{item}}, world.place("near-freezer"), {}); });
    const auto rows = expect(store.movements({today, today}));
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].place == "far-freezer");
    CHECK(rows[0].sums == stock::Movements{0, 7'000'000, 0, 0, 0, 0, 0, 2'000'000, 5'000'000});
    CHECK(rows[1].sums == stock::Movements{0, 0, 2'000'000, 0, 0, 0, 0, 0, 2'000'000});
    const auto later = expect(store.movements({today + basics::days{1}, today + basics::days{9}}));
    CHECK(later[0].sums == stock::Movements{5'000'000, 0, 0, 0, 0, 0, 0, 0, 5'000'000});
    CHECK(expect(store.movements({today - basics::days{9}, today - basics::days{1}})).empty());
}

TEST_CASE("entries and lots cannot be changed or deleted, and no lot goes below nothing") {
    const Folder folder;
    {
        Store store = open(folder.file());
        get(store, "peas", 2, "near-freezer");
        plan(store, "omelette");
    }
    const auto file = folder.file();
    CHECK(said(file, "UPDATE entry SET delta = 1") == "an entry is never changed");
    CHECK(said(file, "DELETE FROM entry") == "an entry is never deleted");
    CHECK(said(file, "UPDATE command SET line = ''") == "a command is never changed");
    CHECK(said(file, "DELETE FROM command") == "a command is never deleted");
    CHECK(said(file, "UPDATE lot SET amount = 5") == "a lot changes by entries only");
    CHECK(said(file, "DELETE FROM lot") == "a lot is never deleted");
    CHECK(said(file, "UPDATE plan_edit SET adds = 0") == "the past is never changed");
    CHECK(said(file, "DELETE FROM history_edit") == "done");  // there is none yet
    CHECK(said(file, "DELETE FROM fact_edit") == "the past is never deleted");
    const std::string columns =
        "(number, command, kind, counts_as, day, lot, at_place, delta, reason, place, amount, packs, part_of, state, "
        "since, "
        "paid_for, note) VALUES ";
    CHECK(said(file, "INSERT INTO entry " + columns +
                         "(2, 1, 'eaten', 'used', 0, 1, 'x', -2000001, '', 'x', -1, '', 0, 'fresh', 0, 0, '')") ==
          "a lot never goes below nothing");
    CHECK(said(file, "INSERT INTO entry " + columns +
                         "(2, 1, 'eaten', 'used', 0, 1, 'x', -1, '', 'x', 7, '', 0, 'fresh', 0, 0, '')") ==
          "a lot is the sum of its entries");
    CHECK(said(file, "INSERT OR REPLACE INTO entry " + columns +
                         "(1, 1, 'eaten', 'used', 0, 1, 'x', -1, '', 'x', 1999999, '', 0, 'fresh', 0, 0, '')") ==
          "entries are numbered in order");
    CHECK(said(file, "INSERT INTO entry " + columns +
                         "(2, 1, 'eaten', 'used', 0, 1, 'x', 'much', '', 'x', 7, '', 0, 'fresh', 0, 0, '')") !=
          "done");  // STRICT
}

TEST_CASE("check finds what was changed behind the ledger's back") {
    const auto tampered = [](const std::string& sql) {
        const Folder folder;
        {
            Store store = open(folder.file());
            get(store, "peas", 2, "near-freezer");
            plan(store, "meat-loaf", swaps());
        }
        REQUIRE(said(folder.file(), sql) == "done");
        Store store = open(folder.file());
        std::string text = problem_of(store.check());
        return text.substr(text.find("kitchen.db") + 10);
    };
    const std::string restore =
        "; restore a backup: keep this file under another name, then copy the backup to its place";
    CHECK(tampered("DROP TRIGGER entry_stays; UPDATE entry SET day = day + 1") ==
          ", command 1: does not match its seal; expected rows as they were written" + restore);
    CHECK(tampered("DROP TRIGGER command_stays; UPDATE command SET line = 'nothing happened' WHERE number = 2") ==
          ", command 2: does not match its seal; expected rows as they were written" + restore);
    CHECK(tampered("DROP TRIGGER lot_stays; UPDATE lot SET amount = amount + 1") ==
          ", lot 1: is not as its last entry says; expected the sum of its entries" + restore);
    CHECK(tampered("DELETE FROM plan") ==
          ", the plan: is not what its edits make; expected the sum of its edits" + restore);
    CHECK(tampered("UPDATE plan SET swaps = 'onion/4000='") ==
          ", the plan: is not what its edits make; expected the sum of its edits" + restore);
    CHECK_THAT(tampered("UPDATE plan SET swaps = 'onion/none='"), Catch::Contains("'onion/none=' has no meaning"));
    CHECK(tampered("UPDATE fact SET minor = 1") ==
          ", the household's facts: is not what its edits make; expected the sum of its edits" + restore);
}

TEST_CASE("a document that is exported, imported and exported again is the same") {
    const Folder folder;
    const Folder other("die Küche, 2. Stock");
    Store store = open(folder.file());
    for (std::uint64_t seed = 0; seed < 120; ++seed) run(store, today + basics::days{seed / 8}, seed);
    undo(store);
    const store::Document document = expect(store.export_all());
    REQUIRE(document.entries.size() > 100);
    Store copy = open(other.file());
    expect(copy.import_all(document));
    CHECK(expect(copy.export_all()) == document);
    CHECK(expect(copy.check()).entries == static_cast<std::int64_t>(document.entries.size()));
    CHECK(state_of(copy).lots == state_of(store).lots);
    const std::string refused = problem_of(copy.import_all(document));
    CHECK(refused.find("holds a ledger already; expected an empty kitchen") != std::string::npos);
}

TEST_CASE("a document that does not add up is not imported") {
    const Folder folder;
    const Folder other;
    Store store = open(folder.file());
    get(store, "peas", 2, "near-freezer");
    get(store, "rice", 2, "pantry");
    const store::Document good = expect(store.export_all());
    Store copy = open(other.file());
    store::Document bad = good;
    bad.entries[1].after.amount += 1;
    CHECK(problem_of(copy.import_all(bad)).find("it does not add up: a lot is the sum of its entries") !=
          std::string::npos);
    bad = good;
    bad.entries[1].command = 7;
    CHECK(problem_of(copy.import_all(bad)).find("some rows belong to no command") != std::string::npos);
    bad = good;
    bad.commands[1].number = 5;
    CHECK(problem_of(copy.import_all(bad)).find("commands are numbered in order") != std::string::npos);
    CHECK(expect(copy.export_all()) == store::Document{});
}

TEST_CASE("a backup is a kitchen database of its own") {
    const Folder folder;
    Store store = open(folder.file());
    get(store, "peas", 2, "near-freezer");
    const auto copy = folder.path() / "saved here.db";
    expect(store.backup(copy));
    get(store, "rice", 2, "pantry");
    Store saved = open(copy, Mode::read);
    CHECK(expect(saved.check()).commands == 1);
    CHECK(problem_of(store.backup(copy)).find("is there already; expected a new file") != std::string::npos);
    CHECK(problem_of(store.backup(folder.path() / "nowhere" / "x.db")).find("cannot be opened") != std::string::npos);
}

TEST_CASE("paths with spaces and letters of every sort") {
    for (const char* name : {"a kitchen", "Küche №1", "厨房", "100% 'own' \"food\"", "?query#part"}) {
        const Folder folder(name);
        {
            Store store = open(folder.file());
            get(store, "peas", 2, "near-freezer");
        }
        Store store = open(folder.file(), Mode::read);
        CHECK(state_of(store).lots.size() == 1);
    }
}

TEST_CASE("what no longer exists: a dish of the past is left out and named, a lot's ingredient is a problem") {
    const Folder folder;
    Store store = open(folder.file());
    store::Document document;
    document.commands.push_back({1, today, "remember", "past menus", {}});
    document.history.push_back({1, 1, true, today, kitchen::Meal::dinner, "forgotten-stew"});
    document.history.push_back({2, 1, true, today, kitchen::Meal::dinner, "omelette"});
    document.lots.push_back({1, "moon-cheese", {}, today, measure::Dimension::mass});
    store::EntryRow entry;
    entry.number = entry.command = entry.lot = 1;
    entry.column = stock::Column::in;
    entry.place = entry.after.place = "fridge";
    entry.delta = entry.after.amount = 5;
    document.entries.push_back(entry);
    expect(store.import_all(document));
    CHECK(problem_of(store.read(*world.knowledge, world.household))
              .find("kitchen.db, lot 1: 'moon-cheese' is not an ingredient") != std::string::npos);
    entry.number = 2;
    entry.command = 2;
    entry.kind = stock::Kind::tossed;
    entry.column = stock::Column::tossed;
    entry.delta = -5;
    entry.after.amount = 0;
    document.commands.push_back({2, today, "tossed", "moon cheese", {}});
    document.entries.push_back(entry);
    const Folder other;
    Store emptied = open(other.file());
    expect(emptied.import_all(document));
    const store::State state = state_of(emptied);
    CHECK(state.history.size() == 1);
    CHECK(state.forgotten == std::vector<std::string>{"forgotten-stew"});
}

TEST_CASE("a kitchen that was never written to reads as empty, and reading leaves no file") {
    const Folder folder;
    Store store = open(folder.file(), Mode::read);
    CHECK(state_of(store).lots.empty());
    CHECK_FALSE(std::filesystem::exists(folder.file()));
}

TEST_CASE("a folder that is not there is a problem") {
    const Folder folder;
    CHECK(
        problem_of(Store::open(folder.path() / "none" / "kitchen.db", Mode::write)).find("its folder does not exist") !=
        std::string::npos);
}

TEST_CASE("a kitchen in a folder that cannot be written is read") {
    const Folder folder("read only, ja");
    {
        Store store = open(folder.file());
        get(store, "peas", 2, "near-freezer");
    }
    std::filesystem::permissions(folder.file(), std::filesystem::perms{0444});
    std::filesystem::permissions(folder.path(), std::filesystem::perms{0555});
    std::filesystem::permissions(folder.path().parent_path(), std::filesystem::perms{0755});
    const pid_t child = ::fork();
    if (child == 0) {  // as somebody who is not root: root may write everywhere
        if (::getuid() == 0 && ::setuid(65534) != 0) ::_exit(2);
        auto store = Store::open(folder.file(), Mode::read);
        if (!store) ::_exit(3);
        const auto state = store->read(*world.knowledge, world.household);
        if (!state || state->lots.size() != 1) ::_exit(4);
        if (Store::open(folder.file(), Mode::write)) {
            auto writing = Store::open(folder.file(), Mode::write);
            kitchen::Kitchen kitchen = world.empty();
            const auto change = kitchen::out({kitchen, today, 2}, world.ingredient("oil"), true);
            if (writing->write(*change, *world.knowledge, world.household, 1)) ::_exit(5);
        }
        ::_exit(0);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(WEXITSTATUS(status) == 0);
}
