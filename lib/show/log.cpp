#include "show/log.hpp"

#include <fmt/format.h>

#include "show/json.hpp"
#include "show/words.hpp"

namespace samebase::show {

std::string text(const std::vector<LogRow>& rows) {
    if (rows.empty()) return "Nothing has happened yet.\n";
    std::string out;
    for (const LogRow& row : rows) {
        const std::string line =
            wrapped(fmt::format("{}  {}{}", basics::iso(row.day), row.line, row.undone_by ? " [undone]" : ""), 12);
        out += line + "\n";
    }
    return out;
}

Json json(const std::vector<LogRow>& rows) {
    Json list = Json::array();
    for (const LogRow& row : rows) {
        list.push_back({{"number", row.number},
                        {"day", basics::iso(row.day)},
                        {"command", row.command},
                        {"line", row.line},
                        {"undoes", row.undoes ? Json(*row.undoes) : Json(nullptr)},
                        {"undone_by", row.undone_by ? Json(*row.undone_by) : Json(nullptr)}});
    }
    return {{"commands", std::move(list)}};
}

}  // namespace samebase::show
