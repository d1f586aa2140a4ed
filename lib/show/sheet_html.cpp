#include <fmt/format.h>

#include <algorithm>

#include "show/detail/html.hpp"
#include "show/detail/sheet_style.hpp"
#include "show/sheet.hpp"

namespace samebase::show {

namespace {

using detail::Html;

/// Long names are written smaller, so that they do not push the rest off the page; short words stay in one line.
std::string size_of(std::string_view text) {
    constexpr std::size_t long_name = 60;
    constexpr std::size_t endless = 150;
    constexpr std::size_t short_words = 20;
    const std::size_t size = length(text);
    if (size <= short_words) return "short";
    return size > endless ? "endless" : size > long_name ? "long" : "";
}

std::string joined(std::initializer_list<std::string> words) {
    std::string all;
    for (const std::string& word : words) {
        if (!word.empty()) all += (all.empty() ? "" : " ") + word;
    }
    return all;
}

/// Of the week of the first day.
basics::Day monday(const SheetCalendar& calendar) {
    const basics::Day first = calendar.days.front().day;
    return first - basics::days{std::chrono::weekday{first}.iso_encoding() - 1};
}

/// Few weeks and short days: there is room for large letters.
bool roomy(const SheetCalendar& calendar) {
    constexpr int few_weeks = 5;
    constexpr std::size_t short_day = 70;
    if ((calendar.days.back().day - monday(calendar)).count() / 7 >= few_weeks) return false;
    return std::all_of(calendar.days.begin(), calendar.days.end(), [](const SheetDay& day) {
        std::size_t all = length(day.text);
        for (const std::string& note : day.notes) all += length(note);
        return all <= short_day;
    });
}

/// More than fits a page in large letters.
bool much(const SheetTable& table) {
    constexpr std::size_t usual = 1500;
    std::size_t all = 0;
    for (const SheetRow& row : table.rows) {
        for (const SheetCell& cell : row.cells) {
            all += length(cell.text);
            for (const std::string& note : cell.notes) all += length(note);
        }
    }
    return table.large && all > usual;
}

class Page {
  public:
    /// `level` is that of a sheet's title.
    Page(Html& html, int level) : html_(html), level_(level) {}

    void add(const Sheet& sheet) {
        html_.open("article",
                   {{"class", joined({"sheet", sheet.landscape ? "landscape" : "", sheet.dense ? "dense" : ""})},
                    {"id", sheet.id},
                    {"aria-labelledby", sheet.id + "-title"}});
        html_.element(heading(0), sheet.title, {{"id", sheet.id + "-title"}});
        if (!sheet.lead.empty()) html_.element("p", sheet.lead, {{"class", "lead"}});
        html_.open("div", {{"class", "parts"}});
        for (const SheetPart& part : sheet.parts) std::visit([&](const auto& p) { write(p); }, part);
        html_.close();
        if (!sheet.foot.empty()) html_.element("p", sheet.foot, {{"class", "foot"}});
        html_.close();
    }

  private:
    [[nodiscard]] std::string heading(int below) const { return fmt::format("h{}", level_ + below); }

    void line(std::string_view text) {
        const std::string size = size_of(text);
        html_.element("span", text, {{"class", joined({"text", size})}});
    }

    void notes(const std::vector<std::string>& notes) {
        for (const std::string& note : notes) html_.element("span", note, {{"class", joined({"note", size_of(note)})}});
    }

    /// `column` is told beside the cell where a narrow screen has no room for columns.
    void cell(const SheetCell& cell, const std::string& column) {
        const bool none = cell.text.empty() && cell.notes.empty() && cell.boxes == 0 && !cell.blank;
        if (none || column.empty()) {
            html_.open("td", {{"role", "cell"}, {"class", none ? "none" : "first"}});
        } else {
            html_.open("td", {{"role", "cell"}, {"data-column", column}});
        }
        if (!cell.text.empty()) line(cell.text);
        notes(cell.notes);
        if (cell.boxes > 0) {
            html_.open(
                "span",
                {{"class", "boxes"}, {"role", "img"}, {"aria-label", fmt::format("{} to tick", packs(cell.boxes))}});
            for (int i = 0; i < cell.boxes; ++i) html_.own("<i></i>");
            html_.close();
        }
        if (cell.blank) html_.element("span", "", {{"class", "blank"}});
        html_.close();
    }

    void head_row(const std::vector<std::string>& columns) {
        html_.open("thead", {{"role", "rowgroup"}}).open("tr", {{"role", "row"}});
        for (const std::string& column : columns)
            html_.element("th", column, {{"scope", "col"}, {"role", "columnheader"}});
        html_.close().close();
    }

    void write(const SheetTable& table) {
        html_.open("table", {{"role", "table"},
                             {"class", joined({table.large ? "large" : "plain", much(table) ? "tight" : ""})}});
        if (!table.heading.empty()) html_.element("caption", table.heading);
        head_row(table.columns);
        html_.open("tbody", {{"role", "rowgroup"}});
        for (const SheetRow& row : table.rows) {
            html_.open("tr", {{"role", "row"}}).open("th", {{"scope", "row"}, {"role", "rowheader"}});
            if (row.urgent) html_.element("span", "! ", {{"class", "sign"}});
            line(row.head);
            html_.close();
            for (std::size_t i = 0; i < row.cells.size(); ++i)
                cell(row.cells[i], table.named || (table.large && i > 0) ? table.columns[i + 1] : std::string());
            html_.close();
        }
        html_.close().close();
        if (!table.foot.empty()) html_.element("p", table.foot, {{"class", "note"}});
    }

    void write(const SheetCalendar& calendar) {
        html_.open("table", {{"role", "table"}, {"class", joined({"calendar", roomy(calendar) ? "roomy" : ""})}});
        head_row({"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"});
        html_.open("tbody", {{"role", "rowgroup"}});
        for (basics::Day week = monday(calendar); week <= calendar.days.back().day; week += basics::days{7}) {
            html_.open("tr", {{"role", "row"}});
            for (int i = 0; i < 7; ++i) day(calendar, week + basics::days{i});
            html_.close();
        }
        html_.close().close();
    }

    void day(const SheetCalendar& calendar, basics::Day day) {
        const auto at = (day - calendar.days.front().day).count();
        if (at < 0 || at >= std::ssize(calendar.days)) {
            html_.element("td", "", {{"role", "cell"}, {"class", "other"}});
            return;
        }
        const SheetDay& one = calendar.days[static_cast<std::size_t>(at)];
        const std::string words = basics::short_day(day);  // "Fri 4 Dec"
        html_.open("td", {{"role", "cell"}}).open("span", {{"class", "date"}});
        html_.element("span", words.substr(0, words.find(' ') + 1), {{"class", "weekday"}});
        html_.text(words.substr(words.find(' ') + 1)).close();
        line(one.text);
        notes(one.notes);
        html_.close();
    }

    void write(const SheetList& list) {
        html_.open("section", {{"class", "part"}});
        if (!list.heading.empty()) html_.element(heading(1), list.heading);
        html_.open(list.numbered ? "ol" : "ul");
        for (const std::string& item : list.items) html_.element("li", item);
        html_.close().close();
    }

    Html& html_;
    int level_;
};

void contents(Html& html, std::span<const Sheet> sheets) {
    html.open("nav", {{"aria-label", "Contents"}}).open("ul");
    for (const Sheet& sheet : sheets) html.open("li").element("a", sheet.title, {{"href", "#" + sheet.id}}).close();
    html.close().close();
}

}  // namespace

std::string html(std::span<const Sheet> sheets, const std::string& title) {
    Html html;
    html.own("<!DOCTYPE html>\n").open("html", {{"lang", "en"}}).open("head");
    html.single("meta", {{"charset", "utf-8"}});
    html.single("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
    html.own(html_mark).own("\n");
    html.own(R"(<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; )"
             R"(img-src data:">)"
             "\n");
    html.own("<link rel=\"icon\" href=\"data:,\">\n");
    html.element("title", title);
    html.open("style").own(detail::sheet_style).close().close();
    html.open("body").open("main");
    const bool several = sheets.size() > 1;
    if (several) {
        html.element("h1", title);
        contents(html, sheets);
    }
    Page page(html, several ? 2 : 1);
    for (const Sheet& sheet : sheets) page.add(sheet);
    html.close().close().close();
    return std::move(html).take();
}

}  // namespace samebase::show
