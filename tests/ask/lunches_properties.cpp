// The lunches against every plan that there is, in small kitchens, and what is so in all of them.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "ask/lunches.hpp"
#include "flow/findings.hpp"
#include "support/lunches_judge.hpp"
#include "support/lunches_world.hpp"

using namespace samebase;
using basics::days;

namespace {

ask::LunchesAnswer answer_of(const tests::LunchWorld& world, int effort = 20) {
    auto answer = ask::ask_lunches(world.kitchen, world.today, {.days = world.days, .effort = effort});
    REQUIRE(answer);
    return std::move(*answer);
}

}  // namespace

TEST_CASE("lunches of small kitchens are worth what the best of all plans is worth") {
    int tried = 0;
    int with_larger = 0;
    int with_cooked = 0;
    int with_packs = 0;
    int proved = 0;
    for (std::uint64_t number = 0; tried < 400; ++number) {
        const auto world = tests::random_lunch_world(number);
        const tests::LunchJudge judge(world.kitchen, world.today, world.days);
        const auto best = judge.best_of_all(20'000);
        if (!best) continue;
        ++tried;
        INFO("kitchen " << number);
        const auto answer = answer_of(world);
        REQUIRE(answer.lunches.size() == judge.open().size());
        const auto lunches = judge.choices_of(answer);
        const auto judged = judge.judge(lunches);
        for (const auto& fault : judged.faults) FAIL_CHECK(fault);
        CHECK(judged.value >= *best - 0.1);
        CHECK(judged.value <= *best + 0.1);
        // The lines are rounded, each by half a unit at most.
        CHECK(std::abs(static_cast<double>(answer.value.minor) - judged.value) <=
              0.5 * static_cast<double>(answer.because.size()) + 0.1);
        CHECK(static_cast<double>(answer.bound.minor) >= *best - 0.5 * static_cast<double>(answer.because.size()) - 1);
        proved += answer.proved_best ? 1 : 0;
        for (const auto& lunch : lunches) {
            with_larger += lunch.kind == ask::LunchKind::larger ? 1 : 0;
            with_cooked += lunch.kind == ask::LunchKind::cooked ? 1 : 0;
            with_packs += lunch.kind == ask::LunchKind::frozen_pack ? 1 : 0;
        }
    }
    // The kitchens are such that each of these matters.
    INFO(with_larger << " larger, " << with_cooked << " cooked, " << with_packs << " from packs, " << proved << " proved");
    CHECK(with_larger > 20);
    CHECK(with_cooked > 50);
    CHECK(with_packs > 10);
    CHECK(proved == tried);
}
