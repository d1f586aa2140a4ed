#include "kitchen/cooking.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "basics/exact.hpp"
#include "kitchen/detail/whole.hpp"

namespace samebase::kitchen {

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

Serves serves_of(const Kitchen& kitchen, const Planned& planned) {
    Serves serves;
    serves.eaten =
        planned.serves ? std::int64_t{1000} * *planned.serves : serves_wanted(kitchen, planned.day, planned.meal);
    serves.cooked = serves.eaten + std::int64_t{1000} * planned.left;
    return serves;
}

std::int64_t for_serves(const cookbook::Dish& dish, const cookbook::DishIngredient& line, std::int64_t serves) {
    return basics::fits(basics::scale(line.amount.value(), serves, std::int64_t{1000} * dish.serves));
}

/// Adds what those need who avoid what the dish holds, each in their own share of the lines.
void add_serves_apart(const Kitchen& kitchen, const Batch& batch, const Holds* holds, Takes& takes) {
    const cookbook::Dish& dish = kitchen.cookbook()[batch.dish];
    if (dish.separate.empty()) return;
    std::optional<Holds> own;
    std::vector<std::int64_t> remaining(dish.ingredients.size(), batch.serves_thousandths);
    for (const std::size_t eater : eaters(kitchen, batch.day, batch.meal)) {
        const Person& person = kitchen.household.people[eater];
        if (person.avoids.empty()) continue;
        if (holds == nullptr) holds = &own.emplace(held_allergens(kitchen));
        for (const auto& [of, use] : serve_for(dish, person.avoids, batch.swaps, *holds).swaps()) {
            for (LineTake& line : takes.lines) {
                const cookbook::DishIngredient& written = dish.ingredients[line.line];
                if (written.ingredient != of) continue;
                const auto share = std::min(remaining[line.line], person.serve_thousandths);
                remaining[line.line] -= share;
                const auto replaced = for_serves(dish, written, share);
                line.apart.push_back({eater, {use, in_place_of(kitchen.catalogue(), of, replaced, use, graph::one)}});
            }
        }
    }
}

/// What goes into the common pot for a line; `done` holds the ingredients whose swap is in it already.
void add_common(const Kitchen& kitchen, const Batch& batch, std::set<IngredientId>& done, LineTake& take) {
    const cookbook::Dish& dish = kitchen.cookbook()[batch.dish];
    const cookbook::DishIngredient& line = dish.ingredients[take.line];
    std::int64_t serves = batch.serves_thousandths;
    for (const ApartTake& apart : take.apart)
        serves -= std::min(serves, kitchen.household.people[apart.person].serve_thousandths);
    const auto swap = std::find_if(batch.swaps.begin(), batch.swaps.end(),
                                   [&](const LineSwap& s) { return s.of == line.ingredient; });
    if (swap == batch.swaps.end()) {
        take.takes.push_back({line.ingredient, for_serves(dish, line, serves)});
        return;
    }
    take.swapped = true;
    if (!done.insert(line.ingredient).second) return;
    for (const auto& [use, amount] : swap->use)
        take.takes.push_back({use, basics::fits(basics::scale(amount, serves, swap->serves_thousandths))});
}

/// Rounds to whole things; the serves more that a joint or a bird gives.
std::int64_t make_whole(const Kitchen& kitchen, const Batch& batch, LineTake& take) {
    const cookbook::Dish& dish = kitchen.cookbook()[batch.dish];
    const cookbook::DishIngredient& line = dish.ingredients[take.line];
    std::int64_t more = 0;
    for (Needed& need : take.takes) {
        const std::int64_t wanted = need.amount;
        // An amount that somebody said stands: only pieces are whole.
        need.amount = take.swapped ? detail::whole_pieces(kitchen.catalogue()[need.ingredient], wanted)
                                   : detail::whole(kitchen, line, wanted);
        const bool bigger = detail::cooked_whole(kitchen.catalogue()[need.ingredient]) && wanted > 0;
        if (!bigger || need.amount <= wanted || !dish.leaves) continue;
        constexpr std::int64_t half_a_serve = 500;
        const auto serves = basics::fits(basics::scale(batch.serves_thousandths, need.amount - wanted, wanted));
        more = std::max(more, serves / half_a_serve * half_a_serve);
    }
    for (ApartTake& apart : take.apart)
        apart.take.amount = detail::whole_pieces(kitchen.catalogue()[apart.take.ingredient], apart.take.amount);
    return more;
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

Takes takes(const Kitchen& kitchen, const Batch& batch, const Holds* holds) {
    const cookbook::Dish& dish = kitchen.cookbook()[batch.dish];
    Takes takes;
    for (std::size_t line = 0; line < dish.ingredients.size(); ++line) takes.lines.push_back({line, false, {}, {}});
    add_serves_apart(kitchen, batch, holds, takes);
    std::set<IngredientId> done;
    for (LineTake& line : takes.lines) {
        add_common(kitchen, batch, done, line);
        takes.more_thousandths = std::max(takes.more_thousandths, make_whole(kitchen, batch, line));
    }
    return takes;
}

std::vector<Needed> sums(const Kitchen& kitchen, cookbook::DishId dish, const Takes& takes, Lines which) {
    Sums sums;
    for (const LineTake& line : takes.lines) {
        if (kitchen.cookbook()[dish].ingredients[line.line].optional != (which == Lines::optional)) continue;
        for (const Needed& need : line.takes) sums[need.ingredient] += need.amount;
        for (const ApartTake& apart : line.apart) sums[apart.take.ingredient] += apart.take.amount;
    }
    return listed(sums);
}

Cooking cook(const Kitchen& kitchen, const Planned& planned, std::span<const LineSwap> swaps, const Holds* holds) {
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
    const Batch batch{planned.day, planned.meal, planned.dish, serves.cooked, both(swaps, planned.swaps)};
    const Takes taken = takes(kitchen, batch, holds);
    cooking.needs = sums(kitchen, planned.dish, taken, Lines::required);
    std::erase_if(cooking.needs, [&](const Needed& need) { return kitchen.taken_as_there(need.ingredient); });
    cooking.serves_thousandths += taken.more_thousandths;
    cooking.left_thousandths += taken.more_thousandths;
    const std::int64_t whole = std::int64_t{1000} * dish.serves;
    Sums made;
    if (dish.leaves) made[*dish.leaves] += cooking.left_thousandths;
    for (const cookbook::ByProduct& by_product : dish.gives) {
        made[by_product.ingredient] += basics::fits(basics::scale(by_product.amount.value(), serves.cooked, whole));
    }
    cooking.makes = listed(made);
    return cooking;
}

}  // namespace samebase::kitchen
