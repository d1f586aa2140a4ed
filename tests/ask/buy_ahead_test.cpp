// Buying ahead over months, in the demo kitchen.
#include "ask/buy_ahead.hpp"

#include <algorithm>

#include "support/demo.hpp"

using namespace samebase;
using basics::days;
using tests::demo;
using tests::demo_day;
using tests::thing;

namespace {

const ask::AheadItem* item_of(const ask::AheadTrip& trip, std::string_view id) {
    const auto found = std::find_if(trip.items.begin(), trip.items.end(),
                                    [&](const ask::AheadItem& item) { return item.ingredient == thing(id); });
    return found == trip.items.end() ? nullptr : &*found;
}

/// Half a year, with milk that goes every day and rice that is eaten now and then.
kitchen::Kitchen small() {
    kitchen::Kitchen kitchen = demo();
    kitchen.lots.clear();
    kitchen.plan.clear();
    kitchen.household.standing_uses = {{thing("white-rice"), {measure::Dimension::mass, 100'000}, 0x01}};
    return kitchen;
}

}  // namespace

TEST_CASE("trips, things and total of a quarter add up, and the bound is not above the value") {
    const kitchen::Kitchen& kitchen = demo();
    const auto answer = ask::ask_buy_ahead(kitchen, {demo_day, demo_day + days{90}});
    REQUIRE_FALSE(answer.trips.empty());
    basics::Money sum;
    for (const ask::AheadTrip& trip : answer.trips) {
        basics::Money items;
        for (const ask::AheadItem& item : trip.items) {
            CHECK(item.packs > 0);
            CHECK(kitchen::sold_on(kitchen.household, trip.day, kitchen.catalogue()[item.ingredient]));
            items += item.price;
        }
        CHECK(items == trip.price);
        sum += trip.price;
    }
    CHECK(sum == answer.price);
    CHECK(answer.bound <= answer.value());
    CHECK(answer.planned_to);
    // Milk that keeps some days cannot be bought for the quarter.
    const auto with_milk = std::count_if(answer.trips.begin(), answer.trips.end(),
                                         [](const ask::AheadTrip& trip) { return item_of(trip, "milk") != nullptr; });
    CHECK(with_milk > 6);
}

TEST_CASE("dry goods alone need as few trips as their packs, and a dearer trip is never more often") {
    kitchen::Kitchen kitchen = small();
    const basics::Span span{demo_day, demo_day + days{180}};
    kitchen.household.worths.trip = {0};
    const auto free_trips = ask::ask_buy_ahead(kitchen, span);
    kitchen.household.worths.trip = {2000};
    const auto dear_trips = ask::ask_buy_ahead(kitchen, span);
    CHECK(dear_trips.trips.size() <= free_trips.trips.size());
    CHECK(dear_trips.trips.size() == 1);
    CHECK(dear_trips.proved());
    CHECK(dear_trips.price == free_trips.price);
}

TEST_CASE("a pantry that is too small for the rice of half a year makes more trips, or says so") {
    kitchen::Kitchen kitchen = small();
    kitchen.household.standing_uses.front().amount = {measure::Dimension::mass, 2'000'000};
    kitchen.household.worths.trip = {2000};
    const basics::Span span{demo_day, demo_day + days{180}};
    const auto roomy = ask::ask_buy_ahead(kitchen, span);
    for (auto& place : kitchen.household.places) {
        if (place.kind == stock::PlaceKind::pantry) place.room_ml = 30'000;
    }
    const auto tight = ask::ask_buy_ahead(kitchen, span);
    CHECK(tight.trips.size() > roomy.trips.size());
    CHECK(tight.crowds.empty());
    CHECK(tight.bound <= tight.value());
}

TEST_CASE("what no trip brings in time is said to be short") {
    kitchen::Kitchen kitchen = small();
    kitchen.household.trips.clear();
    const auto answer = ask::ask_buy_ahead(kitchen, {demo_day, demo_day + days{30}});
    CHECK(answer.trips.empty());
    REQUIRE(answer.short_of.size() == 1);
    CHECK(answer.short_of.front().ingredient == thing("white-rice"));
}
