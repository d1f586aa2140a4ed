#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>

#include "stock/packs.hpp"
#include "support/ledger_world.hpp"

using namespace samebase;
using stock::Lot;

namespace {

Lot any_lot() {
    Lot lot;
    lot.number = 1;
    lot.ingredient = tests::ledger_world().ingredient("beef-mince");
    lot.packs = *rc::gen::container<std::vector<std::int64_t>>(
        rc::gen::oneOf(rc::gen::inRange<std::int64_t>(1, 9), rc::gen::inRange<std::int64_t>(1, 2'000'000)));
    std::int64_t sum = std::accumulate(lot.packs.begin(), lot.packs.end(), std::int64_t{0});
    if (lot.packs.empty()) sum = *rc::gen::inRange<std::int64_t>(0, 2'000'000);
    if (!lot.packs.empty() && *rc::gen::arbitrary<bool>())
        lot.part_of = lot.packs.back() + *rc::gen::inRange<std::int64_t>(1, 90'000);
    lot.amount = {measure::Dimension::mass, sum};
    return lot;
}

std::optional<std::string> unsound(const Lot& lot) {
    return stock::check(lot, tests::ledger_world().knowledge->catalogue);
}

}  // namespace

TEST_CASE("taking, splitting and putting keep lots sound and lose nothing") {
    rc::prop("packs", [] {
        const Lot before = any_lot();
        RC_ASSERT(unsound(before) == std::nullopt);
        const auto value = *rc::gen::inRange<std::int64_t>(0, before.amount.value() + 1);
        Lot rest = before;
        const Lot part = stock::split(rest, value);
        RC_ASSERT(unsound(rest) == std::nullopt);
        RC_ASSERT(unsound(part) == std::nullopt);
        RC_ASSERT(part.amount.value() == value);
        RC_ASSERT(rest.amount + part.amount == before.amount);
        Lot taken = before;
        stock::take(taken, value);
        RC_ASSERT(taken == rest);
        if (value > 0) {
            stock::put(taken, value);
            RC_ASSERT(unsound(taken) == std::nullopt);
            RC_ASSERT(taken.amount == before.amount);
        }
    });
    rc::prop("counts", [] {
        const Lot before = any_lot();
        const auto count = *rc::gen::inRange<std::int64_t>(0, stock::pack_count(before) + 1);
        const std::int64_t weight = stock::weight_of_packs(before, count);
        RC_ASSERT(weight >= 0);
        RC_ASSERT(weight <= before.amount.value());
        if (count == stock::pack_count(before) && !before.packs.empty()) RC_ASSERT(weight == before.amount.value());
        Lot more = before;
        if (before.packs.empty()) return;
        const auto extra = *rc::gen::inRange<std::int64_t>(1, 9'000);
        const auto whole = *rc::gen::inRange<std::int64_t>(1, 2'000'000);
        stock::put_packs(more, extra, whole);
        RC_ASSERT(unsound(more) == std::nullopt);
        RC_ASSERT(more.amount >= before.amount);
    });
}

TEST_CASE("packs that are chosen go as they are, and the others stay as they were") {
    rc::prop("chosen packs", [] {
        const Lot before = any_lot();
        std::vector<std::int64_t> chosen;
        std::vector<std::int64_t> others;
        for (const std::int64_t pack : before.packs) (*rc::gen::arbitrary<bool>() ? chosen : others).push_back(pack);
        if (before.packs.empty() && before.amount.value() > 0)
            chosen.push_back(*rc::gen::inRange<std::int64_t>(1, before.amount.value() + 1));
        if (chosen.empty()) return;
        Lot rest = before;
        const Lot part = stock::split_packs(rest, chosen);
        RC_ASSERT(unsound(rest) == std::nullopt);
        RC_ASSERT(unsound(part) == std::nullopt);
        RC_ASSERT(rest.amount + part.amount == before.amount);
        RC_ASSERT(part.number == 0);
        if (before.packs.empty()) return;
        const auto sorted = [](std::vector<std::int64_t> packs) {
            std::sort(packs.begin(), packs.end());
            return packs;
        };
        RC_ASSERT(sorted(part.packs) == sorted(chosen));
        RC_ASSERT(sorted(rest.packs) == sorted(others));
        RC_ASSERT((part.part_of == 0 || rest.part_of == 0));
        RC_ASSERT(part.part_of + rest.part_of == before.part_of);
    });
}
