// Hands out serves to those who may have them: a flow of least cost on a network of sources, slots and the pairs that
// suit.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace samebase::flow {

/// A slot that may have a serve of a source, and what that costs (below nothing where it is worth something).
struct Suits {
    int source = 0;
    int slot = 0;
    std::int64_t cost = 0;
};

/// By slot the source that it gets a serve of, below 0 where it gets none: as many slots as can be are served, and of
/// all ways to serve so many at the least cost. `serves` gives how many each source has. A pair stands in `suits` once;
/// costs are below 10^12 in size, slots at most a thousand. Successive shortest paths (Busacker and Gowen, 1960; with
/// potentials, Edmonds and Karp, 1972): one search of the network for each slot. The same arguments give the same
/// answer.
[[nodiscard]] std::vector<int> hand_out(std::span<const int> serves, std::size_t slots, std::span<const Suits> suits);

}  // namespace samebase::flow
