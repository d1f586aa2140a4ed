// The dishes that a kitchen has taken in: `dishes/imported.json` in its folder, a document of dishes like any other
// (data/README.md). It is written anew as a whole, so that all dishes of one import come in or none.
#pragma once

#include <filesystem>
#include <nlohmann/json.hpp>
#include <span>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "cookbook/cookbook.hpp"
#include "exchange/knowledge.hpp"
#include "exchange/recipe_dish.hpp"

namespace samebase::exchange {

struct Addition {
    Draft draft;                        ///< what is to be written, and where
    std::vector<std::string> replaced;  ///< identifiers of dishes that were there already, in the order of the dishes
};

/// The document with the dishes added. A dish of the same identifier in it is replaced in its place where `replace`
/// says so. Problems: one that is there and is not to be replaced, one that is shipped or in another document, two of
/// the new ones with one identifier; a document that cannot be read. Nothing is written.
[[nodiscard]] basics::Result<Addition> with_dishes(const std::filesystem::path& kitchen_folder,
                                                   std::span<const RecipeDish> dishes, bool replace,
                                                   const cookbook::Cookbook& cookbook);

/// Writes it; makes the folder `dishes` where there is none.
[[nodiscard]] basics::Result<void> write_addition(const Addition& addition);

}  // namespace samebase::exchange
