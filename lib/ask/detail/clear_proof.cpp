#include "ask/detail/clear_proof.hpp"

#include <algorithm>
#include <cmath>

#include "ask/detail/clear_model.hpp"

namespace samebase::ask::detail {

namespace {

constexpr double thousandths = 1000;

/// Moves of the annealing among the options of the relaxation, for each unit of effort.
constexpr std::int64_t moves_for_each = 20'000;
/// Nodes of the search tree times columns, for each unit of effort: what a node costs grows like the columns.
constexpr std::int64_t work = 70'000;
/// Moves of the annealing near what a node of the search tree is rounded to.
constexpr std::int64_t moves_at_a_node = 20'000;

std::int64_t value_of(const ClearGame& game, const ClearPlan& plan) {
    ClearValue value(game);
    value.set(plan);
    return value.value();
}

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

/// Meal by meal the options that are left, those first that cost the relaxation least.
Ranked by_reduced_cost(const ClearGame& game, const ClearModel& model, const solver::Values& reduced) {
    const auto cost = [&](int o) { return reduced[static_cast<std::size_t>(model.column_of(o))]; };
    Ranked ranked;
    for (const OpenMeal& meal : game.meals) {
        auto& options = ranked.emplace_back(meal.options);
        std::erase_if(options, [&](int o) { return std::isinf(cost(o)); });
        std::stable_sort(options.begin(), options.end(), [&](int a, int b) { return cost(a) < cost(b); });
    }
    return ranked;
}

class Prover {
  public:
    Prover(const ClearGame& game, const ClearPlan& known, const Look& look)
        : game_(game), look_(look), model_(game), best_(known), value_(value_of(game, known)) {}

    Proof prove(int effort) {
        solver::BranchAndCut programme(model_.programme(), model_.cost(), model_.on_demand());
        const solver::Solution relaxation =
            programme.tighten(model_.values(best_), static_cast<double>(slack()) / thousandths);
        if (relaxation.status != solver::Status::proved) return told(easy_bound(game_));
        const std::int64_t bound = worth(relaxation.bound) + slack();
        if (bound - value_ <= slack() || !go_on()) return told(bound);
        const Ranked options = by_reduced_cost(game_, model_, relaxation.reduced);
        better(clear_by_annealing(game_, best_, options, moves_for_each * effort, look_));
        if (!go_on()) return told(bound);
        const auto columns = static_cast<std::int64_t>(programme.columns());
        const std::int64_t nodes = std::max<std::int64_t>(1, work * effort / std::max<std::int64_t>(1, columns));
        const solver::Solution found = programme.search(
            model_.values(best_), {.nodes = nodes, .guard_seconds = 120},
            {[&] { return go_on(); }, [&](const solver::Values& values) { return rounded(values, options); }});
        better(model_.plan(found.values));
        return told(std::min(bound, worth(found.bound)));
    }

  private:
    /// Lines are rounded each, and the solver computes in doubles.
    [[nodiscard]] std::int64_t slack() const { return 20 + static_cast<std::int64_t>(game_.things.size()) / 20; }
    [[nodiscard]] static std::int64_t worth(double cost) { return std::llround(-cost * thousandths); }
    [[nodiscard]] bool go_on() const { return !look_ || look_(value_); }

    void better(const ClearPlan& found) {
        ClearPlan plan = clear_polished(game_, found);
        if (!may_stand(game_, plan)) return;
        const std::int64_t value = value_of(game_, plan);
        if (value <= value_) return;
        value_ = value;
        best_ = std::move(plan);
    }

    solver::Values rounded(const solver::Values& values, const Ranked& options) {
        const std::int64_t before = value_;
        better(clear_annealed_near(game_, model_.plan(values), options, moves_at_a_node));
        return value_ > before ? model_.values(best_) : solver::Values{};
    }

    [[nodiscard]] Proof told(std::int64_t bound) const {
        const bool proved = bound - value_ <= slack();
        return {best_, proved ? value_ : bound, proved};
    }

    const ClearGame& game_;
    const Look& look_;
    ClearModel model_;
    ClearPlan best_;
    std::int64_t value_;
};

}  // namespace

Proof clear_proved(const ClearGame& game, const ClearPlan& known, int effort, const Look& look) {
    if (game.meals.empty()) return {known, value_of(game, known), true};
    return Prover(game, known, look).prove(effort);
}

}  // namespace samebase::ask::detail
