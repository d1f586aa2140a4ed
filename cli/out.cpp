// samebase out: a staple has run out, or is there again.
#include <fmt/format.h>

#include "ledger.hpp"
#include "meaning.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    bool again = false;
    How how;
};

tl::expected<catalogue::IngredientId, Failure> staple(const kitchen::Kitchen& kitchen, const std::string& words) {
    std::vector<catalogue::IngredientId> staples;
    for (std::uint32_t i = 0; i < kitchen.household.staples.size(); ++i) {
        if (kitchen.household.staples[i]) staples.push_back(catalogue::IngredientId{i});
    }
    auto found = one_of_meant(kitchen, staples, words, "the name of a staple");
    if (found || found.error().problems.front().found != "nothing is called that") return found;
    // What is no staple has a clearer message of its own.
    const auto thing = Things(kitchen, std::nullopt, Things::For::buying).meant(words);
    return thing ? tl::expected<catalogue::IngredientId, Failure>(thing->ingredient) : found;
}

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at) {
    kitchen::Change all;
    if (arguments.what.empty())
        return failure(not_understood, {{"out", "nothing is named", "a staple, as in 'out olive oil'", std::nullopt}});
    for (const std::string& words : split_at_commas(joined(arguments.what))) {
        const auto id = staple(at.kitchen, words);
        if (!id) return tl::make_unexpected(id.error());
        auto change = understood(kitchen::out(at, *id, !arguments.again));
        if (!change) return change;
        const bool already = at.kitchen.household.staples_out[id->index()] != arguments.again;
        all.command = change->command;
        all.day = change->day;
        all.line += fmt::format("{}{}", all.line.empty() ? "" : ", ", change->line);
        if (!already) all.facts.insert(all.facts.end(), change->facts.begin(), change->facts.end());
    }
    return all;
}

Outcome run(const Arguments& arguments, const Context& context) {
    return carry_out(context, arguments.how,
                     [&](const kitchen::At& at, const store::State&) { return compute(arguments, at); });
}

}  // namespace

void add_out(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "out", "a staple has run out: out olive oil (a staple is never counted and taken as there until then)");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "the staple");
    command->add_flag("--again", arguments->again, "it is there again");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
