// The balance of the demo kitchen's people and places: what a plan leaves and what it asks for.
#include "flow/balance.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>

#include "support/demo.hpp"

using namespace samebase;
using namespace samebase::flow;
using kitchen::Meal;
using tests::demo;
using tests::demo_day;

namespace {

/// The demo household with nothing in stock, nothing planned and no standing uses.
kitchen::Kitchen bare() {
    kitchen::Kitchen kitchen = demo();
    kitchen.lots.clear();
    kitchen.plan.clear();
    kitchen.household.standing_uses.clear();
    kitchen.household.trips.clear();
    return kitchen;
}

basics::Span days(int number) {
    return {demo_day, demo_day + basics::days{number - 1}};
}

/// Some dish with leftovers that keep for days, whose leftover is a thing by itself.
struct Leaving {
    cookbook::DishId dish;
    catalogue::IngredientId leaves;
    int keeps = 0;
};

Leaving leaving_dish(const kitchen::Kitchen& kitchen) {
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size(); ++i) {
        const auto& dish = kitchen.cookbook()[cookbook::DishId{i}];
        if (!dish.leaves || !dish.dinner || !dish.gives.empty()) continue;
        const auto& fridge = kitchen.catalogue()[*dish.leaves].keeps[static_cast<std::size_t>(catalogue::Keep::fridge)];
        if (fridge.said != catalogue::Keeping::Said::time) continue;
        return {{i}, *dish.leaves, fridge.time.days};
    }
    FAIL("no dish leaves anything");
    return {};
}

}  // namespace

TEST_CASE("what a dinner leaves is there from the next lunch, as long as leftovers keep, and then it is tossed") {
    kitchen::Kitchen kitchen = bare();
    const Leaving leaving = leaving_dish(kitchen);
    REQUIRE(leaving.keeps >= 1);
    kitchen.plan = {{demo_day, Meal::dinner, leaving.dish, false, 2, 3}};
    const Balancer balancer(kitchen, days(leaving.keeps + 3));
    const Balance alone = balancer.balance(balancer.planned());
    const Part* part = alone.part(leaving.leaves);
    REQUIRE(part != nullptr);
    REQUIRE(part->component.units.size() == 1);
    const Unit& made = part->component.units.front();
    CHECK(made.lot == 0);
    CHECK(made.amount == 3000);
    CHECK(made.first == lunch_of(1));
    CHECK(made.last == dinner_of(leaving.keeps));
    CHECK(part->outcome.fates.front().tossed == 3000);
    CHECK(part->outcome.tossed == made.price);

    // Warmed for two on the last day that they keep, one serve is over; a day later there is nothing.
    for (const int day : {leaving.keeps, leaving.keeps + 1}) {
        auto meals = balancer.planned();
        meals.push_back(cook(kitchen, {demo_day + basics::days{day}, Meal::dinner, leaving.dish, true, 2, 0}));
        const Balance with = balancer.rebalance(alone, meals);
        const Part* warmed = with.part(leaving.leaves);
        REQUIRE(warmed != nullptr);
        REQUIRE(warmed->component.wants == std::vector<Want>{{dinner_of(day), 2000}});
        CHECK(warmed->reasons == std::vector<Reason>{{leaving.dish, Meal::dinner}});
        const bool good = day == leaving.keeps;
        CHECK(warmed->outcome.unmet.front() == (good ? 0 : 2000));
        CHECK(warmed->outcome.fates.front().tossed == (good ? 1000 : 3000));
    }
}

TEST_CASE("standing uses ask at lunch on their weekdays") {
    kitchen::Kitchen kitchen = bare();
    const auto milk = tests::thing("milk");
    // 25 November 2026 is a Wednesday.
    const std::uint8_t thursday = 1U << 4;
    kitchen.household.standing_uses = {{milk, measure::Amount{kitchen.catalogue()[milk].dimension, 700'000}, thursday}};
    const Balancer balancer(kitchen, days(9));
    const Balance balance = balancer.balance({});
    const Part* part = balance.part(milk);
    REQUIRE(part != nullptr);
    CHECK(part->component.wants == std::vector<Want>{{lunch_of(1), 700'000}, {lunch_of(8), 700'000}});
    CHECK(part->reasons == std::vector<Reason>(2, Reason{std::nullopt, Meal::lunch}));
    CHECK(part->outcome.unmet == std::vector<std::int64_t>{700'000, 700'000});
    CHECK(balance.totals.unmet == unmet_price(part->component, part->outcome));
    CHECK(balance.totals.unmet.minor > 0);
}

TEST_CASE("what is bought at once is bought on the first day, and only what is asked for") {
    kitchen::Kitchen kitchen = bare();
    const auto milk = tests::thing("milk");
    kitchen.household.standing_uses = {{milk, measure::Amount{kitchen.catalogue()[milk].dimension, 700'000}, 1U << 4}};
    const Balancer balancer(kitchen, days(3));
    const Balance without = balancer.balance({});
    CHECK(without.totals.spent.minor == 0);
    const catalogue::IngredientId at_once[] = {milk};
    const Balance with = balancer.rebalance(without, {}, at_once);
    CHECK(with.totals.unmet.minor == 0);
    REQUIRE(with.part(milk) != nullptr);
    CHECK(with.part(milk)->component.offer->slots == std::vector<Slot>{shopping_of(0)});
    CHECK(with.totals.spent == with.part(milk)->component.offer->price);
    CHECK(with.totals == balancer.balance({}, at_once).totals);
}

TEST_CASE("the same dinner planned twice on one evening is asked for twice, and once when one is taken back") {
    kitchen::Kitchen kitchen = bare();
    const Leaving leaving = leaving_dish(kitchen);
    const auto meal = cook(kitchen, {demo_day, Meal::dinner, leaving.dish, false, 2, 0});
    REQUIRE(!meal.needs.empty());
    const Balancer balancer(kitchen, days(3));
    const Balance once = balancer.balance({meal});
    const Balance twice = balancer.balance({meal, meal});
    CHECK(balancer.rebalance(once, {meal, meal}).totals == twice.totals);
    CHECK(balancer.rebalance(twice, {meal}).totals == once.totals);
}

TEST_CASE("the horizon is the second shopping day, but not before a week is over") {
    kitchen::Kitchen kitchen = bare();
    kitchen.household.trips = kitchen::weekly_trips(1U << 3);  // Wednesdays: next week and the week after
    CHECK(horizon(kitchen, demo_day) == demo_day + basics::days{14});
    kitchen.household.trips = kitchen::weekly_trips((1U << 4) | (1U << 5));
    CHECK(horizon(kitchen, demo_day) == demo_day + basics::days{7});
    kitchen.household.trips.clear();
    CHECK(horizon(kitchen, demo_day) == demo_day + basics::days{7});
}

TEST_CASE("the rest of what is bought raw is frozen or lies whole in the crisper, and what was opened ends") {
    const kitchen::Kitchen kitchen = bare();
    const auto tossed_of = [&](const char* name, std::int64_t used, std::int64_t bought, int span = 10) {
        const Balancer balancer(kitchen, days(span));
        const auto thing = *kitchen.catalogue().ingredient(name);
        Cooking dinner{.day = demo_day, .dish = {}, .needs = {{thing, used}}, .makes = {}};
        const Balance balance = balancer.balance({dinner}, std::vector{thing});
        const Part* part = balance.part(thing);
        REQUIRE(part != nullptr);
        std::int64_t all = 0;
        std::int64_t tossed = 0;
        for (const Fate& fate : part->outcome.fates) {
            all += fate.unit.amount;
            tossed += fate.tossed;
        }
        INFO(name);
        CHECK(all == bought);
        CHECK(part->outcome.unmet == std::vector<std::int64_t>{0});
        return tossed;
    };
    CHECK(tossed_of("chicken-thigh", 600'000, 1'000'000) == 0);  // a tray: the rest goes into the freezer
    // Three of them: the rest is not cut, and keeps for the seven days of whole ones in the crisper.
    CHECK(tossed_of("sweet-potato", 500'000, 1'000'000, 7) == 0);
    CHECK(tossed_of("sweet-potato", 500'000, 1'000'000) == 500'000);
    CHECK(tossed_of("cabbage", 400'000, 1'200'000) == 800'000);
    CHECK(tossed_of("chicken-stock", 600'000, 1'000'000) == 400'000);
    CHECK(tossed_of("frozen-peas", 300'000, 1'000'000) == 0);  // a bag: it stays frozen
    CHECK(tossed_of("eggs", 6'000, 12'000) == 0);              // a carton: no egg is opened
    CHECK(tossed_of("carrot", 300'000, 1'000'000) == 0);       // a bag: no carrot is cut
}
