// The amount that a plain text (detail/plain.hpp) begins with, and where the text goes on after it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "measure/measure_set.hpp"
#include "measure/written.hpp"

namespace samebase::measure::detail {

enum class LeadFault : std::uint8_t {
    absent,  ///< it does not begin with an amount
    zero_denominator,
    too_many_digits,
    decimal_comma,
    too_large,
    below_nothing,
    range_backwards,  ///< "600-500 g"
    units_differ      ///< "500 g to 2 cups", "2 g x 3 g"
};

struct Lead {
    Written written;
    std::string unit;    ///< the normalised unit or count word, "" where none stands there
    std::string manner;  ///< "large", "heaped": words of size between the number and its unit, "" unless asked for
    std::size_t end = 0;
    bool article = false;  ///< only "a" or "an" without a unit: an amount only where a noun follows
};

/// What may stand in an ingredient line and not in an amount alone, and the reverse. In a line, a second number that
/// makes no range with the first ("1 lb - 450 g") is left to the words after the amount.
enum class Within : std::uint8_t { amount, line };

/// Linear in the length of the text up to the end of the amount.
[[nodiscard]] tl::expected<Lead, LeadFault> read_lead(std::string_view text, std::size_t at, MeasureSet set,
                                                      Within within);

struct UnitAt {
    Unit unit;
    std::size_t end = 0;
    std::string manner;  ///< words of size before it
};

/// A unit that stands right at `at`: one word, or the two of a fluid ounce.
[[nodiscard]] std::optional<UnitAt> read_bare_unit(std::string_view text, std::size_t at);

/// The end of a word of size at `at` ("large", "medium-sized", "heaped"); `at` itself where none stands there.
[[nodiscard]] std::size_t end_of_manner(std::string_view text, std::size_t at);

/// The same amount as so many sticks of butter, by weight; the amount itself where it is not in sticks or does not fit.
[[nodiscard]] Written sticks_of_butter(const Written& written);

}  // namespace samebase::measure::detail
