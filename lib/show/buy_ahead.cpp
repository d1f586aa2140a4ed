#include "show/buy_ahead.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "show/detail/packs_words.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

/// "Proved best.", "Within 2 % of the best."
std::string how_good(const ask::BuyAheadAnswer& answer) {
    if (answer.proved()) return "Proved best.";
    const std::int64_t gap = answer.value().minor - answer.bound.minor;
    const std::int64_t per_cent =
        (100 * gap + answer.value().minor - 1) / std::max<std::int64_t>(1, answer.value().minor);
    return fmt::format("Within {} % of the best.", per_cent);
}

std::string head(const ask::BuyAheadAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string& currency = kitchen.household.currency;
    return wrapped(fmt::format("{} to {}: about {} on {}, and {} for the trips. {}",
                               capitalised(day(answer.span.first, today)), day(answer.span.last, today),
                               about_money(answer.price, currency),
                               counted(static_cast<std::int64_t>(answer.trips.size()), "trip"),
                               about_money(answer.for_trips, currency), how_good(answer)),
                   2) +
           "\n";
}

std::string trip_in_full(const ask::AheadTrip& trip, const kitchen::Kitchen& kitchen, basics::Day today) {
    std::vector<std::string> words;
    for (const ask::AheadItem& item : trip.items)
        words.push_back(detail::packs_words(item.ingredient, item.packs, item.amount, kitchen) +
                        (item.frozen ? " (freezer)" : ""));
    return wrapped(fmt::format("{}, {}: {}", day(trip.day, today), about_money(trip.price, kitchen.household.currency),
                               fmt::join(words, ", ")),
                   2) +
           "\n";
}

/// "Sat 9 Jan $36, Sat 16 Jan $41, ...".
std::string in_short(const std::vector<ask::AheadTrip>& trips, std::size_t from, const kitchen::Kitchen& kitchen,
                     basics::Day today) {
    std::vector<std::string> words;
    for (std::size_t i = from; i < trips.size(); ++i)
        words.push_back(
            fmt::format("{} {}", day(trips[i].day, today), about_money(trips[i].price, kitchen.household.currency)));
    return words.empty() ? "" : wrapped(fmt::format("Then: {}", fmt::join(words, ", ")), 2) + "\n";
}

std::string what_is_wrong(const ask::BuyAheadAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    constexpr std::size_t few = 5;
    std::string out;
    std::vector<std::string> words;
    for (const ask::AheadShort& one : answer.short_of) {
        if (words.size() < few) words.push_back(named(one.amount, one.ingredient, kitchen));
    }
    if (answer.short_of.size() > few) words.push_back(fmt::format("{} more", answer.short_of.size() - few));
    if (!words.empty()) out += wrapped("No trip brings these in time: " + listed(words), 2) + "\n";
    constexpr std::int64_t litre = 1000;
    for (const ask::AheadCrowd& crowd : answer.crowds) {
        out += wrapped(fmt::format("The {} would be {} L too small {}.",
                                   crowd.kind == stock::PlaceKind::pantry ? "pantry" : "freezers",
                                   (crowd.over_ml + litre - 1) / litre, on_day(crowd.day, today)),
                       2) +
               "\n";
    }
    return out;
}

}  // namespace

std::string text(const ask::BuyAheadAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    if (answer.trips.empty())
        return fmt::format("Nothing to buy to {}: {}.\n", day(answer.span.last, today),
                           kitchen.household.trips.empty() ? "there are no shopping days: samebase household trip sat"
                                                           : "everything is there");
    std::string out = head(answer, kitchen, today);
    if (!answer.planned_to) {
        out += "No meal is planned: this is what goes every day.\n";
    } else if (*answer.planned_to + basics::days{7} < answer.span.last) {
        out += wrapped(
                   fmt::format("Planned to {}; after it, this is what goes every day.", day(*answer.planned_to, today)),
                   2) +
               "\n";
    }
    out += what_is_wrong(answer, kitchen, today);
    constexpr std::size_t few = 3;
    const std::size_t shown = manner.all ? answer.trips.size() : std::min(few, answer.trips.size());
    for (std::size_t i = 0; i < shown; ++i) out += trip_in_full(answer.trips[i], kitchen, today);
    out += in_short(answer.trips, shown, kitchen, today);
    if (shown < answer.trips.size()) out += "Every trip in full: --all\n";
    return out;
}

Json json(const ask::BuyAheadAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json trips = Json::array();
    for (const ask::AheadTrip& trip : answer.trips) {
        Json items = Json::array();
        for (const ask::AheadItem& item : trip.items) {
            const auto& thing = kitchen.catalogue()[item.ingredient];
            items.push_back({{"ingredient", thing.id},
                             {"label", thing.name},
                             {"packs", item.packs},
                             {"amount", json_amount(item.amount, thing)},
                             {"price", json_money(item.price, kitchen)},
                             {"to_freeze", item.frozen}});
        }
        trips.push_back(
            {{"day", basics::iso(trip.day)}, {"price", json_money(trip.price, kitchen)}, {"items", std::move(items)}});
    }
    Json short_of = Json::array();
    for (const ask::AheadShort& one : answer.short_of) {
        const auto& thing = kitchen.catalogue()[one.ingredient];
        short_of.push_back(
            {{"ingredient", thing.id}, {"label", thing.name}, {"amount", json_amount(one.amount, thing)}});
    }
    Json crowds = Json::array();
    for (const ask::AheadCrowd& crowd : answer.crowds) {
        crowds.push_back({{"places", crowd.kind == stock::PlaceKind::pantry ? "pantry" : "freezers"},
                          {"day", basics::iso(crowd.day)},
                          {"over_litres", static_cast<double>(crowd.over_ml) / 1000}});
    }
    const std::int64_t value = answer.value().minor;
    const double gap = value > 0 ? static_cast<double>(value - answer.bound.minor) / static_cast<double>(value) : 0;
    return {{"from", basics::iso(answer.span.first)},
            {"to", basics::iso(answer.span.last)},
            {"planned_to", json_day(answer.planned_to)},
            {"trips", std::move(trips)},
            {"price", json_money(answer.price, kitchen)},
            {"for_trips", json_money(answer.for_trips, kitchen)},
            {"value", json_money(answer.value(), kitchen)},
            {"bound", json_money(answer.bound, kitchen)},
            {"proved_best", answer.proved()},
            {"gap", gap},
            {"short_of", std::move(short_of)},
            {"no_room", std::move(crowds)}};
}

}  // namespace samebase::show
