// A chosen menu as an answer: days with their reasons, and what the balance says of it.
#pragma once

#include <optional>

#include "ask/detail/plan_problem.hpp"

namespace samebase::ask::detail {

/// All but bound, gap and why. `kitchen` is the one that was asked about.
[[nodiscard]] PlanAnswer plan_reported(const PlanProblem& built, const kitchen::Kitchen& kitchen,
                                       const menu::Choice& choice);

/// Nothing where that day is not one of the problem's, or is empty.
[[nodiscard]] std::optional<PlanWhy> plan_explained(const PlanProblem& built, const menu::Choice& choice,
                                                    basics::Day day);

}  // namespace samebase::ask::detail
