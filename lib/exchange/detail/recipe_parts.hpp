// The parts of a schema.org Recipe, each by the forms in which it may be written.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "exchange/recipe.hpp"

namespace samebase::exchange::detail {

/// Text in whatever way it stands there: a text, or {"@value": "..."}. Nothing where it is neither.
[[nodiscard]] std::optional<std::string> written_text(const nlohmann::json& value);

/// recipeIngredient: a list of texts or of PropertyValue (value, unitText or unitCode, name), or one text in lines.
void read_ingredients(const nlohmann::json& value, Recipe& recipe);
/// recipeYield: a number, a text, a QuantitativeValue, or a list of these.
void read_yield(const nlohmann::json& recipe_value, Recipe& recipe);
/// totalTime, prepTime, cookTime.
void read_times(const nlohmann::json& recipe_value, Recipe& recipe);
/// recipeInstructions: text, HowToStep, HowToSection, ItemList, or lists of these.
void read_method(const nlohmann::json& value, Recipe& recipe);

/// What stands there, shortened, for a message.
[[nodiscard]] std::string shown(const nlohmann::json& value);

/// The number of serves that a yield tells, 1 to 1000: "4", "4 servings", "Serves 4-6" (the fewer), "1 loaf (12
/// servings)".
[[nodiscard]] std::optional<int> serves_in(const std::string& yield);
/// The same where it is a number and nothing else.
[[nodiscard]] std::optional<int> bare_serves(const std::string& yield);

}  // namespace samebase::exchange::detail
