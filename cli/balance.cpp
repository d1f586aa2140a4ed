// samebase balance: do the week's swaps still balance the stock?
#include "ask/balance.hpp"

#include <limits>
#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "show/balance.hpp"

namespace samebase::cli {

namespace {

constexpr std::size_t most_mends = 20;

struct Arguments {
    std::vector<std::string> span;
    show::Manner manner;
};

Outcome run(const Arguments& arguments, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto span = span_or_horizon(joined(arguments.span), *kitchen, *today, "balance");
    if (!span) return tl::make_unexpected(span.error());
    std::size_t mends = context.wants_json() ? most_mends : 0;  // what is told by itself has its mend besides
    if (arguments.manner.all) mends = std::numeric_limits<std::size_t>::max();
    const auto answer = ask::ask_balance(*kitchen, *today, *span, mends);
    if (!answer) return failure(not_understood, answer.error());
    context.answer([&](const show::Manner& manner) { return show::text(*answer, *kitchen, *today, manner); },
                   [&] { return show::json(*answer, *kitchen, *today); }, arguments.manner);
    return answer->findings.empty() ? answered : needs_attention;
}

}  // namespace

void add_balance(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("balance", "do the week's swaps still balance the stock? (balance december)");
    auto arguments = std::make_shared<Arguments>();
    command->add_option(
        "span", arguments->span,
        "a month, a year, a day, 2026-12-01..2026-12-31 (else up to the second shopping day, a week at least)");
    command->add_flag("--all", arguments->manner.all, "every finding with its mend, and every row");
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
