#include "ask/lunches.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "ask/detail/lunches_answer.hpp"
#include "ask/detail/lunches_proof.hpp"
#include "ask/detail/lunches_search.hpp"

namespace samebase::ask {

namespace {

using basics::Money;
using detail::LunchGame;
using detail::LunchPlan;

constexpr std::array<std::string_view, 5> kind_names{"leftover", "frozen-pack", "larger", "cooked", "bought"};
constexpr std::array<std::string_view, 8> line_names{"all_bought", "waste_avoided", "kept",       "to_buy",
                                                     "bought",     "effort",        "had_lately", "liking"};
constexpr std::int64_t thousandths = 1000;
/// A move changes a lunch or those of a day: some hundred thousand of them a second.
constexpr std::int64_t moves_for_each = 1'000;
/// So often what the balance lacks is left out and the rest is proved, or searched, anew.
constexpr int most_proofs = 6;
constexpr int parts_of_effort = 20;
constexpr int most_searches = 30;

basics::Result<basics::Span> span_of(basics::Day today, const LunchesQuestion& question) {
    if (question.effort < 1 || question.effort > 10'000)
        return basics::problem("--effort", fmt::format("{}", question.effort),
                               "a number from 1 to 10000; 100 is usual");
    if (question.days < 1 || question.days > most_lunch_days)
        return basics::problem("--days", fmt::format("{}", question.days),
                               fmt::format("a number from 1 to {}", most_lunch_days));
    return basics::Span{today, today + basics::days{question.days - 1}};
}

Money rounded(std::int64_t fine) {
    return {std::llround(static_cast<double>(fine) / static_cast<double>(thousandths))};
}

using Look = std::function<bool(std::string_view, std::int64_t)>;

/// What the balance lacks is left out until it lacks nothing more.
LunchPlan balanced(LunchGame& game, LunchPlan plan) {
    for (auto cuts = detail::lacking_in_balance(game, plan); !cuts.empty();
         cuts = detail::lacking_in_balance(game, plan)) {
        game.cuts.insert(game.cuts.end(), cuts.begin(), cuts.end());
        plan = detail::lunches_that_can_be_had(game, plan);
    }
    return plan;
}

/// From a start to a plan that the balance agrees with, by search alone. Where what may not be had together is not told
/// soon, one of it is left out altogether, for this search only: a bound never rests on that.
LunchPlan searched(LunchGame& game, LunchPlan plan, std::int64_t moves, const Look& look) {
    std::vector<detail::LunchCut> known = game.cuts;
    for (int round = 0;; ++round) {
        plan = detail::lunches_greedily(game, detail::lunches_that_can_be_had(game, plan));
        if (look("searching", detail::value_of(game, plan))) {
            plan = detail::lunches_by_annealing(game, plan, detail::lunch_options_alone(game), moves,
                                                [&](std::int64_t best) { return look("searching", best); });
        }
        plan = detail::lunches_polished(game, plan);
        const auto cuts = detail::lacking_in_balance(game, plan);
        if (cuts.empty()) break;
        for (const detail::LunchCut& cut : cuts) {
            if (round < most_searches) known.push_back(cut);
            game.cuts.push_back(round < most_searches ? cut : detail::LunchCut{{cut.back().first, 1}});
        }
        moves = std::max<std::int64_t>(1, moves / 2);
    }
    game.cuts = std::move(known);
    return plan;
}

/// With little effort until the balance agrees, then with all of it.
menu::Proof proved(LunchGame& game, LunchPlan plan, int effort, const Look& look) {
    const menu::Look go_on = [&](std::int64_t best) { return look("proving", best); };
    const int little = std::max(1, effort / parts_of_effort);
    bool whole = little == effort;
    for (int proof = 0;; ++proof) {
        auto found = detail::lunches_proved(game, plan, whole ? effort : little, go_on);
        const auto cuts = detail::lacking_in_balance(game, found.plan);
        if (cuts.empty()) {
            if (whole || found.proved || !go_on(detail::value_of(game, found.plan))) return found;
            plan = std::move(found.plan);
            whole = true;
            continue;
        }
        game.cuts.insert(game.cuts.end(), cuts.begin(), cuts.end());
        if (proof + 1 < most_proofs && go_on(detail::value_of(game, plan))) {
            // What was known before is still to be had.
            const LunchPlan other =
                balanced(game, detail::lunches_polished(game, detail::lunches_that_can_be_had(game, found.plan)));
            if (detail::value_of(game, other) > detail::value_of(game, plan)) plan = other;
            continue;
        }
        found.plan = plan;
        found.proved = false;
        return found;
    }
}

}  // namespace

std::string_view name(LunchKind kind) {
    return kind_names[static_cast<std::size_t>(kind)];
}

std::string_view name(LunchLine line) {
    return line_names[static_cast<std::size_t>(line)];
}

basics::Result<LunchesAnswer> ask_lunches(const kitchen::Kitchen& kitchen, basics::Day today,
                                          const LunchesQuestion& question, const LunchesWatch& watch) {
    const auto span = span_of(today, question);
    if (!span) return tl::make_unexpected(span.error());
    bool stopped = false;
    const Look look = [&](std::string_view stage, std::int64_t value) {
        if (watch && !stopped) stopped = !watch({stage, rounded(value)});
        return !stopped;
    };
    look("looking at every dish", 0);
    const auto game = detail::lunch_game(kitchen, today, *span);
    LunchPlan plan = detail::leftovers_handed_out(*game);
    const std::int64_t handed_out = detail::value_of(*game, detail::lunches_greedily(*game, plan));
    plan = searched(*game, std::move(plan), moves_for_each * question.effort, look);
    auto found = proved(*game, std::move(plan), question.effort, look);
    LunchesAnswer answer = detail::lunches_told(*game, found.plan);
    const std::int64_t reached = detail::value_of(*game, found.plan);
    found.bound = std::max(found.bound, reached);
    answer.proved_best = found.proved;
    answer.bound = answer.value + Money{(found.bound - reached + thousandths - 1) / thousandths};
    answer.gap =
        static_cast<double>(answer.bound.minor - answer.value.minor) / static_cast<double>(answer.at_stake.minor);
    answer.greedy = rounded(handed_out);
    answer.stopped = stopped;
    return answer;
}

}  // namespace samebase::ask
