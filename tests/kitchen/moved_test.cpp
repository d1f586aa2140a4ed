// Things go to another place, and some of them thaw there.
#include <catch2/catch.hpp>

#include "kitchen/changes.hpp"
#include "stock/packs.hpp"
#include "support/story.hpp"

using namespace samebase;
using kitchen::At;
using kitchen::Change;
using stock::Column;
using stock::Kind;
using stock::State;
using tests::grams;
using tests::of;
using tests::packs;
using tests::Story;
using tests::world;

TEST_CASE("packs move whole, and a part that moves away is a new lot") {
    Story story;
    story.gets("beef-mince", packs(14'000), "far-freezer");
    const Change change = story.moves("beef-mince", of(grams(1200)), "far-freezer", "near-freezer");
    REQUIRE(change.entries.size() == 2);
    CHECK(change.entries[0].column == Column::moved_out);
    CHECK(change.entries[0].delta == -1'500'000);
    CHECK(change.entries[1].column == Column::moved_in);
    CHECK(change.entries[1].after.number == 2);
    CHECK(story.kitchen.lots[0].amount == grams(5500));
    CHECK(story.kitchen.lots[1].best_by == story.kitchen.lots[0].best_by);
}

TEST_CASE("a move of more than was known finds the rest first") {
    Story story;
    story.gets("beef-mince", packs(2'000), "far-freezer");
    const Change change = story.moves("beef-mince", packs(3'000), "far-freezer", "near-freezer");
    CHECK(change.notes == std::vector<std::string>{"500 g beef mince more than was known: recorded as found"});
    CHECK(story.has("beef-mince") == 1'500'000);
    CHECK(story.kitchen.lots.size() == 1);
}

TEST_CASE("out of a freezer a flat pack thaws in a day, and is then cooked within one") {
    Story story;
    story.gets("beef-mince", packs(2'000), "near-freezer");
    story.today += basics::days{10};
    const Change change = story.moves("beef-mince", packs(1'000), "near-freezer", "fridge", stock::ThawMethod::fridge);
    const stock::Lot& lot = story.kitchen.lots.back();
    CHECK(change.entries.back().kind == Kind::thawing);
    CHECK(lot.state == State::thawing);
    CHECK(lot.thawed_on == story.today + basics::days{1});
    CHECK(lot.use_by == story.today + basics::days{2});
    CHECK_FALSE(lot.ready(story.today));
    CHECK(lot.ready(story.today + basics::days{1}));
}

TEST_CASE("a whole bird of two kilograms takes two days, and in cold water it is cooked at once") {
    Story story;
    story.gets("whole-chicken", packs(2'000), "far-freezer");
    story.moves("whole-chicken", packs(1'000), "far-freezer", "fridge", stock::ThawMethod::fridge);
    CHECK(story.kitchen.lots.back().thawed_on == story.today + basics::days{2});
    story.moves("whole-chicken", packs(1'000), "far-freezer", "fridge", stock::ThawMethod::cold_water);
    CHECK(story.kitchen.lots.front().use_by == story.today);
}

TEST_CASE("packs that somebody chose are moved, and others of the lot stay") {
    Story story;
    story.gets("beef-mince", {grams(1500), 3'000, {}}, "far-freezer");
    story.does([](const At& at) {
        return kitchen::count(at, world.place("far-freezer"),
                              {{{world.ingredient("beef-mince"), {}, packs(2'500), {}}}}, false);
    });
    REQUIRE(story.kitchen.lots.front().packs == std::vector<std::int64_t>{500'000, 500'000, 250'000});
    const kitchen::PacksOfLot one{1, {500'000}};
    const auto place = world.place("fridge");
    const Change change =
        story.does([&](const At& at) { return kitchen::moved_packs(at, {{one}}, place, stock::ThawMethod::fridge); });
    CHECK(change.line == "moved to fridge: 1 pack (500 g) beef mince, to be cooked from 2026-11-26, use by 2026-11-27");
    CHECK(story.kitchen.lots.front().packs == std::vector<std::int64_t>{500'000, 250'000});
    CHECK(story.kitchen.lots.front().part_of == 500'000);
    CHECK(story.kitchen.lots.back().state == State::thawing);
    CHECK(story.has("beef-mince") == 1'250'000);
    // Two changes as one.
    const At at{story.kitchen, story.today, story.next_lot};
    const kitchen::PacksOfLot rest{1, {500'000, 250'000}};
    auto nothing = kitchen::moved_packs(at, {}, place, {});
    REQUIRE(nothing);
    CHECK(nothing->empty());
    const auto all = kitchen::moved_packs(at, {{rest}}, world.place("near-freezer"), {});
    REQUIRE(all);
    const Change both = kitchen::one_after_other(*nothing, *all);
    CHECK(both.entries == all->entries);
    CHECK(both.line == all->line);
    CHECK(kitchen::one_after_other(change, *all).line == change.line + "; " + all->line);
    CHECK(kitchen::one_after_other(change, *all).entries.size() == change.entries.size() + all->entries.size());
}

TEST_CASE("packs that are not there are not moved") {
    Story story;
    story.gets("beef-mince", {grams(1500), 3'000, {}}, "far-freezer");
    const auto place = world.place("fridge");
    for (const kitchen::PacksOfLot& wrong :
         {kitchen::PacksOfLot{1, {400'000}}, kitchen::PacksOfLot{1, {500'000, 500'000, 500'000, 500'000}},
          kitchen::PacksOfLot{1, {}}, kitchen::PacksOfLot{2, {500'000}}}) {
        CHECK(story.fails([&](const At& at) {
            return kitchen::moved_packs(at, {{wrong}}, place, stock::ThawMethod::fridge);
        }) == "lot " + std::to_string(wrong.lot) +
                  ": these packs are not there; expected packs of the lot as it is; 'samebase stock' lists it");
    }
}

TEST_CASE("nothing perishable is thawed on the shelf") {
    Story story;
    story.gets("beef-mince", packs(1'000), "near-freezer");
    CHECK(story.fails(story.moving("beef-mince", {}, "near-freezer", "pantry", stock::ThawMethod::fridge)) ==
          "pantry: beef mince is not thawed out of the fridge; expected a fridge; thaw it in the fridge, in cold water "
          "or in the "
          "microwave");
}

TEST_CASE("thawed raw food is not frozen again, and the offer is to cook it first") {
    Story story;
    story.gets("beef-mince", packs(1'000), "near-freezer");
    story.moves("beef-mince", {}, "near-freezer", "fridge", stock::ThawMethod::fridge);
    CHECK(story.fails(story.moving("beef-mince", {}, "fridge", "far-freezer")) ==
          "beef mince: thawed food does not go back into a freezer; expected cooked first; cook it first and freeze "
          "the meal: "
          "'samebase cooked DISH --freeze 3 serves'");
}

TEST_CASE("food past its use-by does not go into a freezer") {
    Story story;
    story.gets("beef-mince", packs(1'000), "fridge");
    story.today += basics::days{3};
    CHECK(story.fails(story.moving("beef-mince", {}, "fridge", "near-freezer")) ==
          "beef mince: its use-by has passed: 2026-11-27; expected food within its use-by; toss it");
}
