// The question of ask/plan.hpp as a menu problem: open dinners, what may be had at each, what comes too soon.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "ask/detail/candidate.hpp"
#include "ask/plan.hpp"
#include "menu/problem.hpp"

namespace samebase::ask::detail {

/// Days; what was last had longer ago was not had for a while.
inline constexpr int a_while = 60;

/// What an option is beside its numbers.
struct PlanDetail {
    flow::Cooking cooking;
    std::vector<flow::StandInUse> stand_ins;
    std::vector<PlanBecause> because;  ///< they sum to its own worth
};

struct PlanProblem {
    basics::Span span;      ///< of the dinners, from today on
    kitchen::Kitchen bare;  ///< with the plan that stands, what occasions wish in it
    std::vector<basics::Day> wished;
    std::unique_ptr<flow::Balancer> balancer;  ///< of `bare`, from today to the end of the span
    std::vector<flow::Cooking> standing;
    menu::Problem problem;
    std::vector<PlanDetail> details;
    std::vector<PlanEmpty> empty;  ///< nights without an option
};

/// Cash counts for so many thousandths of what it is.
[[nodiscard]] std::unique_ptr<PlanProblem> plan_problem(const kitchen::Kitchen& kitchen, basics::Day today,
                                                        const PlanQuestion& question, int cash_thousandths = 1000);

}  // namespace samebase::ask::detail
