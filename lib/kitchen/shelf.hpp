// Where things are shelved in a shop, and in which order the household walks by.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kitchen/household.hpp"

namespace samebase::kitchen {

/// The shelf of what is no food.
inline constexpr std::string_view not_food = "not food";

/// All of them, in the order of a walk through an ordinary shop (common practice).
[[nodiscard]] const std::vector<std::string>& shelf_names();

/// Where a shop keeps it: "vegetables", "dairy and eggs".
[[nodiscard]] const std::string& shelf(const catalogue::Catalogue& catalogue, catalogue::IngredientId id);

/// All shelves as the household walks by: those that it has put in order, then the others as they usually stand.
[[nodiscard]] std::vector<std::string> walk(const Household& household);

}  // namespace samebase::kitchen
