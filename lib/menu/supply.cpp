#include "menu/supply.hpp"

#include <algorithm>
#include <cmath>

namespace samebase::menu {

namespace {

bool begun(const Batch& batch) {
    return batch.opened_days < 0 && batch.thaw_days == 0;
}

bool usable(const Batch& batch, flow::Slot time) {
    if (time < batch.first || time > batch.last) return false;
    if (batch.thaw_days == 0) return true;
    const bool in_water = batch.cold_water && batch.thaw_days == 1 && time == flow::dinner_of(0);
    return in_water || flow::day_of(time) >= batch.thaw_days;
}

Worth price_of(const Batch& batch) {
    return std::llround(static_cast<double>(batch.price) * static_cast<double>(batch.amount) /
                        static_cast<double>(batch.whole));
}

void take(Batch& from, flow::Slot time, std::int64_t amount) {
    from.amount -= amount;
    if (begun(from)) return;
    const int good_for = from.thaw_days > 0 ? from.thawed_days : from.opened_days;
    from.last = std::min(from.last, flow::dinner_of(flow::day_of(time) + good_for));
    from.first = time;
    from.opened_days = -1;
    from.thaw_days = 0;
}

}  // namespace

/// What is begun goes before what is sealed or frozen, then what ends first.
int Supply::best_at(flow::Slot time) const {
    int best = -1;
    for (std::size_t i = 0; i < left_.size(); ++i) {
        if (!usable(left_[i], time)) continue;
        if (best >= 0) {
            const Batch& other = left_[static_cast<std::size_t>(best)];
            if (begun(other) && !begun(left_[i])) continue;
            if (begun(other) == begun(left_[i]) && other.last <= left_[i].last) continue;
        }
        best = static_cast<int>(i);
    }
    return best;
}

/// Whole packs on the last trip before; the rest of the last pack is there from then on. Returns what cannot be had.
std::int64_t Supply::buy(const Item& item, flow::Slot time, std::int64_t amount, Supplied& result) {
    if (!item.offer) return amount;
    const flow::Offer& offer = *item.offer;
    const auto after = std::upper_bound(offer.slots.begin(), offer.slots.end(), time);
    if (after == offer.slots.begin()) return amount;
    const flow::Slot trip = *std::prev(after);
    const int bought = flow::day_of(trip);
    const bool keeps = offer.frozen || offer.keeps_days < 0;
    if (!keeps && flow::day_of(time) > bought + offer.keeps_days) return amount;
    const std::int64_t packs = (amount + offer.pack - 1) / offer.pack;
    result.spent += thousandths * packs * offer.price.minor;
    const std::int64_t rest = packs * offer.pack - amount;
    if (rest == 0) return 0;
    Batch left{.amount = rest, .first = trip, .whole = offer.pack, .price = thousandths * offer.price.minor};
    if (!keeps) left.last = flow::dinner_of(bought + offer.keeps_days);
    if (!offer.frozen && offer.opened_days >= 0) {
        left.first = time;
        left.last = std::min(left.last, flow::dinner_of(flow::day_of(time) + offer.opened_days));
    }
    left_.push_back(left);
    return 0;
}

Supplied Supply::run(const Item& item, std::span<const flow::Want> wants) {
    left_.assign(item.there.begin(), item.there.end());
    Supplied result;
    for (const flow::Want& want : wants) {
        std::int64_t open = want.amount;
        while (open > 0) {
            const int at = best_at(want.slot);
            if (at < 0) break;
            Batch& from = left_[static_cast<std::size_t>(at)];
            const std::int64_t bite = std::min(open, from.amount);
            take(from, want.slot, bite);
            open -= bite;
            if (from.amount == 0) left_.erase(left_.begin() + at);
        }
        if (open > 0) result.missing += buy(item, want.slot, open, result);
    }
    const flow::Slot end = flow::dinner_of(item.days - 1);
    for (const Batch& batch : left_) {
        const Worth price = price_of(batch);
        if (batch.last > end) {
            result.kept += price;
            continue;
        }
        result.tossed += price;
        if (batch.in_stock) result.tossed_of_stock += price;
    }
    return result;
}

Item left_by_wants(const flow::Component& component, int kept_thousandths) {
    Item item{component.ingredient, {}, component.offer, component.days, kept_thousandths};
    for (const flow::Unit& unit : component.units) {
        item.there.push_back({unit.amount, unit.first, unit.last, unit.amount, thousandths * unit.price.minor,
                              unit.opened_days, unit.thaw_days, unit.thawed_days, unit.cold_water, unit.lot != 0});
    }
    Supply supply;
    supply.run(item, component.wants);
    item.there = supply.left();
    return item;
}

}  // namespace samebase::menu
