// What a balance takes out of the freezers, and when: whole packs, back from each dish's day by weight and method; and
// what it cooks from frozen.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "flow/balance.hpp"

namespace samebase::flow {

struct ThawMove {
    stock::LotNumber lot = 0;
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;  ///< whole packs
    int packs = 0;
    std::vector<std::int64_t> weights;  ///< of each of them
    stock::PlaceId from;
    basics::Day day;  ///< to take it out
    stock::ThawMethod method = stock::ThawMethod::fridge;
    basics::Day for_day;
    kitchen::Meal for_meal = kitchen::Meal::dinner;
    std::optional<cookbook::DishId> for_dish;
    basics::Day cook_by;  ///< the last day once it is thawed
};

/// In the order of (day, meal's day, lot); packs of one lot for one meal together. The packs are those that the balance
/// thaws, but that packs which do the same (as much as is used, no more of them, at most a tenth more by weight) are
/// exchanged so that near freezers are emptied before anybody walks to a far one.
[[nodiscard]] std::vector<ThawMove> thaw_moves(const kitchen::Kitchen& kitchen, const Balance& balance);

/// What goes from a freezer straight into the pan or onto the plate: nothing is to be taken out before.
struct FrozenUse {
    stock::LotNumber lot = 0;
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;
    stock::PlaceId from;
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::optional<cookbook::DishId> dish;  ///< nothing: a standing use
};

/// In the order of (day, meal, lot); from near freezers first, then the oldest lot first.
[[nodiscard]] std::vector<FrozenUse> frozen_uses(const kitchen::Kitchen& kitchen, const Balance& balance);

}  // namespace samebase::flow
