// The menu problem against slow answers of another hand, on small problems of all sorts.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <limits>

#include "menu/bound.hpp"
#include "menu/evaluator.hpp"
#include "menu/search.hpp"
#include "support/menu_world.hpp"
#include "support/random_component.hpp"

using namespace samebase;
using namespace samebase::menu;

namespace {

constexpr std::uint64_t problems = 400;

/// The sums are rounded line by line: a thousandth each.
constexpr Worth rounding = 20;

Choice random_choice(const Problem& problem, tests::Random& random) {
    Choice choice;
    for (const MealSlot& slot : problem.slots) {
        const auto at = random.within(-1, static_cast<int>(slot.options.size()) - 1);
        choice.push_back(at < 0 ? -1 : slot.options[static_cast<std::size_t>(at)]);
    }
    return choice;
}

bool near_ones(const Evaluator& evaluator) {
    return std::any_of(evaluator.plan().begin(), evaluator.plan().end(),
                       [&](int option) { return evaluator.clashes(option); });
}

}  // namespace

TEST_CASE("the value that is kept while a choice changes is the value from the beginning") {
    int sound = 0;
    int unsound = 0;
    for (std::uint64_t number = 0; number < problems; ++number) {
        const Problem problem = tests::random_menu(number);
        INFO("problem " << number);
        REQUIRE(check(problem).empty());
        tests::Random random(number);
        Evaluator evaluator(problem);
        for (int change = 0; change < 12; ++change) {
            evaluator.set(random_choice(problem, random));
            const auto worth = tests::worth_of(problem, evaluator.plan());
            const bool can_stand = evaluator.sound() && !near_ones(evaluator);
            INFO("change " << change);
            REQUIRE(can_stand == worth.has_value());
            ++(can_stand ? sound : unsound);
            if (worth) REQUIRE(std::abs(evaluator.value() - *worth) <= rounding);
        }
    }
    CHECK(sound > 1000);
    CHECK(unsound > 500);
}

TEST_CASE("trying a change changes nothing, and tells the value that it would have") {
    for (std::uint64_t number = 0; number < problems; ++number) {
        const Problem problem = tests::random_menu(number);
        tests::Random random(number);
        Evaluator evaluator(problem);
        evaluator.set(random_choice(problem, random));
        const Choice before = evaluator.plan();
        const Worth value = evaluator.value();
        for (const MealSlot& slot : problem.slots) {
            for (const int option : slot.options) {
                const int at = problem.options[static_cast<std::size_t>(option)].slot;
                Choice with = before;
                with[static_cast<std::size_t>(at)] = option;
                INFO("problem " << number << " option " << option);
                REQUIRE(evaluator.with(at, option) == value_of(problem, with));
            }
        }
        REQUIRE(evaluator.plan() == before);
        REQUIRE(evaluator.value() == value);
    }
}

TEST_CASE("no choice is worth more than the bound, whatever the number of rounds") {
    int proved = 0;
    for (std::uint64_t number = 0; number < problems; ++number) {
        const Problem problem = tests::random_menu(number);
        const Worth best = tests::best_of_all(problem);
        const Worth known = value_of(problem, greedy(problem));
        Worth before = std::numeric_limits<Worth>::max();
        INFO("problem " << number);
        for (const int rounds : {1, 10, 100, 300}) {
            const Worth most = bound(problem, known, rounds).value;
            REQUIRE(most + rounding >= best);
            REQUIRE(most <= before);
            before = most;
        }
        proved += before <= best + 100 ? 1 : 0;
    }
    // A bound that is always far away would hold as well.
    CHECK(proved > static_cast<int>(problems) / 4);
}

TEST_CASE("the search finds the best of all choices nearly always, and never one that cannot stand") {
    int best_found = 0;
    for (std::uint64_t number = 0; number < problems; ++number) {
        const Problem problem = tests::random_menu(number);
        const Choice start = greedy(problem);
        const Bound most = bound(problem, value_of(problem, start), 50);
        const Choice found = polished(problem, annealed(problem, start, most.options, 2000, {}), {});
        INFO("problem " << number);
        const auto worth = tests::worth_of(problem, found);
        REQUIRE(worth);
        REQUIRE(value_of(problem, found) >= value_of(problem, start));
        best_found += *worth + rounding >= tests::best_of_all(problem) ? 1 : 0;
        REQUIRE(found == polished(problem, annealed(problem, start, most.options, 2000, {}), {}));
    }
    CHECK(best_found >= static_cast<int>(problems) * 98 / 100);
}
