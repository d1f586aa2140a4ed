#include "exchange/stock_csv.hpp"

#include <csv.h>
#include <fmt/format.h>
#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <nlohmann/json.hpp>

#include "exchange/detail/element.hpp"
#include "kitchen/changes.hpp"
#include "measure/written.hpp"

namespace samebase::exchange {

namespace {

using Row = std::vector<std::string>;

struct Column {
    const char* name;
    const char* key;  ///< in stock.json; null: for people only
};

constexpr std::array<Column, 18> columns{{{"lot", "lot"},
                                          {"ingredient", "of"},
                                          {"label", nullptr},
                                          {"dish", "dish"},
                                          {"place", "place"},
                                          {"amount", "amount"},
                                          {"packs", "packs"},
                                          {"state", "state"},
                                          {"arrived", "arrived"},
                                          {"since", "since"},
                                          {"opened_on", "opened_on"},
                                          {"thaw", "thaw"},
                                          {"thawed_on", "thawed_on"},
                                          {"printed_use_by", "use_by"},
                                          {"use_by", nullptr},
                                          {"best_by", nullptr},
                                          {"paid_minor", "paid"},
                                          {"note", "note"}}};

/// A spreadsheet takes a cell that begins with one of these for a formula.
constexpr std::string_view begins_a_formula = "=+-@\t\r";

/// With an apostrophe before it where it would be a formula, or begins with an apostrophe itself.
std::string as_text(const std::string& text) {
    const bool marked = !text.empty() && (text.front() == '\'' || begins_a_formula.find(text.front()) != text.npos);
    return marked ? "'" + text : text;
}

/// What as_text() was given; an apostrophe before anything else stays.
std::string without_mark(std::string text) {
    const bool marked = text.size() > 1 && text.front() == '\'' &&
                        (text[1] == '\'' || begins_a_formula.find(text[1]) != std::string::npos);
    return marked ? text.substr(1) : text;
}

std::string field(const std::string& cell) {
    const std::string text = as_text(cell);
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted(csv_write(nullptr, 0, text.data(), text.size()), '\0');
    csv_write(quoted.data(), quoted.size(), text.data(), text.size());
    return quoted;
}

std::string day(const std::optional<basics::Day>& value) {
    return value ? basics::iso(*value) : "";
}

Row row_of(const stock::Lot& lot, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[lot.ingredient];
    std::string packs;
    for (const std::int64_t pack : lot.packs) {
        packs += fmt::format("{}{}", packs.empty() ? "" : "; ", measure::write({thing.dimension, pack}));
    }
    std::string amount = lot.rough ? std::string(measure::name(*lot.rough)) : measure::write(lot.amount);
    if (!packs.empty()) amount.clear();
    std::string paid;
    if (lot.paid && lot.paid_for > 0)
        paid = fmt::format("{}", basics::share_of(*lot.paid, lot.amount.value(), lot.paid_for).minor);
    return {fmt::format("{}", lot.number),
            thing.id,
            kitchen::label(kitchen, lot.ingredient, lot.dish),
            lot.dish ? kitchen.cookbook()[*lot.dish].id : "",
            kitchen.place(lot.place).id,
            amount,
            packs,
            std::string(name(lot.state)),
            basics::iso(lot.arrived),
            basics::iso(lot.since),
            day(lot.opened_on),
            lot.thaw ? std::string(name(*lot.thaw)) : "",
            day(lot.thawed_on),
            day(lot.printed_use_by),
            day(lot.use_by),
            day(lot.best_by),
            paid,
            lot.note};
}

std::string line_of(const Row& row) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) line += fmt::format("{}{}", i == 0 ? "" : ",", field(row[i]));
    return line + "\r\n";
}

/// A table as libcsv reads it: a row knows the line that it begins on.
struct Table {
    std::vector<Row> rows;
    std::vector<std::size_t> lines;
    std::size_t line = 1;
    std::size_t started = 1;
    bool between = true;  ///< rows
    Row row;
};

/// The line of the first byte that is no UTF-8.
std::optional<std::size_t> line_of_other_text(const std::string& text) {
    const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(text.data());  // NOLINT: utf8proc reads bytes
    std::size_t line = 1;
    for (std::size_t at = 0; at < text.size();) {
        utf8proc_int32_t code = 0;
        const auto length = utf8proc_iterate(bytes + at, static_cast<utf8proc_ssize_t>(text.size() - at), &code);
        if (length <= 0) return line;
        line += code == '\n' ? 1 : 0;
        at += static_cast<std::size_t>(length);
    }
    return std::nullopt;
}

basics::Result<Table> read_table(const std::string& text, const std::string& name) {
    Table table;
    csv_parser parser{};
    if (csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI) != 0)
        return basics::problem(name, "no memory to read it", "a smaller table");
    const auto on_field = [](void* data, std::size_t size, void* into) {
        static_cast<Table*>(into)->row.emplace_back(static_cast<const char*>(data), size);
    };
    const auto on_row = [](int /*end*/, void* into) {
        auto& the = *static_cast<Table*>(into);
        the.rows.push_back(std::move(the.row));
        the.lines.push_back(the.started);
        the.row.clear();
        the.between = true;
    };
    bool failed = false;
    // Character by character, so that a row knows its line, and an error too.
    for (std::size_t i = 0; i < text.size() && !failed; ++i) {
        if (table.between && text[i] != '\r' && text[i] != '\n') {
            table.started = table.line;
            table.between = false;
        }
        failed = csv_parse(&parser, &text[i], 1, on_field, on_row, &table) != 1;
        if (text[i] == '\n') ++table.line;
    }
    failed = failed || csv_fini(&parser, on_field, on_row, &table) != 0;
    csv_free(&parser);
    if (failed)
        return basics::problem(fmt::format("{}, line {}", name, table.line),
                               "a quotation mark that is not closed, or out of place", "CSV by RFC 4180");
    return table;
}

std::string without_spaces(const std::string& text) {
    const auto first = text.find_first_not_of(' ');
    return first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

nlohmann::json packs_of(const std::string& text) {
    nlohmann::json packs = nlohmann::json::array();
    for (std::size_t at = 0; at <= text.size();) {
        const auto end = std::min(text.find(';', at), text.size());
        const std::string pack = without_spaces(text.substr(at, end - at));
        if (!pack.empty()) packs.push_back(pack);
        at = end + 1;
    }
    return packs;
}

nlohmann::json value_of(const std::string& key, const std::string& text) {
    if (key == "packs") return packs_of(text);
    if (key == "lot" || key == "paid") {
        std::int64_t number = 0;
        const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), number);
        if (error == std::errc{} && stop == text.data() + text.size()) return number;
    }
    return text;
}

/// "/lots/3/of" in the document is line 5, ingredient in the table.
void name_line_and_column(basics::Problem& problem, const std::string& name, const std::vector<std::size_t>& lines) {
    const std::string head = name + ", /lots/";
    if (!problem.where.starts_with(head)) return;
    std::size_t index = 0;
    const char* end = problem.where.data() + problem.where.size();
    const auto [stop, error] = std::from_chars(problem.where.data() + head.size(), end, index);
    if (error != std::errc{} || index >= lines.size()) return;
    const std::string_view rest(stop, static_cast<std::size_t>(end - stop));
    std::string key(rest.substr(std::min<std::size_t>(1, rest.size())));
    key = key.substr(0, key.find('/'));
    for (const Column& column : columns) {
        if (column.key != nullptr && key == column.key) key = column.name;
    }
    problem.where = fmt::format("{}, line {}{}{}", name, lines[index], key.empty() ? "" : ", ", key);
}

/// Which key of the document each column of the table is; "" for those that are left out.
basics::Result<std::vector<std::string>> keys_of(const Row& head, const std::string& name) {
    std::vector<std::string> keys;
    basics::Problems problems;
    std::vector<std::string> known;
    for (const Column& column : columns) known.emplace_back(column.name);
    for (const std::string& written : head) {
        const std::string title = without_spaces(written);
        const auto found = std::find(known.begin(), known.end(), title);
        if (found == known.end()) {
            problems.push_back({name + ", line 1", fmt::format("'{}' is not a column", title),
                                fmt::format("one of: {}", fmt::join(known, ", ")), detail::did_you_mean(title, known)});
            continue;
        }
        const char* key = columns[static_cast<std::size_t>(found - known.begin())].key;
        keys.emplace_back(key == nullptr ? "" : key);
        if (key != nullptr && std::count(keys.begin(), keys.end(), key) > 1) {
            problems.push_back({name + ", line 1", fmt::format("'{}' twice", title), "each column once", std::nullopt});
        }
    }
    if (!problems.empty()) return tl::make_unexpected(std::move(problems));
    return keys;
}

}  // namespace

std::string write_stock_csv(std::span<const stock::Lot> lots, const kitchen::Kitchen& kitchen) {
    Row head;
    for (const Column& column : columns) head.emplace_back(column.name);
    std::string out = line_of(head);
    for (const stock::Lot& lot : lots) out += line_of(row_of(lot, kitchen));
    return out;
}

basics::Result<std::vector<stock::Lot>> read_stock_csv(const std::string& given, const std::string& name,
                                                       const kitchen::Knowledge& knowledge,
                                                       const kitchen::Household& household, basics::Day today) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    const std::string text = given.starts_with(byte_order_mark) ? given.substr(byte_order_mark.size()) : given;
    if (const auto line = line_of_other_text(text)) {
        return basics::problem(fmt::format("{}, line {}", name, *line), "a letter that is no UTF-8", "a table in UTF-8",
                               "save it as CSV in UTF-8");
    }
    const auto table = read_table(text, name);
    if (!table) return tl::make_unexpected(table.error());
    if (table->rows.empty()) return basics::problem(name, "nothing", "a line of names and a line for each lot");
    const auto keys = keys_of(table->rows.front(), name);
    if (!keys) return tl::make_unexpected(keys.error());
    nlohmann::json document = {{"samebase", 1}, {"lots", nlohmann::json::array()}};
    std::vector<std::size_t> lines;
    for (std::size_t i = 1; i < table->rows.size(); ++i) {
        const Row& row = table->rows[i];
        if (row.size() != keys->size()) {
            return basics::problem(fmt::format("{}, line {}", name, table->lines[i]),
                                   fmt::format("{} fields", row.size()),
                                   fmt::format("{}, as in the first line", keys->size()));
        }
        nlohmann::json lot = nlohmann::json::object();
        for (std::size_t c = 0; c < row.size(); ++c) {
            const std::string value = without_mark(without_spaces(row[c]));
            if (!(*keys)[c].empty() && !value.empty()) lot[(*keys)[c]] = value_of((*keys)[c], value);
        }
        if (!lot.contains("lot")) lot["lot"] = i;
        if (!lot.contains("arrived")) lot["arrived"] = basics::iso(today);
        document["lots"].push_back(std::move(lot));
        lines.push_back(table->lines[i]);
    }
    auto stock = read_stock(document, name, knowledge, household, basics::days{0});
    if (stock) return std::move(stock->lots);
    for (auto& problem : stock.error()) name_line_and_column(problem, name, lines);
    return tl::make_unexpected(std::move(stock.error()));
}

}  // namespace samebase::exchange
