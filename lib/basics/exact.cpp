#include "basics/exact.hpp"

#include <limits>

namespace samebase::basics {

namespace {

__extension__ using Wide = __int128;

}  // namespace

std::optional<std::int64_t> scale(std::int64_t value, std::int64_t numerator, std::int64_t denominator) {
    assert(denominator > 0);
    const Wide product = static_cast<Wide>(value) * numerator;
    const Wide divisor = denominator;
    Wide quotient = product / divisor;
    Wide remainder = product % divisor;
    if (remainder < 0) {
        remainder += divisor;
        --quotient;
    }
    const Wide twice = remainder * 2;
    if (twice > divisor || (twice == divisor && quotient % 2 != 0)) ++quotient;
    if (quotient > std::numeric_limits<std::int64_t>::max() || quotient < std::numeric_limits<std::int64_t>::min()) {
        return std::nullopt;
    }
    return static_cast<std::int64_t>(quotient);
}

std::int64_t scale_up(std::int64_t value, std::int64_t numerator, std::int64_t denominator) {
    assert(value >= 0 && numerator >= 0 && denominator > 0);
    const Wide product = static_cast<Wide>(value) * numerator;
    const Wide quotient = (product + denominator - 1) / denominator;
    assert(quotient <= std::numeric_limits<std::int64_t>::max());
    return static_cast<std::int64_t>(quotient);
}

}  // namespace samebase::basics
