// samebase moved: things go to another place. Out of a freezer, are they to thaw?
#include <fmt/format.h>

#include <algorithm>

#include "amounts.hpp"
#include "ledger.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    std::vector<std::string> from;
    std::vector<std::string> to;
    std::string thaw;
    bool still_frozen = false;
    How how;
};

/// What the cook has said of thawing, once.
struct Thawing {
    bool said = false;
    std::optional<stock::ThawMethod> method;
};

/// "2 packs mince from shed freezer to fridge": the options in words.
Arguments in_words(Arguments arguments) {
    const auto cut = [&](const char* word, std::vector<std::string>& into) {
        if (!into.empty()) return;
        const auto at = std::find(arguments.what.rbegin(), arguments.what.rend(), word);
        if (at == arguments.what.rend()) return;
        into.assign(at.base(), arguments.what.end());
        arguments.what.erase(std::prev(at.base()), arguments.what.end());
    };
    cut("to", arguments.to);
    cut("from", arguments.from);
    return arguments;
}

/// Whether something frozen may be among what goes.
const stock::Lot* frozen_among(const kitchen::Kitchen& kitchen, const std::vector<kitchen::Item>& items,
                               stock::PlaceId to) {
    for (const auto& lot : kitchen.lots) {
        if (lot.state != stock::State::frozen || lot.place == to) continue;
        for (const auto& item : items) {
            const bool meant = (!item.what.lot || *item.what.lot == lot.number) &&
                               (!item.what.ingredient || *item.what.ingredient == lot.ingredient) &&
                               (!item.what.dish || item.what.dish == lot.dish) &&
                               (!item.what.from || *item.what.from == lot.place);
            if (meant) return &lot;
        }
    }
    return nullptr;
}

tl::expected<void, Failure> ask_whether_to_thaw(const kitchen::Kitchen& kitchen, const stock::Lot& lot,
                                                stock::PlaceId to, Thawing& thawing) {
    const std::string& name = kitchen.catalogue()[lot.ingredient].name;
    if (!on_terminal() && kitchen.place(to).kind == stock::PlaceKind::fridge) {
        thawing = {true, stock::ThawMethod::fridge};  // what else would it be there for
        return {};
    }
    if (!on_terminal()) {
        return failure(not_understood,
                       {{"moved", fmt::format("{} comes out of a freezer", name), "whether it is to thaw",
                         "--thaw fridge, --thaw cold-water, --thaw microwave, or --still-frozen"}});
    }
    while (!thawing.said) {
        const auto line =
            ask(fmt::format("Is the {} to thaw in the {}? [y: yes / cold-water / microwave / n: it stays frozen]", name,
                            kitchen.place(to).name));
        if (!line)
            return failure(not_understood, {{"moved", "not said whether it is to thaw",
                                             "--thaw METHOD or --still-frozen", std::nullopt}});
        if (*line == "y" || *line == "yes") thawing = {true, stock::ThawMethod::fridge};
        if (*line == "n" || *line == "no") thawing = {true, std::nullopt};
        if (const auto method = stock::read_thaw_method(*line)) thawing = {true, method};
    }
    return {};
}

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at,
                                               const store::State& facts, Answers& packs, Thawing& thawing) {
    if (arguments.to.empty()) {
        return failure(not_understood, {{"moved", "not said where to",
                                         "--to PLACE, as in 'moved 2 packs mince --to fridge'", std::nullopt}});
    }
    const auto to = place_meant(at.kitchen, joined(arguments.to));
    if (!to) return tl::make_unexpected(to.error());
    std::optional<stock::PlaceId> from;
    if (!arguments.from.empty()) {
        const auto said = place_meant(at.kitchen, joined(arguments.from));
        if (!said) return tl::make_unexpected(said.error());
        from = *said;
    }
    const auto things = read_things(at, facts, joined(arguments.what), from, Doing::moving, packs);
    if (!things) return tl::make_unexpected(things.error());
    const auto items = items_of(*things, from);
    const auto* frozen = stock::freezes(at.kitchen.place(*to).kind) ? nullptr : frozen_among(at.kitchen, items, *to);
    if (frozen != nullptr && !thawing.said) {
        if (const auto asked = ask_whether_to_thaw(at.kitchen, *frozen, *to, thawing); !asked)
            return tl::make_unexpected(asked.error());
    }
    auto change = understood(kitchen::moved(at, items, *to, thawing.method));
    if (!change) return change;
    for (auto& edit : packs.learned()) change->facts.push_back(edit);
    return change;
}

Outcome run(const Arguments& said, const Context& context) {
    const Arguments arguments = in_words(said);
    Answers packs;
    Thawing thawing{arguments.still_frozen || !arguments.thaw.empty(), std::nullopt};
    if (!arguments.thaw.empty()) {
        thawing.method = stock::read_thaw_method(arguments.thaw);
        if (!thawing.method || arguments.still_frozen) {
            const std::string found =
                arguments.still_frozen ? "both --thaw and --still-frozen" : fmt::format("'{}'", arguments.thaw);
            return failure(not_understood, {{"--thaw", found, "fridge, cold-water or microwave", std::nullopt}});
        }
    }
    return carry_out(context, arguments.how, [&](const kitchen::At& at, const store::State& facts) {
        return compute(arguments, at, facts, packs, thawing);
    });
}

}  // namespace

void add_moved(CLI::App& app, Chosen& chosen) {
    auto* command =
        app.add_subcommand("moved", "things went to another place: moved 2 packs mince from shed to fridge");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "what, with or without an amount; 'lot 2' is a lot");
    command->add_option("--from", arguments->from, "where it was (else wherever it is, oldest first)")
        ->type_name("PLACE");
    command->add_option("--to", arguments->to, "where it is now")->type_name("PLACE");
    command->add_option("--thaw", arguments->thaw, "it is to thaw: in the fridge, in cold-water, in the microwave")
        ->type_name("METHOD");
    command->add_flag("--still-frozen", arguments->still_frozen, "it is not to thaw");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
