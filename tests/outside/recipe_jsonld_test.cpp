// The Recipe example of schema.org, version 30.0 (https://schema.org/Recipe, example eg-0013, CC BY-SA 3.0), as its
// text is published. It is not shipped: the test looks for it in the folder that SAMEBASE_OUTSIDE_DATA names, else
// beside the repository. The facts that are asserted are what the example itself says in words, before any markup:
// preparation 15 minutes, cooking 1 hour, yield 1 loaf, and three of its lines of ingredients: bananas, an egg, 3/4 cup
// of sugar.
//
// Our copy ends inside the JSON, after its last key: so as it stands it has to be refused with the line on which it
// ends, and with the brace and the tag that close it (put there by this test) it has to read.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <optional>
#include <string>
#include <vector>

#include "exchange/recipe.hpp"
#include "exchange/recipe_dish.hpp"
#include "support/shipped.hpp"

using namespace samebase;

namespace {

std::optional<std::string> example() {
    const char* named = std::getenv("SAMEBASE_OUTSIDE_DATA");
    const std::filesystem::path folder =
        named != nullptr ? std::filesystem::path(named) : std::filesystem::path(SAMEBASE_SOURCE_DIR "/../shared/data");
    const auto path = folder / "recipe_jsonld" / "schema-org-example.txt";
    std::ifstream file(path);
    if (!file) {
        std::cout << "The Recipe example of schema.org is not at " << path
                  << "; it is not shipped, set SAMEBASE_OUTSIDE_DATA to the folder that holds it\n";
        return std::nullopt;
    }
    return std::string(std::istreambuf_iterator<char>(file), {});
}

bool is_closed(const std::string& text) {
    return text.find("</script", text.rfind("<script")) != std::string::npos;
}

std::string closed(const std::string& text) {
    return is_closed(text) ? text : text + "}\n</script>\n";
}

exchange::RecipeWords for_eight() {
    exchange::RecipeWords words;
    words.serves = 8;
    words.kinds = {"bake"};
    return words;
}

}  // namespace

TEST_CASE("the Recipe example of schema.org reads as what it says in words") {
    const auto text = example();
    if (!text) return;
    const auto read = exchange::read_recipes(closed(*text), "example");
    REQUIRE(read);
    REQUIRE(read->recipes.size() == 1);
    const auto& recipe = read->recipes.front();
    CHECK(recipe.name == "Mom's World Famous Banana Bread");
    CHECK(recipe.yield == "1 loaf");
    CHECK_FALSE(recipe.serves);
    CHECK(recipe.hands_on == 15);
    CHECK(recipe.minutes == 75);
    REQUIRE(recipe.lines.size() == 3);
    CHECK(recipe.lines[0].text == "3 or 4 ripe bananas, smashed");
    CHECK(recipe.lines[1].text == "1 egg");
    CHECK(recipe.lines[2].text == "3/4 cup sugar");
    REQUIRE(recipe.method.size() == 1);
    CHECK(recipe.method.front().starts_with("Preheat the oven to 350 degrees."));
    CHECK(recipe.of_rest.empty());
    CHECK(recipe.of_name.empty());
    CHECK(recipe.of_times.empty());
}

TEST_CASE("the Recipe example of schema.org becomes a dish, once it is said how many a loaf serves") {
    const auto text = example();
    if (!text) return;
    const auto read = exchange::read_recipes(closed(*text), "example");
    REQUIRE(read);
    const auto loaf = exchange::dishes_of(read->recipes, {}, tests::shipped());
    REQUIRE_FALSE(loaf);
    CHECK(basics::to_text(loaf.error().front()) ==
          "example, recipe 1, recipeYield: '1 loaf'; expected a number from 1 to 1000 of serves, servings, portions or "
          "people; say --serves N");
    const auto dishes = exchange::dishes_of(read->recipes, for_eight(), tests::shipped());
    REQUIRE(dishes);
    const auto& dish = dishes->front();
    CHECK(dish.id == "moms-world-famous-banana-bread");
    REQUIRE(dish.lines.size() == 3);
    std::vector<std::string> shown;
    for (const auto& line : dish.lines) {
        REQUIRE(line.ingredient);
        const auto& thing = tests::shipped().catalogue[*line.ingredient];
        shown.push_back(fmt::format("{} | {} | {}", line.as_written, thing.id, line.preparation));
    }
    CHECK(shown == std::vector<std::string>{"3 | banana | ripe, smashed", "1 | eggs | ", "3/4 cup | white-sugar | "});
    CHECK(dish.lines[0].notes == std::vector<std::string>{"the lower end of what is written"});
    // 3/4 of a cup of 250 mL is 187.5 mL.
    const auto cup = catalogue::in_own_dimension({measure::Dimension::volume, 187'500},
                                                 tests::shipped().catalogue[*dish.lines[2].ingredient]);
    REQUIRE(cup);
    CHECK(dish.lines[2].amount == *cup);
}

TEST_CASE("a JSON that ends too early is refused with its line, as our copy of the example does") {
    const auto text = example();
    if (!text || is_closed(*text)) return;
    const auto read = exchange::read_recipes(*text, "example");
    REQUIRE_FALSE(read);
    const auto lines = std::count(text->begin(), text->end(), '\n');
    CHECK(basics::to_text(read.error().front()) ==
          fmt::format("example, line {}, column 1: the document ends too early; expected a JSON document (RFC 8259)",
                      lines + 1));
}
