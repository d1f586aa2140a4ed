// What someone at the table will not eat: a mark of -3, or a thing on the list of dislikes.
#pragma once

#include "kitchen/kitchen.hpp"

namespace samebase::ask::detail {

[[nodiscard]] bool will_not_eat(const kitchen::Person& person, cookbook::DishId dish);
[[nodiscard]] bool will_not_eat(const kitchen::Kitchen& kitchen, const kitchen::Person& person,
                                catalogue::IngredientId id);

}  // namespace samebase::ask::detail
