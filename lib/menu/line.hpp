// The lines of worth: of what every sum that ranks meals is made.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace samebase::menu {

enum class Line : std::uint8_t {
    waste_avoided,  ///< price of what is tossed without it, less with it
    to_buy,         ///< spent on packs without it, less with it
    kept,           ///< price of what is good at the end with it, less without it
    unmet,          ///< price of what can no longer be met without it, less with it
    stand_ins,      ///< less, for each, its weight in the dish x (1 - fit) x the household's fussiness
    had_lately,     ///< less what fades with the days since the dish, its base or the like was had
    liking,         ///< mean of the eaters' marks x the price of a mark
    effort,         ///< less the minutes over what the day allows x the price of a minute
};
inline constexpr std::size_t line_count = 8;

/// As JSON names it: "waste_avoided".
[[nodiscard]] std::string_view name(Line line);

}  // namespace samebase::menu
