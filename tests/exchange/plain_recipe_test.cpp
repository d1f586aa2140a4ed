// Recipes in plain text.
#include <catch2/catch.hpp>

#include "exchange/recipe.hpp"
#include "exchange/recipe_dish.hpp"
#include "support/shipped.hpp"

using namespace samebase;
using Lines = std::vector<std::string>;

namespace {

exchange::Recipe one(const std::string& text) {
    const auto read = exchange::read_recipes(text, "stew.txt");
    REQUIRE(read);
    REQUIRE(read->recipes.size() == 1);
    return read->recipes.front();
}

Lines lines(const exchange::Recipe& recipe) {
    Lines list;
    for (const auto& line : recipe.lines) list.push_back(line.text);
    return list;
}

const Lines onions{"2 onions, sliced", "500 g beef mince", "1 tin kidney beans, drained"};
const Lines method{"Fry the onions and the mince.", "Simmer with the beans, to 75 degrees."};

}  // namespace

TEST_CASE("a title, lines and a method are a recipe") {
    const auto recipe =
        one("Stationmaster's bean stew\nServes 4, 1 hour 5 minutes\n\n2 onions, sliced\n500 g beef mince\n"
            "1 tin kidney beans, drained\n\nFry the onions and the mince.\nSimmer with the beans, to 75 degrees.\n");
    CHECK(recipe.name == "Stationmaster's bean stew");
    CHECK(lines(recipe) == onions);
    CHECK(recipe.method == method);
    CHECK(recipe.serves == 4);
    CHECK(recipe.minutes == 65);
    const auto dishes = exchange::dishes_of({&recipe, 1}, {}, tests::shipped());
    REQUIRE(dishes);
    CHECK(dishes->front().id == "stationmasters-bean-stew");
    CHECK(dishes->front().lines.size() == 3);
}

TEST_CASE("headings, bullets, numbers and steps of several lines are read") {
    const auto recipe =
        one("# Bean stew\r\n\r\n## Ingredients\r\n- 2 onions, sliced\r\n\r\n* 500 g beef mince\r\n\u2022 1 tin kidney "
            "beans, "
            "drained\r\n\r\n## Method\r\n1. Fry the onions\r\n   and the mince.\r\n2) Simmer with the beans,\r\n\r\nto "
            "75 degrees."
            "\r\n");
    CHECK(recipe.name == "Bean stew");
    CHECK(lines(recipe) == onions);
    CHECK(recipe.method == method);
    CHECK_FALSE(recipe.serves);
    CHECK_FALSE(recipe.of_yield.empty());
    CHECK_FALSE(recipe.of_times.empty());
}

TEST_CASE("paragraphs are steps where nothing is numbered") {
    const auto recipe =
        one("Bean stew\n\n2 onions, sliced\n500 g beef mince\n1 tin kidney beans, drained\n\nFry the onions\nand the "
            "mince.\n\nSimmer with the beans,\nto 75 degrees.\n");
    CHECK(recipe.method == method);
}

TEST_CASE("a step that begins with an amount is no number of a step") {
    const auto recipe = one("Rice\n\n1 cup white rice\n\nBoil 12 minutes.\n5 minutes more, covered.\n");
    CHECK(recipe.method == Lines{"Boil 12 minutes.", "5 minutes more, covered."});
}

TEST_CASE("text without lines or method is no recipe") {
    for (const std::string text : {"", "\n\n", "Bean stew", "Bean stew\n\n2 onions\n", "Bean stew\nServes 4\n",
                                   "<html><p>Bean stew</p>\n<p>2 onions</p>\n\n<p>Fry.</p></html>"}) {
        INFO(text);
        CHECK_FALSE(exchange::read_recipes(text, "stew.txt"));
    }
}
