#include "show/json.hpp"
#include "show/sheet.hpp"

namespace samebase::show {

namespace {

Json part(const SheetTable& table) {
    Json rows = Json::array();
    for (const SheetRow& row : table.rows) {
        Json cells = Json::array();
        for (const SheetCell& cell : row.cells)
            cells.push_back({{"text", cell.text}, {"notes", cell.notes}, {"boxes", cell.boxes}});
        rows.push_back({{"head", row.head}, {"urgent", row.urgent}, {"cells", std::move(cells)}});
    }
    return {{"part", "table"},
            {"heading", table.heading},
            {"columns", table.columns},
            {"rows", std::move(rows)},
            {"foot", table.foot}};
}

Json part(const SheetCalendar& calendar) {
    Json days = Json::array();
    for (const SheetDay& day : calendar.days)
        days.push_back({{"day", json_day(day.day)}, {"text", day.text}, {"notes", day.notes}});
    return {{"part", "calendar"}, {"days", std::move(days)}};
}

Json part(const SheetList& list) {
    return {{"part", "list"}, {"heading", list.heading}, {"numbered", list.numbered}, {"items", list.items}};
}

}  // namespace

Json json(std::span<const Sheet> sheets) {
    Json list = Json::array();
    for (const Sheet& sheet : sheets) {
        Json parts = Json::array();
        for (const SheetPart& one : sheet.parts)
            parts.push_back(std::visit([](const auto& p) { return part(p); }, one));
        list.push_back({{"sheet", sheet.id},
                        {"title", sheet.title},
                        {"lead", sheet.lead},
                        {"parts", std::move(parts)},
                        {"foot", sheet.foot}});
    }
    return list;
}

}  // namespace samebase::show
