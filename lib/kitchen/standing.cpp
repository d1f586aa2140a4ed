#include "kitchen/standing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "kitchen/detail/draft.hpp"
#include "measure/written.hpp"

namespace samebase::kitchen {

namespace {

using detail::Draft;
using stock::LotNumber;

bool asked(const StandingUse& use, basics::Day day) {
    const std::chrono::weekday weekday{day};
    return (use.weekdays >> weekday.c_encoding() & 1U) != 0;
}

/// Eats as much of it as there is, at most what is asked for; what was eaten.
std::int64_t eat_what_is_there(Draft& draft, const StandingUse& use) {
    std::vector<LotNumber> lots = draft.find({{}, use.ingredient, {}, {}});
    std::erase_if(lots, [&](LotNumber number) {
        const stock::Lot& lot = draft.lot(number);
        return lot.rough || (lot.use_by && *lot.use_by < draft.day());
    });
    detail::in_eating_order(draft, lots);
    std::int64_t wanted = use.amount.value();
    for (const LotNumber number : lots) {
        if (wanted == 0) break;
        const std::int64_t value = std::min(wanted, draft.lot(number).amount.value());
        detail::eat(draft, stock::Kind::eaten, {number, value});
        wanted -= value;
    }
    return use.amount.value() - wanted;
}

Change of_day(const At& at) {
    Draft draft(at, std::string{standing_command});
    std::vector<std::string> eaten;
    for (const StandingUse& use : at.kitchen.household.standing_uses) {
        if (!asked(use, at.day) || at.kitchen.taken_as_there(use.ingredient)) continue;
        const std::int64_t value = eat_what_is_there(draft, use);
        if (value == 0) continue;
        const auto& thing = draft.ingredient(use.ingredient);
        eaten.push_back(fmt::format("{} {}", measure::write_kindly({thing.dimension, value}), thing.name));
    }
    for (stock::Entry& entry : draft.change().entries) entry.reason = "standing use";
    draft.change().line = fmt::format("standing uses of {}: {}", basics::iso(at.day), detail::joined(eaten));
    return draft.change();
}

}  // namespace

std::vector<Change> standing_uses(const At& at, std::optional<basics::Day> since) {
    std::vector<Change> changes;
    if (!since || at.kitchen.household.standing_uses.empty()) return changes;
    Kitchen kitchen = at.kitchen;
    LotNumber next = at.next_lot;
    for (basics::Day day = *since; day < at.day; day += basics::days{1}) {
        const At that_day{kitchen, day, next};
        Change change = of_day(that_day);
        if (change.empty()) continue;
        next = next_lot(that_day, change);
        apply(kitchen, change);
        changes.push_back(std::move(change));
    }
    return changes;
}

}  // namespace samebase::kitchen
