// Exact 64-bit arithmetic: a result that does not fit is nothing, never a wrap. Rounding is half to even.
#pragma once

#include <cassert>
#include <cstdint>
#include <optional>

namespace samebase::basics {

[[nodiscard]] constexpr std::optional<std::int64_t> add(std::int64_t a, std::int64_t b) {
    std::int64_t sum = 0;
    if (__builtin_add_overflow(a, b, &sum)) return std::nullopt;
    return sum;
}

[[nodiscard]] constexpr std::optional<std::int64_t> multiply(std::int64_t a, std::int64_t b) {
    std::int64_t product = 0;
    if (__builtin_mul_overflow(a, b, &product)) return std::nullopt;
    return product;
}

/// value * numerator / denominator, rounded half to even; nothing where that does not fit. The denominator is above 0.
[[nodiscard]] std::optional<std::int64_t> scale(std::int64_t value, std::int64_t numerator, std::int64_t denominator);

/// The value of a sum, product or quotient that the caller knows to fit: amounts are read below 10^15
/// (measure/amount.hpp), so that thousands of them add up and a share of one of them fits.
[[nodiscard]] constexpr std::int64_t fits(std::optional<std::int64_t> value) {
    assert(value.has_value());
    return *value;
}

/// value * numerator / denominator, rounded up; the caller knows that it fits. All are at least 0, the denominator
/// above 0.
[[nodiscard]] std::int64_t scale_up(std::int64_t value, std::int64_t numerator, std::int64_t denominator);

}  // namespace samebase::basics
