// Every number that likeness and stand-in search are tuned by, in one place.
#pragma once

#include <array>
#include <cstddef>

#include "catalogue/role.hpp"

namespace samebase::graph {

struct Parameters {
    /// How much a role counts in likeness: what a dish is about weighs more than what it is seasoned with.
    /// In the order of catalogue::Role: main, body, starch, binder, sauce, seasoning, topping, side.
    std::array<double, catalogue::role_count> role_weight{3.0, 1.2, 1.5, 0.6, 1.2, 0.7, 0.7, 0.4};
    /// Telling = floor + ln((dishes + 1) / (dishes with it + 1)): an ingredient that is rare in the cookbook tells
    /// more. This and the next were chosen on foods of known composition, by either half of them alike
    /// (tests/outside/likeness_evidence_test.cpp): there a high floor, which lets rarity tell little, found like foods
    /// best.
    double telling_floor = 8.0;
    /// The share of a dish by grams counts with this power.
    double share_power = 0.6;
    /// The weight in grams of an ingredient whose weight the catalogue does not know.
    double unknown_grams = 10.0;
    /// The fit of a change of role, every role to every other.
    double role_change = 0.6;
    /// Answers are cut at this fit.
    double least_fit = 0.5;
    /// What is asked about takes another's place in a dish only from this fit on: else it is another dish.
    double least_fit_of_named = 0.8;
    /// With so many stand-ins in a dish more is bought sooner than replaced; a dish that would need more is not
    /// proposed.
    std::size_t most_stand_ins = 3;
};

}  // namespace samebase::graph
