#include "flow/ledger.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "basics/ranges.hpp"

namespace samebase::flow {

namespace {

using catalogue::IngredientId;

/// The rows of one ingredient, a day each.
using Days = std::vector<LedgerRow>;

Days empty_days(IngredientId ingredient, basics::Span span) {
    Days days;
    for (const basics::Day day : basics::days_of(span)) {
        days.push_back({.ingredient = ingredient, .day = day});
    }
    return days;
}

LedgerRow& on(Days& days, Slot slot) {
    return days[static_cast<std::size_t>(std::clamp(day_of(slot), 0, static_cast<int>(days.size()) - 1))];
}

void enter(const Fate& fate, Days& days) {
    if (fate.unit.lot != 0) {
        days.front().opening += fate.unit.amount;
    } else if (fate.bought) {
        on(days, fate.unit.first).bought += fate.unit.amount;
    } else {
        // What a meal leaves can be eaten from the day after.
        on(days, fate.unit.first - lunch_of(1)).made += fate.unit.amount;
    }
    if (fate.tossed > 0) on(days, fate.end()).tossed += fate.tossed;
}

void enter(const Part& part, Days& days) {
    for (const Fate& fate : part.outcome.fates) enter(fate, days);
    for (const Use& use : part.outcome.uses) {
        on(days, part.component.wants[static_cast<std::size_t>(use.want)].slot).used += use.amount;
    }
}

void close(Days& days) {
    std::int64_t opening = days.front().opening;
    for (LedgerRow& row : days) {
        row.opening = opening;
        row.closing = opening + row.bought + row.made - row.used - row.tossed;
        opening = row.closing;
    }
}

}  // namespace

bool past_its_time(const kitchen::Kitchen& kitchen, const stock::Lot& lot, basics::Day day) {
    if (lot.state == stock::State::frozen) return false;
    if (lot.use_by && *lot.use_by < day) return true;
    const auto kind = kitchen.place(lot.place).kind;
    const bool cool = kind == stock::PlaceKind::fridge || kind == stock::PlaceKind::crisper;
    return cool && lot.best_by && *lot.best_by < day;
}

std::vector<LedgerRow> ledger(const kitchen::Kitchen& kitchen, const Balance& balance) {
    std::map<IngredientId, Days> by_ingredient;
    const auto days_of = [&](IngredientId id) -> Days& {
        return by_ingredient.try_emplace(id, empty_days(id, balance.span)).first->second;
    };
    for (const auto& part : balance.parts) enter(*part, days_of(part->component.ingredient));
    for (const stock::Lot& lot : kitchen.lots) {
        if (!lot.usable_amount() || !past_its_time(kitchen, lot, balance.span.first)) continue;
        Days& days = days_of(lot.ingredient);
        days.front().opening += lot.amount.value();
        days.front().tossed += lot.amount.value();
    }
    std::vector<LedgerRow> rows;
    for (auto& [id, days] : by_ingredient) {
        close(days);
        rows.insert(rows.end(), days.begin(), days.end());
    }
    return rows;
}

std::optional<std::string> check(const Balance& balance, const std::vector<LedgerRow>& rows) {
    std::map<IngredientId, std::int64_t> used;
    const LedgerRow* before = nullptr;
    for (const LedgerRow& row : rows) {
        const auto where = fmt::format("ingredient {} on {}", row.ingredient.index(), basics::iso(row.day));
        if (row.opening + row.bought + row.made != row.used + row.tossed + row.closing)
            return where + ": the row does not add up";
        for (const auto value : {row.opening, row.bought, row.made, row.used, row.tossed, row.closing}) {
            if (value < 0) return where + ": below nothing";
        }
        if (before != nullptr && before->ingredient == row.ingredient && before->closing != row.opening)
            return where + ": opens with something else than the day before closed with";
        used[row.ingredient] += row.used;
        before = &row;
    }
    for (const auto& part : balance.parts) {
        std::int64_t met = 0;
        for (std::size_t w = 0; w < part->component.wants.size(); ++w)
            met += part->component.wants[w].amount - part->outcome.unmet[w];
        if (used[part->component.ingredient] != met)
            return fmt::format("ingredient {}: used is not what was asked for less what is unmet",
                               part->component.ingredient.index());
    }
    return std::nullopt;
}

}  // namespace samebase::flow
