// Whole things: amounts as they are cooked where a thing does not come in parts.
#pragma once

#include <cstdint>

#include "kitchen/cooking.hpp"

namespace samebase::kitchen::detail {

/// Whole eggs, quarters of other things that are counted by the piece; anything else as it is wanted.
[[nodiscard]] std::int64_t whole_pieces(const catalogue::Ingredient& thing, std::int64_t wanted);

/// How much of a line is cooked as it is written, where so much is wanted: besides, whole joints and birds, and whole
/// packs of a main or whole tins where the line bears it. What is loose in stock is taken as it is wanted.
[[nodiscard]] std::int64_t whole(const Kitchen& kitchen, const cookbook::DishIngredient& line, std::int64_t wanted);

/// Whether it is cooked whole whatever its weight: a joint, a bird.
[[nodiscard]] bool cooked_whole(const catalogue::Ingredient& ingredient);

}  // namespace samebase::kitchen::detail
