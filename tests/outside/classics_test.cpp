// Common practice: meatballs, meat loaf, rissoles, tacos and meat pie are one mixture in five shapes, mince, onion and
// crumb. No published table says so; cooks do.
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <vector>

#include "graph/likeness.hpp"
#include "support/shipped.hpp"

using namespace samebase;

namespace {

graph::Ppm median(std::vector<graph::Ppm> values) {
    REQUIRE(!values.empty());
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

}  // namespace

TEST_CASE("the five classics share a base, and are liker to each other than to dinners off it") {
    const auto& knowledge = tests::shipped();
    const auto base = knowledge.cookbook.base("mince-onion-crumb");
    REQUIRE(base);
    std::vector<cookbook::DishId> classics;
    for (const char* id : {"meatballs", "meat-loaf", "rissoles", "tacos", "meat-pie"}) {
        INFO(id);
        const auto dish = knowledge.cookbook.dish(id);
        REQUIRE(dish);
        CHECK(knowledge.cookbook[*dish].base == base);
        classics.push_back(*dish);
    }
    std::vector<graph::Ppm> among;
    std::vector<graph::Ppm> off_base;
    for (const auto a : classics) {
        for (const auto b : classics) {
            if (a < b) {
                among.push_back(
                    graph::likeness(knowledge.profiles[a.index()], knowledge.profiles[b.index()], knowledge.graph));
            }
        }
        for (std::uint32_t other = 0; other < knowledge.cookbook.dishes().size(); ++other) {
            const cookbook::Dish& dish = knowledge.cookbook.dishes()[other];
            if (!dish.dinner || dish.base == base) continue;
            off_base.push_back(
                graph::likeness(knowledge.profiles[a.index()], knowledge.profiles[other], knowledge.graph));
        }
    }
    INFO("median likeness among the classics " << median(among) << " ppm, to dinners off the base "
                                               << median(off_base));
    CHECK(median(among) > median(off_base));
}
