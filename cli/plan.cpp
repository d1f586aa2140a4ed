// samebase plan and samebase week: what is planned; plan SPAN fills what is open.
#include "ask/plan.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "amounts.hpp"
#include "ask/menu.hpp"
#include "commands.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "progress.hpp"
#include "show/menu.hpp"
#include "show/plan.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> span;
    int days = 14;  ///< where no span is said
    bool show = false;
    bool again = false;
    bool unusual = false;
    int effort = 100;
    std::string explain;
    std::string budget;
    bool write = false;
    show::Manner manner;
    How how;
};

tl::expected<basics::Span, Failure> span_of(const Arguments& arguments, basics::Day today) {
    if (arguments.span.empty()) return basics::Span{today, today + basics::days{arguments.days - 1}};
    return span_meant(joined(arguments.span), today, "plan");
}

tl::expected<ask::PlanAnswer, Failure> proposed(const Arguments& arguments, const kitchen::Kitchen& kitchen,
                                                basics::Day today) {
    const auto span = span_of(arguments, today);
    if (!span) return tl::make_unexpected(span.error());
    ask::PlanQuestion question{.span = *span,
                               .again = arguments.again,
                               .unusual = arguments.unusual,
                               .effort = arguments.effort,
                               .explain = {}};
    if (!arguments.explain.empty()) {
        const auto day = day_meant(arguments.explain, today, "--explain");
        if (!day) return tl::make_unexpected(day.error());
        question.explain = *day;
    }
    if (!arguments.budget.empty()) {
        const auto budget = read_money(arguments.budget, kitchen.household.currency, "--budget");
        if (!budget) return tl::make_unexpected(budget.error());
        question.budget = *budget;
    }
    const Interruptible interruptible;
    Progress progress(kitchen);
    auto answer =
        ask::ask_plan(kitchen, today, question, [&](const ask::PlanProgress& p) { return progress(p.stage, p.value); });
    if (!answer) return failure(not_understood, answer.error());
    return std::move(*answer);
}

/// The chosen dinners beside what is planned; with --again in its place.
tl::expected<kitchen::Change, Failure> written(const Arguments& arguments, const kitchen::At& at) {
    const auto answer = proposed(arguments, at.kitchen, at.day);
    if (!answer) return tl::make_unexpected(answer.error());
    kitchen::Plan rows = ask::rows_of(*answer);
    for (const kitchen::Planned& row : at.kitchen.plan) {
        const bool chosen = std::any_of(rows.begin(), rows.end(), [&](const auto& r) { return r.day == row.day; });
        if (answer->span.contains(row.day) && row.meal == kitchen::Meal::dinner && !chosen) rows.push_back(row);
    }
    return understood(kitchen::set_plan(at, answer->span, kitchen::Meal::dinner, rows, "plan"));
}

/// Whether the span has a dinner to choose.
bool anything_open(const ask::PlanAnswer& answer) {
    return std::any_of(answer.days.begin(), answer.days.end(), [](const ask::PlanDay& day) {
        return day.state == ask::PlanDay::State::proposed || day.state == ask::PlanDay::State::wished ||
               day.state == ask::PlanDay::State::empty;
    });
}

Outcome shown(const Arguments& arguments, const Context& context, const kitchen::Kitchen& kitchen, basics::Day today,
              basics::Span span) {
    const auto menu = ask::ask_menu(kitchen, span);
    if (!menu) return failure(not_understood, menu.error());
    context.answer([&](const show::Manner& manner) { return show::text(*menu, kitchen, today, manner); },
                   [&] { return show::json(*menu, kitchen); }, arguments.manner);
    return answered;
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (arguments.write) {
        return write_plan(context, arguments.how,
                          [&](const kitchen::At& at, const store::State&) { return written(arguments, at); });
    }
    if (arguments.how.dry_run || arguments.how.yes) return nothing_to_write(arguments.how, "--write");
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto span = span_of(arguments, *today);
    if (!span) return tl::make_unexpected(span.error());
    if (arguments.show || arguments.span.empty() || span->last < *today)
        return shown(arguments, context, *kitchen, *today, *span);
    const auto answer = proposed(arguments, *kitchen, *today);
    if (!answer) return tl::make_unexpected(answer.error());
    if (!anything_open(*answer)) return shown(arguments, context, *kitchen, *today, *span);
    context.answer(
        [&](const show::Manner& manner) {
            return show::text(*answer, *kitchen, *today, joined(arguments.span), manner);
        },
        [&] { return show::json(*answer, *kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

void add_plan(CLI::App& app, Chosen& chosen) {
    auto* command =
        app.add_subcommand("plan", "what is planned; with a span, dinners for its open days: plan december");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("span", arguments->span, "a month, a year, a day, or two days with '..' between");
    command->add_flag("--write", arguments->write, "put these dinners in the plan");
    command->add_flag("--show", arguments->show, "only what is planned; choose nothing");
    command->add_flag("--again", arguments->again, "choose anew what is planned there");
    command->add_flag("--unusual", arguments->unusual, "with things that you do not usually buy");
    command->add_option("--explain", arguments->explain, "why a day has what it has")->type_name("DAY");
    command->add_option("--budget", arguments->budget, "for all that is bought until then")->type_name("MONEY");
    command->add_option("--effort", arguments->effort, "how hard to look: 100 is usual")->type_name("NUMBER");
    command->add_flag("--all", arguments->manner.all, "with lunches, and what every trip comes to");
    add_dry_run(*command, arguments->how);
    add_yes(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

void add_week(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("week", "what is planned for seven days from today");
    auto arguments = std::make_shared<Arguments>();
    arguments->days = 7;
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
