#include "household_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <sstream>

namespace samebase::cli {

namespace {

using catalogue::Allergen;
using catalogue::NameIndex;

std::string lower(std::string text) {
    for (char& c : text) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return text;
}

std::string joined_from(const std::vector<std::string>& words, std::size_t first, std::size_t last) {
    return joined(
        {words.begin() + static_cast<std::ptrdiff_t>(first), words.begin() + static_cast<std::ptrdiff_t>(last)});
}

std::optional<unsigned> month_of(const std::string& word) {
    constexpr std::array<std::string_view, 12> months{"january",   "february", "march",    "april",
                                                      "may",       "june",     "july",     "august",
                                                      "september", "october",  "november", "december"};
    const std::string text = lower(word);
    for (unsigned i = 0; i < months.size() && text.size() >= 3; ++i) {
        if (months[i].starts_with(text)) return i + 1;
    }
    return std::nullopt;
}

/// A day of the coming year, or of the year that is said.
std::optional<basics::Day> dated(unsigned day, unsigned month, std::optional<int> year, basics::Day today) {
    const int now = static_cast<int>(std::chrono::year_month_day{today}.year());
    for (int at = year.value_or(now); at <= year.value_or(now + 1); ++at) {
        const auto date = std::chrono::year{at} / static_cast<int>(month) / static_cast<int>(day);
        if (date.ok() && (year || basics::Day{date} >= today)) return basics::Day{date};
    }
    return std::nullopt;
}

/// One side of a span: numbers and names of months; `month` is that of the other side.
std::string iso_day(const std::string& text, std::optional<unsigned> month, basics::Day today) {
    constexpr int years = 3000;
    std::optional<int> day;
    std::optional<int> year;
    for (const std::string& word : words_of(text)) {
        const auto number = whole_number(word, 1, years);
        if (const auto named = month_of(word)) {
            month = named;
        } else if (number && *number > 31) {
            year = number;
        } else if (number && !day) {
            day = number;
        } else if (!basics::read_weekday(lower(word))) {
            return text;
        }
    }
    if (!day || !month) return text;
    const auto found = dated(static_cast<unsigned>(*day), *month, year, today);
    return found ? basics::iso(*found) : text;
}

std::optional<unsigned> month_in(const std::string& text) {
    for (const std::string& word : words_of(text)) {
        if (const auto month = month_of(word)) return month;
    }
    return std::nullopt;
}

struct AllergenWord {
    std::string_view word;
    std::vector<Allergen> means;
};

/// What cooks say beside the names of the lists. "Nuts" are peanuts too: the stricter reading.
const std::vector<AllergenWord>& other_words() {
    using enum Allergen;
    static const std::vector<AllergenWord> words{
        {"dairy", {milk}},
        {"lactose", {milk}},
        {"coeliac", {gluten}},
        {"shellfish", {crustacean, mollusc}},
        {"prawns", {crustacean}},
        {"soya", {soy}},
        {"tree nuts", {almond, brazil_nut, cashew, hazelnut, macadamia, pecan, pine_nut, pistachio, walnut}},
        {"nuts", {peanut, almond, brazil_nut, cashew, hazelnut, macadamia, pecan, pine_nut, pistachio, walnut}}};
    return words;
}

std::vector<std::string> names(const std::vector<catalogue::Found>& found) {
    std::vector<std::string> result;
    for (const auto& f : found) result.push_back(fmt::format("'{}'", f.name));
    return result;
}

std::optional<std::string> nearest_hint(const catalogue::Match& match) {
    if (match.nearest.empty()) return std::nullopt;
    return fmt::format("the nearest: {}", fmt::join(names(match.nearest), ", "));
}

/// The nearest family that all of these are in.
std::optional<std::string> above_all(const catalogue::Catalogue& catalogue,
                                     const std::vector<catalogue::Found>& families) {
    std::vector<catalogue::FamilyId> to_cook;  // families of leftovers say nothing of what is bought
    for (const auto& f : families) {
        const auto members = catalogue.members(catalogue::FamilyId{f.key});
        const auto cooked = [&](auto id) { return catalogue[id].kind == catalogue::Kind::cooked; };
        if (!std::all_of(members.begin(), members.end(), cooked)) to_cook.emplace_back(f.key);
    }
    if (to_cook.empty()) return std::nullopt;
    const auto is_in = [&](std::optional<catalogue::FamilyId> family, catalogue::FamilyId above) {
        while (family && *family != above) family = catalogue[*family].parent;
        return family.has_value();
    };
    std::optional<catalogue::FamilyId> above = to_cook.front();
    const auto holds_all = [&](catalogue::FamilyId family) {
        return std::all_of(to_cook.begin(), to_cook.end(), [&](const auto& id) { return is_in(id, family); });
    };
    while (above && !holds_all(*above)) above = catalogue[*above].parent;
    if (!above) return std::nullopt;
    return fmt::format("all of them: '{}'", catalogue[*above].name);
}

bool none(const std::vector<std::string>& words) {
    return words.size() == 1 && lower(words.front()) == "none";
}

std::optional<stock::PlaceKind> kind_of(const std::string& words) {
    std::string text = lower(words);
    std::replace(text.begin(), text.end(), ' ', '-');
    return stock::read_place_kind(text);
}

}  // namespace

std::vector<std::string> words_of(const std::string& text) {
    std::vector<std::string> words;
    std::istringstream stream(text);
    for (std::string word; stream >> word;) words.push_back(word);
    return words;
}

std::optional<int> whole_number(const std::string& text, int least, int most) {
    int value = 0;
    const char* end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value);
    if (error != std::errc{} || stop != end || value < least || value > most) return std::nullopt;
    return value;
}

std::string with_iso_days(const std::string& text, basics::Day today) {
    std::string plain = text;
    if (const auto to = plain.find(" to "); to != std::string::npos) plain.replace(to, 4, "..");
    const auto dots = plain.find("..");
    if (dots == std::string::npos) return iso_day(plain, std::nullopt, today);
    const std::string first = plain.substr(0, dots);
    const std::string last = plain.substr(dots + 2);
    return iso_day(first, month_in(last), today) + ".." + iso_day(last, month_in(first), today);
}

std::optional<basics::Day> a_day(const std::string& text, basics::Day today) {
    return basics::read_day(lower(with_iso_days(text, today)), today);
}

std::optional<basics::Span> a_span(const std::string& text, basics::Day today) {
    return basics::read_span(lower(with_iso_days(text, today)), today);
}

Understood<std::size_t> person_meant(const kitchen::Household& household, const std::string& words, bool exactly) {
    NameIndex index;
    std::vector<std::string> known;
    for (std::uint32_t i = 0; i < household.people.size(); ++i) {
        index.add(i, 0, household.people[i].name);
        index.add(i, 0, spaced(household.people[i].id));
        known.push_back(household.people[i].name);
    }
    index.finish();
    const auto match = index.find(words);
    const bool sure = match.found.size() == 1 && (!exactly || (match.whole && match.found.front().distance == 0));
    if (sure) return match.found.front().key;
    if (match.found.size() > 1) {
        return failure(not_understood,
                       {{words, fmt::format("several are called that: {}", fmt::join(names(match.found), ", ")),
                         "one of them", std::nullopt}});
    }
    const auto hint =
        match.found.empty() ? std::nullopt : std::optional(fmt::format("did you mean '{}'?", match.found.front().name));
    return failure(not_understood, {{words, "nobody here is called that",
                                     known.empty() ? "a name: household person NAME is the first"
                                                   : fmt::format("one of {}", fmt::join(known, ", ")),
                                     hint}});
}

Understood<PersonSaid> person_first(const kitchen::Household& household, const std::vector<std::string>& words) {
    if (words.empty())
        return failure(not_understood, {{"household", "nobody is named", "a person's name first", std::nullopt}});
    constexpr std::size_t longest = 4;
    for (std::size_t count = std::min(words.size(), longest); count > 0; --count) {
        const auto person = person_meant(household, joined_from(words, 0, count), true);
        if (person) return PersonSaid{*person, count};
    }
    return person_meant(household, words.front(), false).map([](std::size_t person) { return PersonSaid{person, 1}; });
}

Understood<std::vector<std::string>> allergens_meant(const std::vector<std::string>& words) {
    std::vector<std::string> result;
    if (none(words)) return result;
    NameIndex index;
    std::uint32_t key = 0;
    for (; key < catalogue::allergen_count; ++key)
        index.add(key, 0, spaced(std::string(name(static_cast<Allergen>(key)))));
    for (const auto& other : other_words()) index.add(key++, 0, other.word);
    index.finish();
    catalogue::AllergenSet set;
    std::vector<std::string> said = split_at_commas(joined(words));
    // "gluten egg" without a comma is two.
    if (said.size() == 1 && index.find(said.front()).found.size() != 1) said = words_of(said.front());
    basics::Problems problems;
    for (const std::string& word : said) {
        const auto match = index.find(word);
        if (match.found.size() != 1) {
            problems.push_back(
                {word, "is not an allergen that is told apart",
                 "gluten, wheat, egg, milk, fish, crustacean, mollusc, peanut, nuts, sesame, soy, lupin, "
                 "celery, mustard, sulphites",
                 nearest_hint(match).value_or("what somebody only dislikes is --dislike")});
        } else if (match.found.front().key < catalogue::allergen_count) {
            set.add(static_cast<Allergen>(match.found.front().key));
        } else {
            for (const auto allergen : other_words()[match.found.front().key - catalogue::allergen_count].means)
                set.add(allergen);
        }
    }
    if (!problems.empty()) return failure(not_understood, std::move(problems));
    for (const auto allergen : set.members()) result.emplace_back(name(allergen));
    return result;
}

Understood<std::string> thing_meant(const kitchen::Kitchen& kitchen, const std::string& words) {
    const auto& catalogue = kitchen.catalogue();
    NameIndex index;
    constexpr std::uint8_t of_family = 0;
    constexpr std::uint8_t of_ingredient = 1;
    for (std::uint32_t i = 0; i < catalogue.families().size(); ++i) {
        index.add(i, of_family, catalogue.families()[i].name);
        index.add(i, of_family, spaced(catalogue.families()[i].id));
    }
    for (std::uint32_t i = 0; i < catalogue.ingredients().size(); ++i) {
        const auto& thing = catalogue.ingredients()[i];
        for (const auto& text : thing.also) index.add(i, of_ingredient, text);
        index.add(i, of_ingredient, thing.name);
        index.add(i, of_ingredient, spaced(thing.id));
    }
    index.finish();
    auto match = index.find(words);
    // A cook's general word is the family.
    std::vector<catalogue::Found> families;
    for (const auto& f : match.found) {
        if (f.rank == of_family) families.push_back(f);
    }
    if (match.found.size() > 1 && families.size() == 1) match.found = families;
    if (match.found.size() == 1) {
        const auto& f = match.found.front();
        return f.rank == of_family ? catalogue.families()[f.key].id : catalogue.ingredients()[f.key].id;
    }
    if (!match.found.empty()) {
        return failure(not_understood,
                       {{words, fmt::format("several things are called that: {}", fmt::join(names(match.found), ", ")),
                         "one clear name", above_all(catalogue, families)}});
    }
    return failure(not_understood,
                   {{words, "nothing is called that", "the name of an ingredient or a family", nearest_hint(match)}});
}

Understood<std::vector<std::string>> things_meant(const kitchen::Kitchen& kitchen,
                                                  const std::vector<std::string>& words) {
    std::vector<std::string> result;
    if (none(words)) return result;
    basics::Problems problems;
    for (const std::string& text : split_at_commas(joined(words))) {
        const auto thing = thing_meant(kitchen, text);
        if (!thing) {
            problems.insert(problems.end(), thing.error().problems.begin(), thing.error().problems.end());
        } else if (std::find(result.begin(), result.end(), *thing) == result.end()) {
            result.push_back(*thing);
        }
    }
    if (!problems.empty()) return failure(not_understood, std::move(problems));
    return result;
}

std::optional<std::uint8_t> weekdays_meant(const std::string& text) {
    constexpr std::uint8_t all = 0x7F;
    constexpr std::uint8_t weekdays = 0x3E;
    constexpr std::uint8_t weekend = 0x41;
    std::uint8_t bits = 0;
    for (std::string part : split_at_commas(lower(text))) {
        if (part == "every day" || part == "daily" || part == "all") {
            bits |= all;
        } else if (part == "weekdays") {
            bits |= weekdays;
        } else if (part == "weekend" || part == "weekends") {
            bits |= weekend;
        } else {
            if (const auto dots = part.find(".."); dots != std::string::npos) part.replace(dots, 2, "-");
            const auto hyphen = part.find('-');
            const auto first = basics::read_weekday(part.substr(0, hyphen));
            const auto last = hyphen == std::string::npos ? first : basics::read_weekday(part.substr(hyphen + 1));
            if (!first || !last) return std::nullopt;
            for (auto day = *first;; ++day) {
                bits = static_cast<std::uint8_t>(bits | 1U << day.c_encoding());
                if (day == *last) break;
            }
        }
    }
    return bits == 0 ? std::nullopt : std::optional(bits);
}

Understood<kitchen::Week> week_meant(const std::string& text) {
    using kitchen::Meal;
    const auto wrong = [&](const std::string& part) {
        return failure(not_understood,
                       {{"--home", fmt::format("'{}'", part), "days and a meal: 'mon-fri dinner, sat-sun all'",
                         "the meals are dinner, lunch, all and none"}});
    };
    kitchen::Week week{};
    std::optional<std::uint8_t> pending = 0;  // days that wait for their meal: "mon, wed dinner"
    for (const std::string& part : split_at_commas(lower(text))) {
        auto words = words_of(part);
        std::optional<kitchen::Meals> meals;
        const std::string last = words.back();
        if (last == "all" || last == "both" || last == "meals")
            meals = kitchen::only(Meal::lunch) | kitchen::only(Meal::dinner);
        if (last == "dinner" || last == "dinners") meals = kitchen::only(Meal::dinner);
        if (last == "lunch" || last == "lunches") meals = kitchen::only(Meal::lunch);
        if (last == "none" || last == "out") meals = kitchen::Meals{0};
        if (meals && words.size() > 1) words.pop_back();
        const auto days =
            meals && joined(words) == last ? std::optional<std::uint8_t>{0x7F} : weekdays_meant(joined(words));
        if (!days) return wrong(part);
        pending = static_cast<std::uint8_t>(*pending | *days);
        if (!meals) continue;
        for (unsigned i = 0; i < 7; ++i) {
            if ((*pending >> i & 1U) != 0) week[i] = *meals;
        }
        pending = 0;
    }
    if (*pending != 0 || text.empty()) return wrong(text);
    return week;
}

Understood<std::vector<std::string>> kinds_meant(const std::vector<std::string>& words) {
    const auto& kinds = exchange::night_kinds();
    NameIndex index;
    for (std::uint32_t i = 0; i < kinds.size(); ++i) index.add(i, 0, spaced(kinds[i]));
    index.finish();
    const std::string text = joined(words);
    std::vector<std::string> result;
    const bool commas = text.find(',') != std::string::npos;
    const std::vector<std::string> said = commas ? split_at_commas(text) : words_of(text);
    for (std::size_t i = 0; i < said.size(); ++i) {
        // "stir fry" is one kind in two words.
        const std::string two = !commas && i + 1 < said.size() ? said[i] + " " + said[i + 1] : "";
        const auto pair = two.empty() ? catalogue::Match{} : index.find(two);
        const auto match = pair.found.size() == 1 && pair.whole ? pair : index.find(said[i]);
        if (match.found.size() != 1) {
            return failure(not_understood, {{said[i], "is not a kind of dinner",
                                             fmt::format("one of: {}", fmt::join(kinds, ", ")), nearest_hint(match)}});
        }
        if (pair.found.size() == 1 && pair.whole) ++i;
        result.push_back(kinds[match.found.front().key]);
    }
    if (result.empty())
        return failure(not_understood, {{"kinds", "none", "a kind of dinner, as in 'tue mince'", std::nullopt}});
    return result;
}

Understood<kitchen::StandingNight> night_meant(const std::vector<std::string>& words, basics::Day today) {
    const auto weekday = words.empty() ? std::nullopt : basics::read_weekday(lower(words.front()));
    if (!weekday) {
        return failure(not_understood,
                       {{"night", words.empty() ? "nothing is said" : fmt::format("'{}'", words.front()),
                         "a day of the week and a kind of dinner: tue mince", std::nullopt}});
    }
    auto kinds = kinds_meant({words.begin() + 1, words.end()});
    if (!kinds) return tl::make_unexpected(kinds.error());
    return kitchen::StandingNight{*weekday, std::move(*kinds), today + (*weekday - std::chrono::weekday{today})};
}

Understood<kitchen::Trip> trip_meant(const std::string& text, basics::Day today) {
    const auto wrong = [&](std::string found) {
        return failure(not_understood,
                       {{"trip", std::move(found),
                         "a weekday or a date, and what for: sat, sat every 2 from 5 dec, 5 dec bulk", std::nullopt}});
    };
    kitchen::Trip trip;
    std::string day;
    std::string from;
    std::string* into = &day;
    const auto words = words_of(lower(text));
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        if (const auto what = kitchen::read_trip_for(word)) {
            trip.what_for = *what;
        } else if (word == "every") {
            const std::string next = i + 1 < words.size() ? words[i + 1] : "";
            const auto number = whole_number(next, 1, 52);
            if (number || next == "second" || next == "other") {
                trip.every = number.value_or(2);
                ++i;
            }
            into = &day;
        } else if (word == "from") {
            into = &from;
        } else if (word != "weeks" && word != "week" && word != "for" && word != "food" && word != "on") {
            *into += (into->empty() ? "" : " ") + word;
        }
    }
    trip.weekday = basics::read_weekday(day);
    const auto date = trip.weekday ? std::nullopt : a_day(day, today);
    if (!trip.weekday && !date) return wrong(day.empty() ? "no day" : fmt::format("'{}'", day));
    if (date && (trip.every != 1 || !from.empty())) return wrong(fmt::format("'{}', which is one day only", text));
    if (date) trip.from = date;
    if (!from.empty()) {
        trip.from = a_day(from, today);
        if (!trip.from) return wrong(fmt::format("from '{}'", from));
    }
    if (trip.weekday && trip.every > 1) {
        const basics::Day begin = trip.from.value_or(today);
        trip.from = begin + (*trip.weekday - std::chrono::weekday{begin});
    }
    return trip;
}

Understood<PlaceSaid> place_said(const std::string& text) {
    PlaceSaid place;
    std::string plain = text;
    std::replace(plain.begin(), plain.end(), ':', ' ');
    std::replace(plain.begin(), plain.end(), ',', ' ');
    auto words = words_of(plain);
    const auto litres = [&](std::string number, std::size_t take) {
        const std::string unit = lower(number.substr(number.find_first_not_of("0123456789.")));
        number = number.substr(0, number.find_first_not_of("0123456789."));
        if (number.empty() || (unit != "l" && unit != "litres" && unit != "litre")) return;
        place.room_ml = std::llround(std::stod(number) * 1000);
        words.resize(words.size() - take);
    };
    const auto starts_with_figure = [](const std::string& word) {
        return !word.empty() && word[0] >= '0' && word[0] <= '9';
    };
    const bool unit_inside = !words.empty() && starts_with_figure(words.back()) &&
                             words.back().find_first_not_of("0123456789.") != std::string::npos;
    if (unit_inside) {
        litres(words.back(), 1);
    } else if (words.size() > 1 && starts_with_figure(words[words.size() - 2]) &&
               words[words.size() - 2].find_first_not_of("0123456789.") == std::string::npos) {
        litres(words[words.size() - 2] + words.back(), 2);
    }
    for (const std::size_t take : {2U, 1U}) {
        if (words.size() < take || place.kind) continue;
        place.kind = kind_of(joined_from(words, words.size() - take, words.size()));
        if (place.kind && words.size() > take) words.resize(words.size() - take);
    }
    place.name = joined(words);
    if (place.name.empty())
        return failure(not_understood,
                       {{"place", "no name", "a place and its kind: shed freezer far-freezer", std::nullopt}});
    return place;
}

Understood<std::int64_t> eats_meant(const std::string& text) {
    double value = 0;
    const char* end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value);
    if (text == "half") return 500;
    if (error == std::errc{} && stop == end && value >= 0.05 && value <= 5) return std::llround(value * 1000);
    return failure(not_understood,
                   {{"--eats", fmt::format("'{}'", text), "serves from 0.05 to 5: 0.5 is half a serve", std::nullopt}});
}

}  // namespace samebase::cli
