#include <algorithm>
#include <bit>
#include <numeric>

#include "basics/exact.hpp"
#include "flow/detail/search.hpp"

namespace samebase::flow::detail {

namespace {

constexpr std::size_t most_packs_tried = 12;

/// Of the packs, in their order, those that together are at least `need` and as little more as can be; all of them
/// where they are not enough. Exact over the first `most_packs_tried`, the rest one by one.
std::vector<int> least_over(const std::vector<Unit>& units, const std::vector<int>& packs, std::int64_t need) {
    std::vector<int> taken;
    std::vector<int> tried(packs.begin(),
                           packs.begin() + static_cast<std::ptrdiff_t>(std::min(packs.size(), most_packs_tried)));
    const auto amount = [&](int unit) { return units[static_cast<std::size_t>(unit)].amount; };
    const auto sum = [&](const std::vector<int>& some) {
        return std::accumulate(some.begin(), some.end(), std::int64_t{0},
                               [&](std::int64_t s, int u) { return s + amount(u); });
    };
    if (sum(tried) < need) {
        std::int64_t so_far = 0;
        for (const int unit : packs) {
            if (so_far >= need) break;
            taken.push_back(unit);
            so_far += amount(unit);
        }
        return taken;
    }
    std::int64_t least = std::numeric_limits<std::int64_t>::max();
    std::uint32_t best = 0;
    // By set: the sum of the set without its lowest pack, and that pack.
    std::vector<std::int64_t> sums(std::size_t{1} << tried.size(), 0);
    for (std::uint32_t set = 1; set < sums.size(); ++set) {
        sums[set] = sums[set & (set - 1)] + amount(tried[static_cast<std::size_t>(std::countr_zero(set))]);
        if (sums[set] < need || sums[set] >= least) continue;
        least = sums[set];
        best = set;
    }
    for (std::size_t i = 0; i < tried.size(); ++i) {
        if ((best >> i & 1U) != 0) taken.push_back(tried[i]);
    }
    return taken;
}

/// Goes through the wants once, and decides where what is in use is not enough.
class Rule {
  public:
    explicit Rule(const Component& component) : component_(component) {
        decisions_.ready_day.assign(component.units.size(), -1);
        decisions_.opened_day.assign(component.units.size(), -1);
        if (component.offer) decisions_.packs.assign(component.offer->slots.size(), 0);
    }

    Decisions decide() {
        Outcome now = carry_out(component_, decisions_);
        for (std::size_t w = 0; w < component_.wants.size(); ++w) {
            while (now.unmet[w] > 0 && use_more(component_.wants[w].slot, now.unmet[w]))
                now = carry_out(component_, decisions_);
        }
        return decisions_;
    }

  private:
    bool use_more(Slot slot, std::int64_t open) { return open_one(slot) || thaw(slot, open) || buy(slot, open); }

    bool open_one(Slot slot) {
        int best = -1;
        for (int i = 0; i < static_cast<int>(component_.units.size()); ++i) {
            const Unit& unit = component_.units[static_cast<std::size_t>(i)];
            if (unit.opened_days < 0 || unit.thaw_days > 0 || decisions_.opened_day[static_cast<std::size_t>(i)] >= 0)
                continue;
            if (slot < unit.first || slot > unit.last) continue;
            if (best < 0 || unit.last < component_.units[static_cast<std::size_t>(best)].last) best = i;
        }
        if (best < 0) return false;
        decisions_.opened_day[static_cast<std::size_t>(best)] = day_of(slot);
        return true;
    }

    bool thaw(Slot slot, std::int64_t open) {
        std::vector<int> packs;
        for (int i = 0; i < static_cast<int>(component_.units.size()); ++i) {
            const Unit& unit = component_.units[static_cast<std::size_t>(i)];
            if (unit.thaw_days <= 0 || decisions_.ready_day[static_cast<std::size_t>(i)] >= 0) continue;
            const bool late = slot == dinner_of(0) && unit.cold_water;
            if (unit.first <= slot && slot <= unit.last && (late || day_of(slot) >= unit.thaw_days)) packs.push_back(i);
        }
        const auto taken = least_over(component_.units, packs, open);
        for (const int i : taken) decisions_.ready_day[static_cast<std::size_t>(i)] = day_of(slot);
        return !taken.empty();
    }

    bool buy(Slot slot, std::int64_t open) {
        if (!component_.offer) return false;
        const Offer& offer = *component_.offer;
        int at = -1;
        for (int i = 0; i < static_cast<int>(offer.slots.size()); ++i) {
            const Slot from = offer.slots[static_cast<std::size_t>(i)];
            const bool keeps = offer.keeps_days < 0 || day_of(slot) <= day_of(from) + offer.keeps_days;
            if (from <= slot && keeps) at = i;
        }
        if (at < 0) return false;
        const auto packs = basics::scale_up(open, 1, offer.pack);
        if (offer.opened_days >= 0) {
            // Packs are numbered in the order of slots, and these are the last so far of theirs.
            const auto before = std::accumulate(decisions_.packs.begin(), decisions_.packs.begin() + at + 1, 0);
            decisions_.bought_opened_day.insert(decisions_.bought_opened_day.begin() + before,
                                                static_cast<std::size_t>(packs), day_of(slot));
        }
        decisions_.packs[static_cast<std::size_t>(at)] += static_cast<int>(packs);
        return true;
    }

    const Component& component_;
    Decisions decisions_;
};

}  // namespace

bool nothing_to_decide(const Component& component) {
    const bool fixed = std::all_of(component.units.begin(), component.units.end(),
                                   [](const Unit& unit) { return unit.thaw_days <= 0 && unit.opened_days < 0; });
    return component.wants.empty() || (fixed && !component.offer);
}

Decisions by_rule(const Component& component) {
    return Rule(component).decide();
}

Value bound(const Component& component) {
    Component eased = component;
    eased.offer.reset();
    for (Unit& unit : eased.units) {
        if (unit.thaw_days > 0)
            unit.first = std::max(unit.first, unit.cold_water ? dinner_of(0) : lunch_of(unit.thaw_days));
        unit.thaw_days = 0;
        unit.opened_days = -1;
    }
    const Outcome from_stock = carry_out(eased, {});
    if (!component.offer) return from_stock.value(component);
    // As if there were plenty on every shopping day: what is unmet then cannot be met.
    const auto sum = [](std::int64_t total, const Want& want) { return total + want.amount; };
    const auto wanted = std::accumulate(component.wants.begin(), component.wants.end(), std::int64_t{0}, sum);
    for (const Slot slot : component.offer->slots) {
        const int keeps = component.offer->keeps_days;
        eased.units.push_back(
            {.amount = wanted, .first = slot, .last = keeps < 0 ? never : dinner_of(day_of(slot) + keeps)});
    }
    const Outcome with_plenty = carry_out(eased, {});
    Value value = with_plenty.value(component);
    const auto unmet = [](const Outcome& outcome) {
        return std::accumulate(outcome.unmet.begin(), outcome.unmet.end(), std::int64_t{0});
    };
    const auto packs = basics::scale_up(unmet(from_stock) - unmet(with_plenty), 1, component.offer->pack);
    value.cost = from_stock.tossed + basics::Money{basics::fits(basics::multiply(component.offer->price.minor, packs))};
    return value;
}

}  // namespace samebase::flow::detail
