// Who is home, which kind of dish a weekday has, and when the household shops.
#include "kitchen/household.hpp"

#include <catch2/catch.hpp>

using namespace samebase;
using kitchen::Meal;
using kitchen::only;

namespace {

basics::Day day(const char* text) {
    return *basics::read_iso_day(text);
}

constexpr kitchen::Meals both = only(Meal::lunch) | only(Meal::dinner);
constexpr unsigned monday = 1;

/// Home all week, and home for Monday's lunch only, in turn from Monday 23 November 2026.
kitchen::Person in_turn() {
    kitchen::Week all{};
    all.fill(both);
    kitchen::Week one_lunch{};
    one_lunch[monday] = only(Meal::lunch);
    kitchen::Person person;
    person.roster = {all, one_lunch};
    person.roster_from = day("2026-11-23");
    return person;
}

}  // namespace

TEST_CASE("weeks of a roster follow one another in turn") {
    const auto person = in_turn();
    CHECK(home(person, day("2026-11-23"), Meal::dinner));
    CHECK(home(person, day("2026-11-29"), Meal::dinner));
    CHECK_FALSE(home(person, day("2026-11-30"), Meal::dinner));
    CHECK(home(person, day("2026-11-30"), Meal::lunch));
    CHECK_FALSE(home(person, day("2026-12-06"), Meal::lunch));
    CHECK(home(person, day("2026-12-07"), Meal::dinner));
    // Over the end of the year, and years on: 2026-11-23 and 730 weeks.
    CHECK(home(person, day("2026-11-23") + basics::days{7 * 730}, Meal::dinner));
    CHECK_FALSE(home(person, day("2026-11-23") + basics::days{7 * 731}, Meal::dinner));
}

TEST_CASE("before a roster begins its weeks run on backwards") {
    const auto person = in_turn();
    CHECK_FALSE(home(person, day("2026-11-22"), Meal::lunch));
    CHECK(home(person, day("2026-11-16"), Meal::lunch));
    CHECK_FALSE(home(person, day("2026-11-16"), Meal::dinner));
    CHECK(home(person, day("2026-11-15"), Meal::dinner));
    CHECK(home(person, day("2026-11-09"), Meal::dinner));
}

TEST_CASE("a roster that begins within a week changes over on that weekday") {
    auto person = in_turn();
    person.roster_from = day("2026-11-26");
    CHECK(home(person, day("2026-11-26"), Meal::dinner));
    CHECK(home(person, day("2026-12-02"), Meal::dinner));
    CHECK_FALSE(home(person, day("2026-12-03"), Meal::dinner));
    CHECK(home(person, day("2026-12-07"), Meal::lunch));
}

TEST_CASE("away is away for its meals, both ends included") {
    auto person = in_turn();
    person.roster = {person.roster.front()};
    person.away = {{{day("2026-12-18"), day("2026-12-20")}, both},
                   {{day("2026-12-02"), day("2026-12-02")}, only(Meal::lunch)}};
    CHECK(home(person, day("2026-12-17"), Meal::dinner));
    CHECK_FALSE(home(person, day("2026-12-18"), Meal::lunch));
    CHECK_FALSE(home(person, day("2026-12-20"), Meal::dinner));
    CHECK(home(person, day("2026-12-21"), Meal::lunch));
    CHECK_FALSE(home(person, day("2026-12-02"), Meal::lunch));
    CHECK(home(person, day("2026-12-02"), Meal::dinner));
}

TEST_CASE("the kinds of a standing night take turns, a week each") {
    kitchen::Household household;
    household.standing_nights = {{std::chrono::Monday, {"pulses", "soup", "eggs"}, day("2026-11-23")},
                                 {std::chrono::Sunday, {"roast"}, day("2026-11-23")}};
    CHECK(standing_kind(household, day("2026-11-23")) == "pulses");
    CHECK(standing_kind(household, day("2026-11-30")) == "soup");
    CHECK(standing_kind(household, day("2026-12-07")) == "eggs");
    CHECK(standing_kind(household, day("2026-12-14")) == "pulses");
    CHECK(standing_kind(household, day("2026-11-16")) == "eggs");
    CHECK(standing_kind(household, day("2026-11-29")) == "roast");
    CHECK(standing_kind(household, day("2026-12-06")) == "roast");
    CHECK(standing_kind(household, day("2026-11-24")) == std::nullopt);
}

TEST_CASE("the next shopping day is today or within the week, or there is none") {
    kitchen::Household household;
    CHECK(shopping_day(household, day("2026-11-25")) == std::nullopt);
    household.trips = kitchen::weekly_trips(1U << 6U);  // Saturday
    CHECK(shopping_day(household, day("2026-11-25")) == day("2026-11-28"));
    CHECK(shopping_day(household, day("2026-11-28")) == day("2026-11-28"));
    CHECK(shopping_day(household, day("2026-11-29")) == day("2026-12-05"));
    household.trips = kitchen::weekly_trips((1U << 2U) | (1U << 6U));  // Tuesday and Saturday
    CHECK(shopping_day(household, day("2026-11-29")) == day("2026-12-01"));
}

TEST_CASE("a fortnightly trip begins on its first such weekday, and a single trip has one day") {
    kitchen::Household household;
    household.trips = {{std::chrono::Saturday, 2, day("2026-12-03"), kitchen::TripFor::fresh},
                       {std::nullopt, 1, day("2026-12-14"), kitchen::TripFor::bulk}};
    CHECK(shopping_day(household, day("2026-11-25")) == day("2026-12-05"));
    CHECK(shopping_day(household, day("2026-12-05")) == day("2026-12-05"));
    CHECK(shopping_day(household, day("2026-12-06")) == day("2026-12-14"));
    CHECK(fresh_shopping_day(household, day("2026-12-06")) == day("2026-12-19"));
    CHECK(shopping_day(household, day("2026-12-15")) == day("2026-12-19"));
    CHECK(shopping_day(household, day("2026-12-20")) == day("2027-01-02"));
    household.trips.erase(household.trips.begin());
    CHECK(shopping_day(household, day("2026-12-15")) == std::nullopt);
    CHECK(fresh_shopping_day(household, day("2026-11-25")) == std::nullopt);
}

TEST_CASE("a trip on whose day things came in is done") {
    kitchen::Household household;
    household.trips = kitchen::weekly_trips(1U << 6U);
    household.shopped_on = day("2026-11-28");
    CHECK(shopping_day(household, day("2026-11-28")) == day("2026-12-05"));
    CHECK(shopping_day(household, day("2026-11-25")) == day("2026-12-05"));
    CHECK_FALSE(sold_on(household, day("2026-11-28"), {}));
    CHECK(sold_on(household, day("2026-12-05"), {}));
    household.trips = {{std::nullopt, 1, day("2026-11-28"), kitchen::TripFor::all}};
    CHECK(shopping_day(household, day("2026-11-25")) == std::nullopt);
}

TEST_CASE("fresh trips sell what is perishable, bulk trips what keeps or can be frozen") {
    using catalogue::Keep;
    const auto thing = [](std::vector<std::pair<Keep, int>> times) {
        catalogue::Ingredient ingredient;
        for (const auto& [keep, days] : times)
            ingredient.keeps[static_cast<std::size_t>(keep)] = {catalogue::Keeping::Said::time, {days, {}}};
        return ingredient;
    };
    const auto lettuce = thing({{Keep::crisper, 7}});
    const auto mince = thing({{Keep::fridge, 2}, {Keep::freezer, 120}});
    const auto potatoes = thing({{Keep::pantry, 30}, {Keep::fridge, 14}});
    const auto peas = thing({{Keep::freezer, 240}});
    const auto sold = [](kitchen::TripFor what, const catalogue::Ingredient& it) { return kitchen::sells(what, it); };
    for (const auto& it : {lettuce, mince, potatoes, peas}) CHECK(sold(kitchen::TripFor::all, it));
    CHECK(sold(kitchen::TripFor::fresh, lettuce));
    CHECK(sold(kitchen::TripFor::fresh, mince));
    CHECK_FALSE(sold(kitchen::TripFor::fresh, potatoes));
    CHECK_FALSE(sold(kitchen::TripFor::fresh, peas));
    CHECK_FALSE(sold(kitchen::TripFor::bulk, lettuce));
    CHECK(sold(kitchen::TripFor::bulk, mince));
    CHECK(sold(kitchen::TripFor::bulk, potatoes));
    CHECK(sold(kitchen::TripFor::bulk, peas));
    kitchen::Household household;
    household.trips = {{std::nullopt, 1, day("2026-12-05"), kitchen::TripFor::bulk}};
    CHECK(sold_on(household, day("2026-12-05"), mince));
    CHECK_FALSE(sold_on(household, day("2026-12-05"), lettuce));
    CHECK_FALSE(sold_on(household, day("2026-12-06"), mince));
}

TEST_CASE("an occasion with a dish or a note comes before the standing night") {
    kitchen::Household household;
    household.standing_nights.push_back({std::chrono::Friday, {"pizza"}, day("2026-11-23")});
    const auto christmas = day("2026-12-25");
    REQUIRE(kitchen::standing_kind(household, christmas) == "pizza");
    household.occasions.push_back({.day = christmas, .note = "", .dish = {}, .guests = 2, .guests_avoid = {}});
    CHECK(kitchen::standing_kind(household, christmas) == "pizza");
    household.occasions.push_back(
        {.day = christmas, .note = "Christmas dinner", .dish = {}, .guests = 0, .guests_avoid = {}});
    CHECK(kitchen::standing_kind(household, christmas) == std::nullopt);
    CHECK(kitchen::standing_kind(household, christmas + basics::days{7}) == "pizza");
}
