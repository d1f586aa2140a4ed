// Proves or bounds what clearing a kitchen can be worth, and looks for more on the way.
#pragma once

#include "ask/detail/clear_search.hpp"
#include "ask/detail/proof.hpp"

namespace samebase::ask::detail {

/// The relaxation of the programme (ask/detail/clear_model.hpp) says which options good plans are made of: annealing
/// among these comes first, then the search tree.
[[nodiscard]] Proof clear_proved(const ClearGame& game, const ClearPlan& known, int effort, const Look& look);

}  // namespace samebase::ask::detail
