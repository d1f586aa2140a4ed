#include "ask/buy_ahead.hpp"

#include <algorithm>
#include <array>
#include <numeric>
#include <tuple>

#include "flow/balance.hpp"
#include "flow/lot_sizing.hpp"
#include "kitchen/shelf.hpp"
#include "stock/room.hpp"

namespace samebase::ask {

namespace {

using catalogue::IngredientId;
using catalogue::Keep;
using flow::LotPlan;
using flow::LotSizing;
using stock::PlaceKind;

/// Two periods a day: lunch; the trip with dinner. What is bought on a day and keeps so many more lasts to the last
/// one's dinner.
constexpr int periods_a_day = 2;
int period_of(flow::Slot slot) {
    return periods_a_day * flow::day_of(slot) + (slot == flow::lunch_of(flow::day_of(slot)) ? 0 : 1);
}

/// Where room is counted: all freezers together, and all pantries.
enum class Room : std::uint8_t { freezer, pantry, other };

/// One thing, and how it is bought.
struct Thing {
    IngredientId ingredient;
    std::int64_t pack = 0;
    basics::Money price;
    bool frozen = false;
    Room room = Room::other;
    LotSizing problem;
    LotPlan plan;
    std::vector<bool> sold;  ///< by period
    std::int64_t least = 0;  ///< bound of the thing by itself, without what is short

    [[nodiscard]] std::int64_t cost() const { return plan.cost - plan.short_of * problem.shortage; }
    [[nodiscard]] bool buys_on(std::size_t period) const { return plan.packs[period].front() > 0; }
};

Room room_of(const kitchen::Kitchen& kitchen, IngredientId id, bool frozen) {
    const auto place = kitchen::usual_place(kitchen, id);
    if (frozen || (place && stock::freezes(kitchen.place(*place).kind))) return Room::freezer;
    return place && kitchen.place(*place).kind == PlaceKind::pantry ? Room::pantry : Room::other;
}

/// Frozen raw food is best within what the catalogue says of a freezer.
int keeps_periods(const catalogue::Ingredient& thing, const flow::Offer& offer) {
    if (offer.frozen) {
        const auto& freezer = thing.keeps[static_cast<std::size_t>(Keep::freezer)];
        return freezer.said == catalogue::Keeping::Said::time ? periods_a_day * freezer.time.days : -1;
    }
    return offer.keeps_days < 0 ? -1 : periods_a_day * offer.keeps_days;
}

std::optional<Thing> thing_of(const kitchen::Kitchen& kitchen, const flow::Component& component, basics::Money trip) {
    if (!component.offer || component.wants.empty()) return std::nullopt;
    const flow::Offer& offer = *component.offer;
    const auto& known = kitchen.catalogue()[component.ingredient];
    const auto periods = static_cast<std::size_t>(periods_a_day * component.days);
    Thing thing{component.ingredient, offer.pack, offer.price, offer.frozen, {}, {}, {}, {}, 0};
    thing.room = room_of(kitchen, thing.ingredient, offer.frozen);
    LotSizing& problem = thing.problem;
    problem.demand.assign(periods, 0);
    problem.setup.assign(periods, std::nullopt);
    for (const flow::Want& want : component.wants)
        problem.demand[static_cast<std::size_t>(period_of(want.slot))] += want.amount;
    for (const flow::Slot slot : offer.slots) problem.setup[static_cast<std::size_t>(period_of(slot))] = 0;
    for (const auto& setup : problem.setup) thing.sold.push_back(setup.has_value());
    problem.packs = {{offer.pack, std::vector<std::int64_t>(periods, offer.price.minor)}};
    problem.keeps = keeps_periods(known, offer);
    problem.opened = offer.opened_days < 0 ? -1 : periods_a_day * offer.opened_days;
    for (const flow::Unit& unit : component.units) {
        if (unit.lot == 0) continue;  // made on the way: it may come too late
        const int last = unit.last == flow::never ? static_cast<int>(periods) - 1 : period_of(unit.last);
        problem.stock.push_back({unit.amount, std::min(last, static_cast<int>(periods) - 1)});
    }
    problem.shortage = offer.price.minor + trip.minor + 1;
    return thing;
}

/// What the amount alone costs that is not there and not short, were packs sold in parts: no plan that is short of as
/// little costs less.
std::int64_t by_amount(const Thing& thing) {
    std::int64_t lacking = -thing.plan.short_of;
    for (const std::int64_t wanted : thing.problem.demand) lacking += wanted;
    for (const flow::OpeningStock& some : thing.problem.stock) lacking -= some.amount;
    if (lacking <= 0) return 0;
    const std::int64_t whole = lacking / thing.pack;
    return whole * thing.price.minor;
}

/// The trips that are made, and what is bought on each.
class Plan {
  public:
    Plan(const kitchen::Kitchen& kitchen, const flow::Balance& balance) : trip_(kitchen.household.worths.trip) {
        for (const auto& part : balance.parts) {
            if (auto thing = thing_of(kitchen, part->component, trip_)) things_.push_back(std::move(*thing));
        }
        for (Thing& thing : things_) {
            solve(thing);
            thing.least = std::max(thing.plan.bound - thing.plan.short_of * thing.problem.shortage, by_amount(thing));
        }
    }

    /// The things one by one, and the trips that one of them alone would pay for.
    std::int64_t bound() {
        std::int64_t all = 0;
        for (const Thing& thing : things_) all += thing.least;
        std::int64_t most = 0;
        for (const Thing& thing : things_) {
            LotSizing alone = thing.problem;
            for (auto& setup : alone.setup) {
                if (setup) setup = trip_.minor;
            }
            const LotPlan plan = flow::best_lots(alone, states);
            const std::int64_t with_trips = plan.bound - plan.short_of * alone.shortage - thing.least;
            if (with_trips > most) {
                most = with_trips;
                driver_ = plan;
            }
        }
        return all + most;
    }

    /// Leaves out trips for which everything can be bought before without costing more: first all but those of the
    /// thing that needs most, then one by one those with no more than a few things on them.
    void join_trips() {
        if (driver_) keep_only(*driver_);
        for (const std::size_t period : fewest_first()) {
            if (effort_ <= 0) return;
            auto made = used();
            std::erase(made, period);
            allow_only(made);
        }
    }

    [[nodiscard]] std::vector<std::size_t> used() const {
        std::vector<std::size_t> list;
        const std::size_t periods = things_.empty() ? 0 : things_.front().problem.demand.size();
        for (std::size_t t = 0; t < periods; ++t) {
            if (std::any_of(things_.begin(), things_.end(), [&](const Thing& thing) { return thing.buys_on(t); }))
                list.push_back(t);
        }
        return list;
    }
    [[nodiscard]] std::int64_t value() const {
        std::int64_t sum = static_cast<std::int64_t>(used().size()) * trip_.minor;
        for (const Thing& thing : things_) sum += thing.plan.cost;
        return sum;
    }
    [[nodiscard]] std::vector<Thing>& things() { return things_; }

    /// Trips that were left out too, for what one costs.
    void allow_all_trips(Thing& thing) const {
        const auto made = used();
        for (std::size_t t = 0; t < thing.sold.size(); ++t) {
            if (!thing.sold[t]) continue;
            thing.problem.setup[t] = std::binary_search(made.begin(), made.end(), t) ? 0 : trip_.minor;
        }
    }

    void solve(Thing& thing) {
        --effort_;
        thing.plan = flow::best_lots(thing.problem, states);
    }

  private:
    static constexpr std::size_t states = 400;
    static constexpr std::ptrdiff_t few_things = 3;

    void keep_only(const LotPlan& driver) {
        std::vector<std::size_t> made;
        for (std::size_t t = 0; t < driver.packs.size(); ++t) {
            if (driver.packs[t].front() > 0) made.push_back(t);
        }
        allow_only(made);
    }

    [[nodiscard]] std::vector<std::size_t> fewest_first() const {
        std::vector<std::size_t> list = used();
        const auto buys = [&](std::size_t period) {
            return std::count_if(things_.begin(), things_.end(), [&](const Thing& t) { return t.buys_on(period); });
        };
        std::erase_if(list, [&](std::size_t period) { return buys(period) > few_things; });
        std::stable_sort(list.begin(), list.end(), [&](std::size_t a, std::size_t b) { return buys(a) < buys(b); });
        return list;
    }

    /// No other trips than these, in order, if that costs less.
    void allow_only(const std::vector<std::size_t>& made) {
        const std::int64_t before = value();
        const auto out = [&](std::size_t t) { return !std::binary_search(made.begin(), made.end(), t); };
        std::vector<std::pair<Thing*, Thing>> changed;
        for (Thing& thing : things_) {
            for (const std::size_t t : used_by(thing)) {
                if (!out(t)) continue;
                changed.emplace_back(&thing, thing);
                break;
            }
        }
        for (auto& [thing, was] : changed) {
            for (std::size_t t = 0; t < thing->problem.setup.size(); ++t) {
                if (out(t)) thing->problem.setup[t].reset();
            }
            solve(*thing);
        }
        if (value() < before) return;
        for (auto& [thing, was] : changed) *thing = std::move(was);
    }

    [[nodiscard]] static std::vector<std::size_t> used_by(const Thing& thing) {
        std::vector<std::size_t> list;
        for (std::size_t t = 0; t < thing.plan.packs.size(); ++t) {
            if (thing.buys_on(t)) list.push_back(t);
        }
        return list;
    }

    basics::Money trip_;
    std::vector<Thing> things_;
    std::optional<LotPlan> driver_;
    int effort_ = 600;
};

/// What of a kind of place is taken at the end of each period, and what room there is; nothing where it is not known.
class Rooms {
  public:
    Rooms(const kitchen::Kitchen& kitchen, Room room) : kitchen_(kitchen), room_(room) {
        for (const stock::Place& place : kitchen.household.places) {
            const bool counts = room == Room::freezer ? stock::freezes(place.kind) : place.kind == PlaceKind::pantry;
            if (!counts) continue;
            known_ = known_ && place.room_ml.has_value();
            there_is_ += place.room_ml.value_or(0);
            any_ = true;
        }
        for (const stock::Lot& lot : kitchen.lots) {
            const PlaceKind kind = kitchen.place(lot.place).kind;
            const bool counts = room == Room::freezer ? stock::freezes(kind) : kind == PlaceKind::pantry;
            if (counts && !lot.rough) lots_ += stock::room_taken(kitchen.catalogue()[lot.ingredient], lot.amount);
        }
    }

    /// The most that is over, and when; lots that are there now are taken to shrink as what is planned eats them.
    [[nodiscard]] std::optional<std::pair<std::size_t, std::int64_t>> over(const std::vector<Thing>& things) const {
        if (!known_ || !any_) return std::nullopt;
        std::vector<std::int64_t> taken;
        std::int64_t counted = 0;
        for (const Thing& thing : things) {
            if (thing.room != room_) continue;
            const auto by_period = held(thing);
            taken.resize(by_period.size(), 0);
            for (std::size_t t = 0; t < by_period.size(); ++t) taken[t] += volume(thing, by_period[t]);
            counted += volume(thing, opening(thing));
        }
        const std::int64_t rest = std::max<std::int64_t>(0, lots_ - counted);
        const auto most = std::max_element(taken.begin(), taken.end());
        if (most == taken.end() || *most + rest <= there_is_) return std::nullopt;
        return std::pair{static_cast<std::size_t>(most - taken.begin()), *most + rest - there_is_};
    }

    [[nodiscard]] std::int64_t volume(const Thing& thing, std::int64_t amount) const {
        const auto& known = kitchen_.catalogue()[thing.ingredient];
        return stock::room_taken(known, {known.dimension, amount});
    }

    /// What is there at the end of each period, at most.
    [[nodiscard]] static std::vector<std::int64_t> held(const Thing& thing) {
        std::vector<std::int64_t> list;
        std::int64_t there = opening(thing);
        for (std::size_t t = 0; t < thing.problem.demand.size(); ++t) {
            there += thing.plan.packs[t].front() * thing.pack;
            there = std::max<std::int64_t>(0, there - thing.problem.demand[t]);
            list.push_back(there);
        }
        return list;
    }

  private:
    [[nodiscard]] static std::int64_t opening(const Thing& thing) {
        const auto& stock = thing.problem.stock;
        return std::accumulate(stock.begin(), stock.end(), std::int64_t{0},
                               [](std::int64_t sum, const flow::OpeningStock& some) { return sum + some.amount; });
    }

    const kitchen::Kitchen& kitchen_;
    Room room_;
    bool known_ = true;
    bool any_ = false;
    std::int64_t there_is_ = 0;
    std::int64_t lots_ = 0;
};

/// Buys what takes most room in smaller lots, until it all goes in, or that is no help.
void make_room(const kitchen::Kitchen& kitchen, Plan& plan, Room room) {
    const Rooms rooms(kitchen, room);
    constexpr int tries = 40;
    constexpr int shortest = periods_a_day * 7;
    for (int i = 0; i < tries; ++i) {
        const auto over = rooms.over(plan.things());
        if (!over) return;
        Thing* largest = nullptr;
        std::int64_t most = 0;
        for (Thing& thing : plan.things()) {
            if (thing.room != room) continue;
            const bool can_shrink = thing.problem.keeps < 0 || thing.problem.keeps > shortest;
            const std::int64_t takes = rooms.volume(thing, Rooms::held(thing)[over->first]);
            if (can_shrink && takes > most) {
                most = takes;
                largest = &thing;
            }
        }
        if (largest == nullptr) return;
        const Thing was = *largest;
        const int all = static_cast<int>(was.problem.demand.size());
        const int now = was.problem.keeps < 0 ? all : std::min(all, was.problem.keeps);
        largest->problem.keeps = std::max(shortest, now / 2);
        plan.allow_all_trips(*largest);
        plan.solve(*largest);
        if (largest->plan.short_of > was.plan.short_of) {
            *largest = was;
            return;
        }
    }
}

/// What has a use-by in the fridge, and is frozen on the day that it is bought; fruit and nuts may, and need not be.
bool perishable_meat(const catalogue::Ingredient& thing) {
    const auto& fridge = thing.keeps[static_cast<std::size_t>(Keep::fridge)];
    return fridge.said == catalogue::Keeping::Said::time && fridge.time.limit == catalogue::Limit::use_by;
}

std::vector<AheadTrip> trips_of(const kitchen::Kitchen& kitchen, const basics::Span& span, Plan& plan) {
    const auto walk = kitchen::walk(kitchen.household);
    const auto key = [&](const AheadItem& item) {
        const auto& known = kitchen.catalogue()[item.ingredient];
        const auto shelf = std::find(walk.begin(), walk.end(), kitchen::shelf(kitchen.catalogue(), item.ingredient));
        return std::tuple{shelf - walk.begin(), std::string_view{known.name}, std::string_view{known.id}};
    };
    std::vector<AheadTrip> trips;
    for (const std::size_t period : plan.used()) {
        AheadTrip& trip = trips.emplace_back();
        trip.day = span.first + basics::days{static_cast<int>(period) / periods_a_day};
        for (const Thing& thing : plan.things()) {
            const int packs = thing.plan.packs[period].front();
            if (packs == 0) continue;
            const auto dimension = kitchen.catalogue()[thing.ingredient].dimension;
            const AheadItem item{thing.ingredient,
                                 packs,
                                 {dimension, thing.pack * packs},
                                 {thing.price.minor * packs},
                                 thing.frozen && perishable_meat(kitchen.catalogue()[thing.ingredient])};
            trip.price += item.price;
            trip.items.push_back(item);
        }
        std::sort(trip.items.begin(), trip.items.end(),
                  [&](const AheadItem& a, const AheadItem& b) { return key(a) < key(b); });
    }
    return trips;
}

std::optional<basics::Day> planned_to(const kitchen::Kitchen& kitchen, const basics::Span& span) {
    std::optional<basics::Day> last;
    for (const kitchen::Planned& row : kitchen.plan) {
        if (span.contains(row.day)) last = row.day;
    }
    return last;
}

}  // namespace

BuyAheadAnswer ask_buy_ahead(const kitchen::Kitchen& kitchen, const basics::Span& span) {
    const flow::Balancer balancer(kitchen, span, flow::Effort::quick);
    Plan plan(kitchen, balancer.balance(balancer.planned()));
    BuyAheadAnswer answer;
    answer.span = span;
    answer.planned_to = planned_to(kitchen, span);
    const std::int64_t bound = plan.bound();
    plan.join_trips();
    for (const auto& [room, kind] :
         {std::pair{Room::freezer, PlaceKind::near_freezer}, {Room::pantry, PlaceKind::pantry}}) {
        make_room(kitchen, plan, room);
        const auto over = Rooms(kitchen, room).over(plan.things());
        if (!over) continue;
        const basics::days day{static_cast<int>(over->first) / periods_a_day};
        answer.crowds.push_back({kind, span.first + day, over->second});
    }
    answer.trips = trips_of(kitchen, span, plan);
    for (const AheadTrip& trip : answer.trips) answer.price += trip.price;
    answer.for_trips = {static_cast<std::int64_t>(answer.trips.size()) * kitchen.household.worths.trip.minor};
    answer.bound = {std::min(bound, answer.value().minor)};
    for (const Thing& thing : plan.things()) {
        if (thing.plan.short_of == 0) continue;
        const auto dimension = kitchen.catalogue()[thing.ingredient].dimension;
        answer.short_of.push_back({thing.ingredient, {dimension, thing.plan.short_of}});
    }
    const auto worth = [&](const AheadShort& s) {
        return kitchen::price(kitchen, s.ingredient, s.amount.value()).value_or(basics::Money{});
    };
    std::stable_sort(answer.short_of.begin(), answer.short_of.end(),
                     [&](const AheadShort& a, const AheadShort& b) { return worth(b) < worth(a); });
    return answer;
}

}  // namespace samebase::ask
