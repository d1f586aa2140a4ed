// How long frozen food takes to thaw, in days, and where it may.
#pragma once

#include "catalogue/catalogue.hpp"
#include "stock/lot.hpp"

namespace samebase::stock {

/// Days from taking it out to the first day that it can be cooked. In the fridge: 24 hours for every 1.8 kg and at
/// least 24 hours (United States Department of Agriculture as restated by its extension services, 24 h per 4 to 5 lb,
/// at least 24 h for a pack of 1 lb; the slower end). In cold water or the microwave: the same day, and then it is
/// cooked at once. What is flat or thawed by the serve goes by its largest pack; a loose lot of it thaws in a day.
[[nodiscard]] int days_to_thaw(const Lot& lot, const catalogue::Ingredient& ingredient, ThawMethod method);

}  // namespace samebase::stock
