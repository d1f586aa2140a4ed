#include "flow/cooking.hpp"

namespace samebase::flow {

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

}  // namespace samebase::flow
