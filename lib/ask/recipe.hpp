// How do I cook it, for us, that day? A dish with its amounts for those who eat, what is cooked in place of what
// written into its lines, and the serves apart.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basics/day.hpp"
#include "basics/problem.hpp"
#include "kitchen/cooking.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask {

struct RecipeQuestion {
    cookbook::DishId dish;
    basics::Day day;
    std::optional<kitchen::Meal> meal;     ///< nothing: the one it is planned for that day, else dinner where it is one
    std::optional<int> serves;             ///< nothing: as planned, else as many as are home, else as it is written
    int left = 0;                          ///< besides, for lunches; as planned where it is planned
    std::vector<kitchen::LineSwap> swaps;  ///< on top of those planned
};

/// How the stock stands for one line today. Other days are not looked at.
enum class Standing : std::uint8_t { fine, eat_soon, frozen, lacking };

/// One thing that goes in.
struct RecipeLine {
    std::size_t line = 0;  ///< position in the dish's ingredients
    catalogue::IngredientId ingredient;
    measure::Amount amount;
    /// Of what the dish writes for its own serves, in thousandths: the spoons and cups of `written` times this. Nothing
    /// where something else is used.
    std::optional<std::int64_t> of_written;
    std::optional<catalogue::IngredientId> in_place_of;
    std::string note;         ///< how what is used differs, from the stand-ins
    int against_written = 0;  ///< above 0: more of it than the dish says for so many; below 0: less
    Standing standing = Standing::fine;
    std::optional<basics::Day> use_by;       ///< with `eat_soon`
    std::optional<measure::Amount> missing;  ///< with `lacking`
};

/// A serve apart: its own lines, for those who need the same.
struct RecipeApart {
    std::vector<std::string> people;
    std::vector<RecipeLine> lines;
    std::vector<std::string> notes;  ///< how to cook it beside the rest
};

struct RecipeAnswer {
    RecipeQuestion question;
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::int64_t serves_thousandths = 0;  ///< cooked
    std::int64_t left_thousandths = 0;    ///< of these, left over
    std::vector<std::string> eaters;
    int guests = 0;
    std::vector<RecipeLine> lines;
    std::vector<RecipeLine> optional;
    std::vector<RecipeApart> apart;
    std::vector<std::string> refused;  ///< someone at the table must not have it
    std::vector<std::string> cautions;
    std::optional<int> keeps_days;  ///< what is left over, in the fridge
};

/// Problem: the dish is a night without cooking.
[[nodiscard]] basics::Result<RecipeAnswer> ask_recipe(const kitchen::Kitchen& kitchen, basics::Day today,
                                                      const RecipeQuestion& question);

}  // namespace samebase::ask
