#include "measure/amount.hpp"

#include <array>

namespace samebase::measure {

namespace {

/// Milligrams per thousand units of a dimension: of its microlitres or thousandths of a piece.
tl::expected<std::int64_t, Missing> mg_per_thousand(Dimension dimension, const Conversion& by) {
    switch (dimension) {
        case Dimension::mass:
            return 1000;
        case Dimension::volume:
            if (!by.mg_per_ml || *by.mg_per_ml <= 0) return tl::make_unexpected(Missing::density);
            return *by.mg_per_ml;
        case Dimension::pieces:
            if (!by.mg_per_piece || *by.mg_per_piece <= 0) return tl::make_unexpected(Missing::piece_weight);
            return *by.mg_per_piece;
    }
    return tl::make_unexpected(Missing::range);
}

}  // namespace

std::optional<Amount> scaled(const Amount& amount, std::int64_t numerator, std::int64_t denominator) {
    const auto value = basics::scale(amount.value(), numerator, denominator);
    if (!value) return std::nullopt;
    return Amount{amount.dimension(), *value};
}

tl::expected<Amount, Missing> converted(const Amount& amount, Dimension to, const Conversion& by) {
    if (amount.dimension() == to) return amount;
    const auto from_factor = mg_per_thousand(amount.dimension(), by);
    if (!from_factor) return tl::make_unexpected(from_factor.error());
    const auto to_factor = mg_per_thousand(to, by);
    if (!to_factor) return tl::make_unexpected(to_factor.error());
    const auto value = basics::scale(amount.value(), *from_factor, *to_factor);
    if (!value) return tl::make_unexpected(Missing::range);
    return Amount{to, *value};
}

}  // namespace samebase::measure
