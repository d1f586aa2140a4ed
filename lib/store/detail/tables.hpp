// Rows in their tables: one walk over a row's fields, in the order of its columns, binds it, reads it and seals it.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "store/rows.hpp"

namespace samebase::store::detail {

template <class V, class Row>
void walk_standing(V& v, Row& r) {
    v(r.place), v(r.amount), v(r.rough), v(r.packs), v(r.part_of), v(r.state), v(r.since), v(r.opened_on), v(r.thaw);
    v(r.thawed_on), v(r.printed_use_by), v(r.use_by), v(r.best_by), v(r.paid), v(r.paid_for), v(r.note);
}
inline constexpr std::string_view standing_columns =
    "place, amount, rough, packs, part_of, state, since, opened_on, thaw, thawed_on, printed_use_by, use_by, best_by, "
    "paid, "
    "paid_for, note";

template <class Row>
struct Table;

template <>
struct Table<CommandRow> {
    static constexpr std::string_view name = "command";
    static constexpr std::string_view columns = "number, day, name, line, undoes";
    static constexpr int width = 5;
    template <class V, class Row>
    static void walk(V& v, Row& r) {
        v(r.number), v(r.day), v(r.name), v(r.line), v(r.undoes);
    }
};

template <>
struct Table<LotRow> {
    static constexpr std::string_view name = "lot";
    static constexpr std::string_view columns = "number, ingredient, dish, arrived, dimension, also";
    static constexpr int width = 6;
    template <class V, class Row>
    static void walk(V& v, Row& r) {
        v(r.number), v(r.ingredient), v(r.dish), v(r.arrived), v(r.dimension);
        v(r.also);
    }
};

template <>
struct Table<EntryRow> {
    static constexpr std::string_view name = "entry";
    static constexpr std::string_view columns =
        "number, command, kind, counts_as, day, lot, at_place, delta, reason, undoes, place, amount, rough, packs, "
        "part_of, "
        "state, since, opened_on, thaw, thawed_on, printed_use_by, use_by, best_by, paid, paid_for, note";
    static constexpr int width = 26;
    template <class V, class Row>
    static void walk(V& v, Row& r) {
        v(r.number), v(r.command), v(r.kind), v(r.column), v(r.day), v(r.lot), v(r.place), v(r.delta), v(r.reason);
        v(r.undoes);
        walk_standing(v, r.after);
    }
};

template <>
struct Table<PlanRow> {
    static constexpr std::string_view name = "plan_edit";
    static constexpr std::string_view columns =
        "number, command, adds, day, meal, dish, ready_meal, serves, extra, swaps";
    static constexpr int width = 10;
    template <class V, class Row>
    static void walk(V& v, Row& r) {
        v(r.number), v(r.command), v(r.adds), v(r.day), v(r.meal), v(r.dish), v(r.ready_meal), v(r.serves), v(r.left);
        v(r.swaps);
    }
};

template <>
struct Table<HistoryRow> {
    static constexpr std::string_view name = "history_edit";
    static constexpr std::string_view columns = "number, command, adds, day, meal, dish";
    static constexpr int width = 6;
    template <class V, class Row>
    static void walk(V& v, Row& r) {
        v(r.number), v(r.command), v(r.adds), v(r.day), v(r.meal), v(r.dish);
    }
};

template <>
struct Table<FactRow> {
    static constexpr std::string_view name = "fact_edit";
    static constexpr std::string_view columns = "number, command, adds, kind, ingredient, amount, minor";
    static constexpr int width = 7;
    template <class V, class Row>
    static void walk(V& v, Row& r) {
        v(r.number), v(r.command), v(r.adds), v(r.kind), v(r.ingredient), v(r.amount), v(r.minor);
    }
};

template <>
struct Table<ListRow> {
    static constexpr std::string_view name = "list_edit";
    static constexpr std::string_view columns = "number, command, adds, words, ingredient, count";
    static constexpr int width = 6;
    template <class V, class Row>
    static void walk(V& v, Row& r) {
        v(r.number), v(r.command), v(r.adds), v(r.words), v(r.ingredient), v(r.count);
    }
};

template <>
struct Table<DocumentRow> {
    static constexpr std::string_view name = "document_edit";
    static constexpr std::string_view columns = "number, command, path, was, becomes";
    static constexpr int width = 5;
    template <class V, class Row>
    static void walk(V& v, Row& r) {
        v(r.number), v(r.command), v(r.path), v(r.was), v(r.becomes);
    }
};

/// Packs as the file keeps them: "500000,480000".
[[nodiscard]] std::string write_packs(const std::vector<std::int64_t>& packs);

/// Words as the file keeps them: "egg,milk".
[[nodiscard]] std::string write_words(const std::vector<std::string>& words);

/// Swaps as the file keeps them: "cheddar/4000=tasty-cheese:120000,celery/4000=,mince/4000=lentils:300+carrot:100".
[[nodiscard]] std::string write_swaps(const std::vector<SwapRow>& swaps);

class Binder {
  public:
    explicit Binder(SQLite::Statement& statement) : statement_(statement) {}
    void operator()(std::int64_t value) { statement_.bind(next_++, value); }
    void operator()(bool value) { statement_.bind(next_++, value ? 1 : 0); }
    void operator()(const std::string& value) { statement_.bind(next_++, value); }
    void operator()(basics::Day day) { (*this)(std::int64_t{day.time_since_epoch().count()}); }
    void operator()(const std::vector<std::int64_t>& packs) { (*this)(write_packs(packs)); }
    void operator()(const std::vector<SwapRow>& swaps) { (*this)(write_swaps(swaps)); }
    void operator()(const std::vector<std::string>& words) { (*this)(write_words(words)); }
    template <class Enum>
    requires std::is_enum_v<Enum>
    void operator()(Enum value) {
        using measure::name;
        using stock::name;
        using store::name;
        (*this)(std::string{name(value)});
    }
    template <class T>
    void operator()(const std::optional<T>& value) {
        if (value) {
            (*this)(*value);
        } else {
            statement_.bind(next_++);
        }
    }

  private:
    SQLite::Statement& statement_;
    int next_ = 1;
};

/// Reads a row's columns from `first` on. Throws SQLite::Exception (SQLITE_CORRUPT) on a word that has no meaning.
class Reader {
  public:
    explicit Reader(SQLite::Statement& statement, int first = 0) : statement_(statement), next_(first) {}
    void operator()(std::int64_t& value) { value = statement_.getColumn(next_++).getInt64(); }
    void operator()(bool& value) { value = statement_.getColumn(next_++).getInt64() != 0; }
    void operator()(std::string& value) { value = statement_.getColumn(next_++).getString(); }
    void operator()(basics::Day& day) {
        day = basics::Day{basics::days{static_cast<basics::days::rep>(statement_.getColumn(next_++).getInt64())}};
    }
    void operator()(std::vector<std::int64_t>& packs);
    void operator()(std::vector<SwapRow>& swaps);
    void operator()(std::vector<std::string>& words);
    void operator()(stock::Kind& value);
    void operator()(stock::Column& value);
    void operator()(stock::State& value);
    void operator()(stock::ThawMethod& value);
    void operator()(measure::Rough& value);
    void operator()(measure::Dimension& value);
    void operator()(kitchen::Meal& value);
    void operator()(kitchen::Fact::Kind& value);
    template <class T>
    void operator()(std::optional<T>& value) {
        if (statement_.getColumn(next_).isNull()) {
            value.reset();
            ++next_;
        } else {
            (*this)(value.emplace());
        }
    }

  private:
    template <class Enum, class Read>
    void word(Enum& value, Read read);

    SQLite::Statement& statement_;
    int next_;
};

/// A running hash (FNV-1a, 64 bits) over rows: every command carries that over the rows of all commands so far.
class Seal {
  public:
    explicit Seal(std::int64_t before = 0) : hash_(static_cast<std::uint64_t>(before) ^ 14695981039346656037ULL) {}
    template <class Row>
    void add(const Row& row) {
        text(Table<Row>::name);
        Table<Row>::walk(*this, row);
    }
    [[nodiscard]] std::int64_t value() const { return static_cast<std::int64_t>(hash_); }

    void operator()(std::int64_t value) {
        for (int shift = 0; shift < 64; shift += 8)
            byte(static_cast<unsigned char>(static_cast<std::uint64_t>(value) >> shift));
    }
    void operator()(bool value) { byte(value ? 1 : 0); }
    void operator()(const std::string& value) { text(value); }
    void operator()(basics::Day day) { (*this)(std::int64_t{day.time_since_epoch().count()}); }
    void operator()(const std::vector<std::int64_t>& packs) {
        (*this)(static_cast<std::int64_t>(packs.size()));
        for (const std::int64_t pack : packs) (*this)(pack);
    }
    // None add nothing: a row that version 1 wrote keeps its seal.
    void operator()(const std::vector<SwapRow>& swaps) {
        if (!swaps.empty()) text(write_swaps(swaps));
    }
    void operator()(const std::vector<std::string>& words) {
        if (!words.empty()) text(write_words(words));
    }
    template <class Enum>
    requires std::is_enum_v<Enum>
    void operator()(Enum value) { byte(static_cast<unsigned char>(value)); }
    template <class T>
    void operator()(const std::optional<T>& value) {
        byte(value ? 1 : 0);
        if (value) (*this)(*value);
    }

  private:
    void byte(unsigned char value) { hash_ = (hash_ ^ value) * 1099511628211ULL; }
    void text(std::string_view value) {
        (*this)(static_cast<std::int64_t>(value.size()));
        for (const char c : value) byte(static_cast<unsigned char>(c));
    }
    std::uint64_t hash_;
};

/// All rows of a table in the order of their numbers; `where` is "" or a condition on its columns.
template <class Row>
std::vector<Row> read_rows(SQLite::Database& db, const std::string& where = {}) {
    SQLite::Statement query(db, "SELECT " + std::string{Table<Row>::columns} + " FROM " +
                                    std::string{Table<Row>::name} + (where.empty() ? "" : " WHERE " + where) +
                                    " ORDER BY number");
    std::vector<Row> rows;
    while (query.executeStep()) {
        Reader reader(query);
        Table<Row>::walk(reader, rows.emplace_back());
    }
    return rows;
}

/// Adds the rows of whole commands behind what is there, sealed. Within a transaction.
void append(SQLite::Database& db, const Document& rows);

/// The seals that the commands of a whole document have, in order.
[[nodiscard]] std::vector<std::int64_t> seals(const Document& whole);

}  // namespace samebase::store::detail
