// The best value of a tiny component by trying everything: every way that every unit can go, every number of packs,
// and every split of every want among what can be used then. Sums its own prices; shares no code with lib/flow.
#pragma once

#include "flow/component.hpp"

namespace samebase::tests {

/// Takes time exponential in everything: for a few units and wants of a few whole amounts.
[[nodiscard]] flow::Value best_by_trying_all(const flow::Component& component);

}  // namespace samebase::tests
