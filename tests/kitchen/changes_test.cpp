#include "kitchen/changes.hpp"

#include <catch2/catch.hpp>

#include "stock/packs.hpp"
#include "support/story.hpp"

using namespace samebase;
using kitchen::At;
using kitchen::Change;
using stock::Column;
using stock::Kind;
using stock::State;
using tests::day;
using tests::grams;
using tests::millilitres;
using tests::of;
using tests::packs;
using tests::pieces;
using tests::Story;
using tests::world;

TEST_CASE("fourteen trays that weigh 7.3 kg are 7.3 kg") {
    Story story;
    const Change change = story.gets("beef-mince", {grams(7300), 14'000, {}}, "far-freezer");
    const stock::Lot& lot = story.kitchen.lots.front();
    CHECK(lot.amount == grams(7300));
    CHECK(stock::pack_count(lot) == 14'000);
    CHECK(lot.state == State::frozen);
    CHECK(lot.best_by == day("2027-02-23"));
    CHECK(change.line == "got 14 packs (7.3 kg) beef mince into far-freezer, best by 2027-02-23");
}

TEST_CASE("packs that nobody knew of are found as packs, not as one large one") {
    Story story;
    story.gets("beef-mince", {grams(1000), 2'000, {}}, "far-freezer");
    story.moves("beef-mince", packs(5'000), "far-freezer", "near-freezer");
    REQUIRE(story.kitchen.lots.size() == 1);
    CHECK(story.kitchen.lots.front().packs == std::vector<std::int64_t>(5, 500'000));
    story.moves("milk", packs(2'000), "far-freezer", "near-freezer");
    REQUIRE(story.kitchen.lots.size() == 2);
    CHECK(story.kitchen.lots.back().packs == std::vector<std::int64_t>(2, 2'000'000));
}

TEST_CASE("a bare number of packs takes the pack's usual size, and what was paid becomes the last price") {
    Story story;
    kitchen::Got got{
        world.ingredient("beef-mince"), packs(4'000), world.place("fridge"), {}, {}, basics::Money{2800}, {}, {}};
    const Change change = story.does([&](const At& at) { return kitchen::got(at, {{got}}); });
    CHECK(story.has("beef-mince") == 2'000'000);
    REQUIRE(change.facts.size() == 1);
    CHECK(change.facts[0].fact.amount == 2'000'000);
    CHECK(kitchen::price(story.kitchen, got.ingredient, 500'000) == basics::Money{700});
}

TEST_CASE("a pack whose size nobody knows is a problem that says so") {
    Story story;
    kitchen::Got got{world.ingredient("parsley"), packs(2'000), world.place("crisper"), {}, {}, {}, {}, {}};
    CHECK(story.fails([&](const At& at) { return kitchen::got(at, {{got}}); }) ==
          "parsley: nobody has said how large a pack of parsley is; expected a pack size; say it once, and it is "
          "remembered");
}

TEST_CASE("a perishable does not go into the pantry") {
    Story story;
    kitchen::Got got{world.ingredient("milk"), of(millilitres(2000)), world.place("pantry"), {}, {}, {}, {}, {}};
    CHECK(story.fails([&](const At& at) { return kitchen::got(at, {{got}}); }) ==
          "pantry: milk does not keep in the pantry; expected a fridge or a freezer");
}

TEST_CASE("a printed use-by stands on what is closed, and it is said when it no longer counts") {
    Story story;
    story.gets("milk", of(millilitres(2000)), "fridge", day("2026-11-28"));
    CHECK(story.kitchen.lots.front().use_by == day("2026-11-28"));
    Story other;
    other.gets("milk", of(millilitres(2000)), "fridge", day("2027-01-28"));
    CHECK(other.kitchen.lots.front().use_by == day("2027-01-28"));
    kitchen::Item item{{{}, world.ingredient("milk"), {}, {}}, {}, {}};
    const Change change = other.does([&](const At& at) { return kitchen::opened(at, {{item}}); });
    CHECK(change.notes == std::vector<std::string>{
                              "milk: the printed use-by 2027-01-28 no longer counts: it is opened, use by 2026-11-29"});
}

TEST_CASE("what is past its use-by is not opened") {
    Story story;
    story.gets("milk", of(millilitres(2000)), "fridge");
    story.today += basics::days{9};
    kitchen::Item item{{{}, world.ingredient("milk"), {}, {}}, {}, {}};
    CHECK(story.fails([&](const At& at) { return kitchen::opened(at, {{item}}); }) ==
          "milk: all of it is past its use-by; expected something within its use-by; toss it");
}

TEST_CASE("all that is past its use-by is tossed at once, and nothing else") {
    Story story;
    story.gets("milk", of(millilitres(2000)), "fridge");
    story.gets("cabbage", of(pieces(1'000)), "crisper");
    story.gets("beef-mince", packs(1'000), "fridge");
    CHECK(story.fails([&](const At& at) { return kitchen::tossed_past(at, ""); }) ==
          "--past: nothing is past its use-by; expected something to toss");
    story.today += basics::days{9};
    const Change change = story.does([&](const At& at) { return kitchen::tossed_past(at, "too late"); });
    CHECK(change.line == "tossed 2 L milk and 500 g beef mince: too late");
    REQUIRE(story.kitchen.lots.size() == 1);
    CHECK(story.kitchen.lots[0].ingredient == world.ingredient("cabbage"));
}

TEST_CASE("what is eaten from several lots is told once") {
    Story story;
    story.gets("milk", of(millilitres(1000)), "fridge");
    story.gets("milk", of(millilitres(1000)), "fridge");
    CHECK(story.does(story.eating("milk", of(millilitres(1300)))).line == "ate 1.3 L milk");
}

TEST_CASE("a share of a payment for several things is no price") {
    Story story;
    kitchen::Got got{
        world.ingredient("beef-mince"), packs(4'000), world.place("fridge"), {}, {}, basics::Money{2800}, {}, {}, true};
    const Change change = story.does([&](const At& at) { return kitchen::got(at, {{got}}); });
    CHECK(change.facts.empty());
    CHECK(story.kitchen.lots.front().paid == basics::Money{2800});
}

TEST_CASE("one jar is opened, and keeps as opened, and the others stay closed") {
    Story story;
    story.gets("pasta-sauce", packs(3'000), "pantry");
    kitchen::Item item{{{}, world.ingredient("pasta-sauce"), {}, {}}, {}, {}};
    const Change change = story.does([&](const At& at) { return kitchen::opened(at, {{item}}); });
    CHECK(change.line == "opened 1 pack (500 mL) pasta sauce, use by 2026-11-30");
    REQUIRE(story.kitchen.lots.size() == 2);
    CHECK(story.kitchen.lots[0].opened_on == std::nullopt);
    CHECK(story.kitchen.lots[1].use_by == day("2026-11-30"));
}

TEST_CASE("eating half a jar opens it, and the opened one is eaten first") {
    Story story;
    story.gets("pasta-sauce", packs(2'000), "pantry");
    story.does(story.eating("pasta-sauce", of(millilitres(200))));
    REQUIRE(story.kitchen.lots.size() == 2);
    CHECK(story.kitchen.lots[1].opened_on == story.today);
    CHECK(story.kitchen.lots[1].amount == millilitres(300));
    story.does(story.eating("pasta-sauce", of(millilitres(100))));
    CHECK(story.kitchen.lots[0].amount == millilitres(500));
    CHECK(story.kitchen.lots[1].amount == millilitres(200));
}

TEST_CASE("half a cabbage is cut from one head") {
    Story story;
    story.gets("cabbage", of(pieces(3'000)), "crisper");
    story.does(story.eating("cabbage", of(pieces(500))));
    REQUIRE(story.kitchen.lots.size() == 2);
    CHECK(story.kitchen.lots[0].amount == pieces(2'000));
    CHECK(story.kitchen.lots[1].amount == pieces(500));
    CHECK(story.kitchen.lots[1].best_by == day("2026-11-29"));
}

TEST_CASE("a carton that is begun leaves its eggs as they are, and an egg that is cracked does not") {
    Story story;
    kitchen::Got carton{world.ingredient("eggs"), packs(1'000), world.place("fridge"), pieces(12'000), {}, {}, {}, {}};
    story.does([&](const At& at) { return kitchen::got(at, {{carton}}); });
    REQUIRE(story.kitchen.lots.front().packs == std::vector<std::int64_t>{12'000});
    const auto until = story.kitchen.lots.front().use_by;
    story.does(story.eating("eggs", of(pieces(6'000))));
    REQUIRE(story.kitchen.lots.size() == 1);
    CHECK(story.kitchen.lots.front().opened_on == std::nullopt);
    CHECK(story.kitchen.lots.front().use_by == until);
    CHECK(story.kitchen.lots.front().amount == pieces(6'000));
    story.does(story.eating("eggs", of(pieces(500))));
    REQUIRE(story.kitchen.lots.size() == 2);
    CHECK(story.kitchen.lots[0].amount == pieces(5'000));
    CHECK(story.kitchen.lots[1].amount == pieces(500));
    CHECK(story.kitchen.lots[1].opened_on == story.today);
}

TEST_CASE("milk that is begun keeps as opened") {
    Story story;
    story.gets("milk", of(millilitres(2000)), "fridge");
    story.does(story.eating("milk", of(millilitres(250))));
    CHECK(story.kitchen.lots.front().use_by == day("2026-11-29"));
}

TEST_CASE("what is past its use-by is not eaten") {
    Story story;
    story.gets("milk", of(millilitres(2000)), "fridge");
    story.today += basics::days{9};
    CHECK(story.fails(story.eating("milk", of(millilitres(250)))) ==
          "milk: all of it is past its use-by; expected something within its use-by; toss it");
}

TEST_CASE("a dish eats the first-expired lots, and staples are not counted") {
    Story story;
    story.gets("beef-mince", packs(2'000), "fridge", day("2026-11-27"));
    story.gets("beef-mince", packs(1'000), "fridge", day("2026-11-26"));
    story.gets("onion", of(pieces(3'000)), "pantry");
    story.gets("eggs", packs(1'000), "fridge");
    const Change change = story.does(story.cooking("meat-loaf", 5, 3));
    CHECK(change.notes.empty());
    CHECK(story.has("beef-mince") == 750'000);
    CHECK(story.kitchen.lot(2) == nullptr);  // the nearer one first
    CHECK(story.has("flour") == 0);
    CHECK(story.has("cold-meat-loaf") == 2'000);
    CHECK(story.kitchen.history ==
          std::vector<kitchen::Had>{{story.today, kitchen::Meal::dinner, world.dish("meat-loaf")}});
    CHECK(change.line == "cooked meat loaf, 5 serves: 2 serves cold meat loaf into fridge, use by 2026-11-28");
}

TEST_CASE("a dish scales to its serves: a main in whole packs where that is near, pieces in quarters") {
    Story story;
    story.gets("beef-mince", packs(4'000), "fridge");
    story.gets("onion", of(pieces(5'000)), "pantry");
    story.gets("eggs", packs(1'000), "fridge");
    story.does(story.cooking("meat-loaf", 7, 7));
    CHECK(story.has("beef-mince") == 2'000'000 - 1'000'000);  // 1050 g would be two packs and a little
    CHECK(story.has("onion") == 5'000 - 1'500);               // 1.4
}

TEST_CASE("a cook who used more than was known had it") {
    Story story;
    story.gets("beef-mince", packs(1'000), "fridge");
    story.gets("onion", of(pieces(3'000)), "pantry");
    const Change change = story.does(story.cooking("meat-loaf", 5, 5));
    CHECK(change.notes == std::vector<std::string>{"more than was known, recorded as found: 250 g beef mince, 1 eggs"});
    CHECK(story.has("beef-mince") == 0);
    CHECK(story.has("eggs") == 0);
}

TEST_CASE("frozen mince is used only where there is no other, and a note says so, and peas are cooked from frozen") {
    Story story;
    story.gets("beef-mince", packs(5'000), "near-freezer");
    story.gets("beef-mince", packs(1'000), "fridge");
    story.gets("onion", of(pieces(3'000)), "pantry");
    story.gets("eggs", packs(1'000), "fridge");
    const Change change = story.does(story.cooking("meat-loaf", 5, 5));
    CHECK(change.notes == std::vector<std::string>{"250 g beef mince was still down as frozen"});
    story.gets("whole-chicken", packs(1'000), "fridge");
    story.gets("peas", packs(1'000), "near-freezer");
    CHECK(story.does(story.cooking("roast-chicken", 4, 4)).notes.empty());
    CHECK(story.has("chicken-carcass") == 1'000);
    CHECK(story.has("peas") == 600'000);
}

TEST_CASE("a ready meal is a frozen lot of the dish, with its price and its allergens") {
    Story story;
    story.gets("beef-mince", packs(2'000), "fridge");
    story.gets("onion", of(pieces(3'000)), "pantry");
    story.gets("eggs", packs(1'000), "fridge");
    story.does(story.cooking("meat-loaf", 8, 3, 4));
    const auto frozen = std::find_if(story.kitchen.lots.begin(), story.kitchen.lots.end(),
                                     [](const stock::Lot& lot) { return lot.dish && lot.state == State::frozen; });
    REQUIRE(frozen != story.kitchen.lots.end());
    CHECK(frozen->amount == pieces(4'000));
    CHECK(frozen->best_by == day("2027-01-24"));
    CHECK(frozen->paid == basics::Money{4 * kitchen::cost_per_serve(story.kitchen, world.dish("meat-loaf")).minor});
    const auto allergens = stock::counted_allergens(*frozen, story.kitchen.catalogue(), story.kitchen.cookbook());
    CHECK(allergens.has(catalogue::Allergen::egg));
    CHECK(allergens.has(catalogue::Allergen::wheat));
    CHECK(story.has("cold-meat-loaf") == 5'000);
}

TEST_CASE("more serves eaten and frozen than cooked are refused") {
    Story story;
    CHECK(story.fails(story.cooking("meat-loaf", 4, 3, 2)) ==
          "meat loaf: more serves eaten and frozen than cooked; expected 4 at most");
}

TEST_CASE("something else is cooked instead of what the dish asks for") {
    Story story;
    story.gets("peas", packs(2'000), "near-freezer");
    kitchen::Cooked what;
    what.dish = world.dish("meat-loaf");
    what.serves = what.eaten = 5000;
    what.leftovers = world.place("fridge");
    what.swaps = {{world.ingredient("beef-mince"), {{world.ingredient("peas"), 240'000}}, 2000},
                  {world.ingredient("eggs"), {}},
                  {world.ingredient("onion"), {}}};
    const Change change = story.does([&](const At& at) { return kitchen::cooked(at, what); });
    CHECK(change.notes.empty());
    CHECK(change.line == "cooked meat loaf, 5 serves");
    CHECK(story.has("peas") == 1'400'000);
}

TEST_CASE("what is left holds what went into it in place of something, from lot to lot") {
    Story story;
    const auto holds = [&](std::string_view what) {
        const auto found =
            std::find_if(story.kitchen.lots.rbegin(), story.kitchen.lots.rend(),
                         [&](const stock::Lot& lot) { return lot.ingredient == world.ingredient(what); });
        REQUIRE(found != story.kitchen.lots.rend());
        return stock::counted_allergens(*found, story.kitchen.catalogue(), story.kitchen.cookbook());
    };
    const auto loaf_with = [&](const char* of, const char* use) {
        kitchen::Cooked what;
        what.dish = world.dish("meat-loaf");
        what.serves = 5000;
        what.leftovers = world.place("fridge");
        what.swaps = {{world.ingredient(of), {{world.ingredient(use), 1'000}}, 5'000}};
        story.does([&](const At& at) { return kitchen::cooked(at, what); });
    };
    loaf_with("onion", "peas");
    const auto plain = holds("cold-meat-loaf");
    CHECK(plain.has(catalogue::Allergen::egg));
    CHECK_FALSE(plain.has(catalogue::Allergen::milk));
    CHECK(story.kitchen.lots.back().also.empty());
    loaf_with("onion", "milk");
    CHECK(holds("cold-meat-loaf").has(catalogue::Allergen::milk));
    story.does([&](const At& at) {
        const kitchen::Item item{{story.kitchen.lots.front().number, {}, {}, {}}, {}, {}};
        return kitchen::tossed(at, {&item, 1}, "");
    });
    // The lot with milk goes into another dish: what that leaves holds milk too.
    kitchen::Cooked soup;
    soup.dish = world.dish("roast-chicken");
    soup.serves = 4000;
    soup.leftovers = world.place("fridge");
    soup.swaps = {{world.ingredient("peas"), {{world.ingredient("cold-meat-loaf"), 1'000}}, 4'000}};
    story.does([&](const At& at) { return kitchen::cooked(at, soup); });
    CHECK(holds("cold-roast-chicken").has(catalogue::Allergen::milk));
    CHECK(holds("chicken-carcass").has(catalogue::Allergen::milk));
}

TEST_CASE("a planned meal is cooked with something else, and as it is written again") {
    Story story;
    const basics::Day friday = day("2026-11-27");
    const kitchen::Planned loaf{friday, kitchen::Meal::dinner, world.dish("meat-loaf"), false, {}, 0};
    const kitchen::LineSwap peas{world.ingredient("beef-mince"), {{world.ingredient("peas"), 600'000}}, 5'000};
    const kitchen::LineSwap less{world.ingredient("eggs"), {{world.ingredient("eggs"), 500}}, 5'000};
    story.does([&](const At& at) { return kitchen::set_meal(at, loaf); });
    const auto with = [&](std::vector<kitchen::LineSwap> swaps) {
        return story.does([&](const At& at) -> basics::Result<Change> {
            return kitchen::set_swaps(at, at.kitchen.plan.front(), swaps);
        });
    };
    CHECK(with({peas, less}).line == "dinner on Fri 27 Nov: meat loaf (peas for beef mince, 1/2 eggs)");
    CHECK(story.kitchen.plan.front().swaps == std::vector{peas, less});
    CHECK(with({peas, less}).empty());
    CHECK(story.does([&](const At& at) { return kitchen::set_meal(at, loaf); }).line ==
          "dinner on Fri 27 Nov: meat loaf as it is written; it was with peas for beef mince, 1/2 eggs");
    CHECK(story.kitchen.plan == kitchen::Plan{loaf});
    CHECK(with({peas}).plan.size() == 2);
    CHECK(with({}).plan.size() == 2);
    CHECK(story.kitchen.plan == kitchen::Plan{loaf});
}

TEST_CASE("a count in packs takes whole packs from the oldest lot, at their true weights") {
    Story story;
    story.gets("beef-mince", {grams(2070), 4'000, {}}, "near-freezer");
    story.today += basics::days{5};
    story.gets("beef-mince", packs(3'000), "near-freezer");
    const Change change =
        story.does(story.counting("near-freezer", {{world.ingredient("beef-mince"), {}, packs(4'500), {}}}));
    // Seven known, four and a half counted: two packs and a half go from the older lot.
    CHECK(story.kitchen.lots[0].amount.value() == 2'070'000 - 517'500 * 2 - 258'750);
    CHECK(stock::pack_count(story.kitchen.lots[0]) == 1'500);
    CHECK(story.kitchen.lots[1].amount == grams(1500));
    REQUIRE(change.counted.size() == 1);
    CHECK(change.counted[0].was == "7 packs (3.57 kg)");
    CHECK(change.counted[0].is == "4 1/2 packs (2.3 kg)");
    for (const auto& entry : change.entries) CHECK(entry.column == Column::lost);
}

TEST_CASE("what is counted and was not known is found, as old as the oldest lot") {
    Story story;
    story.gets("beef-mince", packs(2'000), "near-freezer");
    story.today += basics::days{5};
    const Change change =
        story.does(story.counting("near-freezer", {{world.ingredient("beef-mince"), {}, packs(4'000), {}},
                                                   {world.ingredient("peas"), {}, packs(500), {}}}));
    CHECK(story.kitchen.lots[0].amount == grams(2000));
    CHECK(story.kitchen.lots[0].best_by == day("2027-02-23"));
    CHECK(story.kitchen.lots[1].amount == grams(500));
    CHECK(stock::pack_count(story.kitchen.lots[1]) == 500);
    for (const auto& entry : change.entries) CHECK(entry.column == Column::found);
}

TEST_CASE("a loose block that is counted in packs of a said weight is in those packs from then on") {
    Story story;
    story.gets("beef-mince", of(grams(2000)), "near-freezer");
    const Change change =
        story.does(story.counting("near-freezer", {{world.ingredient("beef-mince"), {}, packs(4'000), grams(500)}}));
    REQUIRE(story.kitchen.lots.size() == 1);
    CHECK(story.kitchen.lots[0].packs == std::vector<std::int64_t>(4, 500'000));
    CHECK(change.counted[0].was == "2 kg");
    CHECK(change.counted[0].is == "4 packs (2 kg)");
    CHECK(story.does(story.counting("near-freezer", {{world.ingredient("beef-mince"), {}, packs(4'000), grams(500)}}))
              .empty());
}

TEST_CASE("one large pack that is counted as four small ones is four small ones") {
    Story story;
    story.gets("beef-mince", {grams(2000), 1'000, {}}, "near-freezer");
    story.does(story.counting("near-freezer", {{world.ingredient("beef-mince"), {}, packs(4'000), grams(500)}}));
    REQUIRE(story.kitchen.lots.size() == 1);
    CHECK(story.kitchen.lots[0].packs == std::vector<std::int64_t>(4, 500'000));
}

TEST_CASE("more cabbage than the old one that is past its best was bought since") {
    Story story;
    story.gets("cabbage", of(pieces(500)), "crisper");
    story.today += basics::days{60};
    story.does(story.counting("crisper", {{world.ingredient("cabbage"), {}, of(pieces(1'000)), {}}}));
    REQUIRE(story.kitchen.lots.size() == 1);
    CHECK(story.kitchen.lots[0].amount == pieces(1'000));
    CHECK(story.kitchen.lots[0].arrived == story.today);
    CHECK(story.kitchen.lots[0].best_by > story.today);
}

TEST_CASE("a count that agrees writes nothing, and with all, what is not named is gone") {
    Story story;
    story.gets("beef-mince", packs(2'000), "near-freezer");
    story.gets("peas", packs(1'000), "near-freezer");
    story.gets("peas", packs(1'000), "far-freezer");
    const std::vector<kitchen::CountedItem> mince{{world.ingredient("beef-mince"), {}, packs(2'000), {}}};
    CHECK(story.does(story.counting("near-freezer", mince)).empty());
    const Change change = story.does(story.counting("near-freezer", mince, true));
    REQUIRE(change.entries.size() == 1);
    CHECK(change.entries[0].kind == Kind::lost);
    CHECK(story.has("peas") == 1'000'000);
}

TEST_CASE("some parsley is there and left out of sums, until it is weighed") {
    Story story;
    story.gets("parsley", of(grams(50)), "crisper");
    story.does(story.counting("crisper", {{world.ingredient("parsley"), {}, {{}, {}, measure::Rough::some}, {}}}));
    REQUIRE(story.kitchen.lots.size() == 1);
    CHECK(story.kitchen.lots[0].rough == measure::Rough::some);
    CHECK(story.has("parsley") == 0);
    const Change eaten = story.does(story.eating("parsley", of(grams(10))));
    CHECK(eaten.entries.empty());
    CHECK(eaten.notes == std::vector<std::string>{"10 g parsley: from what is there as 'some'"});
    story.does(story.counting("crisper", {{world.ingredient("parsley"), {}, of(grams(20)), {}}}));
    CHECK(story.has("parsley") == 20'000);
    CHECK_FALSE(story.kitchen.lots[0].rough);
}

TEST_CASE("one thing is counted once") {
    Story story;
    const kitchen::CountedItem peas{world.ingredient("peas"), {}, packs(1'000), {}};
    CHECK(story.fails(story.counting("near-freezer", {peas, peas})) ==
          "peas: counted twice; expected one count of it; add the two up");
}

TEST_CASE("a staple is out, and there again when it is got") {
    Story story;
    const auto oil = world.ingredient("oil");
    story.does([&](const At& at) { return kitchen::out(at, oil, true); });
    CHECK_FALSE(story.kitchen.taken_as_there(oil));
    story.gets("oil", of(millilitres(750)), "pantry");
    CHECK(story.kitchen.taken_as_there(oil));
    CHECK(story.fails([&](const At& at) { return kitchen::out(at, world.ingredient("milk"), true); }) ==
          "milk: is no staple: its stock is counted; expected a staple; say 'samebase count' or 'samebase tossed'");
}

TEST_CASE("the plan is set, changed, swapped and cleared by edits") {
    Story story;
    const basics::Day friday = day("2026-11-27");
    const basics::Day monday = day("2026-11-30");
    const auto dinner = kitchen::Meal::dinner;
    story.does([&](const At& at) {
        return kitchen::set_meal(at, {friday, dinner, world.dish("meat-loaf"), false, {}, 0});
    });
    story.does([&](const At& at) {
        return kitchen::set_meal(at, {monday, dinner, world.dish("omelette"), false, 4, 1});
    });
    const Change change = story.does([&](const At& at) {
        return kitchen::set_meal(at, {friday, dinner, world.dish("roast-chicken"), false, {}, 0});
    });
    CHECK(change.line == "dinner on Fri 27 Nov: roast chicken instead of meat loaf");
    CHECK(change.plan.size() == 2);
    story.does([&](const At& at) { return kitchen::swap_days(at, friday, monday, dinner); });
    REQUIRE(story.kitchen.plan.size() == 2);
    CHECK(story.kitchen.plan[0] == kitchen::Planned{friday, dinner, world.dish("omelette"), false, 4, 1});
    CHECK(story.kitchen.plan[1].dish == world.dish("roast-chicken"));
    story.does([&](const At& at) { return kitchen::set_plan(at, {friday, friday}, {}, {}, "plan"); });
    CHECK(story.kitchen.plan.size() == 1);
}

TEST_CASE("past menus are remembered once") {
    Story story;
    const kitchen::Had had{day("2025-01-01"), kitchen::Meal::lunch, world.dish("omelette")};
    const std::vector<kitchen::Had> twice{had, had};
    const auto remembering = [&](const At& at) { return basics::Result<Change>(kitchen::remember(at, twice)); };
    CHECK(story.does(remembering).history.size() == 1);
    CHECK(story.does(remembering).history.empty());
}
