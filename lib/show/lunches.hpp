// The answer to "what is for lunch each day, for each person", for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/lunches.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// The answer in a sentence, then a line for each lunch of a day, what to do for them, and what to mind; ends with a
/// newline.
[[nodiscard]] std::string text(const ask::LunchesAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::LunchesAnswer& answer, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
