// Spans that can still be answered for.
#pragma once

#include <string>

#include "basics/day.hpp"
#include "basics/problem.hpp"

namespace samebase::ask::detail {

/// Problem, under the question's name: the span ends before today, or more than two years after it.
[[nodiscard]] basics::Result<void> ends_ahead(const std::string& question, basics::Span span, basics::Day today);

}  // namespace samebase::ask::detail
