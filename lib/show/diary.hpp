// What is planned, as entries of a calendar.
#pragma once

#include <vector>

#include "ask/carry.hpp"
#include "ask/menu.hpp"
#include "ask/thaw.hpp"
#include "kitchen/diary.hpp"

namespace samebase::show {

/// From `today` on, over the days of the menu, in the order of (day, kind): dinners and lunches that are planned, what
/// is taken out of freezers and what is brought from the far ones (with a reminder), trips, and the use-by days of what
/// is in stock and not frozen. One entry a day for all that is taken out, and for all that is to be used by then.
[[nodiscard]] std::vector<kitchen::DiaryEntry> diary(const ask::Menu& menu, const ask::ThawAnswer& thaw,
                                                     const ask::CarryAnswer& carry, const kitchen::Kitchen& kitchen,
                                                     basics::Day today);

}  // namespace samebase::show
