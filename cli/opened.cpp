// samebase opened: things are opened or cut.
#include <fmt/format.h>

#include "amounts.hpp"
#include "ledger.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    std::vector<std::string> from;
    How how;
};

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at,
                                               const store::State& facts, Answers& packs) {
    std::optional<stock::PlaceId> from;
    if (!arguments.from.empty()) {
        const auto said = place_meant(at.kitchen, joined(arguments.from));
        if (!said) return tl::make_unexpected(said.error());
        from = *said;
    }
    const auto things = read_things(at, facts, joined(arguments.what), from, Doing::opening, packs);
    if (!things) return tl::make_unexpected(things.error());
    for (const Wanted& wanted : *things) {
        const auto* lot = wanted.thing.lot ? at.kitchen.lot(*wanted.thing.lot) : nullptr;
        if (lot == nullptr || !lot->opened_on) continue;
        return failure(not_understood,
                       {{wanted.said.text, fmt::format("was opened on {}", basics::short_day(*lot->opened_on)),
                         "something that is closed", std::nullopt}});
    }
    auto change = understood(kitchen::opened(at, items_of(*things, from)));
    if (!change) return change;
    for (auto& edit : packs.learned()) change->facts.push_back(edit);
    return change;
}

Outcome run(const Arguments& arguments, const Context& context) {
    Answers packs;
    return carry_out(context, arguments.how, [&](const kitchen::At& at, const store::State& facts) {
        return compute(arguments, at, facts, packs);
    });
}

}  // namespace

void add_opened(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("opened", "something was opened or cut: opened milk");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "what; without an amount one pack or one piece; 'lot 2' is a lot");
    command->add_option("--from", arguments->from, "where it was (else wherever it is)")->type_name("PLACE");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
