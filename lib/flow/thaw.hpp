// What a balance takes out of the freezers, and when: whole packs, back from each dish's day by weight and method.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "flow/balance.hpp"

namespace samebase::flow {

struct ThawMove {
    stock::LotNumber lot = 0;
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;  ///< whole packs
    int packs = 0;
    stock::PlaceId from;
    basics::Day day;  ///< to take it out
    stock::ThawMethod method = stock::ThawMethod::fridge;
    basics::Day for_day;
    kitchen::Meal for_meal = kitchen::Meal::dinner;
    std::optional<cookbook::DishId> for_dish;
    basics::Day cook_by;  ///< the last day once it is thawed
};

/// In the order of (day, meal's day, lot); packs of one lot for one meal together.
[[nodiscard]] std::vector<ThawMove> thaw_moves(const kitchen::Kitchen& kitchen, const Balance& balance);

}  // namespace samebase::flow
