// A slow oracle for the base graph: it looks for the nearest statement of every pair by the rules as they are written
// down, one pair and role at a time, and takes the cheapest paths by Floyd and Warshall's algorithm.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <tuple>
#include <variant>
#include <vector>

#include "support/small_world.hpp"

namespace samebase::tests {

class SlowCosts {
  public:
    SlowCosts(const SmallWorld& world, const graph::Parameters& parameters)
        : world_(world),
          nodes_(world.catalogue.ingredients().size() * catalogue::role_count),
          table_(nodes_ * nodes_, none) {
        const auto things = static_cast<std::uint32_t>(world.catalogue.ingredients().size());
        for (std::uint32_t a = 0; a < things; ++a) {
            for (std::uint32_t b = 0; b < things; ++b) {
                for (const auto role : catalogue::all_roles) {
                    if (const auto step = nearest({a}, {b}, role)) at({{a}, role}, {{b}, role}) = *step;
                    for (const auto other : catalogue::all_roles) {
                        if (a == b && other != role)
                            at({{a}, role}, {{a}, other}) = graph::cost_of(parameters.role_change);
                    }
                }
            }
        }
        for (std::size_t i = 0; i < nodes_; ++i) table_[i * nodes_ + i] = 0;
        for (std::size_t by = 0; by < nodes_; ++by) {
            for (std::size_t from = 0; from < nodes_; ++from) {
                for (std::size_t to = 0; to < nodes_; ++to) {
                    auto& cost = table_[from * nodes_ + to];
                    cost = std::min(cost, table_[from * nodes_ + by] + table_[by * nodes_ + to]);
                }
            }
        }
    }

    [[nodiscard]] std::optional<graph::Cost> cost(graph::Node from, graph::Node to) const {
        const auto cost = table_[index(from) * nodes_ + index(to)];
        if (cost >= none) return std::nullopt;
        return cost;
    }

    /// Whether what is said nearest of the pair is `never`.
    [[nodiscard]] bool forbidden(catalogue::IngredientId a, catalogue::IngredientId b, catalogue::Role role) const {
        std::size_t allowed = far;
        std::size_t never = far;
        for (const auto& [distance, cost] : all_said(a, b, role)) {
            auto& least = cost ? allowed : never;
            least = std::min(least, distance);
        }
        return never != far && never <= allowed;
    }

  private:
    static constexpr graph::Cost none = std::numeric_limits<graph::Cost>::max() / 4;
    static constexpr std::size_t far = std::numeric_limits<std::size_t>::max();
    /// Steps up from both, and the cost; no cost where it is `never`.
    using Said = std::pair<std::size_t, std::optional<graph::Cost>>;

    static std::size_t index(graph::Node node) {
        return node.ingredient.index() * catalogue::role_count + static_cast<std::size_t>(node.role);
    }
    graph::Cost& at(graph::Node from, graph::Node to) { return table_[index(from) * nodes_ + index(to)]; }

    /// Steps up from the thing to what is named; nothing where it is not that.
    [[nodiscard]] std::optional<std::size_t> steps_up(catalogue::IngredientId thing, const catalogue::Of& of) const {
        if (const auto* named = std::get_if<catalogue::IngredientId>(&of)) {
            if (*named == thing) return 0;
            return std::nullopt;
        }
        std::size_t steps = 1;
        std::optional<catalogue::FamilyId> family = world_.catalogue[thing].family;
        for (; family; ++steps) {
            if (*family == std::get<catalogue::FamilyId>(of)) return steps;
            family = world_.catalogue[*family].parent;
        }
        return std::nullopt;
    }

    [[nodiscard]] std::vector<Said> all_said(catalogue::IngredientId a, catalogue::IngredientId b,
                                             catalogue::Role role) const {
        std::vector<Said> result;
        if (a == b) return result;
        const auto hear = [&](const catalogue::Of& replaces, const catalogue::Of& used,
                              std::optional<graph::Cost> cost) {
            const auto up_a = steps_up(a, replaces);
            const auto up_b = steps_up(b, used);
            if (up_a && up_b) result.emplace_back(*up_a + *up_b, cost);
        };
        for (const graph::Statement& statement : world_.statements) {
            if (statement.parts.size() != 1 || !catalogue::has(statement.roles, role)) continue;
            std::optional<graph::Cost> cost;
            if (!statement.never) cost = graph::cost_of(statement.fit);
            hear(statement.replaces, statement.parts[0].of, cost);
            if (statement.both_ways) hear(statement.parts[0].of, statement.replaces, cost);
        }
        for (std::uint32_t i = 0; i < world_.catalogue.families().size(); ++i) {
            const catalogue::FamilyId family{i};
            if (const auto fit = world_.catalogue[family].siblings) hear(family, family, graph::cost_of(*fit));
        }
        return result;
    }

    [[nodiscard]] std::optional<graph::Cost> nearest(catalogue::IngredientId a, catalogue::IngredientId b,
                                                     catalogue::Role role) const {
        std::optional<Said> best;
        for (const Said& said : all_said(a, b, role)) {
            if (said.second && (!best || said < *best)) best = said;
        }
        return best ? best->second : std::nullopt;
    }

    const SmallWorld& world_;
    std::size_t nodes_;
    std::vector<graph::Cost> table_;
};

}  // namespace samebase::tests
