// What stands in water overnight before it can be cooked.
#pragma once

#include <span>
#include <vector>

#include "kitchen/kitchen.hpp"

namespace samebase::kitchen {

/// What of a dish, cooked with `swaps`, has to soak overnight: dried beans and chickpeas (common practice). A dish with
/// any is no answer for the same day; optional lines are left out.
[[nodiscard]] std::vector<catalogue::IngredientId> soaked_overnight(const Kitchen& kitchen, cookbook::DishId dish,
                                                                    std::span<const LineSwap> swaps);

}  // namespace samebase::kitchen
