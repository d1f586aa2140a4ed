// What a plan of the open lunches comes to, told in full; the plan that it makes of the household's; and what the
// balance has against it.
#pragma once

#include "ask/detail/lunches_value.hpp"

namespace samebase::ask::detail {

/// The household's plan from today to the horizon with these lunches in it, in its order.
[[nodiscard]] kitchen::Plan plan_with(const LunchGame& game, const LunchPlan& plan);

/// For each thing of which the balance with these lunches lacks more than without them, on any day, what of them has to
/// do with it: serves that cannot be had together. Empty where the balance lacks nothing more.
[[nodiscard]] std::vector<LunchCut> lacking_in_balance(const LunchGame& game, const LunchPlan& plan);

/// Everything of the answer but bound, gap and how it was found.
[[nodiscard]] LunchesAnswer lunches_told(const LunchGame& game, const LunchPlan& plan);

}  // namespace samebase::ask::detail
