// Clearing the crisper: on the demo kitchen, at the edges of what may be asked, and on the textbook's example of
// maximum coverage.
#include "ask/clear.hpp"

#include <set>

#include "support/clear_world.hpp"
#include "support/demo.hpp"

using namespace samebase;
using basics::days;
using tests::demo;
using tests::demo_day;

namespace {

ask::ClearAnswer cleared(const kitchen::Kitchen& kitchen, basics::Day today, const ask::ClearQuestion& question) {
    auto answer = ask::ask_clear(kitchen, today, question);
    REQUIRE(answer);
    return std::move(*answer);
}

std::vector<std::string> problems(const kitchen::Kitchen& kitchen, basics::Day today,
                                  const ask::ClearQuestion& question) {
    std::vector<std::string> words;
    const auto answer = ask::ask_clear(kitchen, today, question);
    REQUIRE_FALSE(answer);
    for (const auto& problem : answer.error()) words.push_back(basics::to_text(problem));
    return words;
}

constexpr int little = 5;

/// The lines add up, each meal is one that somebody is home for, and the bound holds.
void is_sound(const ask::ClearAnswer& answer, const kitchen::Kitchen& kitchen) {
    basics::Money sum;
    for (const auto& because : answer.because) sum += because.money;
    CHECK(sum == answer.value);
    CHECK(answer.bound >= answer.value);
    CHECK(answer.proved_best == (answer.bound == answer.value));
    CHECK(answer.saved <= answer.danger);
    basics::Money bin;
    for (const auto& row : answer.bin) bin += row.price;
    CHECK(bin == answer.danger - answer.saved);
    std::set<std::pair<basics::Day, kitchen::Meal>> taken;
    for (const auto& meal : answer.meals) {
        CHECK(answer.span.contains(meal.day));
        CHECK(taken.insert({meal.day, meal.meal}).second);
        CHECK(kitchen::serves_wanted(kitchen, meal.day, meal.meal) == meal.cooking.serves_thousandths);
    }
}

}  // namespace

TEST_CASE("clear of the demo kitchen goes to the eve of shopping, with a dinner and the lunches of those at home") {
    const auto answer = cleared(demo(), demo_day, {.until = {}, .effort = little});
    CHECK(answer.span.last == *basics::read_iso_day("2026-11-27"));
    is_sound(answer, demo());
    // Dinner on three nights; Odette is home for lunch on all three days.
    CHECK(answer.meals.size() == 6);
    CHECK(answer.empty.empty());
    // Friday is pizza night in odd weeks.
    const auto& friday = demo().cookbook()[answer.meals.back().dish].kinds;
    CHECK(std::find(friday.begin(), friday.end(), "pizza") != friday.end());
    CHECK(answer.saved.minor > 0);
    CHECK(answer.value >= answer.greedy);
}

TEST_CASE("clear serves nobody what they avoid, except from a line that a serve apart takes away") {
    for (int person = 0; person < 5; ++person) {
        kitchen::Kitchen kitchen = demo();
        kitchen.household.people[static_cast<std::size_t>(person)].avoids.add(catalogue::Allergen::milk);
        const auto answer = cleared(kitchen, demo_day, {.until = {}, .effort = 1});
        for (const auto& meal : answer.meals) {
            const auto& dish = kitchen.cookbook()[meal.dish];
            for (const std::size_t eater : kitchen::eaters(kitchen, meal.day, meal.meal)) {
                for (const auto& need : meal.cooking.needs) {
                    const auto held = kitchen.catalogue()[need.ingredient].counted_allergens();
                    for (const auto allergen : held.shared_with(kitchen.household.people[eater].avoids).members()) {
                        const bool taken_away =
                            std::any_of(dish.separate.begin(), dish.separate.end(), [&](const auto& serve) {
                                return serve.avoids == allergen &&
                                       std::any_of(serve.swaps.begin(), serve.swaps.end(),
                                                   [&](const auto& swap) { return swap.first == need.ingredient; });
                            });
                        INFO(dish.id << ", " << kitchen.catalogue()[need.ingredient].id);
                        CHECK(taken_away);
                    }
                }
            }
        }
    }
}

TEST_CASE("clear gives the same answer again") {
    const auto one = cleared(demo(), demo_day, {.until = demo_day + days{6}, .effort = little});
    const auto other = cleared(demo(), demo_day, {.until = demo_day + days{6}, .effort = little});
    REQUIRE(one.meals.size() == other.meals.size());
    for (std::size_t i = 0; i < one.meals.size(); ++i) CHECK(one.meals[i].cooking == other.meals[i].cooking);
    CHECK(one.value == other.value);
    CHECK(one.bound == other.bound);
    CHECK(one.greedy == other.greedy);
}

TEST_CASE("clear on a shopping day goes to the eve of the next") {
    const auto saturday = demo_day + days{3};
    const auto answer = cleared(demo(), saturday, {.until = {}, .effort = 1});
    CHECK(answer.span.first == saturday);
    CHECK(answer.span.last == saturday + days{6});
    is_sound(answer, demo());
}

TEST_CASE("clear ended by its watch gives a plan no worse than the greedy one, with a bound") {
    const auto answer = ask::ask_clear(demo(), demo_day, {.until = {}, .effort = 100},
                                       [](const ask::ClearProgress& p) { return p.stage != "searching"; });
    REQUIRE(answer);
    CHECK(answer->stopped);
    CHECK(answer->value >= answer->greedy - basics::Money{static_cast<std::int64_t>(answer->because.size())});
    is_sound(*answer, demo());
}

TEST_CASE("clear when every night is standing keeps each to its kind") {
    kitchen::Kitchen kitchen = demo();
    kitchen.household.standing_nights.clear();
    for (unsigned day = 0; day < 7; ++day) {
        kitchen.household.standing_nights.push_back(
            {std::chrono::weekday{day}, {day % 2 == 0 ? "soup" : "pasta"}, demo_day});
    }
    const auto answer = cleared(kitchen, demo_day, {.until = {}, .effort = little});
    is_sound(answer, kitchen);
    int dinners = 0;
    for (const auto& meal : answer.meals) {
        if (meal.meal != kitchen::Meal::dinner) continue;
        ++dinners;
        const auto& kinds = kitchen.cookbook()[meal.dish].kinds;
        CHECK(std::find(kinds.begin(), kinds.end(), *kitchen::standing_kind(kitchen.household, meal.day)) !=
              kinds.end());
    }
    CHECK(dinners == 3);
}

TEST_CASE("clear on a night whose kind the cookbook lacks leaves it empty and says why") {
    kitchen::Kitchen kitchen = demo();
    kitchen.household.standing_nights = {{std::chrono::Thursday, {"fondue"}, demo_day}};
    const auto answer = cleared(kitchen, demo_day, {.until = {}, .effort = 1});
    REQUIRE(answer.empty.size() == 1);
    CHECK(answer.empty.front().day == demo_day + days{1});
    CHECK(answer.empty.front().reason == "no dish of the night's kind, fondue, may be had then");
    is_sound(answer, kitchen);
}

TEST_CASE("clear with no one home says so, and what ends in the bin") {
    kitchen::Kitchen kitchen = demo();
    for (auto& person : kitchen.household.people) {
        person.away.push_back(
            {{demo_day, demo_day + days{6}},
             static_cast<kitchen::Meals>(kitchen::only(kitchen::Meal::lunch) | kitchen::only(kitchen::Meal::dinner))});
    }
    const auto answer = cleared(kitchen, demo_day, {.until = {}, .effort = 1});
    CHECK(answer.meals.empty());
    CHECK(answer.saved == basics::Money{});
    CHECK(answer.proved_best);
    REQUIRE(!answer.notes.empty());
    CHECK(answer.notes.front() == "Nobody is home for an open meal until then: there is nothing to choose.");
    CHECK(!answer.bin.empty());
    is_sound(answer, kitchen);
}

TEST_CASE("clear of a crisper with nothing that any dish uses says so of each thing") {
    tests::ClearWorld world =
        tests::random_clear_world(3, {.days = 2, .perishables = 2, .keepers = 2, .dishes = 3, .lunch_dishes = 0});
    std::vector<cookbook::Dish> dishes(world.kitchen.cookbook().dishes().begin(),
                                       world.kitchen.cookbook().dishes().end());
    for (auto& dish : dishes) {
        dish.ingredients.resize(1);
        dish.ingredients.front().ingredient = {3};
        dish.ingredients.front().amount = {measure::Dimension::mass, 100'000};
    }
    const auto things = world.kitchen.catalogue().ingredients();
    const auto families = world.kitchen.catalogue().families();
    world.kitchen.knowledge = std::make_shared<const kitchen::Knowledge>(
        catalogue::Catalogue{{families.begin(), families.end()}, {things.begin(), things.end()}},
        cookbook::Cookbook{{world.kitchen.cookbook().bases().begin(), world.kitchen.cookbook().bases().end()},
                           std::move(dishes)},
        std::vector<graph::Statement>{});
    world.kitchen.plan.clear();
    world.kitchen.household.standing_uses.clear();
    const auto answer = cleared(world.kitchen, world.today, {.until = world.until, .effort = 1});
    CHECK(answer.saved == basics::Money{});
    REQUIRE(!answer.bin.empty());
    for (const auto& bin : answer.bin) CHECK(bin.reason == "no dish that may be had until then uses it");
    is_sound(answer, world.kitchen);
}

TEST_CASE("clear says what it cannot be asked") {
    CHECK(problems(demo(), demo_day, {.until = demo_day - days{1}, .effort = 1}) ==
          std::vector<std::string>{"--until: 2026-11-24; expected a day from 2026-11-25 on"});
    CHECK(problems(demo(), demo_day, {.until = demo_day + days{31}, .effort = 1}) ==
          std::vector<std::string>{"--until: 31 days on; expected at most 31 days"});
    CHECK(problems(demo(), demo_day, {.until = {}, .effort = 0}) ==
          std::vector<std::string>{"--effort: 0; expected a number from 1 to 10000; 100 is usual"});
    kitchen::Kitchen no_shopping = demo();
    no_shopping.household.trips.clear();
    CHECK(problems(no_shopping, demo_day, {.until = {}, .effort = 1}) ==
          std::vector<std::string>{"--until: the household has no shopping days; expected the last day of meals"});
    auto world = tests::random_clear_world(1, {});
    const auto things = world.kitchen.catalogue().ingredients();
    const auto families = world.kitchen.catalogue().families();
    world.kitchen.knowledge = std::make_shared<const kitchen::Knowledge>(
        catalogue::Catalogue{{families.begin(), families.end()}, {things.begin(), things.end()}}, cookbook::Cookbook{},
        std::vector<graph::Statement>{});
    world.kitchen.plan.clear();
    world.kitchen.history.clear();
    CHECK(problems(world.kitchen, world.today, {.until = {}, .effort = 1}) ==
          std::vector<std::string>{"cookbook: there are no dishes; expected at least one dish to choose from"});
}

// The example of maximum coverage that a library of approximation algorithms publishes: two of the sets {1, 2},
// {3, 4, 5, 6}, {7 ... 13, 0}, {1, 3, 5, 7, 9, 11, 13}, {2, 4, 6, 8, 10, 12, 0}. The greedy choice covers 12 elements,
// the best two cover 14: a ratio of 0.857, above the bound of 0.75 for two picks (Nemhauser, Wolsey and Fisher, 1978).
TEST_CASE(
    "clear finds the best of the published example of maximum coverage, and its greedy choice is the published one") {
    const std::vector<std::vector<std::uint32_t>> sets{
        {1, 2}, {3, 4, 5, 6}, {7, 8, 9, 10, 11, 12, 13, 0}, {1, 3, 5, 7, 9, 11, 13}, {2, 4, 6, 8, 10, 12, 0}};
    auto world =
        tests::random_clear_world(5, {.days = 2, .perishables = 14, .keepers = 1, .dishes = 5, .lunch_dishes = 0});
    kitchen::Kitchen& kitchen = world.kitchen;
    std::vector<catalogue::Ingredient> things(kitchen.catalogue().ingredients().begin(),
                                              kitchen.catalogue().ingredients().end());
    constexpr std::int64_t one = 100'000;
    for (auto& thing : things) {
        thing.kind = catalogue::Kind::raw;
        thing.in_serves = false;
        thing.dimension = measure::Dimension::mass;
        thing.pack = catalogue::Pack{{measure::Dimension::mass, one}, "bag", {100}};
    }
    std::vector<cookbook::Dish> dishes(kitchen.cookbook().dishes().begin(), kitchen.cookbook().dishes().end());
    for (std::size_t i = 0; i < sets.size(); ++i) {
        dishes[i].ingredients.clear();
        dishes[i].kinds.clear();
        dishes[i].base.reset();
        dishes[i].minutes = 10;
        dishes[i].gap = 21;
        dishes[i].serves = 1;
        for (const std::uint32_t element : sets[i]) {
            cookbook::DishIngredient line;
            line.ingredient = {element};
            line.amount = {measure::Dimension::mass, one};
            dishes[i].ingredients.push_back(line);
        }
    }
    const auto families = kitchen.catalogue().families();
    kitchen.knowledge = std::make_shared<const kitchen::Knowledge>(
        catalogue::Catalogue{{families.begin(), families.end()}, std::move(things)},
        cookbook::Cookbook{{kitchen.cookbook().bases().begin(), kitchen.cookbook().bases().end()}, std::move(dishes)},
        std::vector<graph::Statement>{});
    kitchen.plan.clear();
    kitchen.history.clear();
    kitchen.household.standing_nights.clear();
    kitchen.household.standing_uses.clear();
    kitchen.household.people.resize(1);
    auto& person = kitchen.household.people.front();
    person.serve_thousandths = 1000;
    person.marks.clear();
    for (auto& meals : person.roster.front()) meals = kitchen::only(kitchen::Meal::dinner);
    kitchen.lots.clear();
    for (std::uint32_t element = 0; element < 14; ++element) {
        stock::Lot lot;
        lot.number = element + 1;
        lot.ingredient = {element};
        lot.place = {1};  // the fridge: nothing counts more than its price
        lot.amount = {measure::Dimension::mass, one};
        lot.arrived = lot.since = world.today;
        stock::set_dates(lot, kitchen.catalogue()[lot.ingredient], kitchen.place(lot.place).kind);
        kitchen.lots.push_back(lot);
    }
    const auto answer = cleared(kitchen, world.today, {.until = world.until, .effort = little});
    // Every element is worth 100. The greedy choice, 8 and then 4, buys nothing: its sets share no element.
    CHECK(answer.greedy.minor == 1200);
    CHECK(answer.saved.minor == 1400);
    CHECK(answer.value.minor == 1400);
    CHECK(answer.proved_best);
}
