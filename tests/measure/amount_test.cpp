#include "measure/amount.hpp"

#include <rapidcheck/catch.h>

#include <catch2/catch.hpp>

using namespace samebase::measure;

TEST_CASE("a conversion that lacks a figure says which") {
    const Amount cup{Dimension::volume, 250'000};
    CHECK(converted(cup, Dimension::mass, {}).error() == Missing::density);
    CHECK(converted(cup, Dimension::pieces, {.mg_per_ml = 528, .mg_per_piece = {}}).error() == Missing::piece_weight);
    CHECK(converted(cup, Dimension::mass, {.mg_per_ml = 528, .mg_per_piece = {}}) == Amount{Dimension::mass, 132'000});
    CHECK(
        converted(Amount{Dimension::mass, most_readable * 10}, Dimension::volume, {.mg_per_ml = 1, .mg_per_piece = {}})
            .error() == Missing::range);
}

TEST_CASE("conversions there and back are within half a unit of the coarser dimension") {
    rc::prop("mass -> volume -> mass", [] {
        const auto mg = *rc::gen::inRange<std::int64_t>(0, 1'000'000'000);
        const auto density = *rc::gen::inRange<std::int64_t>(20, 3000);
        const Conversion by{.mg_per_ml = density, .mg_per_piece = {}};
        const auto volume = *converted(Amount{Dimension::mass, mg}, Dimension::volume, by);
        const auto back = *converted(volume, Dimension::mass, by);
        // Half a microlitre weighs density/2000 mg; reading back rounds once more, by at most half a milligram.
        RC_ASSERT(2000 * std::abs(back.value() - mg) <= density + 1000);
    });
    rc::prop("mass -> pieces -> mass", [] {
        const auto mg = *rc::gen::inRange<std::int64_t>(0, 1'000'000'000);
        const auto piece = *rc::gen::inRange<std::int64_t>(100, 5'000'000);
        const Conversion by{.mg_per_ml = {}, .mg_per_piece = piece};
        const auto pieces = *converted(Amount{Dimension::mass, mg}, Dimension::pieces, by);
        const auto back = *converted(pieces, Dimension::mass, by);
        RC_ASSERT(2000 * std::abs(back.value() - mg) <= piece + 1000);
    });
}
