#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <numeric>
#include <tuple>
#include <utility>

#include "exchange/detail/documents.hpp"
#include "exchange/detail/reading.hpp"
#include "exchange/household.hpp"
#include "measure/written.hpp"

namespace samebase::exchange {

namespace {

using detail::Element;
using kitchen::Household;
using kitchen::Knowledge;

struct Reading {
    const Knowledge& knowledge;
    const Household& household;
    basics::days shift;

    [[nodiscard]] basics::Day day(const Element& element) const { return detail::day(element) + shift; }
    [[nodiscard]] std::optional<basics::Day> checked_day(const Element& element) const {
        const auto found = detail::checked_day(element);
        return found ? std::optional(*found + shift) : std::nullopt;
    }
    [[nodiscard]] std::optional<basics::Day> optional_day(const Element& element, std::string_view key) const {
        const auto found = detail::optional_day(element, key);
        return found ? std::optional(*found + shift) : std::nullopt;
    }
};

std::optional<stock::PlaceId> place(const Element& e, const Household& household) {
    const auto at = e.need("place");
    if (!at) return std::nullopt;
    const std::string id = at->text();
    const auto found = basics::find_sorted<stock::PlaceId>(household.places, id);
    if (found || !at->value().is_string() || at->enough()) return found;
    std::vector<std::string> known;
    for (const auto& p : household.places) known.push_back(p.id);
    at->wrong(fmt::format("{} is not a place of this kitchen", at->shown()), "the identifier of a place",
              detail::did_you_mean(id, known));
    return std::nullopt;
}

/// "amount", a rough one included, or "packs".
bool how_much(const Element& e, stock::Lot& lot, const Reading& reading) {
    const auto& catalogue = reading.knowledge.catalogue;
    lot.amount = {catalogue[lot.ingredient].dimension, 0};
    if (const auto packs = e.find("packs"); packs && !packs->is_null()) {
        if (e.find("amount")) e.wrong("both 'packs' and 'amount'", "one of the two");
        for (const Element& pack : packs->list()) {
            const auto amount = detail::amount_of(pack, lot.ingredient, catalogue, reading.household.measures);
            if (!amount) return false;
            lot.packs.push_back(amount->value());
            lot.amount += *amount;
            if (detail::too_large(lot.amount, catalogue[lot.ingredient])) {
                packs->wrong("packs that are too large together", std::string(detail::at_most));
                return false;
            }
        }
        if (packs->value().is_array() && lot.packs.empty()) packs->wrong("no packs", "the true weight of each pack");
        return !lot.packs.empty();
    }
    const auto at = e.need("amount");
    if (!at) return false;
    if (at->value().is_string()) {
        const auto written =
            measure::read_amount(at->value().get_ref<const std::string&>(), reading.household.measures);
        if (written && std::holds_alternative<measure::Rough>(written->amount)) {
            lot.rough = std::get<measure::Rough>(written->amount);
            return true;
        }
    }
    const auto amount = detail::amount_of(*at, lot.ingredient, catalogue, reading.household.measures);
    if (amount) lot.amount = *amount;
    return amount.has_value();
}

void dates(const Element& e, stock::Lot& lot, const Reading& reading) {
    const auto at_arrived = e.need("arrived");
    const auto arrived = at_arrived ? reading.checked_day(*at_arrived) : std::nullopt;
    lot.arrived = arrived.value_or(basics::Day{});
    lot.since = reading.optional_day(e, "since").value_or(lot.arrived);
    lot.opened_on = reading.optional_day(e, "opened_on");
    lot.thawed_on = reading.optional_day(e, "thawed_on");
    lot.printed_use_by = reading.optional_day(e, "use_by");
    const auto after_it_came = [&](std::string_view key, std::optional<basics::Day> day) {
        if (!arrived || !day || *day >= *arrived) return;
        const Element at = *e.find(key);
        at.wrong(fmt::format("{} is before the day it came, {}", at.shown(), at_arrived->shown()),
                 "a day on or after the day it came");
    };
    after_it_came("since", lot.since == lot.arrived ? std::nullopt : std::optional(lot.since));
    after_it_came("opened_on", lot.opened_on);
    after_it_came("thawed_on", lot.thawed_on);
    after_it_came("use_by", lot.printed_use_by);
    if (const auto at = e.find("state"); at && !at->is_null()) {
        lot.state = detail::word(*at, stock::read_state, detail::names_of<stock::State>(4)).value_or(lot.state);
    } else if (stock::freezes(reading.household.places[lot.place.index()].kind)) {
        lot.state = stock::State::frozen;
    }
    if (const auto at = e.find("thaw"); at && !at->is_null()) {
        lot.thaw = detail::word(*at, stock::read_thaw_method, detail::names_of<stock::ThawMethod>(3));
    }
}

std::optional<stock::LotNumber> read_number(const Element& e) {
    const auto at = e.need("lot");
    return at ? std::optional(at->integer(1, std::int64_t{1} << 53)) : std::nullopt;
}

std::optional<stock::Lot> read_lot(const Element& e, const Reading& reading) {
    if (!e.object({"lot", "of", "dish", "place", "amount", "packs", "state", "arrived", "since", "opened_on", "thaw",
                   "thawed_on", "use_by", "paid", "note"})) {
        return std::nullopt;
    }
    stock::Lot lot;
    const auto number = read_number(e);
    const auto ingredient = detail::ingredient(e, "of", reading.knowledge.catalogue);
    const auto at = place(e, reading.household);
    if (const auto dish = e.find("dish"); dish && !dish->is_null())
        lot.dish = detail::dish(e, "dish", reading.knowledge.cookbook);
    if (!number || !ingredient || !at) return std::nullopt;
    lot.number = *number;
    lot.ingredient = *ingredient;
    lot.place = *at;
    if (!how_much(e, lot, reading)) return std::nullopt;
    dates(e, lot, reading);
    if (const auto paid = e.optional_integer("paid", 0, 100'000'000)) {
        lot.paid = basics::Money{*paid};
        lot.paid_for = lot.amount.value();
    }
    lot.note = e.optional_text("note").value_or("");
    stock::set_dates(lot, reading.knowledge.catalogue[lot.ingredient],
                     reading.household.places[lot.place.index()].kind);
    return lot;
}

std::optional<kitchen::Meal> meal(const Element& e) {
    const auto at = e.find("meal");
    return at ? detail::word(*at, kitchen::read_meal, {"lunch", "dinner"}) : kitchen::Meal::dinner;
}

std::optional<kitchen::Planned> read_planned(const Element& e, const Reading& reading) {
    if (!e.object({"day", "meal", "dish", "ready_meal", "serves", "left"})) return std::nullopt;
    const auto day = e.need("day");
    const auto which = meal(e);
    const auto dish = detail::dish(e, "dish", reading.knowledge.cookbook);
    if (!day || !which || !dish) return std::nullopt;
    kitchen::Planned planned{.day = reading.day(*day),
                             .meal = *which,
                             .dish = *dish,
                             .ready_meal = e.boolean("ready_meal", false),
                             .serves = std::nullopt,
                             .left = static_cast<int>(e.optional_integer("left", 0, 100).value_or(0))};
    if (const auto serves = e.optional_integer("serves", 1, 1000)) planned.serves = static_cast<int>(*serves);
    return planned;
}

std::optional<kitchen::Had> read_had(const Element& e, const Reading& reading) {
    if (!e.object({"day", "meal", "dish"})) return std::nullopt;
    const auto day = e.need("day");
    const auto which = meal(e);
    const auto dish = detail::dish(e, "dish", reading.knowledge.cookbook);
    if (!day || !which || !dish) return std::nullopt;
    return kitchen::Had{reading.day(*day), *which, *dish};
}

}  // namespace

basics::Result<Stock> read_stock(const nlohmann::json& document, const std::string& name, const Knowledge& knowledge,
                                 const Household& household, basics::days shift) {
    basics::Problems problems;
    const Element e(document, name, problems);
    const Reading reading{knowledge, household, shift};
    Stock result;
    if (e.object({"samebase", "around", "lots", "plan", "history"})) {
        if (const auto at = e.find("samebase")) detail::version(*at);
        if (const auto around = e.find("around")) static_cast<void>(detail::day(*around));
        std::vector<std::pair<stock::LotNumber, Element>> numbers;
        for (const Element& lot : e.list("lots")) {
            auto read = read_lot(lot, reading);
            if (!read) continue;
            numbers.emplace_back(read->number, lot);
            result.lots.push_back(std::move(*read));
        }
        detail::sound_ids(numbers);
        for (const Element& planned : e.list("plan")) {
            if (auto read = read_planned(planned, reading)) result.plan.push_back(*read);
        }
        for (const Element& had : e.list("history")) {
            if (auto read = read_had(had, reading)) result.history.push_back(*read);
        }
    }
    std::sort(result.lots.begin(), result.lots.end(), [](const auto& a, const auto& b) { return a.number < b.number; });
    std::sort(result.plan.begin(), result.plan.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
    });
    std::sort(result.history.begin(), result.history.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
    });
    if (!problems.empty()) return tl::make_unexpected(problems);
    return result;
}

}  // namespace samebase::exchange
