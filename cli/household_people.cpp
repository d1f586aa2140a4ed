// samebase household person, away, mark, guests: who eats.
#include <fmt/format.h>

#include <algorithm>

#include "household.hpp"
#include "show/household.hpp"

namespace samebase::cli {

namespace {

constexpr kitchen::Meals both_meals = kitchen::only(kitchen::Meal::lunch) | kitchen::only(kitchen::Meal::dinner);

tl::unexpected<Failure> wrong(std::string where, std::string found, std::string expected) {
    return failure(not_understood, {{std::move(where), std::move(found), std::move(expected), std::nullopt}});
}

std::string labels(const std::vector<std::string>& ids, const kitchen::Kitchen& kitchen) {
    std::vector<std::string> names;
    for (const auto& id : ids) {
        const auto of = kitchen.catalogue().ingredient_or_family(id);
        names.push_back(of ? kitchen.catalogue().name(*of) : id);
    }
    return show::listed(names);
}

struct PersonWords : HouseholdWords {
    std::vector<std::string> avoid;
    std::vector<std::string> dislike;
    std::string eats;
    std::vector<std::string> home;
};

Understood<Edited> edit_person(const PersonWords& words, const kitchen::At& at, exchange::HouseholdDocument& document) {
    if (words.words.empty()) return wrong("person", "nobody is named", "a name: household person Gus");
    const auto& household = at.kitchen.household;
    exchange::PersonEdit edit;
    std::vector<std::string> said;
    const auto known = person_meant(household, joined(words.words), true);
    edit.name = known ? household.people[*known].name : joined(words.words);
    edit.id = known ? household.people[*known].id : exchange::new_id(document, "people", edit.name);
    if (!words.avoid.empty()) {
        const auto avoids = allergens_meant(words.avoid);
        if (!avoids) return tl::make_unexpected(avoids.error());
        edit.avoids = *avoids;
        said.push_back(avoids->empty() ? "avoids nothing" : "avoids " + show::listed(*avoids));
    }
    if (!words.dislike.empty()) {
        const auto dislikes = things_meant(at.kitchen, words.dislike);
        if (!dislikes) return tl::make_unexpected(dislikes.error());
        edit.dislikes = *dislikes;
        said.push_back(dislikes->empty() ? "dislikes nothing" : "dislikes " + labels(*dislikes, at.kitchen));
    }
    if (!words.eats.empty()) {
        const auto eats = eats_meant(words.eats);
        if (!eats) return tl::make_unexpected(eats.error());
        edit.serve_thousandths = *eats;
        said.push_back(fmt::format("eats {} of a serve", show::serves(*eats)));
    }
    if (!words.home.empty()) {
        const auto home = week_meant(joined(words.home));
        if (!home) return tl::make_unexpected(home.error());
        edit.home = *home;
        said.push_back("is home " + show::week_words(*home));
    } else if (!known) {
        said.emplace_back("is home for every meal");
    }
    exchange::set_person(document, edit);
    if (!known) return Edited{fmt::format("{} eats here now: {}", edit.name, fmt::join(said, "; "))};
    if (said.empty()) return wrong(edit.name, "is here already", "what changes: --avoid, --dislike, --eats, --home");
    return Edited{fmt::format("{} {}", edit.name, fmt::join(said, "; "))};
}

struct AwayWords : HouseholdWords {
    std::string meal;
};

Understood<Edited> edit_away(const AwayWords& words, const kitchen::At& at, exchange::HouseholdDocument& document) {
    const auto who = person_first(at.kitchen.household, words.words);
    if (!who) return tl::make_unexpected(who.error());
    const std::string text = joined({words.words.begin() + static_cast<std::ptrdiff_t>(who->words), words.words.end()});
    const auto span = a_span(text, at.day);
    if (!span) return wrong("away", fmt::format("'{}'", text), "days: 12..14 dec, fri, tomorrow, december");
    kitchen::Away away{*span, both_meals};
    if (!words.meal.empty()) {
        const auto meal = kitchen::read_meal(words.meal);
        if (!meal) return wrong("--meal", fmt::format("'{}'", words.meal), "lunch or dinner");
        away.meals = kitchen::only(*meal);
    }
    const auto& person = at.kitchen.household.people[who->person];
    exchange::add_away(document, person.id, away);
    return Edited{fmt::format("{} is away {}{}", person.name,
                              words.meal.empty() ? "" : fmt::format("for {} ", words.meal),
                              show::span_words(*span, at.day))};
}

Understood<Edited> edit_mark(const HouseholdWords& words, const kitchen::At& at,
                             exchange::HouseholdDocument& document) {
    const char* expected = "who, what and a mark from -3 (never) to 3: mark Dan seafood -3";
    if (words.words.size() < 3) return wrong("mark", fmt::format("'{}'", joined(words.words)), expected);
    const auto mark =
        whole_number(words.words.back()[0] == '+' ? words.words.back().substr(1) : words.words.back(), -3, 3);
    if (!mark) return wrong("mark", fmt::format("'{}'", words.words.back()), expected);
    const auto who = person_first(at.kitchen.household, words.words);
    if (!who) return tl::make_unexpected(who.error());
    const std::string what =
        joined({words.words.begin() + static_cast<std::ptrdiff_t>(who->words), words.words.end() - 1});
    const auto& person = at.kitchen.household.people[who->person];
    const auto say = [&](const std::string& label) {
        if (*mark == -3) return Edited{fmt::format("{} never has {}", person.name, label)};
        if (*mark == 0) return Edited{fmt::format("{} has no mark for {}", person.name, label)};
        return Edited{fmt::format("{} gives {} {:+}", person.name, label, *mark)};
    };
    const auto thing = thing_meant(at.kitchen, what);
    if (thing) {
        exchange::set_mark(document, person.id, false, *thing, *mark);
        return say(labels({*thing}, at.kitchen));
    }
    const auto dish = dish_meant(at.kitchen, what);
    if (!dish) return tl::make_unexpected(thing.error());
    exchange::set_mark(document, person.id, true, at.kitchen.cookbook()[*dish].id, *mark);
    return say(at.kitchen.cookbook()[*dish].name);
}

struct GuestWords : HouseholdWords {
    std::vector<std::string> avoid;
    std::vector<std::string> dish;
    std::vector<std::string> note;
};

/// "25 dec 2": a day and how many; "sat 3"; a day alone.
Understood<exchange::GuestsEdit> guests_said(const std::vector<std::string>& words, basics::Day today) {
    exchange::GuestsEdit edit;
    const auto count = words.size() < 2 ? std::nullopt : whole_number(words.back(), 0, 1000);
    const auto before = count ? a_day(joined({words.begin(), words.end() - 1}), today) : std::nullopt;
    const auto day = before ? before : a_day(joined(words), today);
    if (!day) return wrong("guests", fmt::format("'{}'", joined(words)), "a day and how many: guests 25 dec 2");
    edit.day = *day;
    if (before) edit.guests = count;
    return edit;
}

Understood<Edited> edit_guests(const GuestWords& words, const kitchen::At& at, exchange::HouseholdDocument& document) {
    auto edit = guests_said(words.words, at.day);
    if (!edit) return tl::make_unexpected(edit.error());
    if (edit->day < at.day) return wrong("guests", show::day(edit->day, at.day), "today or a later day");
    std::vector<std::string> said;
    if (edit->guests) said.push_back(*edit->guests == 1 ? "1 guest" : fmt::format("{} guests", *edit->guests));
    if (!words.avoid.empty()) {
        const auto avoid = allergens_meant(words.avoid);
        if (!avoid) return tl::make_unexpected(avoid.error());
        edit->avoid = *avoid;
        said.push_back(avoid->empty() ? "who avoid nothing" : "avoiding " + show::listed(*avoid));
    }
    if (!words.dish.empty()) {
        const auto dish = dish_meant(at.kitchen, joined(words.dish));
        if (!dish) return tl::make_unexpected(dish.error());
        edit->dish = at.kitchen.cookbook()[*dish].id;
        said.push_back(at.kitchen.cookbook()[*dish].name);
    }
    if (!words.note.empty()) {
        const auto note = remark(words.note, "--note");
        if (!note) return tl::make_unexpected(note.error());
        edit->note = *note;
        said.push_back(*note);
    }
    if (said.empty()) return wrong("guests", "no number", "how many: guests 25 dec 2");
    exchange::set_guests(document, *edit);
    return Edited{fmt::format("{}: {}", show::capitalised(show::day(edit->day, at.day)), fmt::join(said, ", "))};
}

template <class Words, class EditIt>
void run_edit(CLI::App& command, Chosen& chosen, std::shared_ptr<Words> words, EditIt edit) {
    add_dry_run(command, words->how);
    run_with(command, chosen, words, [edit](const Words& said, const Context& context) {
        return edit_household(context, said.how, [&](const kitchen::At& at, exchange::HouseholdDocument& document) {
            return edit(said, at, document);
        });
    });
}

}  // namespace

void add_household_people(CLI::App& household, Chosen& chosen) {
    auto* person = household.add_subcommand("person", "somebody eats here, or changes: person Gus --avoid gluten");
    auto person_words = std::make_shared<PersonWords>();
    person->add_option("who", person_words->words, "the name");
    person->add_option("--avoid", person_words->avoid, "allergens, with commas; none");
    person->add_option("--dislike", person_words->dislike, "ingredients and families, with commas; none");
    person->add_option("--eats", person_words->eats, "how much of a serve: 0.5");
    person->add_option("--home", person_words->home, "which meals: 'mon-fri dinner, sat-sun all'");
    run_edit(*person, chosen, person_words, edit_person);

    auto* away = household.add_subcommand("away", "somebody is not home: away Tovi 12..14 dec");
    auto away_words = std::make_shared<AwayWords>();
    away->add_option("words", away_words->words, "the name and the days");
    away->add_option("--meal", away_words->meal, "only for lunch, or dinner");
    run_edit(*away, chosen, away_words, edit_away);

    auto* guests = household.add_subcommand("guests", "who comes to dinner: guests 25 dec 2 --avoid egg");
    auto guest_words = std::make_shared<GuestWords>();
    guests->add_option("words", guest_words->words, "the day and the number");
    guests->add_option("--avoid", guest_words->avoid, "allergens, with commas; none");
    guests->add_option("--dish", guest_words->dish, "what is for dinner");
    guests->add_option("--note", guest_words->note, "what it is about");
    run_edit(*guests, chosen, guest_words, edit_guests);

    auto* mark = household.add_subcommand("mark", "what somebody thinks of a thing: mark Bram seafood -3");
    auto mark_words = std::make_shared<HouseholdWords>();
    mark->add_option("words", mark_words->words, "the name, the thing, -3 (never) to 3, 0 for none");
    run_edit(*mark, chosen, mark_words, edit_mark);
}

}  // namespace samebase::cli
