#include "ask/carry.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <span>
#include <tuple>

#include "ask/detail/ahead.hpp"
#include "ask/detail/entering.hpp"
#include "ask/detail/trips.hpp"
#include "flow/room.hpp"
#include "flow/thaw.hpp"
#include "stock/room.hpp"

namespace samebase::ask {

namespace {

using stock::PlaceKind;

constexpr std::int64_t no_limit = std::numeric_limits<std::int64_t>::max() / 1000;

/// More room than any freezer has, and little enough to be added up.
constexpr std::int64_t cannot_wait = 1'000'000'000'000;

/// Some of a pack, from its arrival to the day that it leaves: as the core sees it, and whose it is.
struct Slice {
    detail::TripItem item;
    std::size_t carried = 0;
};

class Carrying {
  public:
    Carrying(const kitchen::Kitchen& kitchen, basics::Day today, const CarryQuestion& question)
        : kitchen_(kitchen), question_(question) {
        answer_.span = {std::max(question.span.first, today), question.span.last};
        answer_.near = kitchen::place_of(kitchen.household, {PlaceKind::near_freezer});
        answer_.fridge = kitchen::place_of(kitchen.household, {PlaceKind::fridge});
        for (std::uint32_t p = 0; p < kitchen.household.places.size(); ++p) {
            if (kitchen.household.places[p].kind == PlaceKind::far_freezer) far_.push_back(stock::PlaceId{p});
        }
        const flow::Balancer balancer(kitchen, {today, question.span.last});
        balance_ = balancer.balance(balancer.planned());
    }

    CarryAnswer answer() && {
        answer_.fullest = answer_.span.first;
        if (far_.empty()) {
            answer_.notes.emplace_back("There is no far freezer in this kitchen: nothing to bring in.");
            return std::move(answer_);
        }
        to_thaw();
        from_frozen();
        if (carried_.empty()) return std::move(answer_);
        if (!answer_.near)
            answer_.notes.emplace_back(
                "There is no near freezer in this kitchen: everything goes straight to the fridge on its day.");
        walk();
        return std::move(answer_);
    }

  private:
    [[nodiscard]] std::optional<int> far(stock::PlaceId place) const {
        const auto found = std::find(far_.begin(), far_.end(), place);
        if (found == far_.end()) return std::nullopt;
        return static_cast<int>(found - far_.begin());
    }
    [[nodiscard]] int day_in(basics::Day day) const { return static_cast<int>((day - balance_.span.first).count()); }
    [[nodiscard]] basics::Day day_at(int day) const { return balance_.span.first + basics::days{day}; }
    [[nodiscard]] std::int64_t room_of(catalogue::IngredientId id, std::int64_t amount) const {
        const auto& thing = kitchen_.catalogue()[id];
        return stock::room_taken(thing, {thing.dimension, amount});
    }

    Carried& add(stock::LotNumber number) {
        const stock::Lot& lot = *kitchen_.lot(number);
        Carried carried;
        carried.lot = number;
        carried.ingredient = lot.ingredient;
        carried.cooked_as = lot.dish;
        carried.from = lot.place;
        carried_.push_back(std::move(carried));
        return carried_.back();
    }

    void add_slice(int freezer, int need, int until, std::int64_t room) {
        slices_.push_back({{freezer, need, until, room}, carried_.size() - 1});
    }

    void to_thaw() {
        for (const flow::ThawMove& move : flow::thaw_moves(kitchen_, balance_)) {
            const auto freezer = far(move.from);
            if (!freezer || !answer_.span.contains(move.for_day)) continue;
            Carried& carried = add(move.lot);
            carried.amount = move.amount;
            const bool loose = kitchen_.lot(move.lot)->packs.empty();
            carried.packs = loose ? 0 : move.packs;
            carried.weights = move.weights;
            carried.need = move.day;
            carried.method = move.method;
            carried.for_day = move.for_day;
            carried.for_meal = move.for_meal;
            carried.for_dish = move.for_dish;
            carried.cook_by = move.cook_by;
            for (const std::int64_t weight : move.weights) carried.room_ml += room_of(move.ingredient, weight);
            const int need = day_in(move.day);
            add_slice(*freezer, need, need, carried.room_ml);
        }
    }

    /// What is cooked from frozen, lot by lot: packs are begun one after the other.
    void from_frozen() {
        std::vector<flow::FrozenUse> uses = flow::frozen_uses(kitchen_, balance_);
        std::stable_sort(uses.begin(), uses.end(),
                         [](const flow::FrozenUse& a, const flow::FrozenUse& b) { return a.lot < b.lot; });
        for (std::size_t i = 0; i < uses.size();) {
            std::size_t end = i;
            while (end < uses.size() && uses[end].lot == uses[i].lot) ++end;
            const std::span<const flow::FrozenUse> of_lot(uses.data() + i, end - i);
            if (const auto freezer = far(uses[i].from)) packs_for(*freezer, of_lot);
            i = end;
        }
    }

    /// Uses before the span are served first, from where the lot lies.
    void packs_for(int freezer, std::span<const flow::FrozenUse> uses) {
        const stock::Lot& lot = *kitchen_.lot(uses.front().lot);
        std::vector<std::int64_t> packs(lot.packs.rbegin(), lot.packs.rend());
        const bool loose = packs.empty();
        if (loose) {
            std::int64_t wanted = 0;
            for (const flow::FrozenUse& use : uses) wanted += use.amount;
            packs.push_back(wanted);
        }
        std::size_t next = 0;
        std::int64_t left = 0;  // of the pack that is begun
        std::vector<const flow::FrozenUse*> of_pack;
        std::vector<std::int64_t> eaten;
        const auto finish = [&] {
            if (!of_pack.empty()) pack(freezer, lot, loose, packs[next - 1], of_pack, eaten);
            of_pack.clear();
            eaten.clear();
        };
        for (const flow::FrozenUse& use : uses) {
            for (std::int64_t wanted = use.amount; wanted > 0;) {
                if (left == 0) {
                    finish();
                    if (next == packs.size()) return;
                    left = packs[next++];
                }
                const std::int64_t here = std::min(left, wanted);
                if (answer_.span.contains(use.day)) {
                    of_pack.push_back(&use);
                    eaten.push_back(here);
                }
                left -= here;
                wanted -= here;
            }
        }
        finish();
    }

    /// One pack: what is eaten of it leaves on its day, the rest stays. Where the near freezer has no room for that, it
    /// stays where it is, and what is needed is fetched for each meal.
    void pack(int freezer, const stock::Lot& lot, bool loose, std::int64_t size,
              const std::vector<const flow::FrozenUse*>& uses, const std::vector<std::int64_t>& eaten) {
        std::vector<detail::TripItem> stays;
        const int need = day_in(uses.front()->day);
        std::int64_t rest = size;
        for (std::size_t i = 0; i < uses.size(); ++i) {
            stays.push_back({freezer, need, day_in(uses[i]->day), room_of(lot.ingredient, eaten[i])});
            rest -= eaten[i];
        }
        if (rest > 0 && !loose) stays.push_back({freezer, need, balance_.span.length(), room_of(lot.ingredient, rest)});
        std::vector<detail::TripItem> items = stays;
        for (const Slice& slice : slices_) items.push_back(slice.item);
        const bool fits = answer_.near && detail::fits_at_the_last(items, free());
        for (std::size_t i = 0; i < (fits ? 1 : uses.size()); ++i) {
            Carried& carried = add(lot.number);
            carried.thaws = false;
            carried.packs = loose || !fits ? 0 : 1;
            carried.amount = fits ? (loose ? size - rest : size) : eaten[i];
            carried.weights = {carried.amount};
            carried.room_ml = room_of(lot.ingredient, carried.amount);
            carried.need = uses[i]->day;
            carried.for_day = uses[i]->day;
            carried.for_meal = uses[i]->meal;
            carried.for_dish = uses[i]->dish;
            if (!fits) add_slice(freezer, day_in(uses[i]->day), day_in(uses[i]->day), cannot_wait);
        }
        for (const detail::TripItem& item : stays) {
            if (fits) add_slice(item.freezer, item.need, item.until, item.room);
        }
    }

    /// By day of the balance.
    const std::vector<std::int64_t>& free() {
        if (!free_.empty()) return free_;
        const auto days = static_cast<std::size_t>(balance_.span.length());
        free_.assign(days, answer_.near ? no_limit : 0);
        if (!answer_.near) return free_;
        answer_.room_ml = kitchen_.place(*answer_.near).room_ml;
        taken_ = flow::taken_by_day(kitchen_, balance_, *answer_.near);
        if (!answer_.room_ml) return free_;
        for (std::size_t d = 0; d < days; ++d) free_[d] = *answer_.room_ml - taken_[d];
        return free_;
    }

    void walk() {
        const auto earliest = std::min_element(
            slices_.begin(), slices_.end(), [](const Slice& a, const Slice& b) { return a.item.need < b.item.need; });
        const int first = std::min(day_in(question_.first.value_or(answer_.span.first)), earliest->item.need);
        // Days before the first walk are none of the core's.
        std::vector<detail::TripItem> items;
        for (const Slice& slice : slices_) {
            items.push_back({slice.item.freezer, std::max(0, slice.item.need - first),
                             std::max(0, slice.item.until - first), slice.item.room});
        }
        const std::vector<std::int64_t> room(free().begin() + first, free().end());
        const detail::TripPlan plan = detail::fewest_trips(items, room, question_.effort);
        answer_.bound = plan.bound;
        answer_.by_rule = plan.by_rule;
        for (const detail::Trip& trip : plan.trips)
            answer_.walks.push_back({far_[static_cast<std::size_t>(trip.freezer)], day_at(trip.day + first), {}});
        std::vector<std::int64_t> inside = taken_;
        for (std::size_t i = 0; i < slices_.size(); ++i) {
            Carried& carried = carried_[slices_[i].carried];
            const int day = plan.item_days[i] + first;
            carried.day = day_at(day);
            for (int d = day; d < slices_[i].item.until && !inside.empty(); ++d)
                inside[static_cast<std::size_t>(d)] += slices_[i].item.room;
            stays_.resize(carried_.size());
            stays_[slices_[i].carried] = stays_[slices_[i].carried] || slices_[i].item.until > day;
        }
        for (std::size_t c = 0; c < carried_.size(); ++c) {
            carried_[c].straight = !stays_[c];
            give(std::move(carried_[c]));
        }
        put_in_order();
        if (inside.empty()) return;
        const auto fullest = std::max_element(inside.begin() + first, inside.end());
        answer_.fullest_ml = *fullest;
        answer_.fullest = day_at(static_cast<int>(fullest - inside.begin()));
    }

    void give(Carried carried) {
        if (carried.straight) {
            carried.cautions.emplace_back(
                carried.thaws
                    ? "Straight to where it thaws: take it out on that day; it does not stop at the near freezer."
                    : "Straight into the pan, frozen as it is.");
        } else {
            carried.cautions.emplace_back(
                "Carry it quickly and in something that keeps it cold: it stays frozen hard.");
        }
        const auto walk = std::find_if(answer_.walks.begin(), answer_.walks.end(),
                                       [&](const Walk& w) { return w.from == carried.from && w.day == carried.day; });
        walk->brings.push_back(std::move(carried));
    }

    void put_in_order() {
        std::sort(answer_.walks.begin(), answer_.walks.end(),
                  [](const Walk& a, const Walk& b) { return std::tuple(a.day, a.from) < std::tuple(b.day, b.from); });
        for (Walk& walk : answer_.walks) {
            std::stable_sort(walk.brings.begin(), walk.brings.end(), [&](const Carried& a, const Carried& b) {
                return std::tuple(kitchen_.lot(a.lot)->arrived, a.lot, a.for_day, a.for_meal) <
                       std::tuple(kitchen_.lot(b.lot)->arrived, b.lot, b.for_day, b.for_meal);
            });
        }
    }

    const kitchen::Kitchen& kitchen_;
    CarryQuestion question_;
    flow::Balance balance_;
    std::vector<stock::PlaceId> far_;
    std::vector<Carried> carried_;
    std::vector<Slice> slices_;
    std::vector<bool> stays_;  // by carried
    std::vector<std::int64_t> free_;
    std::vector<std::int64_t> taken_;
    CarryAnswer answer_;
};

/// What the walks of a day put into the near freezer, or with a method into the fridge.
detail::Load brought(const CarryAnswer& answer, basics::Day day, std::optional<stock::ThawMethod> thaw) {
    detail::Load load{thaw ? answer.fridge : answer.near, thaw, {}};
    for (const Walk& walk : answer.walks) {
        if (walk.day != day) continue;
        for (const Carried& carried : walk.brings) {
            const bool meant = thaw ? carried.straight && carried.thaws && carried.method == *thaw : !carried.straight;
            if (meant) load.add(carried.lot, carried.weights);
        }
    }
    return load;
}

}  // namespace

std::int64_t Walk::room_ml() const {
    std::int64_t sum = 0;
    for (const Carried& carried : brings) sum += carried.straight ? 0 : carried.room_ml;
    return sum;
}

double CarryAnswer::gap() const {
    if (walks.empty()) return 0;
    return static_cast<double>(static_cast<int>(walks.size()) - bound) / static_cast<double>(walks.size());
}

basics::Result<CarryAnswer> ask_carry(const kitchen::Kitchen& kitchen, basics::Day today,
                                      const CarryQuestion& question) {
    if (const auto ahead = detail::ends_ahead("carry", question.span, today); !ahead)
        return tl::make_unexpected(ahead.error());
    if (question.first && *question.first < today)
        return basics::problem("carry", fmt::format("walks from {} on", basics::iso(*question.first)),
                               fmt::format("a day from {} on", basics::iso(today)));
    return Carrying(kitchen, today, question).answer();
}

basics::Result<kitchen::Change> carry_done(const kitchen::At& at, const CarryAnswer& answer) {
    return detail::entered(at, "carry", "nothing is left to bring in",
                           {brought(answer, at.day, std::nullopt), brought(answer, at.day, stock::ThawMethod::fridge),
                            brought(answer, at.day, stock::ThawMethod::cold_water)});
}

}  // namespace samebase::ask
