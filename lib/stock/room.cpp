#include "stock/room.hpp"

#include "basics/exact.hpp"

namespace samebase::stock {

namespace {

constexpr std::int64_t mg_per_kg = 1'000'000;
constexpr std::int64_t ul_per_ml = 1'000;
constexpr std::int64_t mg_per_unknown_piece = 200'000;

std::int64_t milligrams(const catalogue::Ingredient& ingredient, const measure::Amount& amount) {
    if (const auto mass = catalogue::weight(amount, ingredient)) return mass->value;
    if (amount.dimension() == measure::Dimension::volume) return amount.value();  // as water
    return basics::fits(basics::scale(amount.value(), mg_per_unknown_piece, 1000));
}

}  // namespace

std::int64_t room_taken(const catalogue::Ingredient& ingredient, const measure::Amount& amount) {
    const std::int64_t mg = milligrams(ingredient, amount);
    if (ingredient.ml_per_kg) return basics::scale_up(mg, *ingredient.ml_per_kg, mg_per_kg);
    const auto volume = measure::converted(measure::Amount{measure::Dimension::mass, mg}, measure::Dimension::volume,
                                           ingredient.conversion);
    const std::int64_t microlitres = volume ? volume->value() : mg;
    return basics::scale_up(microlitres, 5, 4 * ul_per_ml);
}

}  // namespace samebase::stock
