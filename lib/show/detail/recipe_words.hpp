// A recipe in words, for the text of it and for its sheet.
#pragma once

#include <string>
#include <vector>

#include "ask/recipe.hpp"

namespace samebase::show::detail {

/// "40 minutes, 20 of them yours, for Alba and Bram, tomorrow".
[[nodiscard]] std::string recipe_head(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen,
                                      basics::Day today);
/// "2 tbsp", "1 tin", "500 g".
[[nodiscard]] std::string line_amount(const ask::RecipeLine& line, const cookbook::DishIngredient& written,
                                      const kitchen::Kitchen& kitchen);
/// "for cheddar", "use by tomorrow", "none in stock".
[[nodiscard]] std::vector<std::string> line_remarks(const ask::RecipeLine& line, const kitchen::Kitchen& kitchen,
                                                    basics::Day today);
/// "Apart, for Ines: in a pot, pan and plate of its own".
[[nodiscard]] std::string apart_words(const ask::RecipeApart& apart);
/// "Leftovers: in the fridge within 2 hours, 2 days."; "" where nothing keeps.
[[nodiscard]] std::string leftovers_words(const ask::RecipeAnswer& answer, const cookbook::Dish& dish);

}  // namespace samebase::show::detail
