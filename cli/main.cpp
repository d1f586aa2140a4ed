// samebase: the command line. Reads the options before the command, finds the command in the table, runs it, and turns
// what went wrong into one line each and an exit status.
#include <fmt/format.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <nlohmann/json.hpp>
#include <string>

#include "commands.hpp"
#include "context.hpp"
#include "output.hpp"
#include "show/json.hpp"

namespace {

using namespace samebase;

int report(const cli::Failure& failure, bool json) {
    if (json) {
        const std::string out =
            show::json_problems(failure.problems).dump(2, ' ', false, show::Json::error_handler_t::replace) + "\n";
        cli::print_document(out);
    }
    for (const basics::Problem& problem : failure.problems)
        cli::tell(fmt::format("samebase: {}\n", basics::to_text(problem)));
    return failure.status;
}

int run(int argc, char** argv) {
    cli::Options options;
    cli::Chosen chosen;
    CLI::App app{"What else can I make from this? Recipe substitution and leftover matching for one household kitchen.",
                 "samebase"};
    app.add_option("--kitchen", options.kitchen,
                   "the kitchen's folder (else SAMEBASE_KITCHEN, else the nearest kitchen.json upwards)")
        ->type_name("DIR");
    app.add_option("--today", options.today, "the day to answer for (else the local date)")->type_name("YYYY-MM-DD");
    app.add_flag("--json", options.json, "answer in JSON");
    app.set_version_flag("--version", SAMEBASE_VERSION);
    app.fallthrough();
    app.require_subcommand(0, 1);
    app.footer(
        "With no command: tonight. Words need no quotes: samebase else beef mince\n"
        "Exit status: 0 answered; 1 answered, and something needs attention; 2 not understood;\n"
        "3 the kitchen's files are unsound; 4 the store could not be read or written.");
    cli::add_commands(app, chosen);
    try {
        app.parse(argc, argv);
        if (!chosen.run) app.parse("tonight");
    } catch (const CLI::Success& success) {
        return app.exit(success);
    } catch (const CLI::ParseError& error) {
        return report({cli::not_understood, {{"arguments", error.what(), "see samebase --help", std::nullopt}}},
                      options.json);
    }
    const auto outcome = chosen.run(cli::Context(options));
    return outcome ? *outcome : report(outcome.error(), options.json);
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return cli::finished(run(argc, argv));
    } catch (const std::exception& error) {
        cli::tell(fmt::format("samebase: {}\n", error.what()));
        return cli::store_failed;
    }
}
