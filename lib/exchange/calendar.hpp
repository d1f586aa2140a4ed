// A diary as iCalendar (RFC 5545), written through libical: whole days, lines folded at 75 octets, text escaped.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "kitchen/diary.hpp"

namespace samebase::exchange {

/// How the product is named in its calendars.
inline constexpr std::string_view calendar_product = "-//samebase//household diary//EN";

/// One VEVENT an entry, in their order, and a VALARM at eight in the morning where one is to be reminded. A UID is made
/// of the household, the kind, the day and `which`: read in twice, an entry is there once. `stamp` is the day on which
/// it is written: nothing here reads a clock.
[[nodiscard]] std::string write_calendar(std::span<const kitchen::DiaryEntry> entries, std::string_view household,
                                         basics::Day stamp);

}  // namespace samebase::exchange
