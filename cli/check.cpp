// samebase check: is my data sound?
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "show/json.hpp"
#include "store/store.hpp"

namespace samebase::cli {

namespace {

/// What there is, counted.
show::Json counts(const kitchen::Knowledge& knowledge) {
    int dinners = 0;
    int lunches = 0;
    for (const auto& dish : knowledge.cookbook.dishes()) {
        dinners += dish.dinner ? 1 : 0;
        lunches += dish.lunch ? 1 : 0;
    }
    return {{"ingredients", knowledge.catalogue.ingredients().size()},
            {"families", knowledge.catalogue.families().size()},
            {"stand_ins", knowledge.graph.statements().size()},
            {"bases", knowledge.cookbook.bases().size()},
            {"dinners", dinners},
            {"lunches", lunches}};
}

std::string sentence(const show::Json& counts) {
    std::string text;
    for (const auto& [key, value] : counts.items()) {
        std::string name = key;
        if (name == "stand_ins") name = "stand-ins";
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", value.get<std::int64_t>(), name);
    }
    return text;
}

Outcome check_data(const Context& context) {
    const auto knowledge = context.knowledge(false);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    if (const auto reason = (*knowledge)->graph.check()) {
        return failure(files_unsound, {{"stand_ins", *reason, "a sound base graph", std::nullopt}});
    }
    const auto found = counts(**knowledge);
    context.answer(
        [&](const show::Manner&) { return fmt::format("The shipped data is sound: {}.\n", sentence(found)); },
        [&] {
            return show::Json{{"sound", true}, {"counts", found}};
        });
    return answered;
}

Outcome check_kitchen(const Context& context) {
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    if (const auto reason = kitchen->check()) {
        return failure(files_unsound, {{"kitchen", *reason, "documents that agree with one another", std::nullopt}});
    }
    auto store = store::Store::open(store::file_in(*context.folder()), store::Mode::read);
    if (!store) return failure(store_failed, store.error());
    const auto ledger = store->check();
    if (!ledger) return failure(store_failed, ledger.error());
    auto found = counts(*kitchen->knowledge);
    found["people"] = kitchen->household.people.size();
    found["places"] = kitchen->household.places.size();
    found["lots"] = kitchen->lots.size();
    found["planned"] = kitchen->plan.size();
    found["had"] = kitchen->history.size();
    found["commands"] = ledger->commands;
    found["entries"] = ledger->entries;
    context.answer(
        [&](const show::Manner&) {
            return show::wrapped(fmt::format("{} is sound: {}.", kitchen->household.name, sentence(found))) + "\n";
        },
        [&] {
            return show::Json{{"sound", true}, {"counts", found}};
        });
    return answered;
}

}  // namespace

void add_check(CLI::App& app, Chosen& chosen) {
    auto* command =
        app.add_subcommand("check", "is my data sound? every problem of every document, and the ledger recomputed");
    auto data = std::make_shared<bool>(false);
    command->add_flag("--data", *data, "only what is shipped: catalogue, stand-ins, bases, dishes");
    command->callback([data, &chosen] {
        chosen.run = [data](const Context& context) { return *data ? check_data(context) : check_kitchen(context); };
    });
}

}  // namespace samebase::cli
