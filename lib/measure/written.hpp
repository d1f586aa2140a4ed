// Amounts as people write them: "500 g", "1.5kg", "2 packs", "half a cup", "1½", "2 x 400 g", "500-600 g", "a pinch",
// "some".
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "basics/problem.hpp"
#include "measure/amount.hpp"
#include "measure/measure_set.hpp"

namespace samebase::measure {

/// Present in a stocktake, and left out of sums.
enum class Rough : std::uint8_t { some, low, lots };

/// "some", "low", "lots".
[[nodiscard]] std::string_view name(Rough rough);

struct Written {
    std::variant<Amount, Rough> amount;
    std::optional<Amount> upper;  ///< the larger end of a range: of the same dimension, and no less than the amount
    std::string counted;  ///< what the pieces are, singular: "clove", "pack", "serve"; "" where they have no word

    friend bool operator==(const Written&, const Written&) = default;
};

/// An amount is written in at most this many bytes.
inline constexpr std::size_t longest_amount = 1000;

/// Reads a whole text as one amount. A bare number is pieces; a product ("2 x 400 g") is multiplied out. Each end of a
/// range is rounded once, half to even, and is at most `most_readable`. The Problem has no `where`: the caller knows
/// that.
[[nodiscard]] basics::Result<Written> read_amount(std::string_view text, MeasureSet set);

/// Canonical and exact: "1234.567 g", "250 mL", "2.5". Reading it gives the same amount, in any set, where it is
/// readable at all (0 to `most_readable`).
[[nodiscard]] std::string write(const Amount& amount);

/// As a hand measures it: grams and millilitres to 1 below 10, to 5 below 100, to 10 below a thousand, then kilograms
/// and litres to 0.05; below half of one "a little". Pieces are whole, one at least. Below nothing: with its sign.
[[nodiscard]] std::string write_rounded(const Amount& amount);

/// For people: "1.5 kg", "480 g", "1.25 L", "60 mL", "3", "2 1/2". At most three decimals, and never wrong by more than
/// 0.5 %.
[[nodiscard]] std::string write_kindly(const Amount& amount);

}  // namespace samebase::measure
