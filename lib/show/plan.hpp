// A menu that is proposed for a span, as text and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/plan.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// `said` is how the cook named the span, for the commands that are printed.
[[nodiscard]] std::string text(const ask::PlanAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const std::string& said, const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::PlanAnswer& answer, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
