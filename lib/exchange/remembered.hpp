// What the cook once said that words in recipes mean: `words/recipes.json` in the kitchen's folder,
// {"recipe_words": [{"words": "spring greens", "ingredient": "collard-greens"}]}. It is written anew as a whole.
#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::exchange {

/// Names of ingredients by the words for them, in lower case; empty where there is no such document. An ingredient that
/// is no longer known is left out. Problem: a document that is something else.
[[nodiscard]] basics::Result<std::map<std::string, std::string>> read_remembered(
    const std::filesystem::path& kitchen_folder, const kitchen::Knowledge& knowledge);

/// Adds these to what is there; what was said of the same words before gives way. The caller has locked the folder.
[[nodiscard]] basics::Result<void> remember(const std::filesystem::path& kitchen_folder,
                                            const std::map<std::string, catalogue::IngredientId>& said,
                                            const kitchen::Knowledge& knowledge);

}  // namespace samebase::exchange
