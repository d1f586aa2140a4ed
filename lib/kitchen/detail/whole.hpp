// Whole things: amounts as they are cooked where a thing does not come in parts.
#pragma once

#include <cstdint>

#include "kitchen/cooking.hpp"

namespace samebase::kitchen::detail {

/// How much of a line's ingredient is cooked where so much is wanted: whole eggs, quarters of other pieces, whole
/// joints and birds, and whole packs of a main or whole tins where the line bears it.
[[nodiscard]] std::int64_t whole(const Kitchen& kitchen, const cookbook::DishIngredient& line,
                                 catalogue::IngredientId ingredient, std::int64_t wanted);

/// Whether it is cooked whole whatever its weight: a joint, a bird.
[[nodiscard]] bool cooked_whole(const catalogue::Ingredient& ingredient);

}  // namespace samebase::kitchen::detail
