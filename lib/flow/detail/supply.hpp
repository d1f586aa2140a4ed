// What there is and what can be bought, as units and offers.
#pragma once

#include <optional>
#include <vector>

#include "basics/day.hpp"
#include "flow/component.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::flow::detail {

/// The lot's units on the first day of the span; none where it is past its time, empty or rough.
[[nodiscard]] std::vector<Unit> units_of(const kitchen::Kitchen& kitchen, const stock::Lot& lot, basics::Span span);

/// What a dish leaves on a day, as a unit.
[[nodiscard]] Unit made_unit(const kitchen::Kitchen& kitchen, catalogue::IngredientId ingredient, std::int64_t amount,
                             cookbook::DishId dish, int day);

/// What can be bought on the shopping days of the span; nothing for what is cooked or has no pack.
[[nodiscard]] std::optional<Offer> offer_of(const kitchen::Kitchen& kitchen, catalogue::IngredientId id,
                                            basics::Span span);

}  // namespace samebase::flow::detail
