// The best value of a component by an independent solver: GLPK, with a model of its own, written from the definitions
// in flow/component.hpp and sharing no code with lib/flow.
//
// A unit goes one of several ways: as it is; sealed or frozen to the end; opened, or ready after thawing, on a given
// day. Each way is a stock that is carried from want to want and drawn from within its time, and a whole number of
// units goes it. What is left when a way's time ends within the balance is tossed. Bought packs of one shopping day
// that go the same way are one stock.
#pragma once

#include <cstdint>
#include <vector>

#include "flow/component.hpp"

namespace samebase::tests {

struct OracleValue {
    std::vector<std::int64_t> unmet;  ///< by day
    double cost = 0;                  ///< with no line rounded
};

/// The first day's unmet least, then the next day's, ..., then the cost: one solve after another. Amounts are divided
/// by what divides them all. The program ends with a message where the solver does not prove its answer.
[[nodiscard]] OracleValue best_by_glpk(const flow::Component& component);

}  // namespace samebase::tests
