// How much the shipped data holds: enough for a household to live on, and for any standing night to go six weeks
// without a repeat.
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <string_view>

#include "support/shipped.hpp"

using namespace samebase;
using catalogue::Kind;
using cookbook::Dish;

namespace {

template <class Holds>
long dinners(Holds holds) {
    const auto dishes = tests::shipped().cookbook.dishes();
    return std::count_if(dishes.begin(), dishes.end(), [&](const Dish& dish) { return dish.dinner && holds(dish); });
}

bool meatless(const Dish& dish) {
    return std::all_of(dish.ingredients.begin(), dish.ingredients.end(),
                       [](const auto& part) { return tests::shipped_catalogue().meatless(part.ingredient); });
}

bool is_kind(const Dish& dish, std::string_view kind) {
    return std::find(dish.kinds.begin(), dish.kinds.end(), kind) != dish.kinds.end();
}

/// All that it is made of is plentiful in that month, in the south or the north.
bool in_season(const Dish& dish, int month, bool south) {
    return std::all_of(dish.ingredients.begin(), dish.ingredients.end(), [&](const auto& part) {
        const catalogue::Ingredient& thing = tests::shipped_catalogue()[part.ingredient];
        return ((south ? thing.season_south : thing.season_north) >> month & 1) != 0;
    });
}

}  // namespace

TEST_CASE("the catalogue is large enough") {
    const auto ingredients = tests::shipped_catalogue().ingredients();
    CHECK(ingredients.size() >= 450);
    const auto made = std::count_if(ingredients.begin(), ingredients.end(), [](const auto& thing) {
        return thing.kind == Kind::made || thing.kind == Kind::cooked;
    });
    CHECK(made >= 90);
    const auto cooked = std::count_if(ingredients.begin(), ingredients.end(),
                                      [](const auto& thing) { return thing.kind == Kind::cooked; });
    CHECK(cooked >= 40);
    CHECK(tests::shipped_catalogue().families().size() >= 90);
    CHECK(tests::shipped().graph.statements().size() >= 350);
}

TEST_CASE("the cookbook is large enough") {
    CHECK(tests::shipped().cookbook.bases().size() >= 60);
    CHECK(dinners([](const Dish&) { return true; }) >= 250);
    const auto dishes = tests::shipped().cookbook.dishes();
    CHECK(std::count_if(dishes.begin(), dishes.end(), [](const Dish& dish) { return dish.lunch; }) >= 120);
    std::set<std::string> kinds;
    for (const Dish& dish : dishes) kinds.insert(dish.kinds.begin(), dish.kinds.end());
    CHECK(kinds.size() >= 20);
    CHECK(dinners(meatless) >= 60);
    const auto free_of_gluten = [](const Dish& dish) {
        return !cookbook::allergens(dish, tests::shipped_catalogue()).has(catalogue::Allergen::gluten);
    };
    CHECK(dinners(free_of_gluten) >= 60);
    CHECK(dinners([](const Dish& dish) { return dish.minutes <= 30; }) >= 80);
}

TEST_CASE("a standing night goes six weeks without a repeat") {
    for (const char* kind : {"roast",    "mince", "pasta",   "pie",       "curry",    "soup",     "stew", "traybake",
                             "stir-fry", "salad", "pizza",   "flatbread", "pancakes", "fish",     "eggs", "pulses",
                             "rice",     "grill", "burgers", "potatoes",  "noodles",  "sausages", "bake", "fritters"}) {
        INFO(kind);
        CHECK(dinners([&](const Dish& dish) { return is_kind(dish, kind); }) >= 6);
    }
}

TEST_CASE("each month has dinners of what is plentiful then") {
    for (int month = 0; month < 12; ++month) {
        for (const bool south : {true, false}) {
            INFO("month " << month + 1 << (south ? ", south" : ", north"));
            CHECK(dinners([&](const Dish& dish) { return in_season(dish, month, south); }) >= 42);
        }
    }
}
