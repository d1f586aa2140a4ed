#include "cookbook/cookbook.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "basics/sorted.hpp"

namespace samebase::cookbook {

namespace {

std::optional<std::string> check_dish(const Dish& dish, const catalogue::Catalogue& catalogue) {
    if (dish.serves <= 0) return fmt::format("dish '{}' serves nobody", dish.id);
    for (const DishIngredient& line : dish.ingredients) {
        const catalogue::Ingredient& thing = catalogue[line.ingredient];
        if (line.amount.dimension() != thing.dimension || line.amount.value() <= 0) {
            return fmt::format("dish '{}': its amount of '{}' is not above 0 in what that is counted in", dish.id,
                               thing.id);
        }
        if (line.least_thousandths < 0 || line.least_thousandths > 1000 || line.most_thousandths < 1000) {
            return fmt::format("dish '{}': '{}' is scaled by factors that do not enclose 1", dish.id, thing.id);
        }
    }
    if (dish.leaves && catalogue[*dish.leaves].kind != catalogue::Kind::cooked) {
        return fmt::format("dish '{}' leaves '{}', which is not of kind cooked", dish.id, catalogue[*dish.leaves].id);
    }
    return std::nullopt;
}

}  // namespace

Cookbook::Cookbook(std::vector<Base> bases, std::vector<Dish> dishes)
    : bases_(std::move(bases)), dishes_(std::move(dishes)), on_base_(bases_.size()) {
    for (std::uint32_t i = 0; i < dishes_.size(); ++i) {
        if (dishes_[i].base) on_base_[dishes_[i].base->index()].push_back(DishId{i});
    }
}

std::optional<BaseId> Cookbook::base(std::string_view id) const {
    return basics::find_sorted<BaseId>(bases_, id);
}

std::optional<DishId> Cookbook::dish(std::string_view id) const {
    return basics::find_sorted<DishId>(dishes_, id);
}

std::optional<std::string> Cookbook::check(const catalogue::Catalogue& catalogue) const {
    if (auto id = basics::out_of_order(bases_)) return fmt::format("base '{}' is out of order", *id);
    if (auto id = basics::out_of_order(dishes_)) return fmt::format("dish '{}' is out of order", *id);
    for (const Dish& dish : dishes_) {
        if (auto reason = check_dish(dish, catalogue)) return reason;
        if (!dish.base) continue;
        for (const BaseNeed& need : bases_[dish.base->index()].needs) {
            const bool met =
                std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                            [&](const DishIngredient& line) { return catalogue.is(line.ingredient, need.of); });
            if (!met) {
                return fmt::format("dish '{}' has nothing that is the '{}' of its base '{}'", dish.id,
                                   catalogue.slug(need.of), bases_[dish.base->index()].id);
            }
        }
    }
    return std::nullopt;
}

catalogue::AllergenSet allergens(const Dish& dish, const catalogue::Catalogue& catalogue) {
    catalogue::AllergenSet set;
    for (const DishIngredient& line : dish.ingredients) set.add(catalogue[line.ingredient].counted_allergens());
    return set;
}

bool everyday(const Dish& dish, const catalogue::Catalogue& catalogue) {
    return std::all_of(dish.ingredients.begin(), dish.ingredients.end(), [&](const DishIngredient& line) {
        return line.optional || catalogue[line.ingredient].everyday;
    });
}

measure::Mass weight(const Dish& dish, const catalogue::Catalogue& catalogue) {
    measure::Mass total;
    for (const DishIngredient& line : dish.ingredients) {
        if (const auto mass = catalogue::weight(line.amount, catalogue[line.ingredient])) total = total + *mass;
    }
    return total;
}

}  // namespace samebase::cookbook
