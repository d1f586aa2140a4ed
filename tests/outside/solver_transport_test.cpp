// Published examples of operations research as programmes on the solver room. The data of each are restated beside it
// with their source; where a source gives no optimum, it was found by enumeration or dynamic programming when these
// were collected.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "solver/programme.hpp"

using namespace samebase::solver;

namespace {

using Table = std::vector<std::vector<double>>;

struct Linked {
    Programme programme;
    Terms cost;
};

/// Moves from rows to columns: no more than the supply of each row (an unbounded total may stay), all of each column's
/// demand.
Linked transport(const Table& cost, const std::vector<double>& supply, const std::vector<double>& demand, bool whole) {
    Linked result;
    std::vector<Row> from(supply.size(), Row{{}, -unbounded, 0});
    std::vector<Row> to(demand.size());
    for (std::size_t i = 0; i < supply.size(); ++i) {
        from[i].upper = supply[i];
        for (std::size_t j = 0; j < demand.size(); ++j) {
            const int flow = result.programme.add(Column{0, unbounded, whole});
            result.cost.emplace_back(flow, cost[i][j]);
            from[i].terms.emplace_back(flow, 1.0);
            to[j].terms.emplace_back(flow, 1.0);
        }
    }
    for (std::size_t j = 0; j < demand.size(); ++j) to[j].lower = to[j].upper = demand[j];
    for (Row& row : from) result.programme.add(row);
    for (Row& row : to) result.programme.add(row);
    return result;
}

/// Every row to one column, no column twice: a transport turned round where there are more columns.
double assigned(const Table& cost) {
    Table turned(cost.front().size(), std::vector<double>(cost.size()));
    for (std::size_t i = 0; i < cost.size(); ++i) {
        for (std::size_t j = 0; j < cost[i].size(); ++j) turned[j][i] = cost[i][j];
    }
    const auto linked =
        transport(turned, std::vector<double>(turned.size(), 1), std::vector<double>(cost.size(), 1), true);
    const Solution solution = minimise(linked.programme, linked.cost);
    REQUIRE(solution.status == Status::proved);
    return solution.cost;
}

struct Lots {
    std::vector<double> demand;
    std::vector<double> setup;  ///< by period
    double unit = 0;
    double holding = 0;
    double capacity = unbounded;
    double room = unbounded;
};

struct Made {
    double cost = 0;
    std::vector<int> setups;  ///< periods from 1
    std::vector<double> amounts;
};

/// Lot sizes by period: produce (with a set-up), hold, meet the demand. Holding costs on what is left at the end of a
/// period.
Made lot_sizes(const Lots& lots) {
    Programme programme;
    Terms cost;
    double left = 0;
    for (const double demand : lots.demand) left += demand;
    int before = -1;
    std::vector<int> makes;
    std::vector<int> sets;
    for (std::size_t t = 0; t < lots.demand.size(); ++t) {
        const double most = std::min(left, lots.capacity);
        const int make = programme.add(Column{0, most, false});
        const int set = programme.add(Column{0, 1, true});
        const int hold = programme.add(Column{0, lots.room, false});
        cost.insert(cost.end(), {{make, lots.unit}, {set, lots.setup[t]}, {hold, lots.holding}});
        programme.add(Row{{{make, 1.0}, {set, -most}}, -unbounded, 0});
        Row balance{{{make, 1.0}, {hold, -1.0}}, lots.demand[t], lots.demand[t]};
        if (before >= 0) balance.terms.emplace_back(before, 1.0);
        programme.add(balance);
        before = hold;
        left -= lots.demand[t];
        makes.push_back(make);
        sets.push_back(set);
    }
    const Solution solution = minimise(programme, cost);
    REQUIRE(solution.status == Status::proved);
    Made made{solution.cost, {}, {}};
    for (std::size_t t = 0; t < sets.size(); ++t) {
        if (solution.values[static_cast<std::size_t>(sets[t])] < 0.5) continue;
        made.setups.push_back(static_cast<int>(t) + 1);
        made.amounts.push_back(std::round(solution.values[static_cast<std::size_t>(makes[t])]));
    }
    return made;
}

void check_cost(double found, double published) {
    INFO(found << " found, " << published << " published");
    CHECK(std::abs(found - published) < 1e-5);
}

/// The optimum of the first so many periods.
double first_periods(Lots lots, std::size_t periods) {
    lots.demand.resize(periods);
    lots.setup.resize(periods);
    return lot_sizes(lots).cost;
}

// Wagner and Whitin, "Dynamic version of the economic lot size model", Management Science 5 (1958) 89-96: twelve
// periods, holding 1 a unit and period; optimum 864.
const Lots wagner_whitin{
    {69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56}, {85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114}, 0, 1};
// Silver, Pyke and Thomas (earlier Silver and Peterson), the twelve-period example: set-up 54, holding 0.40; optimum
// 501.20.
const Lots silver_peterson{{10, 62, 12, 130, 154, 129, 88, 52, 124, 160, 238, 41}, std::vector<double>(12, 54), 0, 0.4};
// Hopp and Spearman, "Factory Physics", section 2.3: ten periods, set-up 100, holding 1; optimum 580 (recomputed).
const Lots hopp_spearman{{20, 50, 10, 50, 50, 10, 20, 40, 20, 30}, std::vector<double>(10, 100), 0, 1};

}  // namespace

TEST_CASE("transport: three power plants and four cities") {
    // Winston, "Operations Research", the Powerco example: supply 35, 50, 40, demand 45, 20, 30, 30; optimum 1,020.
    const auto linked =
        transport({{8, 6, 10, 9}, {9, 12, 13, 7}, {14, 9, 16, 5}}, {35, 50, 40}, {45, 20, 30, 30}, false);
    const Solution solution = minimise(linked.programme, linked.cost);
    REQUIRE(solution.status == Status::proved);
    check_cost(solution.cost, 1020);
    check_cost(solution.bound, 1020);
    const std::vector<double> flows{0, 10, 25, 0, 45, 0, 5, 0, 0, 10, 0, 30};
    for (std::size_t i = 0; i < flows.size(); ++i) CHECK(std::abs(solution.values[i] - flows[i]) < 1e-6);
}

TEST_CASE("transport: four sources and five destinations") {
    // The manual of the R package TransP (CRAN): its north-west corner start costs 14,720 and its least-cost start
    // 11,570; the optimum, recomputed, is 11,220.
    const Table cost{{13, 25, 8, 13, 20}, {10, 19, 18, 5, 12}, {25, 10, 15, 14, 18}, {17, 24, 18, 13, 19}};
    const auto linked = transport(cost, {430, 150, 100, 130}, {210, 240, 110, 80, 170}, false);
    const Solution solution = minimise(linked.programme, linked.cost);
    REQUIRE(solution.status == Status::proved);
    check_cost(solution.cost, 11220);
    // The north-west corner as a start: the same optimum.
    const std::vector<double> corner{210, 220, 0, 0, 0, 0, 20, 110, 20, 0, 0, 0, 0, 60, 40, 0, 0, 0, 0, 130};
    double sum = 0;
    for (const auto& [column, factor] : linked.cost) sum += factor * corner[static_cast<std::size_t>(column)];
    check_cost(sum, 14720);
    check_cost(minimise(linked.programme, linked.cost, {}, corner).cost, 11220);
}

TEST_CASE("assignment: machines to jobs") {
    // Winston, "Operations Research", the Machineco example, and its variant with a job left over.
    check_cost(assigned({{14, 5, 8, 7}, {2, 12, 6, 5}, {7, 8, 3, 9}, {2, 4, 6, 10}}), 15);
    check_cost(assigned({{14, 5, 8, 7, 15}, {2, 12, 6, 5, 3}, {7, 8, 3, 9, 7}, {2, 4, 6, 10, 1}}), 11);
    // A matrix common in textbooks; optimum by enumeration.
    check_cost(assigned({{9, 2, 7, 8}, {6, 4, 3, 7}, {5, 8, 1, 8}, {7, 6, 9, 4}}), 13);
}

TEST_CASE("production over four months with capacity and room") {
    // Winston, "Operations Research", the production example of the chapter on dynamic programming: demand 1, 3, 2, 4;
    // set-up 3, 1 a unit, holding 0.50, at most 5 made a month, at most 4 in stock; optimum 20, making 1, 5, 0, 4.
    const Made made = lot_sizes({{1, 3, 2, 4}, std::vector<double>(4, 3), 1, 0.5, 5, 4});
    check_cost(made.cost, 20);
    CHECK(made.setups == std::vector<int>{1, 2, 4});
    CHECK(made.amounts == std::vector<double>{1, 5, 4});
}

TEST_CASE("lot sizes of Wagner and Whitin") {
    const Made made = lot_sizes(wagner_whitin);
    check_cost(made.cost, 864);
    CHECK(made.setups == std::vector<int>{1, 3, 5, 8, 10, 11});
    CHECK(made.amounts == std::vector<double>{98, 97, 121, 112, 67, 135});
    const double cumulative[] = {85, 114, 186, 277, 348, 400, 469, 555, 600, 710, 789, 864};
    for (std::size_t t = 1; t <= 12; ++t) check_cost(first_periods(wagner_whitin, t), cumulative[t - 1]);
}

TEST_CASE("lot sizes of Silver and Peterson") {
    const Made made = lot_sizes(silver_peterson);
    check_cost(made.cost, 501.2);
    CHECK(made.setups == std::vector<int>{1, 4, 5, 7, 9, 10, 11});
    CHECK(made.amounts == std::vector<double>{84, 130, 283, 140, 124, 160, 279});
}

TEST_CASE("lot sizes of Hopp and Spearman") {
    const Made made = lot_sizes(hopp_spearman);
    check_cost(made.cost, 580);
    CHECK(made.setups == std::vector<int>{1, 4, 8});
    CHECK(made.amounts == std::vector<double>{80, 130, 90});
    const double cumulative[] = {100, 150, 170, 270, 320, 340, 400, 480, 520, 580};
    for (std::size_t t = 1; t <= 10; ++t) check_cost(first_periods(hopp_spearman, t), cumulative[t - 1]);
}
