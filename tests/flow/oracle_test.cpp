// best() against two oracles that share no code with it: GLPK on random weeks, and trying everything on all tiny ones.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>

#include "flow/component.hpp"
#include "flow/detail/search.hpp"
#include "support/brute_oracle.hpp"
#include "support/glpk_oracle.hpp"
#include "support/random_component.hpp"

using namespace samebase;
using namespace samebase::flow;
using tests::Figures;

namespace {

struct Counts {
    int compared = 0;
    int fixed = 0;
    int by_rule = 0;
    int proved = 0;
    int unmet = 0;
    int programmes = 0;  ///< solved whether or not that was needed

    void add(const Component& component, const Outcome& outcome) {
        ++compared;
        const bool decided = !detail::nothing_to_decide(component);
        if (!decided) ++fixed;
        if (decided && outcome.decisions == detail::by_rule(component)) ++by_rule;
        if (outcome.proved) ++proved;
        if (std::any_of(outcome.unmet.begin(), outcome.unmet.end(), [](auto amount) { return amount > 0; })) ++unmet;
    }
    void print(const char* what) const {
        std::cout << what << ": " << compared << " compared; " << fixed << " with nothing to decide, " << by_rule
                  << " as the rule has them, " << compared - fixed - by_rule << " better than that; " << proved
                  << " proved, " << unmet << " with something unmet; " << programmes
                  << " solved by programme as well\n";
    }
};

/// best() asks the programme last, but what it decides must be as good where the rule or trying was enough.
void check_programme(const Component& component, const Value& value, Counts& counts) {
    if (detail::nothing_to_decide(component)) return;
    const auto programmed = detail::by_programme(component);
    REQUIRE(programmed);
    REQUIRE(programmed->proved);
    const Value by_programme = carry_out(component, programmed->decisions).value(component);
    INFO("programme: " << tests::to_text(by_programme));
    REQUIRE(by_programme == value);
    ++counts.programmes;
}

/// Amounts must be equal. Where figures are even no price is rounded, and costs must be equal too; where they are
/// uneven every unit's line is rounded, by half a minor unit at most: allowed is one for every unit, and none for what
/// is bought whole.
void compare_with_glpk(std::uint64_t number, Figures figures, Counts& counts) {
    const Component component = tests::random_component(number, figures);
    INFO("component " << number << ": " << tests::to_text(component));
    const Outcome outcome = best(component);
    const Value value = outcome.value(component);
    const auto oracle = tests::best_by_glpk(component);
    INFO("ours: " << tests::to_text(value));
    INFO("GLPK: " << tests::to_text(Value{oracle.unmet, {std::llround(oracle.cost)}}));
    REQUIRE(check(component, outcome) == std::nullopt);
    REQUIRE(value.unmet == oracle.unmet);
    const double apart = std::abs(static_cast<double>(value.cost.minor) - oracle.cost);
    REQUIRE(apart < (figures == Figures::even ? 0.5 : 0.05 + static_cast<double>(outcome.fates.size())));
    if (figures == Figures::even && number % 2 == 0) check_programme(component, value, counts);
    counts.add(component, outcome);
}

/// Prices are 12 times something and amounts up to 3, so that no share is rounded.
Unit tiny(std::int64_t amount, std::int64_t price, Slot first, Slot last) {
    return {.amount = amount, .price = {12 * price}, .first = first, .last = last};
}

Unit opened(Unit unit, int days) {
    unit.opened_days = days;
    return unit;
}

Unit frozen(Unit unit, int days, int keeps, bool cold_water) {
    unit.thaw_days = days;
    unit.thawed_days = keeps;
    unit.cold_water = cold_water;
    return unit;
}

/// One of every sort of unit.
const std::vector<Unit> sorts{
    tiny(1, 1, 0, dinner_of(0)),
    tiny(2, 5, 0, dinner_of(1)),
    tiny(2, 2, lunch_of(1), never),
    opened(tiny(2, 3, 0, dinner_of(1)), 0),
    opened(tiny(3, 4, 0, never), 1),
    frozen(tiny(2, 3, 0, never), 1, 0, true),
    frozen(tiny(3, 6, 0, never), 1, 1, false),
};

const std::vector<std::optional<Offer>> offers{
    std::nullopt,
    Offer{.pack = 1, .price = {60}, .slots = {shopping_of(0), shopping_of(1)}, .keeps_days = 0},
    Offer{.pack = 2, .price = {36}, .slots = {shopping_of(0)}, .keeps_days = 1},
    Offer{.pack = 2, .price = {48}, .slots = {shopping_of(0), shopping_of(2)}},
    Offer{.pack = 3, .price = {72}, .slots = {shopping_of(0)}, .opened_days = 0},
};

/// Up to two (three where `most` is 3) wants at the meals of three days.
std::vector<std::vector<Want>> all_wants(int most) {
    const Slot slots[] = {lunch_of(0), dinner_of(0), lunch_of(1), dinner_of(1), dinner_of(2)};
    std::vector<std::vector<Want>> result;
    const auto grow = [&](const auto& self, std::vector<Want> wants, std::size_t from) -> void {
        if (!wants.empty()) result.push_back(wants);
        if (static_cast<int>(wants.size()) == most) return;
        for (std::size_t i = from; i < std::size(slots); ++i) {
            for (std::int64_t amount = 1; amount <= 2; ++amount) {
                auto more = wants;
                more.push_back({slots[i], amount});
                self(self, more, i + 1);
            }
        }
    };
    grow(grow, {}, 0);
    return result;
}

void compare_with_all(const Component& component, Counts& counts) {
    const Outcome outcome = best(component);
    const Value value = outcome.value(component);
    const Value oracle = tests::best_by_trying_all(component);
    counts.add(component, outcome);
    if (counts.compared % 16 == 0) check_programme(component, value, counts);
    if (value == oracle && check(component, outcome) == std::nullopt && outcome.proved) return;
    INFO(tests::to_text(component));
    INFO("ours: " << tests::to_text(value));
    INFO("all tried: " << tests::to_text(oracle));
    REQUIRE(check(component, outcome) == std::nullopt);
    REQUIRE(value == oracle);
    REQUIRE(outcome.proved);
}

/// Units at these positions of `sorts`.
Component component_of(std::initializer_list<std::size_t> at, const std::vector<Want>& wants) {
    Component component{.ingredient = {}, .units = {}, .wants = wants, .offer = {}, .unit_price = {}};
    component.days = 3;
    for (const std::size_t i : at) {
        component.units.push_back(sorts[i]);
        component.units.back().lot = static_cast<stock::LotNumber>(component.units.size());
    }
    return component;
}

}  // namespace

TEST_CASE("GLPK finds nothing better and nothing worse on random weeks whose prices need no rounding") {
    Counts counts;
    for (std::uint64_t number = 0; number < 4000; ++number) compare_with_glpk(number, Figures::even, counts);
    counts.print("GLPK, even figures");
}

TEST_CASE("GLPK finds the same amounts and, but for rounding, costs on random weeks with any prices") {
    Counts counts;
    for (std::uint64_t number = 0; number < 2000; ++number)
        compare_with_glpk(1'000'000 + number, Figures::uneven, counts);
    counts.print("GLPK, uneven figures");
}

TEST_CASE("trying everything finds nothing better: all pairs of sorts of units, all pairs of wants, all offers") {
    Counts counts;
    for (const auto& wants : all_wants(2)) {
        for (const auto& offer : offers) {
            Component none = component_of({}, wants);
            none.offer = offer;
            compare_with_all(none, counts);
            for (std::size_t i = 0; i < sorts.size(); ++i) {
                for (std::size_t j = i; j < sorts.size(); ++j) {
                    Component component = component_of({i, j}, wants);
                    component.offer = offer;
                    compare_with_all(component, counts);
                }
            }
        }
    }
    counts.print("everything tried, two units");
}

TEST_CASE("trying everything finds nothing better: all triples of sorts of units and of wants, nothing on offer") {
    Counts counts;
    const auto every = all_wants(3);
    for (std::size_t w = 0; w < every.size(); ++w) {
        for (std::size_t i = 0; i < sorts.size(); ++i) {
            for (std::size_t j = i; j < sorts.size(); ++j) {
                for (std::size_t k = j; k < sorts.size(); ++k)
                    compare_with_all(component_of({i, j, k}, every[w]), counts);
            }
        }
    }
    counts.print("everything tried, three units");
}
