// Exact amounts. A mass is in milligrams, a volume in microlitres, a count in thousandths of a piece; each is a type of
// its own, and Amount is any one of them. Reading rounds once, half to even; from then on arithmetic is exact.
#pragma once

#include <cassert>
#include <compare>
#include <cstdint>
#include <optional>
#include <tl/expected.hpp>

#include "basics/exact.hpp"

namespace samebase::measure {

enum class Dimension : std::uint8_t { mass, volume, pieces };

/// Whatever is read into an amount is at most this in size, so that sums of thousands of amounts fit in 64 bits:
/// 10^15 mg are a million tonnes.
inline constexpr std::int64_t most_readable = 1'000'000'000'000'000;

template <Dimension D>
struct Quantity {
    std::int64_t value = 0;  ///< milligrams, microlitres, or thousandths of a piece

    friend constexpr auto operator<=>(const Quantity&, const Quantity&) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b) {
        return {basics::fits(basics::add(a.value, b.value))};
    }
    friend constexpr Quantity operator-(Quantity a, Quantity b) {
        return {basics::fits(basics::add(a.value, -b.value))};
    }
};

using Mass = Quantity<Dimension::mass>;
using Volume = Quantity<Dimension::volume>;
using Pieces = Quantity<Dimension::pieces>;

/// One quantity of any dimension. Two amounts are compared, added and subtracted only within one dimension.
class Amount {
  public:
    constexpr Amount() = default;
    constexpr Amount(Dimension dimension, std::int64_t value) : value_(value), dimension_(dimension) {}
    template <Dimension D>
    constexpr Amount(Quantity<D> quantity) : value_(quantity.value), dimension_(D) {}  // NOLINT: meant to be implicit

    [[nodiscard]] constexpr Dimension dimension() const { return dimension_; }
    [[nodiscard]] constexpr std::int64_t value() const { return value_; }
    [[nodiscard]] constexpr bool is_zero() const { return value_ == 0; }

    friend constexpr bool operator==(const Amount&, const Amount&) = default;
    friend constexpr std::strong_ordering operator<=>(const Amount& a, const Amount& b) {
        assert(a.dimension_ == b.dimension_);
        return a.value_ <=> b.value_;
    }
    friend constexpr Amount operator+(const Amount& a, const Amount& b) {
        assert(a.dimension_ == b.dimension_);
        return {a.dimension_, basics::fits(basics::add(a.value_, b.value_))};
    }
    friend constexpr Amount operator-(const Amount& a, const Amount& b) {
        assert(a.dimension_ == b.dimension_);
        return {a.dimension_, basics::fits(basics::add(a.value_, -b.value_))};
    }
    constexpr Amount& operator+=(const Amount& b) { return *this = *this + b; }
    constexpr Amount& operator-=(const Amount& b) { return *this = *this - b; }

  private:
    std::int64_t value_ = 0;
    Dimension dimension_ = Dimension::mass;
};

/// amount * numerator / denominator, rounded half to even; nothing where it does not fit. The denominator is above 0.
[[nodiscard]] std::optional<Amount> scaled(const Amount& amount, std::int64_t numerator, std::int64_t denominator);

/// What one ingredient needs to be known by to change dimension. Milligrams per millilitre, and milligrams of one
/// piece.
struct Conversion {
    std::optional<std::int64_t> mg_per_ml;
    std::optional<std::int64_t> mg_per_piece;
};

/// What a conversion lacks.
enum class Missing : std::uint8_t { density, piece_weight, range };

/// The amount in another dimension, rounded half to even. A volume in pieces, or the reverse, goes by way of the mass
/// without rounding in between. Errors: the figure that is missing, or `range` where the result does not fit.
[[nodiscard]] tl::expected<Amount, Missing> converted(const Amount& amount, Dimension to, const Conversion& by);

}  // namespace samebase::measure
