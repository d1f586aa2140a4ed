// samebase carry: what do I bring in from the far freezers?
#include "ask/carry.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "ledger.hpp"
#include "meaning.hpp"
#include "show/carry.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> span;
    std::string done;
    bool is_done = false;
    int effort = 100;
    show::Manner manner;
    How how;
};

tl::expected<ask::CarryAnswer, Failure> answer_of(const Arguments& arguments, const kitchen::Kitchen& kitchen,
                                                  basics::Day today, std::optional<basics::Day> first) {
    if (arguments.span.empty()) {
        return failure(not_understood,
                       {{"carry", "no month", "a month or a span, as in 'carry december'", std::nullopt}});
    }
    const auto span = span_meant(joined(arguments.span), today, "carry");
    if (!span) return tl::make_unexpected(span.error());
    auto answer = ask::ask_carry(kitchen, today, {*span, first, arguments.effort});
    if (!answer) return failure(not_understood, answer.error());
    return std::move(*answer);
}

Outcome done(const Arguments& arguments, const Context& context) {
    return carry_out(context, arguments.how,
                     [&](const kitchen::At& at, const store::State&) -> tl::expected<kitchen::Change, Failure> {
                         const auto day = done_day(arguments.done, at.day, "carry --done");
                         if (!day) return tl::make_unexpected(day.error());
                         const auto answer = answer_of(arguments, at.kitchen, *day, *day);
                         if (!answer) return tl::make_unexpected(answer.error());
                         return understood(ask::carry_done({at.kitchen, *day, at.next_lot}, *answer));
                     });
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (arguments.is_done) return done(arguments, context);
    if (arguments.how.dry_run) return nothing_to_write(arguments.how, "--done");
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto answer = answer_of(arguments, *kitchen, *today, std::nullopt);
    if (!answer) return tl::make_unexpected(answer.error());
    context.answer([&](const show::Manner& manner) { return show::text(*answer, *kitchen, *today, manner); },
                   [&] { return show::json(*answer, *kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

void add_carry(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "carry",
        "what do I bring in from the far freezers? the month's frozen food, in the fewest walks (carry december)");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("span", arguments->span, "a month, 2026-12, 2026-12-01..2026-12-14");
    auto* flag =
        command->add_option("--done", arguments->done, "that day's walks were made (else today's): enter them");
    flag->type_name("[DAY]")->expected(0, 1);
    command->add_option("--effort", arguments->effort, "how hard to prove the fewest walks: 100 is usual")
        ->check(CLI::Range(0, 10000))
        ->type_name("NUMBER");
    command->add_flag("--all", arguments->manner.all, "every lot");
    command->add_flag("--why", arguments->manner.why, "how the number of walks comes about");
    add_dry_run(*command, arguments->how);
    command->parse_complete_callback([arguments, flag] { arguments->is_done = flag->count() > 0; });
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
