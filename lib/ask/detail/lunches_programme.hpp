// Proves or bounds what the lunches can be worth. The relaxation leaves out what it costs to have the same again.
#pragma once

#include "ask/detail/lunches_value.hpp"
#include "ask/detail/proof.hpp"

namespace samebase::ask::detail {

[[nodiscard]] Proof lunches_proved(const LunchGame& game, const LunchPlan& known, int effort,
                                   const std::function<bool()>& go_on);

}  // namespace samebase::ask::detail
