#include "ask/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "ask/detail/plan_problem.hpp"
#include "ask/detail/plan_report.hpp"
#include "menu/bound.hpp"
#include "menu/search.hpp"

namespace samebase::ask {

namespace {

using basics::Money;

constexpr int two_years = 732;
/// Moves for each slot and unit of effort, and in all for each unit of effort: a year is searched less closely.
constexpr std::int64_t moves_for_each = 150;
constexpr std::int64_t most_moves = 6000;
/// Rounds of the bound at the usual effort.
constexpr int rounds = 400;
constexpr int least_rounds = 50;
/// Thousandths: how cash counts, one after the other, until a budget is kept.
constexpr std::array<int, 4> cash_counts{1000, 1500, 2500, 4000};

basics::Result<void> asked_well(const kitchen::Kitchen& kitchen, basics::Day today, const PlanQuestion& question) {
    if (kitchen.cookbook().dishes().empty())
        return basics::problem("cookbook", "there are no dishes", "at least one dish to choose from");
    if (question.effort < 1 || question.effort > 10'000)
        return basics::problem("--effort", fmt::format("{}", question.effort),
                               "a number from 1 to 10000; 100 is usual");
    if (question.span.last < today)
        return basics::problem("plan", fmt::format("a span that ends on {}", basics::iso(question.span.last)),
                               fmt::format("days from {} on", basics::iso(today)));
    if ((question.span.last - today).count() > two_years)
        return basics::problem("plan", fmt::format("days until {}", basics::iso(question.span.last)),
                               "days within the next two years");
    return {};
}

/// A good choice, and the bound on any.
struct Found {
    menu::Choice choice;
    menu::Worth bound = 0;
    bool stopped = false;
};

Found searched(const menu::Problem& problem, int effort, const PlanWatch& watch) {
    Found found;
    const auto look = [&](menu::Worth value) {
        if (watch && !found.stopped) found.stopped = !watch({"searching", Money{value / menu::thousandths}});
        return !found.stopped;
    };
    found.choice = menu::greedy(problem);
    const menu::Worth greedy = menu::value_of(problem, found.choice);
    const menu::Bound bound = menu::bound(problem, greedy, std::max(least_rounds, rounds * effort / 100));
    found.bound = bound.value;
    const auto moves = effort * std::min(most_moves, moves_for_each * static_cast<std::int64_t>(problem.slots.size()));
    if (look(greedy)) found.choice = menu::annealed(problem, found.choice, bound.options, moves, look);
    found.choice = menu::polished(problem, found.choice, look);
    return found;
}

/// A menu where cash counts for so much.
PlanAnswer chosen(const kitchen::Kitchen& kitchen, basics::Day today, const PlanQuestion& question,
                  int cash_thousandths, const PlanWatch& watch) {
    const auto built = detail::plan_problem(kitchen, today, question, cash_thousandths);
    const Found found = searched(built->problem, question.effort, watch);
    PlanAnswer answer = detail::plan_reported(*built, kitchen, found.choice);
    const menu::Worth open = found.bound - menu::value_of(built->problem, found.choice);
    answer.bound = answer.value + Money{(open + menu::thousandths - 1) / menu::thousandths};
    answer.proved_best = answer.bound == answer.value;
    answer.gap = static_cast<double>(answer.bound.minor - answer.value.minor) /
                 static_cast<double>(std::max<std::int64_t>(1, answer.cost.minor));
    answer.stopped = found.stopped;
    answer.budget = question.budget;
    if (question.explain) answer.why = detail::plan_explained(*built, found.choice, *question.explain);
    return answer;
}

}  // namespace

basics::Result<PlanAnswer> ask_plan(const kitchen::Kitchen& kitchen, basics::Day today, const PlanQuestion& question,
                                    const PlanWatch& watch) {
    if (auto well = asked_well(kitchen, today, question); !well) return tl::make_unexpected(well.error());
    if (watch) watch({"looking at every dish", Money{}});
    std::optional<PlanAnswer> best;
    for (const int cash : cash_counts) {
        PlanAnswer answer = chosen(kitchen, today, question, cash, watch);
        const bool will_do = !question.budget || answer.spent <= *question.budget || answer.stopped;
        if (!best || answer.spent < best->spent) best = std::move(answer);
        if (will_do) break;
    }
    if (question.explain && !best->why)
        return basics::problem("--explain", basics::iso(*question.explain), "a day of the span that is chosen here");
    return std::move(*best);
}

kitchen::Plan rows_of(const PlanAnswer& answer) {
    kitchen::Plan rows;
    for (const PlanDay& day : answer.days) {
        if (day.state != PlanDay::State::proposed && day.state != PlanDay::State::wished) continue;
        rows.push_back({.day = day.day,
                        .meal = kitchen::Meal::dinner,
                        .dish = *day.dish,
                        .ready_meal = day.ready_meal,
                        .serves = {},
                        .left = 0,
                        .swaps = flow::as_swaps(day.stand_ins, {}, day.cooking.serves_thousandths)});
    }
    return rows;
}

}  // namespace samebase::ask
