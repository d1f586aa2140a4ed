#include "store/detail/soundness.hpp"

#include <fmt/format.h>

#include <map>
#include <numeric>
#include <tuple>
#include <vector>

#include "basics/exact.hpp"
#include "store/detail/edits.hpp"
#include "store/detail/tables.hpp"

namespace samebase::store::detail {

namespace {

const char* const hint = "restore a backup: keep this file under another name, then copy the backup to its place";

class Findings {
  public:
    explicit Findings(std::string file) : file_(std::move(file)) {}
    void add(const std::string& where, std::string found, std::string expected) {
        if (problems_.size() < 20) {
            problems_.push_back(
                {where.empty() ? file_ : file_ + ", " + where, std::move(found), std::move(expected), hint});
        }
    }
    [[nodiscard]] bool any() const { return !problems_.empty(); }
    [[nodiscard]] basics::Problems take() { return std::move(problems_); }

  private:
    std::string file_;
    basics::Problems problems_;
};

void sqlite_itself(SQLite::Database& db, Findings& findings) {
    SQLite::Statement integrity(db, "PRAGMA integrity_check(10)");
    while (integrity.executeStep()) {
        const std::string said = integrity.getColumn(0).getString();
        if (said != "ok") findings.add("", "is damaged: " + said, "a sound kitchen database");
    }
    SQLite::Statement keys(db, "PRAGMA foreign_key_check");
    while (keys.executeStep()) {
        findings.add(fmt::format("table {}, row {}", keys.getColumn(0).getString(), keys.getColumn(1).getInt64()),
                     "refers to a row that is not there", "a row of " + keys.getColumn(2).getString());
    }
}

void sealed(SQLite::Database& db, const Document& all, Findings& findings) {
    const auto expected = seals(all);
    SQLite::Statement query(db, "SELECT number, seal FROM command ORDER BY number");
    for (std::size_t i = 0; i < expected.size() && query.executeStep(); ++i) {
        if (query.getColumn(1).getInt64() == expected[i]) continue;
        findings.add(fmt::format("command {}", query.getColumn(0).getInt64()), "does not match its seal",
                     "rows as they were written");
        return;  // all that follow hang on it
    }
}

struct Present {
    LotRow lot;
    std::optional<std::int64_t> last_entry;
    Standing now;
};

void lots_follow(SQLite::Database& db, const Document& all, Findings& findings) {
    std::map<stock::LotNumber, std::pair<stock::EntryNumber, Standing>> lots;
    for (const EntryRow& entry : all.entries) {
        const std::string where = fmt::format("entry {}", entry.number);
        const auto known = lots.find(entry.lot);
        const auto sum = basics::add(known == lots.end() ? 0 : known->second.second.amount, entry.delta);
        if (!sum || *sum != entry.after.amount || *sum < 0) {
            findings.add(where, fmt::format("leaves {} of lot {}", entry.after.amount, entry.lot),
                         "the sum of its entries");
        }
        const auto& packs = entry.after.packs;
        if (!packs.empty() && std::accumulate(packs.begin(), packs.end(), std::int64_t{0}) != entry.after.amount) {
            findings.add(where, "packs that do not sum to the amount", "packs that do");
        }
        lots[entry.lot] = {entry.number, entry.after};
    }
    SQLite::Statement query(db, fmt::format("SELECT {}, last_entry, {} FROM lot ORDER BY number",
                                            Table<LotRow>::columns, standing_columns));
    while (query.executeStep()) {
        Present present;
        Reader read(query);
        Table<LotRow>::walk(read, present.lot);
        read(present.last_entry);
        walk_standing(read, present.now);
        const auto known = lots.find(present.lot.number);
        const bool same =
            known != lots.end() && present.last_entry == known->second.first && present.now == known->second.second;
        if (!same) {
            findings.add(fmt::format("lot {}", present.lot.number), "is not as its last entry says",
                         "the sum of its entries");
        }
    }
}

/// What is present, in the order of its key, with the number of times that it is there.
template <class Key, class Row, class KeyOf>
std::map<Key, std::int64_t> present(const std::vector<Row>& edits, KeyOf key_of) {
    std::map<Key, std::int64_t> counts;
    for (const Row& row : edits) {
        const auto at = counts.try_emplace(key_of(row), 0).first;
        at->second += row.adds ? 1 : -1;
        if (at->second == 0) counts.erase(at);
    }
    return counts;
}

template <class Key>
void same(const std::map<Key, std::int64_t>& from_edits, const std::map<Key, std::int64_t>& there,
          const std::string& what, Findings& findings) {
    if (from_edits != there) findings.add(what, "is not what its edits make", "the sum of its edits");
}

void rest_follows(SQLite::Database& db, const Document& all, Findings& findings) {
    using PlanKey = std::tuple<basics::Day, kitchen::Meal, std::string, bool, std::optional<std::int64_t>, std::int64_t,
                               std::string>;
    const auto plan_key = [](const PlanRow& r) {
        return PlanKey{r.day, r.meal, r.dish, r.ready_meal, r.serves, r.left, write_swaps(r.swaps)};
    };
    std::map<PlanKey, std::int64_t> plan;
    SQLite::Statement plans(db, "SELECT day, meal, dish, ready_meal, serves, extra, swaps FROM plan");
    while (plans.executeStep()) {
        PlanRow r;
        Reader read(plans);
        read(r.day), read(r.meal), read(r.dish), read(r.ready_meal), read(r.serves), read(r.left), read(r.swaps);
        ++plan[plan_key(r)];
    }
    same(present<PlanKey>(all.plan, plan_key), plan, "the plan", findings);

    using HadKey = std::tuple<basics::Day, kitchen::Meal, std::string>;
    const auto had_key = [](const HistoryRow& r) { return HadKey{r.day, r.meal, r.dish}; };
    std::map<HadKey, std::int64_t> history;
    SQLite::Statement meals(db, "SELECT day, meal, dish FROM history");
    while (meals.executeStep()) {
        HistoryRow r;
        Reader read(meals);
        read(r.day), read(r.meal), read(r.dish);
        ++history[had_key(r)];
    }
    same(present<HadKey>(all.history, had_key), history, "the history", findings);

    using FactKey = std::tuple<kitchen::Fact::Kind, std::string, std::int64_t, std::int64_t>;
    const auto fact_key = [](const FactRow& r) { return FactKey{r.kind, r.ingredient, r.amount, r.minor}; };
    std::map<FactKey, std::int64_t> facts;
    SQLite::Statement known(db, "SELECT kind, ingredient, amount, minor FROM fact");
    while (known.executeStep()) {
        FactRow r;
        Reader read(known);
        read(r.kind), read(r.ingredient), read(r.amount), read(r.minor);
        ++facts[fact_key(r)];
    }
    same(present<FactKey>(all.facts, fact_key), facts, "the household's facts", findings);

    using ListKey = std::tuple<std::string, std::optional<std::string>, std::int64_t>;
    const auto list_key = [](const ListRow& r) { return ListKey{r.words, r.ingredient, r.count}; };
    std::map<ListKey, std::int64_t> list;
    SQLite::Statement listed(db, "SELECT words, ingredient, count FROM list");
    while (listed.executeStep()) {
        ListRow r;
        Reader read(listed);
        read(r.words), read(r.ingredient), read(r.count);
        ++list[list_key(r)];
    }
    same(present<ListKey>(all.list, list_key), list, "the shopping list", findings);
}

}  // namespace

basics::Result<Checked> check(SQLite::Database& db, const std::string& file) {
    Findings findings(file);
    sqlite_itself(db, findings);
    if (findings.any()) return tl::make_unexpected(findings.take());
    const Document all = everything(db);
    sealed(db, all, findings);
    lots_follow(db, all, findings);
    rest_follows(db, all, findings);
    if (findings.any()) return tl::make_unexpected(findings.take());
    return Checked{static_cast<std::int64_t>(all.commands.size()), static_cast<std::int64_t>(all.lots.size()),
                   static_cast<std::int64_t>(all.entries.size())};
}

}  // namespace samebase::store::detail
