// Something that a cook can do about a finding of a balance, whatever question found it.
#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "flow/cooking.hpp"
#include "kitchen/changes.hpp"
#include "measure/amount.hpp"

namespace samebase::flow {

/// One thing to do. Every mend has been tried: with it the finding is gone, of no ingredient more goes unmet than
/// before, and where the finding was about waste, less is spent and tossed together.
struct Mend {
    enum class Kind : std::uint8_t {
        discard,        ///< what is past its use-by goes to the bin
        stand_in,       ///< the dish is cooked with something else in place of what lacks
        exchange_days,  ///< two meals change places
        other_dish,     ///< another dish that night
        freeze,         ///< to a freezer today
        buy,            ///< packs more, bought today
        move            ///< to another place
    };
    Kind kind = Kind::discard;
    stock::LotNumber lot = 0;             ///< discard, freeze, move
    std::optional<stock::PlaceId> place;  ///< freeze, move: where to
    basics::Day day;                      ///< of the meal
    std::optional<basics::Day> other;     ///< exchange_days: with which
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::optional<cookbook::DishId> dish;       ///< stand_in: the dish; other_dish: the new one
    std::optional<catalogue::IngredientId> of;  ///< stand_in: what is replaced; buy: what is bought
    std::vector<std::pair<catalogue::IngredientId, measure::Amount>> use;  ///< stand_in: by what
    double fit = 0;                                                        ///< stand_in
    int packs = 0;                                                         ///< buy
    std::optional<measure::Amount> amount;  ///< freeze, where it is not all of the lot; buy: of all packs
    basics::Money price;                    ///< buy
    kitchen::Change change;                 ///< what it does to the kitchen
};

}  // namespace samebase::flow
