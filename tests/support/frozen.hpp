// Small kitchens of the demo household with a few frozen lots and a few dinners, for what is taken out and brought in.
#pragma once

#include <numeric>
#include <vector>

#include "flow/cooking.hpp"
#include "stock/packs.hpp"
#include "support/demo.hpp"

namespace samebase::tests {

inline stock::PlaceId place(std::string_view id) {
    const auto& places = demo().household.places;
    const auto found = std::find_if(places.begin(), places.end(), [&](const auto& p) { return p.id == id; });
    INFO("place " << id);
    REQUIRE(found != places.end());
    return stock::PlaceId{static_cast<std::uint32_t>(found - places.begin())};
}

/// The demo household with nothing in stock, nothing planned, no standing uses and no shopping days; all plain staples.
inline kitchen::Kitchen bare_kitchen() {
    kitchen::Kitchen kitchen = demo();
    kitchen.lots.clear();
    kitchen.plan.clear();
    kitchen.household.standing_uses.clear();
    kitchen.household.trips.clear();
    return kitchen;
}

/// Frozen packs of an ingredient, in its own dimension times a thousand (grams, serves), that arrived so long ago;
/// loose where `loose` says so.
inline void add_frozen(kitchen::Kitchen& kitchen, std::string_view id, std::string_view where,
                       const std::vector<std::int64_t>& packs, int days_ago = 10, bool loose = false,
                       std::string_view cooked_as = {}) {
    stock::Lot lot;
    lot.number = kitchen.lots.empty() ? 1 : kitchen.lots.back().number + 1;
    lot.ingredient = thing(id);
    if (!cooked_as.empty()) lot.dish = dish(cooked_as);
    lot.place = place(where);
    for (const std::int64_t pack : packs) lot.packs.push_back(pack * 1000);
    lot.amount = {kitchen.catalogue()[lot.ingredient].dimension,
                  std::accumulate(lot.packs.begin(), lot.packs.end(), std::int64_t{0})};
    if (loose) lot.packs.clear();
    lot.state = stock::State::frozen;
    lot.arrived = demo_day - basics::days{days_ago};
    lot.since = lot.arrived;
    stock::set_dates(lot, kitchen.catalogue()[lot.ingredient], kitchen.place(lot.place).kind);
    kitchen.lots.push_back(lot);
    REQUIRE_FALSE(kitchen.check());
}

inline kitchen::Planned& plan_dinner(kitchen::Kitchen& kitchen, std::string_view what, int day,
                                     bool ready_meal = false) {
    kitchen.plan.push_back({.day = demo_day + basics::days{day},
                            .meal = kitchen::Meal::dinner,
                            .dish = dish(what),
                            .ready_meal = ready_meal,
                            .serves = 4,
                            .left = 0});
    REQUIRE_FALSE(kitchen.check());
    return kitchen.plan.back();
}

/// What the last planned dinner asks of an ingredient, in grams, mL or serves, rounded up.
inline std::int64_t asked(const kitchen::Kitchen& kitchen, std::string_view id) {
    for (const auto& need : flow::cook(kitchen, kitchen.plan.back()).needs) {
        if (need.ingredient == thing(id)) return (need.amount + 999) / 1000;
    }
    FAIL("the dinner asks for no " << id);
    return 0;
}

/// The demo kitchen with some lots gone, some dinners exchanged for others, and some frozen lots in other freezers.
/// Takes its chances from `pick`: a number from 0 up to one below its argument.
template <class Pick>
kitchen::Kitchen shaken(const Pick& pick) {
    kitchen::Kitchen kitchen = demo();
    std::erase_if(kitchen.lots, [&](const stock::Lot&) { return pick(8) == 0; });
    for (stock::Lot& lot : kitchen.lots) {
        if (lot.state != stock::State::frozen || pick(3) != 0) continue;
        lot.place = place(pick(2) == 0 ? "kitchen-freezer" : "cellar-freezer");
        stock::set_dates(lot, kitchen.catalogue()[lot.ingredient], kitchen.place(lot.place).kind);
    }
    std::vector<cookbook::DishId> dinners;
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size(); ++i) {
        if (kitchen.cookbook()[cookbook::DishId{i}].dinner) dinners.emplace_back(i);
    }
    for (kitchen::Planned& row : kitchen.plan) {
        if (row.meal == kitchen::Meal::dinner && !row.ready_meal && pick(3) == 0)
            row.dish = dinners[static_cast<std::size_t>(pick(static_cast<int>(dinners.size())))];
    }
    return kitchen;
}

}  // namespace samebase::tests
