#include "ask/clear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "ask/detail/clear_answer.hpp"
#include "ask/detail/clear_own_bin.hpp"
#include "ask/detail/clear_proof.hpp"
#include "ask/detail/clear_search.hpp"

namespace samebase::ask {

namespace {

using basics::Money;

constexpr std::array<std::string_view, 8> line_names{"waste_avoided", "crisper_first", "to_buy", "stand_ins",
                                                     "had_lately",    "liking",        "empty",  "own_bin"};
constexpr std::int64_t thousandths = 1000;
/// Balances that the search with own_bin may look at, for each unit of effort.
constexpr int balances_for_each = 4;
/// A move changes one meal: some hundred thousand of them a second.
constexpr std::int64_t moves_for_each = 10'000;

basics::Result<basics::Span> span_of(const kitchen::Kitchen& kitchen, basics::Day today,
                                     const ClearQuestion& question) {
    if (kitchen.cookbook().dishes().empty())
        return basics::problem("cookbook", "there are no dishes", "at least one dish to choose from");
    if (question.effort < 1 || question.effort > 10'000)
        return basics::problem("--effort", fmt::format("{}", question.effort),
                               "a number from 1 to 10000; 100 is usual");
    if (!question.until) {
        const auto shopping = kitchen::fresh_shopping_day(kitchen.household, today + basics::days{1});
        if (!shopping) return basics::problem("--until", "the household has no shopping days", "the last day of meals");
        return basics::Span{today, *shopping - basics::days{1}};
    }
    if (*question.until < today)
        return basics::problem("--until", basics::iso(*question.until),
                               fmt::format("a day from {} on", basics::iso(today)));
    const basics::Span span{today, *question.until};
    if (span.length() > detail::most_clear_days) {
        return basics::problem("--until", fmt::format("{} days on", span.length() - 1),
                               fmt::format("at most {} days", detail::most_clear_days));
    }
    return span;
}

Money rounded(std::int64_t fine) {
    return {std::llround(static_cast<double>(fine) / static_cast<double>(thousandths))};
}

/// No plan is worth more than the bound of the sum without own_bin, for that is never below nothing.
void weigh_own_bin(ClearAnswer& answer) {
    if (answer.extra_bin == Money{}) return;
    answer.because.push_back({ClearLine::own_bin, -answer.extra_bin, {}, {}, "the rest of what is opened and bought"});
    answer.value -= answer.extra_bin;
    answer.proved_best = false;
}

void mark_what_goes(const kitchen::Plan& plan, ClearAnswer& answer) {
    for (ClearMeal& meal : answer.meals) {
        const auto* now = kitchen::planned(plan, meal.day, meal.meal);
        if (now != nullptr && now->dish != meal.dish) meal.instead_of = now->dish;
    }
}

void notes(const detail::ClearGame& game, ClearAnswer& answer) {
    if (game.meals.empty()) {
        answer.notes.emplace_back("Nobody is home for an open meal until then: there is nothing to choose.");
    }
    if (answer.danger.minor == 0 && game.at_stake == 0) {
        answer.notes.emplace_back(
            "Nothing is in danger: the plan eats what does not keep, so that the meals are chosen by what they cost.");
    }
}

}  // namespace

std::string_view name(ClearLine line) {
    return line_names[static_cast<std::size_t>(line)];
}

basics::Result<ClearAnswer> ask_clear(const kitchen::Kitchen& kitchen, basics::Day today, const ClearQuestion& question,
                                      const ClearWatch& watch) {
    const auto span = span_of(kitchen, today, question);
    if (!span) return tl::make_unexpected(span.error());
    bool stopped = false;
    const auto look = [&](std::string_view stage, std::int64_t value) {
        if (watch && !stopped) stopped = !watch({stage, rounded(value)});
        return !stopped;
    };
    look("looking at every dish", 0);
    const auto game = detail::clear_game(kitchen, today, *span);
    const detail::ClearPlan greedy = detail::clear_greedily(*game);
    std::int64_t greedy_value = detail::value_of(*game, greedy);
    detail::ClearPlan plan = greedy;
    if (look("searching", greedy_value)) {
        plan = detail::clear_by_annealing(*game, plan, detail::clear_options_alone(*game),
                                          moves_for_each * question.effort,
                                          [&](std::int64_t best) { return look("searching", best); });
    }
    plan = detail::clear_polished(*game, plan);
    const auto proved =
        detail::clear_proved(*game, plan, question.effort, [&](std::int64_t best) { return look("proving", best); });
    plan = proved.plan;
    detail::ClearOwnBin own_bin(*game, today);
    if (question.own_bin) {
        const auto weighing = [&](std::int64_t best) { return look("weighing what is left over", best); };
        const auto sum = [&](const detail::ClearPlan& one) {
            return detail::value_of(*game, one) - thousandths * own_bin.of(one).minor;
        };
        greedy_value = sum(greedy);
        const auto little =
            detail::clear_that_opens_little(*game, own_bin, plan, moves_for_each * question.effort, weighing);
        for (const detail::ClearPlan& other : {greedy, little}) {
            if (sum(other) > sum(plan)) plan = other;
        }
        plan = detail::clear_with_own_bin(*game, own_bin, plan, balances_for_each * question.effort, weighing);
    }
    ClearAnswer answer = detail::clear_told(*game, plan, today);
    const std::int64_t open = proved.bound - detail::value_of(*game, plan);
    answer.bound = answer.value + Money{(open + thousandths - 1) / thousandths};
    answer.proved_best = proved.proved && open <= 0;
    answer.extra_bin = own_bin.of(plan);
    if (question.own_bin) weigh_own_bin(answer);
    answer.gap =
        static_cast<double>(answer.bound.minor - answer.value.minor) / static_cast<double>(answer.at_stake.minor);
    answer.greedy = rounded(greedy_value);
    answer.stopped = stopped;
    mark_what_goes(kitchen.plan, answer);
    notes(*game, answer);
    return answer;
}

}  // namespace samebase::ask
