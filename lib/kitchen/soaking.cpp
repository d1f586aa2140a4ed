#include "kitchen/soaking.hpp"

#include <algorithm>

namespace samebase::kitchen {

std::vector<catalogue::IngredientId> soaked_overnight(const Kitchen& kitchen, cookbook::DishId dish,
                                                      std::span<const LineSwap> swaps) {
    std::vector<catalogue::IngredientId> soaked;
    const auto beans = kitchen.catalogue().family("dried-beans");
    if (!beans) return soaked;
    const auto add = [&](catalogue::IngredientId id) {
        if (kitchen.catalogue().belongs(id, *beans)) soaked.push_back(id);
    };
    for (const cookbook::DishIngredient& line : kitchen.cookbook()[dish].ingredients) {
        if (line.optional) continue;
        const auto swap = std::find_if(swaps.begin(), swaps.end(),
                                       [&](const LineSwap& swapped) { return swapped.of == line.ingredient; });
        if (swap == swaps.end()) {
            add(line.ingredient);
        } else {
            for (const auto& part : swap->use) add(part.first);
        }
    }
    return soaked;
}

}  // namespace samebase::kitchen
