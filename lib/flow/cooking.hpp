// What a meal asks of the stock and gives back: a dish scaled to the serves that its day needs.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "flow/parts.hpp"
#include "flow/serve.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::flow {

struct Needed {
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;  ///< in the ingredient's own dimension

    friend auto operator<=>(const Needed&, const Needed&) = default;
};

/// A meal that is cooked, or a ready meal that is warmed.
struct Cooking {
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    cookbook::DishId dish;
    bool ready_meal = false;
    std::int64_t serves_thousandths = 0;  ///< cooked
    std::int64_t left_thousandths = 0;    ///< of these, left over
    std::vector<Needed> needs;  ///< in the order of ingredients, each once; staples that are there are not among them
    std::vector<Needed> makes;  ///< leftovers and by-products

    friend bool operator==(const Cooking&, const Cooking&) = default;
};

/// The dish for so many serves eaten and so many more left over. Optional lines are left out. `swaps` come on top of
/// those planned, and before them where both are of one ingredient; they are for all but every eater who needs a serve
/// apart (see serve_for) and gets its swaps. `holds`, where it is given, is held_allergens(kitchen).
[[nodiscard]] Cooking cook(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned,
                           std::span<const LineSwap> swaps = {}, const Holds* holds = nullptr);

/// The amount of `use` that does the work of an amount of `of`, by mass. That needs weights of both; where the
/// catalogue lacks one the amount is taken over as it is.
[[nodiscard]] std::int64_t in_place_of(const catalogue::Catalogue& catalogue, catalogue::IngredientId of,
                                       std::int64_t amount, catalogue::IngredientId use, graph::Ppm ratio);

/// The amount that all lines of an ingredient come to for so many serves; the optional ones only where all are.
[[nodiscard]] std::int64_t of_the_dish(const cookbook::Dish& dish, catalogue::IngredientId ingredient,
                                       std::int64_t serves_thousandths);

/// What a stand-in, its parts with their ratios by mass, puts in place of all lines of an ingredient for so many
/// serves.
[[nodiscard]] LineSwap swap_of(const catalogue::Catalogue& catalogue, const cookbook::Dish& dish,
                               catalogue::IngredientId of,
                               std::span<const std::pair<catalogue::IngredientId, graph::Ppm>> use,
                               std::int64_t serves_thousandths);

/// What an answer says of a cooking of so many serves, for the plan.
[[nodiscard]] std::vector<LineSwap> as_swaps(std::span<const StandInUse> stand_ins, std::span<const Scaled> scaled,
                                             std::int64_t serves_thousandths);

}  // namespace samebase::flow
