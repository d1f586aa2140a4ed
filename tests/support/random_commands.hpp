// Random commands for the kitchen of ledger_world.hpp, likely and unlikely ones mixed: of every kind, with amounts from
// nothing to far more than there is. The same seed gives the same command in the same kitchen.
#pragma once

#include <cstdint>

#include "basics/problem.hpp"
#include "kitchen/changes.hpp"

namespace samebase::tests {

/// Small random numbers from a seed, alike on every machine.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ULL + 0x2545F4914F6CDD1DULL) {}
    [[nodiscard]] std::uint64_t next();
    /// From 0 to sides - 1.
    [[nodiscard]] std::int64_t roll(std::int64_t sides) {
        return static_cast<std::int64_t>(next() % static_cast<std::uint64_t>(sides));
    }
    [[nodiscard]] bool one_in(std::int64_t sides) { return roll(sides) == 0; }

  private:
    std::uint64_t state_;
};

/// A Problem where the command that came up is refused in this kitchen.
[[nodiscard]] basics::Result<kitchen::Change> random_command(const kitchen::At& at, std::uint64_t seed);

}  // namespace samebase::tests
