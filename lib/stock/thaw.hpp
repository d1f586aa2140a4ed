// How long frozen food takes to thaw, and where it may: in the fridge, in cold water, in the microwave; never on the
// bench.
#pragma once

#include <cstdint>

#include "catalogue/catalogue.hpp"
#include "stock/lot.hpp"

namespace samebase::stock {

/// Days from taking it out to the first day that it can be cooked. In the fridge: 24 hours for every 1.8 kg and at
/// least 24 hours (United States Department of Agriculture as restated by its extension services, 24 h per 4 to 5 lb,
/// at least 24 h for a pack of 1 lb; the slower end). In cold water or the microwave: the same day, and then it is
/// cooked at once. What is flat or thawed by the serve goes by its largest pack; a loose lot of it thaws in a day.
[[nodiscard]] int days_to_thaw(const Lot& lot, const catalogue::Ingredient& ingredient, ThawMethod method);

/// Minutes in cold water for a pack of so many milligrams, in a leakproof bag, the water changed every half hour; then
/// it is cooked at once. An hour for a pound (454 g) and less, an hour more for each pound up to 3 hours, 3 hours up to
/// 2 kg, and 30 minutes a pound (66 a kilogram) where that is longer: of all that is published the longest (University
/// of Nebraska-Lincoln and University of Illinois Extension citing USDA FSIS: 1 lb 1 hour or less, 3 to 4 lb 2 to 3
/// hours, whole birds 30 minutes a pound; NSW Government: 1.5 to 2 kg 2 to 3 hours).
[[nodiscard]] int cold_water_minutes(std::int64_t milligrams);

}  // namespace samebase::stock
