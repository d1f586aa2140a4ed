// Finds a good plan of the open lunches: leftovers to people by a flow, the rest greedily, then by annealing with a
// budget of moves. The same game gives the same plan.
#pragma once

#include "ask/detail/lunches_value.hpp"
#include "menu/annealing.hpp"

namespace samebase::ask::detail {

/// Leftovers that are there, a serve each, to as many people as can be, at the least cost; every other lunch bought.
[[nodiscard]] LunchPlan leftovers_handed_out(const LunchGame& game);

/// The best change of all, again and again, until none that touches a bought lunch makes the plan better.
[[nodiscard]] LunchPlan lunches_greedily(const LunchGame& game, const LunchPlan& start);

/// By slot, by what each option is worth alone.
[[nodiscard]] menu::Ranked lunch_options_alone(const LunchGame& game);

/// Never worth less than the plan that it starts from.
[[nodiscard]] LunchPlan lunches_by_annealing(const LunchGame& game, const LunchPlan& start, const menu::Ranked& options,
                                             std::int64_t moves, const menu::Look& look);

/// Changes one lunch, or all of a day that can be alike, for the better until no such change is.
[[nodiscard]] LunchPlan lunches_polished(const LunchGame& game, const LunchPlan& start);

/// The plan with lunches bought until it can be had.
[[nodiscard]] LunchPlan lunches_that_can_be_had(const LunchGame& game, const LunchPlan& plan);

}  // namespace samebase::ask::detail
