#include <fmt/format.h>

#include "show/sheet.hpp"
#include "show/terminal.hpp"

namespace samebase::show {

namespace {

/// What CommonMark would take for markup stays text.
std::string plain(std::string_view text) {
    constexpr std::string_view signs = "\\`*_{}[]<>#|~&";
    std::string out;
    for (const char c : fit_for_terminal(text)) {
        if (signs.find(c) != std::string_view::npos) out += '\\';
        out += c == '\n' ? ' ' : c;
    }
    return out;
}

std::string words(const SheetCell& cell) {
    std::string all = plain(cell.text);
    for (const std::string& note : cell.notes) all += (all.empty() ? "" : "; ") + plain(note);
    return all;
}

std::string part(const SheetTable& table) {
    std::string out = table.heading.empty() ? "" : fmt::format("## {}\n\n", plain(table.heading));
    for (const SheetRow& row : table.rows) {
        out += fmt::format("- **{}**", plain(row.head));
        bool first = true;
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            const std::string more = words(row.cells[i]);
            if (more.empty()) continue;
            const std::string name = i == 0 ? "" : plain(table.columns[i + 1]) + ": ";
            out += fmt::format("{} {}{}", first ? ":" : ".", name, more);
            first = false;
        }
        out += "\n";
    }
    if (!table.foot.empty()) out += fmt::format("\n{}\n", plain(table.foot));
    return out + "\n";
}

std::string part(const SheetCalendar& calendar) {
    std::string out;
    for (const SheetDay& day : calendar.days) {
        out += fmt::format("- **{}**: {}", basics::short_day(day.day), plain(day.text));
        for (const std::string& note : day.notes) out += "; " + plain(note);
        out += "\n";
    }
    return out + "\n";
}

std::string part(const SheetList& list) {
    std::string out = list.heading.empty() ? "" : fmt::format("## {}\n\n", plain(list.heading));
    std::size_t number = 0;
    for (const std::string& item : list.items)
        out += list.numbered ? fmt::format("{}. {}\n", ++number, plain(item)) : fmt::format("- {}\n", plain(item));
    return out + "\n";
}

}  // namespace

std::string markdown(const Sheet& sheet) {
    std::string out = fmt::format("# {}\n\n", plain(sheet.title));
    if (!sheet.lead.empty()) out += plain(sheet.lead) + "\n\n";
    for (const SheetPart& one : sheet.parts) out += std::visit([](const auto& p) { return part(p); }, one);
    if (!sheet.foot.empty()) out += plain(sheet.foot) + "\n";
    while (out.ends_with("\n\n")) out.pop_back();
    return out;
}

}  // namespace samebase::show
