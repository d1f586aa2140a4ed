// Small programmes whose answers are known.
#include "solver/programme.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace samebase::solver;

namespace {

void check_close(double found, double known) {
    INFO(found << " found, " << known << " known");
    CHECK(std::abs(found - known) < 1e-6 * (1 + std::abs(known)));
}

Programme columns(int number, Column each) {
    Programme programme;
    for (int i = 0; i < number; ++i) programme.add(each);
    return programme;
}

/// Of so many things with weights and worths those that fit: worth is taken as cost below 0.
struct Knapsack {
    Programme programme;
    Terms cost;
};

Knapsack knapsack(int number) {
    Knapsack result{columns(number, {0, 1, true}), {}};
    for (int room = 0; room < 3; ++room) {
        Row row{{}, -unbounded, 0};
        for (int i = 0; i < number; ++i) {
            const double weight = 40 + (i * 37 + room * 53 + i * i * 11) % 61;
            row.terms.emplace_back(i, weight);
            row.upper += weight / 2;
        }
        result.programme.add(row);
    }
    for (int i = 0; i < number; ++i) result.cost.emplace_back(i, -(40 + (i * 29 + i * i * 17) % 59));
    return result;
}

}  // namespace

TEST_CASE("a linear programme: two products, three machines") {
    // Most of 3x + 5y with x <= 4, 2y <= 12, 3x + 2y <= 18 is 36, at x = 2 and y = 6.
    Programme programme = columns(2, {});
    programme.add(Row{{{0, 1}}, -unbounded, 4});
    programme.add(Row{{{1, 2}}, -unbounded, 12});
    programme.add(Row{{{0, 3}, {1, 2}}, -unbounded, 18});
    const Solution solution = minimise(programme, {{0, -3}, {1, -5}});
    REQUIRE(solution.status == Status::proved);
    check_close(solution.cost, -36);
    check_close(solution.bound, -36);
    check_close(solution.values[0], 2);
    check_close(solution.values[1], 6);
}

TEST_CASE("rows have two ends, and columns may lie below nothing") {
    Programme programme;
    programme.add(Column{-10, 10, false});
    programme.add(Column{-unbounded, unbounded, false});
    programme.add(Row{{{0, 1}, {1, 1}}, -3, 7});
    programme.add(Row{{{0, 1}, {1, -1}}, 2, 2});
    const Solution least = minimise(programme, {{0, 1}});
    REQUIRE(least.status == Status::proved);
    check_close(least.cost, -0.5);
    const Solution most = minimise(programme, {{0, -1}});
    check_close(most.cost, -4.5);
}

TEST_CASE("whole values are not rounded fractions") {
    // Most of 5x + 4y with 6x + 4y <= 24, x + 2y <= 6: fractions give 21 at (3, 1.5), whole values 20 at (4, 0).
    Programme programme = columns(2, {0, unbounded, false});
    programme.add(Row{{{0, 6}, {1, 4}}, -unbounded, 24});
    programme.add(Row{{{0, 1}, {1, 2}}, -unbounded, 6});
    check_close(minimise(programme, {{0, -5}, {1, -4}}).cost, -21);
    for (Column& column : programme.columns) column.whole = true;
    const Solution whole = minimise(programme, {{0, -5}, {1, -4}});
    REQUIRE(whole.status == Status::proved);
    check_close(whole.cost, -20);
    CHECK(whole.values == std::vector<double>{4, 0});
}

TEST_CASE("what cannot be is infeasible, with and without whole columns") {
    Programme programme = columns(2, {0, 1, false});
    programme.add(Row{{{0, 1}, {1, 1}}, 3, unbounded});
    CHECK(minimise(programme, {{0, 1}}).status == Status::infeasible);
    CHECK(minimise(programme, {{0, 1}}).values.empty());
    for (Column& column : programme.columns) column.whole = true;
    CHECK(minimise(programme, {{0, 1}}).status == Status::infeasible);
    // Between two whole values there is none.
    Programme between = columns(1, {0, 5, true});
    between.add(Row{{{0, 1}}, 1.25, 1.75});
    CHECK(minimise(between, {{0, 1}}).status == Status::infeasible);
    const Terms costs[] = {{{0, 1}}, {{0, -1}}};
    CHECK(minimise_in_order(between, costs).status == Status::infeasible);
}

TEST_CASE("a programme without rows, and one without a cost") {
    const Programme free = columns(3, {2, 9, true});
    check_close(minimise(free, {{0, 1}, {2, -1}}).cost, -7);
    const Solution any = minimise(free, {});
    CHECK(any.status == Status::proved);
    CHECK(any.values.size() == 3);
    check_close(any.cost, 0);
}

TEST_CASE("costs in order are lexicographic, however much the later ones would gain") {
    // First as little of a as can be, then of b, though c could fall by a thousand for one more of a.
    Programme programme = columns(3, {0, 1000, true});
    programme.add(Row{{{0, 1}, {1, 1}}, 10, unbounded});
    programme.add(Row{{{0, 1000}, {1, 10}, {2, 1}}, 1000, unbounded});
    const Terms a_b_c[] = {{{0, 1}}, {{1, 1}}, {{2, 1}}};
    const Solution first = minimise_in_order(programme, a_b_c);
    REQUIRE(first.status == Status::proved);
    CHECK(first.values == std::vector<double>{0, 10, 900});
    check_close(first.cost, 900);
    const Terms c_b_a[] = {{{2, 1}}, {{1, 1}}, {{0, 1}}};
    const Solution last = minimise_in_order(programme, c_b_a);
    CHECK(last.values == std::vector<double>{10, 0, 0});
    const Terms b_a_c[] = {{{1, 1}}, {{0, 1}}, {{2, 1}}};
    CHECK(minimise_in_order(programme, b_a_c).values == std::vector<double>{10, 0, 0});
}

TEST_CASE("a cost that is already least is held without a solve, and holds") {
    // The second cost is least (0) in the answer to the first; the third must not give that up.
    Programme programme = columns(3, {0, 5, true});
    programme.add(Row{{{0, 1}, {1, 1}, {2, 1}}, 5, unbounded});
    const Terms costs[] = {{{0, 1}, {1, 1}}, {{1, 2}}, {{2, 1}}};
    const Solution solution = minimise_in_order(programme, costs);
    CHECK(solution.status == Status::proved);
    CHECK(solution.values == std::vector<double>{0, 0, 5});
    // Of a factor below 0 the least is at the upper bound.
    const Terms most[] = {{{0, -1}}, {{0, -2}}, {{1, 1}, {2, 1}}};
    CHECK(minimise_in_order(programme, most).values == std::vector<double>{5, 0, 0});
}

TEST_CASE("a known solution to start from changes neither cost nor proof") {
    const auto [programme, cost] = knapsack(14);
    const Solution cold = minimise(programme, cost);
    REQUIRE(cold.status == Status::proved);
    const std::vector<double> nothing(14, 0.0);
    for (const auto& start : {nothing, cold.values}) {
        const Solution warm = minimise(programme, cost, {}, start);
        CHECK(warm.status == Status::proved);
        check_close(warm.cost, cold.cost);
    }
    // Trying all gives the same.
    double best = 0;
    for (unsigned set = 0; set < 1U << 14; ++set) {
        bool fits = true;
        for (const Row& row : programme.rows) {
            double sum = 0;
            for (const auto& [column, factor] : row.terms) sum += (set >> column & 1U) != 0 ? factor : 0;
            fits = fits && sum <= row.upper;
        }
        double worth = 0;
        for (const auto& [column, factor] : cost) worth += (set >> column & 1U) != 0 ? factor : 0;
        if (fits) best = std::min(best, worth);
    }
    check_close(cold.cost, best);
}

TEST_CASE("a known solution of a large programme is started from, also where columns are removed first") {
    // Columns that presolve takes out. CBC asked for the names of all of them, and solved nothing.
    auto [programme, cost] = knapsack(60);
    for (int i = 0; i < 500; ++i) {
        const int column = programme.add({0, i % 2 == 0 ? 0.0 : 3.0, i % 3 == 0});
        cost.emplace_back(column, 1);
        programme.rows[static_cast<std::size_t>(i) % programme.rows.size()].terms.emplace_back(column, 1);
    }
    const std::vector<double> nothing(programme.columns.size(), 0.0);
    const Solution cold = minimise(programme, cost);
    const Solution warm = minimise(programme, cost, {}, nothing);
    REQUIRE(cold.status == Status::proved);
    CHECK(warm.status == Status::proved);
    check_close(warm.cost, cold.cost);
    check_close(warm.bound, cold.bound);
    // Started from the best there is, it stays.
    const Solution again = minimise(programme, cost, {}, cold.values);
    CHECK(again.status == Status::proved);
    check_close(again.cost, cold.cost);
    check_close(again.bound, cold.cost);
}

TEST_CASE("a limit of nodes leaves a bound, and claims no proof") {
    const auto [programme, cost] = knapsack(60);
    const std::vector<double> nothing(60, 0.0);
    const Solution limited = minimise(programme, cost, {.nodes = 3}, nothing);
    REQUIRE(limited.status == Status::limited);
    REQUIRE(limited.values.size() == 60);
    CHECK(limited.bound <= limited.cost);
    for (const Row& row : programme.rows) {
        double sum = 0;
        for (const auto& [column, factor] : row.terms) sum += factor * limited.values[static_cast<std::size_t>(column)];
        CHECK(sum <= row.upper + 1e-6);
    }
    const Solution more = minimise(programme, cost, {.nodes = 300}, nothing);
    CHECK(more.cost <= limited.cost);
    CHECK(limited.bound <= more.cost);
}

TEST_CASE("a limit in the middle of an order of costs says so of the whole") {
    const auto [programme, cost] = knapsack(60);
    const Terms costs[] = {cost, {{0, 1}}};
    const Solution solution = minimise_in_order(programme, costs, {.nodes = 3});
    CHECK(solution.status != Status::proved);
}

TEST_CASE("the same programme gives the same values twice") {
    const auto [programme, cost] = knapsack(30);
    const Solution once = minimise(programme, cost);
    const Solution twice = minimise(programme, cost);
    CHECK(once.status == Status::proved);
    CHECK(once.values == twice.values);
    const Terms costs[] = {cost, {{3, 1}, {7, 1}}};
    CHECK(minimise_in_order(programme, costs).values == minimise_in_order(programme, costs).values);
    const Solution limited = minimise(programme, cost, {.nodes = 5});
    CHECK(limited.values == minimise(programme, cost, {.nodes = 5}).values);
}
