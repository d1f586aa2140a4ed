// samebase plan and samebase week: what is planned.
#include <nlohmann/json.hpp>

#include "ask/menu.hpp"
#include "commands.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "show/menu.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> span;
    int days = 14;  ///< where no span is said
    show::Manner manner;
};

Outcome run(const Arguments& arguments, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    basics::Span span{*today, *today + basics::days{arguments.days - 1}};
    if (!arguments.span.empty()) {
        const auto said = span_meant(joined(arguments.span), *today, "plan");
        if (!said) return tl::make_unexpected(said.error());
        span = *said;
    }
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto menu = ask::ask_menu(*kitchen, span);
    if (!menu) return failure(not_understood, menu.error());
    context.answer([&](const show::Manner& manner) { return show::text(*menu, *kitchen, *today, manner); },
                   [&] { return show::json(*menu, *kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

void add_plan(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("plan", "what is planned, two weeks or a span: plan december");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("span", arguments->span, "a month, a year, a day, or two days with '..' between");
    command->add_flag("--all", arguments->manner.all, "with the lunches of a long span too");
    run_with(*command, chosen, arguments, run);
}

void add_week(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("week", "what is planned for seven days from today");
    auto arguments = std::make_shared<Arguments>();
    arguments->days = 7;
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
