// The base graph: which ingredient can do another's work, at what cost.
//
// A vertex is an (ingredient, role) or a (mixture, role). An edge is a step: a stand-in that is stated for the pair or
// for its families, a step between siblings of a family, or a change of role. A step costs -ln(fit) in millionths, as
// an integer, so that every machine ranks alike. For an ordered pair in a role the nearest statement holds: one that
// names the pair, else the one whose families are the fewest steps up from both; a better fit settles what is equally
// near, then a lower ratio, then the note, then the longer time.
//
// Building costs the number of steps (tens of thousands, a few milliseconds). A row of costs is one run of Dijkstra's
// algorithm, made when first asked for and kept, as are stand-ins at the parameters' least fit; asking again is a
// lookup. Questions may be asked from several threads.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "catalogue/role.hpp"
#include "graph/parameters.hpp"
#include "graph/stand_in.hpp"

namespace samebase::graph {

/// -ln(fit) in millionths.
using Cost = std::int64_t;
[[nodiscard]] Cost cost_of(double fit);
[[nodiscard]] double fit_of(Cost cost);

struct Node {
    catalogue::IngredientId ingredient;
    catalogue::Role role = catalogue::Role::main;

    friend constexpr auto operator<=>(const Node&, const Node&) = default;
};

/// One way to do an ingredient's work: what to use, how much of each per unit of mass replaced, and how well it does.
struct StandIn {
    std::vector<std::pair<catalogue::IngredientId, Ppm>> use;  ///< more than one: a mixture
    Cost cost = 0;
    int adds_minutes = 0;  ///< the most that any step to it adds to the dish's time
    std::string note;

    [[nodiscard]] double fit() const { return fit_of(cost); }
};

class BaseGraph {
  public:
    /// The caller guarantees that the catalogue outlives the graph and that the statements' handles are its own.
    BaseGraph(const catalogue::Catalogue& catalogue, std::vector<Statement> statements, const Parameters& parameters);
    BaseGraph(BaseGraph&&) noexcept;
    BaseGraph& operator=(BaseGraph&&) noexcept;
    ~BaseGraph();

    /// The cost of the cheapest path; 0 only for the same node, nothing where there is no path. Obeys neither `never`
    /// nor a least fit: likeness stands on it. c(a, b) <= c(a, x) + c(x, b) holds exactly.
    [[nodiscard]] std::optional<Cost> cost(Node from, Node to) const;

    /// All costs from a node, or to it, by node (see `position`); `no_path` where there is none. The span stays as long
    /// as the graph does.
    [[nodiscard]] std::span<const std::int32_t> costs_from(Node node) const;
    [[nodiscard]] std::span<const std::int32_t> costs_to(Node node) const;
    [[nodiscard]] static std::size_t position(Node node) {
        return node.ingredient.index() * catalogue::role_count + static_cast<std::size_t>(node.role);
    }
    static constexpr std::int32_t no_path = std::numeric_limits<std::int32_t>::max();

    /// What can do the ingredient's work in that role, best first, equal costs in the order of identifiers; at least
    /// `least_fit`, no pair that is forbidden, nothing with an allergen of `avoid`, never the ingredient itself. What
    /// must be cooked through (meat, fish and eggs as they are sold) is among them for what is ready to eat only where
    /// a statement says so of the two or their families: its note tells how to cook it.
    [[nodiscard]] std::vector<StandIn> stand_ins(Node node, double least_fit, catalogue::AllergenSet avoid) const;

    /// Whether the nearest statement about the pair says `never`.
    [[nodiscard]] bool forbidden(catalogue::IngredientId replaced, catalogue::IngredientId used,
                                 catalogue::Role role) const;

    [[nodiscard]] const Parameters& parameters() const;
    [[nodiscard]] std::span<const Statement> statements() const;
    [[nodiscard]] std::size_t step_count() const;

    /// Invariants: every step costs more than 0 and ends at a vertex; no step leaves a mixture; ratios are above 0.
    [[nodiscard]] std::optional<std::string> check() const;

  private:
    /// What can do its work at that cost at most, whatever it holds.
    [[nodiscard]] std::vector<StandIn> all_stand_ins(Node node, Cost most) const;

    struct Inside;
    std::unique_ptr<Inside> inside_;
};

}  // namespace samebase::graph
