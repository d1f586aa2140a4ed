#include "store/detail/tables.hpp"

#include <fmt/format.h>
#include <sqlite3.h>

#include <charconv>

namespace samebase::store::detail {

namespace {

[[noreturn]] void unreadable(const std::string& word) {
    throw SQLite::Exception(fmt::format("'{}' has no meaning", word), SQLITE_CORRUPT);
}

/// Walks the rows of a document command by command.
class ByCommand {
  public:
    explicit ByCommand(const Document& document) : document_(document) {}

    /// Calls `row` with every row of the next command: the command, the lots that begin with it, then the rest.
    template <class Row>
    void next(const CommandRow& command, Row row) {
        row(command);
        // A lot begins with its first entry.
        for (auto entry = entry_; entry < document_.entries.size(); ++entry) {
            if (document_.entries[entry].command != command.number) break;
            while (lot_ < document_.lots.size() && document_.lots[lot_].number <= document_.entries[entry].lot) {
                row(document_.lots[lot_++]);
            }
        }
        rows(document_.entries, entry_, command, row);
        rows(document_.plan, plan_, command, row);
        rows(document_.history, history_, command, row);
        rows(document_.facts, fact_, command, row);
        rows(document_.documents, edited_, command, row);
        rows(document_.list, list_, command, row);
    }

    [[nodiscard]] bool done() const {
        return lot_ == document_.lots.size() && entry_ == document_.entries.size() && plan_ == document_.plan.size() &&
               history_ == document_.history.size() && fact_ == document_.facts.size() &&
               edited_ == document_.documents.size() && list_ == document_.list.size();
    }

  private:
    template <class List, class Row>
    static void rows(const List& list, std::size_t& at, const CommandRow& command, Row& row) {
        for (; at < list.size() && list[at].command == command.number; ++at) row(list[at]);
    }

    const Document& document_;
    std::size_t lot_ = 0;
    std::size_t entry_ = 0;
    std::size_t plan_ = 0;
    std::size_t history_ = 0;
    std::size_t fact_ = 0;
    std::size_t edited_ = 0;
    std::size_t list_ = 0;
};

template <class Row>
SQLite::Statement inserting(SQLite::Database& db, std::string_view more = "") {
    std::string marks = "?";
    for (int i = 1; i < Table<Row>::width; ++i) marks += ", ?";
    if (!more.empty()) marks += ", ?";
    return {db, fmt::format("INSERT INTO {} ({}{}) VALUES ({})", Table<Row>::name, Table<Row>::columns, more, marks)};
}

template <class Row>
void insert(SQLite::Statement& statement, const Row& row) {
    Binder binder(statement);
    Table<Row>::walk(binder, row);
    statement.exec();
    statement.reset();
}

}  // namespace

std::string write_packs(const std::vector<std::int64_t>& packs) {
    return fmt::format("{}", fmt::join(packs, ","));
}

void Reader::operator()(std::vector<std::int64_t>& packs) {
    const std::string text = statement_.getColumn(next_++).getString();
    packs.clear();
    const char* at = text.data();
    const char* const end = at + text.size();
    while (at != end) {
        const auto [rest, error] = std::from_chars(at, end, packs.emplace_back());
        if (error != std::errc{} || (rest != end && *rest != ',')) unreadable(text);
        at = rest == end ? end : rest + 1;
    }
}

std::string write_words(const std::vector<std::string>& words) {
    return fmt::format("{}", fmt::join(words, ","));
}

std::string write_swaps(const std::vector<SwapRow>& swaps) {
    std::string text;
    for (const SwapRow& swap : swaps) {
        text += fmt::format("{}{}/{}=", text.empty() ? "" : ",", swap.of, swap.serves);
        bool first = true;
        for (const auto& [use, amount] : swap.use) {
            text += fmt::format("{}{}:{}", first ? "" : "+", use, amount);
            first = false;
        }
    }
    return text;
}

namespace {

/// Up to that mark, which goes as well; all of it where there is none.
std::string_view taken(std::string_view& text, char mark) {
    const auto at = text.find(mark);
    const auto before = text.substr(0, at);
    text.remove_prefix(at == std::string_view::npos ? text.size() : at + 1);
    return before;
}

std::int64_t count_of(std::string_view digits, std::int64_t least, const std::string& all) {
    std::int64_t value = 0;
    const char* const end = digits.data() + digits.size();
    const auto [rest, error] = std::from_chars(digits.data(), end, value);
    if (error != std::errc{} || rest != end || value < least) unreadable(all);
    return value;
}

}  // namespace

void Reader::operator()(std::vector<std::string>& words) {
    const std::string text = statement_.getColumn(next_++).getString();
    words.clear();
    for (std::string_view rest = text; !rest.empty();) words.emplace_back(taken(rest, ','));
}

void Reader::operator()(std::vector<SwapRow>& swaps) {
    const std::string text = statement_.getColumn(next_++).getString();
    swaps.clear();
    std::string_view rest = text;
    while (!rest.empty()) {
        std::string_view uses = taken(rest, ',');
        std::string_view head = taken(uses, '=');
        SwapRow& swap = swaps.emplace_back();
        swap.of = taken(head, '/');
        swap.serves = count_of(head, 1, text);
        while (!uses.empty()) {
            std::string_view amount = taken(uses, '+');
            const std::string_view use = taken(amount, ':');
            swap.use.emplace_back(use, count_of(amount, 0, text));
        }
        if (swap.of.empty()) unreadable(text);
    }
}

template <class Enum, class Read>
void Reader::word(Enum& value, Read read) {
    const std::string text = statement_.getColumn(next_++).getString();
    const auto known = read(text);
    if (!known) unreadable(text);
    value = *known;
}

void Reader::operator()(stock::Kind& value) {
    word(value, stock::read_kind);
}

void Reader::operator()(stock::Column& value) {
    word(value, stock::read_column);
}

void Reader::operator()(stock::State& value) {
    word(value, stock::read_state);
}

void Reader::operator()(stock::ThawMethod& value) {
    word(value, stock::read_thaw_method);
}

void Reader::operator()(measure::Rough& value) {
    word(value, read_rough);
}

void Reader::operator()(measure::Dimension& value) {
    word(value, read_dimension);
}

void Reader::operator()(kitchen::Meal& value) {
    word(value, kitchen::read_meal);
}

void Reader::operator()(kitchen::Fact::Kind& value) {
    word(value, read_fact_kind);
}

void append(SQLite::Database& db, const Document& rows) {
    auto commands = inserting<CommandRow>(db, ", seal");
    auto lots = inserting<LotRow>(db);
    auto entries = inserting<EntryRow>(db);
    auto plan = inserting<PlanRow>(db);
    auto history = inserting<HistoryRow>(db);
    auto facts = inserting<FactRow>(db);
    auto documents = inserting<DocumentRow>(db);
    auto list = inserting<ListRow>(db);
    std::int64_t seal =
        db.execAndGet("SELECT ifnull((SELECT seal FROM command ORDER BY number DESC LIMIT 1), 0)").getInt64();
    const auto put = [&](const auto& row) {
        using Row = std::decay_t<decltype(row)>;
        if constexpr (std::is_same_v<Row, LotRow>) insert(lots, row);
        if constexpr (std::is_same_v<Row, EntryRow>) insert(entries, row);
        if constexpr (std::is_same_v<Row, PlanRow>) insert(plan, row);
        if constexpr (std::is_same_v<Row, HistoryRow>) insert(history, row);
        if constexpr (std::is_same_v<Row, FactRow>) insert(facts, row);
        if constexpr (std::is_same_v<Row, DocumentRow>) insert(documents, row);
        if constexpr (std::is_same_v<Row, ListRow>) insert(list, row);
    };
    ByCommand sealing(rows);
    ByCommand writing(rows);
    for (const CommandRow& command : rows.commands) {
        Seal next(seal);
        sealing.next(command, [&](const auto& row) { next.add(row); });
        seal = next.value();
        Binder binder(commands);
        Table<CommandRow>::walk(binder, command);
        binder(seal);
        commands.exec();
        commands.reset();
        writing.next(command, put);
    }
    if (!writing.done()) {
        throw SQLite::Exception("some rows belong to no command, or are out of order", SQLITE_CONSTRAINT);
    }
}

std::vector<std::int64_t> seals(const Document& whole) {
    std::vector<std::int64_t> result;
    std::int64_t seal = 0;
    ByCommand walk(whole);
    for (const CommandRow& command : whole.commands) {
        Seal next(seal);
        walk.next(command, [&](const auto& row) { next.add(row); });
        seal = next.value();
        result.push_back(seal);
    }
    return result;
}

}  // namespace samebase::store::detail
