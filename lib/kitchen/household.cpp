#include "kitchen/household.hpp"

#include <algorithm>

namespace samebase::kitchen {

namespace {

constexpr std::array<std::string_view, 3> trip_names{"all", "fresh", "bulk"};

/// Which of `count` weeks in turn a day falls in, the first beginning on `from`.
std::size_t in_turn(basics::Day from, basics::Day day, std::size_t count) {
    const auto week = std::chrono::floor<std::chrono::weeks>(day - from).count();
    const auto n = static_cast<std::int64_t>(count);
    return static_cast<std::size_t>(((week % n) + n) % n);
}

}  // namespace

std::optional<Meal> read_meal(std::string_view text) {
    for (const Meal meal : {Meal::lunch, Meal::dinner}) {
        if (name(meal) == text) return meal;
    }
    return std::nullopt;
}

bool home(const Person& person, basics::Day day, Meal meal) {
    const bool away = std::any_of(person.away.begin(), person.away.end(), [&](const Away& absence) {
        return absence.span.contains(day) && has(absence.meals, meal);
    });
    if (away || person.roster.empty()) return false;
    const Week& week = person.roster[in_turn(person.roster_from, day, person.roster.size())];
    return has(week[std::chrono::weekday{day}.c_encoding()], meal);
}

std::optional<stock::PlaceId> place_of(const Household& household, std::initializer_list<stock::PlaceKind> kinds) {
    for (const auto kind : kinds) {
        for (std::uint32_t i = 0; i < household.places.size(); ++i) {
            if (household.places[i].kind == kind) return stock::PlaceId{i};
        }
    }
    return std::nullopt;
}

std::optional<std::string> standing_kind(const Household& household, basics::Day day) {
    const bool occasion = std::any_of(household.occasions.begin(), household.occasions.end(),
                                      [&](const Occasion& o) { return o.day == day && (o.dish || !o.note.empty()); });
    if (occasion) return std::nullopt;
    for (const StandingNight& night : household.standing_nights) {
        if (night.weekday != std::chrono::weekday{day} || night.kinds.empty()) continue;
        return night.kinds[in_turn(night.from, day, night.kinds.size())];
    }
    return std::nullopt;
}

std::string_view name(TripFor what) {
    return trip_names[static_cast<std::size_t>(what)];
}

std::optional<TripFor> read_trip_for(std::string_view text) {
    const auto found = std::find(trip_names.begin(), trip_names.end(), text);
    if (found == trip_names.end()) return std::nullopt;
    return static_cast<TripFor>(found - trip_names.begin());
}

std::vector<Trip> weekly_trips(std::uint8_t weekdays) {
    std::vector<Trip> trips;
    for (unsigned i = 0; i < 7; ++i) {
        if ((weekdays >> i & 1U) != 0) trips.push_back({std::chrono::weekday{i}, 1, std::nullopt, TripFor::all});
    }
    return trips;
}

std::optional<basics::Day> next_day(const Trip& trip, basics::Day from) {
    if (!trip.weekday) return trip.from && *trip.from >= from ? trip.from : std::nullopt;
    const auto on_or_after = [&](basics::Day day) { return day + (*trip.weekday - std::chrono::weekday{day}); };
    if (!trip.from) return on_or_after(from);
    const basics::Day first = on_or_after(*trip.from);
    if (from <= first) return first;
    const basics::days step = std::chrono::weeks{std::max(1, trip.every)};
    const auto steps = (from - first + step - basics::days{1}) / step;
    return first + steps * step;
}

namespace {

/// The first day on or after `from` of the trips that `counts` accepts.
template <class Counts>
std::optional<basics::Day> first_trip(const Household& household, basics::Day from, Counts counts) {
    std::optional<basics::Day> first;
    for (const Trip& trip : household.trips) {
        if (!counts(trip)) continue;
        auto day = next_day(trip, from);
        if (day && day == household.shopped_on) day = next_day(trip, *day + basics::days{1});
        if (day && (!first || *day < *first)) first = day;
    }
    return first;
}

}  // namespace

std::optional<basics::Day> shopping_day(const Household& household, basics::Day from) {
    return first_trip(household, from, [](const Trip&) { return true; });
}

std::optional<basics::Day> fresh_shopping_day(const Household& household, basics::Day from) {
    return first_trip(household, from, [](const Trip& trip) { return trip.what_for != TripFor::bulk; });
}

bool sells(TripFor what_for, const catalogue::Ingredient& thing) {
    if (what_for == TripFor::all) return true;
    const auto keeps = [&](catalogue::Keep keep) {
        const auto& keeping = thing.keeps[static_cast<std::size_t>(keep)];
        return keeping.said == catalogue::Keeping::Said::time ? std::optional(keeping.time.days) : std::nullopt;
    };
    bool known = false;
    bool lasts = false;
    for (const auto keep : {catalogue::Keep::pantry, catalogue::Keep::fridge, catalogue::Keep::crisper}) {
        const auto days = keeps(keep);
        known = known || days;
        lasts = lasts || (days && *days > perishable_days);
    }
    const bool perishable = known && !lasts;
    if (what_for == TripFor::fresh) return perishable;
    return !perishable || keeps(catalogue::Keep::freezer).has_value();
}

bool sold_on(const Household& household, basics::Day day, const catalogue::Ingredient& thing) {
    if (household.shopped_on == day) return false;
    return std::any_of(household.trips.begin(), household.trips.end(),
                       [&](const Trip& trip) { return next_day(trip, day) == day && sells(trip.what_for, thing); });
}

}  // namespace samebase::kitchen
