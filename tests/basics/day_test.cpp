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

TEST_CASE("every day that is printed is read, and the forms that people write") {
    const auto wednesday = *read_iso_day("2026-11-25");
    const auto tuesday = read_iso_day("2026-12-01");
    for (const auto* text : {"tue 1 dec", "Tue 1 Dec", "1 dec", "dec 1", "1st December", "1/12", "01/12/2026",
                             "1 dec 2026", "december 1, 2026", "Tuesday, 1 December"}) {
        INFO(text);
        CHECK(read_day(text, wednesday) == tuesday);
    }
    for (int i = -80; i < 250; ++i) {
        const Day day = wednesday + days{i};
        INFO(short_day(day));
        CHECK(read_day(short_day(day), wednesday) == day);
    }
    CHECK(read_day("Yesterday", wednesday) == wednesday - days{1});
    CHECK(read_day("4 Jan 2028", wednesday) == read_iso_day("2028-01-04"));
}

TEST_CASE("a date without a year is the next one, or one of the last quarter") {
    const auto wednesday = *read_iso_day("2026-11-25");
    CHECK(read_day("24 nov", wednesday) == read_iso_day("2026-11-24"));
    CHECK(read_day("30 aug", wednesday) == read_iso_day("2026-08-30"));
    CHECK(read_day("1 aug", wednesday) == read_iso_day("2027-08-01"));
    CHECK(read_day("2 jan", wednesday) == read_iso_day("2027-01-02"));
    CHECK(read_day("30 dec", *read_iso_day("2027-01-02")) == read_iso_day("2026-12-30"));
}

TEST_CASE("what is no day of the calendar, or another weekday, is no day") {
    const auto wednesday = *read_iso_day("2026-11-25");
    for (const auto* text : {"mon 1 dec", "31 nov", "29 feb 2027", "1/13", "32 dec", "dec", "1", "1 dec dec",
                             "1 dec 26", "1/2/3/4", "/12", "1 dec soon", "1//12", ""}) {
        INFO(text);
        CHECK_FALSE(read_day(text, wednesday));
    }
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
    CHECK(read_span("december 26", wednesday) == Span{*read_iso_day("2026-12-26"), *read_iso_day("2026-12-26")});
    CHECK_FALSE(read_span("december 62", wednesday));
    CHECK(read_span("12..14 dec", wednesday) == Span{*read_iso_day("2026-12-12"), *read_iso_day("2026-12-14")});
    CHECK(read_span("tue 1 dec..sun 6 dec", wednesday) ==
          Span{*read_iso_day("2026-12-01"), *read_iso_day("2026-12-06")});
    CHECK_FALSE(read_span("14..12 dec", wednesday));
    CHECK_FALSE(read_span("31..3 feb", wednesday));
    CHECK_FALSE(read_span("december ", wednesday));
    CHECK_FALSE(read_span("2026-12-01..", wednesday));
    CHECK(read_span("2027", wednesday)->length() == 365);
    CHECK(read_span("2026-12-01..2027-02-28", wednesday)->length() == 90);
    CHECK(read_span("week", wednesday)->length() == 7);
    CHECK_FALSE(read_span("2026-12-02..2026-12-01", wednesday));
    CHECK_FALSE(read_span("soon", wednesday));
}
