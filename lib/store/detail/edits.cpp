#include "store/detail/edits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "store/detail/tables.hpp"

namespace samebase::store::detail {

namespace {

template <class Row>
std::int64_t next_number(SQLite::Database& db) {
    return db.execAndGet(fmt::format("SELECT ifnull(max(number), 0) + 1 FROM {}", Table<Row>::name)).getInt64();
}

/// A fact as it holds now.
std::optional<FactRow> present_fact(SQLite::Database& db, kitchen::Fact::Kind kind, const std::string& ingredient) {
    SQLite::Statement query(db, "SELECT kind, ingredient, amount, minor FROM fact WHERE kind = ? AND ingredient = ?");
    query.bind(1, std::string{name(kind)});
    query.bind(2, ingredient);
    if (!query.executeStep()) return std::nullopt;
    FactRow row;
    Reader read(query);
    read(row.kind), read(row.ingredient), read(row.amount), read(row.minor);
    return row;
}

void add_facts(SQLite::Database& db, const Names& names, const kitchen::Change& change, Document& rows) {
    std::int64_t number = next_number<FactRow>(db);
    const auto add = [&](FactRow row, bool adds) {
        row.number = number++;
        row.command = rows.commands.front().number;
        row.adds = adds;
        rows.facts.push_back(std::move(row));
    };
    for (auto edit = change.facts.begin(); edit != change.facts.end(); ++edit) {
        const auto same = [&](const kitchen::FactEdit& later) {
            return later.fact.kind == edit->fact.kind && later.fact.ingredient == edit->fact.ingredient;
        };
        if (std::any_of(std::next(edit), change.facts.end(), same)) continue;  // the last word holds
        FactRow row;
        row.kind = edit->fact.kind;
        row.ingredient = names.ingredient(edit->fact.ingredient);
        row.amount = edit->fact.amount;
        row.minor = edit->fact.money.minor;
        const auto present = present_fact(db, row.kind, row.ingredient);
        if (present && edit->holds && present->amount == row.amount && present->minor == row.minor) continue;
        if (present) add(*present, false);
        if (edit->holds) add(row, true);
    }
}

void add_documents(SQLite::Database& db, const std::vector<kitchen::DocumentEdit>& edits, Document& rows) {
    std::int64_t number = next_number<DocumentRow>(db);
    for (const auto& edit : edits) {
        if (edit.was == edit.becomes) continue;
        rows.documents.push_back({number++, rows.commands.front().number, edit.path, edit.was, edit.becomes});
    }
}

/// How the lot stood before that entry; with no entry before it, empty.
Standing before(SQLite::Database& db, const EntryRow& entry) {
    const auto rows = read_rows<EntryRow>(
        db, fmt::format("lot = {0} AND number = (SELECT max(number) FROM entry WHERE lot = {0} AND number < {1})",
                        entry.lot, entry.number));
    if (!rows.empty()) return rows.front().after;
    Standing empty = entry.after;
    empty.amount = 0;
    empty.packs.clear();
    empty.part_of = 0;
    empty.rough.reset();
    return empty;
}

template <class Row>
void turn_back(SQLite::Database& db, const CommandRow& command, std::int64_t as, std::vector<Row>& into) {
    auto rows = read_rows<Row>(db, fmt::format("command = {}", command.number));
    std::int64_t number = next_number<Row>(db);
    for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
        row->number = number++;
        row->command = as;
        row->adds = !row->adds;
        into.push_back(std::move(*row));
    }
}

}  // namespace

Document rows_of(SQLite::Database& db, const Names& names, const kitchen::Change& change) {
    Document rows;
    const std::int64_t command = next_number<CommandRow>(db);
    rows.commands.push_back({command, change.day, change.command, change.line, std::nullopt});
    const std::int64_t next_lot = next_number<LotRow>(db);
    std::set<stock::LotNumber> arrived;
    std::int64_t number = next_number<EntryRow>(db);
    for (const stock::Entry& entry : change.entries) {
        if (entry.after.number >= next_lot && arrived.insert(entry.after.number).second) {
            rows.lots.push_back(lot_row(names, entry.after));
        }
        rows.entries.push_back({number++, command, entry.kind, entry.column, entry.day, entry.after.number,
                                names.place(entry.place), entry.delta, entry.reason, entry.undoes,
                                standing(names, entry.after)});
    }
    std::int64_t plan = next_number<PlanRow>(db);
    for (const kitchen::PlanEdit& edit : change.plan) {
        std::optional<std::int64_t> serves;
        if (edit.row.serves) serves = *edit.row.serves;
        rows.plan.push_back({plan++, command, edit.adds, edit.row.day, edit.row.meal, names.dish(edit.row.dish),
                             edit.row.ready_meal, serves, edit.row.left, swap_rows(names, edit.row.swaps)});
    }
    std::int64_t history = next_number<HistoryRow>(db);
    for (const kitchen::HistoryEdit& edit : change.history) {
        rows.history.push_back({history++, command, edit.adds, edit.row.day, edit.row.meal, names.dish(edit.row.dish)});
    }
    add_facts(db, names, change, rows);
    std::int64_t listed = next_number<ListRow>(db);
    for (const kitchen::ListEdit& edit : change.list) {
        std::optional<std::string> ingredient;
        if (edit.row.ingredient) ingredient = names.ingredient(*edit.row.ingredient);
        rows.list.push_back({listed++, command, edit.adds, edit.row.words, ingredient, edit.row.count});
    }
    add_documents(db, change.documents, rows);
    return rows;
}

std::optional<CommandRow> to_undo(SQLite::Database& db) {
    SQLite::Statement query(
        db, fmt::format("SELECT {} FROM command WHERE undoes IS NULL AND NOT EXISTS (SELECT 1 FROM command u "
                        "WHERE u.undoes = command.number) ORDER BY number DESC LIMIT 1",
                        Table<CommandRow>::columns));
    if (!query.executeStep()) return std::nullopt;
    CommandRow row;
    Reader reader(query);
    Table<CommandRow>::walk(reader, row);
    return row;
}

Document reverse(SQLite::Database& db, const CommandRow& command, basics::Day today,
                 const std::vector<kitchen::DocumentEdit>& documents) {
    Document rows;
    const std::int64_t as = next_number<CommandRow>(db);
    rows.commands.push_back({as, today, "undo", "undid: " + command.line, command.number});
    const auto entries = read_rows<EntryRow>(db, fmt::format("command = {}", command.number));
    std::int64_t number = next_number<EntryRow>(db);
    for (auto entry = entries.rbegin(); entry != entries.rend(); ++entry) {
        rows.entries.push_back({number++, as, stock::Kind::undone, entry->column, today, entry->lot, entry->place,
                                -entry->delta, "", entry->number, before(db, *entry)});
    }
    turn_back(db, command, as, rows.facts);
    turn_back(db, command, as, rows.history);
    turn_back(db, command, as, rows.plan);
    turn_back(db, command, as, rows.list);
    std::vector<kitchen::DocumentEdit> edits = documents;
    for (const auto& row : read_rows<DocumentRow>(db, fmt::format("command = {}", command.number))) {
        const auto same = [&](const kitchen::DocumentEdit& edit) { return edit.path == row.path; };
        if (std::none_of(edits.begin(), edits.end(), same)) edits.push_back({row.path, row.becomes, row.was});
    }
    add_documents(db, edits, rows);
    return rows;
}

Document everything(SQLite::Database& db) {
    return {read_rows<CommandRow>(db), read_rows<LotRow>(db),  read_rows<EntryRow>(db),    read_rows<PlanRow>(db),
            read_rows<HistoryRow>(db), read_rows<FactRow>(db), read_rows<DocumentRow>(db), read_rows<ListRow>(db)};
}

}  // namespace samebase::store::detail
