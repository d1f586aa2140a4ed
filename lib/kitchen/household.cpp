#include "kitchen/household.hpp"

#include <algorithm>

namespace samebase::kitchen {

namespace {

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

std::optional<basics::Day> shopping_day(const Household& household, basics::Day from) {
    for (int i = 0; i < 7; ++i) {
        const basics::Day day = from + basics::days{i};
        if ((household.shopping_days >> std::chrono::weekday{day}.c_encoding() & 1U) != 0) return day;
    }
    return std::nullopt;
}

}  // namespace samebase::kitchen
