// A recipe in plain text: a title, a line for each ingredient, and the method.
//
//     Bean stew
//     Serves 4, 45 minutes
//
//     2 onions, sliced
//     1 tin kidney beans
//
//     1. Fry the onions.
//     2. Simmer with the beans.
//
// The first paragraph behind the title is the ingredients, the rest the method; or headings say so ("Ingredients",
// "Method", "Directions", "Instructions", "Steps"). Numbers and bullets before a line are not part of it. A step is a
// numbered line with those that follow it; without numbers a paragraph; a line where there is one paragraph only.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "exchange/recipe.hpp"

namespace samebase::exchange::detail {

/// Nothing where the text has not all three parts, or is a page of the web.
[[nodiscard]] std::optional<Recipe> read_plain_recipe(std::string_view text, const std::string& name);

}  // namespace samebase::exchange::detail
