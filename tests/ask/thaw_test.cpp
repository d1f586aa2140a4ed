// What do I take out, and when? Small kitchens by hand, and what is always so of the demo kitchen shaken about.
#include "ask/thaw.hpp"

#include <map>
#include <random>

#include "ask/tonight.hpp"
#include "flow/findings.hpp"
#include "stock/thaw.hpp"
#include "support/frozen.hpp"

using namespace samebase;
using ask::TooLate;
using stock::ThawMethod;
using tests::add_frozen;
using tests::asked;
using tests::bare_kitchen;
using tests::demo;
using tests::demo_day;
using tests::plan_dinner;

namespace {

constexpr basics::days week{7};

ask::ThawAnswer thaw(const kitchen::Kitchen& kitchen, basics::days more = week) {
    auto answer = ask::ask_thaw(kitchen, demo_day, {demo_day, demo_day + more});
    REQUIRE(answer);
    return *answer;
}

/// Of one ingredient.
std::vector<ask::TakeOut> of(const ask::ThawAnswer& answer, std::string_view id) {
    std::vector<ask::TakeOut> list;
    for (const auto& out : answer.moves) {
        if (out.move.ingredient == tests::thing(id)) list.push_back(out);
    }
    return list;
}

std::vector<TooLate> late_of(const ask::ThawAnswer& answer, std::string_view id) {
    std::vector<TooLate> list;
    for (const auto& late : answer.late) {
        if (late.ingredient == tests::thing(id)) list.push_back(late);
    }
    return list;
}

bool says(const std::vector<std::string>& cautions, const std::string& words) {
    return std::any_of(cautions.begin(), cautions.end(),
                       [&](const std::string& caution) { return caution.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("a tray of mince is taken out the day before its dish, whole, and cooked within a day") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 3);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    add_frozen(kitchen, "beef-mince", "engine-shed-freezer", {wanted + 40, wanted + 10, wanted + 20});
    const auto moves = of(thaw(kitchen), "beef-mince");
    REQUIRE(moves.size() == 1);
    const auto& out = moves.front();
    // The tray that leaves least over.
    CHECK(out.move.amount == (wanted + 10) * 1000);
    CHECK(out.move.weights == std::vector<std::int64_t>{(wanted + 10) * 1000});
    CHECK(out.move.packs == 1);
    CHECK(out.move.from == tests::place("engine-shed-freezer"));
    CHECK(out.move.day == demo_day + basics::days{2});
    CHECK(out.move.for_day == demo_day + basics::days{3});
    CHECK(out.move.for_dish == tests::dish("rissoles"));
    CHECK(out.move.cook_by == demo_day + basics::days{4});
    CHECK(out.move.method == ThawMethod::fridge);
    CHECK_FALSE(out.late);
    CHECK(out.minutes == 0);
    CHECK(says(out.cautions, "24 hours for every 1.8 kg"));
    CHECK(says(out.cautions, "USDA FSIS"));
    CHECK(says(out.cautions, "not frozen again"));
    CHECK(thaw(kitchen).late.empty());
}

TEST_CASE("a leg of two and a half kilograms is taken out two days before its dinner") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "roast-lamb-leg", 4);
    add_frozen(kitchen, "lamb-leg", "cellar-freezer", {2500});
    const auto moves = of(thaw(kitchen), "lamb-leg");
    REQUIRE(moves.size() == 1);
    CHECK(moves.front().move.day == demo_day + basics::days{2});
    CHECK(moves.front().move.for_day == demo_day + basics::days{4});
}

TEST_CASE("tonight's tray goes into cold water, for as long as its weight wants, and is cooked at once") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 0);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    add_frozen(kitchen, "beef-mince", "engine-shed-freezer", {wanted});
    const auto answer = thaw(kitchen);
    const auto moves = of(answer, "beef-mince");
    REQUIRE(moves.size() == 1);
    CHECK(moves.front().move.method == ThawMethod::cold_water);
    CHECK(moves.front().move.day == demo_day);
    CHECK(moves.front().move.cook_by == demo_day);
    CHECK(moves.front().minutes == stock::cold_water_minutes(wanted * 1000));
    CHECK(moves.front().late);
    CHECK(says(moves.front().cautions, "changed every 30 minutes"));
    CHECK(says(moves.front().cautions, "cooked at once"));
    const auto late = late_of(answer, "beef-mince");
    REQUIRE(late.size() == 1);
    CHECK(late.front().instead == TooLate::Instead::cold_water);
    CHECK(says(answer.cautions, "never on the bench"));
}

TEST_CASE("a roast for tonight goes into cold water where it is done in a day, else there is something else to do") {
    for (const std::int64_t grams : {1940, 5400, 5600}) {
        kitchen::Kitchen kitchen = bare_kitchen();
        plan_dinner(kitchen, "roast-lamb-leg", 0);
        add_frozen(kitchen, "lamb-leg", "cellar-freezer", {grams});
        const auto answer = thaw(kitchen);
        const auto late = late_of(answer, "lamb-leg");
        INFO(grams << " g");
        REQUIRE(late.size() == 1);
        CHECK(late.front().lot == 1);
        CHECK(late.front().day == demo_day);
        const auto moves = of(answer, "lamb-leg");
        if (grams < 5500) {
            CHECK(late.front().instead == TooLate::Instead::cold_water);
            REQUIRE(moves.size() == 1);
            CHECK(moves.front().minutes == stock::cold_water_minutes(grams * 1000));
            CHECK(moves.front().minutes <= ask::most_cold_water_minutes);
            CHECK(moves.front().move.amount == grams * 1000);
            CHECK(moves.front().late);
        } else {
            CHECK(moves.empty());
            const bool else_where =
                late.front().instead == TooLate::Instead::other_dish || late.front().instead == TooLate::Instead::mend;
            CHECK(else_where);
        }
    }
}

TEST_CASE("a leg for tomorrow that takes two days goes into cold water tomorrow") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "roast-lamb-leg", 1);
    add_frozen(kitchen, "lamb-leg", "cellar-freezer", {2500});
    const auto moves = of(thaw(kitchen), "lamb-leg");
    REQUIRE(moves.size() == 1);
    CHECK(moves.front().move.day == demo_day + basics::days{1});
    CHECK(moves.front().move.method == ThawMethod::cold_water);
    // Nothing of it is to be done today.
    const auto done = ask::thaw_done({kitchen, demo_day, 2}, thaw(kitchen));
    REQUIRE(done);
    CHECK(done->empty());
    CHECK(done->line == "nothing is left to take out");
}

TEST_CASE("a ready meal for tonight is thawed in the microwave and heated at once, never in cold water") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "chilli", 0, true);
    add_frozen(kitchen, "leftover-chilli", "kitchen-freezer", {4}, 10, false, "chilli");
    const auto answer = thaw(kitchen);
    CHECK(answer.moves.empty());
    const auto late = late_of(answer, "leftover-chilli");
    REQUIRE(late.size() == 1);
    CHECK(late.front().instead == TooLate::Instead::microwave);
    CHECK(late.front().packs == 1);
    CHECK(says(answer.cautions, "In the microwave: cooked at once"));
    // Done so, nothing is late any more.
    const kitchen::Item item{{1, {}, {}, {}}, {}, {}};
    const auto change =
        kitchen::moved({kitchen, demo_day, 2}, {&item, 1}, tests::place("fridge"), ThawMethod::microwave);
    REQUIRE(change);
    kitchen::apply(kitchen, *change);
    CHECK(thaw(kitchen).late.empty());
}

TEST_CASE("what is cooked from frozen is not taken out") {
    kitchen::Kitchen kitchen = bare_kitchen();
    kitchen.household.standing_uses.push_back(
        {tests::thing("frozen-peas"), measure::Amount{measure::Dimension::mass, 100'000}, 0x7F});
    add_frozen(kitchen, "frozen-peas", "kitchen-freezer", {1000}, 10, true);
    const auto answer = thaw(kitchen, basics::days{2});
    CHECK(answer.moves.empty());
    CHECK(answer.late.empty());
    REQUIRE(answer.from_frozen.size() == 3);
    for (const auto& use : answer.from_frozen) {
        CHECK(use.amount == 100'000);
        CHECK_FALSE(use.dish);
    }
}

TEST_CASE("only the meals of the span are told, and what was taken out before them is theirs") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 2);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    plan_dinner(kitchen, "rissoles", 5);
    add_frozen(kitchen, "beef-mince", "engine-shed-freezer", {wanted, wanted});
    const auto answer = ask::ask_thaw(kitchen, demo_day, {demo_day + basics::days{5}, demo_day + basics::days{9}});
    REQUIRE(answer);
    REQUIRE(answer->moves.size() == 1);
    CHECK(answer->moves.front().move.day == demo_day + basics::days{4});
    CHECK(thaw(bare_kitchen()).moves.empty());
}

TEST_CASE("spans that have passed, or lie too far off, are refused") {
    const auto past = ask::ask_thaw(demo(), demo_day, {demo_day - basics::days{9}, demo_day - basics::days{2}});
    REQUIRE_FALSE(past);
    CHECK(basics::to_text(past.error().front()) ==
          "thaw: the span ends on 2026-11-23; expected a span that ends on 2026-11-25 or later");
    const auto far = ask::ask_thaw(demo(), demo_day, {demo_day, demo_day + basics::days{800}});
    REQUIRE_FALSE(far);
    CHECK(basics::to_text(far.error().front()) ==
          "thaw: the span ends on 2029-02-02; expected a span that ends by 2028-11-25");
}

TEST_CASE("thaw and tonight take out the same today") {
    const auto tonight = ask::ask_tonight(demo(), demo_day);
    REQUIRE_FALSE(tonight.take_out.empty());
    const auto answer = ask::ask_thaw(demo(), demo_day, {demo_day, flow::horizon(demo(), demo_day)});
    REQUIRE(answer);
    std::vector<std::pair<stock::LotNumber, std::int64_t>> theirs;
    std::vector<std::pair<stock::LotNumber, std::int64_t>> ours;
    for (const auto& move : tonight.take_out) theirs.emplace_back(move.lot, move.amount);
    for (const auto& out : answer->moves) {
        if (out.move.day == demo_day) ours.emplace_back(out.move.lot, out.move.amount);
    }
    CHECK(ours == theirs);
}

TEST_CASE("done by the answer is done by hand: the same entries") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 1);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    add_frozen(kitchen, "beef-mince", "engine-shed-freezer", {wanted, wanted, wanted});
    const kitchen::At at{kitchen, demo_day, 7};
    const auto done = ask::thaw_done(at, thaw(kitchen));
    REQUIRE(done);
    kitchen::Item item{{1, {}, {}, {}}, {}, {}};
    item.quantity.packs = 1000;
    const auto by_hand = kitchen::moved(at, {&item, 1}, tests::place("fridge"), ThawMethod::fridge);
    REQUIRE(by_hand);
    CHECK(done->entries == by_hand->entries);
    CHECK(done->line == by_hand->line);
    CHECK(done->command == by_hand->command);
}

TEST_CASE("without a fridge nothing can be entered") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 1);
    add_frozen(kitchen, "beef-mince", "engine-shed-freezer", {asked(kitchen, "beef-mince")});
    for (auto& one : kitchen.household.places) {
        if (one.kind == stock::PlaceKind::fridge) one.kind = stock::PlaceKind::pantry;
    }
    const auto answer = thaw(kitchen);
    CHECK_FALSE(answer.fridge);
    REQUIRE(answer.moves.size() == 1);
    const auto done = ask::thaw_done({kitchen, demo_day, 7}, answer);
    REQUIRE_FALSE(done);
    CHECK(basics::to_text(done.error().front()) == "thaw: no fridge among the places; expected a fridge to thaw in");
}

TEST_CASE("whatever the kitchen: whole packs, in time, and once entered nothing is left to take out that day") {
    std::mt19937 random(4);
    int moved = 0;
    int watered = 0;
    for (int n = 0; n < 60; ++n) {
        kitchen::Kitchen kitchen =
            tests::shaken([&](int below) { return std::uniform_int_distribution<int>(0, below - 1)(random); });
        std::stable_sort(kitchen.plan.begin(), kitchen.plan.end(), [](const auto& a, const auto& b) {
            return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
        });
        REQUIRE_FALSE(kitchen.check());
        const auto today = demo_day + basics::days{n % 12};
        const auto answer = ask::ask_thaw(kitchen, today, {today, flow::horizon(kitchen, today)});
        REQUIRE(answer);
        INFO("kitchen " << n << " on " << basics::iso(today));
        std::map<stock::LotNumber, std::vector<std::int64_t>> packs;
        for (const auto& out : answer->moves) {
            const auto& move = out.move;
            const stock::Lot* lot = kitchen.lot(move.lot);
            REQUIRE(lot != nullptr);
            REQUIRE(lot->state == stock::State::frozen);
            REQUIRE(move.amount == std::accumulate(move.weights.begin(), move.weights.end(), std::int64_t{0}));
            auto& taken = packs[move.lot];
            taken.insert(taken.end(), move.weights.begin(), move.weights.end());
            stock::Lot part = *lot;
            if (!part.packs.empty()) part.packs = move.weights;
            part.part_of = 0;
            part.amount = {part.amount.dimension(), move.amount};
            const auto& thing = kitchen.catalogue()[move.ingredient];
            const int days = stock::days_to_thaw(part, thing, move.method);
            REQUIRE(move.day >= today);
            REQUIRE(move.day + basics::days{days} <= move.for_day);
            REQUIRE(move.for_day <= move.cook_by);
            if (move.method != ThawMethod::fridge) {
                REQUIRE(move.cook_by == move.day);
                REQUIRE(thing.kind != catalogue::Kind::cooked);
                REQUIRE(out.minutes <= ask::most_cold_water_minutes);
                ++watered;
            }
            ++moved;
        }
        for (auto& [number, weights] : packs) {
            std::vector<std::int64_t> there = kitchen.lot(number)->packs;
            if (there.empty()) continue;
            std::sort(there.begin(), there.end());
            std::sort(weights.begin(), weights.end());
            REQUIRE(std::includes(there.begin(), there.end(), weights.begin(), weights.end()));
        }
        const auto done = ask::thaw_done({kitchen, today, 1000}, *answer);
        REQUIRE(done);
        kitchen::Kitchen after = kitchen;
        kitchen::apply(after, *done);
        REQUIRE_FALSE(after.check());
        const auto again = ask::ask_thaw(after, today, {today, flow::horizon(after, today)});
        REQUIRE(again);
        for (const auto& out : again->moves) {
            INFO(kitchen.catalogue()[out.move.ingredient].name << " of lot " << out.move.lot);
            CHECK(out.move.day != today);
        }
        const auto nothing = ask::thaw_done({after, today, 2000}, *again);
        REQUIRE(nothing);
        CHECK(nothing->empty());
    }
    CHECK(moved > 100);
    CHECK(watered > 5);
}
