// A recipe of somebody else's as a dish of ours: each line's ingredient by its name in the catalogue, its amount, and a
// role. Nothing is taken for something else silently: what has no exact name is a problem, and the cook says what it
// is.
//
// An ingredient is taken where the line has the whole of one of its names: singular or plural, words in any order, one
// slip in a word of six letters or more. Words before the name that only say how it is cut, how large or how good it is
// ("finely chopped", "large", "ripe") may be missing in it; what makes it another thing ("dried", "smoked",
// "gluten-free", a tin) may not. Where the words with and without the knife's work are names of two things ("chopped
// tomatoes", "tomatoes"), the cook says which.
//
// Amounts are the lower end of a range. A line without one is a pinch of a seasoning, a tablespoon of a fresh herb or
// another staple, else a problem. Lines that end with a colon, and water, are left out.
//
// A role is the one that the ingredient has most often in the cookbook, else the members of its family, the nearest
// that has any; where then nothing is main, the heaviest of body, starch and binder is (of the rest, where there is
// none of these). Kinds are those whose word stands in the name, category or keywords; else the one that most dishes on
// the base have; else a problem.
#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "exchange/recipe.hpp"
#include "kitchen/kitchen.hpp"
#include "measure/measure_set.hpp"

namespace samebase::exchange {

/// What the cook says of the recipe. The first of each pair picks a line: its ingredient or all of it, in any case, or
/// some words of it that stand in no other line.
struct RecipeWords {
    using Pairs = std::vector<std::pair<std::string, std::string>>;
    Pairs as;                                       ///< "olive oil", "vegetable oil": its ingredient by an exact name
    Pairs roles;                                    ///< "cheese", "topping"
    Pairs amounts;                                  ///< "parsley", "30 g"
    std::map<std::string, std::string> remembered;  ///< by LineQuestion::name: the ingredient that the cook said before
    std::vector<std::string> skip;
    std::vector<std::string> kinds;
    std::optional<std::string> name;
    std::optional<std::string> base;    ///< an identifier
    std::optional<std::string> leaves;  ///< the name of what uneaten serves become
    bool freezes = false;               ///< whole serves freeze well
    std::optional<int> serves;          ///< of several recipes, of those that do not tell
    std::optional<int> minutes;         ///< the same
    bool dinner = true;
    bool lunch = false;
    measure::MeasureSet measures = measure::MeasureSet::australian_metric;
};

/// A line whose ingredient is not clear, as a question to the cook.
struct LineQuestion {
    std::string written;               ///< the line
    std::string words;                 ///< that pick it: for RecipeWords::as and skip
    std::string name;                  ///< what it calls the ingredient, in lower case: for RecipeWords::remembered
    std::vector<std::string> nearest;  ///< names of ingredients, at most three

    friend bool operator==(const LineQuestion&, const LineQuestion&) = default;
};

/// One line as it was read.
struct DishLine {
    std::string place;
    std::string written;
    std::optional<catalogue::IngredientId> ingredient;  ///< nothing: left out
    std::string left_out;                               ///< why: "a heading", "water", "as asked"; "" where it is in
    measure::Amount amount;                             ///< in the ingredient's own dimension
    std::string as_written;                             ///< the amount as the dish writes it
    catalogue::Role role = catalogue::Role::main;
    std::string
        role_from;  ///< "most dishes with it", "most dishes with its family", "asked", "the heaviest", "no dish has it"
    std::string preparation;
    bool optional = false;
    std::vector<std::string> notes;  ///< "2 to 3: the lower end", "no amount is written", "a slip of 'carrot'"
};

struct RecipeDish {  // NOLINT(bugprone-exception-escape): of moving its JSON, which asserts only
    std::string place;
    std::string id;  ///< of the name: "mom-s" is "moms", accents left out
    std::string name;
    std::vector<DishLine> lines;
    nlohmann::ordered_json document;  ///< the dish, as data/README.md describes it
};

/// What is to be asked so that the lines of the recipes are clear, each once.
[[nodiscard]] std::vector<LineQuestion> unclear_lines(std::span<const Recipe> recipes, const RecipeWords& words,
                                                      const kitchen::Knowledge& knowledge);

/// The ingredient of exactly that name; nothing where there is none.
[[nodiscard]] std::optional<catalogue::IngredientId> ingredient_called(const std::string& name,
                                                                       const kitchen::Knowledge& knowledge);

/// Every problem of every recipe, and what the cook said that picks no line, at once.
[[nodiscard]] basics::Result<std::vector<RecipeDish>> dishes_of(std::span<const Recipe> recipes,
                                                                const RecipeWords& words,
                                                                const kitchen::Knowledge& knowledge);

}  // namespace samebase::exchange
