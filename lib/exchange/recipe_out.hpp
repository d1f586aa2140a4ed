// Dishes as schema.org writes recipes (Recipe, version 30.0, as JSON-LD). What is written is read by recipe.hpp and
// recipe_dish.hpp as the same dish: name, serves, times, ingredients with amounts and preparation, method, meals and
// kinds. What schema.org has no word for (roles, bases, how far an amount may be scaled, serves apart) is not in it. No
// diet is claimed: nobody has looked at the labels.
#pragma once

#include <span>
#include <string>

#include "kitchen/kitchen.hpp"

namespace samebase::exchange {

/// One document: the recipe, or with several dishes a list of them under @graph. Ends with a newline. `dishes` is not
/// empty.
[[nodiscard]] std::string write_recipes(std::span<const cookbook::DishId> dishes, const kitchen::Knowledge& knowledge);

}  // namespace samebase::exchange
