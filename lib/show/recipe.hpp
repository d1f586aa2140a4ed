// A recipe for those who eat, as text and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "ask/recipe.hpp"
#include "show/words.hpp"

namespace samebase::show {

[[nodiscard]] std::string text(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen);

/// `thousandths` of what a recipe writes, in its own measure: "2 tbsp", "1 1/2 cups", "3 cloves", of a bare number "1
/// 3/4". To a quarter of one, above that to a half, above three whole; what has a word for one to halves. Nothing where
/// the recipe says grams or the like.
[[nodiscard]] std::optional<std::string> in_own_measure(std::string_view written, std::int64_t thousandths);

}  // namespace samebase::show
