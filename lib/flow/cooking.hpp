// What a meal asks of the stock: the kitchen's own arithmetic of recipes, by the names that the balance uses.
#pragma once

#include <span>
#include <vector>

#include "flow/parts.hpp"
#include "kitchen/cooking.hpp"
#include "kitchen/serve.hpp"

namespace samebase::flow {

using kitchen::cook;
using kitchen::Cooking;
using kitchen::held_allergens;
using kitchen::Holds;
using kitchen::in_place_of;
using kitchen::LineSwap;
using kitchen::Needed;
using kitchen::of_the_dish;
using kitchen::Serve;
using kitchen::serve_for;
using kitchen::swap_of;

/// What an answer says of a cooking of so many serves, for the plan.
[[nodiscard]] std::vector<LineSwap> as_swaps(std::span<const StandInUse> stand_ins, std::span<const Scaled> scaled,
                                             std::int64_t serves_thousandths);

}  // namespace samebase::flow
