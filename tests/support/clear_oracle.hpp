// The best value of clearing a small kitchen, by trying every plan, and by an integer programme on GLPK. Both choose
// among the choices of the judge; neither shares code with lib/ask.
#pragma once

#include "support/clear_judge.hpp"
#include "support/clear_world.hpp"

namespace samebase::tests {

/// In minor units. Time grows with the product of the choices of all meals: for a few meals of a few dishes.
[[nodiscard]] double best_of_all_plans(const ClearWorld& world);

/// In minor units, within a few thousandths. Ends the program with a message where GLPK proves nothing.
[[nodiscard]] double best_plan_by_glpk(const ClearWorld& world);

}  // namespace samebase::tests
