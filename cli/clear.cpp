// samebase clear: the dinners and lunches until shopping day that keep the most from the bin.
#include "ask/clear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "flow/cooking.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "progress.hpp"
#include "show/clear.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::string until;
    int effort = 100;
    bool write = false;
    show::Manner manner;
    How how;
};

tl::expected<ask::ClearAnswer, Failure> answer_of(const Arguments& arguments, const kitchen::Kitchen& kitchen,
                                                  basics::Day today) {
    ask::ClearQuestion question{.until = {}, .effort = arguments.effort};
    if (!arguments.until.empty()) {
        const auto day = day_meant(arguments.until, today, "--until");
        if (!day) return tl::make_unexpected(day.error());
        question.until = *day;
    }
    const Interruptible interruptible;
    Progress progress(kitchen);
    auto answer = ask::ask_clear(kitchen, today, question,
                                 [&](const ask::ClearProgress& p) { return progress(p.stage, p.value); });
    if (!answer) return failure(not_understood, answer.error());
    return std::move(*answer);
}

std::vector<kitchen::LineSwap> swaps_of(const ask::ClearMeal& meal) {
    return flow::as_swaps(meal.stand_ins, meal.scaled, meal.cooking.serves_thousandths);
}

/// The chosen meals in place of what was planned for them; what stands stays.
tl::expected<kitchen::Change, Failure> planned(const Arguments& arguments, const kitchen::At& at) {
    const auto answer = answer_of(arguments, at.kitchen, at.day);
    if (!answer) return tl::make_unexpected(answer.error());
    kitchen::Plan rows;
    for (const kitchen::Planned& row : at.kitchen.plan) {
        const bool chosen = std::any_of(answer->meals.begin(), answer->meals.end(), [&](const ask::ClearMeal& meal) {
            return meal.day == row.day && meal.meal == row.meal;
        });
        if (answer->span.contains(row.day) && !chosen) rows.push_back(row);
    }
    for (const ask::ClearMeal& meal : answer->meals) {
        rows.push_back({.day = meal.day,
                        .meal = meal.meal,
                        .dish = meal.dish,
                        .ready_meal = meal.ready_meal,
                        .serves = {},
                        .left = 0,
                        .swaps = swaps_of(meal)});
    }
    auto change = understood(kitchen::set_plan(at, answer->span, std::nullopt, rows, "clear"));
    if (!change) return change;
    for (const ask::ClearMeal& meal : answer->meals) {
        const auto swaps = swaps_of(meal);
        if (swaps.empty()) continue;
        change->notes.push_back(fmt::format("{} on {}: {}", at.kitchen.cookbook()[meal.dish].name,
                                            basics::short_day(meal.day), kitchen::describe(at.kitchen, swaps)));
    }
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
    const auto answer = answer_of(arguments, *kitchen, *today);
    if (!answer) return tl::make_unexpected(answer.error());
    context.answer([&](const show::Manner& manner) { return show::text(*answer, *kitchen, *today, manner); },
                   [&] { return show::json(*answer, *kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

void add_clear(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "clear", "clear the crisper before shopping day: the dinners and lunches that keep most from the bin");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("--until", arguments->until, "the last day (else the eve of the next shopping day)")
        ->type_name("DAY");
    command->add_option("--effort", arguments->effort, "how hard to look: 100 is usual")->type_name("NUMBER");
    command->add_flag("--why", arguments->manner.why, "every line of every sum");
    command->add_flag("--all", arguments->manner.all, "everything that still ends in the bin");
    command->add_flag("--write", arguments->write, "put these meals in the plan");
    add_dry_run(*command, arguments->how);
    add_yes(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
