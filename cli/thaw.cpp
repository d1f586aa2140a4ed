// samebase thaw: what do I take out, and when?
#include "ask/thaw.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "flow/balance.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "show/thaw.hpp"
#include "thaw.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> span;
    bool done = false;
    show::Manner manner;
    How how;
};

tl::expected<ask::ThawAnswer, Failure> answer_of(const kitchen::Kitchen& kitchen, basics::Day today,
                                                 basics::Span span) {
    auto answer = ask::ask_thaw(kitchen, today, span);
    if (!answer) return failure(not_understood, answer.error());
    return std::move(*answer);
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (arguments.done) return take_out(context, arguments.how, joined(arguments.span));
    if (arguments.how.dry_run) return nothing_to_write(arguments.how, "--done");
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto span = span_or_horizon(joined(arguments.span), *kitchen, *today, "thaw");
    if (!span) return tl::make_unexpected(span.error());
    const auto answer = answer_of(*kitchen, *today, *span);
    if (!answer) return tl::make_unexpected(answer.error());
    context.answer([&](const show::Manner& manner) { return show::text(*answer, *kitchen, *today, manner); },
                   [&] { return show::json(*answer, *kitchen, *today); }, arguments.manner);
    return answered;
}

}  // namespace

Outcome take_out(const Context& context, const How& how, const std::string& text) {
    return carry_out(context, how,
                     [&](const kitchen::At& at, const store::State&) -> tl::expected<kitchen::Change, Failure> {
                         const auto day = done_day(text, at.day, "thaw --done");
                         if (!day) return tl::make_unexpected(day.error());
                         const kitchen::At then{at.kitchen, *day, at.next_lot};
                         const auto answer = answer_of(at.kitchen, *day, {*day, flow::horizon(at.kitchen, *day)});
                         if (!answer) return tl::make_unexpected(answer.error());
                         return understood(ask::thaw_done(then, *answer));
                     });
}

void add_thaw(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("thaw", "what do I take out, and when? (thaw sat)");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("span", arguments->span,
                        "the meals' days (else up to the second shopping day, a week at least); with --done the day");
    command->add_flag("--done", arguments->done, "that day's moves were made (else today's): enter them");
    command->add_flag("--all", arguments->manner.all, "every day");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
