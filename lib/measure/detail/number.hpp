// Numbers as cooks write them, kept as exact fractions: "3", "1,000", "13.5", "1/2", "1 1/2", "one and a half", "a
// dozen".
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <tl/expected.hpp>

#include "measure/amount.hpp"

namespace samebase::measure::detail {

__extension__ using Wide = unsigned __int128;

/// A fraction, 0 or more, in lowest terms.
struct Ratio {
    Wide numerator = 0;
    Wide denominator = 1;
};

/// Nothing where the result does not fit.
[[nodiscard]] std::optional<Ratio> product(const Ratio& a, const Ratio& b);
[[nodiscard]] std::optional<Ratio> sum(const Ratio& a, const Ratio& b);
/// Rounded half to even; nothing above `most_readable`.
[[nodiscard]] std::optional<std::int64_t> rounded(const Ratio& a);

enum class Fault { absent, zero_denominator, too_many_digits, decimal_comma };

struct Number {
    Ratio value;
    std::size_t end = 0;   ///< where the text goes on
    bool article = false;  ///< only "a" or "an", which counts where a noun follows
    bool dozens = false;   ///< it ended in "dozen"
    bool whole = false;    ///< an integer in digits
};

/// The number that stands at `at` (not a space) of a plain text.
[[nodiscard]] tl::expected<Number, Fault> read_number(std::string_view text, std::size_t at);

/// The run of letters at `at`, and the first place at or after it that is not a space.
[[nodiscard]] std::string_view word_at(std::string_view text, std::size_t at);
[[nodiscard]] std::size_t skip_spaces(std::string_view text, std::size_t at);

}  // namespace samebase::measure::detail
