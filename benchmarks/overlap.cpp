#include "benchmarks/overlap.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

namespace samebase::benchmarks {

namespace {

struct Ranked {
    std::size_t both = 0;
    std::size_t either = 1;
    cookbook::DishId dish;
};

std::size_t in_both(std::span<const catalogue::IngredientId> a, std::span<const catalogue::IngredientId> b) {
    std::size_t count = 0;
    for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
        if (a[i] == b[j]) ++count;
        const bool step_a = a[i] <= b[j];
        const bool step_b = b[j] <= a[i];
        i += step_a ? 1 : 0;
        j += step_b ? 1 : 0;
    }
    return count;
}

}  // namespace

Sets ingredient_sets(const cookbook::Cookbook& cookbook) {
    Sets sets;
    for (const auto& dish : cookbook.dishes()) {
        auto& set = sets.emplace_back();
        for (const auto& line : dish.ingredients) set.push_back(line.ingredient);
        std::sort(set.begin(), set.end());
        set.erase(std::unique(set.begin(), set.end()), set.end());
    }
    return sets;
}

std::vector<cookbook::DishId> by_overlap(const Sets& sets, cookbook::DishId with) {
    const auto& ours = sets[with.index()];
    std::vector<Ranked> ranked;
    ranked.reserve(sets.size());
    for (std::uint32_t i = 0; i < sets.size(); ++i) {
        if (i == with.value) continue;
        const std::size_t both = in_both(ours, sets[i]);
        ranked.push_back({both, ours.size() + sets[i].size() - both, cookbook::DishId{i}});
    }
    std::sort(ranked.begin(), ranked.end(), [](const Ranked& a, const Ranked& b) {
        const std::size_t left = a.both * b.either;
        const std::size_t right = b.both * a.either;
        return left != right ? left > right : a.dish < b.dish;
    });
    std::vector<cookbook::DishId> dishes;
    dishes.reserve(ranked.size());
    for (const Ranked& one : ranked) dishes.push_back(one.dish);
    return dishes;
}

}  // namespace samebase::benchmarks
