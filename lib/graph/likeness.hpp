// Likeness of two dishes: how much of the one's work the other's ingredients can do.
//
// A profile gives each (ingredient, role) of a dish a weight. Likeness(A -> B) is the largest total that can be carried
// from A onto B, a unit carried from a to b counting fit(a -> b), divided by the larger of the two total weights: an
// optimal transport (Rubner, Tomasi and Guibas 1998 call its complement the earth mover's distance), solved as a
// min-cost flow (graph/transport.hpp). Mass on the same (ingredient, role) goes first without loss, because path fits
// satisfy fit(a -> b) >= fit(a -> x) fit(x -> b).
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "cookbook/cookbook.hpp"
#include "graph/base_graph.hpp"

namespace samebase::graph {

struct Weighted {
    Node node;
    std::int64_t weight = 0;  ///< above 0; at most 10^9
};

/// In the order of nodes, each once.
using Profile = std::vector<Weighted>;

/// How telling each ingredient is, by its handle: rare in the cookbook tells more.
[[nodiscard]] std::vector<double> telling(const cookbook::Cookbook& cookbook, const catalogue::Catalogue& catalogue,
                                          const Parameters& parameters);

/// The weights of a dish: role's weight x how telling the ingredient is x a power of its share by grams. Optional
/// ingredients count like others.
[[nodiscard]] Profile profile(const cookbook::Dish& dish, const catalogue::Catalogue& catalogue,
                              std::span<const double> telling, const Parameters& parameters);

/// The mean of both directions, in parts per million: 10^6 for a profile with itself, symmetric, 0 where nothing can
/// stand for anything or a profile is empty.
[[nodiscard]] Ppm likeness(const Profile& a, const Profile& b, const BaseGraph& graph);

}  // namespace samebase::graph
