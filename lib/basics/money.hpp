// Money is a whole number of the currency's smallest unit. Each line of a sum is rounded once, then the lines are
// added.
#pragma once

#include <compare>
#include <cstdint>

#include "basics/exact.hpp"

namespace samebase::basics {

struct Money {
    std::int64_t minor = 0;  ///< cents, pence, yen ...

    friend constexpr auto operator<=>(const Money&, const Money&) = default;
    friend constexpr Money operator+(Money a, Money b) { return {fits(add(a.minor, b.minor))}; }
    friend constexpr Money operator-(Money a, Money b) { return {fits(add(a.minor, -b.minor))}; }
    friend constexpr Money operator-(Money a) { return {-a.minor}; }
    constexpr Money& operator+=(Money b) { return *this = *this + b; }
    constexpr Money& operator-=(Money b) { return *this = *this - b; }
};

/// What `part` of `whole` costs when the whole costs `price`, rounded half to even. `whole` is above 0.
[[nodiscard]] inline Money share_of(Money price, std::int64_t part, std::int64_t whole) {
    return {fits(scale(price.minor, part, whole))};
}

}  // namespace samebase::basics
