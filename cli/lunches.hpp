// The answer about lunches, asked for on a terminal: with its progress, and ended by Ctrl-C with the best so far.
#pragma once

#include "ask/lunches.hpp"
#include "context.hpp"

namespace samebase::cli {

[[nodiscard]] tl::expected<ask::LunchesAnswer, Failure> lunches_answer(const ask::LunchesQuestion& question,
                                                                       const kitchen::Kitchen& kitchen,
                                                                       basics::Day today);

}  // namespace samebase::cli
