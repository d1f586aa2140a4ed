// Showing a recipe, for the commands that do.
#pragma once

#include "ask/recipe.hpp"
#include "context.hpp"

namespace samebase::cli {

[[nodiscard]] Outcome show_recipe(const Context& context, const kitchen::Kitchen& kitchen, basics::Day today,
                                  const ask::RecipeQuestion& question);

}  // namespace samebase::cli
