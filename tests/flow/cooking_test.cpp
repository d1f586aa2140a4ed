// What a planned meal asks of the stock where something is cooked in place of something.
#include "flow/cooking.hpp"

#include <algorithm>
#include <memory>
#include <utility>
#include <vector>

#include "support/demo.hpp"

using namespace samebase;
using kitchen::LineSwap;
using kitchen::Meal;
using tests::demo;
using tests::demo_day;
using tests::thing;

namespace {

std::int64_t needed(const flow::Cooking& cooking, std::string_view what) {
    const auto found = std::find_if(cooking.needs.begin(), cooking.needs.end(),
                                    [&](const flow::Needed& need) { return need.ingredient == thing(what); });
    return found == cooking.needs.end() ? 0 : found->amount;
}

/// The demo kitchen with nobody who avoids anything.
kitchen::Kitchen where_all_eat_all() {
    kitchen::Kitchen kitchen = demo();
    for (auto& person : kitchen.household.people) person.avoids = {};
    return kitchen;
}

kitchen::Planned meatballs(int serves, std::vector<LineSwap> swaps) {
    return {demo_day, Meal::dinner, tests::dish("meatballs"), false, serves, 0, std::move(swaps)};
}

}  // namespace

TEST_CASE("what is cooked in place of something is in the amount that was said, for as many serves") {
    const kitchen::Kitchen kitchen = where_all_eat_all();
    const LineSwap lentils{thing("beef-mince"), {{thing("red-lentils"), 300'000}}, 5'000};
    const LineSwap less{thing("zucchini"), {{thing("zucchini"), 123'000}}, 5'000};
    const LineSwap none{thing("eggs"), {}, 5'000};
    const auto five = flow::cook(kitchen, meatballs(5, {lentils, less, none}));
    CHECK(needed(five, "red-lentils") == 300'000);
    CHECK(needed(five, "beef-mince") == 0);
    CHECK(needed(five, "zucchini") == 123'000);
    CHECK(needed(five, "eggs") == 0);
    CHECK(needed(five, "passata") == needed(flow::cook(kitchen, meatballs(5, {})), "passata"));
    const auto two = flow::cook(kitchen, meatballs(2, {lentils}));
    CHECK(needed(two, "red-lentils") == 120'000);
    CHECK(needed(two, "eggs") == needed(flow::cook(kitchen, meatballs(2, {})), "eggs"));
}

TEST_CASE("what a question puts in place of something goes before what was planned, and adds to it") {
    const kitchen::Kitchen kitchen = where_all_eat_all();
    const LineSwap lentils{thing("beef-mince"), {{thing("red-lentils"), 300'000}}, 5'000};
    const LineSwap pork{thing("beef-mince"), {{thing("pork-mince"), 600'000}}, 5'000};
    const LineSwap none{thing("eggs"), {}, 5'000};
    const std::vector asked{pork};
    const auto cooking = flow::cook(kitchen, meatballs(5, {lentils, none}), asked);
    CHECK(needed(cooking, "pork-mince") == 600'000);
    CHECK(needed(cooking, "red-lentils") == 0);
    CHECK(needed(cooking, "eggs") == 0);
}

TEST_CASE("a serve apart keeps its own, and the rest get what is in place of the line") {
    kitchen::Kitchen kitchen = where_all_eat_all();
    const auto eaters = kitchen::eaters(kitchen, demo_day, Meal::dinner);
    REQUIRE(eaters.size() >= 2);
    kitchen::Person& alone = kitchen.household.people[eaters.front()];
    alone.avoids.add(catalogue::Allergen::gluten);
    const LineSwap dry{thing("fresh-breadcrumbs"), {{thing("dry-breadcrumbs"), 50'000}}, 5'000};
    const auto cooking = flow::cook(kitchen, meatballs(5, {dry}));
    CHECK(needed(cooking, "dry-breadcrumbs") == 50 * (5'000 - alone.serve_thousandths) / 5);
    CHECK(needed(cooking, "gluten-free-breadcrumbs") > 0);
    CHECK(needed(cooking, "fresh-breadcrumbs") == 0);
}

TEST_CASE("a swap is for all lines of its ingredient together") {
    kitchen::Kitchen kitchen = where_all_eat_all();
    cookbook::Dish dish = kitchen.cookbook()[tests::dish("meatballs")];
    dish.base = {};
    const auto mince = std::find_if(dish.ingredients.begin(), dish.ingredients.end(),
                                    [](const auto& line) { return line.ingredient == thing("beef-mince"); });
    REQUIRE(mince != dish.ingredients.end());
    const cookbook::DishIngredient again = *mince;
    dish.ingredients.push_back(again);
    std::vector<cookbook::Dish> dishes;
    dishes.push_back(std::move(dish));
    kitchen.knowledge = std::make_shared<const kitchen::Knowledge>(
        kitchen.catalogue(), cookbook::Cookbook({}, std::move(dishes)), std::vector<graph::Statement>{});
    const kitchen::Planned plain{demo_day, Meal::dinner, cookbook::DishId{0}, false, 5, 0};
    kitchen::Planned planned = plain;
    planned.swaps = {{thing("beef-mince"), {{thing("red-lentils"), 77'000}}, 5'000}};
    CHECK(needed(flow::cook(kitchen, plain), "beef-mince") == 1'400'000);
    CHECK(flow::of_the_dish(kitchen.cookbook()[cookbook::DishId{0}], thing("beef-mince"), 5'000) == 1'400'000);
    const auto swapped = flow::cook(kitchen, planned);
    CHECK(needed(swapped, "red-lentils") == 77'000);
    CHECK(needed(swapped, "beef-mince") == 0);
}
