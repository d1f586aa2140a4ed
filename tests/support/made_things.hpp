// What made-up kitchens have in common.
#pragma once

#include "basics/day.hpp"
#include "catalogue/catalogue.hpp"

namespace samebase::tests {

inline constexpr std::int64_t step = 50'000;  ///< 50 g
inline const basics::Day wednesday = *basics::read_iso_day("2026-11-25");

/// It keeps so many days there.
inline void keeps(catalogue::Ingredient& thing, catalogue::Keep where, int number, catalogue::Limit limit) {
    thing.keeps[static_cast<std::size_t>(where)] = {catalogue::Keeping::Said::time, {number, limit}};
}

}  // namespace samebase::tests
