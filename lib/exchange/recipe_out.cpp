#include "exchange/recipe_out.hpp"

#include <fmt/format.h>

#include <cassert>
#include <nlohmann/json.hpp>

namespace samebase::exchange {

namespace {

using Json = nlohmann::ordered_json;

/// Minutes as ISO 8601 writes them.
std::string duration(int minutes) {
    constexpr int hour = 60;
    std::string text = "PT";
    if (minutes >= hour) text += fmt::format("{}H", minutes / hour);
    if (minutes % hour != 0 || minutes < hour) text += fmt::format("{}M", minutes % hour);
    return text;
}

std::string line(const cookbook::DishIngredient& one, const catalogue::Catalogue& catalogue) {
    std::string text = fmt::format("{} {}", one.written, catalogue[one.ingredient].name);
    if (!one.preparation.empty()) text += ", " + one.preparation;
    if (one.optional) text += ", optional";
    return text;
}

Json recipe(const cookbook::Dish& dish, const catalogue::Catalogue& catalogue) {
    Json lines = Json::array();
    for (const cookbook::DishIngredient& one : dish.ingredients) lines.push_back(line(one, catalogue));
    Json steps = Json::array();
    for (const std::string& step : dish.method) steps.push_back({{"@type", "HowToStep"}, {"text", step}});
    Json meals = Json::array();
    if (dish.dinner) meals.push_back("dinner");
    if (dish.lunch) meals.push_back("lunch");
    Json document{{"@type", "Recipe"},
                  {"name", dish.name},
                  {"recipeYield", fmt::format("{} serving{}", dish.serves, dish.serves == 1 ? "" : "s")},
                  {"totalTime", duration(dish.minutes)}};
    if (dish.hands_on > 0) document["prepTime"] = duration(dish.hands_on);
    if (dish.hands_on > 0 && dish.hands_on < dish.minutes)
        document["cookTime"] = duration(dish.minutes - dish.hands_on);
    document["recipeCategory"] = std::move(meals);
    document["keywords"] = fmt::format("{}", fmt::join(dish.kinds, ", "));
    document["recipeIngredient"] = std::move(lines);
    document["recipeInstructions"] = std::move(steps);
    return document;
}

}  // namespace

std::string write_recipes(std::span<const cookbook::DishId> dishes, const kitchen::Knowledge& knowledge) {
    assert(!dishes.empty());
    Json document{{"@context", "https://schema.org"}};
    if (dishes.size() == 1) {
        document.update(recipe(knowledge.cookbook[dishes.front()], knowledge.catalogue));
    } else {
        document["@graph"] = Json::array();
        for (const cookbook::DishId dish : dishes)
            document["@graph"].push_back(recipe(knowledge.cookbook[dish], knowledge.catalogue));
    }
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace samebase::exchange
