// The most value that can be carried from supplies onto demands: a dense transport problem of a dozen ends each way.
#pragma once

#include <cstdint>
#include <span>

#include "graph/stand_in.hpp"

namespace samebase::graph {

/// The largest total value that can be carried: value[i][j] for each unit from i to j, supplies and demands not
/// exceeded. All at least 0. A min-cost flow by successive shortest augmenting paths with potentials, one supply after
/// another (Tomizawa, 1971; Edmonds and Karp, 1972), on dense arrays: one question asks for hundreds of them, and a
/// graph library's network took ten times as long, most of it to be built. Each path costs at most
/// supplies x (supplies + demands) steps.
[[nodiscard]] std::int64_t most_carried(std::span<const std::int64_t> supply, std::span<const std::int64_t> demand,
                                        std::span<const Ppm> value);

}  // namespace samebase::graph
