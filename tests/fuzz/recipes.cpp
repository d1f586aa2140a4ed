// Recipes as JSON-LD, by themselves and in saved pages, and the dishes that they become.
#include <nlohmann/json.hpp>

#include "exchange/detail/documents.hpp"
#include "exchange/imported.hpp"
#include "exchange/recipe.hpp"
#include "exchange/recipe_dish.hpp"
#include "fuzz/readers.hpp"

namespace samebase::fuzz {

void read_recipes(const std::string& text) {
    const auto read = exchange::read_recipes(text, "recipe.html");
    if (!read) return must_be_whole(read.error());
    must(!read->recipes.empty(), "there is a recipe");
    const auto& known = *demo().knowledge;
    const auto dishes = exchange::dishes_of(read->recipes, {}, known);
    if (!dishes) return must_be_whole(dishes.error());
    const auto addition = exchange::with_dishes("/nowhere", *dishes, false, known.cookbook);
    if (!addition) return must_be_whole(addition.error());
    basics::Problems problems;
    const exchange::detail::Document document{"imported.json", nlohmann::json::parse(addition->draft.text)};
    const auto cookbook = exchange::detail::read_cookbook({}, {&document, 1}, known.catalogue, problems);
    must(problems.empty(), "a dish that was taken in is read",
         problems.empty() ? "" : basics::to_text(problems.front()));
    must(cookbook.dishes().size() == dishes->size(), "every dish is taken in");
}

}  // namespace samebase::fuzz
