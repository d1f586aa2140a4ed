// Filling the open dinners of a span: what every menu must keep, on the demo kitchen and on others that it is made
// into.
#include "ask/plan.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <map>
#include <set>

#include "flow/balance.hpp"
#include "kitchen/cooking.hpp"
#include "support/clear_world.hpp"
#include "support/demo.hpp"

using namespace samebase;
using ask::PlanDay;
using kitchen::Meal;
using tests::demo;
using tests::demo_day;

namespace {

basics::Day iso(std::string_view day) {
    return *basics::read_iso_day(day);
}

const basics::Span december{iso("2026-12-01"), iso("2026-12-31")};

ask::PlanAnswer planned(const kitchen::Kitchen& kitchen, const ask::PlanQuestion& question,
                        basics::Day today = demo_day) {
    auto answer = ask::ask_plan(kitchen, today, question);
    REQUIRE(answer);
    return std::move(*answer);
}

const ask::PlanAnswer& december_anew() {
    static const ask::PlanAnswer answer = planned(demo(), {.span = december, .again = true, .effort = 30});
    return answer;
}

/// The kitchen with the answer written into its plan.
kitchen::Kitchen with(kitchen::Kitchen kitchen, const ask::PlanAnswer& answer) {
    const kitchen::Plan rows = ask::rows_of(answer);
    std::erase_if(kitchen.plan, [&](const kitchen::Planned& row) {
        return row.meal == Meal::dinner &&
               std::any_of(rows.begin(), rows.end(), [&](const auto& r) { return r.day == row.day; });
    });
    kitchen.plan.insert(kitchen.plan.end(), rows.begin(), rows.end());
    std::sort(kitchen.plan.begin(), kitchen.plan.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
    });
    REQUIRE_FALSE(kitchen.check());
    return kitchen;
}

/// All dinners around the span: had, planned and chosen.
std::vector<std::pair<basics::Day, cookbook::DishId>> dinners(const kitchen::Kitchen& kitchen) {
    std::vector<std::pair<basics::Day, cookbook::DishId>> all;
    for (const kitchen::Had& had : kitchen.history) {
        if (had.meal == Meal::dinner) all.emplace_back(had.day, had.dish);
    }
    for (const kitchen::Planned& row : kitchen.plan) {
        if (row.meal == Meal::dinner) all.emplace_back(row.day, row.dish);
    }
    return all;
}

void every_rule_is_kept(const kitchen::Kitchen& kitchen, const ask::PlanAnswer& answer) {
    const kitchen::Kitchen after = with(kitchen, answer);
    const auto all = dinners(after);
    for (const PlanDay& day : answer.days) {
        if (day.state != PlanDay::State::proposed) continue;
        const cookbook::Dish& dish = kitchen.cookbook()[*day.dish];
        INFO(basics::iso(day.day) << ' ' << dish.id);
        CHECK(dish.dinner);
        if (const auto kind = kitchen::standing_kind(kitchen.household, day.day))
            CHECK(std::count(dish.kinds.begin(), dish.kinds.end(), *kind) == 1);
        if (!day.ready_meal)
            CHECK(dish.minutes <= kitchen.household.minutes[std::chrono::weekday{day.day}.c_encoding()]);
        for (const auto& [other, what] : all) {
            if (what == *day.dish && other != day.day) CHECK(std::abs((other - day.day).count()) >= dish.gap);
        }
        for (const std::size_t eater : kitchen::eaters(kitchen, day.day, Meal::dinner)) {
            const kitchen::Person& person = kitchen.household.people[eater];
            for (const kitchen::Mark& mark : person.marks) CHECK_FALSE((mark.dish == *day.dish && mark.mark == -3));
        }
        CHECK(day.cooking.serves_thousandths >= kitchen::serves_wanted(kitchen, day.day, Meal::dinner));
    }
}

/// What is short at chosen dinners, by the balance of everything until the end of the span.
std::vector<std::string> short_at_chosen(const kitchen::Kitchen& kitchen, const ask::PlanAnswer& answer,
                                         basics::Day today) {
    const kitchen::Kitchen after = with(kitchen, answer);
    const flow::Balancer balancer(after, {today, answer.span.last}, flow::Effort::quick);
    const flow::Balance balance = balancer.balance(balancer.planned());
    std::vector<std::string> lacks;
    for (const auto& part : balance.parts) {
        for (std::size_t w = 0; w < part->outcome.unmet.size(); ++w) {
            if (part->outcome.unmet[w] == 0 || !part->reasons[w].dish || part->reasons[w].meal != Meal::dinner)
                continue;
            const basics::Day day = today + basics::days{flow::day_of(part->component.wants[w].slot)};
            const bool chosen = std::any_of(answer.days.begin(), answer.days.end(), [&](const PlanDay& d) {
                return d.day == day && d.state == PlanDay::State::proposed && *d.dish == *part->reasons[w].dish;
            });
            if (chosen) lacks.push_back(basics::iso(day) + " " + after.catalogue()[part->component.ingredient].id);
        }
    }
    return lacks;
}

}  // namespace

TEST_CASE("plan: a month of the demo kitchen has a dinner for every day that somebody is home") {
    const ask::PlanAnswer& answer = december_anew();
    CHECK(answer.empty.empty());
    CHECK(answer.days.size() == 31);
    for (const PlanDay& day : answer.days) {
        INFO(basics::iso(day.day));
        CHECK(day.state != PlanDay::State::empty);
    }
    every_rule_is_kept(demo(), answer);
    CHECK(answer.value <= answer.bound);
}

TEST_CASE("plan: buying for the menu and cooking it leaves nothing short") {
    CHECK(short_at_chosen(demo(), december_anew(), demo_day).empty());
}

TEST_CASE("plan: the same question gives the same menu, and a menu that is taken leaves nothing open") {
    const auto again = planned(demo(), {.span = december, .again = true, .effort = 30});
    CHECK(ask::rows_of(again) == ask::rows_of(december_anew()));
    const kitchen::Kitchen after = with(demo(), again);
    CHECK(ask::rows_of(planned(after, {.span = december})).empty());
}

TEST_CASE("plan: what is planned by hand is not touched without --again") {
    const auto answer = planned(demo(), {.span = december, .effort = 10});
    for (const kitchen::Planned& row : ask::rows_of(answer)) {
        INFO(basics::iso(row.day));
        CHECK(kitchen::planned(demo().plan, row.day, Meal::dinner) == nullptr);
    }
    CHECK(std::count_if(answer.days.begin(), answer.days.end(),
                        [](const PlanDay& d) { return d.state == PlanDay::State::proposed; }) == 7);
}

TEST_CASE("plan: an occasion's dish is taken as wished, for the guests too, whatever night it is") {
    kitchen::Kitchen kitchen = demo();
    kitchen.plan.clear();
    const auto answer = planned(kitchen, {.span = {iso("2026-12-08"), iso("2026-12-10")}, .effort = 5});
    REQUIRE(answer.days.size() == 3);
    CHECK(answer.days[1].state == PlanDay::State::wished);
    CHECK(kitchen.cookbook()[*answer.days[1].dish].id == "chicken-skewers-grain-salad");
    const auto home = kitchen::eaters(kitchen, iso("2026-12-09"), Meal::dinner).size();
    CHECK(answer.days[1].cooking.serves_thousandths > static_cast<std::int64_t>(home) * 1000);
}

TEST_CASE("plan: a household of everyday things is not sent for others") {
    kitchen::Kitchen kitchen = demo();
    kitchen.plan.clear();
    kitchen.history.clear();
    kitchen.lots.clear();
    kitchen.household.prices.clear();
    const auto answer = planned(kitchen, {.span = {iso("2026-12-05"), iso("2026-12-24")}, .effort = 10});
    std::set<catalogue::IngredientId> apart;
    for (const cookbook::Dish& dish : kitchen.cookbook().dishes()) {
        for (const auto& serve : dish.separate) {
            if (serve.avoids == catalogue::Allergen::gluten)
                for (const auto& [of, use] : serve.swaps) apart.insert(use);
        }
    }
    int chosen = 0;
    for (const PlanDay& day : answer.days) {
        if (day.state != PlanDay::State::proposed) continue;
        ++chosen;
        for (const flow::Needed& need : day.cooking.needs) {
            const catalogue::Ingredient& thing = kitchen.catalogue()[need.ingredient];
            INFO(basics::iso(day.day) << ' ' << thing.id);
            CHECK((thing.everyday || thing.staple || apart.contains(need.ingredient)));
        }
    }
    CHECK(chosen >= 15);
}

TEST_CASE("plan: the sum of a day is what the menu loses without it, and no runner-up does better") {
    const auto answer = planned(demo(), {.span = december, .again = true, .effort = 30, .explain = iso("2026-12-15")});
    REQUIRE(answer.why);
    CHECK(answer.why->runners_up.size() == 3);
    for (const auto& other : answer.why->runners_up) CHECK(other.less.minor >= 0);
    basics::Money sum;
    for (const auto& because : answer.why->because) sum += because.money;
    // Each line is rounded by itself.
    CHECK(std::abs((sum - answer.why->worth).minor) <= static_cast<std::int64_t>(answer.why->because.size()));
    CHECK(answer.why->because.size() >= 3);
}

TEST_CASE("plan: a night that nothing fits says what would have to change") {
    kitchen::Kitchen kitchen = demo();
    kitchen.plan.clear();
    kitchen.household.standing_nights = {{std::chrono::Thursday, {"roast"}, iso("2026-11-26")}};
    kitchen.household.minutes[4] = 20;
    const auto roasts = planned(kitchen, {.span = {iso("2026-12-03"), iso("2026-12-03")}, .effort = 1});
    REQUIRE(roasts.empty.size() == 1);
    CHECK(roasts.empty.front().way == ask::PlanEmpty::Way::minutes);
    CHECK(roasts.empty.front().kind == "roast");
    CHECK(roasts.empty.front().minutes > 20);
    CHECK(roasts.empty.front().dishes > 0);
    kitchen.household.standing_nights.front().kinds = {"fondue"};
    const auto fondue = planned(kitchen, {.span = {iso("2026-12-03"), iso("2026-12-03")}, .effort = 1});
    REQUIRE(fondue.empty.size() == 1);
    CHECK(fondue.empty.front().way == ask::PlanEmpty::Way::none);
}

TEST_CASE("plan: days before the first trip of an empty house say that nothing can be bought by then") {
    kitchen::Kitchen kitchen = demo();
    kitchen.plan.clear();
    kitchen.lots.clear();
    const auto answer = planned(kitchen, {.span = {demo_day, iso("2026-11-29")}, .effort = 1});
    REQUIRE(answer.empty.size() == 3);
    for (const auto& empty : answer.empty) CHECK(empty.way == ask::PlanEmpty::Way::trip);
    CHECK(answer.empty.back().day == iso("2026-11-27"));
}

TEST_CASE("plan: a budget is kept where a cheaper menu can, and what it is over by is told where none can") {
    kitchen::Kitchen kitchen = demo();
    kitchen.plan.clear();
    const basics::Span span{iso("2026-11-29"), iso("2026-12-20")};
    const auto free = planned(kitchen, {.span = span, .effort = 10});
    const basics::Money less{free.spent.minor * 95 / 100};
    const auto kept = planned(kitchen, {.span = span, .effort = 10, .budget = less});
    CHECK(kept.spent <= less);
    CHECK(kept.budget == less);
    every_rule_is_kept(kitchen, kept);
    const auto hopeless = planned(kitchen, {.span = span, .effort = 10, .budget = basics::Money{100}});
    CHECK(hopeless.spent > basics::Money{100});
    CHECK(hopeless.spent <= kept.spent);
}

TEST_CASE("plan: bad questions are refused with what was expected") {
    const auto text = [](const ask::PlanQuestion& question) {
        const auto answer = ask::ask_plan(demo(), demo_day, question);
        REQUIRE_FALSE(answer);
        return basics::to_text(answer.error().front());
    };
    CHECK(text({.span = {iso("2026-11-01"), iso("2026-11-20")}}) ==
          "plan: a span that ends on 2026-11-20; expected days from 2026-11-25 on");
    CHECK(text({.span = {demo_day, iso("2029-01-01")}}) ==
          "plan: days until 2029-01-01; expected days within the next two years");
    CHECK(text({.span = december, .effort = 0}) == "--effort: 0; expected a number from 1 to 10000; 100 is usual");
    CHECK(text({.span = december, .effort = 1, .explain = iso("2026-12-02")}) ==
          "--explain: 2026-12-02; expected a day of the span that is chosen here");
}

namespace {

/// Of the lines in the role main the heaviest one's family.
std::string main_family(const kitchen::Kitchen& kitchen, const cookbook::Dish& dish) {
    std::string family;
    measure::Mass most{};
    for (const auto& line : dish.ingredients) {
        const auto& thing = kitchen.catalogue()[line.ingredient];
        const auto weight = catalogue::weight(line.amount, thing).value_or(measure::Mass{});
        if (line.optional || line.role != catalogue::Role::main || (!family.empty() && weight <= most)) continue;
        most = weight;
        family = kitchen.catalogue()[thing.family].id;
    }
    return family;
}

bool meatless(const kitchen::Kitchen& kitchen, const cookbook::Dish& dish) {
    return std::all_of(dish.ingredients.begin(), dish.ingredients.end(), [&](const auto& line) {
        return line.optional || kitchen.catalogue().meatless(line.ingredient);
    });
}

/// What a family would say of a month, by common practice. Kinds are counted by weeks from Monday on; potatoes, rice
/// and pulses lie beside, and may come more often.
std::vector<std::string> odd(const kitchen::Kitchen& kitchen, const ask::PlanAnswer& answer) {
    std::vector<std::string> odd;
    std::map<std::pair<std::int64_t, std::string>, int> weeks;
    std::map<cookbook::DishId, basics::Day> had;
    std::string main_before;
    basics::Day before{};
    for (const PlanDay& day : answer.days) {
        if (!day.dish) continue;
        const cookbook::Dish& dish = kitchen.cookbook()[*day.dish];
        const std::string where = basics::iso(day.day) + " " + dish.id;
        const std::int64_t week = (day.day.time_since_epoch().count() + 3) / 7;
        for (const std::string& kind : dish.kinds) {
            if (kind == "potatoes" || kind == "rice" || kind == "pulses" || kind == "leftovers") continue;
            if (++weeks[{week, kind}] > 2) odd.push_back(where + ": a third " + kind + " this week");
        }
        const bool green = meatless(kitchen, dish);
        if (++weeks[{week, green ? "no meat" : "meat"}] > (green ? 3 : 5))
            odd.push_back(where + (green ? ": too often without meat" : ": too often with meat"));
        const std::string main = main_family(kitchen, dish);
        if (!main.empty() && main == main_before && day.day == before + basics::days{1})
            odd.push_back(where + ": " + main + " two days running");
        main_before = main;
        before = day.day;
        if (had.contains(*day.dish) && (day.day - had[*day.dish]).count() < 14)
            odd.push_back(where + ": twice in two weeks");
        had[*day.dish] = day.day;
    }
    return odd;
}

}  // namespace

TEST_CASE("plan: a month reads like one that a family would eat") {
    CHECK(odd(demo(), december_anew()) == std::vector<std::string>{});  // NOLINT(readability-container-size-empty)
    for (const std::uint64_t number : {1U, 2U, 3U}) {
        INFO("kitchen " << number);
        const tests::ClearWorld world = tests::full_clear_world(number, demo());
        const basics::Span span{world.today + basics::days{3}, world.today + basics::days{33}};
        const auto answer = planned(world.kitchen, {.span = span, .again = true}, world.today);
        CHECK(odd(world.kitchen, answer) == std::vector<std::string>{});  // NOLINT(readability-container-size-empty)
    }
}

TEST_CASE("plan: full kitchens keep every rule too, and nothing is short") {
    for (const std::uint64_t number : {1U, 2U, 3U, 4U}) {
        INFO("kitchen " << number);
        const tests::ClearWorld world = tests::full_clear_world(number, demo());
        const basics::Span span{world.today, world.today + basics::days{20}};
        const auto answer = planned(world.kitchen, {.span = span, .effort = 10}, world.today);
        every_rule_is_kept(world.kitchen, answer);
        CHECK(short_at_chosen(world.kitchen, answer, world.today).empty());
        const auto filled = std::count_if(answer.days.begin(), answer.days.end(), [](const PlanDay& day) {
            return day.state != PlanDay::State::empty && day.state != PlanDay::State::nobody_home;
        });
        CHECK(filled >= 18);
    }
}
