#include "benchmarks/month.hpp"

#include <algorithm>
#include <optional>
#include <random>
#include <set>
#include <tuple>
#include <vector>

#include "kitchen/changes.hpp"

namespace samebase::benchmarks {

namespace {

/// The standard fixes what this engine yields, so that every machine measures the same month.
class Draws {
  public:
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }

  private:
    std::mt19937_64 engine_{31};
};

/// Dishes for that meal, evenly from the whole cookbook.
std::vector<cookbook::DishId> dishes_for(const cookbook::Cookbook& cookbook, kitchen::Meal meal, std::size_t most) {
    std::vector<cookbook::DishId> all;
    for (std::uint32_t i = 0; i < cookbook.dishes().size(); ++i) {
        const cookbook::Dish& dish = cookbook.dishes()[i];
        if (meal == kitchen::Meal::dinner ? dish.dinner : dish.lunch) all.push_back({i});
    }
    std::vector<cookbook::DishId> some;
    for (std::size_t i = 0; i < most && i < all.size(); ++i) some.push_back(all[i * all.size() / most]);
    return some;
}

void plan(Draws& draws, kitchen::Kitchen& kitchen, basics::Day today) {
    kitchen.plan.clear();
    for (const auto meal : {kitchen::Meal::lunch, kitchen::Meal::dinner}) {
        const auto dishes = dishes_for(kitchen.cookbook(), meal, month_dishes / 2);
        for (int day = 0; day < month_days; ++day) {
            kitchen.plan.push_back({.day = today + basics::days{day},
                                    .meal = meal,
                                    .dish = dishes[draws.below(dishes.size())],
                                    .ready_meal = false,
                                    .serves = {},
                                    .left = 0});
        }
    }
    std::sort(kitchen.plan.begin(), kitchen.plan.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
    });
}

std::vector<catalogue::IngredientId> eaten(const kitchen::Kitchen& kitchen) {
    std::set<catalogue::IngredientId> things;
    for (const kitchen::Planned& row : kitchen.plan) {
        for (const auto& line : kitchen.cookbook()[row.dish].ingredients) {
            if (kitchen.catalogue()[line.ingredient].pack && !kitchen.taken_as_there(line.ingredient))
                things.insert(line.ingredient);
        }
    }
    return {things.begin(), things.end()};
}

void stock(Draws& draws, kitchen::Kitchen& kitchen, basics::Day today) {
    kitchen.lots.clear();
    const auto things = eaten(kitchen);
    while (kitchen.lots.size() < month_lots) {
        const auto id = things[draws.below(things.size())];
        const catalogue::Ingredient& thing = kitchen.catalogue()[id];
        stock::Lot lot;
        lot.number = static_cast<stock::LotNumber>(kitchen.lots.size()) + 1;
        lot.ingredient = id;
        lot.place = kitchen::usual_place(kitchen, id).value_or(stock::PlaceId{0});
        const auto kind = kitchen.place(lot.place).kind;
        lot.state = stock::freezes(kind) ? stock::State::frozen : stock::State::fresh;
        lot.packs.assign(1 + draws.below(3), thing.pack->amount.value());
        lot.amount = {thing.dimension, thing.pack->amount.value() * static_cast<std::int64_t>(lot.packs.size())};
        lot.arrived = lot.since = today - basics::days{static_cast<int>(draws.below(3))};
        stock::set_dates(lot, thing, kind);
        kitchen.lots.push_back(std::move(lot));
    }
}

}  // namespace

Demo month(const Demo& demo) {
    Demo month = demo;
    Draws draws;
    plan(draws, month.kitchen, month.today);
    stock(draws, month.kitchen, month.today);
    return month;
}

}  // namespace samebase::benchmarks
