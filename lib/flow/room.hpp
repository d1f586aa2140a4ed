// Whether the places have room for what a balance puts into them.
#pragma once

#include <cstdint>
#include <vector>

#include "flow/balance.hpp"

namespace samebase::flow {

/// A place that holds more than its room at the end of a day.
struct Crowding {
    stock::PlaceId place;
    basics::Day day;               ///< the first of the days on which it does
    std::int64_t over_ml = 0;      ///< the most on any of them that follow without a break
    catalogue::IngredientId most;  ///< what takes most room there on that day, by lot
    stock::LotNumber lot = 0;      ///< its lot; 0: bought or cooked
    std::int64_t amount = 0;       ///< in its own dimension
};

/// Places whose room is not known are never crowded; crispers and the first fridge count as one place, the fridge. Lots
/// stay where they are until they are thawed, in the fridge; what is bought goes where it usually is, what is cooked
/// into the fridge. In the order of (place, day).
[[nodiscard]] std::vector<Crowding> crowded(const kitchen::Kitchen& kitchen, const Balance& balance);

/// Millilitres that are taken in a freezer at the end of each day of the balance, as thaw_moves() and frozen_uses()
/// empty it.
[[nodiscard]] std::vector<std::int64_t> taken_by_day(const kitchen::Kitchen& kitchen, const Balance& balance,
                                                     stock::PlaceId freezer);

}  // namespace samebase::flow
