#include "basics/day.hpp"

#include <catch2/catch.hpp>

using namespace samebase::basics;

TEST_CASE("an ISO day is read and written the same, and nothing else is a day") {
    for (const auto* text : {"2026-11-25", "2024-02-29", "1999-12-31", "2000-01-01"}) {
        const auto day = read_iso_day(text);
        REQUIRE(day);
        CHECK(iso(*day) == text);
    }
    for (const auto* text :
         {"2026-02-29", "2026-13-01", "2026-1-01", "26-01-01", "2026/01/01", "", "2026-01-0x", "+026-01-01"}) {
        CHECK_FALSE(read_iso_day(text));
    }
}

TEST_CASE("a cook's words for a day are read from today") {
    const auto wednesday = *read_iso_day("2026-11-25");
    CHECK(read_day("fri", wednesday) == read_iso_day("2026-11-27"));
    CHECK(read_day("Wednesday", wednesday) == wednesday);
    CHECK(read_day("tue", wednesday) == read_iso_day("2026-12-01"));
    CHECK(read_day("tomorrow", wednesday) == read_iso_day("2026-11-26"));
    CHECK(read_day("+3", wednesday) == read_iso_day("2026-11-28"));
    CHECK_FALSE(read_day("fr", wednesday));
    CHECK_FALSE(read_day("frida night", wednesday));
    CHECK_FALSE(read_day("+", wednesday));
    CHECK(short_day(wednesday) == "Wed 25 Nov");
}

TEST_CASE("a cook's words for a span are read from today") {
    const auto wednesday = *read_iso_day("2026-11-25");
    CHECK(read_span("december", wednesday) == Span{*read_iso_day("2026-12-01"), *read_iso_day("2026-12-31")});
    CHECK(read_span("november", wednesday) == Span{*read_iso_day("2026-11-01"), *read_iso_day("2026-11-30")});
    CHECK(read_span("feb", wednesday) == Span{*read_iso_day("2027-02-01"), *read_iso_day("2027-02-28")});
    CHECK(read_span("December 2025", wednesday) == Span{*read_iso_day("2025-12-01"), *read_iso_day("2025-12-31")});
    CHECK(read_span("2026-12", wednesday) == Span{*read_iso_day("2026-12-01"), *read_iso_day("2026-12-31")});
    CHECK(read_span("2028-02", wednesday)->length() == 29);
    CHECK(read_span("tomorrow..+3", wednesday) == Span{wednesday + days{1}, wednesday + days{3}});
    CHECK_FALSE(read_span("2026-13", wednesday));
    CHECK_FALSE(read_span("december 26", wednesday));
    CHECK_FALSE(read_span("december ", wednesday));
    CHECK_FALSE(read_span("2026-12-01..", wednesday));
    CHECK(read_span("2027", wednesday)->length() == 365);
    CHECK(read_span("2026-12-01..2027-02-28", wednesday)->length() == 90);
    CHECK(read_span("week", wednesday)->length() == 7);
    CHECK_FALSE(read_span("2026-12-02..2026-12-01", wednesday));
    CHECK_FALSE(read_span("soon", wednesday));
}
