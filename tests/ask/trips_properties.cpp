// The fewest walks against every way there is, and what is always so. The core is plain data, so that many random
// worlds can be tried: one, two and three far freezers, things that wait in the near one after their day, days without
// room.
#include <algorithm>
#include <catch2/catch.hpp>
#include <random>
#include <set>
#include <sstream>

#include "ask/detail/trips.hpp"
#include "support/trips_oracle.hpp"

namespace {

using namespace samebase;
using ask::detail::fewest_trips;
using ask::detail::TripItem;
using ask::detail::TripPlan;

struct World {
    std::vector<TripItem> items;
    std::vector<std::int64_t> free;
};

std::string words(const World& world) {
    std::ostringstream out;
    for (const TripItem& item : world.items)
        out << "freezer " << item.freezer << " by " << item.need << " until " << item.until << ": " << item.room
            << "; ";
    out << "free";
    for (const std::int64_t room : world.free) out << ' ' << room;
    return out.str();
}

/// A world that has an answer: what does not fit on its last day is left out.
World random_world(std::mt19937& random, int days, std::size_t most_items, int freezers) {
    const auto from = [&](int least, int most) { return std::uniform_int_distribution<int>(least, most)(random); };
    World world;
    const int usual = from(0, 12);
    for (int d = 0; d < days; ++d) world.free.push_back(from(0, 3) == 0 ? from(-2, 12) : usual);
    const auto count = static_cast<std::size_t>(from(0, static_cast<int>(most_items)));
    for (std::size_t i = 0; i < count; ++i) {
        TripItem item{from(0, freezers - 1), from(0, days - 1), 0, from(0, 6)};
        item.until = from(0, 4) == 0 ? from(item.need, days) : item.need;
        world.items.push_back(item);
        if (!ask::detail::fits_at_the_last(world.items, world.free)) world.items.pop_back();
    }
    return world;
}

std::optional<int> by_oracle(const World& world) {
    std::vector<tests::OracleItem> items;
    for (const TripItem& item : world.items) items.push_back({item.freezer, item.need, item.until, item.room});
    return tests::fewest_walks(items, world.free);
}

/// Why a plan is none; empty where it is one.
std::string wrong_with(const World& world, const TripPlan& plan) {
    if (plan.item_days.size() != world.items.size()) return "an item without a day";
    std::set<std::pair<int, int>> walks;
    for (const auto& trip : plan.trips) walks.emplace(trip.freezer, trip.day);
    if (walks.size() != plan.trips.size()) return "one walk twice";
    std::set<std::pair<int, int>> used;
    for (std::size_t i = 0; i < world.items.size(); ++i) {
        if (plan.item_days[i] < 0 || plan.item_days[i] > world.items[i].need) return "an item that comes too late";
        if (!walks.contains({world.items[i].freezer, plan.item_days[i]})) return "an item that no walk brings";
        used.emplace(world.items[i].freezer, plan.item_days[i]);
    }
    if (used.size() != walks.size()) return "a walk that brings nothing";
    for (std::size_t d = 0; d < world.free.size(); ++d) {
        std::int64_t taken = 0;
        for (std::size_t i = 0; i < world.items.size(); ++i) {
            const int day = static_cast<int>(d);
            if (plan.item_days[i] <= day && day < world.items[i].until) taken += world.items[i].room;
        }
        if (taken > std::max<std::int64_t>(0, world.free[d])) return "more in the near freezer than it has room for";
    }
    if (plan.bound > plan.value() || plan.by_rule < plan.value()) return "a bound above the value, or a rule below it";
    return {};
}

}  // namespace

TEST_CASE("walks are as few as trying everything finds, on all small worlds of one freezer") {
    // Every pair of items over three days, every room from 0 to 3.
    int tried = 0;
    for (int room = 0; room <= 3; ++room) {
        for (int code = 0; code < 3 * 3 * 3 * 3 * 4 * 4; ++code) {
            const int needs[] = {code % 3, code / 3 % 3};
            const int stays[] = {code / 9 % 3, code / 27 % 3};
            const int rooms[] = {code / 81 % 4, code / 324 % 4};
            World world{{}, {room, room, room}};
            for (int i = 0; i < 2; ++i)
                world.items.push_back({0, needs[i], std::min(3, needs[i] + stays[i]), rooms[i]});
            if (!ask::detail::fits_at_the_last(world.items, world.free)) continue;
            const TripPlan plan = fewest_trips(world.items, world.free, 100);
            ++tried;
            INFO(words(world));
            REQUIRE(wrong_with(world, plan).empty());
            REQUIRE(plan.proved());
            REQUIRE(plan.value() == by_oracle(world));
        }
    }
    CHECK(tried > 1000);
}

TEST_CASE("walks are as few as trying everything finds, on random worlds") {
    std::mt19937 random(4);
    int several = 0;
    for (int n = 0; n < 1500; ++n) {
        const World world = random_world(random, 5, 6, 1 + n % 3);
        const TripPlan plan = fewest_trips(world.items, world.free, 100);
        INFO("world " << n << ": " << words(world));
        REQUIRE(wrong_with(world, plan).empty());
        REQUIRE(plan.proved());
        REQUIRE(plan.value() == by_oracle(world));
        several += plan.value() > 2 ? 1 : 0;
    }
    // The worlds are not all easy.
    CHECK(several > 200);
}

TEST_CASE("a programme betters the rule where far freezers crowd the near one") {
    // What the rule packs into the first freezer's walk may leave no room for the second's.
    std::mt19937 random(11);
    int bettered = 0;
    for (int n = 0; n < 4000 && bettered < 3; ++n) {
        const World world = random_world(random, 12, 14, 3);
        const TripPlan with = fewest_trips(world.items, world.free, 100);
        const TripPlan without = fewest_trips(world.items, world.free, 0);
        INFO("world " << n << ": " << words(world));
        REQUIRE(wrong_with(world, with).empty());
        REQUIRE(wrong_with(world, without).empty());
        REQUIRE(without.bound <= with.bound);
        REQUIRE(with.value() <= without.value());
        bettered += with.value() < with.by_rule ? 1 : 0;
    }
    CHECK(bettered == 3);
}

TEST_CASE("a larger near freezer never needs more walks, and one without limit needs one a far freezer") {
    std::mt19937 random(7);
    for (int n = 0; n < 300; ++n) {
        World world = random_world(random, 20, 25, 2);
        const TripPlan small = fewest_trips(world.items, world.free, 100);
        INFO("world " << n << ": " << words(world));
        REQUIRE(wrong_with(world, small).empty());
        REQUIRE(small.proved());
        for (std::int64_t& room : world.free) room = std::max<std::int64_t>(0, room) + 1 + n % 5;
        const TripPlan large = fewest_trips(world.items, world.free, 100);
        REQUIRE(wrong_with(world, large).empty());
        REQUIRE(large.value() <= small.value());
        std::set<int> freezers;
        for (const TripItem& item : world.items) freezers.insert(item.freezer);
        for (std::int64_t& room : world.free) room = 1'000'000;
        REQUIRE(fewest_trips(world.items, world.free, 100).value() == static_cast<int>(freezers.size()));
    }
}

TEST_CASE("a month of a full kitchen is proved, and the same twice") {
    std::mt19937 random(3);
    for (int n = 0; n < 10; ++n) {
        const World world = random_world(random, 31, 80, 3);
        const TripPlan once = fewest_trips(world.items, world.free, 100);
        const TripPlan again = fewest_trips(world.items, world.free, 100);
        INFO("world " << n << ": " << words(world));
        REQUIRE(wrong_with(world, once).empty());
        CHECK(once.proved());
        CHECK(once.trips == again.trips);
        CHECK(once.item_days == again.item_days);
    }
}

TEST_CASE("the first walk is as early as it can be, and brings as many days' needs as room allows") {
    const std::vector<TripItem> items{{0, 3, 3, 4}, {0, 5, 5, 4}, {0, 8, 8, 5}};
    const TripPlan roomy = fewest_trips(items, std::vector<std::int64_t>(10, 13), 100);
    CHECK(roomy.trips == std::vector<ask::detail::Trip>{{0, 0}});
    // Two fit together: the walk that brings them could be on the third day, and is on the first; the next is on its
    // day.
    const TripPlan tight = fewest_trips(items, std::vector<std::int64_t>(10, 8), 100);
    CHECK(tight.trips == std::vector<ask::detail::Trip>{{0, 0}, {0, 8}});
    CHECK(tight.item_days == std::vector<int>{0, 0, 8});
    // Larger than the near freezer: straight on, on its day.
    const TripPlan straight = fewest_trips(items, std::vector<std::int64_t>(10, 3), 100);
    CHECK(straight.item_days == std::vector<int>{3, 5, 8});
    CHECK(straight.proved());
    CHECK(fewest_trips({}, {}, 100).trips.empty());
}
