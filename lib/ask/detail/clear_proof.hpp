// Proves or bounds what clearing a kitchen can be worth, and looks for more on the way.
#pragma once

#include "ask/detail/clear_value.hpp"
#include "menu/proof.hpp"

namespace samebase::ask::detail {

[[nodiscard]] menu::Proof clear_proved(const ClearGame& game, const ClearPlan& known, int effort,
                                       const menu::Look& look);

}  // namespace samebase::ask::detail
