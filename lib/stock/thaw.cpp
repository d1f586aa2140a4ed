#include "stock/thaw.hpp"

#include <algorithm>
#include <cstdint>

#include "stock/packs.hpp"

namespace samebase::stock {

namespace {

constexpr std::int64_t mg_a_day = 1'800'000;
constexpr std::int64_t mg_per_kg = 1'000'000;

/// A whole number of minutes for so much a kilogram, rounded up.
std::int64_t minutes_at(std::int64_t minutes_per_kg, std::int64_t milligrams) {
    return (milligrams * minutes_per_kg + mg_per_kg - 1) / mg_per_kg;
}

}  // namespace

int days_to_thaw(const Lot& lot, const catalogue::Ingredient& ingredient, ThawMethod method) {
    if (method != ThawMethod::fridge) return 0;
    const bool thin = ingredient.in_serves || ingredient.thaw == catalogue::Thaw::flat ||
                      ingredient.thaw == catalogue::Thaw::from_frozen;
    if (thin && lot.packs.empty()) return 1;
    const std::int64_t largest = lot.packs.empty() ? lot.amount.value() : whole_pack(lot);
    const auto mass = catalogue::weight({lot.amount.dimension(), largest}, ingredient);
    if (!mass) return 1;
    return static_cast<int>(std::clamp<std::int64_t>((mass->value + mg_a_day - 1) / mg_a_day, 1, 30));
}

int cold_water_minutes(std::int64_t milligrams) {
    constexpr std::int64_t hour = 60;
    constexpr std::int64_t small_per_kg = 133;  // 60 minutes for 454 g are 132.2 a kilogram
    constexpr std::int64_t large_per_kg = 66;
    constexpr std::int64_t most_mg = 100'000'000;
    const std::int64_t mg = std::clamp<std::int64_t>(milligrams, 0, most_mg);
    if (mg <= 454'000) return static_cast<int>(hour);
    const std::int64_t small = std::min(minutes_at(small_per_kg, mg), 3 * hour);
    return static_cast<int>(std::max({hour, small, minutes_at(large_per_kg, mg)}));
}

}  // namespace samebase::stock
