// A sheet: a page to look at, as plain data. The functions of sheets.hpp word answers into it; one writer each makes
// text, HTML, Markdown and JSON of it. Nothing in it is escaped: each writer does that for its own language.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "basics/day.hpp"
#include "show/words.hpp"

namespace samebase::show {

struct SheetCell {
    std::string text;
    std::vector<std::string> notes{};  ///< below it, smaller
    int boxes = 0;                     ///< to tick, one for each pack
    bool blank = false;                ///< room to write with a pencil
};

struct SheetRow {
    std::string head;
    std::vector<SheetCell> cells;
    bool urgent = false;  ///< has a sign, never colour alone
};

struct SheetTable {
    std::string heading;
    std::vector<std::string> columns;  ///< the first is that of the heads
    std::vector<SheetRow> rows;        ///< each with a cell for every other column
    std::string foot{};                ///< a line below
    bool large = false;                ///< the first cells are read from a metre away
    bool named = false;                ///< a cell says little without the name of its column
};

/// One day of a calendar.
struct SheetDay {
    basics::Day day;
    std::string text;
    std::vector<std::string> notes;
};

/// Whole days in order, without gaps.
struct SheetCalendar {
    std::vector<SheetDay> days;
};

struct SheetList {
    std::string heading;
    std::vector<std::string> items;
    bool numbered = false;
};

using SheetPart = std::variant<SheetTable, SheetCalendar, SheetList>;

struct Sheet {
    std::string id;  ///< "week": letters, digits and hyphens; one sheet of a page has it
    std::string title;
    std::string lead;  ///< a sentence; may be empty
    std::vector<SheetPart> parts;
    std::string foot{};
    bool landscape = false;
    bool dense = false;  ///< short rows: two columns on paper
};

[[nodiscard]] std::string text(const Sheet& sheet);
/// One page that needs no script and nothing from anywhere: with a line of contents where there are several sheets.
[[nodiscard]] std::string html(std::span<const Sheet> sheets, const std::string& title);
/// CommonMark; a table is a list, because not every reader knows tables.
[[nodiscard]] std::string markdown(const Sheet& sheet);
/// A list of them.
[[nodiscard]] nlohmann::ordered_json json(std::span<const Sheet> sheets);

/// What the head of every HTML page of ours holds.
inline constexpr std::string_view html_mark = R"(<meta name="generator" content="samebase">)";

}  // namespace samebase::show
