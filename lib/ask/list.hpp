// The running list: what to buy on the next trip, so that everything planned up to the trip after it can be cooked;
// with what ran out, and what was put on the list by hand.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basics/day.hpp"
#include "flow/balance.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask {

/// What an amount is bought for: a meal, or the standing uses.
struct BoughtFor {
    std::optional<cookbook::DishId> dish;  ///< nothing: a standing use
    basics::Day day;
};

struct ListItem {
    catalogue::IngredientId ingredient;
    /// What the plan lacks, or so many as were put on the list by hand where that is more; of what ran out one. 0: it
    /// is not known how it is sold.
    int packs = 0;
    measure::Amount amount;  ///< of all packs
    basics::Money price;
    std::vector<BoughtFor> for_what;  ///< in the order of days, each dish once
    bool to_freeze = false;           ///< the first meal is later than it keeps in the fridge
    bool garnish = false;             ///< no more than a little on top of dishes: they do without it
    bool by_hand = false;             ///< it was put on the list
    bool ran_out = false;             ///< a staple that was said to be out
};

struct ListAnswer {
    std::optional<basics::Day> trip;      ///< nothing: the household has no trips
    std::optional<basics::Day> next;      ///< the trip after it
    std::vector<ListItem> items;          ///< in the order of the household's walk by the shelves, then of names
    std::vector<kitchen::Listed> others;  ///< put on the list by hand, and no food
    std::vector<kitchen::Listed> later;   ///< put on the list by hand, and not sold on this trip
    basics::Money total;
};

/// Costs one exact balance up to the trip after the next, four weeks at most.
[[nodiscard]] ListAnswer ask_list(const kitchen::Kitchen& kitchen, basics::Day today);

}  // namespace samebase::ask
