// A kitchen's past of many years: four thousand a year of entries and a dinner nearly every day, as a household makes
// them that shops once a week, brings meat from the far freezer once a month, thaws, cooks, eats its leftovers, tosses
// some, counts, and makes a mistake now and then. The same seed gives the same past.
#pragma once

#include <cstdint>

#include "basics/day.hpp"
#include "store/rows.hpp"

namespace samebase::tests {

struct Past {
    int years = 25;
    std::uint64_t seed = 1;
    basics::Day last;  ///< the past ends the day before
};

/// In the kitchen of ledger_world.hpp, through the same changes that commands make. About 110,000 entries and 9,000
/// dinners in 25 years; takes a few seconds.
[[nodiscard]] store::Document generate(const Past& past);

}  // namespace samebase::tests
