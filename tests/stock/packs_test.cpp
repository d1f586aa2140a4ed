#include "stock/packs.hpp"

#include <catch2/catch.hpp>
#include <numeric>

#include "support/ledger_world.hpp"

using namespace samebase;
using stock::Lot;

namespace {

Lot mince(std::vector<std::int64_t> packs, std::int64_t part_of = 0) {
    Lot lot;
    lot.number = 1;
    lot.ingredient = tests::ledger_world().ingredient("beef-mince");
    lot.amount = {measure::Dimension::mass, std::accumulate(packs.begin(), packs.end(), std::int64_t{0})};
    lot.packs = std::move(packs);
    lot.part_of = part_of;
    return lot;
}

bool sound(const Lot& lot) {
    return !stock::check(lot, tests::ledger_world().knowledge->catalogue);
}

}  // namespace

TEST_CASE("a part pack counts as its share of the whole one") {
    CHECK(stock::pack_count(mince({})) == 0);
    CHECK(stock::pack_count(mince({500, 480})) == 2'000);
    CHECK(stock::pack_count(mince({500, 480, 250}, 500)) == 2'500);
    CHECK(stock::whole_pack(mince({500, 480, 250}, 600)) == 600);
    CHECK(stock::pack_count(mince({500, 1}, 90'000)) == 1'001);  // never rounded away
}

TEST_CASE("what is taken leaves the packs and their sum, the part pack first") {
    Lot lot = mince({500, 480, 250}, 500);
    CHECK(stock::weight_of_packs(lot, 500) == 250);
    CHECK(stock::weight_of_packs(lot, 1'500) == 730);
    CHECK(stock::weight_of_packs(lot, 1'000) == 490);
    CHECK(stock::whole_packs_for(lot, 300) == 730);
    stock::take(lot, 300);
    CHECK(lot.packs == std::vector<std::int64_t>{500, 430});
    CHECK(lot.part_of == 480);
    CHECK(sound(lot));
    stock::take(lot, 930);
    CHECK(lot.packs.empty());
    CHECK(sound(lot));
}

TEST_CASE("what is split off keeps its packs and what they were part of") {
    Lot lot = mince({500, 500, 250}, 500);
    const Lot part = stock::split(lot, 600);
    CHECK(part.packs == std::vector<std::int64_t>{350, 250});
    CHECK(part.part_of == 500);
    CHECK(lot.packs == std::vector<std::int64_t>{500, 150});
    CHECK(lot.part_of == 500);
    CHECK(sound(lot));
    CHECK(sound(part));
}

TEST_CASE("what is put back fills the part pack first") {
    Lot lot = mince({500, 250}, 500);
    stock::put(lot, 100);
    CHECK(lot.packs == std::vector<std::int64_t>{500, 350});
    stock::put(lot, 200);
    CHECK(lot.packs == std::vector<std::int64_t>{500, 500, 50});
    CHECK(lot.part_of == 0);
    Lot counted = mince({500, 250}, 500);
    stock::put_packs(counted, 2'000, 600);
    CHECK(counted.packs == std::vector<std::int64_t>{500, 500, 600, 300});
    CHECK(counted.part_of == 600);
    CHECK(stock::pack_count(counted) == 3'500);
    CHECK(sound(counted));
}

TEST_CASE("even packs differ by one at most and lose nothing") {
    CHECK(stock::even_packs(10, 3) == std::vector<std::int64_t>{4, 3, 3});
}

TEST_CASE("a tray is taken from the middle, and the part pack stays a part") {
    Lot lot = mince({500, 480, 250}, 500);
    const std::vector<std::int64_t> one{480};
    const Lot taken = stock::split_packs(lot, one);
    CHECK(taken.packs == std::vector<std::int64_t>{480});
    CHECK(taken.part_of == 0);
    CHECK(lot.packs == std::vector<std::int64_t>{500, 250});
    CHECK(lot.part_of == 500);
    CHECK(sound(lot));
    CHECK(sound(taken));
    const std::vector<std::int64_t> both{250, 500};
    const Lot all = stock::split_packs(lot, both);
    CHECK(all.packs == std::vector<std::int64_t>{500, 250});
    CHECK(all.part_of == 500);
    CHECK(lot.packs.empty());
    CHECK(lot.part_of == 0);
    CHECK(lot.amount.value() == 0);
}
