// What the ledger remembers of buying, eating and tossing, for questions that look back. What was undone never was.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basics/day.hpp"
#include "basics/money.hpp"
#include "stock/lot.hpp"

namespace samebase::kitchen {

/// Something that was bought.
struct Bought {
    basics::Day day;
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;
    std::optional<basics::Money> paid;  ///< nothing: nobody said

    friend bool operator==(const Bought&, const Bought&) = default;
};

/// Something that was eaten or cooked with, or went to the bin.
struct Gone {
    basics::Day day;
    stock::Lot lot;  ///< what it was of: its ingredient, dish, dates and what was paid; its place is not said
    std::int64_t amount = 0;
    std::string reason;  ///< why it was tossed
};

/// Where a price comes from.
enum class PriceFrom : std::uint8_t {
    paid,   ///< what was paid for the thing
    said,   ///< somebody said what it costs
    share,  ///< a share of a payment for several things: no price of its own
};

struct PriceSeen {
    basics::Day day;
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;  ///< above 0
    basics::Money money;
    PriceFrom from = PriceFrom::paid;

    friend bool operator==(const PriceSeen&, const PriceSeen&) = default;
};

/// Each list in the order in which it was written.
struct Past {
    std::vector<Bought> bought;
    std::vector<Gone> used;
    std::vector<Gone> tossed;
    std::vector<PriceSeen> prices;
};

}  // namespace samebase::kitchen
