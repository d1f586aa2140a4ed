#include "flow/detail/supply.hpp"

#include <algorithm>

#include "basics/ranges.hpp"
#include "stock/opening.hpp"
#include "stock/thaw.hpp"

namespace samebase::flow::detail {

namespace {

using catalogue::Keep;
using catalogue::Keeping;

std::optional<int> days_in(const catalogue::Ingredient& ingredient, Keep keep) {
    const Keeping& keeping = ingredient.keeps[static_cast<std::size_t>(keep)];
    if (keeping.said != Keeping::Said::time) return std::nullopt;
    return keeping.time.days;
}

Slot last_slot(basics::Day last, basics::Span span) {
    return dinner_of(static_cast<int>((last - span.first).count()));
}

/// Until when a lot that is not frozen counts: its use-by; for what is kept cool its best-by too, past which one looks
/// and decides, so that no plan should lean on it. Dry goods past their best-by stay good.
Slot end_of(const kitchen::Kitchen& kitchen, const stock::Lot& lot, basics::Span span) {
    const auto kind = kitchen.place(lot.place).kind;
    const bool cool = kind == stock::PlaceKind::fridge || kind == stock::PlaceKind::crisper;
    const auto last = cool ? lot.eat_by() : lot.use_by;
    return last ? last_slot(*last, span) : never;
}

/// Days that something is good once it is opened, where that matters: packs are opened one by one, large pieces are cut
/// one by one, and loose perishables are opened as a whole. Of small pieces, be they in a carton or not, and of loose
/// things whose quality only suffers, no more is begun than is used.
std::optional<int> days_once_open(const catalogue::Ingredient& ingredient, bool in_packs) {
    const auto days = days_in(ingredient, Keep::opened);
    if (!days || stock::large_piece(ingredient)) return days;
    if (stock::in_small_pieces(ingredient)) return std::nullopt;
    if (in_packs) return days;
    const auto limit = ingredient.keeps[static_cast<std::size_t>(Keep::opened)].time.limit;
    return limit == catalogue::Limit::use_by ? days : std::nullopt;
}

/// Opening matters where it ends a unit's time sooner than it would end anyway.
int opened_days(const catalogue::Ingredient& ingredient, const stock::Lot& lot, Slot last) {
    const auto days = days_once_open(ingredient, !lot.packs.empty());
    if (!days || lot.opened_on || lot.state != stock::State::fresh) return -1;
    return last != never && day_of(last) <= *days ? -1 : *days;
}

void freeze(const catalogue::Ingredient& ingredient, const stock::Lot& lot, std::int64_t pack, Unit& unit) {
    if (ingredient.thaw == catalogue::Thaw::from_frozen) return;
    stock::Lot alone = lot;
    alone.amount = {ingredient.dimension, pack};
    alone.packs = {pack};
    unit.thaw_days = stock::days_to_thaw(alone, ingredient, stock::ThawMethod::fridge);
    unit.thawed_days = days_in(ingredient, Keep::thawed).value_or(days_in(ingredient, Keep::fridge).value_or(1));
    unit.cold_water = ingredient.kind != catalogue::Kind::cooked && ingredient.thaw == catalogue::Thaw::flat;
}

std::vector<std::int64_t> portions(const catalogue::Ingredient& ingredient, const stock::Lot& lot, bool as_packs) {
    if (!as_packs) return {lot.amount.value()};
    if (!lot.packs.empty()) return lot.packs;
    std::vector<std::int64_t> result;
    const bool frozen_serves = ingredient.in_serves && lot.state == stock::State::frozen;
    const auto one = frozen_serves ? std::optional<std::int64_t>(1000) : stock::large_piece(ingredient);
    if (one && (frozen_serves || lot.state == stock::State::fresh)) {
        for (auto left = lot.amount.value(); left > 0; left -= *one) result.push_back(std::min(*one, left));
        return result;
    }
    return {lot.amount.value()};
}

/// How long something bought is counted on where it is put away, as end_of() counts its lot then; below 0: for good.
int days_where_it_is_put(const kitchen::Kitchen& kitchen, const catalogue::Ingredient& ingredient,
                         catalogue::IngredientId id) {
    const auto place = kitchen::usual_place(kitchen, id);
    if (!place) return -1;
    const auto days_at = [&](Keep keep, bool best_by_ends) {
        const Keeping& keeping = ingredient.keeps[static_cast<std::size_t>(keep)];
        const bool ends = best_by_ends || keeping.time.limit == catalogue::Limit::use_by;
        return keeping.said == Keeping::Said::time && ends ? keeping.time.days : -1;
    };
    switch (kitchen.place(*place).kind) {
        case stock::PlaceKind::fridge:
            return days_at(Keep::fridge, true);
        case stock::PlaceKind::crisper:
            return days_at(Keep::crisper, true);
        case stock::PlaceKind::pantry:
            return days_at(Keep::pantry, false);
        default:
            return -1;
    }
}

/// What is bought frozen stays so: the bag is opened, and nothing ends.
bool goes_into_a_freezer(const kitchen::Kitchen& kitchen, catalogue::IngredientId id) {
    const auto place = kitchen::usual_place(kitchen, id);
    if (!place) return false;
    const auto kind = kitchen.place(*place).kind;
    return kind == stock::PlaceKind::near_freezer || kind == stock::PlaceKind::far_freezer;
}

}  // namespace

std::vector<Unit> units_of(const kitchen::Kitchen& kitchen, const stock::Lot& lot, basics::Span span) {
    std::vector<Unit> units;
    if (!lot.usable_amount()) return units;
    const catalogue::Ingredient& ingredient = kitchen.catalogue()[lot.ingredient];
    const bool frozen = lot.state == stock::State::frozen;
    Unit unit{.lot = lot.number, .last = frozen ? never : end_of(kitchen, lot, span)};
    if (unit.last < lunch_of(0)) return units;
    if (!frozen) unit.opened_days = opened_days(ingredient, lot, unit.last);
    if (lot.state == stock::State::thawing && lot.thawed_on) {
        unit.first = lunch_of(std::max(0, static_cast<int>((*lot.thawed_on - span.first).count())));
    }
    const bool as_packs = (frozen && ingredient.thaw != catalogue::Thaw::from_frozen) || unit.opened_days >= 0;
    for (const std::int64_t portion : portions(ingredient, lot, as_packs)) {
        unit.amount = portion;
        unit.price = kitchen::price(kitchen, lot, portion);
        if (frozen) freeze(ingredient, lot, portion, unit);
        units.push_back(unit);
    }
    return units;
}

Unit made_unit(const kitchen::Kitchen& kitchen, catalogue::IngredientId id, std::int64_t amount, cookbook::DishId dish,
               int day) {
    const catalogue::Ingredient& ingredient = kitchen.catalogue()[id];
    Unit unit{.amount = amount, .first = lunch_of(day + 1)};
    if (const auto days = days_in(ingredient, Keep::fridge)) unit.last = dinner_of(day + *days);
    if (const auto price = kitchen::price(kitchen, id, amount)) {
        unit.price = *price;
    } else if (ingredient.in_serves) {
        unit.price = basics::share_of(kitchen::cost_per_serve(kitchen, dish), amount, 1000);
    }
    return unit;
}

std::optional<Offer> offer_of(const kitchen::Kitchen& kitchen, catalogue::IngredientId id, basics::Span span) {
    const catalogue::Ingredient& ingredient = kitchen.catalogue()[id];
    if (ingredient.kind == catalogue::Kind::cooked || !ingredient.pack) return std::nullopt;
    Offer offer{.pack = ingredient.pack->amount.value(), .price = {}, .slots = {}};
    offer.price = kitchen::price(kitchen, id, offer.pack).value_or(ingredient.pack->price);
    for (const basics::Day day : basics::days_of(span)) {
        if (kitchen::sold_on(kitchen.household, day, ingredient)) {
            offer.slots.push_back(shopping_of(static_cast<int>((day - span.first).count())));
        }
    }
    const bool raw = ingredient.kind == catalogue::Kind::raw;
    // Of raw meat and fish as much is taken as is needed, and the rest is frozen that day. Of several large pieces no
    // more than one is cut.
    offer.frozen = raw && days_in(ingredient, Keep::freezer) && ingredient.thaw != catalogue::Thaw::from_frozen;
    if (offer.frozen || goes_into_a_freezer(kitchen, id)) return offer;
    offer.keeps_days = days_where_it_is_put(kitchen, ingredient, id);
    const auto piece = stock::large_piece(ingredient);
    if (raw && piece && *piece < offer.pack) return offer;
    // What is bought raw and suffers in quality only comes loose.
    if (const auto days = days_once_open(ingredient, !raw)) {
        offer.opened_days = offer.keeps_days >= 0 && offer.keeps_days <= *days ? -1 : *days;
    }
    return offer;
}

}  // namespace samebase::flow::detail
