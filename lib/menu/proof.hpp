// Proves or bounds what the plans of an optimiser can be worth, and looks for better ones on the way: an integer
// programme, started from a plan that is known.
//
// Its relaxation, tightened, bounds the value and says which options good plans are made of. Annealing among these
// comes first, then the search tree, in which plans near the relaxations are tried.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <utility>
#include <vector>

#include "menu/annealing.hpp"
#include "menu/problem.hpp"
#include "solver/branch_and_cut.hpp"

namespace samebase::menu {

/// Money is in thousandths of the smallest unit.
struct Proof {
    Choice plan;             ///< the better of what was known and what was found
    std::int64_t bound = 0;  ///< no plan is worth more
    bool proved = false;     ///< bound and value are one, but for the rounding of lines
};

/// What an optimiser knows of its plans.
struct Proving {
    std::size_t lines = 0;  ///< that are rounded each
    int effort = 100;
    std::int64_t work = 1;  ///< nodes of the search tree times the programme's size, for each unit of effort
    /// The solver's own cuts at the first node are worth more than nodes: its own rules, and nothing where few nodes
    /// are allowed.
    bool own_rules = false;
    std::vector<const std::vector<int>*> options;  ///< by place
    std::function<std::int64_t(const Choice&)> value;
    std::function<std::int64_t()> easy_bound;      ///< where the solver says nothing
    std::function<Choice(const Choice&)> mended;   ///< polished; what cannot be had is left as it is
    std::function<bool(const Choice&)> may_stand;  ///< whether the plan can be had
    std::function<Choice(const Choice&, const Ranked&)> annealed;
    std::function<Choice(const Choice&, const Ranked&)> annealed_near;  ///< a short search that keeps most of the plan
    Look look;
};

/// `Model` has programme(), cost() and on_demand(), in the smallest unit of money; column_of(option); values(plan) of
/// all columns; and plan(values), what is nearest to values of a relaxation.
template <class Model>
class Prover {
  public:
    Prover(const Model& model, Proving how, Choice known)
        : model_(model), how_(std::move(how)), best_(std::move(known)), value_(how_.value(best_)) {}

    Proof prove() {
        solver::BranchAndCut programme(model_.programme(), model_.cost(), model_.on_demand());
        const solver::Solution relaxation =
            programme.tighten(model_.values(best_), static_cast<double>(slack()) / thousandths);
        if (relaxation.status != solver::Status::proved) return told(how_.easy_bound());
        const std::int64_t bound = worth(relaxation.bound) + slack();
        if (bound - value_ <= slack() || !go_on()) return told(bound);
        const Ranked options = by_reduced_cost(relaxation.reduced);
        better(how_.annealed(best_, options));
        if (!go_on()) return told(bound);
        const std::int64_t nodes = how_.work * how_.effort / std::max<std::int64_t>(1, programme.size());
        if (how_.own_rules && nodes < fewest_nodes) return told(bound);
        const solver::Effort effort{.nodes = std::max<std::int64_t>(1, nodes), .guard_seconds = 120};
        const solver::Solution found =
            how_.own_rules ? solver::minimise(programme.left(), model_.cost(), effort, model_.values(best_))
                           : programme.search(model_.values(best_), effort,
                                              {[&] { return go_on(); },
                                               [&](const solver::Values& values) { return rounded(values, options); }});
        if (found.values.empty()) return told(bound);
        better(model_.plan(found.values));
        return told(found.status == solver::Status::failed ? bound : std::min(bound, worth(found.bound)));
    }

  private:
    static constexpr double thousandths = 1000;
    static constexpr std::int64_t fewest_nodes = 10;

    /// Lines are rounded each, and the solver computes in doubles.
    [[nodiscard]] std::int64_t slack() const { return 20 + static_cast<std::int64_t>(how_.lines) / 20; }
    [[nodiscard]] static std::int64_t worth(double cost) { return std::llround(-cost * thousandths); }
    [[nodiscard]] bool go_on() const { return !how_.look || how_.look(value_); }

    void better(const Choice& found) {
        Choice plan = how_.mended(found);
        const std::int64_t value = how_.value(plan);
        if (value <= value_ || !how_.may_stand(plan)) return;
        value_ = value;
        best_ = std::move(plan);
    }

    solver::Values rounded(const solver::Values& values, const Ranked& options) {
        const std::int64_t before = value_;
        better(how_.annealed_near(model_.plan(values), options));
        return value_ > before ? model_.values(best_) : solver::Values{};
    }

    /// Place by place the options that are left, those first that cost the relaxation least.
    [[nodiscard]] Ranked by_reduced_cost(const solver::Values& reduced) const {
        const auto cost = [&](int o) { return reduced[static_cast<std::size_t>(model_.column_of(o))]; };
        Ranked ranked;
        for (const std::vector<int>* all : how_.options) {
            auto& options = ranked.emplace_back(*all);
            std::erase_if(options, [&](int o) { return std::isinf(cost(o)); });
            std::stable_sort(options.begin(), options.end(), [&](int a, int b) { return cost(a) < cost(b); });
        }
        return ranked;
    }

    [[nodiscard]] Proof told(std::int64_t bound) const {
        const bool proved = bound - value_ <= slack();
        return {best_, proved ? value_ : bound, proved};
    }

    const Model& model_;
    Proving how_;
    Choice best_;
    std::int64_t value_;
};

}  // namespace samebase::menu
