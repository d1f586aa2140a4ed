// A full month of a household that buys in bulk: 300 lots, and a dinner and a lunch on each of 31 days out of 400
// dishes.
#pragma once

#include "benchmarks/demo.hpp"

namespace samebase::benchmarks {

inline constexpr int month_days = 31;
inline constexpr std::size_t month_lots = 300;
inline constexpr std::size_t month_dishes = 400;

/// The demo's household and its cookbook with stock and a plan of that size, the same at every run: every lot is of
/// something that the planned dishes eat, as it is sold, in a place where it keeps.
[[nodiscard]] Demo month(const Demo& demo);

}  // namespace samebase::benchmarks
