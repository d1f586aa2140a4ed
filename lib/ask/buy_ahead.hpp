// Buying ahead: over a span as long as a year, what to buy on which trip, in whole packs, so that what is planned and
// what goes every day is there in time; perishables as late as they must be.
//
// Each thing by itself is bought at the least cost (flow/lot_sizing.hpp). They are joined by what a trip costs, and by
// the room of freezers and pantry: a local search over trips gives the plan, and the least that the things cost one by
// one, with the trips that one of them alone needs, is the bound.
#pragma once

#include <optional>
#include <vector>

#include "basics/day.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask {

struct AheadItem {
    catalogue::IngredientId ingredient;
    int packs = 0;
    measure::Amount amount;  ///< of all packs
    basics::Money price;
    bool frozen = false;  ///< it goes into a freezer
};

struct AheadTrip {
    basics::Day day;
    std::vector<AheadItem> items;  ///< in the order of the household's walk by the shelves, then of names
    basics::Money price;           ///< of the items
};

/// What cannot be had in time, by any trip.
struct AheadShort {
    catalogue::IngredientId ingredient;
    measure::Amount amount;
};

/// The kind of place that would hold more than its room.
struct AheadCrowd {
    stock::PlaceKind kind = stock::PlaceKind::near_freezer;
    basics::Day day;  ///< of the most
    std::int64_t over_ml = 0;
};

struct BuyAheadAnswer {
    basics::Span span;
    std::optional<basics::Day> planned_to;  ///< the last planned meal of the span; after it only what goes every day
    std::vector<AheadTrip> trips;           ///< those on which anything is bought
    basics::Money price;                    ///< of everything
    basics::Money for_trips;                ///< what the trips cost the household by themselves
    basics::Money bound;                    ///< no plan costs less, trips and all
    std::vector<AheadShort> short_of;       ///< dearest first
    std::vector<AheadCrowd> crowds;

    [[nodiscard]] basics::Money value() const { return price + for_trips; }
    [[nodiscard]] bool proved() const { return value() == bound; }
};

/// Costs one quick balance of the span and some hundred lot sizings.
[[nodiscard]] BuyAheadAnswer ask_buy_ahead(const kitchen::Kitchen& kitchen, const basics::Span& span);

}  // namespace samebase::ask
