// The price book: what things cost, as the household has seen it. Where nothing was seen the catalogue's guide price
// holds.
#pragma once

#include <optional>
#include <vector>

#include "kitchen/kitchen.hpp"
#include "kitchen/past.hpp"

namespace samebase::ask {

/// What one kilogram, one litre or one piece came to.
struct UnitPrice {
    basics::Day day;
    basics::Money money;

    friend bool operator==(const UnitPrice&, const UnitPrice&) = default;
};

struct ThingPrices {
    catalogue::IngredientId ingredient;
    measure::Amount unit;                  ///< 1 kg, 1 L or 1 piece
    std::vector<kitchen::PriceSeen> seen;  ///< newest first
    std::vector<UnitPrice> unit_prices;    ///< by `seen`
    std::optional<UnitPrice> lowest;       ///< of those that are no shares; of equal ones the newest
    std::optional<UnitPrice> last;         ///< the same
    std::optional<basics::Money> usual;    ///< the median of them
    std::optional<basics::Money> house;    ///< what is reckoned with, by the unit
    std::optional<basics::Money> guide;    ///< of the catalogue, by the unit
};

/// The things of `only`, or where that is empty all whose price was seen; in the order of names.
[[nodiscard]] std::vector<ThingPrices> ask_prices(const kitchen::Kitchen& kitchen, const kitchen::Past& past,
                                                  const std::vector<catalogue::IngredientId>& only);

}  // namespace samebase::ask
