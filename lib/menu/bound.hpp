// How much any choice can be worth at most, by Lagrangian relaxation (Held, Wolfe and Crowder, 1974): every item gets a
// price, an option pays for what it takes, and each slot takes the option that is best for it alone. Prices are moved
// by subgradients towards those at which the slots together take what there is.
//
// Relaxed: the order of days, what two options of a group cost. Kept: what there is, that it must be eaten in its time,
// what more costs in whole packs over the whole span, that an item nothing is taken of comes to what it comes to, and
// how often a group that forbids being near may come at all. Every set of prices gives a bound; the least is told.
#pragma once

#include <vector>

#include "menu/annealing.hpp"
#include "menu/problem.hpp"

namespace samebase::menu {

struct Bound {
    Worth value = 0;  ///< no choice is worth more
    Ranked options;   ///< by slot, what is best at the prices first
};

/// `known` is the value of a choice. Costs `rounds` times all needs of all options; the same input gives the same
/// bound.
[[nodiscard]] Bound bound(const Problem& problem, Worth known, int rounds);

}  // namespace samebase::menu
