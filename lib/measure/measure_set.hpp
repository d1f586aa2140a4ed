// Measure sets and the words for units. A set fixes how large a cup, a spoon or a pint is; masses and the litre are the
// same in all. Sizes are exact fractions of a milligram, a microlitre or a thousandth of a piece: reading an amount
// rounds only once.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "measure/amount.hpp"

namespace samebase::measure {

enum class MeasureSet : std::uint8_t {
    australian_metric,  ///< cup 250 mL, tablespoon 20 mL, teaspoon 5 mL; pints and fluid ounces are imperial
    metric_15,          ///< the same with a tablespoon of 15 mL
    us_customary,       ///< from the US gallon of 231 cubic inches
    imperial            ///< from the gallon of 4.54609 L; cup 10 fluid ounces, tablespoon 5/8 of one (traditional)
};

inline constexpr std::size_t measure_set_count = 4;
inline constexpr std::array<MeasureSet, measure_set_count> measure_sets{
    MeasureSet::australian_metric, MeasureSet::metric_15, MeasureSet::us_customary, MeasureSet::imperial};

/// "australian-metric", "metric-15", "us-customary", "imperial".
[[nodiscard]] std::string_view name(MeasureSet set);
[[nodiscard]] std::optional<MeasureSet> read_measure_set(std::string_view text);

/// An exact size in the smallest units of a dimension: milligrams, microlitres, thousandths of a piece.
struct Size {
    std::int64_t numerator = 0;
    std::int64_t denominator = 1;

    friend constexpr bool operator==(const Size&, const Size&) = default;
};

/// A unit, or a word for what is counted (clove, slice, pack), which has the dimension pieces and the size of one
/// piece.
struct Unit {
    std::string_view name;  ///< normalised and singular: "g", "mL", "cup", "tablespoon", "clove"
    Dimension dimension = Dimension::pieces;
    bool counted = false;
    std::array<Size, measure_set_count> sizes{};  ///< in the order of MeasureSet

    [[nodiscard]] Size size(MeasureSet set) const { return sizes[static_cast<std::size_t>(set)]; }
};

/// The unit that a word stands for, in any case and number, with or without a full stop; `T` is a tablespoon and `t` a
/// teaspoon. A fluid ounce is one word here, "fluid ounce" or "fl oz", with one space.
[[nodiscard]] std::optional<Unit> find_unit(std::string_view word);

/// A stick of butter: a quarter of a pound. (United States trade practice; other sticks are counted.)
inline constexpr Size stick_of_butter{45'359'237, 400};

}  // namespace samebase::measure
