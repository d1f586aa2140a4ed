#include "stock/thaw.hpp"

#include <algorithm>
#include <cstdint>

#include "stock/packs.hpp"

namespace samebase::stock {

namespace {

constexpr std::int64_t mg_a_day = 1'800'000;

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

}  // namespace samebase::stock
