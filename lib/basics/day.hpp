// Days are calendar days; a span includes both of its ends. Nothing here reads a clock.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace samebase::basics {

using Day = std::chrono::sys_days;
using std::chrono::days;

struct Span {
    Day first;
    Day last;

    [[nodiscard]] constexpr bool contains(Day day) const { return first <= day && day <= last; }
    [[nodiscard]] constexpr int length() const { return static_cast<int>((last - first).count()) + 1; }
    friend constexpr bool operator==(const Span&, const Span&) = default;
};

/// "2026-12-04"; nothing where the text is not a day of the calendar in that form.
[[nodiscard]] std::optional<Day> read_iso_day(std::string_view text);
[[nodiscard]] std::string iso(Day day);

/// "Friday", "Fri"; reading takes either in any case.
[[nodiscard]] std::string_view weekday_name(std::chrono::weekday weekday);
[[nodiscard]] std::string_view short_weekday_name(std::chrono::weekday weekday);
[[nodiscard]] std::optional<std::chrono::weekday> read_weekday(std::string_view text);

/// "Fri 4 Dec": how sheets and answers name a day.
[[nodiscard]] std::string short_day(Day day);

/// A day as a cook says it, seen from `today`: an ISO day, a weekday ("fri": the next one, today included), "today",
/// "tomorrow", "yesterday", "+3", a date with or without its weekday and year ("tue 1 dec", "dec 1", "1/12", the day
/// first). Without a year it is the next such day, or the last one where that was at most a quarter ago. Nothing where
/// it is none of these, or the weekday is another one.
[[nodiscard]] std::optional<Day> read_day(std::string_view text, Day today);

/// A span as a cook says it: "december" (the coming one, or the present one), "december 2026", "2026-12", "2027",
/// "2026-12-01..2027-02-28" (days of any form, "12..14 dec" too), "week" (seven days from today), or one day.
[[nodiscard]] std::optional<Span> read_span(std::string_view text, Day today);

}  // namespace samebase::basics
