// What wants do to one item, by hand.
#include "menu/supply.hpp"

#include <catch2/catch.hpp>

using namespace samebase;
using namespace samebase::menu;

namespace {

constexpr Worth dollar = 100 * thousandths;

/// A week with a trip on its third day; packs of 500 for five dollars.
Item item(int keeps_days, int opened_days) {
    Item item;
    item.days = 7;
    item.offer = flow::Offer{.pack = 500,
                             .price = {500},
                             .slots = {flow::shopping_of(2)},
                             .keeps_days = keeps_days,
                             .opened_days = opened_days};
    return item;
}

Batch batch(std::int64_t amount, flow::Slot last) {
    return {.amount = amount, .last = last, .whole = amount, .price = amount * thousandths};
}

}  // namespace

TEST_CASE("what ends first is eaten first, and what nobody eats in time is tossed") {
    Item here = item(-1, -1);
    here.there = {batch(300, flow::never), batch(200, flow::dinner_of(1))};
    Supply supply;
    const std::vector<flow::Want> wants{{flow::dinner_of(0), 150}, {flow::dinner_of(3), 100}};
    const Supplied result = supply.run(here, wants);
    CHECK(result.tossed == 50 * thousandths);
    CHECK(result.kept == 200 * thousandths);
    CHECK(result.spent == 0);
    CHECK(result.missing == 0);
}

TEST_CASE("what is missing is bought in whole packs on the last trip before, and the rest is there for what follows") {
    Item here = item(-1, -1);
    here.kept_thousandths = 500;
    Supply supply;
    const std::vector<flow::Want> wants{{flow::dinner_of(3), 450}, {flow::dinner_of(5), 600}};
    const Supplied result = supply.run(here, wants);
    CHECK(result.spent == 15 * dollar);
    CHECK(result.kept == 450 * thousandths);
    CHECK(result.worth(here) == 450 * thousandths / 2 - 15 * dollar);
}

TEST_CASE("nothing is bought before the first trip, nor kept longer than it keeps") {
    const Item here = item(2, -1);
    Supply supply;
    CHECK(supply.run(here, std::vector<flow::Want>{{flow::dinner_of(1), 10}}).missing == 10);
    CHECK(supply.run(here, std::vector<flow::Want>{{flow::dinner_of(4), 10}}).missing == 0);
    CHECK(supply.run(here, std::vector<flow::Want>{{flow::dinner_of(5), 10}}).missing == 10);
}

TEST_CASE("opening ends a pack: the rest is tossed once its days are over") {
    const Item here = item(-1, 1);
    Supply supply;
    const std::vector<flow::Want> near{{flow::dinner_of(3), 100}, {flow::dinner_of(4), 100}};
    CHECK(supply.run(here, near).spent == 5 * dollar);
    CHECK(supply.run(here, near).tossed == 3 * dollar);
    const std::vector<flow::Want> far{{flow::dinner_of(3), 100}, {flow::dinner_of(5), 100}};
    CHECK(supply.run(here, far).spent == 10 * dollar);
}

TEST_CASE("frozen packs are there once they can be thawed, and go on for their thawed days") {
    Item here = item(-1, -1);
    here.offer.reset();
    here.there = {batch(500, flow::never)};
    here.there.front().thaw_days = 1;
    here.there.front().thawed_days = 1;
    Supply supply;
    CHECK(supply.run(here, std::vector<flow::Want>{{flow::dinner_of(0), 100}}).missing == 100);
    const std::vector<flow::Want> wants{
        {flow::dinner_of(1), 100}, {flow::dinner_of(2), 100}, {flow::dinner_of(3), 100}};
    const Supplied result = supply.run(here, wants);
    CHECK(result.missing == 100);
    CHECK(result.tossed == 300 * thousandths);
    here.there.front().cold_water = true;
    CHECK(supply.run(here, std::vector<flow::Want>{{flow::dinner_of(0), 100}}).missing == 0);
}

TEST_CASE("what stands eats first, and what it opens is there from then on only") {
    flow::Component component;
    component.days = 7;
    component.units = {{.amount = 500, .price = {500}, .opened_days = 2}, {.amount = 300, .price = {300}}};
    component.units[0].last = flow::dinner_of(6);
    component.wants = {{flow::dinner_of(3), 350}};
    const Item left = left_by_wants(component, 1000);
    REQUIRE(left.there.size() == 1);
    CHECK(left.there.front().amount == 450);
    CHECK(left.there.front().first == flow::dinner_of(3));
    CHECK(left.there.front().last == flow::dinner_of(5));
    Supply supply;
    CHECK(supply.run(left, std::vector<flow::Want>{{flow::dinner_of(2), 100}}).missing == 100);
    CHECK(supply.run(left, std::vector<flow::Want>{{flow::dinner_of(4), 100}}).missing == 0);
}
