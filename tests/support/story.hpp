// One change after another in the ledger's small kitchen.
#pragma once

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <iterator>

#include "kitchen/changes.hpp"
#include "support/ledger_world.hpp"

namespace samebase::tests {

inline const LedgerWorld& world = ledger_world();

/// A kitchen to which one change after another happens; every step keeps the invariants and the ledger's identity.
struct Story {
    kitchen::Kitchen kitchen = world.empty();
    stock::LotNumber next_lot = 1;
    std::vector<stock::Entry> entries;
    basics::Day today = day("2026-11-25");

    template <class Compute>
    kitchen::Change does(Compute compute) {
        const kitchen::At at{kitchen, today, next_lot};
        auto change = compute(at);
        INFO((change ? "" : basics::to_text(change.error().front())));
        REQUIRE(change);
        next_lot = kitchen::next_lot(at, *change);
        kitchen::apply(kitchen, *change);
        for (stock::Entry entry : change->entries) {
            entry.number = static_cast<stock::EntryNumber>(entries.size()) + 1;
            entries.push_back(entry);
        }
        REQUIRE(kitchen.check() == std::nullopt);
        const auto lots = stock::lots_of(entries);
        REQUIRE(lots);
        std::vector<stock::Lot> left;
        std::copy_if(lots->begin(), lots->end(), std::back_inserter(left), [](const auto& lot) { return lot.there(); });
        REQUIRE(left == kitchen.lots);
        return *change;
    }
    template <class Compute>
    std::string fails(Compute compute) {
        auto change = compute(kitchen::At{kitchen, today, next_lot});
        REQUIRE_FALSE(change);
        return basics::to_text(change.error().front());
    }
    kitchen::Change gets(const char* what, kitchen::Quantity quantity, const char* where,
                         std::optional<basics::Day> use_by = {}) {
        kitchen::Got got{world.ingredient(what), quantity, world.place(where), {}, use_by, {}, {}, {}};
        return does([&](const kitchen::At& at) { return kitchen::got(at, {{got}}); });
    }
    kitchen::Change moves(const char* what, kitchen::Quantity quantity, const char* from, const char* to,
                          std::optional<stock::ThawMethod> thaw = {}) {
        return does(moving(what, quantity, from, to, thaw));
    }
    std::function<basics::Result<kitchen::Change>(const kitchen::At&)> moving(
        const char* what, kitchen::Quantity quantity, const char* from, const char* to,
        std::optional<stock::ThawMethod> thaw = {}) {
        kitchen::Item item{{{}, world.ingredient(what), {}, world.place(from)}, quantity, {}};
        return [=](const kitchen::At& at) { return kitchen::moved(at, {{item}}, world.place(to), thaw); };
    }
    std::function<basics::Result<kitchen::Change>(const kitchen::At&)> eating(const char* what,
                                                                              kitchen::Quantity quantity) {
        kitchen::Item item{{{}, world.ingredient(what), {}, {}}, quantity, {}};
        return [=](const kitchen::At& at) { return kitchen::ate(at, {{item}}); };
    }
    std::function<basics::Result<kitchen::Change>(const kitchen::At&)> counting(const char* place,
                                                                                std::vector<kitchen::CountedItem> items,
                                                                                bool all = false) {
        return [=](const kitchen::At& at) { return kitchen::count(at, world.place(place), items, all); };
    }
    std::function<basics::Result<kitchen::Change>(const kitchen::At&)> cooking(const char* dish, std::int64_t serves,
                                                                               std::int64_t eaten,
                                                                               std::int64_t freeze = 0) {
        kitchen::Cooked what;
        what.dish = world.dish(dish);
        what.serves = serves * 1000;
        what.eaten = eaten * 1000;
        what.freeze = freeze * 1000;
        what.leftovers = world.place("fridge");
        what.freezer = world.place("near-freezer");
        return [=](const kitchen::At& at) { return kitchen::cooked(at, what); };
    }
    [[nodiscard]] std::int64_t has(const char* what) const {
        std::int64_t sum = 0;
        for (const stock::Lot& lot : kitchen.lots)
            sum += lot.ingredient == world.ingredient(what) ? lot.amount.value() : 0;
        return sum;
    }
};

inline kitchen::Quantity of(measure::Amount amount) {
    return {amount, {}, {}};
}

inline kitchen::Quantity packs(std::int64_t thousandths) {
    return {{}, thousandths, {}};
}

}  // namespace samebase::tests
