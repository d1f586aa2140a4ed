// Recipes as schema.org writes them (Recipe, version 30.0, as JSON-LD), read from a JSON document or from the blocks of
// linked data in a page of the web; or a recipe in plain text (detail/plain_recipe.hpp). This is what is written there,
// as plain text; recipe_dish.hpp makes a dish of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basics/problem.hpp"

namespace samebase::exchange {

struct RecipeLine {
    std::string place;  ///< "cake.html, recipe 1, line 3"
    std::string text;   ///< one line, never empty
};

/// A recipe holds at most this many lines, and as many steps; a step and a name are at most so many bytes long.
inline constexpr std::size_t most_recipe_lines = 500;
inline constexpr std::size_t longest_step = 10'000;
inline constexpr std::size_t longest_name = 200;

/// What cannot be read is in one of the four lists of problems, and has no value.
struct Recipe {
    std::string place;  ///< "cake.html, recipe 1"
    std::string name;
    std::vector<RecipeLine> lines;
    std::optional<int> serves;    ///< 1 to 1000: told where the yield is a number, or says servings, portions or people
    std::string yield;            ///< as written, "" where there is none
    std::optional<int> minutes;   ///< totalTime, else prepTime and cookTime together; at most two days
    std::optional<int> hands_on;  ///< prepTime
    std::vector<std::string> about;   ///< category and keywords
    std::vector<std::string> method;  ///< a section's name goes before its first step
    basics::Problems of_name;
    basics::Problems of_yield;
    basics::Problems of_times;
    basics::Problems of_rest;
};

struct Recipes {
    std::vector<Recipe> recipes;   ///< at least one, in the order of the text
    basics::Problems passed_over;  ///< blocks of the page that are no JSON, where others have a recipe
};

/// The recipe in plain text, or whatever is of type Recipe in the document: in lists, under @graph, mainEntity,
/// itemListElement and item. `name` stands for the file in messages. Problems: no JSON (with line and column), no
/// recipe.
[[nodiscard]] basics::Result<Recipes> read_recipes(const std::string& text, const std::string& name);

}  // namespace samebase::exchange
