// What the open lunches may come from.
#pragma once

#include "ask/detail/lunches_game.hpp"
#include "ask/detail/lunches_seats.hpp"

namespace samebase::ask::detail {

/// Fills the game's sources and options, for the slots and things that it has.
void find_sources(LunchGame& game, const LunchTable& table);

}  // namespace samebase::ask::detail
