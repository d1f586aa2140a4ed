// The running list: what to buy on the next trip, so that everything planned up to the trip after it can be cooked.
#pragma once

#include <optional>
#include <string>
#include <string_view>
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
    int packs = 0;
    measure::Amount amount;  ///< of all packs
    basics::Money price;
    std::vector<BoughtFor> for_what;  ///< in the order of days, each dish once
    bool to_freeze = false;           ///< the first meal is later than it keeps in the fridge
};

struct ListAnswer {
    std::optional<basics::Day> trip;               ///< nothing: the household has no trips
    std::optional<basics::Day> next;               ///< the trip after it
    std::vector<ListItem> items;                   ///< in the order of shelves, then names
    std::vector<catalogue::IngredientId> ran_out;  ///< staples that were said to be out
    basics::Money total;
};

/// Costs one exact balance up to the trip after the next, four weeks at most.
[[nodiscard]] ListAnswer ask_list(const kitchen::Kitchen& kitchen, basics::Day today);

/// Where a shop keeps it: "vegetables", "dairy and eggs".
[[nodiscard]] std::string_view shelf(const catalogue::Catalogue& catalogue, catalogue::IngredientId id);

}  // namespace samebase::ask
