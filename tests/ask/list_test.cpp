// The running list and the recipe, in the demo kitchen.
#include "ask/list.hpp"

#include <algorithm>

#include "ask/menu.hpp"
#include "ask/recipe.hpp"
#include "kitchen/changes.hpp"
#include "kitchen/shelf.hpp"
#include "support/demo.hpp"

using namespace samebase;
using kitchen::Meal;
using tests::demo;
using tests::demo_day;
using tests::thing;

namespace {

/// Everything on the list arrives on the day of the trip.
kitchen::Kitchen after_the_trip(const kitchen::Kitchen& before, const ask::ListAnswer& list) {
    std::vector<kitchen::Got> things;
    for (const ask::ListItem& item : list.items) {
        kitchen::Got got;
        got.ingredient = item.ingredient;
        got.quantity.packs = std::int64_t{1000} * item.packs;
        got.pack = measure::Amount{item.amount.dimension(), item.amount.value() / item.packs};
        got.place = *kitchen::usual_place(before, item.ingredient);
        things.push_back(got);
    }
    const auto change = kitchen::got({before, *list.trip, 1000}, things);
    REQUIRE(change);
    kitchen::Kitchen after = before;
    kitchen::apply(after, *change);
    return after;
}

}  // namespace

TEST_CASE("what is on the list is all that the days up to the trip after it lack") {
    const kitchen::Kitchen before = demo();
    const basics::Day trip = *kitchen::shopping_day(before.household, demo_day);
    const ask::ListAnswer list = ask::ask_list(before, trip);
    REQUIRE(list.trip == trip);
    REQUIRE(list.next);
    REQUIRE_FALSE(list.items.empty());
    basics::Money sum;
    for (const ask::ListItem& item : list.items) {
        CHECK(item.packs > 0);
        CHECK_FALSE(item.for_what.empty());
        sum += item.price;
    }
    CHECK(sum == list.total);
    const flow::Balancer without(before, {trip, *list.next - basics::days{1}});
    const kitchen::Kitchen after = after_the_trip(before, list);
    const flow::Balancer with(after, {trip, *list.next - basics::days{1}});
    CHECK(with.balance(with.planned()).totals.unmet <= without.balance(without.planned()).totals.unmet);
}

TEST_CASE("the list goes through the shop by shelves, each once") {
    const kitchen::Kitchen kitchen = demo();
    const ask::ListAnswer list = ask::ask_list(kitchen, demo_day);
    std::vector<std::string> shelves;
    for (const ask::ListItem& item : list.items) {
        const std::string& here = kitchen::shelf(kitchen.catalogue(), item.ingredient);
        if (shelves.empty() || shelves.back() != here) shelves.push_back(here);
    }
    std::vector<std::string> once = shelves;
    std::sort(once.begin(), once.end());
    CHECK(std::unique(once.begin(), once.end()) == once.end());
    CHECK(shelves.front() == "vegetables");
}

TEST_CASE("a recipe writes the serve apart of who must avoid gluten, and less of the line it replaces") {
    const kitchen::Kitchen kitchen = demo();
    ask::RecipeQuestion question;
    question.dish = tests::dish("spaghetti-bolognese");
    question.day = demo_day;
    const auto answer = ask::ask_recipe(kitchen, demo_day, question);
    REQUIRE(answer);
    REQUIRE(answer->apart.size() == 1);
    CHECK(answer->apart.front().people == std::vector<std::string>{"Alba"});
    CHECK(answer->apart.front().lines.front().ingredient == thing("gluten-free-pasta"));
    CHECK(answer->apart.front().lines.front().in_place_of == thing("spaghetti"));
    const kitchen::Planned row{demo_day, Meal::dinner, question.dish, false, {}, 0, {}};
    const kitchen::Cooking cooking = kitchen::cook(kitchen, row);
    for (const ask::RecipeLine& line : answer->lines) {
        const auto need = std::find_if(cooking.needs.begin(), cooking.needs.end(),
                                       [&](const kitchen::Needed& n) { return n.ingredient == line.ingredient; });
        if (need != cooking.needs.end()) CHECK(need->amount == line.amount.value());
    }
}

TEST_CASE("a recipe for a number of serves is for nobody by name, and a night without cooking has none") {
    const kitchen::Kitchen kitchen = demo();
    ask::RecipeQuestion question;
    question.dish = tests::dish("rissoles");
    question.day = demo_day + basics::days{100};
    question.serves = 2;
    const auto answer = ask::ask_recipe(kitchen, demo_day, question);
    REQUIRE(answer);
    CHECK(answer->eaters.empty());
    CHECK(answer->serves_thousandths == 2000);
    question.dish = tests::dish("eating-out");
    CHECK_FALSE(ask::ask_recipe(kitchen, demo_day, question));
}

TEST_CASE("a menu shows what was had, what is planned and what is open") {
    kitchen::Kitchen kitchen = demo();
    kitchen.history.push_back({demo_day, Meal::dinner, tests::dish("rissoles")});
    kitchen::settle(kitchen);
    const auto menu = ask::ask_menu(kitchen, {demo_day, demo_day + basics::days{1}});
    REQUIRE(menu);
    REQUIRE(menu->days.size() == 2);
    REQUIRE(menu->days[0].dinners.size() == 1);
    CHECK(menu->days[0].dinners[0].had);
    CHECK(menu->days[0].dinners[0].dish == tests::dish("rissoles"));
    CHECK_FALSE(menu->days[1].dinners.front().had);
    CHECK_FALSE(ask::ask_menu(kitchen, {demo_day, demo_day + basics::days{1000}}));
}
