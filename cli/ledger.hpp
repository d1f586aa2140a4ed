// What commands that change the kitchen share: reading it, computing, asking once on a terminal, writing, and saying
// what was done.
#pragma once

#include <CLI/App.hpp>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "commands.hpp"
#include "context.hpp"
#include "kitchen/changes.hpp"
#include "store/store.hpp"

namespace samebase::cli {

/// The options of every command that changes something.
struct How {
    bool dry_run = false;
    bool yes = false;  ///< nothing is asked
};

void add_dry_run(CLI::App& command, How& how);
void add_yes(CLI::App& command, How& how);

/// A dry run, or agreement, of a command that only answers where it was not told by the option to write.
[[nodiscard]] tl::unexpected<Failure> nothing_to_write(const How& how, const std::string& option);
/// The day of "--done [DAY]": today where none is said, and never one that has not come.
[[nodiscard]] tl::expected<basics::Day, Failure> done_day(const std::string& text, basics::Day today,
                                                          const std::string& where);

/// Whether somebody is there who can be asked.
[[nodiscard]] bool on_terminal();
/// Asks on standard error and reads a line; nothing at the end of the input.
[[nodiscard]] std::optional<std::string> ask(const std::string& question);
/// A question with yes or no for an answer; no at the end of the input.
[[nodiscard]] bool agreed(const std::string& question);

/// What the command does to the kitchen. May be asked for again, where somebody else wrote in between; it remembers by
/// itself what the cook has said.
using Compute = std::function<tl::expected<kitchen::Change, Failure>(const kitchen::At& at, const store::State& facts)>;
/// What the cook has to agree to before it is written; nothing where there is nothing to ask.
using Question =
    std::function<std::optional<std::string>(const kitchen::Kitchen& before, const kitchen::Change& change)>;

/// Computes and writes; with `dry_run` says only what would be written. Tells the cook in a line, or with --json in
/// full.
[[nodiscard]] Outcome carry_out(const Context& context, const How& how, const Compute& compute,
                                const Question& question = {});

/// The same for a plan that was worked out: the cook agrees to so many rows that change.
[[nodiscard]] Outcome write_plan(const Context& context, const How& how, const Compute& compute);

/// Problems of a change, which come of what was asked for.
[[nodiscard]] tl::expected<kitchen::Change, Failure> understood(basics::Result<kitchen::Change> change);

/// The kitchen's knowledge and household, and its store, opened before they were read.
struct Opened {
    std::shared_ptr<const kitchen::Knowledge> knowledge;
    kitchen::Household household;
    store::Store store;
};
[[nodiscard]] tl::expected<Opened, Failure> open_kitchen(const Context& context, store::Mode mode);

/// One word or several as an option of a command that takes words without quotes.
template <class Arguments, class Run>
void run_with(CLI::App& command, Chosen& chosen, std::shared_ptr<Arguments> arguments, Run run) {
    command.callback([arguments, run, &chosen] {
        chosen.run = [arguments, run](const Context& context) -> Outcome { return run(*arguments, context); };
    });
}

}  // namespace samebase::cli
