#include "kitchen/kitchen.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

namespace samebase::kitchen {

namespace {

using catalogue::Keep;
using Told = catalogue::Keeping::Said;

const catalogue::Keeping& keeping(const catalogue::Ingredient& thing, Keep keep) {
    return thing.keeps[static_cast<std::size_t>(keep)];
}

/// The kind of place where such a thing usually is.
stock::PlaceKind usual_kind(const catalogue::Ingredient& thing) {
    const auto& fridge = keeping(thing, Keep::fridge);
    const bool elsewhere = fridge.said == Told::time || keeping(thing, Keep::pantry).said == Told::time ||
                           keeping(thing, Keep::crisper).said == Told::time;
    const bool sold_frozen = thing.name.starts_with("frozen") || (thing.pack && thing.pack->name.starts_with("frozen"));
    if (keeping(thing, Keep::freezer).said == Told::time && (sold_frozen || !elsewhere))
        return stock::PlaceKind::near_freezer;
    if (fridge.said == Told::time && fridge.time.limit == catalogue::Limit::use_by) return stock::PlaceKind::fridge;
    if (keeping(thing, Keep::crisper).said == Told::time) return stock::PlaceKind::crisper;
    if (keeping(thing, Keep::pantry).said == Told::time) return stock::PlaceKind::pantry;
    return fridge.said == Told::time ? stock::PlaceKind::fridge : stock::PlaceKind::pantry;
}

}  // namespace

Knowledge::Knowledge(catalogue::Catalogue the_catalogue, cookbook::Cookbook the_cookbook,
                     std::vector<graph::Statement> statements, const graph::Parameters& parameters)
    : catalogue(std::move(the_catalogue)),
      cookbook(std::move(the_cookbook)),
      graph(catalogue, std::move(statements), parameters) {
    const auto tells = graph::telling(cookbook, catalogue, parameters);
    profiles.reserve(cookbook.dishes().size());
    for (const auto& dish : cookbook.dishes()) profiles.push_back(graph::profile(dish, catalogue, tells, parameters));
}

const stock::Lot* Kitchen::lot(stock::LotNumber number) const {
    const auto found = std::lower_bound(lots.begin(), lots.end(), number,
                                        [](const stock::Lot& lot, stock::LotNumber key) { return lot.number < key; });
    return found != lots.end() && found->number == number ? &*found : nullptr;
}

bool Kitchen::taken_as_there(catalogue::IngredientId id) const {
    return household.staples[id.index()] && !household.staples_out[id.index()];
}

namespace {

bool earlier(const Planned& a, const Planned& b) {
    return std::tuple{a.day, a.meal, a.dish} < std::tuple{b.day, b.meal, b.dish};
}

bool sound(const std::vector<LineSwap>& swaps) {
    std::set<catalogue::IngredientId> seen;
    return std::all_of(swaps.begin(), swaps.end(), [&](const LineSwap& swap) {
        const bool amounts =
            std::all_of(swap.use.begin(), swap.use.end(), [](const auto& use) { return use.second >= 0; });
        return swap.serves_thousandths > 0 && amounts && seen.insert(swap.of).second;
    });
}

}  // namespace

std::optional<std::string> Kitchen::check() const {
    if (auto reason = catalogue().check()) return reason;
    if (auto reason = cookbook().check(catalogue())) return reason;
    if (auto reason = graph().check()) return reason;
    for (std::size_t i = 0; i < lots.size(); ++i) {
        if (i > 0 && lots[i - 1].number >= lots[i].number) return fmt::format("lot {} is out of order", lots[i].number);
        if (lots[i].place.index() >= household.places.size()) return fmt::format("lot {} is nowhere", lots[i].number);
        if (auto reason = stock::check(lots[i], catalogue())) return reason;
    }
    if (!std::is_sorted(plan.begin(), plan.end(), earlier) || !std::is_sorted(done.begin(), done.end(), earlier)) {
        return "the plan is out of order";
    }
    for (const Planned& row : plan) {
        if (!sound(row.swaps)) return fmt::format("the plan of {} swaps what cannot be", basics::iso(row.day));
    }
    if (!std::is_sorted(history.begin(), history.end(), [](const Had& a, const Had& b) { return a.day < b.day; })) {
        return "the history is out of order";
    }
    return std::nullopt;
}

std::span<const Had> had(const std::vector<Had>& history, basics::Day day) {
    struct ByDay {
        bool operator()(const Had& had, basics::Day key) const { return had.day < key; }
        bool operator()(basics::Day key, const Had& had) const { return key < had.day; }
    };
    const auto [first, last] = std::equal_range(history.begin(), history.end(), day, ByDay{});
    return {first, last};
}

void settle(Kitchen& kitchen) {
    Plan rows = std::move(kitchen.plan);
    rows.insert(rows.end(), kitchen.done.begin(), kitchen.done.end());
    std::sort(rows.begin(), rows.end(), earlier);
    kitchen.plan.clear();
    kitchen.done.clear();
    const auto is_done = [&](const Planned& row) {
        const auto of_day = had(kitchen.history, row.day);
        const auto meals =
            std::count_if(of_day.begin(), of_day.end(), [&](const Had& h) { return h.meal == row.meal; });
        if (meals == 0) return false;
        if (row.meal == Meal::dinner) return true;
        const bool itself = std::any_of(of_day.begin(), of_day.end(),
                                        [&](const Had& h) { return h.meal == row.meal && h.dish == row.dish; });
        const auto planned = std::count_if(rows.begin(), rows.end(), [&](const Planned& other) {
            return other.day == row.day && other.meal == row.meal;
        });
        return itself || meals >= planned;
    };
    for (const Planned& row : rows) (is_done(row) ? kitchen.done : kitchen.plan).push_back(row);
}

std::vector<std::size_t> eaters(const Kitchen& kitchen, basics::Day day, Meal meal) {
    std::vector<std::size_t> result;
    for (std::size_t i = 0; i < kitchen.household.people.size(); ++i) {
        if (home(kitchen.household.people[i], day, meal)) result.push_back(i);
    }
    return result;
}

std::int64_t serves_wanted(const Kitchen& kitchen, basics::Day day, Meal meal) {
    std::int64_t serves = 0;
    for (const std::size_t i : eaters(kitchen, day, meal)) serves += kitchen.household.people[i].serve_thousandths;
    if (meal == Meal::dinner) {
        for (const Occasion& occasion : kitchen.household.occasions) {
            if (occasion.day == day) serves += std::int64_t{1000} * occasion.guests;
        }
    }
    return serves;
}

catalogue::AllergenSet guests_avoid(const Kitchen& kitchen, basics::Day day) {
    catalogue::AllergenSet set;
    for (const Occasion& occasion : kitchen.household.occasions) {
        if (occasion.day == day) set.add(occasion.guests_avoid);
    }
    return set;
}

const Planned* planned(const Plan& plan, basics::Day day, Meal meal, std::optional<cookbook::DishId> dish) {
    const auto found = std::find_if(plan.begin(), plan.end(), [&](const Planned& p) {
        return p.day == day && p.meal == meal && (!dish || p.dish == *dish);
    });
    return found == plan.end() ? nullptr : &*found;
}

std::vector<LineSwap> both(std::span<const LineSwap> first, std::span<const LineSwap> rest) {
    std::vector<LineSwap> all(first.begin(), first.end());
    for (const LineSwap& swap : rest) {
        const bool there = std::any_of(first.begin(), first.end(), [&](const auto& s) { return s.of == swap.of; });
        if (!there) all.push_back(swap);
    }
    return all;
}

std::optional<stock::PlaceId> usual_place(const Kitchen& kitchen, catalogue::IngredientId id) {
    const auto& thing = kitchen.catalogue()[id];
    const auto kind = usual_kind(thing);
    std::optional<stock::PlaceId> of_family;
    for (const auto& lot : kitchen.lots) {
        if (kitchen.place(lot.place).kind != kind) continue;
        if (lot.ingredient == id) return lot.place;
        if (!of_family && kitchen.catalogue()[lot.ingredient].family == thing.family) of_family = lot.place;
    }
    if (of_family) return of_family;
    if (const auto first = place_of(kitchen.household, {kind})) return first;
    return kitchen.household.places.empty() ? std::nullopt : std::optional(stock::PlaceId{0});
}

std::optional<basics::Money> price(const Kitchen& kitchen, catalogue::IngredientId id, std::int64_t amount) {
    for (const Price& price : kitchen.household.prices) {
        if (price.ingredient == id) return basics::share_of(price.price, amount, price.amount.value());
    }
    const auto& pack = kitchen.catalogue()[id].pack;
    if (!pack) return std::nullopt;
    return basics::share_of(pack->price, amount, pack->amount.value());
}

basics::Money price(const Kitchen& kitchen, const stock::Lot& lot, std::int64_t amount) {
    if (lot.paid && lot.paid_for > 0) return basics::share_of(*lot.paid, amount, lot.paid_for);
    if (const auto known = price(kitchen, lot.ingredient, amount)) return *known;
    if (lot.dish) return basics::share_of(cost_per_serve(kitchen, *lot.dish), amount, 1000);
    return {};
}

basics::Money cost_per_serve(const Kitchen& kitchen, cookbook::DishId id) {
    const cookbook::Dish& dish = kitchen.cookbook()[id];
    basics::Money total;
    for (const cookbook::DishIngredient& line : dish.ingredients) {
        if (kitchen.household.staples[line.ingredient.index()]) continue;
        if (const auto cost = price(kitchen, line.ingredient, line.amount.value())) total += *cost;
    }
    return basics::share_of(total, 1, dish.serves);
}

}  // namespace samebase::kitchen
