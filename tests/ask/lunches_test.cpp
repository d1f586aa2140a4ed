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

/// The demo kitchen with nothing to eat in it, no plan and no dishes but those that are named.
kitchen::Kitchen bare() {
    kitchen::Kitchen kitchen = demo();
    kitchen.lots.clear();
    kitchen.plan.clear();
    kitchen.household.trips.clear();
    return kitchen;
}

stock::Lot& put(kitchen::Kitchen& kitchen, std::string_view thing, std::string_view dish, int serves, int days_ago) {
    stock::Lot lot;
    lot.number = kitchen.lots.empty() ? 1 : kitchen.lots.back().number + 1;
    lot.ingredient = tests::thing(thing);
    lot.dish = tests::dish(dish);
    lot.place = *kitchen::place_of(kitchen.household, {stock::PlaceKind::fridge});
    lot.amount = {measure::Dimension::pieces, std::int64_t{1000} * serves};
    lot.arrived = lot.since = demo_day - days{days_ago};
    stock::set_dates(lot, kitchen.catalogue()[lot.ingredient], stock::PlaceKind::fridge);
    kitchen.lots.push_back(lot);
    return kitchen.lots.back();
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

TEST_CASE("other kinds of bread, cheese, fat and pasta than the dishes name are lunch all the same") {
    kitchen::Kitchen kitchen = bare();
    for (auto& person : kitchen.household.people) person.avoids = {};
    const auto got = [&](std::string_view of, std::int64_t amount, stock::PlaceKind where) {
        stock::Lot lot;
        lot.number = kitchen.lots.size() + 1;
        lot.ingredient = thing(of);
        lot.place = *kitchen::place_of(kitchen.household, {where});
        lot.amount = {kitchen.catalogue()[lot.ingredient].dimension, amount};
        lot.arrived = demo_day;
        kitchen.lots.push_back(lot);
    };
    got("wholemeal-bread", 4'000'000, stock::PlaceKind::pantry);
    got("cheddar", 1'500'000, stock::PlaceKind::fridge);
    got("margarine", 500'000, stock::PlaceKind::fridge);
    got("penne", 2'000'000, stock::PlaceKind::pantry);
    got("baked-beans", 4'000'000, stock::PlaceKind::pantry);
    REQUIRE_FALSE(kitchen.check());
    const auto answer = asked(kitchen);
    int swapped = 0;
    for (const ask::Lunch& lunch : answer.lunches) CHECK(lunch.kind == LunchKind::cooked);
    for (const ask::LunchCooked& cooked : answer.cooked) swapped += cooked.swaps.empty() ? 0 : 1;
    CHECK(answer.lunches.size() > 10);
    CHECK(swapped > 5);
    // What is written balances as it is answered; nobody has the milk that stands.
    CHECK(unmet(written(kitchen, answer)) == unmet(kitchen));
}

TEST_CASE("no days, and more than a month, are problems") {
    CHECK(failing({.days = 0, .effort = 100}) == "--days: 0; expected a number from 1 to 31");
    CHECK(failing({.days = 32, .effort = 100}) == "--days: 32; expected a number from 1 to 31");
    CHECK(failing({.days = 7, .effort = 0}) == "--effort: 0; expected a number from 1 to 10000; 100 is usual");
}

TEST_CASE("lunches that are cooked hold nothing that their eaters avoid, with a serve apart where the dish has one") {
    const kitchen::Kitchen kitchen = where_all_are_home();
    const auto answer = asked(kitchen, 7);
    const auto holds = flow::held_allergens(kitchen);
    bool apart = false;
    for (const auto& cooked : answer.cooked) {
        const auto& dish = kitchen.cookbook()[cooked.dish];
        CHECK(cooked.cooking.serves_thousandths == static_cast<std::int64_t>(1000 * cooked.eaters.size()));
        // A serve apart that all of them need is how the dish is cooked.
        const bool for_all = std::all_of(cooked.eaters.begin(), cooked.eaters.end(), [&](std::size_t eater) {
            return !flow::serve_for(dish, kitchen.household.people[eater].avoids, cooked.swaps, holds).apart.empty();
        });
        for (const std::size_t eater : cooked.eaters) {
            const auto& person = kitchen.household.people[eater];
            const auto serve = flow::serve_for(dish, person.avoids, cooked.swaps, holds);
            CHECK(serve.holds.shared_with(person.avoids).empty());
            if (serve.apart.empty() || for_all) continue;
            INFO(basics::iso(cooked.day) << ' ' << dish.id << " for " << person.name);
            apart = true;
            CHECK(std::any_of(cooked.cautions.begin(), cooked.cautions.end(), [&](const std::string& words) {
                return words.starts_with("A serve apart for " + person.name);
            }));
        }
    }
    CHECK(apart);
}

TEST_CASE("a planned lunch with something in place of something serves those who may have that") {
    kitchen::Kitchen kitchen = where_all_are_home();
    const auto alba = std::find_if(kitchen.household.people.begin(), kitchen.household.people.end(),
                                   [](const kitchen::Person& person) { return person.id == "alba"; });
    REQUIRE(alba != kitchen.household.people.end());
    const auto who = static_cast<std::size_t>(alba - kitchen.household.people.begin());
    alba->avoids = {};
    alba->avoids.add(catalogue::Allergen::milk);
    const auto dish = tests::dish("mash-and-tinned-salmon-patties");
    const auto of = thing("mashed-potato");
    kitchen.plan = {{demo_day, kitchen::Meal::lunch, dish, false, {}, 0}};
    const auto served = [&] {
        const auto answer = asked(kitchen, 1);
        return std::any_of(answer.standing.begin(), answer.standing.end(),
                           [&](const auto& seat) { return seat.person == who; });
    };
    kitchen.plan.front().swaps = {{of, {{thing("potato"), 400'000}}, 4'000}};
    const bool without_milk = served();
    kitchen.plan.front().swaps = {{of, {{thing("potato"), 400'000}, {thing("milk"), 100'000}}, 4'000}};
    CHECK_FALSE(served());
    CHECK(without_milk);
}

TEST_CASE("lunches take a frozen pack as a whole, for as many as share it on a day") {
    kitchen::Kitchen kitchen = bare();
    stock::Lot& lot = put(kitchen, "leftover-chilli", "chilli", 2, 3);
    lot.place = *kitchen::place_of(kitchen.household, {stock::PlaceKind::near_freezer});
    lot.state = stock::State::frozen;
    lot.packs = {2000};
    stock::set_dates(lot, kitchen.catalogue()[lot.ingredient], stock::PlaceKind::near_freezer);
    kitchen.household.people[1].roster = {kitchen::Week{3, 3, 3, 3, 3, 3, 3}};  // Bram is home as well
    const auto answer = asked(kitchen, 2);
    REQUIRE(answer.lunches.size() == 4);
    for (const auto& lunch : answer.lunches) {
        // It cannot be thawed for today.
        CHECK(lunch.kind == (lunch.day == demo_day ? ask::LunchKind::bought : ask::LunchKind::frozen_pack));
    }
    const auto price = kitchen::price(kitchen, kitchen.lots.front(), 2000);
    CHECK(answer.spent == price + basics::Money{2800});
    REQUIRE(answer.take_out.size() == 1);
    CHECK(answer.take_out.front().day == demo_day);
    CHECK(answer.take_out.front().amount == 2000);
}

TEST_CASE("lunches give a leftover to the one who may have it") {
    kitchen::Kitchen kitchen = bare();
    put(kitchen, "leftover-chilli", "chilli", 3, 0);
    kitchen.household.people[3].avoids.add(catalogue::Allergen::celery);  // Odette; the chilli has celery
    const auto answer = asked(kitchen, 3);
    for (const auto& lunch : answer.lunches) {
        CHECK(lunch.kind == ask::LunchKind::bought);
        CHECK(lunch.reason == "Odette may have, or likes, nothing that could be had");
    }
    kitchen.household.people[3].avoids = {};
    const auto free = asked(kitchen, 3);
    CHECK(std::all_of(free.lunches.begin(), free.lunches.end(),
                      [](const auto& lunch) { return lunch.kind == ask::LunchKind::leftover && lunch.from_lot == 1; }));
    kitchen.household.people[3].dislikes = {catalogue::Of{tests::thing("beef-mince")}};
    const auto disliked = asked(kitchen, 3);
    CHECK(std::none_of(disliked.lunches.begin(), disliked.lunches.end(),
                       [](const auto& lunch) { return lunch.kind == ask::LunchKind::leftover; }));
}

TEST_CASE("lunches eat a leftover three days at most, one of no date as the catalogue says, and a pasta two") {
    const auto last = [](std::string_view thing, std::string_view dish, bool dated) {
        kitchen::Kitchen kitchen = bare();
        for (auto& person : kitchen.household.people) person.away.clear();
        stock::Lot& lot = put(kitchen, thing, dish, 9, 0);
        if (!dated) lot.use_by = lot.best_by = std::nullopt;
        basics::Day latest{};
        for (const auto& lunch : asked(kitchen, 7).lunches) {
            if (lunch.kind == ask::LunchKind::leftover) latest = std::max(latest, lunch.day);
        }
        return (latest - demo_day).count();
    };
    CHECK(last("leftover-chilli", "chilli", true) == 3);
    CHECK(last("leftover-chilli", "chilli", false) == 3);
    CHECK(last("cooked-spaghetti", "tuna-caper-and-tomato-spaghetti", true) == 2);
    CHECK(last("cooked-spaghetti", "tuna-caper-and-tomato-spaghetti", false) == 2);
}

TEST_CASE("lunches eat nothing that is past its use-by") {
    kitchen::Kitchen kitchen = bare();
    put(kitchen, "leftover-chilli", "chilli", 3, 4);
    for (const auto& lunch : asked(kitchen, 3).lunches) CHECK(lunch.kind == ask::LunchKind::bought);
}

TEST_CASE("lunches ended by their watch are a plan with a bound") {
    const auto answer = ask::ask_lunches(demo(), demo_day, {.days = 7, .effort = 100},
                                         [](const ask::LunchesProgress& p) { return p.stage != "searching"; });
    REQUIRE(answer);
    CHECK(answer->stopped);
    CHECK(answer->bound >= answer->value);
    CHECK(answer->lunches.size() == 10);
}

TEST_CASE("lunches of a month are for everyone at home, and lack nothing that was not lacking") {
    const auto answer = ask::ask_lunches(demo(), demo_day, {.days = 31, .effort = 1});
    REQUIRE(answer);
    CHECK(answer->span.length() == 31);
    CHECK(answer->bound >= answer->value);
    std::size_t home = 0;
    for (int day = 0; day < 31; ++day)
        home += kitchen::eaters(demo(), demo_day + days{day}, kitchen::Meal::lunch).size();
    CHECK(answer->lunches.size() + answer->standing.size() == home);
    const auto lacks = [&](const kitchen::Kitchen& kitchen) {
        const flow::Balancer balancer(kitchen, {demo_day, answer->horizon}, flow::Effort::quick);
        return balancer.balance(balancer.planned()).totals.unmet;
    };
    CHECK(lacks(written(demo(), *answer)) <= lacks(demo()));
}
