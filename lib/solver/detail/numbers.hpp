// Small sums and limits that the solver room shares.
#pragma once

#include <cmath>
#include <vector>

#include "solver/programme.hpp"

namespace samebase::solver::detail {

/// COIN-OR takes this for infinity.
inline constexpr double infinite = 1e30;

[[nodiscard]] inline double finite(double value) {
    return std::isinf(value) ? std::copysign(infinite, value) : value;
}

[[nodiscard]] inline double sum_of(const Terms& terms, const std::vector<double>& values) {
    double sum = 0;
    for (const auto& [column, factor] : terms) sum += factor * values[static_cast<std::size_t>(column)];
    return sum;
}

}  // namespace samebase::solver::detail
