// Turns statements into steps: for every ordered pair of ingredients and role, the nearest statement.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "graph/base_graph.hpp"

namespace samebase::graph::detail {

inline constexpr std::int32_t siblings_of_a_family = -1;  ///< in place of a statement's index
inline constexpr std::int32_t change_of_role = -2;

/// A step in one role from one ingredient to another, or to a mixture.
struct Step {
    std::uint32_t from = 0;  ///< vertex
    std::uint32_t to = 0;    ///< vertex
    std::int32_t cost = 0;
    std::int32_t ratio = 0;      ///< parts per million
    std::int32_t statement = 0;  ///< index, or one of the two above
};

struct Forbidden {
    catalogue::IngredientId replaced;
    catalogue::IngredientId used;
    catalogue::RoleSet roles = 0;
};

/// A mixture in one of its roles.
struct Mixture {
    std::int32_t statement = 0;  ///< index
    catalogue::Role role = catalogue::Role::main;
};

struct Steps {
    std::vector<Step> steps;           ///< in the order of (from, to)
    std::vector<Forbidden> forbidden;  ///< in the order of (replaced, used)
    std::vector<Mixture> mixtures;     ///< their vertices follow those of the ingredients
};

[[nodiscard]] constexpr std::uint32_t vertex(catalogue::IngredientId ingredient, catalogue::Role role) {
    return ingredient.value * static_cast<std::uint32_t>(catalogue::role_count) + static_cast<std::uint32_t>(role);
}

[[nodiscard]] Steps steps_from(const catalogue::Catalogue& catalogue, const std::vector<Statement>& statements,
                               const Parameters& parameters);

/// The steps in the order of their first ends; steps from one vertex stay as they come. Linear.
[[nodiscard]] std::vector<Step> by_first_end(const std::vector<Step>& steps, std::uint32_t vertices);

}  // namespace samebase::graph::detail
