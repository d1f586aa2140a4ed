#include "exchange/household.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <tuple>
#include <utility>

#include "exchange/detail/documents.hpp"
#include "exchange/detail/lines.hpp"
#include "exchange/detail/reading.hpp"
#include "exchange/file.hpp"
#include "kitchen/shelf.hpp"

namespace samebase::exchange {

namespace {

using detail::Element;
using kitchen::Household;
using kitchen::Knowledge;

constexpr std::array<std::string_view, 7> weekday_keys{"sun", "mon", "tue", "wed", "thu", "fri", "sat"};

std::optional<unsigned> read_weekday_key(std::string_view text) {
    const auto found = std::find(weekday_keys.begin(), weekday_keys.end(), text);
    if (found == weekday_keys.end()) return std::nullopt;
    return static_cast<unsigned>(found - weekday_keys.begin());
}

const std::vector<std::string>& weekday_words() {
    static const std::vector<std::string> words(weekday_keys.begin(), weekday_keys.end());
    return words;
}

std::uint8_t weekdays(const Element& list) {
    std::uint8_t bits = 0;
    for (const Element& e : list.list()) {
        if (const auto day = detail::word(e, read_weekday_key, weekday_words()))
            bits = static_cast<std::uint8_t>(bits | 1U << *day);
    }
    return bits;
}

kitchen::Meals meals(const Element& list) {
    kitchen::Meals bits = 0;
    for (const Element& e : list.list()) {
        if (const auto meal = detail::word(e, kitchen::read_meal, {"lunch", "dinner"})) bits |= kitchen::only(*meal);
    }
    return bits;
}

kitchen::Week week(const Element& e) {
    kitchen::Week result{};
    if (!e.object({"sun", "mon", "tue", "wed", "thu", "fri", "sat"})) return result;
    for (unsigned i = 0; i < weekday_keys.size(); ++i) {
        if (const auto day = e.find(weekday_keys[i])) result[i] = meals(*day);
    }
    return result;
}

void marks(const Element& person, kitchen::Person& result, const Knowledge& knowledge) {
    for (const Element& e : person.list("marks")) {
        if (!e.object({"dish", "of", "mark"})) continue;
        kitchen::Mark mark;
        mark.mark = static_cast<int>(e.optional_integer("mark", -3, 3).value_or(0));
        if (e.find("dish")) {
            mark.dish = detail::dish(e, "dish", knowledge.cookbook);
            if (!mark.dish) continue;
        } else if (const auto of = detail::ingredient_or_family(e, "of", knowledge.catalogue)) {
            mark.of = *of;
        } else {
            continue;
        }
        result.marks.push_back(mark);
    }
}

kitchen::Person person(const Element& e, const Knowledge& knowledge) {
    kitchen::Person result;
    if (!e.object({"id", "name", "eats", "avoids", "dislikes", "marks", "home", "roster", "roster_from", "away"}))
        return result;
    result.id = e.id("id");
    result.name = e.text("name");
    result.serve_thousandths = std::llround(e.optional_number("eats", 0.05, 5).value_or(1) * 1000);
    result.avoids = detail::allergens(e.list("avoids"));
    for (const Element& disliked : e.list("dislikes")) {
        if (const auto of = detail::named_ingredient_or_family(disliked, knowledge.catalogue))
            result.dislikes.push_back(*of);
    }
    marks(e, result, knowledge);
    if (const auto home = e.find("home")) result.roster.push_back(week(*home));
    for (const Element& w : e.list("roster")) result.roster.push_back(week(w));
    if (!e.find("home") && !(e.find("roster") && !e.find("roster")->value().empty()))
        e.wrong("neither 'home' nor 'roster'", "the meals that this person is home for");
    if (const auto from = e.find("roster_from")) result.roster_from = detail::day(*from);
    for (const Element& away : e.list("away")) {
        if (!away.object({"from", "to", "meals"})) continue;
        const auto from = away.need("from");
        const auto to = away.need("to");
        if (!from || !to) continue;
        const auto first = detail::checked_day(*from);
        const auto last = detail::checked_day(*to);
        if (!first || !last) continue;
        kitchen::Away absence{{*first, *last}, kitchen::Meals{3}};
        if (*last < *first) to->wrong(to->shown(), "a day that is not before 'from'");
        if (const auto which = away.find("meals")) absence.meals = meals(*which);
        result.away.push_back(absence);
    }
    return result;
}

stock::Place place(const Element& e) {
    stock::Place result;
    if (!e.object({"id", "name", "kind", "litres"})) return result;
    result.id = e.id("id");
    result.name = e.text("name");
    if (const auto kind = e.need("kind")) {
        result.kind =
            detail::word(*kind, stock::read_place_kind, detail::names_of<stock::PlaceKind>(5)).value_or(result.kind);
    }
    if (const auto litres = e.optional_number("litres", 0.1, 100'000)) result.room_ml = std::llround(*litres * 1000);
    return result;
}

/// Reads a list in which every entry has an identifier of its own, into the order of identifiers.
template <class Read>
auto by_id(const std::vector<Element>& list, Read read) {
    std::vector<decltype(read(list.front()))> things;
    std::vector<std::pair<std::string, Element>> ids;
    for (const Element& e : list) {
        things.push_back(read(e));
        if (!things.back().id.empty()) ids.emplace_back(things.back().id, e);
    }
    detail::sound_ids(ids);
    std::sort(things.begin(), things.end(), [](const auto& a, const auto& b) { return a.id < b.id; });
    return things;
}

void rules(const Element& e, Household& result, const Knowledge& knowledge) {
    const auto& catalogue = knowledge.catalogue;
    for (const Element& use : e.list("standing_uses")) {
        if (!use.object({"of", "amount", "days"})) continue;
        const auto id = detail::ingredient(use, "of", catalogue);
        const auto at = use.need("amount");
        if (!id || !at) continue;
        const auto amount = detail::amount_of(*at, *id, catalogue, result.measures);
        if (!amount) continue;
        kitchen::StandingUse standing{*id, *amount, 0x7F};
        if (const auto days = use.find("days")) standing.weekdays = weekdays(*days);
        result.standing_uses.push_back(standing);
    }
    for (const Element& night : e.list("standing_nights")) {
        if (!night.object({"day", "kinds", "from"})) continue;
        const auto at = night.need("day");
        const auto day = at ? detail::word(*at, read_weekday_key, weekday_words()) : std::nullopt;
        kitchen::StandingNight standing;
        for (const Element& kind : night.list("kinds")) {
            if (auto known = detail::word(kind, detail::read_dish_kind, detail::dish_kinds())) {
                standing.kinds.push_back(std::move(*known));
            }
        }
        if (!night.find("kinds") || night.find("kinds")->value().empty())
            night.wrong("no kinds", "at least one kind of dish");
        if (const auto from = night.find("from")) standing.from = detail::day(*from);
        if (!day) continue;
        standing.weekday = std::chrono::weekday{*day};
        if (std::any_of(result.standing_nights.begin(), result.standing_nights.end(),
                        [&](const auto& other) { return other.weekday == standing.weekday; })) {
            at->wrong(fmt::format("{} once more", at->shown()),
                      "one standing night for a weekday; several kinds take turns");
        }
        result.standing_nights.push_back(std::move(standing));
    }
    for (const Element& o : e.list("occasions")) {
        if (!o.object({"day", "note", "dish", "guests", "guests_avoid"})) continue;
        kitchen::Occasion occasion;
        if (const auto day = o.need("day")) occasion.day = detail::day(*day);
        occasion.note = o.optional_text("note").value_or("");
        if (const auto dish = o.find("dish"); dish && !dish->is_null())
            occasion.dish = detail::dish(o, "dish", knowledge.cookbook);
        occasion.guests = static_cast<int>(o.optional_integer("guests", 0, 1000).value_or(0));
        occasion.guests_avoid = detail::allergens(o.list("guests_avoid"));
        result.occasions.push_back(std::move(occasion));
    }
}

void prices(const Element& e, Household& result, const catalogue::Catalogue& catalogue) {
    for (const Element& p : e.list("prices")) {
        if (!p.object({"of", "amount", "price"})) continue;
        const auto id = detail::ingredient(p, "of", catalogue);
        const auto at = p.need("amount");
        const auto price = p.optional_integer("price", 0, 100'000'000);
        if (!p.find("price") || p.find("price")->is_null())
            p.wrong("no 'price'", "what was paid, in the smallest unit of the currency");
        if (!id || !at || !price) continue;
        if (const auto amount = detail::amount_of(*at, *id, catalogue, result.measures)) {
            result.prices.push_back({*id, *amount, basics::Money{*price}});
        }
    }
}

void worths(const Element& e, Household& result) {
    const auto at = e.find("worths");
    if (!at || !at->object({"fussiness", "mark", "minute", "had_lately", "bought_lunch", "trip"})) return;
    const auto money = [&](std::string_view key, basics::Money& value) {
        if (const auto minor = at->optional_integer(key, 0, 1'000'000)) value.minor = *minor;
    };
    money("fussiness", result.worths.fussiness);
    money("mark", result.worths.mark);
    money("minute", result.worths.minute);
    money("had_lately", result.worths.had_lately);
    money("bought_lunch", result.worths.bought_lunch);
    money("trip", result.worths.trip);
}

void staples(const Element& e, Household& result, const catalogue::Catalogue& catalogue) {
    result.staples.assign(catalogue.ingredients().size(), false);
    result.staples_out.assign(catalogue.ingredients().size(), false);
    if (e.boolean("usual_staples", true)) {
        for (std::size_t i = 0; i < result.staples.size(); ++i) result.staples[i] = catalogue.ingredients()[i].staple;
    }
    for (const Element& name : e.list("staples")) {
        if (const auto id = detail::named_ingredient(name, catalogue)) result.staples[id->index()] = true;
    }
    for (const Element& name : e.list("not_staples")) {
        if (const auto id = detail::named_ingredient(name, catalogue)) result.staples[id->index()] = false;
    }
}

/// "sat", every 2 from 2026-12-05; or a date.
void trip_of(const Element& e, Household& result) {
    if (!e.object({"day", "every", "from", "for"})) return;
    const auto at = e.need("day");
    if (!at) return;
    kitchen::Trip trip;
    const std::string text = at->text();
    const auto weekday = read_weekday_key(text);
    const auto date = basics::read_iso_day(text);
    if (weekday) trip.weekday = std::chrono::weekday{*weekday};
    if (date) trip.from = date;
    if (!weekday && !date && at->value().is_string()) {
        at->wrong(at->shown(), "a day of the week or a date: 'sat', '2026-12-05'",
                  detail::did_you_mean(text, weekday_words()));
    }
    const auto every = e.optional_integer("every", 1, 52);
    if (every) trip.every = static_cast<int>(*every);
    if (const auto from = e.find("from")) {
        if (date) from->wrong("'from' beside a date", "'from' only with a day of the week");
        trip.from = detail::checked_day(*from);
    } else if (weekday && trip.every > 1) {
        e.wrong(fmt::format("every {} weeks, and no 'from'", trip.every), "the date of the first of these trips");
    }
    if (date && trip.every > 1) e.wrong("'every' beside a date", "'every' only with a day of the week");
    if (const auto what = e.find("for"))
        trip.what_for = detail::word(*what, kitchen::read_trip_for, {"all", "fresh", "bulk"}).value_or(trip.what_for);
    if (weekday || date) result.trips.push_back(trip);
}

/// "shopping_days" are weekly trips for everything.
void trips(const Element& e, Household& result) {
    if (const auto days = e.find("shopping_days")) result.trips = kitchen::weekly_trips(weekdays(*days));
    for (const Element& one : e.list("trips")) trip_of(one, result);
    for (const Element& shelf : e.list("shelves")) {
        const std::string name = shelf.text();
        const auto& known = kitchen::shelf_names();
        if (std::find(known.begin(), known.end(), name) == known.end()) {
            shelf.wrong(shelf.shown(), fmt::format("one of: {}", fmt::join(known, ", ")),
                        detail::did_you_mean(name, known));
        } else if (std::find(result.shelves.begin(), result.shelves.end(), name) != result.shelves.end()) {
            shelf.wrong(fmt::format("'{}' once more", name), "each shelf once");
        } else {
            result.shelves.push_back(name);
        }
    }
}

void settings(const Element& e, Household& result) {
    result.name = e.text("name");
    if (const auto at = e.find("currency"); at && !at->is_null()) {
        const std::string code = at->text();
        const bool capitals = std::all_of(code.begin(), code.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
        if (at->value().is_string() && (code.size() != 3 || !capitals)) {
            at->wrong(at->shown(), "three capital letters (ISO 4217), such as 'AUD'");
        }
        result.currency = code;
    }
    if (const auto at = e.find("hemisphere")) {
        const auto read = [](std::string_view text) -> std::optional<bool> {
            if (text == "south") return true;
            if (text == "north") return false;
            return std::nullopt;
        };
        result.southern = detail::word(*at, read, {"south", "north"}).value_or(true);
    }
    if (const auto at = e.find("measures")) {
        result.measures = detail::word(*at, measure::read_measure_set,
                                       detail::names_of<measure::MeasureSet>(measure::measure_set_count))
                              .value_or(result.measures);
    }
    trips(e, result);
    if (const auto minor = e.optional_integer("tell_from", 0, 1'000'000)) result.tell_from.minor = *minor;
    if (const auto minutes = e.find("minutes");
        minutes && minutes->object({"sun", "mon", "tue", "wed", "thu", "fri", "sat"})) {
        for (unsigned i = 0; i < weekday_keys.size(); ++i) {
            if (const auto most = minutes->optional_integer(weekday_keys[i], 0, 1440))
                result.minutes[i] = static_cast<int>(*most);
        }
    }
}

}  // namespace

namespace {

/// "kitchen.json, /people/3/dislikes/0 (Dan)".
basics::Problems with_names(basics::Problems problems, const nlohmann::json& document, const std::string& name) {
    const std::string head = name + ", /people/";
    for (basics::Problem& problem : problems) {
        if (!problem.where.starts_with(head)) continue;
        std::size_t at = 0;
        const char* const end = problem.where.data() + problem.where.size();
        if (std::from_chars(problem.where.data() + head.size(), end, at).ec != std::errc{}) continue;
        const auto& people = document["people"];
        if (!people.is_array() || at >= people.size() || !people[at].is_object()) continue;
        const auto known = people[at].find("name");
        if (known != people[at].end() && known->is_string() && known->get_ref<const std::string&>().size() < 60)
            problem.where += fmt::format(" ({})", known->get_ref<const std::string&>());
    }
    return problems;
}

}  // namespace

basics::Result<Household> read_household(const nlohmann::json& document, const std::string& name,
                                         const Knowledge& knowledge) {
    basics::Problems problems;
    const Element e(document, name, problems);
    Household result;
    if (e.object({"samebase",      "name",    "currency",    "hemisphere",    "measures",        "people",    "places",
                  "usual_staples", "staples", "not_staples", "standing_uses", "standing_nights", "occasions", "prices",
                  "shopping_days", "trips",   "shelves",     "minutes",       "worths",          "tell_from"})) {
        if (const auto at = e.need("samebase")) detail::version(*at);
        settings(e, result);
        result.people = by_id(e.list("people"), [&](const Element& p) { return person(p, knowledge); });
        result.places = by_id(e.list("places"), place);
        staples(e, result, knowledge.catalogue);
        rules(e, result, knowledge);
        prices(e, result, knowledge.catalogue);
        worths(e, result);
    }
    if (!problems.empty()) return tl::make_unexpected(with_names(std::move(problems), document, name));
    return result;
}

basics::Result<Household> read_household_text(const std::string& text, const std::string& name,
                                              const Knowledge& knowledge) {
    const auto document = parse(text, name);
    if (!document) return tl::make_unexpected(document.error());
    auto household = read_household(*document, name, knowledge);
    if (household) return household;
    for (basics::Problem& problem : household.error()) {
        const std::string head = name + ", /";
        if (!problem.where.starts_with(head)) continue;
        const std::string path = problem.where.substr(head.size() - 1);
        const auto line = detail::line_of(text, path.substr(0, path.find(' ')));
        problem.where = fmt::format("{}, line {}, {}", name, line, path);
    }
    return household;
}

namespace {

/// "mon" three days on is "thu"; other text stays.
std::string weekday_on(const std::string& text, basics::days shift) {
    const auto day = read_weekday_key(text);
    if (!day) return text;
    return std::string(weekday_keys[(std::chrono::weekday{*day} + shift).c_encoding()]);
}

}  // namespace

nlohmann::json moved(nlohmann::json document, basics::days shift) {
    std::vector<nlohmann::json*> to_do{&document};  // not by recursion: a document may nest as deep as it likes
    while (!to_do.empty()) {
        nlohmann::json& value = *to_do.back();
        to_do.pop_back();
        if (value.is_object()) {
            nlohmann::json renamed = nlohmann::json::object();
            for (auto& [key, child] : value.items()) renamed[weekday_on(key, shift)] = std::move(child);
            value = std::move(renamed);
        } else if (value.is_string()) {
            const auto& text = value.get_ref<const std::string&>();
            const auto day = basics::read_iso_day(text);
            value = day ? basics::iso(*day + shift) : weekday_on(text, shift);
        }
        if (value.is_structured()) {
            for (auto& child : value) to_do.push_back(&child);
        }
    }
    return document;
}

}  // namespace samebase::exchange
