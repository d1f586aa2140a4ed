// Recipes as JSON-LD in the words of schema.org (Recipe, HowToStep, HowToSection, PropertyValue, QuantitativeValue):
// recipes that come in, as drafts of dishes, and dishes that go out.
//
// Nothing is guessed in silence. Each ingredient line says what it was taken as, or why it was not taken and which
// names are near; whatever else could not be read is a note. A draft has no base, no meals and no kinds: its cook says
// those.
//
// Roles are proposed by the nearest family of the ingredient that this table names, else body:
//   main       meat, seafood, pulses, tofu and tempeh
//   starch     starches, potatoes, pastry
//   binder     eggs, starch thickeners, gelling
//   sauce      milks, creams, plant milks, coconut milks, stocks and made sauces, cooking wines, tomato products
//   seasoning  herbs, spices, aromatics, salts, condiments, acids, fats, sweeteners, leavening
//   topping    cheese, nuts, seeds
// Leftovers are main.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "catalogue/role.hpp"
#include "cookbook/cookbook.hpp"
#include "kitchen/kitchen.hpp"
#include "measure/measure_set.hpp"

namespace samebase::exchange {

/// How one ingredient line was taken.
struct DraftLine {
    std::string text;                                   ///< as the recipe writes it
    std::optional<catalogue::IngredientId> ingredient;  ///< what its words clearly mean; nothing where they do not
    bool in_dish = false;              ///< it is among the dish's ingredients, in the order of the lines
    std::string reason;                ///< why it is not; "" where it is
    std::vector<std::string> nearest;  ///< where the words mean nothing or several things: names, best first, at most 8

    friend bool operator==(const DraftLine&, const DraftLine&) = default;
};

struct RecipeDraft {
    /// What could be read: an identifier from the name that no dish of the cookbook has, the name, the ingredients in
    /// `in_dish` lines, the method. `serves` and `minutes` are 0 where the recipe does not say them; `hands_on` is the
    /// preparation time, else all minutes.
    cookbook::Dish dish;
    std::vector<DraftLine> lines;
    basics::Problems notes;  ///< what else is missing or could not be read: "recipeYield", "totalTime" ...
};

/// All recipes of a document: a Recipe, or those in an array, under "@graph", or under "mainEntity". A Problem where
/// there is none. Amounts are read in the given measure set. Costs some milliseconds for the names, then microseconds a
/// line.
[[nodiscard]] basics::Result<std::vector<RecipeDraft>> read_recipes(const nlohmann::json& document,
                                                                    const kitchen::Knowledge& knowledge,
                                                                    measure::MeasureSet set);

/// The dish as a Recipe.
[[nodiscard]] nlohmann::json write_recipe(const cookbook::Dish& dish, const catalogue::Catalogue& catalogue);

/// The role that the table above proposes.
[[nodiscard]] catalogue::Role proposed_role(catalogue::IngredientId id, const catalogue::Catalogue& catalogue);

}  // namespace samebase::exchange
