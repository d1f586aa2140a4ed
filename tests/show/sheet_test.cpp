// Sheets: what each writer makes of the same plain data.
#include "show/sheet.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "ask/list.hpp"
#include "show/sheets.hpp"
#include "support/demo.hpp"

using namespace samebase;
using tests::demo;
using tests::demo_day;

namespace {

const std::string hostile = "<script>alert(1)</script> \"q\" 'a' & \x1b[2J \u202eevil *b* [c](d) `e` # f";

show::Sheet sheet_of(const std::string& words) {
    show::SheetTable table{words, {"What", words}, {{words, {show::SheetCell{words, {words}, 2}}, true}}, words};
    table.named = true;
    show::SheetCalendar calendar{{{demo_day, words, {words}}}};
    show::SheetList list{words, {words}, true};
    return {"week", words, words, {table, calendar, list}, words};
}

std::size_t count(const std::string& text, const std::string& what) {
    std::size_t found = 0;
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + what.size())) ++found;
    return found;
}

ask::Menu week_of(const kitchen::Kitchen& kitchen) {
    return *ask::ask_menu(kitchen, {demo_day, demo_day + basics::days{6}});
}

ask::ThawAnswer thaw_of(const kitchen::Kitchen& kitchen) {
    return *ask::ask_thaw(kitchen, demo_day, {demo_day, demo_day + basics::days{9}});
}

}  // namespace

TEST_CASE("HTML shows a hostile name as text, wherever it stands") {
    const std::vector<show::Sheet> sheets{sheet_of(hostile)};
    const std::string page = show::html(sheets, hostile);
    CHECK(count(page, "<script") == 0);
    CHECK(count(page, "\x1b") == 0);
    CHECK(count(page, "\u202e") == 0);
    const std::string shown =
        "&lt;script&gt;alert(1)&lt;/script&gt; &quot;q&quot; &#39;a&#39; &amp; \ufffd[2J \ufffdevil";
    // The title of page and sheet, the lead, the table's heading, column (also beside its cell), head, cell, note and
    // foot, the calendar's text and note, the list's heading and item, the foot.
    CHECK(count(page, shown) == 15);
}

TEST_CASE("HTML asks for nothing and needs no script") {
    const std::vector<show::Sheet> sheets{sheet_of("soup"), sheet_of("stew")};
    const std::string page = show::html(sheets, "Sheets");
    CHECK(count(page, "src=") == 0);
    CHECK(count(page, "http://") + count(page, "https://") == 0);
    CHECK(count(page, "default-src 'none'") == 1);
    CHECK(count(page, "href=\"#week\"") == 2);  // the contents
    CHECK(count(page, std::string(show::html_mark)) == 1);
}

TEST_CASE("a box stands for each pack") {
    const std::vector<show::Sheet> sheets{sheet_of("soup")};
    const std::string page = show::html(sheets, "Sheets");
    CHECK(count(page, "<i></i>") == 2);
    CHECK(count(page, "aria-label=\"2 packs to tick\"") == 1);
    CHECK(count(show::text(sheets.front()), "[ ][ ]") == 1);
}

TEST_CASE("a calendar begins on a Monday, and a day outside of it is empty") {
    // Wed 25 Nov 2026 alone: two empty days before it, four after.
    show::Sheet sheet{"month", "November", "", {show::SheetCalendar{{{demo_day, "soup", {}}}}}};
    const std::string page = show::html({&sheet, 1}, "November");
    CHECK(count(page, "class=\"other\"") == 6);
    CHECK(page.find("soup") > page.find("class=\"other\""));
    CHECK(count(page, "<span class=\"weekday\">Wed </span>25 Nov") == 1);
}

TEST_CASE("Markdown keeps signs of markup as text") {
    const std::string page = show::markdown(sheet_of(hostile));
    CHECK(count(page, "<script") == count(page, "\\<script"));
    CHECK(count(page, "\\*b\\*") == 12);
    CHECK(count(page, " *b*") == 0);
    CHECK(count(page, "\x1b") == 0);
}

TEST_CASE("no line of a sheet's text is wider than the screen") {
    show::SheetTable table{"", {"What", "There", "Until"}, {}};
    for (const std::string size : {"a", "a name of some length that goes on for a while", "b"})
        table.rows.push_back({size, {show::SheetCell{size}, show::SheetCell{"use by Fri 4 Dec", {size, size}, 14}}});
    for (const bool large : {false, true}) {
        table.large = large;
        std::istringstream text(show::text({"stock", "Stock", "", {table}}));
        for (std::string line; std::getline(text, line);) CHECK(show::length(line) <= show::usual_width);
    }
}

TEST_CASE("what is passed on names nobody of the household") {
    auto kitchen = demo();
    kitchen.household.occasions.push_back({demo_day, "Tovi's birthday", std::nullopt, 2, {}});
    kitchen.household.occasions.push_back({demo_day, "the harvest moon", std::nullopt, 0, {}});
    const auto menu = week_of(kitchen);
    const auto thaw = thaw_of(kitchen);
    const std::string shared = show::text(show::shared_week_sheet(menu, thaw, kitchen, show::Naming::nobody));
    for (const kitchen::Person& person : kitchen.household.people) CHECK(count(shared, person.name) == 0);
    CHECK(count(shared, "the harvest moon") == 1);
    const std::string named = show::text(show::shared_week_sheet(menu, thaw, kitchen, show::Naming::everybody));
    CHECK(count(named, "Tovi's birthday") == 1);
    CHECK(count(named, "Alba") > 0);
}

TEST_CASE("what is passed on says what is cooked in place of what") {
    auto kitchen = demo();
    auto* planned = &kitchen.plan.front();
    for (auto& row : kitchen.plan) {
        if (row.day == demo_day && row.meal == kitchen::Meal::dinner) planned = &row;
    }
    REQUIRE(planned->day == demo_day);
    const auto& dish = kitchen.cookbook()[planned->dish];
    planned->swaps = {{dish.ingredients.front().ingredient, {}, 1000}};
    const std::string shared =
        show::markdown(show::shared_week_sheet(week_of(kitchen), thaw_of(kitchen), kitchen, show::Naming::nobody));
    const std::string name = kitchen.catalogue()[dish.ingredients.front().ingredient].name;
    CHECK(shared.find(fmt::format("## Swapped\n\n- Wed 25 Nov: with no {}\n", name)) != std::string::npos);
}

TEST_CASE("the freezer's sheet has as many boxes as packs, and one row for one thing") {
    const auto kitchen = demo();
    show::StockAnswer answer{demo_day, std::nullopt, {}, {}};
    std::size_t packs = 0;
    for (const auto& lot : kitchen.lots) {
        answer.lots.push_back(&lot);
        packs += lot.packs.size();
    }
    REQUIRE(packs > 0);
    const show::Sheet sheet = show::stock_sheet(answer, kitchen);
    int boxes = 0;
    for (const auto& part : sheet.parts) {
        std::set<std::string> heads;
        for (const auto& row : std::get<show::SheetTable>(part).rows) {
            CHECK(heads.insert(row.head).second);
            boxes += row.cells.back().boxes;
        }
    }
    CHECK(boxes == static_cast<int>(packs));
}

TEST_CASE("the list's sheet has every thing of the list in its order, and room for a price") {
    const auto kitchen = demo();
    const auto answer = ask::ask_list(kitchen, demo_day);
    REQUIRE(!answer.items.empty());
    const show::Sheet sheet = show::list_sheet(answer, kitchen);
    std::size_t at = 0;
    for (const auto& part : sheet.parts) {
        const auto* table = std::get_if<show::SheetTable>(&part);
        if (table == nullptr) continue;
        for (const auto& row : table->rows) {
            const std::string& name = kitchen.catalogue()[answer.items[at++].ingredient].name;
            CHECK(row.head.find(name.substr(0, 3)) != std::string::npos);
            CHECK(row.cells.back().blank);
            CHECK(row.cells.front().boxes == 1);
        }
    }
    CHECK(at == answer.items.size());
}
