// samebase new DIR: starts a kitchen by asking who eats, where food is kept and when the household shops, or from
// options.
#include <fmt/format.h>

#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "household_words.hpp"
#include "ledger.hpp"
#include "output.hpp"
#include "show/household.hpp"
#include "show/json.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

using Json = exchange::HouseholdDocument;

struct Arguments {
    std::string folder;
    std::string name;
    std::string currency = "AUD";
    std::string hemisphere = "south";
    std::string measures = "australian-metric";
    std::vector<std::string> people;  ///< names only, with commas
    std::vector<std::string> persons;
    std::vector<std::string> places;
    std::vector<std::string> shopping_days;  ///< weekdays, with commas
    std::vector<std::string> trips;
    std::vector<std::string> nights;
    std::vector<std::string> minutes;
};

/// The document as it grows, and what names are looked up in.
struct Draft {
    Json document;
    kitchen::Kitchen kitchen;
    basics::Day today;
};

/// One thing that was said, put into the document; a failure leaves it as it was.
using Take = Understood<void> (*)(const std::string& text, Draft& draft);

/// "Ann avoids gluten and egg, dislikes mushrooms, eats 0.5, home mon-fri dinner": parts begin with their verb.
Understood<void> take_person(const std::string& text, Draft& draft) {
    std::vector<std::string> name;
    std::vector<std::string> avoid;
    std::vector<std::string> dislike;
    std::vector<std::string> eats;
    std::vector<std::string> home;
    std::vector<std::string>* part = &name;
    for (std::string word : words_of(text)) {
        if (word == "avoids" || word == "avoid") {
            part = &avoid;
        } else if (word == "dislikes" || word == "dislike") {
            part = &dislike;
        } else if (word == "eats") {
            part = &eats;
        } else if (word == "home") {
            part = &home;
        } else {
            if (word == "and" || word == "," || word == ";") word = ",";
            part->push_back(word);
        }
    }
    const auto plain = [](const std::vector<std::string>& words) {
        return fmt::format("{}", fmt::join(split_at_commas(joined(words)), ", "));
    };
    exchange::PersonEdit edit;
    edit.name = plain(name);
    if (edit.name.empty() || edit.name.find(',') != std::string::npos) {
        return failure(not_understood, {{text, "is not one name", "a name first: Ann avoids gluten", std::nullopt}});
    }
    if (!avoid.empty()) {
        const auto allergens = allergens_meant({plain(avoid)});
        if (!allergens) return tl::make_unexpected(allergens.error());
        edit.avoids = *allergens;
    }
    if (!dislike.empty()) {
        const auto things = things_meant(draft.kitchen, {plain(dislike)});
        if (!things) return tl::make_unexpected(things.error());
        edit.dislikes = *things;
    }
    if (!eats.empty()) {
        const auto serve = eats_meant(plain(eats));
        if (!serve) return tl::make_unexpected(serve.error());
        edit.serve_thousandths = *serve;
    }
    if (!home.empty()) {
        const auto week = week_meant(plain(home));
        if (!week) return tl::make_unexpected(week.error());
        edit.home = *week;
    }
    edit.id = exchange::new_id(draft.document, "people", edit.name);
    exchange::set_person(draft.document, edit);
    return {};
}

/// `kind`: where none is said.
Understood<void> take_place_of(const std::string& text, Draft& draft, std::optional<stock::PlaceKind> kind) {
    const auto said = place_said(text);
    if (!said) return tl::make_unexpected(said.error());
    if (said->kind) kind = said->kind;
    if (!kind) {
        return failure(not_understood, {{text, "which kind of place is it?",
                                         "one of: far-freezer, near-freezer, fridge, crisper, pantry, as in 'shed "
                                         "freezer: far-freezer 200 L'",
                                         std::nullopt}});
    }
    exchange::set_place(draft.document,
                        {exchange::new_id(draft.document, "places", said->name), said->name, *kind, said->room_ml});
    return {};
}

Understood<void> take_place(const std::string& text, Draft& draft) {
    return take_place_of(text, draft, std::nullopt);
}
Understood<void> take_near_freezer(const std::string& text, Draft& draft) {
    return take_place_of(text, draft, stock::PlaceKind::near_freezer);
}
Understood<void> take_far_freezer(const std::string& text, Draft& draft) {
    return take_place_of(text, draft, stock::PlaceKind::far_freezer);
}

/// Several things with commas, each understood by itself; a failure leaves the draft as it was.
Understood<void> take_each(const std::string& text, Take take, Draft& draft) {
    Draft tried = draft;
    for (const auto& part : split_at_commas(text)) {
        if (auto taken = take(part, tried); !taken) return taken;
    }
    draft = std::move(tried);
    return {};
}

/// "fri pizza, sun roast", "mon-fri 45, sat-sun 90", "fridge, pantry 300 L".
template <Take take>
Understood<void> several(const std::string& text, Draft& draft) {
    return take_each(text, take, draft);
}

/// "Ann, Ben avoids gluten": several people, unless it is one: "Ann avoids gluten, egg".
Understood<void> take_people(const std::string& text, Draft& draft) {
    auto taken = take_person(text, draft);
    if (taken || !take_each(text, take_person, draft)) return taken;
    return {};
}

Understood<void> take_trip(const std::string& text, Draft& draft) {
    const auto trip = trip_meant(text, draft.today);
    if (!trip) return tl::make_unexpected(trip.error());
    exchange::set_trip(draft.document, *trip);
    return {};
}

Understood<void> take_night(const std::string& text, Draft& draft) {
    const auto night = night_meant(words_of(text), draft.today);
    if (!night) return tl::make_unexpected(night.error());
    exchange::set_night(draft.document, *night);
    return {};
}

/// "mon-fri 40", or "45" for every day.
Understood<void> take_minutes(const std::string& text, Draft& draft) {
    auto words = words_of(text);
    constexpr int day_long = 1440;
    const auto minutes = words.empty() ? std::nullopt : whole_number(words.back(), 0, day_long);
    if (!words.empty()) words.pop_back();
    const auto days = words.empty() ? std::optional<std::uint8_t>{0x7F} : weekdays_meant(joined(words));
    if (!minutes || !days)
        return failure(not_understood,
                       {{text, "is not a time for dinner", "minutes, as in 45, or mon-fri 40", std::nullopt}});
    for (unsigned i = 0; i < 7; ++i) {
        if ((*days >> i & 1U) != 0) exchange::set_minutes(draft.document, std::chrono::weekday{i}, *minutes);
    }
    return {};
}

/// Asks until it is understood. What return alone takes stands in brackets; false where there is nothing to take.
bool ask_one(const std::string& question, const std::string& usual, Take take, Draft& draft) {
    while (true) {
        const auto said = ask(question + (usual.empty() ? ":" : fmt::format(" [{}]:", usual)));
        const std::string text = !said || said->empty() ? usual : *said;
        if (text.empty() || text == "none" || text == "no") return false;
        const auto taken = take(text, draft);
        if (taken) return true;
        for (const auto& problem : taken.error().problems) tell("  " + basics::to_text(problem) + "\n");
        if (!said) return false;
    }
}

/// Asks again and again, until return alone.
void ask_many(const std::string& first, const std::string& usual, const std::string& next, Take take, Draft& draft) {
    if (!ask_one(first, usual, take, draft)) return;
    while (ask_one(next, "", take, draft)) {
    }
}

void ask_what_is_missing(const Arguments& arguments, Draft& draft) {
    tell("Return takes what stands in [brackets]. Everything can be changed later.\n");
    if (arguments.name.empty()) {
        const auto name = ask("What is this kitchen called? [Our kitchen]");
        if (name && !name->empty()) draft.document["name"] = *name;
    }
    if (arguments.people.empty() && arguments.persons.empty()) {
        tell("Who eats here? One at a time: Ann; or: Ben avoids gluten, dislikes mushrooms; or: Kim eats 0.5\n");
        ask_many("First", "", "Next (return: that is all)", take_people, draft);
    }
    if (arguments.places.empty()) {
        draft.document["places"] = Json::array();
        ask_many("A freezer in the kitchen, and its litres", "kitchen freezer 60 L", "Another (return: no)",
                 several<take_near_freezer>, draft);
        ask_many("A freezer further off, as in shed freezer 300 L (return: none)", "", "Another (return: no)",
                 several<take_far_freezer>, draft);
        ask_one("Where else is food kept", "fridge, crisper, pantry", several<take_place>, draft);
    }
    if (arguments.shopping_days.empty() && arguments.trips.empty()) {
        tell("When do you shop? As in: sat; or: sat every 2 from 5 dec fresh; or: 5 dec bulk\n");
        ask_many("Shopping", "sat", "Also (return: that is all)", several<take_trip>, draft);
    }
    if (arguments.nights.empty()) {
        ask_many("A night that is always the same, as in fri pizza, or tue mince soup in turn (return: none)", "",
                 "Another (return: no)", several<take_night>, draft);
    }
    if (arguments.minutes.empty())
        ask_many("How many minutes may dinner take", "45", "Other days, as in sat-sun 90 (return: no)",
                 several<take_minutes>, draft);
}

Understood<void> take_all(const std::vector<std::string>& texts, Take take, Draft& draft) {
    basics::Problems problems;
    for (const auto& text : texts) {
        const auto taken = take(text, draft);
        if (!taken) problems.insert(problems.end(), taken.error().problems.begin(), taken.error().problems.end());
    }
    if (problems.empty()) return {};
    return failure(not_understood, std::move(problems));
}

/// What the options say; places for everything where they say none.
Understood<void> start(const Arguments& arguments, Draft& draft) {
    draft.document = {{"samebase", 1},
                      {"name", arguments.name.empty() ? "Our kitchen" : arguments.name},
                      {"currency", arguments.currency},
                      {"hemisphere", arguments.hemisphere},
                      {"measures", arguments.measures},
                      {"people", Json::array()},
                      {"places", Json::array()}};
    std::vector<std::string> places = arguments.places;
    if (places.empty()) places = {"far freezer", "near freezer", "fridge", "crisper", "pantry"};
    const std::vector<std::pair<const std::vector<std::string>*, Take>> said{
        {&arguments.people, take_person},      {&arguments.persons, take_person}, {&places, take_place},
        {&arguments.shopping_days, take_trip}, {&arguments.trips, take_trip},     {&arguments.nights, take_night},
        {&arguments.minutes, take_minutes}};
    basics::Problems problems;
    for (const auto& [texts, take] : said) {
        const auto taken = take_all(*texts, take, draft);
        if (!taken) problems.insert(problems.end(), taken.error().problems.begin(), taken.error().problems.end());
    }
    if (problems.empty()) return {};
    return failure(not_understood, std::move(problems));
}

std::string ready(const kitchen::Household& household, const std::string& folder, basics::Day today) {
    const auto shopping = household.trips.empty() ? "no shopping day yet"
                                                  : "shopping " + show::trip_words(household.trips.front(), today);
    const std::size_t people = household.people.size();
    return show::wrapped(fmt::format("{} is ready in {}: {} {}, {} places, {}.", show::capitalised(household.name),
                                     folder, people, people == 1 ? "person" : "people", household.places.size(),
                                     shopping)) +
           fmt::format(
               "\nNext, in that folder (cd {}):\n"
               "  samebase household                              look it over, and change it\n"
               "  samebase count fridge: 2 L milk, 12 eggs        say what you have\n"
               "  samebase else eggs                              what to make of it\n",
               show::shell(folder));
}

Outcome run(const Arguments& arguments, const Context& context) {
    const auto knowledge = context.knowledge(false);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const fs::path folder = arguments.folder;
    std::error_code error;
    if (fs::exists(folder / "kitchen.json", error)) {
        return failure(not_understood,
                       {{arguments.folder, "there is a kitchen here already", "a new or empty folder", std::nullopt}});
    }
    Draft draft{{}, {}, *today};
    draft.kitchen.knowledge = *knowledge;
    if (const auto started = start(arguments, draft); !started) return tl::make_unexpected(started.error());
    if (on_terminal()) ask_what_is_missing(arguments, draft);
    if (!draft.document.contains("trips"))
        exchange::set_trip(draft.document, {std::chrono::Saturday, 1, std::nullopt, {}});
    const std::string text = exchange::household_text(draft.document);
    const auto household = exchange::read_household_text(text, "kitchen.json", **knowledge);
    if (!household) return failure(not_understood, household.error());
    fs::create_directories(folder, error);
    if (error)
        return failure(store_failed, {{arguments.folder, error.message(), "a folder that can be made", std::nullopt}});
    const auto written = exchange::write_file(folder / "kitchen.json", text);
    if (!written) return failure(store_failed, written.error());
    context.answer([&](const show::Manner&) { return ready(*household, arguments.folder, *today); },
                   [&] {
                       return show::Json{{"kitchen", arguments.folder}};
                   });
    return answered;
}

}  // namespace

void add_new(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("new", "start an empty kitchen: asks on a terminal, or takes options");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("dir", arguments->folder, "the folder")->required()->type_name("DIR");
    command->add_option("--name", arguments->name, "what the kitchen is called");
    command->add_option("--people", arguments->people, "who eats here, names with commas")->delimiter(',');
    command
        ->add_option("--person", arguments->persons,
                     "one of them: 'Ann avoids gluten, dislikes mushrooms'; again for the next")
        ->allow_extra_args(false);
    command->add_option("--place", arguments->places, "'shed freezer: far-freezer 200 L'; again for the next")
        ->allow_extra_args(false);
    command->add_option("--shopping", arguments->shopping_days, "shopping days, with commas: sat,wed")->delimiter(',');
    command->add_option("--trip", arguments->trips, "'sat every 2 from 5 dec', '5 dec bulk'; again for the next")
        ->allow_extra_args(false);
    command->add_option("--night", arguments->nights, "'tue mince'; again for the next")->allow_extra_args(false);
    command->add_option("--minutes", arguments->minutes, "for dinner: '45', 'sat-sun 90'; again for more")
        ->allow_extra_args(false);
    command->add_option("--currency", arguments->currency, "three letters (ISO 4217)");
    command->add_option("--hemisphere", arguments->hemisphere, "south or north, for seasons");
    command->add_option("--measures", arguments->measures, "australian-metric, metric-15, us-customary or imperial");
    command->callback([arguments, &chosen] {
        chosen.run = [arguments](const Context& context) { return run(*arguments, context); };
    });
}

}  // namespace samebase::cli
