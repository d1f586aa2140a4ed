#include "store/store.hpp"

#include <SQLiteCpp/Backup.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <functional>
#include <limits>
#include <map>
#include <set>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "kitchen/begin.hpp"
#include "kitchen/standing.hpp"
#include "store/detail/database.hpp"
#include "store/detail/edits.hpp"
#include "store/detail/names.hpp"
#include "store/detail/soundness.hpp"
#include "store/detail/tables.hpp"

namespace samebase::store {

namespace fs = std::filesystem;
using detail::guarded;
using detail::Names;
using detail::Reader;
using detail::Table;

struct Store::Open {
    std::unique_ptr<SQLite::Database> db;
    std::string file;
    std::int64_t documents;  ///< the newest document edit that this one knows
};

namespace {

Revision newest(SQLite::Database& db) {
    return db.execAndGet("SELECT ifnull(max(number), 0) FROM command").getInt64();
}

std::int64_t newest_document(SQLite::Database& db) {
    return db.execAndGet("SELECT ifnull(max(number), 0) FROM document_edit").getInt64();
}

/// The last day on which bought things came in, whatever command said so, and nobody undid it. What a ledger begins
/// with was not bought then.
std::optional<basics::Day> shopped_on(SQLite::Database& db) {
    SQLite::Statement query(db,
                            fmt::format("SELECT e.day FROM entry e JOIN command c ON c.number = e.command "
                                        "WHERE e.kind = 'got' AND c.name NOT IN ('{}', '{}') AND NOT EXISTS "
                                        "(SELECT 1 FROM entry u WHERE u.undoes = e.number) ORDER BY e.day DESC LIMIT 1",
                                        kitchen::begin_command, kitchen::import_command));
    if (!query.executeStep()) return std::nullopt;
    return basics::Day{basics::days{query.getColumn(0).getInt()}};
}

void to_be_landed(SQLite::Database& db, const Document& rows) {
    SQLite::Statement insert(db, "INSERT INTO landing (number) VALUES (?)");
    for (const auto& row : rows.documents) {
        insert.bind(1, row.number);
        insert.exec();
        insert.reset();
    }
}

std::vector<DocumentRow> landing(SQLite::Database& db) {
    return detail::read_rows<DocumentRow>(db, "number IN (SELECT number FROM landing)");
}

/// Dishes by identifier, each looked up once.
class Dishes {
  public:
    explicit Dishes(const Names& names) : names_(names) {}

    std::optional<cookbook::DishId> find(std::string_view id) {
        const auto known = known_.find(id);
        if (known != known_.end()) return known->second;
        const auto dish = names_.knowledge.cookbook.dish(id);
        if (!dish) forgotten_.emplace(id);
        known_.emplace(id, dish);
        return dish;
    }
    [[nodiscard]] std::vector<std::string> forgotten() const { return {forgotten_.begin(), forgotten_.end()}; }

  private:
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
    };

    const Names& names_;
    std::unordered_map<std::string, std::optional<cookbook::DishId>, Hash, std::equal_to<>> known_;
    std::set<std::string> forgotten_;
};

std::int64_t number(std::optional<basics::Day> day) {
    return day ? std::int64_t{day->time_since_epoch().count()} : std::numeric_limits<std::int64_t>::min();
}

/// Places that lots are in and the household no longer has: each once, with the one place that is new and empty where
/// there is just one, which is most likely the same by another identifier.
basics::Problems places_gone(const Names& names, const std::map<std::string, int>& lots_by_place,
                             const std::vector<stock::Lot>& placed) {
    std::vector<std::string> known;
    std::vector<std::string> empty;
    for (std::uint32_t i = 0; i < names.household.places.size(); ++i) {
        known.push_back(fmt::format("'{}'", names.household.places[i].id));
        const auto there = [&](const stock::Lot& lot) { return lot.place == stock::PlaceId{i}; };
        if (std::none_of(placed.begin(), placed.end(), there)) empty.push_back(known.back());
    }
    basics::Problems problems;
    for (const auto& [place, lots] : lots_by_place) {
        const std::string hint =
            empty.size() == 1
                ? fmt::format("if it is {} now, give that the id '{}' again: a place's name may change, its id stays",
                              empty.front(), place)
                : "give the place its old id again: a place's name may change, its id stays";
        problems.push_back({"kitchen.json, /places",
                            fmt::format("there is no place '{}', and {} in it", place,
                                        lots == 1 ? "1 lot is" : fmt::format("{} lots are", lots)),
                            fmt::format("a place of that id; the places are {}", fmt::join(known, ", ")), hint});
    }
    return problems;
}

basics::Result<void> read_lots(SQLite::Database& db, const Names& names, const std::string& file, State& state) {
    SQLite::Statement query(db,
                            fmt::format("SELECT {}, {} FROM lot WHERE amount > 0 OR rough IS NOT NULL ORDER BY number",
                                        Table<LotRow>::columns, detail::standing_columns));
    basics::Problems problems;
    std::map<std::string, int> without_place;
    while (query.executeStep()) {
        LotRow row;
        Standing now;
        Reader reader(query);
        Table<LotRow>::walk(reader, row);
        detail::walk_standing(reader, now);
        if (!names.place(now.place)) {
            ++without_place[now.place];
            continue;
        }
        auto lot = detail::lot_of(names, file, row, now);
        if (lot) {
            state.lots.push_back(std::move(*lot));
        } else {
            problems.insert(problems.end(), lot.error().begin(), lot.error().end());
        }
    }
    const auto unplaced = places_gone(names, without_place, state.lots);
    problems.insert(problems.begin(), unplaced.begin(), unplaced.end());
    if (!problems.empty()) return tl::make_unexpected(std::move(problems));
    return {};
}

basics::Result<void> read_plan(SQLite::Database& db, const Names& names, const std::string& file, Dishes& dishes,
                               std::optional<basics::Day> from, State& state) {
    SQLite::Statement query(db, "SELECT day, meal, dish, ready_meal, serves, extra, swaps FROM plan WHERE day >= ?");
    query.bind(1, number(from));
    while (query.executeStep()) {
        PlanRow row;
        Reader read(query);
        read(row.day), read(row.meal), read(row.dish), read(row.ready_meal), read(row.serves), read(row.left);
        read(row.swaps);
        const auto dish = dishes.find(row.dish);
        if (!dish) continue;
        auto swaps = detail::swaps_of(names, fmt::format("{}, plan of {}", file, basics::iso(row.day)), row.swaps);
        if (!swaps) return tl::make_unexpected(std::move(swaps.error()));
        std::optional<int> serves;
        if (row.serves) serves = static_cast<int>(*row.serves);
        state.plan.push_back(
            {row.day, row.meal, *dish, row.ready_meal, serves, static_cast<int>(row.left), std::move(*swaps)});
    }
    std::sort(state.plan.begin(), state.plan.end(), [](const kitchen::Planned& a, const kitchen::Planned& b) {
        return std::tuple{a.day, a.meal, a.dish} < std::tuple{b.day, b.meal, b.dish};
    });
    return {};
}

void read_history(SQLite::Database& db, Dishes& dishes, std::optional<basics::Day> from, State& state) {
    SQLite::Statement query(db, "SELECT day, meal = 'lunch', dish FROM history WHERE day >= ?");
    query.bind(1, number(from));
    while (query.executeStep()) {  // the one long list: no strings are made
        const auto dish = dishes.find(query.getColumn(2).getText());
        if (!dish) continue;
        const basics::Day day{basics::days{query.getColumn(0).getInt()}};
        const auto meal = query.getColumn(1).getInt() != 0 ? kitchen::Meal::lunch : kitchen::Meal::dinner;
        state.history.push_back({day, meal, *dish});
    }
    std::sort(state.history.begin(), state.history.end(), [](const kitchen::Had& a, const kitchen::Had& b) {
        return std::tuple{a.day, a.meal, a.dish} < std::tuple{b.day, b.meal, b.dish};
    });
}

void read_facts(SQLite::Database& db, const Names& names, State& state) {
    SQLite::Statement query(db, "SELECT kind, ingredient, amount, minor FROM fact ORDER BY kind, ingredient");
    while (query.executeStep()) {
        FactRow row;
        Reader read(query);
        read(row.kind), read(row.ingredient), read(row.amount), read(row.minor);
        const auto ingredient = names.knowledge.catalogue.ingredient(row.ingredient);
        if (ingredient) state.facts.push_back({row.kind, *ingredient, row.amount, basics::Money{row.minor}});
    }
}

void read_list(SQLite::Database& db, const Names& names, State& state) {
    SQLite::Statement query(db, "SELECT words, ingredient, count FROM list ORDER BY words");
    while (query.executeStep()) {
        ListRow row;
        Reader read(query);
        read(row.words), read(row.ingredient), read(row.count);
        std::optional<catalogue::IngredientId> ingredient;
        if (row.ingredient) ingredient = names.knowledge.catalogue.ingredient(*row.ingredient);
        state.listed.push_back({row.words, ingredient, static_cast<int>(row.count)});
    }
}

}  // namespace

fs::path file_in(const fs::path& kitchen_folder) {
    return kitchen_folder / "kitchen.db";
}

Store::Store(std::unique_ptr<Open> open) : open_(std::move(open)) {}
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;
Store::~Store() = default;

basics::Result<Store> Store::open(const fs::path& file, Mode mode) {
    auto db = mode == Mode::read ? detail::open_to_read(file) : detail::open_to_write(file);
    if (!db) return tl::make_unexpected(db.error());
    return guarded(file.string(), [&]() -> basics::Result<Store> {
        const auto documents = newest_document(**db);
        return Store(std::make_unique<Open>(Open{std::move(*db), file.string(), documents}));
    });
}

basics::Result<Revision> Store::revision() {
    return guarded(open_->file, [&]() -> basics::Result<Revision> { return newest(*open_->db); });
}

basics::Result<State> Store::read(const kitchen::Knowledge& knowledge, const kitchen::Household& household,
                                  const Since& since) {
    const Names names{knowledge, household};
    return guarded(open_->file, [&]() -> basics::Result<State> {
        SQLite::Database& db = *open_->db;
        SQLite::Transaction snapshot(db);
        State state;
        state.revision = newest(db);
        state.next_lot = db.execAndGet("SELECT ifnull(max(number), 0) + 1 FROM lot").getInt64();
        const SQLite::Column last =
            db.execAndGet(fmt::format("SELECT max(day + (name = '{}')) FROM command", kitchen::standing_command));
        if (!last.isNull()) state.uses_from = basics::Day{basics::days{last.getInt()}};
        if (auto lots = read_lots(db, names, open_->file, state); !lots) return tl::make_unexpected(lots.error());
        Dishes dishes(names);
        if (auto plan = read_plan(db, names, open_->file, dishes, since.plan, state); !plan)
            return tl::make_unexpected(plan.error());
        read_history(db, dishes, since.history, state);
        read_facts(db, names, state);
        read_list(db, names, state);
        state.shopped_on = shopped_on(db);
        state.forgotten = dishes.forgotten();
        snapshot.commit();
        return state;
    });
}

basics::Result<Written> Store::write(const kitchen::Change& change, const kitchen::Knowledge& knowledge,
                                     const kitchen::Household& household, Revision from) {
    const Names names{knowledge, household};
    return guarded(open_->file, [&]() -> basics::Result<Written> {
        SQLite::Database& db = *open_->db;
        SQLite::Transaction transaction(db, SQLite::TransactionBehavior::IMMEDIATE);
        Written written;
        written.outdated = newest_document(db) != open_->documents;
        written.stale = newest(db) != from;
        if (written.outdated || written.stale) return written;
        const Document rows = detail::rows_of(db, names, change);
        const std::size_t rest =
            rows.facts.size() + rows.plan.size() + rows.history.size() + rows.documents.size() + rows.list.size();
        if (rows.entries.empty() && rest == 0) return written;
        detail::append(db, rows);
        to_be_landed(db, rows);
        transaction.commit();
        if (!rows.documents.empty()) open_->documents = rows.documents.back().number;
        written.command = rows.commands.front().number;
        written.entries = change.entries;
        for (std::size_t i = 0; i < written.entries.size(); ++i) {
            written.entries[i].number = rows.entries[i].number;
            written.entries[i].command = written.command;
        }
        return written;
    });
}

basics::Result<std::optional<CommandRow>> Store::to_undo() {
    return guarded(open_->file,
                   [&]() -> basics::Result<std::optional<CommandRow>> { return detail::to_undo(*open_->db); });
}

basics::Result<std::vector<EntryRow>> Store::entries_of(stock::CommandNumber command) {
    return guarded(open_->file, [&]() -> basics::Result<std::vector<EntryRow>> {
        return detail::read_rows<EntryRow>(*open_->db, fmt::format("command = {}", command));
    });
}

basics::Result<std::vector<DocumentRow>> Store::documents_of(stock::CommandNumber command) {
    return guarded(open_->file, [&]() -> basics::Result<std::vector<DocumentRow>> {
        return detail::read_rows<DocumentRow>(*open_->db, fmt::format("command = {}", command));
    });
}

basics::Result<std::vector<DocumentRow>> Store::to_land() {
    return guarded(open_->file, [&]() -> basics::Result<std::vector<DocumentRow>> { return landing(*open_->db); });
}

basics::Result<void> Store::land(const std::function<basics::Result<void>(const DocumentRow&)>& put) {
    return guarded(open_->file, [&]() -> basics::Result<void> {
        SQLite::Database& db = *open_->db;
        SQLite::Transaction transaction(db, SQLite::TransactionBehavior::IMMEDIATE);
        for (const DocumentRow& row : landing(db)) {
            if (auto there = put(row); !there) return there;
        }
        db.exec("DELETE FROM landing");
        transaction.commit();
        return {};
    });
}

basics::Result<Written> Store::undo(stock::CommandNumber command, basics::Day today,
                                    const std::vector<kitchen::DocumentEdit>& documents) {
    return guarded(open_->file, [&]() -> basics::Result<Written> {
        SQLite::Database& db = *open_->db;
        SQLite::Transaction transaction(db, SQLite::TransactionBehavior::IMMEDIATE);
        Written written;
        const auto last = detail::to_undo(db);
        written.stale = !last || last->number != command;
        if (written.stale) return written;
        const Document rows = detail::reverse(db, *last, today, documents);
        detail::append(db, rows);
        to_be_landed(db, rows);
        transaction.commit();
        if (!rows.documents.empty()) open_->documents = rows.documents.back().number;
        written.command = rows.commands.front().number;
        return written;
    });
}

basics::Result<std::vector<Logged>> Store::log(int limit) {
    return guarded(open_->file, [&]() -> basics::Result<std::vector<Logged>> {
        SQLite::Statement query(
            *open_->db,
            "SELECT number, day, name, line, undoes, (SELECT u.number FROM command u WHERE u.undoes = "
            "command.number) FROM command ORDER BY number DESC LIMIT ?");
        query.bind(1, limit);
        std::vector<Logged> log;
        while (query.executeStep()) {
            Logged& row = log.emplace_back();
            Reader read(query);
            Table<CommandRow>::walk(read, row.command);
            read(row.undone_by);
        }
        return log;
    });
}

basics::Result<std::vector<Moved>> Store::movements(const basics::Span& span) {
    return guarded(open_->file, [&]() -> basics::Result<std::vector<Moved>> {
        std::string sums;
        for (const char* column : {"in", "moved-in", "found", "used", "tossed", "lost", "moved-out"}) {
            const bool in = stock::comes_in(*stock::read_column(column));
            sums += fmt::format("sum(CASE WHEN e.day >= ?1 AND e.counts_as = '{}' THEN {}e.delta ELSE 0 END), ", column,
                                in ? "" : "-");
        }
        SQLite::Statement query(
            *open_->db,
            fmt::format(
                "SELECT l.ingredient, e.at_place, sum(CASE WHEN e.day < ?1 THEN e.delta ELSE 0 END) AS opening, "
                "{}sum(e.delta) FROM entry e JOIN lot l ON l.number = e.lot WHERE e.day <= ?2 "
                "GROUP BY l.ingredient, e.at_place HAVING opening <> 0 OR max(e.day) >= ?1 "
                "ORDER BY l.ingredient, e.at_place",
                sums));
        query.bind(1, std::int64_t{span.first.time_since_epoch().count()});
        query.bind(2, std::int64_t{span.last.time_since_epoch().count()});
        std::vector<Moved> rows;
        while (query.executeStep()) {
            Moved& row = rows.emplace_back();
            Reader read(query);
            stock::Movements& m = row.sums;
            read(row.ingredient), read(row.place), read(m.opening), read(m.in), read(m.moved_in), read(m.found);
            read(m.used), read(m.tossed), read(m.lost), read(m.moved_out), read(m.closing);
        }
        return rows;
    });
}

basics::Result<Checked> Store::check() {
    return guarded(open_->file, [&]() -> basics::Result<Checked> {
        SQLite::Transaction snapshot(*open_->db);
        return detail::check(*open_->db, open_->file);
    });
}

basics::Result<void> Store::backup(const fs::path& file) {
    if (fs::exists(file)) {
        return basics::problem(file.string(), "is there already", "a new file", "choose another name, or move it away");
    }
    fs::path beside = file;
    beside += ".part";
    const auto clear = [&] {
        std::error_code error;
        for (const char* suffix : {"", "-wal", "-shm", "-journal"}) fs::remove(beside.string() + suffix, error);
    };
    clear();
    auto done = guarded(open_->file, [&]() -> basics::Result<void> {
        {
            SQLite::Database copy(beside.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
            SQLite::Backup backup(copy, *open_->db);
            if (backup.executeStep(-1) != SQLITE_DONE) throw SQLite::Exception("the copy is not finished", SQLITE_BUSY);
        }
        std::error_code error;
        fs::rename(beside, file, error);
        if (error)
            return basics::problem(file.string(), "cannot be written: " + error.message(),
                                   "a folder that may be written");
        return {};
    });
    if (!done) clear();
    return done;
}

basics::Result<Document> Store::export_all() {
    return guarded(open_->file, [&]() -> basics::Result<Document> {
        SQLite::Transaction snapshot(*open_->db);
        return detail::everything(*open_->db);
    });
}

basics::Result<void> Store::import_all(const Document& document) {
    return guarded(open_->file, [&]() -> basics::Result<void> {
        SQLite::Database& db = *open_->db;
        SQLite::Transaction transaction(db, SQLite::TransactionBehavior::IMMEDIATE);
        if (newest(db) != 0) {
            return basics::problem(open_->file, "holds a ledger already", "an empty kitchen",
                                   "import into a new one: 'samebase new DIR'");
        }
        detail::append(db, document);
        transaction.commit();
        return {};
    });
}

}  // namespace samebase::store
