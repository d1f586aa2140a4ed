// samebase tossed: things go to the bin, with a reason.
#include "amounts.hpp"
#include "ledger.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    std::vector<std::string> from;
    std::vector<std::string> because;
    bool past = false;
    How how;
};

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at,
                                               const store::State& facts, Answers& packs) {
    const auto reason = remark(arguments.because, "--because");
    if (!reason) return tl::make_unexpected(reason.error());
    if (arguments.past) {
        if (arguments.what.empty()) return understood(kitchen::tossed_past(at, *reason));
        return failure(not_understood, {{"--past", "things are named too",
                                         "all that is past its use-by, or those things", std::nullopt}});
    }
    std::optional<stock::PlaceId> from;
    if (!arguments.from.empty()) {
        const auto said = place_meant(at.kitchen, joined(arguments.from));
        if (!said) return tl::make_unexpected(said.error());
        from = *said;
    }
    const auto things = read_things(at, facts, joined(arguments.what), from, Doing::tossing, packs);
    if (!things) return tl::make_unexpected(things.error());
    auto change = understood(kitchen::tossed(at, items_of(*things, from), *reason));
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

void add_tossed(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("tossed", "something went to the bin: tossed spinach --because slimy");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "what; without an amount all of it; 'lot 84' is a lot");
    command->add_option("--from", arguments->from, "where it was (else wherever it is)")->type_name("PLACE");
    command->add_option("--because", arguments->because, "why: mouldy, past its use-by, nobody ate it")
        ->type_name("WORDS");
    command->add_flag("--past", arguments->past, "everything that is past its use-by");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
