// What chosen meals themselves send to the bin: the rest of what they open, thaw and buy, as the balance has it. And a
// search that minds it.
#pragma once

#include "ask/detail/clear_value.hpp"
#include "flow/balance.hpp"
#include "menu/annealing.hpp"

namespace samebase::ask::detail {

class ClearOwnBin {
  public:
    /// The game outlives it.
    ClearOwnBin(const ClearGame& game, basics::Day today);

    /// What the balance with these meals tosses by the horizon beyond what they save; at least nothing.
    [[nodiscard]] basics::Money of(const ClearPlan& plan);

    /// By option about what it would send to the bin if it were the only one, in thousandths of money.
    [[nodiscard]] std::vector<std::int64_t> alone() const;

  private:
    const ClearGame& game_;
    flow::Balancer balancer_;
    flow::Balance before_;
    flow::Memory memory_;
};

/// A plan found by annealing in which every option costs what it would send to the bin alone.
[[nodiscard]] ClearPlan clear_that_opens_little(const ClearGame& game, const ClearOwnBin& own_bin,
                                                const ClearPlan& start, std::int64_t moves, const menu::Look& look);

/// Changes one meal after another for the better, where what the plan sends to the bin itself counts as well. Never
/// worse by that sum; looks at so many balances at most.
[[nodiscard]] ClearPlan clear_with_own_bin(const ClearGame& game, ClearOwnBin& own_bin, const ClearPlan& start,
                                           int balances, const menu::Look& look);

}  // namespace samebase::ask::detail
