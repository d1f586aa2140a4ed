#include "show/log.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "show/json.hpp"
#include "show/words.hpp"

namespace samebase::show {

namespace {

constexpr std::string_view between = ", ";

/// A line that names many things, cut at the last comma that fits. How many are left out is not told: names have
/// commas too.
std::string shortened(const std::string& line, std::size_t room) {
    constexpr std::size_t few = 4;
    std::vector<std::size_t> breaks;
    for (auto at = line.find(between); at != std::string::npos; at = line.find(between, at + 1)) breaks.push_back(at);
    if (length(line) <= room || breaks.size() < few) return line;
    constexpr std::string_view more = ", ...";
    for (std::size_t kept = breaks.size(); kept > 0; --kept) {
        const std::string head = line.substr(0, breaks[kept - 1]);
        if (length(head) + more.size() <= room) return head + std::string(more);
    }
    return line;
}

}  // namespace

std::string text(const std::vector<LogRow>& rows) {
    if (rows.empty()) return "Nothing has happened yet.\n";
    std::string out;
    for (const LogRow& row : rows) {
        const std::string undone = row.undone_by ? " [undone]" : "";
        const std::string head = basics::iso(row.day) + "  ";
        const std::size_t room = screen_width() - std::min(screen_width(), length(head) + length(undone));
        out += wrapped(head + shortened(row.line, room) + undone, length(head)) + "\n";
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
