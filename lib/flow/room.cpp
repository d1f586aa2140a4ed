#include "flow/room.hpp"

#include <algorithm>
#include <tuple>

#include "flow/thaw.hpp"
#include "stock/room.hpp"

namespace samebase::flow {

namespace {

/// Something in a place at the end of a day.
struct Occupant {
    catalogue::IngredientId ingredient;
    stock::LotNumber lot = 0;
    std::int64_t amount = 0;
    std::int64_t ml = 0;
};

/// By place, by day of the balance.
using Occupants = std::vector<std::vector<std::vector<Occupant>>>;

class Filling {
  public:
    Filling(const kitchen::Kitchen& kitchen, const Balance& balance)
        : kitchen_(kitchen),
          days_(static_cast<std::size_t>(balance.span.length())),
          fridge_(kitchen::place_of(kitchen.household, {stock::PlaceKind::fridge})),
          occupants_(kitchen.household.places.size(), std::vector<std::vector<Occupant>>(days_)) {
        for (const auto& part : balance.parts) fill(*part);
    }
    [[nodiscard]] const Occupants& occupants() const { return occupants_; }

  private:
    void fill(const Part& part) {
        const auto usual = kitchen::usual_place(kitchen_, part.component.ingredient);
        std::vector<std::int64_t> left(days_);
        for (std::size_t u = 0; u < part.outcome.fates.size(); ++u) {
            const Fate& fate = part.outcome.fates[u];
            left_by_day(part, u, left);
            const stock::Lot* lot = kitchen_.lot(fate.unit.lot);
            const int thawing = u < part.outcome.decisions.ready_day.size() ? part.outcome.decisions.ready_day[u] : -1;
            const int out_on = thawing < 0 ? static_cast<int>(days_) : thawing - fate.unit.thaw_days;
            for (std::size_t day = 0; day < days_; ++day) {
                auto place = lot != nullptr ? std::optional(lot->place) : fate.bought ? usual : fridge_;
                if (fate.unit.thaw_days > 0 && static_cast<int>(day) >= out_on) place = fridge_;
                if (place && left[day] > 0) add(*place, day, part.component.ingredient, fate.unit.lot, left[day]);
            }
        }
    }

    /// What there is of a unit at the end of each day.
    void left_by_day(const Part& part, std::size_t unit, std::vector<std::int64_t>& left) const {
        const Fate& fate = part.outcome.fates[unit];
        const int from = fate.unit.lot != 0 ? 0 : day_of(fate.bought ? fate.unit.first : fate.unit.first - lunch_of(1));
        for (std::size_t day = 0; day < days_; ++day) left[day] = static_cast<int>(day) < from ? 0 : fate.unit.amount;
        const auto less = [&](int day, std::int64_t amount) {
            for (auto d = static_cast<std::size_t>(std::max(0, day)); d < days_; ++d) left[d] -= amount;
        };
        for (const Use& use : part.outcome.uses) {
            if (static_cast<std::size_t>(use.unit) == unit)
                less(day_of(part.component.wants[static_cast<std::size_t>(use.want)].slot), use.amount);
        }
        if (fate.tossed > 0) less(day_of(fate.end()), fate.tossed);
    }

    /// What is in a crisper counts in the fridge that it is part of: what does not fit into the one goes into the
    /// other.
    void add(stock::PlaceId place, std::size_t day, catalogue::IngredientId id, stock::LotNumber lot,
             std::int64_t amount) {
        if (kitchen_.place(place).kind == stock::PlaceKind::crisper && fridge_) place = *fridge_;
        const auto& thing = kitchen_.catalogue()[id];
        const std::int64_t ml = stock::room_taken(thing, {thing.dimension, amount});
        auto& list = occupants_[place.index()][day];
        const bool again = !list.empty() && list.back().ingredient == id && list.back().lot == lot;
        if (!again) list.push_back({id, lot, 0, 0});
        list.back().amount += amount;
        list.back().ml += ml;
    }

    const kitchen::Kitchen& kitchen_;
    std::size_t days_;
    std::optional<stock::PlaceId> fridge_;
    Occupants occupants_;
};

/// Its own room; of the first fridge, with that of the crispers.
std::optional<std::int64_t> room_of(const kitchen::Kitchen& kitchen, stock::PlaceId id) {
    auto room = kitchen.place(id).room_ml;
    if (id != kitchen::place_of(kitchen.household, {stock::PlaceKind::fridge})) return room;
    for (const stock::Place& place : kitchen.household.places) {
        if (room && place.kind == stock::PlaceKind::crisper) *room += place.room_ml.value_or(0);
    }
    return room;
}

}  // namespace

std::vector<Crowding> crowded(const kitchen::Kitchen& kitchen, const Balance& balance) {
    const Filling filling(kitchen, balance);
    std::vector<Crowding> result;
    for (std::uint32_t p = 0; p < kitchen.household.places.size(); ++p) {
        const stock::PlaceId place{p};
        const auto room = room_of(kitchen, place);
        if (!room) continue;
        bool going_on = false;
        for (std::size_t day = 0; day < filling.occupants()[p].size(); ++day) {
            const auto& here = filling.occupants()[p][day];
            std::int64_t taken = 0;
            for (const Occupant& occupant : here) taken += occupant.ml;
            const std::int64_t over = taken - *room;
            if (over > 0 && !going_on) {
                const auto most = std::max_element(here.begin(), here.end(), [](const auto& a, const auto& b) {
                    return std::tuple(a.ml, b.lot) < std::tuple(b.ml, a.lot);
                });
                result.push_back({place, balance.span.first + basics::days{static_cast<int>(day)}, over,
                                  most->ingredient, most->lot, most->amount});
            } else if (over > 0) {
                result.back().over_ml = std::max(result.back().over_ml, over);
            }
            going_on = over > 0;
        }
    }
    return result;
}

std::vector<std::int64_t> taken_by_day(const kitchen::Kitchen& kitchen, const Balance& balance,
                                       stock::PlaceId freezer) {
    const Filling filling(kitchen, balance);
    std::vector<std::int64_t> taken;
    // What is not frozen in it yet: bought on the way.
    for (const auto& here : filling.occupants()[freezer.index()]) {
        taken.push_back(0);
        for (const Occupant& occupant : here) taken.back() += occupant.lot == 0 ? occupant.ml : 0;
    }
    const auto moves = thaw_moves(kitchen, balance);
    const auto uses = frozen_uses(kitchen, balance);
    for (const stock::Lot& lot : kitchen.lots) {
        if (lot.place != freezer || !lot.usable_amount()) continue;
        const auto& thing = kitchen.catalogue()[lot.ingredient];
        const auto room = [&](std::int64_t amount) { return stock::room_taken(thing, {thing.dimension, amount}); };
        for (std::size_t d = 0; d < taken.size(); ++d) {
            const auto day = balance.span.first + basics::days{static_cast<int>(d)};
            std::int64_t left = lot.amount.value();
            for (const ThawMove& move : moves) left -= move.lot == lot.number && move.day <= day ? move.amount : 0;
            for (const FrozenUse& use : uses) left -= use.lot == lot.number && use.day <= day ? use.amount : 0;
            if (left > 0) taken[d] += room(left);
        }
    }
    return taken;
}

}  // namespace samebase::flow
