// Whether the household's rules let a dish be had at a meal: what it is for, the standing night, the minutes of the
// day, and how lately it was had. Who may and will eat it is another question: see serve.hpp.
#pragma once

#include <cstdint>
#include <optional>

#include "kitchen/kitchen.hpp"

namespace samebase::kitchen {

/// Why a meal is not for a dish.
enum class NotFor : std::uint8_t { meal, kind, minutes };

/// The first reason that there is; nothing where the dish may be had there. What is warmed takes no minutes.
[[nodiscard]] std::optional<NotFor> not_for(const Kitchen& kitchen, basics::Day day, Meal meal, cookbook::DishId dish,
                                            bool ready_meal = false);

/// Whether it is had, or planned for another meal, less than the dish's gap before or after that meal.
[[nodiscard]] bool within_gap(const Kitchen& kitchen, basics::Day day, Meal meal, cookbook::DishId dish);

/// How many sit at the table: who is home, and an occasion's guests.
[[nodiscard]] std::int64_t heads(const Kitchen& kitchen, basics::Day day, Meal meal);

/// The minutes that the day has for a meal: those for dinner, which no lunch may exceed either.
[[nodiscard]] int minutes_of(const Household& household, basics::Day day);

}  // namespace samebase::kitchen
