#include "show/household.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "kitchen/shelf.hpp"
#include "show/json.hpp"
#include "show/words.hpp"

namespace samebase::show {

namespace {

using kitchen::Kitchen;
using kitchen::Meal;
using kitchen::Meals;

constexpr std::array<unsigned, 7> from_monday{1, 2, 3, 4, 5, 6, 0};
constexpr Meals both = kitchen::only(Meal::lunch) | kitchen::only(Meal::dinner);
constexpr std::size_t margin = 10;

/// Days of a week that follow one another and are alike, from Monday on: "Mon-Fri".
template <class Value, class Words>
std::vector<std::string> runs(const std::array<Value, 7>& by_weekday, Words words) {
    std::vector<std::string> result;
    for (std::size_t i = 0; i < 7;) {
        std::size_t end = i + 1;
        while (end < 7 && by_weekday[from_monday[end]] == by_weekday[from_monday[i]]) ++end;
        const auto name = [](std::size_t at) {
            return basics::short_weekday_name(std::chrono::weekday{from_monday[at]});
        };
        const std::string days = end == i + 1 ? std::string(name(i)) : fmt::format("{}-{}", name(i), name(end - 1));
        if (const std::string text = words(days, by_weekday[from_monday[i]]); !text.empty()) result.push_back(text);
        i = end;
    }
    return result;
}

std::string meals_words(Meals meals) {
    if (meals == both) return "all";
    if (meals == 0) return "none";
    return std::string(name(kitchen::has(meals, Meal::lunch) ? Meal::lunch : Meal::dinner));
}

std::string allergens_words(catalogue::AllergenSet set) {
    std::vector<std::string> words;
    for (const auto allergen : set.members()) words.emplace_back(catalogue::name(allergen));
    return listed(words);
}

std::string names_of(const std::vector<catalogue::Of>& things, const Kitchen& kitchen) {
    std::vector<std::string> words;
    for (const auto& of : things) words.push_back(kitchen.catalogue().name(of));
    return listed(words);
}

bool always_home(const kitchen::Person& person) {
    return std::all_of(person.roster.begin(), person.roster.end(), [](const kitchen::Week& week) {
        return std::all_of(week.begin(), week.end(), [](Meals meals) { return meals == both; });
    });
}

std::string mark_words(const kitchen::Person& person, const Kitchen& kitchen) {
    std::vector<std::string> never;
    for (const auto& mark : person.marks) {
        if (mark.mark > -3) continue;
        never.push_back(mark.dish ? kitchen.cookbook()[*mark.dish].name : kitchen.catalogue().name(mark.of));
    }
    return listed(never);
}

std::vector<kitchen::Away> away_soon(const kitchen::Person& person, basics::Day today) {
    std::vector<kitchen::Away> result;
    for (const auto& away : person.away) {
        if (away.span.last >= today && away.span.first <= today + soon) result.push_back(away);
    }
    std::sort(result.begin(), result.end(), [](const auto& a, const auto& b) {
        return std::pair{a.span.first, a.span.last} < std::pair{b.span.first, b.span.last};
    });
    return result;
}

std::string person_line(const kitchen::Person& person, const Kitchen& kitchen, basics::Day today) {
    std::vector<std::string> parts;
    if (!person.avoids.empty()) parts.push_back("avoids " + allergens_words(person.avoids));
    if (!person.dislikes.empty()) parts.push_back("dislikes " + names_of(person.dislikes, kitchen));
    if (const std::string never = mark_words(person, kitchen); !never.empty()) parts.push_back("never " + never);
    if (person.serve_thousandths != 1000)
        parts.push_back(fmt::format("eats {} of a serve", serves(person.serve_thousandths)));
    if (person.roster.size() > 1) {
        parts.push_back(fmt::format("home by a roster of {} weeks", person.roster.size()));
    } else if (!person.roster.empty() && !always_home(person)) {
        parts.push_back("home " + week_words(person.roster.front()));
    }
    for (const auto& away : away_soon(person, today)) {
        const std::string meals = away.meals == both ? "" : fmt::format(" ({} only)", meals_words(away.meals));
        parts.push_back(fmt::format("away {}{}", span_words(away.span, today), meals));
    }
    return fmt::format("{}{}{}", person.name, parts.empty() ? "" : ": ", fmt::join(parts, "; "));
}

std::string night_line(const kitchen::StandingNight& night, const Kitchen& kitchen, basics::Day today) {
    const std::string_view weekday = basics::short_weekday_name(night.weekday);
    if (night.kinds.size() == 1) return fmt::format("{} {}", weekday, night.kinds.front());
    const basics::Day next = today + (night.weekday - std::chrono::weekday{today});
    const auto kind = kitchen::standing_kind(kitchen.household, next);
    return fmt::format("{} {} in turn ({} {})", weekday, listed(night.kinds), kind.value_or(""), on_day(next, today));
}

std::string occasion_line(const kitchen::Occasion& occasion, const Kitchen& kitchen, basics::Day today) {
    std::vector<std::string> parts;
    if (occasion.guests > 0)
        parts.push_back(occasion.guests == 1 ? "1 guest" : fmt::format("{} guests", occasion.guests));
    if (!occasion.guests_avoid.empty()) parts.push_back("avoid " + allergens_words(occasion.guests_avoid));
    if (occasion.dish) parts.push_back(kitchen.cookbook()[*occasion.dish].name);
    if (!occasion.note.empty()) parts.push_back(occasion.note);
    return fmt::format("{}: {}", capitalised(day(occasion.day, today)), fmt::join(parts, ", "));
}

std::vector<kitchen::Occasion> occasions_soon(const Kitchen& kitchen, basics::Day today) {
    std::vector<kitchen::Occasion> result;
    for (const auto& occasion : kitchen.household.occasions) {
        if (occasion.day >= today && occasion.day <= today + soon) result.push_back(occasion);
    }
    std::stable_sort(result.begin(), result.end(), [](const auto& a, const auto& b) { return a.day < b.day; });
    return result;
}

std::string uses_line(const Kitchen& kitchen) {
    std::vector<std::string> parts;
    for (const auto& use : kitchen.household.standing_uses) {
        const std::string days = use.weekdays == 0x7F ? "" : " " + weekday_words(use.weekdays);
        parts.push_back(named(use.amount, use.ingredient, kitchen) + days);
    }
    return fmt::format("{}", fmt::join(parts, ", "));
}

std::string minutes_line(const Kitchen& kitchen) {
    const auto parts = runs(kitchen.household.minutes,
                            [](const std::string& days, int minutes) { return fmt::format("{} {}", days, minutes); });
    return fmt::format("{}", fmt::join(parts, ", "));
}

/// "Who       Alba: avoids gluten", the lines after the first below it.
std::string block(std::string_view head, const std::vector<std::string>& lines) {
    std::string out;
    for (const auto& line : lines) {
        out += wrapped(fmt::format("{:<{}}{}", out.empty() ? head : "", margin, line), margin + 2) + "\n";
    }
    return out;
}

}  // namespace

std::string span_words(const basics::Span& span, basics::Day today) {
    if (span.first == span.last) return day(span.first, today);
    return fmt::format("{} to {}", day(span.first, today), day(span.last, today));
}

std::string place_words(const stock::Place& place) {
    std::string kind(name(place.kind));
    std::replace(kind.begin(), kind.end(), '-', ' ');
    if (!place.room_ml) return kind;
    return fmt::format("{}, {:g} L", kind, static_cast<double>(*place.room_ml) / 1000);
}

std::string weekday_words(std::uint8_t weekdays) {
    std::array<bool, 7> set{};
    for (unsigned i = 0; i < 7; ++i) set[i] = (weekdays >> i & 1U) != 0;
    if (std::all_of(set.begin(), set.end(), [](bool there) { return there; })) return "every day";
    return fmt::format(
        "{}",
        fmt::join(runs(set, [](const std::string& days, bool there) { return there ? days : std::string{}; }), ", "));
}

std::string week_words(const kitchen::Week& week) {
    const auto parts = runs(week, [](const std::string& days, Meals meals) {
        return meals == 0 ? std::string{} : fmt::format("{} {}", days, meals_words(meals));
    });
    return parts.empty() ? "for no meal" : fmt::format("{}", fmt::join(parts, ", "));
}

std::string trip_words(const kitchen::Trip& trip, basics::Day today) {
    using kitchen::TripFor;
    std::string words;
    if (!trip.weekday) {
        words = capitalised(day(trip.from.value_or(today), today));
    } else if (trip.every == 1) {
        words = fmt::format("every {}", basics::short_weekday_name(*trip.weekday));
    } else {
        words = fmt::format("{} every {} weeks", basics::short_weekday_name(*trip.weekday), trip.every);
    }
    if (trip.weekday && trip.from && (trip.every > 1 || *trip.from > today)) {
        const auto next = kitchen::next_day(trip, std::max(today, *trip.from));
        words += fmt::format(", next {}", day(next.value_or(*trip.from), today));
    }
    if (trip.what_for == TripFor::fresh) words += ", fresh food";
    if (trip.what_for == TripFor::bulk) words += ", bulk";
    return words;
}

std::string household_text(const Kitchen& kitchen, basics::Day today) {
    const auto& house = kitchen.household;
    std::vector<std::string> who;
    for (const auto& person : house.people) who.push_back(person_line(person, kitchen, today));
    if (who.empty()) who.emplace_back("nobody yet: household person NAME");
    std::vector<std::string> where;
    for (const auto& place : house.places) {
        const std::string words = place_words(place);
        where.push_back(place.name == words ? words : fmt::format("{} ({})", place.name, words));
    }
    std::vector<std::string> trips;
    for (const auto& trip : house.trips) {
        if (trip.weekday || (trip.from && *trip.from >= today)) trips.push_back(trip_words(trip, today));
    }
    if (trips.empty()) trips.emplace_back("none: household trip sat");
    std::vector<std::string> nights;
    for (const unsigned day : from_monday) {
        for (const auto& night : house.standing_nights) {
            if (night.weekday == std::chrono::weekday{day}) nights.push_back(night_line(night, kitchen, today));
        }
    }
    std::vector<std::string> guests;
    for (const auto& occasion : occasions_soon(kitchen, today))
        guests.push_back(occasion_line(occasion, kitchen, today));
    std::string out = capitalised(house.name) + "\n\n" + block("Who", who) + block("Where", where);
    out += block("Shopping", {fmt::format("{}", fmt::join(trips, "; "))});
    if (!house.shelves.empty()) out += block("Shelves", {fmt::format("{}", fmt::join(house.shelves, "; "))});
    if (!nights.empty()) out += block("Nights", {fmt::format("{}", fmt::join(nights, "; "))});
    out += block("Guests", guests);
    if (!house.standing_uses.empty()) out += block("Each day", {uses_line(kitchen)});
    out += block("Minutes", {minutes_line(kitchen)});
    return out + "\nTo change it: household --help\n";
}

namespace {

Json meals_json(Meals meals) {
    Json list = Json::array();
    for (const auto meal : {Meal::lunch, Meal::dinner}) {
        if (kitchen::has(meals, meal)) list.push_back(name(meal));
    }
    return list;
}

Json weekday_json(std::chrono::weekday weekday) {
    std::string key(basics::short_weekday_name(weekday));
    key.front() = static_cast<char>(key.front() - 'A' + 'a');
    return key;
}

Json allergens_json(catalogue::AllergenSet set) {
    Json list = Json::array();
    for (const auto allergen : set.members()) list.push_back(catalogue::name(allergen));
    return list;
}

Json person_json(const kitchen::Person& person, const Kitchen& kitchen) {
    Json dislikes = Json::array();
    for (const auto& of : person.dislikes) dislikes.push_back(kitchen.catalogue().slug(of));
    Json marks = Json::array();
    for (const auto& mark : person.marks) {
        marks.push_back({{"dish", mark.dish ? Json(kitchen.cookbook()[*mark.dish].id) : Json(nullptr)},
                         {"of", mark.dish ? Json(nullptr) : Json(kitchen.catalogue().slug(mark.of))},
                         {"mark", mark.mark}});
    }
    Json roster = Json::array();
    for (const auto& week : person.roster) {
        Json days = Json::object();
        for (const unsigned day : from_monday)
            days[weekday_json(std::chrono::weekday{day}).get<std::string>()] = meals_json(week[day]);
        roster.push_back(std::move(days));
    }
    Json away = Json::array();
    for (const auto& absence : person.away) {
        away.push_back({{"from", basics::iso(absence.span.first)},
                        {"to", basics::iso(absence.span.last)},
                        {"meals", meals_json(absence.meals)}});
    }
    return {{"person", person.id},
            {"label", person.name},
            {"eats", json_serves(person.serve_thousandths)},
            {"avoids", allergens_json(person.avoids)},
            {"dislikes", std::move(dislikes)},
            {"marks", std::move(marks)},
            {"roster", std::move(roster)},
            {"away", std::move(away)}};
}

Json weekdays_json(std::uint8_t bits) {
    Json list = Json::array();
    for (const unsigned day : from_monday) {
        if ((bits >> day & 1U) != 0) list.push_back(weekday_json(std::chrono::weekday{day}));
    }
    return list;
}

Json trips_json(const kitchen::Household& house, basics::Day today) {
    Json trips = Json::array();
    for (const auto& trip : house.trips) {
        trips.push_back({{"weekday", trip.weekday ? weekday_json(*trip.weekday) : Json(nullptr)},
                         {"every", trip.every},
                         {"from", json_day(trip.from)},
                         {"for", name(trip.what_for)},
                         {"next", json_day(kitchen::next_day(trip, today))}});
    }
    return trips;
}

}  // namespace

Json household_json(const Kitchen& kitchen, basics::Day today) {
    const auto& house = kitchen.household;
    Json people = Json::array();
    for (const auto& person : house.people) people.push_back(person_json(person, kitchen));
    Json places = Json::array();
    for (const auto& place : house.places) {
        places.push_back(
            {{"place", place.id},
             {"label", place.name},
             {"kind", name(place.kind)},
             {"litres", place.room_ml ? Json(static_cast<double>(*place.room_ml) / 1000) : Json(nullptr)}});
    }
    Json nights = Json::array();
    for (const auto& night : house.standing_nights) {
        const basics::Day next = today + (night.weekday - std::chrono::weekday{today});
        nights.push_back({{"weekday", weekday_json(night.weekday)},
                          {"kinds", night.kinds},
                          {"next", kitchen::standing_kind(house, next).value_or("")}});
    }
    Json occasions = Json::array();
    for (const auto& occasion : house.occasions) {
        occasions.push_back({{"day", basics::iso(occasion.day)},
                             {"note", occasion.note.empty() ? Json(nullptr) : Json(occasion.note)},
                             {"dish", occasion.dish ? Json(kitchen.cookbook()[*occasion.dish].id) : Json(nullptr)},
                             {"guests", occasion.guests},
                             {"guests_avoid", allergens_json(occasion.guests_avoid)}});
    }
    Json uses = Json::array();
    for (const auto& use : house.standing_uses) {
        const auto& thing = kitchen.catalogue()[use.ingredient];
        uses.push_back({{"ingredient", thing.id},
                        {"label", thing.name},
                        {"amount", json_amount(use.amount, thing)},
                        {"weekdays", weekdays_json(use.weekdays)}});
    }
    Json minutes = Json::object();
    for (const unsigned day : from_monday)
        minutes[weekday_json(std::chrono::weekday{day}).get<std::string>()] = house.minutes[day];
    return {{"name", house.name},
            {"people", std::move(people)},
            {"places", std::move(places)},
            {"trips", trips_json(house, today)},
            {"shopping", json_day(kitchen::shopping_day(house, today))},
            {"shelves", kitchen::walk(house)},
            {"standing_nights", std::move(nights)},
            {"occasions", std::move(occasions)},
            {"standing_uses", std::move(uses)},
            {"minutes", std::move(minutes)},
            {"tell_from", json_money(house.tell_from, kitchen)}};
}

}  // namespace samebase::show
