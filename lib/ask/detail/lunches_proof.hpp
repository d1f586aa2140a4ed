// Proves or bounds what the lunches can be worth, and looks for more on the way.
#pragma once

#include "ask/detail/lunches_value.hpp"
#include "menu/proof.hpp"

namespace samebase::ask::detail {

[[nodiscard]] menu::Proof lunches_proved(const LunchGame& game, const LunchPlan& known, int effort,
                                         const menu::Look& look);

}  // namespace samebase::ask::detail
