// Handing out serves against published assignment examples: sources of one serve each, slots of one eater each.
#include <algorithm>
#include <catch2/catch.hpp>
#include <vector>

#include "flow/hand_out.hpp"

using namespace samebase;

namespace {

struct Example {
    const char* source;
    std::vector<std::vector<std::int64_t>> cost;  ///< row is who is to be served, column what is handed out
    std::int64_t least = 0;
    std::vector<int> columns;  ///< by row, from 1, as the source counts
};

const std::vector<Example>& examples() {
    static const std::vector<Example> all{{"Winston, Operations Research, Machineco; optimum recomputed by enumeration",
                                           {{14, 5, 8, 7}, {2, 12, 6, 5}, {7, 8, 3, 9}, {2, 4, 6, 10}},
                                           15,
                                           {2, 4, 3, 1}},
                                          {"the same with a fifth column, which leaves one over",
                                           {{14, 5, 8, 7, 15}, {2, 12, 6, 5, 3}, {7, 8, 3, 9, 7}, {2, 4, 6, 10, 1}},
                                           11,
                                           {2, 1, 3, 5}},
                                          {"a matrix common in textbooks; optimum recomputed by enumeration",
                                           {{9, 2, 7, 8}, {6, 4, 3, 7}, {5, 8, 1, 8}, {7, 6, 9, 4}},
                                           13,
                                           {2, 1, 3, 4}}};
    return all;
}

}  // namespace

TEST_CASE("serves are handed out as published assignment examples say") {
    for (const Example& example : examples()) {
        INFO(example.source);
        std::vector<flow::Suits> suits;
        for (std::size_t row = 0; row < example.cost.size(); ++row) {
            for (std::size_t column = 0; column < example.cost[row].size(); ++column)
                suits.push_back({static_cast<int>(column), static_cast<int>(row), example.cost[row][column]});
        }
        const std::vector<int> serves(example.cost.front().size(), 1);
        const auto given = flow::hand_out(serves, example.cost.size(), suits);
        REQUIRE(given.size() == example.cost.size());
        std::int64_t cost = 0;
        for (std::size_t row = 0; row < given.size(); ++row) {
            REQUIRE(given[row] >= 0);
            CHECK(given[row] + 1 == example.columns[row]);
            cost += example.cost[row][static_cast<std::size_t>(given[row])];
        }
        CHECK(cost == example.least);
    }
}

TEST_CASE("a source hands out as many serves as it has, to as many as can be served, at the least cost") {
    // Two serves of the first and one of the second for four: three can be served, and the last would cost most.
    const std::vector<int> serves{2, 1};
    const std::vector<flow::Suits> suits{{0, 0, 5}, {0, 1, 1}, {0, 2, -3}, {1, 0, 0}, {1, 3, 9}};
    const auto given = flow::hand_out(serves, 4, suits);
    CHECK(given == std::vector<int>{1, 0, 0, -1});
    CHECK(flow::hand_out({}, 2, {}) == std::vector<int>{-1, -1});
}

// W. L. Winston, Operations Research, the Powerco transportation example: supplies 35, 50, 40; demands 45, 20, 30, 30;
// each unit of demand is one who gets a serve. The data were seen in copies; the optimum of 1020 was recomputed.
TEST_CASE("handing out gives the optimum of Winston's Powerco transport, unit by unit") {
    const std::vector<std::vector<std::int64_t>> cost{{8, 6, 10, 9}, {9, 12, 13, 7}, {14, 9, 16, 5}};
    const std::vector<int> supply{35, 50, 40};
    const std::vector<int> demand{45, 20, 30, 30};
    std::vector<std::size_t> city;
    for (std::size_t j = 0; j < demand.size(); ++j) city.insert(city.end(), static_cast<std::size_t>(demand[j]), j);
    std::vector<flow::Suits> suits;
    for (std::size_t i = 0; i < supply.size(); ++i) {
        for (std::size_t s = 0; s < city.size(); ++s)
            suits.push_back({static_cast<int>(i), static_cast<int>(s), cost[i][city[s]]});
    }
    std::int64_t total = 0;
    std::vector<int> used(supply.size(), 0);
    const auto given = flow::hand_out(supply, city.size(), suits);
    for (std::size_t s = 0; s < city.size(); ++s) {
        REQUIRE(given[s] >= 0);
        total += cost[static_cast<std::size_t>(given[s])][city[s]];
        ++used[static_cast<std::size_t>(given[s])];
    }
    CHECK(total == 1020);
    CHECK(used == supply);
}

TEST_CASE("handing out where nothing suits, where nothing is left, and where slots share a source") {
    // A source without serves, a slot that nothing suits, and two slots for one serve.
    const std::vector<int> serves{0, 1, 2};
    const std::vector<flow::Suits> suits{{0, 0, -9}, {1, 0, 4}, {1, 1, 3}, {2, 3, 1}};
    CHECK(flow::hand_out(serves, 4, suits) == std::vector<int>{-1, 1, -1, 2});
    CHECK(flow::hand_out(std::vector<int>{0}, 1, std::vector<flow::Suits>{{0, 0, 1}}) == std::vector<int>{-1});
}
