#include "support/random_component.hpp"

#include <algorithm>
#include <cstdlib>
#include <sstream>

namespace samebase::tests {

namespace {

using flow::Component;
using flow::Offer;
using flow::Slot;
using flow::Unit;
using flow::Want;

constexpr std::int64_t step = 50'000;  // 50 g

std::int64_t amount_of(Random& random, Figures figures, bool wild) {
    if (figures == Figures::even) return step * (wild ? random.within(1, 400) : random.within(1, 20));
    if (wild) return random.percent(50) ? random.within(1, 9) : random.within(1, 40'000);
    return random.within(20, 2000);
}

basics::Money price_of(Random& random, Figures figures, std::int64_t amount, bool wild) {
    if (random.percent(8)) return {};
    if (figures == Figures::even) return {amount / step * random.within(1, wild ? 90 : 9) * 5};
    return {random.within(1, wild ? 9000 : 900)};
}

Slot meal(Random& random, int days, bool wild) {
    if (wild) return random.within(0, flow::dinner_of(days - 1));
    const int day = random.within(0, days - 1);
    return random.percent(35) ? flow::lunch_of(day) : flow::dinner_of(day);
}

void set_end(Random& random, Unit& unit, int days, bool wild) {
    if (random.percent(30)) return;
    unit.last = wild ? unit.first + random.within(0, 3 * days)
                     : flow::dinner_of(flow::day_of(unit.first) + random.within(0, days));
}

Offer random_offer(Random& random, Figures figures, int days, bool wild) {
    // Packs are never tiny beside what is wanted: hundreds of them would make both solvers slow, and say no more.
    const int size = wild ? 20 : 1;
    Offer offer{.pack = size * (figures == Figures::even ? step * random.within(2, 20) : random.within(100, 1500)),
                .price = {}};
    offer.price = price_of(random, figures, offer.pack, false);
    const int times = random.within(1, wild ? 3 : 2);
    for (int i = 0; i < times; ++i) offer.slots.push_back(flow::shopping_of(random.within(0, days - 1)));
    std::sort(offer.slots.begin(), offer.slots.end());
    offer.slots.erase(std::unique(offer.slots.begin(), offer.slots.end()), offer.slots.end());
    if (random.percent(60)) offer.keeps_days = random.within(wild ? 0 : 1, 6);
    if (random.percent(40)) offer.opened_days = random.within(0, 4);
    if (!wild && offer.keeps_days >= 0 && offer.keeps_days <= offer.opened_days) offer.opened_days = -1;
    return offer;
}

void write_slot(std::ostream& out, Slot slot) {
    if (slot == flow::never) {
        out << "never";
        return;
    }
    const char* of_day[] = {"lunch", "shopping", "dinner"};
    out << of_day[slot % 3] << ' ' << flow::day_of(slot);
}

}  // namespace

std::uint64_t seed() {
    static const std::uint64_t value = [] {
        const char* said = std::getenv("SAMEBASE_SEED");
        return said != nullptr ? std::strtoull(said, nullptr, 10) : 4;
    }();
    return value;
}

std::uint64_t Random::next() {
    // SplitMix64.
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15ULL);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
}

int Random::within(int least, int most) {
    return least + static_cast<int>(next() % static_cast<std::uint64_t>(most - least + 1));
}

Unit random_unit(Random& random, Figures figures, const Allowed& allowed, int days, bool wild) {
    Unit unit{.amount = amount_of(random, figures, wild)};
    unit.price = price_of(random, figures, unit.amount, wild);
    if (random.percent(wild ? 50 : 25))
        unit.first = wild ? meal(random, days, true) : flow::lunch_of(random.within(0, days - 1));
    set_end(random, unit, days, wild);
    if (allowed.thawing && random.percent(35)) {
        unit.thaw_days = random.within(1, 3);
        unit.thawed_days = random.within(0, 3);
        unit.cold_water = random.percent(40);
        if (!wild) {
            unit.first = 0;
            unit.last = flow::never;
        }
    }
    const bool may_open = allowed.opening && (wild || unit.thaw_days == 0);
    if (may_open && random.percent(40)) unit.opened_days = random.within(0, wild ? 6 : 4);
    return unit;
}

Component random_component(std::uint64_t number, Figures figures, const Allowed& allowed) {
    Random random(number);
    const bool wild = random.percent(25);
    Component component;
    component.days = random.within(wild ? 1 : 3, 7);
    const int units = random.within(wild ? 0 : 1, 5);
    for (int i = 0; i < units; ++i) {
        component.units.push_back(random_unit(random, figures, allowed, component.days, wild));
        component.units.back().lot = i + 1;
    }
    const int wants = random.within(wild ? 0 : 1, 5);
    for (int i = 0; i < wants; ++i) {
        component.wants.push_back(
            {meal(random, component.days, wild), amount_of(random, figures, wild && random.percent(30))});
    }
    std::stable_sort(component.wants.begin(), component.wants.end(),
                     [](const Want& a, const Want& b) { return a.slot < b.slot; });
    if (allowed.buying && random.percent(50)) component.offer = random_offer(random, figures, component.days, wild);
    component.unit_price = {500};
    component.unit_amount = figures == Figures::even ? 10 * step : 500;
    return component;
}

std::string to_text(const Component& component) {
    std::ostringstream out;
    out << component.days << " days, seed " << seed() << '\n';
    for (const Unit& unit : component.units) {
        out << "  unit " << unit.amount << " for " << unit.price.minor << ", ";
        write_slot(out, unit.first);
        out << " to ";
        write_slot(out, unit.last);
        if (unit.opened_days >= 0) out << ", opened keeps " << unit.opened_days;
        if (unit.thaw_days > 0) out << ", thaws in " << unit.thaw_days << " and keeps " << unit.thawed_days;
        if (unit.cold_water) out << ", or in cold water";
        out << '\n';
    }
    for (const Want& want : component.wants) {
        out << "  want " << want.amount << " at ";
        write_slot(out, want.slot);
        out << '\n';
    }
    if (const auto& offer = component.offer) {
        out << "  packs of " << offer->pack << " for " << offer->price.minor << " keep " << offer->keeps_days
            << ", opened " << offer->opened_days << ", on days";
        for (const Slot slot : offer->slots) out << ' ' << flow::day_of(slot);
        out << '\n';
    }
    return out.str();
}

std::string to_text(const flow::Value& value) {
    std::ostringstream out;
    out << "unmet";
    for (const auto amount : value.unmet) out << ' ' << amount;
    out << ", cost " << value.cost.minor;
    return out.str();
}

}  // namespace samebase::tests
