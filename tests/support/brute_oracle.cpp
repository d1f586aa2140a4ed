#include "support/brute_oracle.hpp"

#include <algorithm>
#include <optional>

namespace samebase::tests {

namespace {

using flow::Component;
using flow::Slot;
using flow::Unit;

/// Something that is there or bought, as it is decided.
struct Item {
    std::int64_t left = 0;
    std::int64_t amount = 0;
    std::int64_t price = 0;
    Slot from = 0;
    Slot to = flow::never;
    Slot rest_until = flow::never;
};

class Search {
  public:
    explicit Search(const Component& component) : component_(component) {
        value_.unmet.assign(static_cast<std::size_t>(component.days), 0);
    }

    flow::Value best() {
        place_unit(0);
        return *best_;
    }

  private:
    void place(const Unit& unit, Slot from, Slot to, Slot rest_until, auto next) {
        items_.push_back({unit.amount, unit.amount, unit.price.minor, from, to, rest_until});
        next();
        items_.pop_back();
    }

    /// Every way that a unit can go, each followed by `next`.
    void every_way(const Unit& unit, auto next) {
        const bool frozen = unit.thaw_days > 0;
        if (!frozen && unit.opened_days < 0) {
            place(unit, unit.first, unit.last, unit.last, next);
            return;
        }
        place(unit, 0, -1, unit.last, next);
        for (int day = 0; day < component_.days; ++day) {
            Slot from = 3 * day;
            Slot to = 3 * (day + (frozen ? unit.thawed_days : unit.opened_days)) + 2;
            if (frozen && day < unit.thaw_days) {
                if (day > 0 || !unit.cold_water) continue;
                from = 2;
                to = 2;
            }
            to = std::min(to, unit.last);
            place(unit, std::max(from, unit.first), to, to, next);
        }
    }

    void place_unit(std::size_t position) {
        if (position == component_.units.size()) {
            buy(0);
            return;
        }
        every_way(component_.units[position], [this, position] { place_unit(position + 1); });
    }

    /// At every shopping slot no pack or one more, up to what all wants together could take, one pack for each at
    /// worst.
    void buy(std::size_t slot) {
        if (!component_.offer || slot == component_.offer->slots.size()) {
            meet(0);
            return;
        }
        std::int64_t most = 0;
        for (const auto& want : component_.wants)
            most += (want.amount + component_.offer->pack - 1) / component_.offer->pack;
        buy_up_to(slot, most);
    }

    void buy_up_to(std::size_t slot, std::int64_t most) {
        buy(slot + 1);
        if (most == 0) return;
        const auto& offer = *component_.offer;
        Unit unit{
            .amount = offer.pack, .price = offer.price, .first = offer.slots[slot], .opened_days = offer.opened_days};
        if (offer.keeps_days >= 0) unit.last = 3 * (unit.first / 3 + offer.keeps_days) + 2;
        value_.cost.minor += unit.price.minor;
        every_way(unit, [this, slot, most] { buy_up_to(slot, most - 1); });
        value_.cost.minor -= unit.price.minor;
    }

    void meet(std::size_t want) {
        if (want == component_.wants.size()) {
            count();
            return;
        }
        split(want, 0, component_.wants[want].amount);
    }

    /// From this item on, every amount that the want could take of each.
    void split(std::size_t want, std::size_t item, std::int64_t open) {
        const Slot slot = component_.wants[want].slot;
        if (item == items_.size()) {
            value_.unmet[static_cast<std::size_t>(slot / 3)] += open;
            meet(want + 1);
            value_.unmet[static_cast<std::size_t>(slot / 3)] -= open;
            return;
        }
        const bool good = items_[item].from <= slot && slot <= items_[item].to;
        const std::int64_t most = good ? std::min(open, items_[item].left) : 0;
        for (std::int64_t take = 0; take <= most; ++take) {
            items_[item].left -= take;
            split(want, item + 1, open - take);
            items_[item].left += take;
        }
    }

    void count() {
        flow::Value value = value_;
        for (const Item& item : items_) {
            // Prices are such that no share of one has to be rounded.
            if (item.rest_until < 3 * component_.days) value.cost.minor += item.price * item.left / item.amount;
        }
        if (!best_ || value < *best_) best_ = value;
    }

    const Component& component_;
    std::vector<Item> items_;
    flow::Value value_;
    std::optional<flow::Value> best_;
};

}  // namespace

flow::Value best_by_trying_all(const Component& component) {
    return Search(component).best();
}

}  // namespace samebase::tests
