// Finds a good plan of the open meals: greedily, then by annealing with a budget of moves. The same game gives the same
// plan.
#pragma once

#include "ask/detail/clear_value.hpp"
#include "menu/annealing.hpp"

namespace samebase::ask::detail {

/// The best meal of all, again and again, until nothing that is left makes the plan better.
[[nodiscard]] ClearPlan clear_greedily(const ClearGame& game);

/// By open meal, by what each option is worth alone.
[[nodiscard]] menu::Ranked clear_options_alone(const ClearGame& game);

/// Never worth less than the plan that it starts from.
[[nodiscard]] ClearPlan clear_by_annealing(const ClearGame& game, const ClearPlan& start, const menu::Ranked& options,
                                           std::int64_t moves, const menu::Look& look);
/// The same for a few moves, at temperatures that keep most of the plan.
[[nodiscard]] ClearPlan clear_annealed_near(const ClearGame& game, const ClearPlan& start, const menu::Ranked& options,
                                            std::int64_t moves);

/// Changes one meal after another for the better until no single change is.
[[nodiscard]] ClearPlan clear_polished(const ClearGame& game, const ClearPlan& start);

}  // namespace samebase::ask::detail
