// Proves or bounds what the lunches can be worth: an integer programme on the solver room, started from a plan that is
// known.
//
// Its relaxation, without what it costs to have the same again, bounds the value first; every option whose reduced cost
// is more than what lies between that bound and the known plan is in no better plan and is left out, and only the rest
// is searched in whole numbers.
#pragma once

#include <functional>

#include "ask/detail/lunches_value.hpp"

namespace samebase::ask::detail {

struct LunchesProved {
    LunchPlan plan;          ///< the better of what was known and what was found
    std::int64_t bound = 0;  ///< no plan is worth more, in thousandths of money
    bool proved = false;     ///< bound and value are one, but for the rounding of lines
};

[[nodiscard]] LunchesProved lunches_proved(const LunchGame& game, const LunchPlan& known, int effort,
                                           const std::function<bool()>& go_on);

}  // namespace samebase::ask::detail
