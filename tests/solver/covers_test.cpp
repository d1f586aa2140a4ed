// Covers: every choice in whole values keeps them, and the values that asked for them do not.
#include "solver/covers.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace samebase::solver;

namespace {

double sum(const Row& row, const std::vector<double>& values) {
    double total = 0;
    for (const auto& [column, factor] : row.terms) total += factor * values[static_cast<std::size_t>(column)];
    return total;
}

/// Columns of the options first, then that of the units.
struct Case {
    RoomInUnits row;
    std::vector<double> values;
};

Case random_case(std::mt19937& random) {
    const auto below = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    Case result;
    result.row.room = below(3) == 0 ? 0 : below(40);
    result.row.unit = 5 + below(40);
    int column = 0;
    const int groups = 1 + below(4);
    for (int g = 0; g < groups; ++g) {
        auto& group = result.row.groups.emplace_back();
        const int options = 1 + below(3);
        double left = 1;
        for (int o = 0; o < options; ++o) {
            group.push_back({column++, 1 + below(50)});
            const double part = below(3) == 0 ? left : left * below(100) / 100.0;
            result.values.push_back(part);
            left -= part;
        }
    }
    result.row.units = column;
    // The relaxation's units: just enough for the fractions.
    double wanted = -static_cast<double>(result.row.room);
    for (const auto& group : result.row.groups) {
        for (const auto& want : group)
            wanted += result.values[static_cast<std::size_t>(want.column)] * static_cast<double>(want.amount);
    }
    result.values.push_back(std::max(0.0, wanted / static_cast<double>(result.row.unit)));
    return result;
}

/// Every choice of at most one option in each group, with the fewest units that it needs.
template <class Visit>
void each_choice(const RoomInUnits& row, const Visit& visit) {
    std::vector<std::size_t> chosen(row.groups.size(), 0);  // 0: none
    while (true) {
        std::vector<double> values(static_cast<std::size_t>(row.units) + 1, 0);
        std::int64_t wanted = -row.room;
        for (std::size_t g = 0; g < chosen.size(); ++g) {
            if (chosen[g] == 0) continue;
            const auto& want = row.groups[g][chosen[g] - 1];
            values[static_cast<std::size_t>(want.column)] = 1;
            wanted += want.amount;
        }
        const std::int64_t units = wanted <= 0 ? 0 : (wanted + row.unit - 1) / row.unit;
        values.back() = static_cast<double>(units);
        visit(values);
        std::size_t g = 0;
        while (g < chosen.size() && ++chosen[g] > row.groups[g].size()) chosen[g++] = 0;
        if (g == chosen.size()) return;
    }
}

}  // namespace

TEST_CASE("a cover holds for every choice, and not for the values that it was found for") {
    std::mt19937 random(7);
    int found = 0;
    for (int number = 0; number < 3000; ++number) {
        const Case one = random_case(random);
        for (const Row& cut : covers({one.row}, one.values)) {
            ++found;
            INFO("case " << number);
            CHECK(sum(cut, one.values) > cut.upper);
            bool kept = true;
            bool met = false;
            each_choice(one.row, [&](const std::vector<double>& values) {
                kept = kept && sum(cut, values) <= cut.upper + 1e-9;
                met = met || sum(cut, values) >= cut.upper - 1e-9;
            });
            CHECK(kept);
            CHECK(met);
        }
    }
    CHECK(found > 500);
}

TEST_CASE("the covers of a textbook's knapsack") {
    // 11 a + 6 b + 6 c + 5 d + 5 e + 4 f + g <= 19 has the covers a + b + c <= 2 and c + d + e + f <= 3, among others
    // (L. A. Wolsey, Integer Programming, 1998, on cover inequalities; from memory).
    RoomInUnits row{{}, 19, 1000, 7};
    const std::vector<std::int64_t> wants{11, 6, 6, 5, 5, 4, 1};
    for (int i = 0; i < 7; ++i) row.groups.push_back({{i, wants[static_cast<std::size_t>(i)]}});
    const auto columns = [](const Row& cut) {
        std::vector<int> result;
        for (const auto& [column, factor] : cut.terms) {
            CHECK(std::abs(factor) == 1);
            result.push_back(column);
        }
        std::sort(result.begin(), result.end());
        return result;
    };
    const auto abc = covers({row}, {1, 1, 1.0 / 3, 0, 0, 0, 0, 0});
    REQUIRE(abc.size() == 1);
    CHECK(columns(abc.front()) == std::vector<int>{0, 1, 2, 7});
    CHECK(abc.front().upper == 2);
    const auto cdef = covers({row}, {0, 0, 1, 1, 1, 0.75, 0, 0});
    REQUIRE(cdef.size() == 1);
    CHECK(columns(cdef.front()) == std::vector<int>{2, 3, 4, 5, 7});
    CHECK(cdef.front().upper == 3);
    CHECK(covers({row}, {1, 1, 0, 0, 0, 0, 1, 0}).empty());
}
