// Days and spans as a cook says them.
#include "basics/day.hpp"
#include "fuzz/readers.hpp"

namespace samebase::fuzz {

void read_days(const std::string& text) {
    if (const auto day = basics::read_iso_day(text)) must(basics::iso(*day) == text, "an ISO day is written as it was");
    const auto day = basics::read_day(text, today());
    if (day) must(basics::read_day(basics::iso(*day), today()) == day, "a day that was read is one", basics::iso(*day));
    const auto span = basics::read_span(text, today());
    if (span) must(span->first <= span->last, "a span begins before it ends");
    if (day) must(span == basics::Span{*day, *day}, "a day is a span of one day");
    static_cast<void>(basics::read_weekday(text));
}

}  // namespace samebase::fuzz
