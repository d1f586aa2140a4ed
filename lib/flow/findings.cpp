#include "flow/findings.hpp"

#include <algorithm>
#include <array>
#include <tuple>

#include "basics/exact.hpp"
#include "flow/ledger.hpp"
#include "flow/room.hpp"

namespace samebase::flow {

namespace {

using Kind = Finding::Kind;

basics::Day day_at(const Balance& balance, Slot slot) {
    return balance.span.first + basics::days{day_of(slot)};
}

void add_past(const kitchen::Kitchen& kitchen, const stock::Lot& lot, basics::Day today, std::vector<Finding>& list) {
    if (!lot.usable_amount() || !past_its_time(kitchen, lot, today)) return;
    Finding finding;
    const bool use_by = lot.use_by && *lot.use_by < today;
    finding.kind = use_by ? Kind::past_use_by : Kind::tossed;
    finding.day = use_by ? *lot.use_by : *lot.best_by;
    finding.ingredient = lot.ingredient;
    finding.amount = lot.amount.value();
    finding.price = kitchen::price(kitchen, lot, finding.amount);
    finding.lot = lot.number;
    finding.use_by = use_by;
    list.push_back(finding);
}

/// What is unmet, as far as there is frozen stock that would have met it not thawed, the rest short.
void add_unmet(const Balance& balance, const Part& part, std::vector<Finding>& list) {
    std::int64_t frozen = 0;
    for (const Fate& fate : part.outcome.fates) {
        if (fate.unit.thaw_days > 0 && fate.from == never) frozen += fate.unit.amount;
    }
    for (std::size_t w = 0; w < part.component.wants.size(); ++w) {
        std::int64_t unmet = part.outcome.unmet[w];
        for (const Kind kind : {Kind::not_thawed, Kind::short_of}) {
            const std::int64_t amount = kind == Kind::not_thawed ? std::min(unmet, frozen) : unmet;
            if (amount == 0) continue;
            Finding finding;
            finding.kind = kind;
            finding.day = day_at(balance, part.component.wants[w].slot);
            finding.ingredient = part.component.ingredient;
            finding.amount = amount;
            finding.price = basics::share_of(part.component.unit_price, amount, part.component.unit_amount);
            finding.dish = part.reasons[w].dish;
            finding.meal = part.reasons[w].meal;
            list.push_back(finding);
            unmet -= amount;
            if (kind == Kind::not_thawed) frozen -= amount;
        }
    }
}

/// What ends in the bin; units of one lot that end on one day together.
void add_tossed(const kitchen::Kitchen& kitchen, const Balance& balance, const Part& part, std::vector<Finding>& list) {
    const std::size_t before = list.size();
    for (const Fate& fate : part.outcome.fates) {
        if (fate.tossed == 0) continue;
        Finding finding;
        finding.day = day_at(balance, fate.end());
        finding.ingredient = part.component.ingredient;
        finding.amount = fate.tossed;
        finding.price = basics::share_of(fate.unit.price, fate.tossed, fate.unit.amount);
        finding.lot = fate.unit.lot;
        const stock::Lot* lot = kitchen.lot(fate.unit.lot);
        const bool thawed = fate.unit.thaw_days > 0 && fate.from != never;
        finding.use_by = thawed || (lot != nullptr && lot->use_by && *lot->use_by <= finding.day);
        const auto same =
            std::find_if(list.begin() + static_cast<std::ptrdiff_t>(before), list.end(),
                         [&](const Finding& other) { return other.lot == finding.lot && other.day == finding.day; });
        if (same == list.end()) {
            list.push_back(finding);
        } else {
            same->amount += finding.amount;
            same->price += finding.price;
        }
    }
}

void add_part(const kitchen::Kitchen& kitchen, const Balance& balance, const Part& part, std::vector<Finding>& list) {
    add_unmet(balance, part, list);
    add_tossed(kitchen, balance, part, list);
}

void put_in_order(std::vector<Finding>& list) {
    const auto key = [](const Finding& f) {
        return std::tuple(f.kind, f.day, -f.price.minor, f.ingredient, f.lot, f.meal, f.dish);
    };
    std::stable_sort(list.begin(), list.end(), [&](const Finding& a, const Finding& b) { return key(a) < key(b); });
}

}  // namespace

std::string_view name(Finding::Kind kind) {
    constexpr std::array<std::string_view, 5> names{"past-use-by", "not-thawed", "short", "tossed", "no-room"};
    return names[static_cast<std::size_t>(kind)];
}

std::vector<Finding> findings(const kitchen::Kitchen& kitchen, const Balance& balance) {
    std::vector<Finding> list;
    for (const stock::Lot& lot : kitchen.lots) add_past(kitchen, lot, balance.span.first, list);
    for (const auto& part : balance.parts) add_part(kitchen, balance, *part, list);
    for (const Crowding& crowding : crowded(kitchen, balance)) {
        Finding finding;
        finding.kind = Kind::no_room;
        finding.day = crowding.day;
        finding.ingredient = crowding.most;
        finding.amount = crowding.amount;
        finding.lot = crowding.lot;
        finding.place = crowding.place;
        finding.over_ml = crowding.over_ml;
        list.push_back(finding);
    }
    put_in_order(list);
    return list;
}

std::vector<Finding> findings_of(const kitchen::Kitchen& kitchen, const Balance& balance,
                                 catalogue::IngredientId ingredient) {
    std::vector<Finding> list;
    for (const stock::Lot& lot : kitchen.lots) {
        if (lot.ingredient == ingredient) add_past(kitchen, lot, balance.span.first, list);
    }
    if (const Part* part = balance.part(ingredient)) add_part(kitchen, balance, *part, list);
    put_in_order(list);
    return list;
}

}  // namespace samebase::flow
