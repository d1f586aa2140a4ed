// Laws of the balance on the demo kitchen, under random edits of its plan.
#include <rapidcheck/catch.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <iostream>
#include <memory>

#include "flow/balance.hpp"
#include "support/demo.hpp"
#include "support/random_component.hpp"

using namespace samebase;
using namespace samebase::flow;
using kitchen::Meal;
using tests::demo;
using tests::demo_day;
using tests::Random;

namespace {

constexpr int days = 9;

const Balancer& balancer() {
    static const Balancer one(demo(), {demo_day, demo_day + basics::days{days - 1}});
    return one;
}

/// The balance of the plan as it is shipped.
const Balance& as_planned() {
    static const Balance one = balancer().balance(balancer().planned());
    return one;
}

bool same(const Outcome& a, const Outcome& b) {
    const auto fate = [](const Fate& x, const Fate& y) {
        return x.unit == y.unit && x.from == y.from && x.to == y.to && x.bought == y.bought && x.used == y.used &&
               x.tossed == y.tossed;
    };
    return a.decisions == b.decisions &&
           std::equal(a.fates.begin(), a.fates.end(), b.fates.begin(), b.fates.end(), fate) && a.uses == b.uses &&
           a.unmet == b.unmet && a.spent == b.spent && a.tossed == b.tossed && a.kept == b.kept && a.proved == b.proved;
}

bool same(const Balance& a, const Balance& b) {
    const auto part = [](const auto& x, const auto& y) {
        return x->component == y->component && x->reasons == y->reasons && same(x->outcome, y->outcome);
    };
    return a.span == b.span && a.cookings == b.cookings && a.totals == b.totals &&
           std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(), part);
}

Cooking any_meal(Random& random) {
    const auto count = static_cast<int>(demo().cookbook().dishes().size());
    kitchen::Planned planned;
    planned.day = demo_day + basics::days{random.within(0, days)};
    planned.meal = random.percent(25) ? Meal::lunch : Meal::dinner;
    planned.dish = cookbook::DishId{static_cast<std::uint32_t>(random.within(0, count - 1))};
    planned.ready_meal = random.percent(15);
    if (random.percent(50)) planned.serves = random.within(1, 9);
    if (random.percent(30)) planned.left = random.within(1, 5);
    return cook(demo(), planned);
}

/// A meal more, less, on another day, or of another dish.
void edit(std::vector<Cooking>& meals, Random& random) {
    const int what = random.within(0, 3);
    const auto at = meals.empty() ? 0 : static_cast<std::size_t>(random.within(0, static_cast<int>(meals.size()) - 1));
    if (meals.empty() || what == 0) {
        meals.push_back(any_meal(random));
    } else if (what == 1) {
        meals.erase(meals.begin() + static_cast<std::ptrdiff_t>(at));
    } else if (what == 2) {
        const auto other = static_cast<std::size_t>(random.within(0, static_cast<int>(meals.size()) - 1));
        std::swap(meals[at].day, meals[other].day);
    } else {
        meals[at] = any_meal(random);
    }
    std::stable_sort(meals.begin(), meals.end(), [](const Cooking& a, const Cooking& b) {
        return std::pair{a.day, a.meal} < std::pair{b.day, b.meal};
    });
}

void check_sums(const Balance& balance) {
    Totals totals;
    for (std::size_t i = 0; i < balance.parts.size(); ++i) {
        const Part& part = *balance.parts[i];
        if (i > 0) RC_ASSERT((balance.parts[i - 1]->component.ingredient < part.component.ingredient));
        RC_ASSERT(part.reasons.size() == part.component.wants.size());
        RC_ASSERT(check(part.component, part.outcome).value_or("sound") == "sound");
        totals.unmet += unmet_price(part.component, part.outcome);
        totals.spent += part.outcome.spent;
        totals.tossed += part.outcome.tossed;
        totals.kept += part.outcome.kept;
    }
    RC_ASSERT((totals == balance.totals));
}

}  // namespace

TEST_CASE("a balance after an edit is the balance from scratch, there and back again") {
    rc::prop("edits", [] {
        Random random(*rc::gen::inRange<std::uint64_t>(0, 1'000'000'000));
        Balance now = as_planned();
        const int edits = random.within(1, 3);
        Memory memory;
        for (int i = 0; i < edits; ++i) {
            auto meals = now.cookings;
            edit(meals, random);
            now = balancer().rebalance(now, meals, {}, &memory);
        }
        check_sums(now);
        RC_ASSERT(same(now, balancer().balance(now.cookings)));
        RC_ASSERT(same(balancer().rebalance(now, as_planned().cookings, {}, &memory), as_planned()));
    });
}

TEST_CASE("two days exchanged and exchanged again are as they were") {
    const auto& meals = as_planned().cookings;
    int pairs = 0;
    for (std::size_t i = 0; i < meals.size(); ++i) {
        for (std::size_t j = i + 1; j < meals.size(); ++j) {
            auto swapped = meals;
            std::swap(swapped[i].day, swapped[j].day);
            std::stable_sort(swapped.begin(), swapped.end(), [](const Cooking& a, const Cooking& b) {
                return std::pair{a.day, a.meal} < std::pair{b.day, b.meal};
            });
            const Balance there = balancer().rebalance(as_planned(), swapped);
            const Balance back = balancer().rebalance(there, meals);
            REQUIRE(same(back, as_planned()));
            ++pairs;
        }
    }
    std::cout << "swaps there and back on the demo kitchen: " << pairs << '\n';
    CHECK(pairs > 20);
}

TEST_CASE("what is bought at once changes only what is named") {
    rc::prop("at once", [] {
        Random random(*rc::gen::inRange<std::uint64_t>(0, 1'000'000'000));
        const auto count = static_cast<int>(demo().catalogue().ingredients().size());
        std::vector<catalogue::IngredientId> at_once;
        for (int i = random.within(1, 4); i > 0; --i) {
            at_once.push_back({static_cast<std::uint32_t>(random.within(0, count - 1))});
        }
        auto meals = as_planned().cookings;
        edit(meals, random);
        const Balance now = balancer().rebalance(as_planned(), meals, at_once);
        check_sums(now);
        RC_ASSERT(same(now, balancer().balance(meals, at_once)));
    });
}
