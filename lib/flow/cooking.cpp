#include "flow/cooking.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "basics/exact.hpp"

namespace samebase::flow {

namespace {

using catalogue::IngredientId;

/// Amounts by ingredient.
using Sums = std::map<IngredientId, std::int64_t>;

std::vector<Needed> listed(const Sums& sums) {
    std::vector<Needed> result;
    for (const auto& [ingredient, amount] : sums) {
        if (amount > 0) result.push_back({ingredient, amount});
    }
    return result;
}

struct Serves {
    std::int64_t eaten = 0;
    std::int64_t cooked = 0;
};

Serves serves_of(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned) {
    Serves serves;
    serves.eaten = planned.serves ? std::int64_t{1000} * *planned.serves
                                  : kitchen::serves_wanted(kitchen, planned.day, planned.meal);
    serves.cooked = serves.eaten + std::int64_t{1000} * planned.left;
    return serves;
}

/// A serve apart: something else in place of a line, for one eater.
struct Apart {
    IngredientId of;
    IngredientId use;
    std::int64_t serves_thousandths = 0;
};

std::vector<Apart> serves_apart(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned,
                                std::span<const LineSwap> swaps, const Holds* holds) {
    const cookbook::Dish& dish = kitchen.cookbook()[planned.dish];
    std::vector<Apart> result;
    if (dish.separate.empty()) return result;
    std::optional<Holds> own;
    for (const std::size_t eater : kitchen::eaters(kitchen, planned.day, planned.meal)) {
        const kitchen::Person& person = kitchen.household.people[eater];
        if (person.avoids.empty()) continue;
        if (holds == nullptr) holds = &own.emplace(held_allergens(kitchen));
        for (const auto& [of, use] : serve_for(dish, person.avoids, swaps, *holds).swaps())
            result.push_back({of, use, person.serve_thousandths});
    }
    return result;
}

/// What a dish needs, line by line.
class Needs {
  public:
    Needs(const kitchen::Kitchen& kitchen, const cookbook::Dish& dish, std::int64_t cooked)
        : kitchen_(kitchen), whole_(std::int64_t{1000} * dish.serves), cooked_(cooked) {}

    void add(const cookbook::DishIngredient& line, std::span<const Apart> apart, std::span<const LineSwap> swaps) {
        std::int64_t remaining = cooked_;
        for (const Apart& serve : apart) {
            if (serve.of != line.ingredient) continue;
            const auto share = std::min(remaining, serve.serves_thousandths);
            remaining -= share;
            sums_[serve.use] += in_place_of(kitchen_.catalogue(), line.ingredient, of(line.amount.value(), share),
                                            serve.use, graph::one);
        }
        const auto swap =
            std::find_if(swaps.begin(), swaps.end(), [&](const LineSwap& s) { return s.of == line.ingredient; });
        if (swap == swaps.end()) {
            sums_[line.ingredient] += of(line.amount.value(), remaining);
        } else if (done_.insert(line.ingredient).second) {
            for (const auto& [use, amount] : swap->use)
                sums_[use] += basics::fits(basics::scale(amount, remaining, swap->serves_thousandths));
        }
    }

    [[nodiscard]] std::vector<Needed> counted() const {
        Sums sums = sums_;
        std::erase_if(sums, [&](const auto& sum) { return kitchen_.taken_as_there(sum.first); });
        return listed(sums);
    }

  private:
    [[nodiscard]] std::int64_t of(std::int64_t amount, std::int64_t serves) const {
        return basics::fits(basics::scale(amount, serves, whole_));
    }

    const kitchen::Kitchen& kitchen_;
    std::int64_t whole_;
    std::int64_t cooked_;
    Sums sums_;
    std::set<IngredientId> done_;  ///< swapped: a swap is for all lines of an ingredient
};

void warm(const cookbook::Dish& dish, Cooking& cooking) {
    if (!dish.leaves) return;
    cooking.needs.push_back({*dish.leaves, cooking.serves_thousandths});
}

}  // namespace

std::int64_t in_place_of(const catalogue::Catalogue& catalogue, IngredientId of, std::int64_t amount, IngredientId use,
                         graph::Ppm ratio) {
    const auto mass = catalogue::weight({catalogue[of].dimension, amount}, catalogue[of]);
    if (mass) {
        const auto used = basics::scale(mass->value, ratio, graph::one);
        if (used) {
            const auto own =
                measure::converted(measure::Mass{*used}, catalogue[use].dimension, catalogue[use].conversion);
            if (own) return own->value();
        }
    }
    return basics::fits(basics::scale(amount, ratio, graph::one));
}

std::int64_t of_the_dish(const cookbook::Dish& dish, IngredientId ingredient, std::int64_t serves_thousandths) {
    const auto sum = [&](bool optional) {
        std::int64_t amount = 0;
        for (const cookbook::DishIngredient& line : dish.ingredients) {
            if (line.optional != optional || line.ingredient != ingredient) continue;
            amount +=
                basics::fits(basics::scale(line.amount.value(), serves_thousandths, std::int64_t{1000} * dish.serves));
        }
        return amount;
    };
    const std::int64_t needed = sum(false);
    return needed > 0 ? needed : sum(true);
}

LineSwap swap_of(const catalogue::Catalogue& catalogue, const cookbook::Dish& dish, IngredientId of,
                 std::span<const std::pair<IngredientId, graph::Ppm>> use, std::int64_t serves_thousandths) {
    LineSwap swap{of, {}, serves_thousandths};
    const auto amount = of_the_dish(dish, of, serves_thousandths);
    for (const auto& [ingredient, ratio] : use)
        swap.use.emplace_back(ingredient, in_place_of(catalogue, of, amount, ingredient, ratio));
    return swap;
}

std::vector<LineSwap> as_swaps(std::span<const StandInUse> stand_ins, std::span<const Scaled> scaled,
                               std::int64_t serves_thousandths) {
    std::vector<LineSwap> swaps;
    for (const StandInUse& stand_in : stand_ins) {
        LineSwap& swap = swaps.emplace_back(LineSwap{stand_in.replaced, {}, serves_thousandths});
        for (const auto& [use, amount] : stand_in.use) swap.use.emplace_back(use, amount.value());
    }
    for (const Scaled& one : scaled)
        swaps.push_back({one.ingredient, {{one.ingredient, one.amount.value()}}, serves_thousandths});
    return swaps;
}

Cooking cook(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned, std::span<const LineSwap> swaps,
             const Holds* holds) {
    const cookbook::Dish& dish = kitchen.cookbook()[planned.dish];
    const Serves serves = serves_of(kitchen, planned);
    Cooking cooking{.day = planned.day,
                    .meal = planned.meal,
                    .dish = planned.dish,
                    .ready_meal = planned.ready_meal,
                    .serves_thousandths = serves.cooked,
                    .left_thousandths = serves.cooked - serves.eaten,
                    .needs = {},
                    .makes = {}};
    if (serves.cooked == 0) return cooking;
    if (planned.ready_meal) {
        warm(dish, cooking);
        return cooking;
    }
    const auto for_all = kitchen::both(swaps, planned.swaps);
    const auto apart = serves_apart(kitchen, planned, for_all, holds);
    Needs needs(kitchen, dish, serves.cooked);
    for (const cookbook::DishIngredient& line : dish.ingredients) {
        if (!line.optional) needs.add(line, apart, for_all);
    }
    cooking.needs = needs.counted();
    const std::int64_t whole = std::int64_t{1000} * dish.serves;
    Sums made;
    if (dish.leaves) made[*dish.leaves] += cooking.left_thousandths;
    for (const cookbook::ByProduct& by_product : dish.gives) {
        made[by_product.ingredient] += basics::fits(basics::scale(by_product.amount.value(), serves.cooked, whole));
    }
    cooking.makes = listed(made);
    return cooking;
}

}  // namespace samebase::flow
