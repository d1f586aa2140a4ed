// samebase out: a staple has run out, or is there again.
#include <fmt/format.h>

#include "amounts.hpp"
#include "ledger.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    bool again = false;
    How how;
};

/// Only by a name, a plural of it or another listed name: a slip or a part of one may be another staple.
tl::expected<catalogue::IngredientId, Failure> staple(const kitchen::Kitchen& kitchen, const std::string& words,
                                                      Answers& answers) {
    const auto taken = Things(kitchen, std::nullopt, Doing::buying).taken(words);
    if (!taken) return tl::make_unexpected(taken.error());
    const std::string& name = kitchen.catalogue()[taken->thing.ingredient].name;
    if (taken->exact || answers.chosen(fmt::format("{}: is that what you mean?", words), {name}))
        return taken->thing.ingredient;
    return failure(not_understood,
                   {{words, "is not clear enough", "the name of a staple", fmt::format("the nearest: '{}'", name)}});
}

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at, Answers& answers) {
    kitchen::Change all;
    if (arguments.what.empty())
        return failure(not_understood, {{"out", "nothing is named", "a staple, as in 'out olive oil'", std::nullopt}});
    basics::Problems problems;
    for (const std::string& words : split_at_commas(joined(arguments.what))) {
        const auto id = staple(at.kitchen, words, answers);
        auto change = id ? understood(kitchen::out(at, *id, !arguments.again))
                         : tl::expected<kitchen::Change, Failure>(tl::make_unexpected(id.error()));
        if (!change) {
            problems.insert(problems.end(), change.error().problems.begin(), change.error().problems.end());
            continue;
        }
        const bool already = at.kitchen.household.staples_out[id->index()] != arguments.again;
        all.command = change->command;
        all.day = change->day;
        all.line += fmt::format("{}{}", all.line.empty() ? "" : ", ", change->line);
        if (!already) all.facts.insert(all.facts.end(), change->facts.begin(), change->facts.end());
    }
    if (!problems.empty()) return failure(not_understood, std::move(problems));
    return all;
}

Outcome run(const Arguments& arguments, const Context& context) {
    Answers answers;
    return carry_out(context, arguments.how,
                     [&](const kitchen::At& at, const store::State&) { return compute(arguments, at, answers); });
}

}  // namespace

void add_out(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("out", "a staple, which is never counted, has run out: out olive oil");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "the staple");
    command->add_flag("--again", arguments->again, "it is there again");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
