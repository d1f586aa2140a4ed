#include "menu/line.hpp"

#include <array>

namespace samebase::menu {

std::string_view name(Line line) {
    constexpr std::array<std::string_view, line_count> names{"waste_avoided", "to_buy",     "kept",   "unmet",
                                                             "stand_ins",     "had_lately", "liking", "effort"};
    return names[static_cast<std::size_t>(line)];
}

}  // namespace samebase::menu
