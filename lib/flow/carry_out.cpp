#include <algorithm>
#include <limits>
#include <numeric>

#include "basics/exact.hpp"
#include "flow/component.hpp"

namespace samebase::flow {

namespace {

Slot end_of(int day) {
    return dinner_of(day);
}

/// When a unit can be used, given when it is thawed and opened. An empty time has `from` after `to`.
Fate fate_of(const Unit& unit, int ready_day, int opened_day) {
    Fate fate{.unit = unit, .from = unit.first, .to = unit.last};
    if (unit.thaw_days > 0) {
        if (ready_day < 0) {
            fate.from = never;
            return fate;
        }
        const bool late = ready_day == 0;
        fate.from = std::max(unit.first, late ? dinner_of(0) : lunch_of(ready_day));
        fate.to = std::min(unit.last, end_of(late ? 0 : ready_day + unit.thawed_days));
    } else if (unit.opened_days >= 0) {
        if (opened_day < 0) {
            fate.from = never;
        } else {
            fate.from = std::max(fate.from, lunch_of(opened_day));
            fate.to = std::min(fate.to, end_of(opened_day + unit.opened_days));
        }
    }
    return fate;
}

void add_bought(const Component& component, const Decisions& decisions, Outcome& outcome) {
    if (!component.offer) return;
    const Offer& offer = *component.offer;
    std::size_t pack = 0;
    for (std::size_t i = 0; i < offer.slots.size() && i < decisions.packs.size(); ++i) {
        for (int n = 0; n < decisions.packs[i]; ++n, ++pack) {
            Unit unit{
                .amount = offer.pack, .price = offer.price, .first = offer.slots[i], .opened_days = offer.opened_days};
            if (offer.keeps_days >= 0) unit.last = end_of(day_of(offer.slots[i]) + offer.keeps_days);
            const int opened = pack < decisions.bought_opened_day.size() ? decisions.bought_opened_day[pack] : -1;
            outcome.fates.push_back(fate_of(unit, -1, opened));
            outcome.fates.back().bought = true;
            outcome.spent += offer.price;
        }
    }
}

/// Positions of fates in the order in which they are used up: what ends first, then by lot, then what was there first.
std::vector<int> in_order_of_use(const std::vector<Fate>& fates) {
    std::vector<int> order(fates.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        const Fate& x = fates[static_cast<std::size_t>(a)];
        const Fate& y = fates[static_cast<std::size_t>(b)];
        if (x.to != y.to) return x.to < y.to;
        if (x.bought != y.bought) return y.bought;
        return x.unit.lot < y.unit.lot;
    });
    return order;
}

/// Meets the wants in their order from the fates in theirs, of each no more than `most`. Returns what is met. What is
/// used up or has ended is looked at no more: a year of daily wants takes about as many steps as there are wants and
/// fates.
std::int64_t use_up(const Component& component, std::vector<int> order, const std::vector<std::int64_t>& most,
                    Outcome& outcome) {
    outcome.uses.clear();
    outcome.unmet.clear();
    for (Fate& fate : outcome.fates) fate.used = 0;
    std::erase_if(order, [&](int at) { return outcome.fates[static_cast<std::size_t>(at)].from == never; });
    std::int64_t met = 0;
    for (std::size_t w = 0; w < component.wants.size(); ++w) {
        std::int64_t open = component.wants[w].amount;
        const Slot slot = component.wants[w].slot;
        auto stays = order.begin();
        auto next = order.begin();
        for (; next != order.end() && open > 0; ++next) {
            const auto at = static_cast<std::size_t>(*next);
            Fate& fate = outcome.fates[at];
            if (slot >= fate.from && slot <= fate.to && fate.used < most[at]) {
                const auto take = std::min(open, most[at] - fate.used);
                fate.used += take;
                open -= take;
                outcome.uses.push_back({static_cast<int>(w), *next, take});
            }
            if (slot <= fate.to && fate.used < most[at]) *stays++ = *next;
        }
        order.erase(stays, next);
        outcome.unmet.push_back(open);
        met += component.wants[w].amount - open;
    }
    return met;
}

/// What using an amount of it saves from being tossed.
double worth_using(const Fate& fate, Slot end) {
    return fate.end() <= end ? static_cast<double>(fate.unit.price.minor) / static_cast<double>(fate.unit.amount) : 0;
}

/// Whether something is tossed while something cheaper is used.
bool tosses_what_is_dearer(const std::vector<Fate>& fates, Slot end) {
    double tossed = 0;
    double used = std::numeric_limits<double>::infinity();
    for (const Fate& fate : fates) {
        if (fate.used < fate.unit.amount) tossed = std::max(tossed, worth_using(fate, end));
        if (fate.used > 0) used = std::min(used, worth_using(fate, end));
    }
    return tossed > used;
}

/// How much of each fate to use so that as much is met as can be and the least worth is tossed. What can be used
/// together is a matroid (units that can be matched to wants), so that taking as much as can be of one after another,
/// the dearest first, is best; and the choice takes nothing from any day (Mendelsohn and Dulmage, 1958: a matching can
/// cover both).
std::vector<std::int64_t> dearest_first(const Component& component, const std::vector<int>& order, Slot end,
                                        Outcome& outcome) {
    std::vector<int> by_worth = order;
    std::stable_sort(by_worth.begin(), by_worth.end(), [&](int a, int b) {
        return worth_using(outcome.fates[static_cast<std::size_t>(a)], end) >
               worth_using(outcome.fates[static_cast<std::size_t>(b)], end);
    });
    std::vector<std::int64_t> most(outcome.fates.size(), 0);
    std::int64_t met = 0;
    for (const int position : by_worth) {
        const auto at = static_cast<std::size_t>(position);
        most[at] = outcome.fates[at].unit.amount;
        const auto with = use_up(component, order, most, outcome);
        most[at] = with - met;
        met = with;
    }
    return most;
}

}  // namespace

Value Outcome::value(const Component& component) const {
    Value result{std::vector<std::int64_t>(static_cast<std::size_t>(component.days), 0), spent + tossed};
    for (std::size_t i = 0; i < component.wants.size(); ++i) {
        result.unmet[static_cast<std::size_t>(day_of(component.wants[i].slot))] += unmet[i];
    }
    return result;
}

Outcome carry_out(const Component& component, const Decisions& decisions) {
    Outcome outcome;
    outcome.decisions = decisions;
    for (std::size_t i = 0; i < component.units.size(); ++i) {
        outcome.fates.push_back(fate_of(component.units[i],
                                        i < decisions.ready_day.size() ? decisions.ready_day[i] : -1,
                                        i < decisions.opened_day.size() ? decisions.opened_day[i] : -1));
    }
    add_bought(component, decisions, outcome);
    const Slot end = end_of(component.days - 1);
    const auto order = in_order_of_use(outcome.fates);
    std::vector<std::int64_t> most;
    for (const Fate& fate : outcome.fates) most.push_back(fate.unit.amount);
    use_up(component, order, most, outcome);
    if (tosses_what_is_dearer(outcome.fates, end))
        use_up(component, order, dearest_first(component, order, end, outcome), outcome);
    for (Fate& fate : outcome.fates) {
        const auto rest = fate.unit.amount - fate.used;
        if (rest == 0) continue;
        const auto price = basics::share_of(fate.unit.price, rest, fate.unit.amount);
        if (fate.end() <= end) {
            fate.tossed = rest;
            outcome.tossed += price;
        } else {
            outcome.kept += price;
        }
    }
    return outcome;
}

std::optional<std::string> check(const Component& component, const Outcome& outcome) {
    std::vector<std::int64_t> met(component.wants.size(), 0);
    std::vector<std::int64_t> used(outcome.fates.size(), 0);
    for (const Use& use : outcome.uses) {
        const Fate& fate = outcome.fates[static_cast<std::size_t>(use.unit)];
        const Slot slot = component.wants[static_cast<std::size_t>(use.want)].slot;
        if (use.amount <= 0) return "a use of nothing";
        if (slot < fate.from || slot > fate.to) return "a use outside the time of what is used";
        met[static_cast<std::size_t>(use.want)] += use.amount;
        used[static_cast<std::size_t>(use.unit)] += use.amount;
    }
    for (std::size_t w = 0; w < met.size(); ++w) {
        if (outcome.unmet[w] < 0 || met[w] + outcome.unmet[w] != component.wants[w].amount)
            return "a want is not accounted for";
    }
    for (std::size_t u = 0; u < component.units.size() && u < outcome.decisions.ready_day.size(); ++u) {
        const Unit& unit = component.units[u];
        const int ready = outcome.decisions.ready_day[u];
        if (unit.thaw_days > 0 && ready >= 0 && ready < unit.thaw_days && !(ready == 0 && unit.cold_water)) {
            return "a unit is thawed sooner than it can be";
        }
    }
    for (std::size_t u = 0; u < used.size(); ++u) {
        const Fate& fate = outcome.fates[u];
        if (fate.used != used[u] || fate.left() < 0 || fate.tossed < 0) return "a unit is not accounted for";
        if (fate.bought && (!component.offer || fate.unit.amount != component.offer->pack))
            return "a part pack was bought";
    }
    return std::nullopt;
}

}  // namespace samebase::flow
