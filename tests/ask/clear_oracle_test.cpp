// Clearing a kitchen against trying every plan, against GLPK, and against a judge that lives through the plan.
#include "support/clear_oracle.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <iostream>

#include "ask/clear.hpp"
#include "support/clear_judge.hpp"
#include "support/clear_world.hpp"
#include "support/demo.hpp"

using namespace samebase;

namespace {

/// The plan of an answer, as the judge reads it.
std::vector<tests::ChosenMeal> chosen(const ask::ClearAnswer& answer) {
    std::vector<tests::ChosenMeal> result;
    for (const auto& meal : answer.meals) {
        tests::ChosenMeal row{meal.day, meal.meal, meal.dish, meal.ready_meal, {}, 0};
        for (const auto& need : meal.cooking.needs) row.wants.emplace_back(need.ingredient, need.amount);
        for (const auto& because : meal.because) {
            if (because.line == ask::ClearLine::stand_ins)
                row.stand_in_loss -= static_cast<double>(because.money.minor);
        }
        result.push_back(std::move(row));
    }
    return result;
}

/// Lines are rounded, each by half a minor unit at most.
double rounding(const ask::ClearAnswer& answer) {
    return 0.5 * static_cast<double>(answer.because.size()) + 0.1;
}

ask::ClearAnswer cleared(const tests::ClearWorld& world, int effort) {
    auto answer = ask::ask_clear(world.kitchen, world.today, {.until = world.until, .effort = effort});
    REQUIRE(answer);
    return std::move(*answer);
}

void agrees_with_the_judge(const tests::ClearWorld& world, const ask::ClearAnswer& answer) {
    const tests::Judge judge(world.kitchen, world.today, world.until);
    const auto meals = chosen(answer);
    const auto judged = judge.judge(meals);
    CHECK(judged.faults == std::vector<std::string>{});  // NOLINT(readability-container-size-empty): shows them
    CHECK(std::abs(judged.value - static_cast<double>(answer.value.minor)) <= rounding(answer));
    for (const auto& bin : answer.bin) {
        const auto saved = judged.saved.find(bin.ingredient);
        const auto eaten = saved == judged.saved.end() ? 0 : saved->second;
        CHECK(judged.danger.at(bin.ingredient) - eaten == bin.amount.value());
    }
    for (const auto& buy : answer.to_buy) CHECK(judged.packs.at(buy.ingredient) == buy.packs);
}

}  // namespace

TEST_CASE("clear is worth what the best of all plans is, in every small kitchen") {
    int proved = 0;
    constexpr int kitchens = 300;
    for (int number = 0; number < kitchens; ++number) {
        const tests::ClearSize size{.days = 1 + number % 3,
                                    .perishables = 2 + number % 4,
                                    .keepers = 1 + number % 2,
                                    .dishes = 2 + number % 3,
                                    .lunch_dishes = number % 2};
        const auto world = tests::random_clear_world(static_cast<std::uint64_t>(number), size);
        const auto answer = cleared(world, 2);
        INFO("kitchen " << number);
        agrees_with_the_judge(world, answer);
        const double best = tests::best_of_all_plans(world);
        CHECK(std::abs(best - static_cast<double>(answer.value.minor)) <= rounding(answer));
        CHECK(answer.bound >= answer.value);
        CHECK(static_cast<double>(answer.bound.minor) + rounding(answer) >= best);
        proved += answer.proved_best ? 1 : 0;
    }
    CHECK(proved == kitchens);
}

TEST_CASE("clear is worth what GLPK finds best on three hundred kitchens of five days") {
    for (int number = 0; number < 300; ++number) {
        const tests::ClearSize size{.days = 5, .perishables = 7, .keepers = 4, .dishes = 12, .lunch_dishes = 3};
        const auto world = tests::random_clear_world(1000 + static_cast<std::uint64_t>(number), size);
        const auto answer = cleared(world, 5);
        INFO("kitchen " << number);
        agrees_with_the_judge(world, answer);
        const double best = tests::best_plan_by_glpk(world);
        CHECK(std::abs(best - static_cast<double>(answer.value.minor)) <= rounding(answer));
        CHECK(static_cast<double>(answer.bound.minor) + rounding(answer) >= best);
        CHECK(answer.proved_best);
    }
}

TEST_CASE("clear of twenty full kitchens is worth no less than the greedy choice, and its bound holds") {
    // Ten days, all shipped dishes. At a small effort, so that the test is short; SAMEBASE_EFFORT=100 is the usual one.
    const char* said = std::getenv("SAMEBASE_EFFORT");
    const int effort = said == nullptr ? 5 : static_cast<int>(std::strtol(said, nullptr, 10));
    int proved_or_near = 0;
    for (std::uint64_t number = 0; number < 20; ++number) {
        const auto world = tests::full_clear_world(number, tests::demo());
        CHECK_FALSE(world.kitchen.check());
        const auto answer = cleared(world, effort);
        INFO("kitchen " << number);
        CHECK(answer.value.minor >= answer.greedy.minor);
        CHECK(answer.bound >= answer.value);
        std::cout << "full kitchen " << number << ": worth " << answer.value.minor << ", greedy " << answer.greedy.minor
                  << ", bound " << answer.bound.minor << "; in the bin " << answer.danger.minor - answer.saved.minor
                  << " of " << answer.danger.minor << ", gap " << answer.gap << '\n';
        proved_or_near += answer.gap <= 0.03 ? 1 : 0;
    }
    std::cout << proved_or_near << " of 20 full kitchens proved or within 3 %\n";
    CHECK(proved_or_near >= (effort >= 100 ? 18 : 8));
}
