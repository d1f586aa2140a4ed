// Random components of the stock flow: small weeks of one ingredient, likely ones mixed with wild ones. The same seed
// gives the same component on every machine.
#pragma once

#include <cstdint>
#include <string>

#include "flow/component.hpp"

namespace samebase::tests {

/// The seed of all generators of a program: 4, or what the environment's SAMEBASE_SEED says.
[[nodiscard]] std::uint64_t seed();

/// Small random numbers.
class Random {
  public:
    explicit Random(std::uint64_t of) : state_(of * 0x9E3779B97F4A7C15ULL + seed()) {}
    [[nodiscard]] std::uint64_t next();
    /// Both ends included.
    [[nodiscard]] int within(int least, int most);
    [[nodiscard]] bool percent(int likely) { return within(1, 100) <= likely; }
    template <class Some>
    [[nodiscard]] auto one_of(const Some& some) {
        return some[static_cast<std::size_t>(within(0, static_cast<int>(std::size(some)) - 1))];
    }

  private:
    std::uint64_t state_;
};

/// How amounts and prices come.
enum class Figures : std::uint8_t {
    even,   ///< amounts are whole steps, and a step of a unit costs a whole number of minor units: no price is ever
            ///< rounded
    uneven  ///< any amounts, any prices: every line is rounded
};

/// What may have to be decided; a component has some of these.
struct Allowed {
    bool opening = true;
    bool thawing = true;
    bool buying = true;
};

/// Up to 7 days, 5 units and 5 wants, as the balance would make them (weeks) or anything that the types allow (wild).
[[nodiscard]] flow::Component random_component(std::uint64_t number, Figures figures, const Allowed& allowed = {});

/// A unit such as those of random components of so many days.
[[nodiscard]] flow::Unit random_unit(Random& random, Figures figures, const Allowed& allowed, int days, bool wild);

/// All of a component on a few lines, for messages.
[[nodiscard]] std::string to_text(const flow::Component& component);
[[nodiscard]] std::string to_text(const flow::Value& value);

}  // namespace samebase::tests
