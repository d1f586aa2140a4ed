// What do I bring in from the far freezers? Small kitchens by hand, and the demo kitchen with larger and smaller near
// freezers. That the walks are the fewest is held in trips_properties.cpp; here that the kitchen is read right.
#include "ask/carry.hpp"

#include <map>
#include <random>
#include <set>

#include "flow/room.hpp"
#include "flow/thaw.hpp"
#include "stock/room.hpp"
#include "support/frozen.hpp"

using namespace samebase;
using tests::add_frozen;
using tests::asked;
using tests::bare_kitchen;
using tests::demo;
using tests::demo_day;
using tests::plan_dinner;

namespace {

basics::Day on(int day) {
    return demo_day + basics::days{day};
}

ask::CarryAnswer carry(const kitchen::Kitchen& kitchen, basics::Span span, std::optional<basics::Day> first = {}) {
    const auto answer = ask::ask_carry(kitchen, demo_day, {span, first, 100});
    REQUIRE(answer);
    return *answer;
}

void set_room(kitchen::Kitchen& kitchen, std::string_view id, std::optional<std::int64_t> ml) {
    kitchen.household.places[tests::place(id).index()].room_ml = ml;
}

std::int64_t room_of(const kitchen::Kitchen& kitchen, const ask::Carried& carried) {
    const auto& thing = kitchen.catalogue()[carried.ingredient];
    std::int64_t sum = 0;
    for (const std::int64_t weight : carried.weights) sum += stock::room_taken(thing, {thing.dimension, weight});
    return sum;
}

/// What is in the near freezer at the end of each day from today on, with what waits there to be thawed: from the walk
/// to the eve of its day.
std::vector<std::int64_t> inside(const kitchen::Kitchen& kitchen, const ask::CarryAnswer& answer) {
    const flow::Balancer balancer(kitchen, {demo_day, answer.span.last});
    auto taken = flow::taken_by_day(kitchen, balancer.balance(balancer.planned()), *answer.near);
    for (const auto& walk : answer.walks) {
        for (const auto& carried : walk.brings) {
            if (!carried.thaws) continue;
            for (auto day = walk.day; day < carried.need; day += basics::days{1})
                taken[static_cast<std::size_t>((day - demo_day).count())] += room_of(kitchen, carried);
        }
    }
    return taken;
}

/// Why an answer cannot be so; empty where it can.
std::string wrong_with(const kitchen::Kitchen& kitchen, const ask::CarryAnswer& answer, bool crowded_anyway) {
    std::set<std::pair<basics::Day, stock::PlaceId>> walks;
    for (const auto& walk : answer.walks) {
        if (!walks.emplace(walk.day, walk.from).second) return "one walk twice";
        if (kitchen.place(walk.from).kind != stock::PlaceKind::far_freezer) return "a walk to what is no far freezer";
        if (walk.brings.empty()) return "a walk that brings nothing";
        for (const auto& carried : walk.brings) {
            if (carried.from != walk.from || carried.day != walk.day) return "something on another walk than its own";
            if (carried.day > carried.need) return "something that comes too late";
            if (carried.need > carried.for_day) return "something that is needed after its meal";
            if (!answer.span.contains(carried.for_day)) return "something for a meal outside the span";
            if (carried.thaws && carried.straight != (carried.day == carried.need))
                return "straight, or not, by mistake";
            if (carried.cautions.empty()) return "no caution";
        }
        for (std::size_t i = 1; i < walk.brings.size(); ++i) {
            const auto arrived = [&](const ask::Carried& c) { return std::pair(kitchen.lot(c.lot)->arrived, c.lot); };
            if (arrived(walk.brings[i]) < arrived(walk.brings[i - 1])) return "a newer lot before an older one";
        }
    }
    if (answer.bound > static_cast<int>(answer.walks.size()) || answer.gap() < 0 || answer.gap() > 1)
        return "a bad bound";
    if (!answer.room_ml || crowded_anyway) return {};
    for (const std::int64_t ml : inside(kitchen, answer)) {
        if (ml > *answer.room_ml) return "more in the near freezer than it has room for";
    }
    return {};
}

}  // namespace

TEST_CASE("what is thawed for the span's meals from far freezers is brought, and nothing else") {
    const basics::Span span{on(6), on(36)};
    const auto answer = carry(demo(), span);
    CHECK(wrong_with(demo(), answer, false).empty());
    CHECK(answer.proved_best());
    std::map<std::pair<stock::LotNumber, basics::Day>, std::int64_t> wanted;
    const flow::Balancer balancer(demo(), {demo_day, span.last});
    const auto balance = balancer.balance(balancer.planned());
    for (const auto& move : flow::thaw_moves(demo(), balance)) {
        if (span.contains(move.for_day) && demo().place(move.from).kind == stock::PlaceKind::far_freezer)
            wanted[{move.lot, move.day}] += move.amount;
    }
    REQUIRE_FALSE(wanted.empty());
    std::map<std::pair<stock::LotNumber, basics::Day>, std::int64_t> brought;
    for (const auto& walk : answer.walks) {
        for (const auto& carried : walk.brings) {
            if (carried.thaws) brought[{carried.lot, carried.need}] += carried.amount;
        }
    }
    CHECK(brought == wanted);
    // One walk to each far freezer, on the first day of the span, because there is room for all.
    CHECK(answer.walks.size() == 2);
    for (const auto& walk : answer.walks) CHECK(walk.day == span.first);
}

TEST_CASE("a small near freezer is walked for more often, and never holds more than it can") {
    const basics::Span span{demo_day, on(29)};
    std::size_t fewer = 1000;
    std::set<std::size_t> numbers;
    for (std::int64_t litres = 12; litres <= 44; litres += 2) {
        kitchen::Kitchen kitchen = demo();
        set_room(kitchen, "kitchen-freezer", litres * 1000);
        const auto answer = carry(kitchen, span);
        INFO(litres << " L: " << answer.walks.size() << " walks");
        // What lies in it today may alone be more than 12 L.
        const flow::Balancer balancer(kitchen, {demo_day, span.last});
        const auto taken = flow::taken_by_day(kitchen, balancer.balance(balancer.planned()), *answer.near);
        const bool crowded = *std::max_element(taken.begin(), taken.end()) > litres * 1000;
        CHECK(wrong_with(kitchen, answer, crowded).empty());
        CHECK(answer.proved_best());
        CHECK(answer.walks.size() <= fewer);
        fewer = answer.walks.size();
        numbers.insert(fewer);
        if (!crowded) CHECK(answer.fullest_ml <= litres * 1000);
    }
    CHECK(fewer == 2);
    CHECK(numbers.size() >= 3);
}

TEST_CASE("a pack larger than the near freezer goes straight to the fridge on the day that it is taken out") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 2);
    add_frozen(kitchen, "beef-mince", "cellar-freezer", {asked(kitchen, "beef-mince")});
    plan_dinner(kitchen, "roast-lamb-leg", 6);
    add_frozen(kitchen, "lamb-leg", "cellar-freezer", {2500});
    set_room(kitchen, "kitchen-freezer", 2000);
    const auto answer = carry(kitchen, {demo_day, on(7)});
    CHECK(wrong_with(kitchen, answer, false).empty());
    REQUIRE(answer.walks.size() == 2);
    CHECK(answer.proved_best());
    REQUIRE(answer.walks[0].brings.size() == 1);
    CHECK(answer.walks[0].day == demo_day);
    CHECK_FALSE(answer.walks[0].brings.front().straight);
    REQUIRE(answer.walks[1].brings.size() == 1);
    const auto& leg = answer.walks[1].brings.front();
    CHECK(leg.straight);
    CHECK(leg.day == on(4));
    CHECK(leg.need == on(4));
    CHECK(leg.cook_by == on(7));
    CHECK(answer.walks[1].room_ml() == 0);
}

TEST_CASE("a walk may be needed on the eve of the span, and one walk serves what is needed after it") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 6);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    plan_dinner(kitchen, "rissoles", 9);
    add_frozen(kitchen, "beef-mince", "cellar-freezer", {wanted, wanted});
    const auto answer = carry(kitchen, {on(6), on(12)});
    REQUIRE(answer.walks.size() == 1);
    CHECK(answer.walks.front().day == on(5));
    REQUIRE(answer.walks.front().brings.size() == 2);
    CHECK(answer.walks.front().brings[0].straight);
    CHECK_FALSE(answer.walks.front().brings[1].straight);
    // Asked with today as the first day for a walk, it is today.
    const auto early = carry(kitchen, {on(6), on(12)}, demo_day);
    REQUIRE(early.walks.size() == 1);
    CHECK(early.walks.front().day == demo_day);
}

TEST_CASE("packs that the near freezer has are taken before a walk, where they are enough") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 3);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    add_frozen(kitchen, "beef-mince", "cellar-freezer", {wanted, wanted}, 30);
    CHECK(carry(kitchen, {demo_day, on(7)}).walks.size() == 1);
    kitchen::Kitchen enough = kitchen;
    add_frozen(enough, "beef-mince", "kitchen-freezer", {wanted + 15});
    CHECK(carry(enough, {demo_day, on(7)}).walks.empty());
    // A tray that lacks more than the dish bears does not do, nor one that is a quarter too large.
    for (const std::int64_t grams : {wanted / 2, wanted + wanted / 4}) {
        kitchen::Kitchen other = kitchen;
        add_frozen(other, "beef-mince", "kitchen-freezer", {grams});
        INFO(grams << " g where " << wanted << " g are wanted");
        CHECK(carry(other, {demo_day, on(7)}).walks.size() == 1);
    }
}

TEST_CASE("what is cooked from frozen comes by its day, shrinks as it is eaten, and stays to the end") {
    kitchen::Kitchen kitchen = bare_kitchen();
    // 100 g on Fridays: the third day, and a week later.
    kitchen.household.standing_uses.push_back(
        {tests::thing("frozen-peas"), measure::Amount{measure::Dimension::mass, 100'000}, 1U << 5U});
    add_frozen(kitchen, "frozen-peas", "cellar-freezer", {500, 500});
    const auto answer = carry(kitchen, {demo_day, on(13)});
    REQUIRE(answer.walks.size() == 1);
    REQUIRE(answer.walks.front().brings.size() == 1);
    const auto& peas = answer.walks.front().brings.front();
    CHECK(answer.walks.front().day == demo_day);
    CHECK(peas.need == on(2));
    CHECK_FALSE(peas.thaws);
    CHECK_FALSE(peas.straight);
    CHECK(peas.amount == 500'000);
    CHECK(peas.packs == 1);
    const auto& thing = kitchen.catalogue()[tests::thing("frozen-peas")];
    CHECK(answer.fullest_ml >= stock::room_taken(thing, {thing.dimension, 500'000}));
    // Without room for it, it stays where it is, and is fetched for each meal.
    set_room(kitchen, "kitchen-freezer", 300);
    const auto small = carry(kitchen, {demo_day, on(13)});
    REQUIRE(small.walks.size() == 2);
    CHECK(small.proved_best());
    for (std::size_t i = 0; i < 2; ++i) {
        REQUIRE(small.walks[i].brings.size() == 1);
        CHECK(small.walks[i].day == on(i == 0 ? 2 : 9));
        CHECK(small.walks[i].brings.front().straight);
        CHECK(small.walks[i].brings.front().amount == 100'000);
    }
}

TEST_CASE("peas that lie near are eaten before those that lie far") {
    kitchen::Kitchen kitchen = bare_kitchen();
    kitchen.household.standing_uses.push_back(
        {tests::thing("frozen-peas"), measure::Amount{measure::Dimension::mass, 100'000}, 0x7F});
    add_frozen(kitchen, "frozen-peas", "cellar-freezer", {500}, 60);
    add_frozen(kitchen, "frozen-peas", "kitchen-freezer", {300}, 5);
    CHECK(carry(kitchen, {demo_day, on(2)}).walks.empty());
    const auto longer = carry(kitchen, {demo_day, on(3)});
    REQUIRE(longer.walks.size() == 1);
    CHECK(longer.walks.front().brings.front().need == on(3));
}

TEST_CASE("a kitchen without a far freezer, without a near one, and with one of unknown room") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 3);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    plan_dinner(kitchen, "rissoles", 6);
    add_frozen(kitchen, "beef-mince", "cellar-freezer", {wanted, wanted});
    const basics::Span span{demo_day, on(7)};

    kitchen::Kitchen no_near = kitchen;
    no_near.household.places[tests::place("kitchen-freezer").index()].kind = stock::PlaceKind::far_freezer;
    const auto straight = carry(no_near, span);
    CHECK_FALSE(straight.near);
    REQUIRE(straight.walks.size() == 2);
    CHECK(straight.proved_best());
    CHECK(straight.walks[0].day == on(2));
    CHECK(straight.walks[1].day == on(5));
    for (const auto& walk : straight.walks) CHECK(walk.brings.front().straight);
    CHECK(straight.notes ==
          std::vector<std::string>{
              "There is no near freezer in this kitchen: everything goes straight to the fridge on its day."});

    kitchen::Kitchen no_far = kitchen;
    for (auto& place : no_far.household.places) {
        if (place.kind == stock::PlaceKind::far_freezer) place.kind = stock::PlaceKind::near_freezer;
    }
    const auto none = carry(no_far, span);
    CHECK(none.walks.empty());
    CHECK(none.proved_best());
    CHECK(none.notes == std::vector<std::string>{"There is no far freezer in this kitchen: nothing to bring in."});

    set_room(kitchen, "kitchen-freezer", std::nullopt);
    const auto unknown = carry(kitchen, span);
    CHECK(unknown.walks.size() == 1);
    CHECK_FALSE(unknown.room_ml);
}

TEST_CASE("spans and days for walks that cannot be are refused") {
    const auto past = ask::ask_carry(demo(), demo_day, {{on(-9), on(-2)}, {}, 100});
    REQUIRE_FALSE(past);
    CHECK(basics::to_text(past.error().front()) ==
          "carry: the span ends on 2026-11-23; expected a span that ends on 2026-11-25 or later");
    const auto far = ask::ask_carry(demo(), demo_day, {{on(0), on(800)}, {}, 100});
    REQUIRE_FALSE(far);
    const auto early = ask::ask_carry(demo(), demo_day, {{on(0), on(8)}, on(-1), 100});
    REQUIRE_FALSE(early);
    CHECK(basics::to_text(early.error().front()) ==
          "carry: walks from 2026-11-24 on; expected a day from 2026-11-25 on");
}

TEST_CASE("done by the answer is done by hand: frozen stays frozen, the entries are the same") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 4);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    add_frozen(kitchen, "beef-mince", "cellar-freezer", {wanted, wanted, wanted});
    const kitchen::At at{kitchen, demo_day, 7};
    const auto done = ask::carry_done(at, carry(kitchen, {demo_day, on(7)}));
    REQUIRE(done);
    kitchen::Item item{{1, {}, {}, {}}, {}, {}};
    item.quantity.packs = 1000;
    const auto by_hand = kitchen::moved(at, {&item, 1}, tests::place("kitchen-freezer"), std::nullopt);
    REQUIRE(by_hand);
    CHECK(done->entries == by_hand->entries);
    CHECK(done->line == by_hand->line);
    for (const auto& entry : done->entries) CHECK(entry.after.state == stock::State::frozen);
}

TEST_CASE("whatever the kitchen: once a day's walks are entered, they need not be walked again") {
    std::mt19937 random(4);
    int walked = 0;
    for (int n = 0; n < 40; ++n) {
        kitchen::Kitchen kitchen =
            tests::shaken([&](int below) { return std::uniform_int_distribution<int>(0, below - 1)(random); });
        std::stable_sort(kitchen.plan.begin(), kitchen.plan.end(), [](const auto& a, const auto& b) {
            return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
        });
        const std::int64_t litres = 15 + 5 * (n % 9);
        set_room(kitchen, "kitchen-freezer", litres * 1000);
        REQUIRE_FALSE(kitchen.check());
        const basics::Span span{demo_day, on(20)};
        const auto answer = carry(kitchen, span, demo_day);
        INFO("kitchen " << n << ", " << litres << " L");
        const flow::Balancer balancer(kitchen, {demo_day, span.last});
        const auto taken = flow::taken_by_day(kitchen, balancer.balance(balancer.planned()), *answer.near);
        const bool crowded = *std::max_element(taken.begin(), taken.end()) > litres * 1000;
        CHECK(wrong_with(kitchen, answer, crowded).empty());
        const auto done = ask::carry_done({kitchen, demo_day, 1000}, answer);
        REQUIRE(done);
        kitchen::Kitchen after = kitchen;
        kitchen::apply(after, *done);
        REQUIRE_FALSE(after.check());
        const auto again = carry(after, span, demo_day);
        const auto after_today = [](const ask::CarryAnswer& some) {
            return std::count_if(some.walks.begin(), some.walks.end(),
                                 [](const ask::Walk& walk) { return walk.day != demo_day; });
        };
        walked += static_cast<int>(answer.walks.size()) - static_cast<int>(after_today(answer));
        CHECK(after_today(again) <= after_today(answer));
        for (const auto& walk : again.walks) {
            const bool only_for_the_pan = std::all_of(walk.brings.begin(), walk.brings.end(),
                                                      [](const auto& some) { return some.straight && !some.thaws; });
            CHECK((walk.day != demo_day || only_for_the_pan));
        }
        const auto nothing = ask::carry_done({after, demo_day, 2000}, again);
        REQUIRE(nothing);
        INFO(nothing->line);
        CHECK(nothing->entries.empty());
    }
    CHECK(walked > 30);
}
