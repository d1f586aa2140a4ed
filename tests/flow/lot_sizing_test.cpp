// When to buy how many packs: published examples, and small random cases against GLPK and against all purchases.
#include "flow/lot_sizing.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "support/lot_sizing_oracle.hpp"

using namespace samebase;
using flow::LotPlan;
using flow::LotSizing;

namespace {

constexpr std::int64_t dear = 100'000;

/// Units one by one, at no price of their own.
LotSizing classic(std::vector<std::int64_t> demand, std::vector<std::int64_t> setup, std::int64_t hold) {
    LotSizing problem;
    problem.setup.assign(setup.begin(), setup.end());
    problem.packs = {{1, std::vector<std::int64_t>(demand.size(), 0)}};
    problem.demand = std::move(demand);
    problem.hold = hold;
    problem.shortage = dear;
    return problem;
}

/// The periods with a purchase, counted from 1.
std::vector<int> periods(const LotPlan& plan) {
    std::vector<int> list;
    for (std::size_t t = 0; t < plan.packs.size(); ++t) {
        if (plan.packs[t].front() > 0) list.push_back(static_cast<int>(t) + 1);
    }
    return list;
}

class Dice {
  public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    std::int64_t roll(std::int64_t low, std::int64_t high) {
        return low + static_cast<std::int64_t>(engine_() % static_cast<unsigned>(high - low + 1));
    }

  private:
    std::mt19937 engine_;
};

LotSizing random_problem(Dice& dice, std::size_t most_periods, std::size_t most_sizes) {
    LotSizing problem;
    const auto length = static_cast<std::size_t>(dice.roll(1, static_cast<std::int64_t>(most_periods)));
    for (std::size_t t = 0; t < length; ++t) {
        problem.demand.push_back(dice.roll(0, 2) == 0 ? 0 : dice.roll(1, 9));
        const bool sold = dice.roll(0, 3) != 0;
        problem.setup.push_back(sold ? std::optional(dice.roll(0, 20)) : std::nullopt);
    }
    const bool same_price = dice.roll(0, 1) == 0;
    const auto sizes = static_cast<std::size_t>(dice.roll(1, static_cast<std::int64_t>(most_sizes)));
    for (std::size_t i = 0; i < sizes; ++i) {
        flow::PackSize pack{dice.roll(1, 5), {}};
        const std::int64_t price = dice.roll(0, 12);
        for (std::size_t t = 0; t < length; ++t) pack.cost.push_back(same_price ? price : dice.roll(0, 12));
        problem.packs.push_back(std::move(pack));
    }
    problem.keeps = static_cast<int>(dice.roll(-1, 3));
    problem.hold = dice.roll(0, 2);
    problem.shortage = dear;
    for (auto stock = dice.roll(0, 2); stock > 0; --stock)
        problem.stock.push_back(
            {dice.roll(1, 6), static_cast<int>(dice.roll(0, static_cast<std::int64_t>(length) - 1))});
    return problem;
}

}  // namespace

// Wagner & Whitin, Dynamic version of the economic lot size model, Management Science 5 (1958) 89-96.
TEST_CASE("the example of Wagner and Whitin: 864, bought in periods 1, 3, 5, 8, 10 and 11") {
    const auto problem = classic({69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56},
                                 {85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114}, 1);
    const LotPlan plan = flow::best_lots(problem);
    CHECK(plan.cost == 864);
    CHECK(plan.proved());
    CHECK(periods(plan) == std::vector<int>{1, 3, 5, 8, 10, 11});
    CHECK(flow::carry_out(problem, plan.packs).cost == 864);
    const std::vector<std::int64_t> cumulative{85, 114, 186, 277, 348, 400, 469, 555, 600, 710, 789, 864};
    for (std::size_t t = 1; t <= cumulative.size(); ++t) {
        LotSizing first = problem;
        first.demand.resize(t);
        first.setup.resize(t);
        first.packs.front().cost.resize(t);
        CHECK(flow::best_lots(first).cost == cumulative[t - 1]);
    }
}

// Silver & Peterson, 12 periods, setup 54, holding 0.4: in tenths.
TEST_CASE("the example of Silver and Peterson: 501.2") {
    const auto plan = flow::best_lots(
        classic({10, 62, 12, 130, 154, 129, 88, 52, 124, 160, 238, 41}, std::vector<std::int64_t>(12, 540), 4));
    CHECK(plan.cost == 5012);
    CHECK(periods(plan) == std::vector<int>{1, 4, 5, 7, 9, 10, 11});
}

// Hopp & Spearman, Factory Physics, section 2.3.3, setup 100, holding 1.
TEST_CASE("the example of Hopp and Spearman: 580, for which the heuristic of Silver and Meal takes 620") {
    const auto plan =
        flow::best_lots(classic({20, 50, 10, 50, 50, 10, 20, 40, 20, 30}, std::vector<std::int64_t>(10, 100), 1));
    CHECK(plan.cost == 580);
    CHECK(periods(plan) == std::vector<int>{1, 4, 8});
}

TEST_CASE("300 small problems with packs, keeping times and stock cost what GLPK finds") {
    Dice dice(15);
    for (int i = 0; i < 300; ++i) {
        const LotSizing problem = random_problem(dice, 7, 2);
        INFO("problem " << i);
        REQUIRE_FALSE(flow::check(problem));
        const LotPlan plan = flow::best_lots(problem, 100'000);
        CHECK(plan.proved());
        CHECK(plan.cost == tests::least_cost_by_glpk(problem));
        const LotPlan again = flow::carry_out(problem, plan.packs);
        CHECK(again.cost == plan.cost);
        CHECK(again.short_of == plan.short_of);
    }
}

TEST_CASE("packs that last less once opened: no purchases cost less") {
    Dice dice(16);
    for (int i = 0; i < 150; ++i) {
        LotSizing problem = random_problem(dice, 4, 1);
        problem.opened = static_cast<int>(dice.roll(0, 2));
        problem.packs.front().amount = dice.roll(3, 5);
        INFO("problem " << i);
        CHECK(flow::best_lots(problem).cost == tests::least_cost_by_trying(problem, 9));
    }
}

TEST_CASE("with too many states the plan is still one, and its bound is below it") {
    Dice dice(17);
    int bounded = 0;
    for (int i = 0; i < 60; ++i) {
        const LotSizing problem = random_problem(dice, 7, 2);
        const LotPlan best = flow::best_lots(problem);
        const LotPlan some = flow::best_lots(problem, 1);
        CHECK(some.bound <= best.cost);
        CHECK(some.cost >= best.cost);
        CHECK(flow::carry_out(problem, some.packs).cost == some.cost);
        bounded += some.proved() ? 0 : 1;
    }
    CHECK(bounded > 0);
}

TEST_CASE("of plans that cost the same, the one that buys later") {
    LotSizing problem;
    problem.demand = {0, 0, 0, 4};
    problem.setup.assign(4, 0);
    problem.packs = {{2, {5, 5, 5, 5}}};
    problem.shortage = dear;
    CHECK(periods(flow::best_lots(problem)) == std::vector<int>{4});
}

TEST_CASE("what is no problem of lots is said to be none") {
    LotSizing problem = classic({1, 2}, {3, 4}, 0);
    CHECK_FALSE(flow::check(problem));
    problem.setup.pop_back();
    CHECK(flow::check(problem) == "not a setup for each period");
    problem = classic({1, 2}, {3, 4}, 0);
    problem.packs.front().amount = 0;
    CHECK(flow::check(problem) == "a pack of nothing");
}
