#include "kitchen/serve.hpp"

#include <algorithm>

namespace samebase::kitchen {

namespace {

using catalogue::AllergenSet;
using catalogue::IngredientId;

AllergenSet held(const cookbook::Dish& dish, std::span<const LineSwap> swaps,
                 std::span<const std::pair<IngredientId, IngredientId>> own, const Holds& holds) {
    AllergenSet set;
    for (const cookbook::DishIngredient& line : dish.ingredients) {
        if (line.optional) continue;
        const auto apart =
            std::find_if(own.begin(), own.end(), [&](const auto& swap) { return swap.first == line.ingredient; });
        if (apart != own.end()) {
            set.add(holds[apart->second.index()]);
            continue;
        }
        const auto all =
            std::find_if(swaps.begin(), swaps.end(), [&](const LineSwap& swap) { return swap.of == line.ingredient; });
        if (all == swaps.end()) {
            set.add(holds[line.ingredient.index()]);
        } else {
            for (const auto& [use, amount] : all->use) set.add(holds[use.index()]);
        }
    }
    return set;
}

}  // namespace

Holds held_allergens(const Kitchen& kitchen) {
    Holds holds;
    holds.reserve(kitchen.catalogue().ingredients().size());
    for (const auto& thing : kitchen.catalogue().ingredients()) holds.push_back(thing.counted_allergens());
    for (const stock::Lot& lot : kitchen.lots) {
        holds[lot.ingredient.index()].add(stock::counted_allergens(lot, kitchen.catalogue(), kitchen.cookbook()));
    }
    for (const Planned& planned : kitchen.plan) {
        const cookbook::Dish& dish = kitchen.cookbook()[planned.dish];
        if (!dish.leaves) continue;
        catalogue::AllergenSet& left = holds[dish.leaves->index()];
        left.add(cookbook::allergens(dish, kitchen.catalogue()));
        for (const LineSwap& swap : planned.swaps) {
            for (const auto& [use, amount] : swap.use) left.add(kitchen.catalogue()[use].counted_allergens());
        }
    }
    return holds;
}

std::vector<std::pair<IngredientId, IngredientId>> Serve::swaps() const {
    std::vector<std::pair<IngredientId, IngredientId>> result;
    for (const cookbook::SeparateServe* serve : apart) {
        for (const auto& swap : serve->swaps) {
            const bool there =
                std::any_of(result.begin(), result.end(), [&](const auto& other) { return other.first == swap.first; });
            if (!there) result.push_back(swap);
        }
    }
    return result;
}

Serve serve_for(const cookbook::Dish& dish, AllergenSet avoids, std::span<const LineSwap> swaps, const Holds& holds) {
    Serve serve;
    serve.holds = held(dish, swaps, {}, holds);
    const AllergenSet met = serve.holds.shared_with(avoids);
    if (met.empty()) return serve;
    for (const cookbook::SeparateServe& separate : dish.separate) {
        if (met.has(separate.avoids)) serve.apart.push_back(&separate);
    }
    if (!serve.apart.empty()) serve.holds = held(dish, swaps, serve.swaps(), holds);
    return serve;
}

}  // namespace samebase::kitchen
