// Finds a good choice: greedily, by annealing with a budget of moves, then by single changes. The same problem gives
// the same choice.
#pragma once

#include "menu/annealing.hpp"
#include "menu/evaluator.hpp"

namespace samebase::menu {

/// Slot by slot, those with fewest options first, the option that is best beside what is chosen.
[[nodiscard]] Choice greedy(const Problem& problem);

/// Never worth less than `start`. Where the search has the time it tries all of `ranked`, what stands in front more
/// often.
[[nodiscard]] Choice annealed(const Problem& problem, const Choice& start, const Ranked& ranked, std::int64_t moves,
                              const Look& look);

/// Changes one slot after another for the better until no single change is.
[[nodiscard]] Choice polished(const Problem& problem, const Choice& start, const Look& look);

}  // namespace samebase::menu
