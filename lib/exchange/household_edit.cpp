#include "exchange/household_edit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "exchange/detail/documents.hpp"

namespace samebase::exchange {

namespace {

using Json = HouseholdDocument;

constexpr std::array<std::string_view, 7> weekday_keys{"sun", "mon", "tue", "wed", "thu", "fri", "sat"};
constexpr std::array<unsigned, 7> from_monday{1, 2, 3, 4, 5, 6, 0};
constexpr kitchen::Meals both_meals = kitchen::only(kitchen::Meal::lunch) | kitchen::only(kitchen::Meal::dinner);

std::string key_of(std::chrono::weekday weekday) {
    return std::string(weekday_keys[weekday.c_encoding()]);
}

Json& list_of(Json& object, const char* key) {
    Json& list = object[key];
    if (!list.is_array()) list = Json::array();
    return list;
}

bool has(const Json& entry, const char* key, const Json& value) {
    return entry.is_object() && entry.contains(key) && entry[key] == value;
}

/// The entry of a list with that value under a key; a new one at its end where there is none.
Json& entry_of(Json& object, const char* list, const char* key, const Json& value) {
    Json& entries = list_of(object, list);
    const auto found = std::find_if(entries.begin(), entries.end(), [&](const Json& e) { return has(e, key, value); });
    if (found != entries.end()) return *found;
    entries.push_back(Json{{key, value}});
    return entries.back();
}

template <class Wanted>
bool erase_from(Json& object, const char* list, Wanted wanted) {
    if (!object.contains(list) || !object[list].is_array()) return false;
    Json left = Json::array();
    for (Json& entry : object[list]) {
        if (!wanted(entry)) left.push_back(std::move(entry));
    }
    const bool erased = left.size() != object[list].size();
    object[list] = std::move(left);
    return erased;
}

bool erase_entry(Json& object, const char* list, const char* key, const Json& value) {
    return erase_from(object, list, [&](const Json& entry) { return has(entry, key, value); });
}

Json meals_json(kitchen::Meals meals) {
    Json list = Json::array();
    for (const auto meal : {kitchen::Meal::lunch, kitchen::Meal::dinner}) {
        if (kitchen::has(meals, meal)) list.push_back(kitchen::name(meal));
    }
    return list;
}

Json week_json(const kitchen::Week& week) {
    Json object = Json::object();
    for (const unsigned day : from_monday) object[std::string(weekday_keys[day])] = meals_json(week[day]);
    return object;
}

Json weekdays_json(std::uint8_t weekdays) {
    Json list = Json::array();
    for (const unsigned day : from_monday) {
        if ((weekdays >> day & 1U) != 0) list.push_back(weekday_keys[day]);
    }
    return list;
}

/// An empty list says nothing: it goes.
void set_list(Json& entry, const char* key, const std::optional<std::vector<std::string>>& words) {
    if (!words) return;
    if (words->empty()) {
        entry.erase(key);
    } else {
        entry[key] = *words;
    }
}

/// "shopping_days" become trips, so that one of them can be told apart.
void make_trips(Json& document) {
    if (!document.contains("shopping_days")) return;
    Json trips = Json::array();
    for (const Json& day : document["shopping_days"]) trips.push_back(Json{{"day", day}});
    for (const Json& trip : list_of(document, "trips")) trips.push_back(trip);
    document["trips"] = std::move(trips);
    document.erase("shopping_days");
}

}  // namespace

const std::vector<std::string>& night_kinds() {
    return detail::dish_kinds();
}

std::string new_id(const Json& document, std::string_view list, const std::string& name) {
    std::string id;
    for (const char c : name) {
        const bool capital = c >= 'A' && c <= 'Z';
        const char small = capital ? static_cast<char>(c - 'A' + 'a') : c;
        const bool counts = (small >= 'a' && small <= 'z') || (small >= '0' && small <= '9');
        if (counts) {
            id += small;
        } else if (!id.empty() && id.back() != '-') {
            id += '-';
        }
    }
    while (!id.empty() && id.back() == '-') id.pop_back();
    if (id.empty()) id = list == "people" ? "someone" : "somewhere";
    const auto taken = [&](const std::string& word) {
        if (!document.contains(list)) return false;
        const Json& entries = document[std::string(list)];
        return std::any_of(entries.begin(), entries.end(), [&](const Json& entry) { return has(entry, "id", word); });
    };
    std::string free = id;
    for (int n = 2; taken(free); ++n) free = fmt::format("{}-{}", id, n);
    return free;
}

void set_person(Json& document, const PersonEdit& person) {
    Json& entry = entry_of(document, "people", "id", person.id);
    entry["name"] = person.name;
    if (person.serve_thousandths) {
        entry["eats"] = static_cast<double>(*person.serve_thousandths) / 1000;
        if (*person.serve_thousandths == 1000) entry.erase("eats");
    }
    set_list(entry, "avoids", person.avoids);
    set_list(entry, "dislikes", person.dislikes);
    if (person.home) {
        entry["home"] = week_json(*person.home);
        entry.erase("roster");
        entry.erase("roster_from");
    } else if (!entry.contains("home") && !entry.contains("roster")) {
        kitchen::Week week{};
        week.fill(both_meals);
        entry["home"] = week_json(week);
    }
}

bool remove_person(Json& document, const std::string& id) {
    return erase_entry(document, "people", "id", id);
}

void add_away(Json& document, const std::string& person, const kitchen::Away& away) {
    Json entry{{"from", basics::iso(away.span.first)}, {"to", basics::iso(away.span.last)}};
    if (away.meals != both_meals) entry["meals"] = meals_json(away.meals);
    Json& list = list_of(entry_of(document, "people", "id", person), "away");
    if (std::find(list.begin(), list.end(), entry) == list.end()) list.push_back(std::move(entry));
}

bool remove_away(Json& document, const std::string& person, const basics::Span& span) {
    return erase_from(entry_of(document, "people", "id", person), "away", [&](const Json& away) {
        const auto from = basics::read_iso_day(away.value("from", ""));
        const auto to = basics::read_iso_day(away.value("to", ""));
        return from && to && *from <= span.last && *to >= span.first;
    });
}

void set_mark(Json& document, const std::string& person, bool dish, const std::string& of, int mark) {
    Json& entry = entry_of(document, "people", "id", person);
    const char* key = dish ? "dish" : "of";
    static_cast<void>(erase_entry(entry, "marks", key, of));
    if (mark != 0) list_of(entry, "marks").push_back(Json{{key, of}, {"mark", mark}});
    if (entry.contains("marks") && entry["marks"].empty()) entry.erase("marks");
}

void set_guests(Json& document, const GuestsEdit& guests) {
    Json& entry = entry_of(document, "occasions", "day", basics::iso(guests.day));
    if (guests.note) entry["note"] = *guests.note;
    if (guests.dish) entry["dish"] = *guests.dish;
    if (guests.guests) entry["guests"] = *guests.guests;
    set_list(entry, "guests_avoid", guests.avoid);
}

bool remove_guests(Json& document, basics::Day day) {
    return erase_entry(document, "occasions", "day", basics::iso(day));
}

void set_trip(Json& document, const kitchen::Trip& trip) {
    make_trips(document);
    const std::string day = trip.weekday ? key_of(*trip.weekday) : basics::iso(trip.from.value_or(basics::Day{}));
    const std::string what(kitchen::name(trip.what_for));
    static_cast<void>(erase_from(document, "trips", [&](const Json& entry) {
        const std::string other = entry.value("for", "all");
        return has(entry, "day", day) && (other == what || other == "all" || what == "all");
    }));
    Json entry{{"day", day}};
    if (trip.weekday && trip.every != 1) entry["every"] = trip.every;
    if (trip.weekday && trip.from) entry["from"] = basics::iso(*trip.from);
    if (trip.what_for != kitchen::TripFor::all) entry["for"] = what;
    list_of(document, "trips").push_back(std::move(entry));
}

bool remove_trip(Json& document, std::optional<std::chrono::weekday> weekday, std::optional<basics::Day> date) {
    make_trips(document);
    const std::string day = weekday ? key_of(*weekday) : basics::iso(date.value_or(basics::Day{}));
    return erase_entry(document, "trips", "day", day);
}

void set_night(Json& document, const kitchen::StandingNight& night) {
    Json& entry = entry_of(document, "standing_nights", "day", key_of(night.weekday));
    entry["kinds"] = night.kinds;
    entry.erase("from");
    if (night.kinds.size() > 1) entry["from"] = basics::iso(night.from);
}

bool remove_night(Json& document, std::chrono::weekday weekday) {
    return erase_entry(document, "standing_nights", "day", key_of(weekday));
}

void set_minutes(Json& document, std::chrono::weekday weekday, int minutes) {
    Json& all = document["minutes"];
    if (!all.is_object()) all = Json::object();
    all[key_of(weekday)] = minutes;
}

void set_place(Json& document, const PlaceEdit& place) {
    Json& entry = entry_of(document, "places", "id", place.id);
    entry["name"] = place.name;
    entry["kind"] = stock::name(place.kind);
    if (!place.room_ml) return;
    if (*place.room_ml % 1000 == 0) {
        entry["litres"] = *place.room_ml / 1000;
    } else {
        entry["litres"] = static_cast<double>(*place.room_ml) / 1000;
    }
}

bool remove_place(Json& document, const std::string& id) {
    return erase_entry(document, "places", "id", id);
}

void set_use(Json& document, const std::string& of, const std::string& amount, std::uint8_t weekdays) {
    constexpr std::uint8_t every_day = 0x7F;
    Json& entry = entry_of(document, "standing_uses", "of", of);
    entry["amount"] = amount;
    entry.erase("days");
    if (weekdays != every_day) entry["days"] = weekdays_json(weekdays);
}

bool remove_use(Json& document, const std::string& of) {
    return erase_entry(document, "standing_uses", "of", of);
}

void set_shelves(Json& document, const std::vector<std::string>& shelves) {
    set_list(document, "shelves", shelves);
}

void set_staple(Json& document, const std::string& of, bool staple) {
    const auto is = [&](const Json& word) { return word == of; };
    for (const char* list : {"staples", "not_staples"}) {
        static_cast<void>(erase_from(document, list, is));
        if (document.contains(list) && document[list].empty()) document.erase(list);
    }
    list_of(document, staple ? "staples" : "not_staples").push_back(of);
}

}  // namespace samebase::exchange
