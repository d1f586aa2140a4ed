#include "stock/lot.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numeric>

namespace samebase::stock {

namespace {

constexpr std::array<std::string_view, 4> states{"fresh", "frozen", "thawing", "thawed"};
constexpr std::array<std::string_view, 3> methods{"fridge", "cold-water", "microwave"};

void bound(Lot& lot, const catalogue::Keeping& keeping, basics::Day since) {
    if (keeping.said != catalogue::Keeping::Said::time) return;
    const basics::Day last = since + basics::days{keeping.time.days};
    auto& date = keeping.time.limit == catalogue::Limit::use_by ? lot.use_by : lot.best_by;
    date = date ? std::min(*date, last) : last;
}

const catalogue::Keeping& keeping(const catalogue::Ingredient& ingredient, catalogue::Keep keep) {
    return ingredient.keeps[static_cast<std::size_t>(keep)];
}

catalogue::Keeping keeping(const catalogue::Ingredient& ingredient, PlaceKind place) {
    using Said = catalogue::Keeping::Said;
    const catalogue::Keeping& here = keeping(ingredient, keep_in(place));
    if (here.said == Said::time || freezes(place)) return here;
    const catalogue::Keeping& fridge = keeping(ingredient, catalogue::Keep::fridge);
    if (place == PlaceKind::crisper) return fridge;
    const bool perishable = fridge.said == Said::time && fridge.time.limit == catalogue::Limit::use_by;
    if (place == PlaceKind::pantry && perishable) return {Said::time, {0, catalogue::Limit::use_by}};
    return here;
}

}  // namespace

std::string_view name(State state) {
    return states[static_cast<std::size_t>(state)];
}

std::optional<State> read_state(std::string_view text) {
    for (std::size_t i = 0; i < states.size(); ++i) {
        if (states[i] == text) return static_cast<State>(i);
    }
    return std::nullopt;
}

std::string_view name(ThawMethod method) {
    return methods[static_cast<std::size_t>(method)];
}

std::optional<ThawMethod> read_thaw_method(std::string_view text) {
    for (std::size_t i = 0; i < methods.size(); ++i) {
        if (methods[i] == text) return static_cast<ThawMethod>(i);
    }
    return std::nullopt;
}

std::optional<basics::Day> Lot::eat_by() const {
    if (use_by && best_by) return std::min(*use_by, *best_by);
    return use_by ? use_by : best_by;
}

bool Lot::ready(basics::Day day) const {
    if (state == State::frozen) return false;
    return state == State::fresh || thawed_on.value_or(since) <= day;
}

void set_dates(Lot& lot, const catalogue::Ingredient& ingredient, PlaceKind place) {
    lot.use_by.reset();
    lot.best_by.reset();
    if (lot.state == State::frozen) {
        bound(lot, keeping(ingredient, catalogue::Keep::freezer), lot.since);
        return;
    }
    if (lot.state == State::fresh && lot.printed_use_by) {
        lot.use_by = lot.printed_use_by;
        // The label of what needs a fridge says nothing of a shelf.
        const catalogue::Keeping here = keeping(ingredient, place);
        if (place == PlaceKind::pantry && here.time.limit == catalogue::Limit::use_by) bound(lot, here, lot.since);
        // Opened where nothing is said of that, it is as if it had never been closed.
        const bool nothing_said = keeping(ingredient, catalogue::Keep::opened).said != catalogue::Keeping::Said::time;
        if (lot.opened_on && nothing_said) bound(lot, keeping(ingredient, place), *lot.opened_on);
    } else if (lot.state == State::fresh) {
        bound(lot, keeping(ingredient, place), lot.since);
    } else {
        const basics::Day ready = lot.thawed_on.value_or(lot.since);
        if (lot.thaw == ThawMethod::cold_water || lot.thaw == ThawMethod::microwave) {
            lot.use_by = ready;  // cooked at once
        } else {
            bound(lot, keeping(ingredient, catalogue::Keep::thawed), ready);
            bound(lot, keeping(ingredient, place), ready);
        }
    }
    if (lot.opened_on) bound(lot, keeping(ingredient, catalogue::Keep::opened), *lot.opened_on);
}

catalogue::AllergenSet counted_allergens(const Lot& lot, const catalogue::Catalogue& catalogue,
                                         const cookbook::Cookbook& cookbook) {
    catalogue::AllergenSet set = catalogue[lot.ingredient].counted_allergens();
    if (lot.dish) set.add(cookbook::allergens(cookbook[*lot.dish], catalogue));
    set.add(lot.also);
    return set;
}

std::optional<std::string> check(const Lot& lot, const catalogue::Catalogue& catalogue) {
    const catalogue::Ingredient& ingredient = catalogue[lot.ingredient];
    if (lot.amount.dimension() != ingredient.dimension) {
        return fmt::format("lot {}: '{}' is not counted in that", lot.number, ingredient.id);
    }
    if (lot.amount.value() < 0) return fmt::format("lot {} is below nothing", lot.number);
    if (!lot.packs.empty() &&
        std::accumulate(lot.packs.begin(), lot.packs.end(), std::int64_t{0}) != lot.amount.value()) {
        return fmt::format("lot {}: its packs do not sum to its amount", lot.number);
    }
    if (std::any_of(lot.packs.begin(), lot.packs.end(), [](std::int64_t pack) { return pack <= 0; })) {
        return fmt::format("lot {} has an empty pack", lot.number);
    }
    if (lot.part_of != 0 && (lot.packs.empty() || lot.part_of <= lot.packs.back())) {
        return fmt::format("lot {}: its last pack is no part of a larger one", lot.number);
    }
    if (lot.rough && lot.amount.value() != 0) return fmt::format("lot {} is both rough and weighed", lot.number);
    return std::nullopt;
}

}  // namespace samebase::stock
