#include "basics/exact.hpp"

#include <catch2/catch.hpp>
#include <limits>

using namespace samebase::basics;

TEST_CASE("scaling rounds half to even") {
    CHECK(scale(5, 1, 2) == 2);
    CHECK(scale(7, 1, 2) == 4);
    CHECK(scale(-5, 1, 2) == -2);
    CHECK(scale(-7, 1, 2) == -4);
    CHECK(scale(10, 1, 3) == 3);
    CHECK(scale(11, 1, 3) == 4);
    CHECK(scale(0, 7, 9) == 0);
    CHECK(scale_up(10, 1, 3) == 4);
    CHECK(scale_up(9, 1, 3) == 3);
}

TEST_CASE("what does not fit is nothing, never a wrap") {
    constexpr auto most = std::numeric_limits<std::int64_t>::max();
    CHECK_FALSE(add(most, 1));
    CHECK_FALSE(multiply(most / 2 + 1, 2));
    CHECK_FALSE(scale(most, 3, 2));
    CHECK(scale(most, 3, 3) == most);
    CHECK(add(most, -1) == most - 1);
}
