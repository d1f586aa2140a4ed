// Proves or bounds what the plans of an optimiser can be worth: an integer programme on the solver room, started from a
// plan that is known.
//
// Its relaxation bounds the value first; every option whose reduced cost is more than what lies between that bound and
// the known plan is in no better plan and is left out, and only the rest is searched in whole numbers.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <numeric>
#include <vector>

#include "solver/programme.hpp"

namespace samebase::ask::detail {

/// Money is in thousandths of the smallest unit.
struct Proof {
    std::vector<int> plan;   ///< the better of what was known and what was found: an option for each place
    std::int64_t bound = 0;  ///< no plan is worth more
    bool proved = false;     ///< bound and value are one, but for the rounding of lines
};

struct Proving {
    std::vector<int> known;
    std::size_t options = 0;                             ///< in all
    std::size_t lines = 0;                               ///< that are rounded each
    std::function<bool(int option)> stays;               ///< is never left out
    std::function<std::int64_t()> easy_bound;            ///< where the solver says nothing
    std::function<std::int64_t(std::size_t few)> nodes;  ///< of the search tree with so many options; 0: no search
    std::function<std::vector<int>(std::vector<int>)> polished;  ///< what was found as a plan that can be had, or worse
    std::function<std::int64_t(const std::vector<int>&)> value;  ///< least where the plan cannot be had
    std::function<bool()> go_on;
};

/// `Model(game, options, whole)` is the programme of some of the options, in the smallest unit of money.
template <class Model, class Game>
Proof prove(const Game& game, const Proving& how) {
    constexpr double thousandths = 1000;
    // Lines are rounded each, and the solver computes in doubles.
    const auto slack = 20 + static_cast<std::int64_t>(how.lines) / 20;
    const std::int64_t value = how.value(how.known);
    Proof result{how.known, 0, false};
    std::vector<int> all(how.options);
    std::iota(all.begin(), all.end(), 0);
    const Model relaxed(game, all, false);
    const solver::Solution relaxation = relaxed.solve({}, {});
    if (relaxation.status != solver::Status::proved) {
        result.bound = std::max(value, how.easy_bound());
        return result;
    }
    result.bound = std::max<std::int64_t>(value, std::llround(-relaxation.cost * thousandths) + slack);
    std::vector<int> few;
    for (const int option : all) {
        const double worth = -(relaxation.cost + relaxed.reduced(relaxation, option)) * thousandths;
        if (how.stays(option) || worth + static_cast<double>(slack) >= static_cast<double>(value))
            few.push_back(option);
    }
    if (few.empty()) result.bound = value;  // anything at all is worth less than nothing
    const std::int64_t nodes = few.empty() ? 0 : how.nodes(few.size());
    if (nodes > 0 && (!how.go_on || how.go_on())) {
        const Model model(game, few, true);
        const solver::Solution found = model.solve({.nodes = nodes, .guard_seconds = 120}, how.known);
        if (!found.values.empty()) {
            auto plan = how.polished(model.plan(found.values));
            if (how.value(plan) > value) result.plan = std::move(plan);
        }
        if (found.status == solver::Status::proved || found.status == solver::Status::limited) {
            const std::int64_t bound = std::llround(-found.bound * thousandths);
            result.bound = std::min(result.bound, std::max(bound, value));
        }
    }
    const std::int64_t reached = how.value(result.plan);
    result.proved = result.bound - reached <= slack;
    if (result.proved || result.bound < reached) result.bound = reached;
    return result;
}

}  // namespace samebase::ask::detail
