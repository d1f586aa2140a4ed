// Random numbers for searches that must repeat on every machine.
#pragma once

#include <cstddef>
#include <cstdint>

namespace samebase::menu {

/// Splitmix64 (Steele, Lea and Flood, 2014): the same numbers on every machine.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}
    std::uint64_t next() {
        state_ += 0x9E3779B97F4A7C15ULL;
        std::uint64_t z = state_;
        z = (z ^ z >> 30U) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ z >> 27U) * 0x94D049BB133111EBULL;
        return z ^ z >> 31U;
    }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(next() % count); }
    double unit() { return static_cast<double>(next() >> 11U) * 0x1.0p-53; }

  private:
    std::uint64_t state_;
};

}  // namespace samebase::menu
