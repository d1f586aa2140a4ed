// What a balance takes out, which packs do the same as others, and what room it leaves.
#include "flow/thaw.hpp"

#include <map>
#include <random>

#include "flow/room.hpp"
#include "stock/room.hpp"
#include "support/frozen.hpp"

using namespace samebase;
using tests::add_frozen;
using tests::asked;
using tests::bare_kitchen;
using tests::demo_day;
using tests::plan_dinner;

namespace {

flow::Balance balance_of(const kitchen::Kitchen& kitchen, int days) {
    const flow::Balancer balancer(kitchen, {demo_day, demo_day + basics::days{days - 1}});
    return balancer.balance(balancer.planned());
}

std::vector<flow::ThawMove> moves_of(const kitchen::Kitchen& kitchen, int days = 10) {
    return flow::thaw_moves(kitchen, balance_of(kitchen, days));
}

}  // namespace

TEST_CASE("of trays that do the same, those of the near freezer are taken, though they came later") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 3);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    add_frozen(kitchen, "beef-mince", "engine-shed-freezer", {wanted, wanted}, 40);
    REQUIRE(moves_of(kitchen).size() == 1);
    CHECK(moves_of(kitchen).front().lot == 1);
    add_frozen(kitchen, "beef-mince", "kitchen-freezer", {wanted + 20, wanted + 10}, 4);
    const auto moves = moves_of(kitchen);
    REQUIRE(moves.size() == 1);
    CHECK(moves.front().lot == 2);
    CHECK(moves.front().weights == std::vector<std::int64_t>{(wanted + 10) * 1000});
    CHECK(moves.front().for_dish == tests::dish("rissoles"));
    CHECK(moves.front().day == demo_day + basics::days{2});
}

TEST_CASE("two trays for one dinner may come from both freezers, and each serves its want") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 3).serves = 8;
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    const std::int64_t half = (wanted + 1) / 2;
    add_frozen(kitchen, "beef-mince", "engine-shed-freezer", {half, half}, 40);
    add_frozen(kitchen, "beef-mince", "kitchen-freezer", {half + 5}, 4);
    const auto moves = moves_of(kitchen);
    REQUIRE(moves.size() == 2);
    CHECK(moves[0].lot == 1);
    CHECK(moves[1].lot == 2);
    for (const auto& move : moves) {
        CHECK(move.packs == 1);
        CHECK(move.for_day == demo_day + basics::days{3});
    }
}

TEST_CASE("what lies near is taken sooner than what lies far, whatever came first") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "roast-lamb-leg", 3);
    plan_dinner(kitchen, "roast-lamb-leg", 8);
    add_frozen(kitchen, "lamb-leg", "cellar-freezer", {2000}, 60);
    add_frozen(kitchen, "lamb-leg", "kitchen-freezer", {2000}, 5);
    const auto moves = moves_of(kitchen);
    REQUIRE(moves.size() == 2);
    CHECK(moves[0].lot == 2);
    CHECK(moves[0].for_day == demo_day + basics::days{3});
    CHECK(moves[1].lot == 1);
    CHECK(moves[1].for_day == demo_day + basics::days{8});
    // And the near freezer's room is free from then on.
    const auto taken = flow::taken_by_day(kitchen, balance_of(kitchen, 10), tests::place("kitchen-freezer"));
    CHECK(taken[0] > 0);
    CHECK(taken[1] == 0);
}

TEST_CASE(
    "a tray that is a little lighter does the same, as far as the dish bears it, and a much heavier one does not") {
    for (const int more : {-1, 400}) {
        kitchen::Kitchen kitchen = bare_kitchen();
        plan_dinner(kitchen, "rissoles", 3);
        const std::int64_t wanted = asked(kitchen, "beef-mince");
        add_frozen(kitchen, "beef-mince", "engine-shed-freezer", {wanted}, 40);
        add_frozen(kitchen, "beef-mince", "kitchen-freezer", {wanted + more}, 4);
        INFO(wanted + more << " g where " << wanted << " g are wanted");
        REQUIRE(moves_of(kitchen).size() == 1);
        CHECK(moves_of(kitchen).front().lot == (more < 0 ? 2 : 1));
    }
}

TEST_CASE("whatever is exchanged, it is enough, and no more packs than the balance thaws") {
    std::mt19937 random(9);
    const auto from = [&](int least, int most) { return std::uniform_int_distribution<int>(least, most)(random); };
    int exchanged = 0;
    for (int n = 0; n < 150; ++n) {
        kitchen::Kitchen kitchen = bare_kitchen();
        for (int day = 0; day < 6; ++day) {
            if (from(0, 1) == 0) plan_dinner(kitchen, from(0, 1) == 0 ? "rissoles" : "tacos", day).serves = from(2, 8);
        }
        for (const char* where : {"engine-shed-freezer", "kitchen-freezer", "cellar-freezer"}) {
            std::vector<std::int64_t> packs;
            for (int i = from(0, 5); i > 0; --i) packs.push_back(from(0, 1) == 0 ? 500 : from(300, 700));
            if (!packs.empty()) add_frozen(kitchen, "beef-mince", where, packs, from(1, 60));
        }
        const flow::Balance balance = balance_of(kitchen, 7);
        const flow::Part* part = balance.part(tests::thing("beef-mince"));
        if (part == nullptr) continue;
        std::map<basics::Day, std::pair<std::int64_t, int>> used;  // by day taken out: amount that is eaten, packs
        for (std::size_t u = 0; u < part->component.units.size(); ++u) {
            const flow::Fate& fate = part->outcome.fates[u];
            if (fate.from == flow::never || fate.used == 0) continue;
            const int ready = part->outcome.decisions.ready_day[u];
            auto& here = used[demo_day + basics::days{ready == 0 ? 0 : ready - fate.unit.thaw_days}];
            here.first += fate.used;
            ++here.second;
        }
        std::map<basics::Day, std::pair<std::int64_t, int>> taken;
        std::map<stock::LotNumber, std::vector<std::int64_t>> packs;
        for (const auto& move : flow::thaw_moves(kitchen, balance)) {
            taken[move.day].first += move.amount;
            taken[move.day].second += move.packs;
            packs[move.lot].insert(packs[move.lot].end(), move.weights.begin(), move.weights.end());
            CHECK(move.day <= move.for_day);
            CHECK(move.for_day <= move.cook_by);
            if (kitchen.place(move.from).kind == stock::PlaceKind::near_freezer) ++exchanged;
        }
        INFO("kitchen " << n);
        REQUIRE(taken.size() == used.size());
        for (const auto& [day, amount] : used) {
            CHECK(taken[day].first >= amount.first);
            CHECK(taken[day].second <= amount.second);
        }
        for (auto& [number, weights] : packs) {
            std::vector<std::int64_t> there = kitchen.lot(number)->packs;
            std::sort(there.begin(), there.end());
            std::sort(weights.begin(), weights.end());
            CHECK(std::includes(there.begin(), there.end(), weights.begin(), weights.end()));
        }
    }
    CHECK(exchanged > 50);
}

TEST_CASE("what is cooked from frozen is told with its day, near lots first, and comes to what is eaten") {
    kitchen::Kitchen kitchen = bare_kitchen();
    kitchen.household.standing_uses.push_back(
        {tests::thing("frozen-peas"), measure::Amount{measure::Dimension::mass, 200'000}, 0x7F});
    add_frozen(kitchen, "frozen-peas", "cellar-freezer", {500}, 60);
    add_frozen(kitchen, "frozen-peas", "kitchen-freezer", {300}, 5);
    const auto uses = flow::frozen_uses(kitchen, balance_of(kitchen, 3));
    REQUIRE(uses.size() == 4);
    CHECK(uses[0].lot == 2);
    CHECK(uses[0].amount == 200'000);
    // The second day takes the last of the near bag, and some of the far one.
    CHECK(uses[1].lot == 1);
    CHECK(uses[1].amount == 100'000);
    CHECK(uses[2].lot == 2);
    CHECK(uses[2].amount == 100'000);
    CHECK(uses[1].day == uses[2].day);
    CHECK(uses[3].lot == 1);
    CHECK(uses[3].amount == 200'000);
}

TEST_CASE("a place's room by day is what lies in it, less what is taken out") {
    kitchen::Kitchen kitchen = bare_kitchen();
    plan_dinner(kitchen, "rissoles", 3);
    const std::int64_t wanted = asked(kitchen, "beef-mince");
    add_frozen(kitchen, "beef-mince", "kitchen-freezer", {wanted});
    add_frozen(kitchen, "lamb-leg", "cellar-freezer", {2000});
    const auto& thing = kitchen.catalogue()[tests::thing("beef-mince")];
    const std::int64_t room = stock::room_taken(thing, {thing.dimension, wanted * 1000});
    const auto taken = flow::taken_by_day(kitchen, balance_of(kitchen, 5), tests::place("kitchen-freezer"));
    // Taken out on the third day, at whose end it is in the fridge.
    CHECK(taken == std::vector<std::int64_t>{room, room, 0, 0, 0});
}
