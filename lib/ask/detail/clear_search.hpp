// Finds a good plan of the open meals: greedily, then by annealing with a budget of moves. The same game gives the same
// plan.
#pragma once

#include "ask/detail/annealing.hpp"
#include "ask/detail/clear_value.hpp"

namespace samebase::ask::detail {

/// The best meal of all, again and again, until nothing that is left makes the plan better.
[[nodiscard]] ClearPlan clear_greedily(const ClearGame& game);

/// Never worth less than the plan that it starts from.
[[nodiscard]] ClearPlan clear_by_annealing(const ClearGame& game, const ClearPlan& start, std::int64_t moves,
                                           const Look& look);

/// Changes one meal after another for the better until no single change is.
[[nodiscard]] ClearPlan clear_polished(const ClearGame& game, const ClearPlan& start);

}  // namespace samebase::ask::detail
