// What an answer has found to be moved, as one change.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/changes.hpp"

namespace samebase::ask::detail {

/// Packs of whichever lots that go to one place, in one way.
struct Load {
    std::optional<stock::PlaceId> to;       ///< nothing: the household has no such place
    std::optional<stock::ThawMethod> thaw;  ///< nothing: what is frozen stays frozen
    std::vector<kitchen::PacksOfLot> packs;

    /// Adds to what is there of the same lot.
    void add(stock::LotNumber lot, const std::vector<std::int64_t>& weights);
};

/// The loads one after another, as if each had been entered by hand; empty ones are left out. Nothing to move: an empty
/// change that says `nothing`. Problem, under the question's name: a load that goes nowhere, and what moved_packs()
/// refuses.
[[nodiscard]] basics::Result<kitchen::Change> entered(const kitchen::At& at, const std::string& question,
                                                      const std::string& nothing, const std::vector<Load>& loads);

}  // namespace samebase::ask::detail
