// samebase household: who, where, when; and what changes it, a line each.
#include "household.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "documents.hpp"
#include "exchange/household.hpp"
#include "show/household.hpp"

namespace samebase::cli {

namespace {

/// A place that goes while something is in it: told once, with the place that it may have become.
std::optional<basics::Problem> still_used(const kitchen::Kitchen& kitchen, const kitchen::Household& after) {
    const auto& before = kitchen.household.places;
    const auto with_id = [](const std::vector<stock::Place>& places, const std::string& id) {
        return std::any_of(places.begin(), places.end(), [&](const stock::Place& place) { return place.id == id; });
    };
    for (std::uint32_t i = 0; i < before.size(); ++i) {
        const auto lots = std::count_if(kitchen.lots.begin(), kitchen.lots.end(),
                                        [&](const stock::Lot& lot) { return lot.place == stock::PlaceId{i}; });
        if (lots == 0 || with_id(after.places, before[i].id)) continue;
        const auto renamed = std::find_if(after.places.begin(), after.places.end(), [&](const stock::Place& place) {
            return place.kind == before[i].kind && !with_id(before, place.id);
        });
        const std::string what = lots == 1 ? "1 thing is in it" : fmt::format("{} things are in it", lots);
        return basics::Problem{
            fmt::format("kitchen.json, place '{}'", before[i].name), what, "a place with nothing in it",
            renamed == after.places.end()
                ? "move what is in it first: samebase moved"
                : fmt::format(
                      "if it is called '{}' now, give that the id '{}': a place's name may change, its id stays",
                      renamed->name, before[i].id)};
    }
    return std::nullopt;
}

Outcome show_household(const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    context.answer([&](const show::Manner&) { return show::household_text(*kitchen, *today); },
                   [&] { return show::household_json(*kitchen, *today); });
    return answered;
}

}  // namespace

Understood<kitchen::Change> household_change(const kitchen::At& at, std::string was, std::string becomes, Edited said) {
    const auto after = sound_household(becomes, *at.kitchen.knowledge);
    if (!after) return failure(not_understood, after.error());
    if (auto problem = still_used(at.kitchen, *after)) return failure(not_understood, {std::move(*problem)});
    kitchen::Change change;
    change.command = "household";
    change.day = at.day;
    change.line = std::move(said.line);
    change.notes = std::move(said.notes);
    if (was != becomes) change.documents.push_back({"kitchen.json", std::move(was), std::move(becomes)});
    return change;
}

Outcome edit_household(const Context& context, const How& how, const Edit& edit) {
    return carry_out(context, how, [&](const kitchen::At& at, const store::State&) -> Understood<kitchen::Change> {
        const auto text = text_of(*context.folder(), "kitchen.json");
        if (!text || !*text) return failure(files_unsound, text ? basics::Problems{} : text.error());
        const auto before = exchange::HouseholdDocument::parse(**text);
        auto after = before;
        auto said = edit(at, after);
        if (!said) return tl::make_unexpected(said.error());
        const bool changed = nlohmann::json(before) != nlohmann::json(after);
        return household_change(at, **text, changed ? exchange::household_text(after) : **text, std::move(*said));
    });
}

void add_household(CLI::App& app, Chosen& chosen) {
    auto* household =
        app.add_subcommand("household", "who eats here, where food is kept, when you shop; and change it");
    household->require_subcommand(0, 1);
    household->callback([household, &chosen] {
        if (!household->get_subcommands().empty()) return;  // that one says what is run
        chosen.run = [](const Context& context) { return show_household(context); };
    });
    add_household_people(*household, chosen);
    add_household_house(*household, chosen);
    add_household_remove(*household, chosen);
    add_household_edit(*household, chosen);
}

}  // namespace samebase::cli
