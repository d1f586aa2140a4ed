// Small menu problems: a few slots, a few options each, a few items. The same number gives the same problem on every
// machine. And slow, independent answers to them.
#pragma once

#include <cstdint>
#include <optional>

#include "menu/problem.hpp"

namespace samebase::tests {

[[nodiscard]] menu::Problem random_menu(std::uint64_t number);

/// The worth of a choice by the sums of menu/problem.hpp, item by item and pair by pair, from the beginning; nothing
/// where it takes what cannot be had, or two come too near that must not.
[[nodiscard]] std::optional<menu::Worth> worth_of(const menu::Problem& problem, const menu::Choice& choice);

/// The best of all choices.
[[nodiscard]] menu::Worth best_of_all(const menu::Problem& problem);

}  // namespace samebase::tests
