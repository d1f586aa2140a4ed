#include "exchange/detail/path.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <string_view>
#include <vector>

namespace samebase::exchange::detail {

namespace {

using nlohmann::json;

/// A list or an object on the way, and the child that is looked at.
struct Level {
    const json* node;
    json::const_iterator at;
    std::size_t index = 0;

    /// Goes to the next child; whether there is one.
    bool next() {
        ++at;
        ++index;
        return at != node->cend();
    }
};

std::string escaped(std::string_view step) {
    std::string result;
    for (const char c : step) {
        if (c == '~') {
            result += "~0";
        } else if (c == '/') {
            result += "~1";
        } else {
            result += c;
        }
    }
    return result;
}

std::string written(const std::vector<Level>& levels) {
    std::string path;
    for (const Level& level : levels) {
        path += '/';
        path += level.node->is_array() ? fmt::format("{}", level.index) : escaped(level.at.key());
    }
    return path;
}

}  // namespace

std::string pointer_to(const json& document, const json* value) {
    std::vector<Level> levels;
    const json* here = &document;
    while (here != value) {
        if (here->is_structured() && !here->empty()) {
            levels.push_back({here, here->cbegin()});
        } else {
            while (!levels.empty() && !levels.back().next()) levels.pop_back();
            if (levels.empty()) return {};
        }
        here = &*levels.back().at;
    }
    return written(levels);
}

}  // namespace samebase::exchange::detail
