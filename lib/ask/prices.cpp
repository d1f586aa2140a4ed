#include "ask/prices.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace samebase::ask {

namespace {

using catalogue::IngredientId;

/// A kilogram, a litre, a piece.
measure::Amount unit_of(const catalogue::Ingredient& thing) {
    constexpr std::int64_t million = 1'000'000;
    constexpr std::int64_t piece = 1000;
    return {thing.dimension, thing.dimension == measure::Dimension::pieces ? piece : million};
}

std::optional<basics::Money> median(std::vector<basics::Money> prices) {
    if (prices.empty()) return std::nullopt;
    std::sort(prices.begin(), prices.end());
    return prices[(prices.size() - 1) / 2];
}

void sum_up(ThingPrices& thing) {
    std::vector<basics::Money> own;
    for (std::size_t i = 0; i < thing.seen.size(); ++i) {
        if (thing.seen[i].from == kitchen::PriceFrom::share) continue;
        const UnitPrice& price = thing.unit_prices[i];
        own.push_back(price.money);
        if (!thing.last) thing.last = price;
        if (!thing.lowest || price.money < thing.lowest->money) thing.lowest = price;
    }
    thing.usual = median(std::move(own));
}

}  // namespace

std::vector<ThingPrices> ask_prices(const kitchen::Kitchen& kitchen, const kitchen::Past& past,
                                    const std::vector<IngredientId>& only) {
    std::map<IngredientId, ThingPrices> things;
    for (const IngredientId id : only) things[id];
    for (const kitchen::PriceSeen& seen : past.prices) {
        if (only.empty() || things.contains(seen.ingredient)) things[seen.ingredient].seen.push_back(seen);
    }
    std::vector<ThingPrices> list;
    for (auto& [id, thing] : things) {
        const auto& known = kitchen.catalogue()[id];
        thing.ingredient = id;
        thing.unit = unit_of(known);
        std::reverse(thing.seen.begin(), thing.seen.end());
        std::stable_sort(thing.seen.begin(), thing.seen.end(),
                         [](const auto& a, const auto& b) { return a.day > b.day; });
        for (const kitchen::PriceSeen& seen : thing.seen)
            thing.unit_prices.push_back({seen.day, basics::share_of(seen.money, thing.unit.value(), seen.amount)});
        sum_up(thing);
        thing.house = kitchen::price(kitchen, id, thing.unit.value());
        if (known.pack && known.pack->amount.value() > 0)
            thing.guide = basics::share_of(known.pack->price, thing.unit.value(), known.pack->amount.value());
        list.push_back(std::move(thing));
    }
    std::sort(list.begin(), list.end(), [&](const ThingPrices& a, const ThingPrices& b) {
        const auto key = [&](const ThingPrices& t) {
            return std::tie(kitchen.catalogue()[t.ingredient].name, kitchen.catalogue()[t.ingredient].id);
        };
        return key(a) < key(b);
    });
    return list;
}

}  // namespace samebase::ask
