// The peer of `else`: dishes ranked by how many ingredients they share with a dish, and by nothing else. It knows no
// amounts, no roles, no stand-ins, no stock, no days and no people.
#pragma once

#include <span>
#include <vector>

#include "cookbook/cookbook.hpp"

namespace samebase::benchmarks {

/// By dish handle: its ingredients in the order of handles, each once.
using Sets = std::vector<std::vector<catalogue::IngredientId>>;

[[nodiscard]] Sets ingredient_sets(const cookbook::Cookbook& cookbook);

/// All other dishes, the largest share in common first (what is in both over what is in either), then by identifier.
[[nodiscard]] std::vector<cookbook::DishId> by_overlap(const Sets& sets, cookbook::DishId with);

}  // namespace samebase::benchmarks
