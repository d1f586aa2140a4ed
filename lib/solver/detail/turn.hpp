// COIN-OR's solvers are not safe to be used from several threads: one at a time in a process.
#pragma once

#include <mutex>

namespace samebase::solver::detail {

[[nodiscard]] std::mutex& one_at_a_time();

}  // namespace samebase::solver::detail
