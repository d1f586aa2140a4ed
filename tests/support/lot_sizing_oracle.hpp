// The least cost of a lot-sizing problem by an independent solver: GLPK, with a model of its own, written from the
// definitions in flow/lot_sizing.hpp. Every unit that is used was bought in one period, and is used in another.
#pragma once

#include <cstdint>

#include "flow/lot_sizing.hpp"

namespace samebase::tests {

/// For packs that keep as long opened as closed. The program ends with a message where the solver does not prove it.
[[nodiscard]] std::int64_t least_cost_by_glpk(const flow::LotSizing& problem);

/// By trying all purchases of at most so many packs a period, one size only.
[[nodiscard]] std::int64_t least_cost_by_trying(const flow::LotSizing& problem, int most_packs);

}  // namespace samebase::tests
