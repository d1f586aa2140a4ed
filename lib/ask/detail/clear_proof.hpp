// Proves or bounds what clearing a kitchen can be worth, and looks for more on the way.
#pragma once

#include "ask/detail/clear_value.hpp"
#include "ask/detail/proof.hpp"

namespace samebase::ask::detail {

[[nodiscard]] Proof clear_proved(const ClearGame& game, const ClearPlan& known, int effort, const Look& look);

}  // namespace samebase::ask::detail
