// The household on one screen: who, where, when.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "basics/day.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::show {

/// Absences and guests are those from today on, within `soon` days.
inline constexpr basics::days soon{42};

[[nodiscard]] std::string household_text(const kitchen::Kitchen& kitchen, basics::Day today);
[[nodiscard]] nlohmann::ordered_json household_json(const kitchen::Kitchen& kitchen, basics::Day today);

/// "Sat", "every 2nd Sat from Sat 5 Dec, fresh food", "Sat 5 Dec, bulk".
[[nodiscard]] std::string trip_words(const kitchen::Trip& trip, basics::Day today);
/// "mon-fri dinner, sat-sun all": the meals that somebody is home for.
[[nodiscard]] std::string week_words(const kitchen::Week& week);
/// "Mon-Fri", "Sat", "every day": weekdays as bits, bit 0 for Sunday.
[[nodiscard]] std::string weekday_words(std::uint8_t weekdays);
/// "today to Fri 4 Dec"; one day alone.
[[nodiscard]] std::string span_words(const basics::Span& span, basics::Day today);
/// "far freezer, 300 L".
[[nodiscard]] std::string place_words(const stock::Place& place);

}  // namespace samebase::show
