#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "show/sheet.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t gap = 2;

/// What a cell says in one line.
std::string words(const SheetCell& cell) {
    std::string all = cell.text;
    for (const std::string& note : cell.notes) all += (all.empty() ? "" : "; ") + note;
    std::string boxes;
    for (int i = 0; i < cell.boxes; ++i) boxes += i > 0 && i % 5 == 0 ? " [ ]" : "[ ]";
    if (!boxes.empty()) all += (all.empty() ? "" : " ") + boxes;
    return all;
}

std::string head_of(const SheetRow& row) {
    return (row.urgent ? "! " : "") + row.head;
}

/// The widths of the columns where every row fits the screen with a line for itself; else none.
std::vector<std::size_t> widths(const SheetTable& table) {
    std::vector<std::size_t> widths(table.columns.size(), 0);
    if (table.large) return {};
    for (const SheetRow& row : table.rows) {
        widths[0] = std::max(widths[0], length(head_of(row)));
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            widths[i + 1] = std::max(widths[i + 1], length(words(row.cells[i])));
    }
    const std::size_t all = std::accumulate(widths.begin(), widths.end(), std::size_t{2});
    if (all + gap * (widths.size() - 1) > screen_width()) widths.clear();
    return widths;
}

std::string without_spaces_at_end(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line + "\n";
}

std::string aligned(const SheetRow& row, const std::vector<std::size_t>& widths) {
    std::string line = "  " + fitted(head_of(row), widths[0]);
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        if (widths[i + 1] > 0) line += std::string(gap, ' ') + fitted(words(row.cells[i]), widths[i + 1]);
    }
    return without_spaces_at_end(line);
}

/// The head with all cells in one line.
std::string in_a_line(const SheetRow& row) {
    std::vector<std::string> cells;
    std::string boxes;
    for (const SheetCell& cell : row.cells) {
        if (const std::string more = words({cell.text, cell.notes}); !more.empty()) cells.push_back(more);
        if (cell.boxes > 0) boxes = " " + words({"", {}, cell.boxes});
    }
    return wrapped(fmt::format("  {}: {}{}", head_of(row), fmt::join(cells, ", "), boxes), 4) + "\n";
}

/// The head with the first cell beside it, and the rest below, each with the name of its column.
std::string below_one_another(const SheetRow& row, const SheetTable& table) {
    constexpr std::size_t indent = 13;
    const std::string head = head_of(row);
    const std::string space(indent, ' ');
    std::string line = "  " + (length(head) + 3 <= indent ? fitted(head, indent - 2) : head + ": ");
    const auto end = [&](std::size_t further) {
        std::string done = without_spaces_at_end(wrapped(line, indent + further));
        line = space;
        return done;
    };
    std::string out;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const SheetCell& cell = row.cells[i];
        const bool beside = i == 0 && !table.named && !cell.text.empty();
        std::string more = beside ? cell.text : words(cell);
        if (more.empty()) continue;
        line += beside ? more : fmt::format("{}: {}", table.columns[i + 1], more);
        out += end(beside ? 0 : 2);
        if (!beside) continue;
        for (const std::string& note : cell.notes) {
            line += note;
            out += end(2);
        }
    }
    return out.empty() ? end(0) : out;
}

std::string row_of(const SheetRow& row, const SheetTable& table, const std::vector<std::size_t>& widths) {
    if (!widths.empty()) return aligned(row, widths);
    return table.large || table.named ? below_one_another(row, table) : in_a_line(row);
}

std::string part(const SheetTable& table) {
    std::string out = table.heading.empty() ? "" : "\n" + wrapped(table.heading) + "\n";
    const auto wide = widths(table);
    for (const SheetRow& row : table.rows) out += row_of(row, table, wide);
    if (!table.foot.empty()) out += wrapped(table.foot, 2) + "\n";
    return out;
}

std::string part(const SheetCalendar& calendar) {
    std::string out;
    for (const SheetDay& day : calendar.days) {
        std::string line = fmt::format("  {:<10} {}", basics::short_day(day.day), day.text);
        if (!day.notes.empty()) line += fmt::format(" ({})", fmt::join(day.notes, "; "));
        out += wrapped(line, 13) + "\n";
    }
    return out;
}

std::string part(const SheetList& list) {
    std::string out = list.heading.empty() ? "" : "\n" + wrapped(list.heading) + "\n";
    std::size_t number = 0;
    for (const std::string& item : list.items)
        out += wrapped(list.numbered ? fmt::format("{:>3}. {}", ++number, item) : "  " + item, list.numbered ? 5 : 4) +
               "\n";
    return out;
}

}  // namespace

std::string text(const Sheet& sheet) {
    std::string out = wrapped(sheet.title) + "\n";
    if (!sheet.lead.empty()) out += wrapped(sheet.lead) + "\n";
    for (const SheetPart& one : sheet.parts) out += std::visit([](const auto& p) { return part(p); }, one);
    if (!sheet.foot.empty()) out += "\n" + wrapped(sheet.foot) + "\n";
    return out;
}

}  // namespace samebase::show
