// The recipes of an old cookbook, cut out of it by a heuristic: as plain text they are read without a crash, and so
// many of their lines are matched.
//
// Source: see README.md of the outside data (old_cookbook). It is not shipped.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "exchange/detail/recipe_ingredient.hpp"
#include "exchange/recipe.hpp"
#include "exchange/recipe_dish.hpp"
#include "measure/line.hpp"
#include "support/shipped.hpp"

using namespace samebase;

namespace {

struct Old {
    std::string title;
    std::vector<std::string> lines;
};

std::vector<Old> old_recipes() {
    const char* named = std::getenv("SAMEBASE_OUTSIDE_DATA");
    const std::filesystem::path folder =
        named != nullptr ? std::filesystem::path(named) : std::filesystem::path(SAMEBASE_SOURCE_DIR "/../shared/data");
    std::ifstream file(folder / "old_cookbook" / "recipes.tsv");
    if (!file) std::cout << "The old cookbook is not in " << folder << "; set SAMEBASE_OUTSIDE_DATA to what holds it\n";
    std::vector<Old> recipes;
    std::string row;
    std::getline(file, row);  // the heads
    while (std::getline(file, row)) {
        const auto lines = row.rfind('\t');
        Old old{row.substr(0, row.find('\t')), {}};
        std::string rest = row.substr(lines + 1);
        for (auto at = rest.find(" | "); !rest.empty(); at = rest.find(" | ")) {
            old.lines.push_back(rest.substr(0, at));
            rest = at == std::string::npos ? "" : rest.substr(at + 3);
        }
        recipes.push_back(std::move(old));
    }
    return recipes;
}

}  // namespace

TEST_CASE("recipes of an old cookbook are read as plain text, and most lines are matched", "[.long]") {
    const auto recipes = old_recipes();
    if (recipes.empty()) return;
    REQUIRE(recipes.size() > 800);
    const exchange::detail::Names names(tests::shipped().catalogue);
    std::size_t lines = 0;
    std::size_t matched = 0;
    std::size_t several = 0;
    std::size_t water = 0;
    for (const Old& old : recipes) {
        std::string text = old.title + "\nServes 4, 30 minutes\n\n";
        for (const std::string& line : old.lines) text += line + "\n";
        text += "\nCook it.\n";
        INFO(text);
        const auto read = exchange::read_recipes(text, "old.txt");
        REQUIRE(read);
        CHECK(read->recipes.front().lines.size() == old.lines.size());
        exchange::RecipeWords words;
        words.kinds = {"bake"};
        const auto dishes = exchange::dishes_of(read->recipes, words, tests::shipped());
        if (!dishes) CHECK_FALSE(dishes.error().empty());
        for (const auto& line : read->recipes.front().lines) {
            const auto written = measure::read_line(line.text, measure::MeasureSet::us_customary);
            if (written && exchange::detail::is_water(written->name)) {
                ++water;
                continue;
            }
            ++lines;
            if (!written) continue;
            const auto called = names.of(*written);
            matched += called.ingredient ? 1 : 0;
            several += called.several ? 1 : 0;
        }
    }
    std::cout << "Old cookbook: " << matched << " of " << lines << " lines matched (" << 100 * matched / lines
              << " %), " << several << " may be several things, " << water << " are water\n";
    CHECK(matched * 100 >= lines * 70);  // 72 in 100 of all lines; the aim is 80 of those that the catalogue has
}
