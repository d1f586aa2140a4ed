// samebase household trip, night, minutes, place, use, staple, price: when the household shops, and what it keeps
// where.
#include <fmt/format.h>

#include <algorithm>

#include "amounts.hpp"
#include "household.hpp"
#include "kitchen/shelf.hpp"
#include "show/household.hpp"

namespace samebase::cli {

namespace {

tl::unexpected<Failure> wrong(std::string where, std::string found, std::string expected,
                              std::optional<std::string> hint = std::nullopt) {
    return failure(not_understood, {{std::move(where), std::move(found), std::move(expected), std::move(hint)}});
}

std::vector<std::string> rest(const std::vector<std::string>& words, std::size_t from) {
    if (from >= words.size()) return {};
    return {words.begin() + static_cast<std::ptrdiff_t>(from), words.end()};
}

struct TripWords : HouseholdWords {
    std::string every;
    std::vector<std::string> from;
};

Understood<Edited> edit_trip(const TripWords& words, const kitchen::At& at, exchange::HouseholdDocument& document) {
    std::string text = joined(words.words);
    if (!words.every.empty() && !whole_number(words.every, 1, 52))
        return wrong("--every", fmt::format("'{}'", words.every), "weeks from 1 to 52");
    if (!words.every.empty()) text += " every " + words.every;
    if (!words.from.empty()) text += " from " + joined(words.from);
    const auto trip = trip_meant(text, at.day);
    if (!trip) return tl::make_unexpected(trip.error());
    if (!trip->weekday && trip->from && *trip->from < at.day)
        return wrong("trip", show::day(*trip->from, at.day), "today or a later day");
    exchange::set_trip(document, *trip);
    return Edited{fmt::format("shopping: {}", show::trip_words(*trip, at.day))};
}

Understood<Edited> edit_night(const HouseholdWords& words, const kitchen::At& at,
                              exchange::HouseholdDocument& document) {
    const auto night = night_meant(words.words, at.day);
    if (!night) return tl::make_unexpected(night.error());
    exchange::set_night(document, *night);
    const auto weekday = basics::weekday_name(night->weekday);
    if (night->kinds.size() == 1) return Edited{fmt::format("{} is {} night", weekday, night->kinds.front())};
    return Edited{fmt::format("{} is {} in turn, {} {}", weekday, show::listed(night->kinds), night->kinds.front(),
                              show::on_day(night->from, at.day))};
}

Understood<Edited> edit_minutes(const HouseholdWords& words, const kitchen::At&,
                                exchange::HouseholdDocument& document) {
    const char* expected = "days and minutes: minutes tue 45, minutes mon-fri 40";
    const auto minutes = words.words.size() < 2 ? std::nullopt : whole_number(words.words.back(), 0, 1440);
    const auto days = minutes ? weekdays_meant(joined({words.words.begin(), words.words.end() - 1})) : std::nullopt;
    if (!days) return wrong("minutes", fmt::format("'{}'", joined(words.words)), expected);
    for (unsigned i = 0; i < 7; ++i) {
        if ((*days >> i & 1U) != 0) exchange::set_minutes(document, std::chrono::weekday{i}, *minutes);
    }
    return Edited{fmt::format("dinner may take {} minutes: {}", *minutes, show::weekday_words(*days))};
}

struct PlaceWords : HouseholdWords {
    std::string litres;
};

const char* const place_kinds =
    "one of: far-freezer (fetched from now and then), near-freezer, fridge, crisper, pantry";

Understood<Edited> edit_place(const PlaceWords& words, const kitchen::At& at, exchange::HouseholdDocument& document) {
    const auto said = place_said(joined(words.words) + (words.litres.empty() ? "" : " " + words.litres + " L"));
    if (!said) return tl::make_unexpected(said.error());
    if (!words.litres.empty() && !said->room_ml)
        return wrong("--litres", fmt::format("'{}'", words.litres), "a number of litres, such as 200");
    const auto& places = at.kitchen.household.places;
    const auto same = [&](const stock::Place& place) { return place.name == said->name || place.id == said->name; };
    const auto known = std::find_if(places.begin(), places.end(), same);
    exchange::PlaceEdit edit;
    edit.room_ml = said->room_ml;
    if (known != places.end()) {
        edit.id = known->id;
        edit.name = known->name;
        edit.kind = said->kind.value_or(known->kind);
    } else if (said->kind) {
        edit.id = exchange::new_id(document, "places", said->name);
        edit.name = said->name;
        edit.kind = *said->kind;
    } else {
        return wrong(said->name, "which kind of place is it?", place_kinds,
                     fmt::format("household place {} far-freezer", said->name));
    }
    exchange::set_place(document, edit);
    const stock::Place place{edit.id, edit.name, edit.kind,
                             said->room_ml           ? said->room_ml
                             : known != places.end() ? known->room_ml
                                                     : std::nullopt};
    return Edited{fmt::format("{} is a {}", edit.name, show::place_words(place))};
}

struct UseWords : HouseholdWords {
    std::vector<std::string> days;
};

Understood<Edited> edit_use(const UseWords& words, const kitchen::At& at, exchange::HouseholdDocument& document) {
    const auto said = read_said(joined(words.words), at.kitchen.household.measures);
    if (!said) return tl::make_unexpected(said.error());
    if (!said->amount) return wrong("use", fmt::format("'{}'", said->text), "an amount and a thing: use 700 mL milk");
    const auto thing = Things(at.kitchen, std::nullopt, Things::For::buying).meant(said->name);
    if (!thing) return tl::make_unexpected(thing.error());
    std::uint8_t days = 0x7F;
    if (!words.days.empty()) {
        const auto bits = weekdays_meant(joined(words.days));
        if (!bits)
            return wrong("--days", fmt::format("'{}'", joined(words.days)), "days of the week: mon-fri; sat, sun");
        days = *bits;
    }
    const auto& ingredient = at.kitchen.catalogue()[thing->ingredient];
    // The amount as it was said: "8 slices".
    std::string amount = said->text;
    if (amount.ends_with(said->name)) amount.resize(amount.size() - said->name.size());
    while (!amount.empty() && amount.back() == ' ') amount.pop_back();
    if (amount.ends_with(" of")) amount.resize(amount.size() - 3);
    exchange::set_use(document, ingredient.id, amount, days);
    return Edited{
        fmt::format("{} {} goes {}{}", amount, ingredient.name, days == 0x7F ? "" : "on ", show::weekday_words(days))};
}

Understood<Edited> edit_staple(const HouseholdWords& words, const kitchen::At& at,
                               exchange::HouseholdDocument& document) {
    const auto thing = Things(at.kitchen, std::nullopt, Things::For::buying).meant(joined(words.words));
    if (!thing) return tl::make_unexpected(thing.error());
    const auto& ingredient = at.kitchen.catalogue()[thing->ingredient];
    exchange::set_staple(document, ingredient.id, true);
    return Edited{fmt::format("{} is a staple: taken as there until 'out' says that it is not", ingredient.name)};
}

/// "bread, dry goods, vegetables": each by a part of its name.
Understood<Edited> edit_shelves(const HouseholdWords& words, const kitchen::At&,
                                exchange::HouseholdDocument& document) {
    const auto& names = kitchen::shelf_names();
    const std::string all = fmt::format("{}", fmt::join(names, "; "));
    catalogue::NameIndex index;
    for (std::uint32_t i = 0; i < names.size(); ++i) index.add(i, 0, names[i]);
    index.finish();
    std::vector<std::string> order;
    for (const std::string& word : split_at_commas(joined(words.words))) {
        const auto match = index.find(word);
        if (match.found.size() != 1) return wrong("shelves", fmt::format("'{}'", word), "shelves of these: " + all);
        const std::string& name = names[match.found.front().key];
        if (std::find(order.begin(), order.end(), name) != order.end())
            return wrong("shelves", fmt::format("'{}' once more", name), "each shelf once");
        order.push_back(name);
    }
    exchange::set_shelves(document, order);
    if (order.empty()) return Edited{"the shelves are in their usual order: " + all};
    return Edited{fmt::format("you walk by {}; then the rest", fmt::join(order, "; "))};
}

/// "mince 9.50/kg", "milk 4.55 for 3 L", "lemons 0.80 each": the name, the price and the amount.
struct PriceSaid {
    std::string name;
    std::string price;
    std::string amount;
};

std::optional<PriceSaid> price_said(const std::string& text) {
    std::string plain = text;
    for (const char* sign : {" per ", " for ", " a "}) {
        if (const auto at = plain.rfind(sign); at != std::string::npos)
            plain.replace(at, std::string(sign).size(), "/");
    }
    if (plain.ends_with(" each")) plain.replace(plain.size() - 5, 5, "/1");
    const auto slash = plain.rfind('/');
    if (slash == std::string::npos) return std::nullopt;
    auto words = words_of(plain.substr(0, slash));
    PriceSaid said;
    said.amount = joined(words_of(plain.substr(slash + 1)));
    if (words.size() < 2 || said.amount.empty()) return std::nullopt;
    said.price = words.back();
    if (said.price.starts_with('$')) said.price.erase(0, 1);
    words.pop_back();
    said.name = joined(words);
    if (said.amount[0] < '0' || said.amount[0] > '9') said.amount = "1 " + said.amount;
    return said;
}

Understood<kitchen::Change> price_change(const HouseholdWords& words, const kitchen::At& at) {
    const auto said = price_said(joined(words.words));
    if (!said)
        return wrong("price", fmt::format("'{}'", joined(words.words)),
                     "a thing, its price and for how much: price mince 9.50/kg");
    const auto& house = at.kitchen.household;
    const auto money = read_money(said->price, house.currency, "price");
    if (!money) return tl::make_unexpected(money.error());
    const auto thing = Things(at.kitchen, std::nullopt, Things::For::buying).meant(said->name);
    if (!thing) return tl::make_unexpected(thing.error());
    const auto amount = read_said(fmt::format("{} {}", said->amount, said->name), house.measures);
    if (!amount) return tl::make_unexpected(amount.error());
    const auto quantity = quantity_of(at.kitchen, *thing, *amount, std::nullopt);
    if (!quantity) return tl::make_unexpected(quantity.error());
    const auto& ingredient = at.kitchen.catalogue()[thing->ingredient];
    std::optional<measure::Amount> own = quantity->amount;
    if (!own && quantity->packs && ingredient.pack)
        own = measure::Amount{ingredient.dimension, ingredient.pack->amount.value() * *quantity->packs / 1000};
    if (!own || own->value() <= 0)
        return wrong("price", fmt::format("'{}'", said->amount), "an amount of it: 9.50/kg, 4.55 for 3 L");
    kitchen::Change change;
    change.command = "household";
    change.day = at.day;
    change.line = fmt::format("{} costs {} for {}", ingredient.name, show::money(*money, house.currency),
                              show::amount(*own, ingredient));
    const auto now = kitchen::price(at.kitchen, thing->ingredient, own->value());
    if (now && *now == *money) return change;
    if (now) change.line += fmt::format("; it was {}", show::money(*now, house.currency));
    change.facts.push_back({true, {kitchen::Fact::Kind::price, thing->ingredient, own->value(), *money}});
    return change;
}

template <class Words, class EditIt>
CLI::App* add(CLI::App& household, Chosen& chosen, const char* name, const char* help, std::shared_ptr<Words> words,
              EditIt edit) {
    auto* command = household.add_subcommand(name, help);
    command->add_option("words", words->words, "as in the example");
    add_dry_run(*command, words->how);
    run_with(*command, chosen, words, [edit](const Words& said, const Context& context) {
        return edit_household(context, said.how, [&](const kitchen::At& at, exchange::HouseholdDocument& document) {
            return edit(said, at, document);
        });
    });
    return command;
}

struct Removal {
    const char* what;
    const char* example;
    Understood<Edited> (*remove)(const std::vector<std::string>& words, const kitchen::At& at,
                                 exchange::HouseholdDocument& document);
};

Understood<Edited> removed(bool there, std::string line, const std::string& what) {
    if (there) return Edited{std::move(line)};
    return wrong("remove", fmt::format("there is no {}", what), "what 'household' shows");
}

Understood<Edited> remove_person(const std::vector<std::string>& words, const kitchen::At& at,
                                 exchange::HouseholdDocument& document) {
    const auto who = person_meant(at.kitchen.household, joined(words), true);
    if (!who) return tl::make_unexpected(who.error());
    const auto& person = at.kitchen.household.people[*who];
    return removed(exchange::remove_person(document, person.id), fmt::format("{} eats here no longer", person.name),
                   person.name);
}

Understood<Edited> remove_away(const std::vector<std::string>& words, const kitchen::At& at,
                               exchange::HouseholdDocument& document) {
    const auto who = person_first(at.kitchen.household, words);
    if (!who) return tl::make_unexpected(who.error());
    const auto& person = at.kitchen.household.people[who->person];
    const std::string text = joined(rest(words, who->words));
    const auto span = a_span(text, at.day);
    if (!span) return wrong("away", fmt::format("'{}'", text), "the days: remove away Dan 12..14 dec");
    const std::string days = show::span_words(*span, at.day);
    return removed(exchange::remove_away(document, person.id, *span), fmt::format("{} is home {}", person.name, days),
                   fmt::format("absence of {} {}", person.name, days));
}

Understood<Edited> remove_guests(const std::vector<std::string>& words, const kitchen::At& at,
                                 exchange::HouseholdDocument& document) {
    const auto day = a_day(joined(words), at.day);
    if (!day) return wrong("guests", fmt::format("'{}'", joined(words)), "the day: remove guests 25 dec");
    const std::string said = show::day(*day, at.day);
    return removed(exchange::remove_guests(document, *day), fmt::format("nobody comes {}", show::on_day(*day, at.day)),
                   fmt::format("occasion {}", said));
}

Understood<Edited> remove_trip(const std::vector<std::string>& words, const kitchen::At& at,
                               exchange::HouseholdDocument& document) {
    const auto trip = trip_meant(joined(words), at.day);
    if (!trip) return tl::make_unexpected(trip.error());
    const auto date = trip->weekday ? std::nullopt : trip->from;
    const std::string said =
        trip->weekday ? fmt::format("every {}", basics::weekday_name(*trip->weekday)) : show::on_day(*date, at.day);
    return removed(exchange::remove_trip(document, trip->weekday, date), fmt::format("no shopping {}", said),
                   fmt::format("trip {}", said));
}

Understood<Edited> remove_night(const std::vector<std::string>& words, const kitchen::At&,
                                exchange::HouseholdDocument& document) {
    const auto weekday = weekdays_meant(joined(words));
    const auto one = weekday && (*weekday & (*weekday - 1U)) == 0;
    if (!one) return wrong("night", fmt::format("'{}'", joined(words)), "a day of the week: remove night tue");
    unsigned day = 0;
    while ((*weekday >> day & 1U) == 0) ++day;
    const std::string name(basics::weekday_name(std::chrono::weekday{day}));
    return removed(exchange::remove_night(document, std::chrono::weekday{day}), fmt::format("{} is free", name),
                   fmt::format("standing night on {}", name));
}

Understood<Edited> remove_place(const std::vector<std::string>& words, const kitchen::At& at,
                                exchange::HouseholdDocument& document) {
    const auto id = place_meant(at.kitchen, joined(words));
    if (!id) return tl::make_unexpected(id.error());
    const auto& place = at.kitchen.place(*id);
    return removed(exchange::remove_place(document, place.id), fmt::format("{} is gone", place.name), place.name);
}

Understood<Edited> remove_use(const std::vector<std::string>& words, const kitchen::At& at,
                              exchange::HouseholdDocument& document) {
    std::vector<catalogue::IngredientId> few;
    for (const auto& use : at.kitchen.household.standing_uses) few.push_back(use.ingredient);
    const auto id = one_of_meant(at.kitchen, few, joined(words), "what goes each day");
    if (!id) return tl::make_unexpected(id.error());
    const auto& thing = at.kitchen.catalogue()[*id];
    return removed(exchange::remove_use(document, thing.id), fmt::format("{} goes by itself no longer", thing.name),
                   thing.name);
}

Understood<Edited> remove_staple(const std::vector<std::string>& words, const kitchen::At& at,
                                 exchange::HouseholdDocument& document) {
    const auto thing = Things(at.kitchen, std::nullopt, Things::For::buying).meant(joined(words));
    if (!thing) return tl::make_unexpected(thing.error());
    const auto& ingredient = at.kitchen.catalogue()[thing->ingredient];
    if (at.kitchen.household.staples[thing->ingredient.index()]) exchange::set_staple(document, ingredient.id, false);
    return Edited{fmt::format("{} is no staple: it is counted from now on", ingredient.name)};
}

constexpr std::array<Removal, 8> removals{{{"person", "Gus", remove_person},
                                           {"away", "Dan 12..14 dec", remove_away},
                                           {"guests", "25 dec", remove_guests},
                                           {"trip", "sat", remove_trip},
                                           {"night", "tue", remove_night},
                                           {"place", "shed freezer", remove_place},
                                           {"use", "milk", remove_use},
                                           {"staple", "tomato sauce", remove_staple}}};

Understood<Edited> edit_remove(const HouseholdWords& words, const kitchen::At& at,
                               exchange::HouseholdDocument& document) {
    std::vector<std::string> known;
    for (const auto& removal : removals) {
        known.push_back(fmt::format("{} {}", removal.what, removal.example));
        if (words.words.empty() || words.words.front() != removal.what) continue;
        if (words.words.size() == 1) return wrong("remove", fmt::format("which {}?", removal.what), known.back());
        return removal.remove(rest(words.words, 1), at, document);
    }
    return wrong("remove", words.words.empty() ? "nothing is named" : fmt::format("'{}'", words.words.front()),
                 fmt::format("one of: {}", fmt::join(known, "; ")));
}

}  // namespace

void add_household_house(CLI::App& household, Chosen& chosen) {
    auto trip = std::make_shared<TripWords>();
    auto* trip_command =
        add(household, chosen, "trip", "when you shop: trip sat --every 2 --from 5 dec fresh", trip, edit_trip);
    trip_command->add_option("--every", trip->every, "so many weeks from one to the next");
    trip_command->add_option("--from", trip->from, "the date of the first");
    add(household, chosen, "night", "what a weekday always has; several take turns: night thu mince soup",
        std::make_shared<HouseholdWords>(), edit_night);
    add(household, chosen, "minutes", "how long dinner may take: minutes tue 45", std::make_shared<HouseholdWords>(),
        edit_minutes);
    auto place = std::make_shared<PlaceWords>();
    auto* place_command = add(household, chosen, "place",
                              "where food is kept: place barn freezer far-freezer --litres 200", place, edit_place);
    place_command->add_option("--litres", place->litres, "its room");
    auto use = std::make_shared<UseWords>();
    auto* use_command =
        add(household, chosen, "use", "what goes without a dish: use 750 mL milk --days mon-fri", use, edit_use);
    use_command->add_option("--days", use->days, "on these days of the week only");
    add(household, chosen, "staple", "taken as there and never counted: staple plain flour",
        std::make_shared<HouseholdWords>(), edit_staple);

    add(household, chosen, "shelves", "the order in which you walk by them: shelves bread, tins, vegetables",
        std::make_shared<HouseholdWords>(), edit_shelves);

    auto* price = household.add_subcommand("price", "what a thing costs: price mince 9.50/kg");
    auto price_words = std::make_shared<HouseholdWords>();
    price->add_option("words", price_words->words, "the thing, its price, for how much");
    add_dry_run(*price, price_words->how);
    run_with(*price, chosen, price_words, [](const HouseholdWords& words, const Context& context) {
        return carry_out(context, words.how,
                         [&](const kitchen::At& at, const store::State&) { return price_change(words, at); });
    });
}

void add_household_remove(CLI::App& household, Chosen& chosen) {
    add(household, chosen, "remove", "takes one of these away: remove trip sat", std::make_shared<HouseholdWords>(),
        edit_remove);
}

}  // namespace samebase::cli
