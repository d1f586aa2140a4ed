// The stock that what stands leaves for the open lunches.
#pragma once

#include "ask/detail/lunches_game.hpp"
#include "ask/detail/lunches_seats.hpp"

namespace samebase::ask::detail {

/// Fills the game's things, their positions and frozen packs, from its balance of the plan as it stands.
void take_stock(LunchGame& game, const LunchTable& table);

}  // namespace samebase::ask::detail
