// What a plan of the open meals comes to, told in full: meals, sums, what must be bought, what still ends in the bin,
// and the last way out for it.
#pragma once

#include "ask/detail/clear_value.hpp"

namespace samebase::ask::detail {

/// Everything of the answer but bound, gap and how it was found.
[[nodiscard]] ClearAnswer clear_told(const ClearGame& game, const ClearPlan& plan, basics::Day today);

}  // namespace samebase::ask::detail
