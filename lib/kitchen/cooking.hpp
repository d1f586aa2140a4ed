// What cooking a dish takes, and what it gives back. The one arithmetic of recipes: the ledger, the balance and the
// recipe on the screen all go by it.
//
// In this order: the lines of the dish for so many serves; for each eater who needs a serve apart their own share of a
// line; for the rest what is cooked in place of the line; then whole things. Eggs are whole, other things that are
// counted by the piece are in quarters. A joint or a bird is cooked whole, and what that makes more than was wanted is
// left over. Of a main in packs, and of tins, whole packs are taken where the dish bears it. What is cooked in place of
// a line is taken as it was said.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "kitchen/kitchen.hpp"
#include "kitchen/serve.hpp"

namespace samebase::kitchen {

struct Needed {
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;  ///< in the ingredient's own dimension

    friend auto operator<=>(const Needed&, const Needed&) = default;
};

/// A dish that is cooked for a meal. For all but those who need a serve apart (see serve_for), `swaps` are cooked in
/// place of lines.
struct Batch {
    basics::Day day;
    Meal meal = Meal::dinner;
    cookbook::DishId dish;
    std::int64_t serves_thousandths = 0;
    std::vector<LineSwap> swaps{};  ///< of one ingredient at most one
};

/// Something else in place of a line, for one eater.
struct ApartTake {
    std::size_t person = 0;  ///< position in household.people
    Needed take;
};

/// What goes in for one line of a dish.
struct LineTake {
    std::size_t line = 0;  ///< position in the dish's ingredients
    bool swapped = false;  ///< something else, or another amount; of several lines of an ingredient the first has it
    std::vector<Needed> takes;  ///< for the common pot; empty: nothing
    std::vector<ApartTake> apart;
};

struct Takes {
    std::vector<LineTake> lines;        ///< one for each line of the dish, in its order
    std::int64_t more_thousandths = 0;  ///< serves left over besides, since a joint or a bird is cooked whole
};

/// `holds`, where it is given, is held_allergens(kitchen).
[[nodiscard]] Takes takes(const Kitchen& kitchen, const Batch& batch, const Holds* holds = nullptr);

/// The sums over all lines, in the order of ingredients, each once.
enum class Lines : std::uint8_t { required, optional };
[[nodiscard]] std::vector<Needed> sums(const Kitchen& kitchen, cookbook::DishId dish, const Takes& takes, Lines which);

/// A meal that is cooked, or a ready meal that is warmed.
struct Cooking {
    basics::Day day;
    Meal meal = Meal::dinner;
    cookbook::DishId dish;
    bool ready_meal = false;
    std::int64_t serves_thousandths = 0;  ///< cooked
    std::int64_t left_thousandths = 0;    ///< of these, left over
    std::vector<Needed> needs;  ///< in the order of ingredients, each once; staples that are there are not among them
    std::vector<Needed> makes;  ///< leftovers and by-products

    friend bool operator==(const Cooking&, const Cooking&) = default;
};

/// The planned meal for so many serves eaten and so many more left over. Optional lines are left out. `swaps` come on
/// top of those planned, and before them where both are of one ingredient.
[[nodiscard]] Cooking cook(const Kitchen& kitchen, const Planned& planned, std::span<const LineSwap> swaps = {},
                           const Holds* holds = nullptr);

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

}  // namespace samebase::kitchen
