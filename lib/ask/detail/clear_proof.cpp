#include "ask/detail/clear_proof.hpp"

#include <algorithm>

#include "ask/detail/clear_model.hpp"
#include "ask/detail/clear_search.hpp"

namespace samebase::ask::detail {

namespace {

/// Moves of the annealing among the options of the relaxation, for each unit of effort.
constexpr std::int64_t moves_for_each = 20'000;
/// Nodes times the programme's size, for each unit of effort.
constexpr std::int64_t work = 90'000'000;
/// Moves of the annealing near what a node of the search tree is rounded to.
constexpr std::int64_t moves_at_a_node = 20'000;

bool may_stand(const ClearGame& game, const ClearPlan& plan) {
    ClearValue value(game);
    value.set(plan);
    return value.sound() && std::none_of(plan.begin(), plan.end(), [&](int option) { return value.clashes(option); });
}

/// Everything in danger saved, and each meal at its best.
std::int64_t easy_bound(const ClearGame& game) {
    std::int64_t bound = game.at_stake;
    for (const OpenMeal& meal : game.meals) {
        std::int64_t best = -meal.empty;
        for (const int o : meal.options) best = std::max(best, game.options[static_cast<std::size_t>(o)].fixed);
        bound += best;
    }
    return bound;
}

}  // namespace

menu::Proof clear_proved(const ClearGame& game, const ClearPlan& known, int effort, const menu::Look& look) {
    if (game.meals.empty()) return {known, value_of(game, known), true};
    menu::Proving how;
    how.lines = game.things.size();
    how.effort = effort;
    how.work = work;
    for (const OpenMeal& meal : game.meals) how.options.push_back(&meal.options);
    how.value = [&](const menu::Choice& plan) { return value_of(game, plan); };
    how.easy_bound = [&] { return easy_bound(game); };
    how.mended = [&](const menu::Choice& plan) { return clear_polished(game, plan); };
    how.may_stand = [&](const menu::Choice& plan) { return may_stand(game, plan); };
    how.annealed = [&](const menu::Choice& plan, const menu::Ranked& options) {
        return clear_by_annealing(game, plan, options, moves_for_each * effort, look);
    };
    how.annealed_near = [&](const menu::Choice& plan, const menu::Ranked& options) {
        return clear_annealed_near(game, plan, options, moves_at_a_node);
    };
    how.look = look;
    const ClearModel model(game);
    return menu::Prover(model, std::move(how), known).prove();
}

}  // namespace samebase::ask::detail
