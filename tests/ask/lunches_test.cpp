// What is for lunch? On the shipped demo kitchen, on the day around which it is written, and at its edges.
#include "ask/lunches.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "flow/findings.hpp"
#include "kitchen/changes.hpp"
#include "support/demo.hpp"

using namespace samebase;
using ask::LunchKind;
using basics::days;
using tests::demo;
using tests::demo_day;
using tests::dish;
using tests::thing;

namespace {

ask::LunchesAnswer asked(const kitchen::Kitchen& kitchen, int number_of_days = 7) {
    auto answer = ask::ask_lunches(kitchen, demo_day, {.days = number_of_days, .effort = 20});
    REQUIRE(answer);
    return std::move(*answer);
}

std::string failing(const ask::LunchesQuestion& question) {
    const auto answer = ask::ask_lunches(demo(), demo_day, question);
    REQUIRE_FALSE(answer);
    return basics::to_text(answer.error().front());
}

/// The demo with these lunches in its plan, as --write enters them.
kitchen::Kitchen written(const kitchen::Kitchen& kitchen, const ask::LunchesAnswer& answer) {
    kitchen::Kitchen after = kitchen;
    const auto change = kitchen::set_plan({after, demo_day, 1000}, answer.span, std::nullopt, answer.rows, "lunches");
    REQUIRE(change);
    kitchen::apply(after, *change);
    return after;
}

basics::Money unmet(const kitchen::Kitchen& kitchen) {
    const flow::Balancer balancer(kitchen, {demo_day, demo_day + days{10}});
    return balancer.balance(balancer.planned()).totals.unmet;
}

kitchen::Kitchen where_all_are_home() {
    kitchen::Kitchen kitchen = demo();
    kitchen::Week always{};
    always.fill(
        static_cast<kitchen::Meals>(kitchen::only(kitchen::Meal::lunch) | kitchen::only(kitchen::Meal::dinner)));
    for (auto& person : kitchen.household.people) person.roster = {always};
    return kitchen;
}

}  // namespace

TEST_CASE("everyone at home has one lunch on every day, planned or found") {
    const auto answer = asked(demo());
    for (basics::Day day = demo_day; day < demo_day + days{7}; day += days{1}) {
        std::multiset<std::size_t> served;
        for (const auto& lunch : answer.lunches) {
            if (lunch.day == day) served.insert(lunch.person);
        }
        for (const auto& seat : answer.standing) {
            if (seat.day == day) served.insert(seat.person);
        }
        const auto home = kitchen::eaters(demo(), day, kitchen::Meal::lunch);
        CHECK(served == std::multiset<std::size_t>(home.begin(), home.end()));
    }
    CHECK(answer.value <= answer.bound);
    basics::Money sum;
    for (const auto& because : answer.because) sum += because.money;
    CHECK(sum == answer.value);
}

TEST_CASE("what was written is in the plan, leaves nothing open, and lacks nothing that was not lacking") {
    const auto answer = asked(demo());
    REQUIRE_FALSE(answer.lunches.empty());
    const auto after = written(demo(), answer);
    CHECK(unmet(after) <= unmet(demo()));
    const auto again = asked(after);
    for (const auto& lunch : again.lunches) {
        const bool was_bought = std::any_of(answer.lunches.begin(), answer.lunches.end(), [&](const auto& before) {
            return before.day == lunch.day && before.person == lunch.person && before.kind == LunchKind::bought;
        });
        CHECK(was_bought);
    }
}

TEST_CASE("a leftover whose last day is today is somebody's lunch today, and nobody's tomorrow") {
    // Two serves of cold roast chicken are to be eaten today.
    const auto answer = asked(where_all_are_home());
    int today = 0;
    for (const auto& lunch : answer.lunches) {
        const stock::Lot* lot = lunch.from_lot > 0 ? demo().lot(lunch.from_lot) : nullptr;
        if (lot == nullptr || lot->ingredient != thing("cold-roast-chicken")) continue;
        CHECK(lunch.day == demo_day);
        ++today;
    }
    CHECK(today == 2);
}

TEST_CASE("nobody is home for lunch: nothing to find, and it says so") {
    kitchen::Kitchen kitchen = demo();
    for (auto& person : kitchen.household.people)
        person.away.push_back({{demo_day, demo_day + days{9}}, kitchen::only(kitchen::Meal::lunch)});
    const auto answer = asked(kitchen);
    CHECK(answer.lunches.empty());
    CHECK(answer.standing.empty());
    CHECK(answer.proved_best);
    CHECK_FALSE(answer.notes.empty());
}

TEST_CASE("without a cookbook lunches are bought, at their price") {
    kitchen::Kitchen kitchen = where_all_are_home();
    kitchen.knowledge = std::make_shared<const kitchen::Knowledge>(
        catalogue::Catalogue(demo().catalogue()), cookbook::Cookbook{}, std::vector<graph::Statement>{});
    kitchen.plan.clear();
    kitchen.history.clear();
    std::erase_if(kitchen.lots, [](const stock::Lot& lot) { return lot.dish.has_value(); });
    for (auto& person : kitchen.household.people) person.marks.clear();
    kitchen.household.occasions.clear();
    const auto answer = asked(kitchen, 1);
    REQUIRE(answer.lunches.size() == 5);
    for (const auto& lunch : answer.lunches) {
        CHECK(lunch.kind == LunchKind::bought);
        CHECK_FALSE(lunch.reason.empty());
    }
    CHECK(answer.value.minor == 0);
    CHECK(answer.spent == answer.all_bought);
    CHECK(answer.all_bought.minor == 5 * kitchen.household.worths.bought_lunch.minor);
}

TEST_CASE("who must avoid all that there is has a bought lunch, with the reason") {
    kitchen::Kitchen kitchen = where_all_are_home();
    auto& alba = kitchen.household.people.front();
    for (const auto allergen : catalogue::AllergenSet::all().members()) alba.avoids.add(allergen);
    for (std::uint32_t i = 0; i < kitchen.catalogue().ingredients().size(); ++i)
        alba.dislikes.push_back(catalogue::Of{catalogue::IngredientId{i}});
    const auto answer = asked(kitchen, 2);
    int hers = 0;
    for (const auto& lunch : answer.lunches) {
        if (lunch.person != 0) continue;
        CHECK(lunch.kind == LunchKind::bought);
        CHECK_FALSE(lunch.reason.empty());
        ++hers;
    }
    CHECK(hers == 2);
}

TEST_CASE("a leftover with no date keeps two days from when it came at most, whatever the catalogue lacks") {
    kitchen::Kitchen kitchen = where_all_are_home();
    for (stock::Lot& lot : kitchen.lots) {
        if (lot.ingredient != thing("cold-roast-chicken")) continue;
        lot.use_by.reset();
        lot.arrived = lot.since = demo_day;
    }
    const auto answer = asked(kitchen);
    for (const auto& lunch : answer.lunches) {
        const stock::Lot* lot = lunch.from_lot > 0 ? kitchen.lot(lunch.from_lot) : nullptr;
        if (lot != nullptr && lot->ingredient == thing("cold-roast-chicken")) CHECK(lunch.day <= demo_day + days{3});
    }
}

TEST_CASE("no days, and more than a month, are problems") {
    CHECK(failing({.days = 0, .effort = 100}) == "--days: 0; expected a number from 1 to 31");
    CHECK(failing({.days = 32, .effort = 100}) == "--days: 32; expected a number from 1 to 31");
    CHECK(failing({.days = 7, .effort = 0}) == "--effort: 0; expected a number from 1 to 10000; 100 is usual");
}
