#include "flow/balance.hpp"

#include <algorithm>
#include <utility>

#include "basics/exact.hpp"
#include "flow/detail/supply.hpp"

namespace samebase::flow {

namespace {

using catalogue::IngredientId;

/// Days. Beyond so many, what is bought and thawed weeks ahead is not worth the search: a year of dinners would take
/// minutes.
constexpr int longest_exact = 42;

int day_in(basics::Span span, basics::Day day) {
    return static_cast<int>((day - span.first).count());
}

Slot slot_of(basics::Span span, basics::Day day, kitchen::Meal meal) {
    const int index = day_in(span, day);
    return meal == kitchen::Meal::lunch ? lunch_of(index) : dinner_of(index);
}

/// What an unmet amount is priced by: the usual price, else the highest price that any of its units has.
void set_unit_price(const kitchen::Kitchen& kitchen, Component& component) {
    const catalogue::Ingredient& ingredient = kitchen.catalogue()[component.ingredient];
    if (ingredient.pack) {
        component.unit_amount = ingredient.pack->amount.value();
        component.unit_price =
            kitchen::price(kitchen, component.ingredient, component.unit_amount).value_or(ingredient.pack->price);
        return;
    }
    for (const Unit& unit : component.units) {
        if (component.unit_price.minor * unit.amount >= unit.price.minor * component.unit_amount) continue;
        component.unit_price = unit.price;
        component.unit_amount = unit.amount;
    }
}

void count(const Part& part, int sign, Totals& totals) {
    const auto add = [&](basics::Money& total, basics::Money money) {
        total = sign > 0 ? total + money : total - money;
    };
    add(totals.unmet, unmet_price(part.component, part.outcome));
    add(totals.spent, part.outcome.spent);
    add(totals.tossed, part.outcome.tossed);
    add(totals.kept, part.outcome.kept);
}

/// The ingredients of meals that are more often among `these` than among `those`.
void add_touched(std::span<const Cooking> these, std::span<const Cooking> those, std::vector<IngredientId>& touched) {
    for (const Cooking& cooking : these) {
        if (std::count(these.begin(), these.end(), cooking) <= std::count(those.begin(), those.end(), cooking))
            continue;
        for (const Needed& need : cooking.needs) touched.push_back(need.ingredient);
        for (const Needed& make : cooking.makes) touched.push_back(make.ingredient);
    }
}

void buy_at_once(std::optional<Offer>& offer) {
    if (offer && (offer->slots.empty() || offer->slots.front() != shopping_of(0))) {
        offer->slots.insert(offer->slots.begin(), shopping_of(0));
    }
}

}  // namespace

struct Balancer::Draft {
    Component component;
    std::vector<Reason> reasons;

    /// Keeps wants in the order of slots; of one slot, in the order in which they come.
    void want(const Want& want, const Reason& reason) {
        const auto after = std::upper_bound(component.wants.begin(), component.wants.end(), want.slot,
                                            [](Slot slot, const Want& other) { return slot < other.slot; });
        reasons.insert(reasons.begin() + (after - component.wants.begin()), reason);
        component.wants.insert(after, want);
    }
};

const Part* Balance::part(IngredientId ingredient) const {
    const auto found = std::lower_bound(parts.begin(), parts.end(), ingredient, [](const auto& part, IngredientId key) {
        return part->component.ingredient < key;
    });
    return found != parts.end() && (*found)->component.ingredient == ingredient ? found->get() : nullptr;
}

const Outcome* Memory::outcome(const Component& component) const {
    const auto of = parts_.find(component.ingredient);
    if (of == parts_.end()) return nullptr;
    const auto found = std::find_if(of->second.begin(), of->second.end(),
                                    [&](const auto& part) { return part->component == component; });
    return found == of->second.end() ? nullptr : &(*found)->outcome;
}

void Memory::keep(std::shared_ptr<const Part> part) {
    parts_[part->component.ingredient].push_back(std::move(part));
}

basics::Money unmet_price(const Component& component, const Outcome& outcome) {
    basics::Money total;
    for (const std::int64_t amount : outcome.unmet) {
        if (amount > 0) total += basics::share_of(component.unit_price, amount, component.unit_amount);
    }
    return total;
}

Balancer::Balancer(const kitchen::Kitchen& kitchen, basics::Span span, Effort effort)
    : kitchen_(&kitchen),
      span_(span),
      effort_(span.length() > longest_exact ? Effort::quick : effort),
      stock_(kitchen.catalogue().ingredients().size()),
      uncounted_(stock_.size(), false) {
    for (std::uint32_t i = 0; i < stock_.size(); ++i) {
        const IngredientId id{i};
        stock_[i].ingredient = id;
        stock_[i].days = span.length();
        uncounted_[i] = kitchen.taken_as_there(id);
    }
    for (const stock::Lot& lot : kitchen.lots) {
        Component& component = stock_[lot.ingredient.index()];
        if (lot.rough) uncounted_[lot.ingredient.index()] = true;
        const auto units = detail::units_of(kitchen, lot, span);
        component.units.insert(component.units.end(), units.begin(), units.end());
    }
    for (Component& component : stock_) {
        component.offer = detail::offer_of(kitchen, component.ingredient, span);
        set_unit_price(kitchen, component);
    }
}

std::vector<IngredientId> Balancer::all_ingredients() const {
    std::vector<IngredientId> result;
    for (const Component& component : stock_) result.push_back(component.ingredient);
    return result;
}

std::vector<Balancer::Draft> Balancer::drafts(std::span<const Cooking> cookings, std::span<const IngredientId> of,
                                              std::span<const IngredientId> at_once) const {
    std::vector<Draft> result;
    std::vector<int> place(stock_.size(), -1);
    for (const IngredientId id : of) {
        if (uncounted_[id.index()]) continue;
        place[id.index()] = static_cast<int>(result.size());
        result.push_back({stock_[id.index()], {}});
        if (std::find(at_once.begin(), at_once.end(), id) != at_once.end()) buy_at_once(result.back().component.offer);
    }
    const auto draft = [&](IngredientId id) {
        const int at = place[id.index()];
        return at < 0 ? nullptr : &result[static_cast<std::size_t>(at)];
    };
    for (const Cooking& cooking : cookings) {
        if (!span_.contains(cooking.day)) continue;
        const Slot slot = slot_of(span_, cooking.day, cooking.meal);
        for (const Needed& need : cooking.needs) {
            if (Draft* to = draft(need.ingredient)) to->want({slot, need.amount}, {cooking.dish, cooking.meal});
        }
        for (const Needed& make : cooking.makes) {
            Draft* to = draft(make.ingredient);
            if (to == nullptr) continue;
            to->component.units.push_back(
                detail::made_unit(*kitchen_, make.ingredient, make.amount, cooking.dish, day_of(slot)));
            if (to->component.unit_price.minor == 0) set_unit_price(*kitchen_, to->component);
        }
    }
    for (const kitchen::StandingUse& use : kitchen_->household.standing_uses) {
        Draft* to = draft(use.ingredient);
        if (to == nullptr) continue;
        for (int day = 0; day < span_.length(); ++day) {
            const std::chrono::weekday weekday{span_.first + basics::days{day}};
            if ((use.weekdays >> weekday.c_encoding() & 1U) == 0) continue;
            to->want({lunch_of(day), use.amount.value()}, {std::nullopt, kitchen::Meal::lunch});
        }
    }
    std::erase_if(result, [](const Draft& d) { return d.component.units.empty() && d.component.wants.empty(); });
    return result;
}

std::shared_ptr<const Part> Balancer::solved(Draft draft, Memory* memory) const {
    auto part = std::make_shared<Part>(Part{std::move(draft.component), std::move(draft.reasons), {}});
    const Outcome* known = memory == nullptr ? nullptr : memory->outcome(part->component);
    part->outcome = known == nullptr ? best(part->component, effort_) : *known;
    if (memory != nullptr && known == nullptr) memory->keep(part);
    return part;
}

Balance Balancer::balance(std::vector<Cooking> cookings, std::span<const IngredientId> at_once) const {
    Balance balance{span_, std::move(cookings), {}, {}};
    for (Draft& draft : drafts(balance.cookings, all_ingredients(), at_once))
        balance.parts.push_back(solved(std::move(draft)));
    for (const auto& part : balance.parts) count(*part, 1, balance.totals);
    return balance;
}

Balance Balancer::rebalance(const Balance& before, std::vector<Cooking> cookings, std::span<const IngredientId> at_once,
                            Memory* memory) const {
    std::vector<IngredientId> touched(at_once.begin(), at_once.end());
    add_touched(before.cookings, cookings, touched);
    add_touched(cookings, before.cookings, touched);
    std::sort(touched.begin(), touched.end());
    touched.erase(std::unique(touched.begin(), touched.end()), touched.end());
    Balance balance{span_, std::move(cookings), {}, before.totals};
    auto old = before.parts.begin();
    const auto keep_until = [&](const IngredientId* end) {
        for (; old != before.parts.end() && (end == nullptr || (*old)->component.ingredient < *end); ++old)
            balance.parts.push_back(*old);
    };
    auto fresh = drafts(balance.cookings, touched, at_once);
    auto next = fresh.begin();
    for (const IngredientId id : touched) {
        keep_until(&id);
        const bool was = old != before.parts.end() && (*old)->component.ingredient == id;
        const bool is = next != fresh.end() && next->component.ingredient == id;
        if (was) count(**old, -1, balance.totals);
        if (is) {
            const bool same = was && (*old)->component == next->component && (*old)->reasons == next->reasons;
            balance.parts.push_back(same ? *old : solved(std::move(*next), memory));
            count(*balance.parts.back(), 1, balance.totals);
            ++next;
        }
        if (was) ++old;
    }
    keep_until(nullptr);
    return balance;
}

std::vector<Cooking> Balancer::planned() const {
    std::vector<Cooking> result;
    for (const kitchen::Planned& planned : kitchen_->plan) {
        if (span_.contains(planned.day)) result.push_back(cook(*kitchen_, planned));
    }
    return result;
}

basics::Day horizon(const kitchen::Kitchen& kitchen, basics::Day today) {
    constexpr basics::days furthest_horizon{28};  // two fortnightly trips; more costs time and tells little
    const basics::Day week = today + basics::days{7};
    const auto first = kitchen::shopping_day(kitchen.household, today + basics::days{1});
    const auto second = first ? kitchen::shopping_day(kitchen.household, *first + basics::days{1}) : std::nullopt;
    return second ? std::clamp(*second, week, today + furthest_horizon) : week;
}

}  // namespace samebase::flow
