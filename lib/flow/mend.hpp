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

/// One thing to do. Every mend has been tried, as it is told: with it the finding is gone, or of what goes to the bin
/// at least half is kept; of no ingredient more goes unmet than before; and it costs no more than it saves, but for a
/// stand-in that costs a little, and a purchase, whose price is told.
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
    std::optional<measure::Amount> amount;  ///< freeze, where it is not all of a loose lot; buy: of all packs
    std::int64_t lot_packs = 0;             ///< freeze: so many packs, where it is not all of a lot of packs
    basics::Money price;                    ///< buy
    basics::Money
        net;  ///< what it costs in all, below nothing where it saves: bin, purchases, what is unmet, stock kept
    std::optional<cookbook::DishId> displaces;  ///< the planned dish that is not cooked then
    std::vector<std::pair<catalogue::IngredientId, basics::Money>>
        then_tossed;         ///< what more goes to the bin with it, dearest first
    kitchen::Change change;  ///< what it does to the kitchen
};

}  // namespace samebase::flow
