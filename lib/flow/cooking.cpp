#include "flow/cooking.hpp"

#include <algorithm>
#include <map>
#include <optional>

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

/// The serves apart of those who need them, as swaps of their share.
std::vector<LineSwap> separate_serves(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned,
                                      std::span<const LineSwap> swaps, const Holds* holds) {
    const cookbook::Dish& dish = kitchen.cookbook()[planned.dish];
    std::vector<LineSwap> result;
    if (dish.separate.empty()) return result;
    std::optional<Holds> own;
    for (const std::size_t eater : kitchen::eaters(kitchen, planned.day, planned.meal)) {
        const kitchen::Person& person = kitchen.household.people[eater];
        if (person.avoids.empty()) continue;
        if (holds == nullptr) holds = &own.emplace(held_allergens(kitchen));
        for (const auto& [of, use] : serve_for(dish, person.avoids, swaps, *holds).swaps())
            result.push_back({of, {{use, graph::one}}, person.serve_thousandths});
    }
    return result;
}

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
    auto all_swaps = separate_serves(kitchen, planned, swaps, holds);
    all_swaps.insert(all_swaps.end(), swaps.begin(), swaps.end());
    const std::int64_t whole = std::int64_t{1000} * dish.serves;
    Sums sums;
    for (const cookbook::DishIngredient& line : dish.ingredients) {
        if (line.optional) continue;
        std::int64_t remaining = serves.cooked;
        for (const LineSwap& swap : all_swaps) {
            if (swap.of != line.ingredient) continue;
            const auto share = swap.serves_thousandths < 0 ? remaining : std::min(remaining, swap.serves_thousandths);
            remaining -= share;
            const auto amount = basics::fits(basics::scale(line.amount.value(), share, whole));
            for (const auto& [use, ratio] : swap.use) {
                sums[use] += in_place_of(kitchen.catalogue(), line.ingredient, amount, use, ratio);
            }
        }
        sums[line.ingredient] += basics::fits(basics::scale(line.amount.value(), remaining, whole));
    }
    std::erase_if(sums, [&](const auto& sum) { return kitchen.taken_as_there(sum.first); });
    cooking.needs = listed(sums);
    Sums made;
    if (dish.leaves) made[*dish.leaves] += cooking.left_thousandths;
    for (const cookbook::ByProduct& by_product : dish.gives) {
        made[by_product.ingredient] += basics::fits(basics::scale(by_product.amount.value(), serves.cooked, whole));
    }
    cooking.makes = listed(made);
    return cooking;
}

}  // namespace samebase::flow
