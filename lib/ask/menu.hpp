// What is planned? The meals of a span of days, as they stand in the plan and the history.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basics/day.hpp"
#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask {

/// A meal of the plan, or one that was had.
struct MenuMeal {
    kitchen::Meal meal = kitchen::Meal::dinner;
    cookbook::DishId dish;
    bool had = false;         ///< it is in the history
    bool ready_meal = false;  ///< warmed, not cooked
    std::vector<kitchen::LineSwap> swaps;
    std::int64_t serves_thousandths = 0;  ///< as planned, for those who are home; 0 where it was had
};

struct MenuDay {
    basics::Day day;
    std::vector<MenuMeal> dinners;
    std::vector<MenuMeal> lunches;
    std::optional<std::string> kind;  ///< what a standing night asks for, where no dinner is planned
    std::vector<std::string> notes;   ///< of occasions
    int guests = 0;
    std::vector<std::string> away;    ///< who is said to be away for dinner
    std::vector<std::string> eaters;  ///< who is home for dinner
    bool shopping = false;
};

struct Menu {
    basics::Span span;
    std::vector<MenuDay> days;
};

/// Costs the plan and history of the span. Problem: the span is longer than two years.
[[nodiscard]] basics::Result<Menu> ask_menu(const kitchen::Kitchen& kitchen, basics::Span span);

}  // namespace samebase::ask
