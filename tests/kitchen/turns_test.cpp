// Turns of standing nights over years (common practice: a rotation goes on across months and years).
#include <catch2/catch.hpp>

#include "kitchen/household.hpp"

using namespace samebase;

TEST_CASE("four kinds that take turns on a weekday come every four weeks in their order, for ten years") {
    const std::vector<std::string> kinds{"roast", "pie", "soup", "curry"};
    const basics::Day first = *basics::read_iso_day("2026-11-29");
    kitchen::Household household;
    household.standing_nights = {{std::chrono::Sunday, kinds, first}};
    for (int day = 0; day < 3653; ++day) {
        const basics::Day date = first + basics::days{day};
        const auto kind = kitchen::standing_kind(household, date);
        INFO(basics::iso(date));
        if (day % 7 != 0) {
            REQUIRE_FALSE(kind);
        } else {
            REQUIRE(kind == kinds[static_cast<std::size_t>(day / 7 % 4)]);
        }
    }
}

TEST_CASE("a household with three standing nights has four a week to choose") {
    kitchen::Household household;
    const basics::Day monday = *basics::read_iso_day("2026-11-30");
    for (const auto weekday : {std::chrono::Monday, std::chrono::Wednesday, std::chrono::Sunday})
        household.standing_nights.push_back({weekday, {"soup"}, monday});
    for (int week = 0; week < 520; ++week) {
        int open = 0;
        for (int day = 0; day < 7; ++day)
            open += kitchen::standing_kind(household, monday + basics::days{7 * week + day}) ? 0 : 1;
        REQUIRE(open == 4);
    }
}
