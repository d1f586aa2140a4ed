// samebase lunches: a lunch for everyone at home, leftovers first.
#include "lunches.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "ledger.hpp"
#include "progress.hpp"
#include "show/lunches.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    ask::LunchesQuestion question;
    bool write = false;
    show::Manner manner;
    How how;
};

std::string line_of(const ask::LunchesAnswer& answer, std::ptrdiff_t bought) {
    const auto planned = static_cast<std::ptrdiff_t>(answer.lunches.size()) - bought;
    if (planned == 0) return "planned no lunch: nothing that can be planned is open";
    std::string line = fmt::format("planned {} {} from {} to {}", planned, planned == 1 ? "lunch" : "lunches",
                                   basics::iso(answer.span.first), basics::iso(answer.span.last));
    int more = 0;
    for (const auto& dinner : answer.larger) more += dinner.more;
    if (more > 0) line += fmt::format(", with {} {} more at dinner", more, more == 1 ? "serve" : "serves");
    return line;
}

/// The lunches beside what was planned; dinners that are cooked larger say so in their row.
tl::expected<kitchen::Change, Failure> planned(const Arguments& arguments, const kitchen::At& at) {
    const auto answer = lunches_answer(arguments.question, at.kitchen, at.day);
    if (!answer) return tl::make_unexpected(answer.error());
    auto change = understood(kitchen::set_plan(at, answer->span, std::nullopt, answer->rows, "lunches"));
    if (!change) return change;
    const auto bought = std::count_if(answer->lunches.begin(), answer->lunches.end(),
                                      [](const ask::Lunch& lunch) { return lunch.kind == ask::LunchKind::bought; });
    change->line = line_of(*answer, bought);
    if (bought > 0)
        change->notes.push_back(
            fmt::format("{} {} bought, which no plan says", bought, bought == 1 ? "lunch is" : "lunches are"));
    return change;
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (arguments.write) {
        return write_plan(context, arguments.how,
                          [&](const kitchen::At& at, const store::State&) { return planned(arguments, at); });
    }
    if (arguments.how.dry_run || arguments.how.yes) return nothing_to_write(arguments.how, "--write");
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto answer = lunches_answer(arguments.question, *kitchen, *today);
    if (!answer) return tl::make_unexpected(answer.error());
    context.answer([&](const show::Manner& manner) { return show::text(*answer, *kitchen, *today, manner); },
                   [&] { return show::json(*answer, *kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

tl::expected<ask::LunchesAnswer, Failure> lunches_answer(const ask::LunchesQuestion& question,
                                                         const kitchen::Kitchen& kitchen, basics::Day today) {
    const Interruptible interruptible;
    Progress progress(kitchen);
    auto answer = ask::ask_lunches(kitchen, today, question,
                                   [&](const ask::LunchesProgress& p) { return progress(p.stage, p.value); });
    if (!answer) return failure(not_understood, answer.error());
    return std::move(*answer);
}

void add_lunches(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("lunches", "what is for lunch each day, for each person: leftovers first");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("--days", arguments->question.days, "how many days, from today on: else 7, at most 31")
        ->type_name("NUMBER");
    command->add_option("--effort", arguments->question.effort, "how hard to look: 100 is usual")->type_name("NUMBER");
    command->add_flag("--why", arguments->manner.why, "every line of every sum, and every caution");
    command->add_flag("--write", arguments->write, "put these lunches in the plan");
    add_dry_run(*command, arguments->how);
    add_yes(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
