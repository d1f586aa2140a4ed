// "What do I take out, and when?", for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/thaw.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// The answer in a sentence; the moves day by day; what is too late and what to do instead; what is cooked from frozen.
[[nodiscard]] std::string text(const ask::ThawAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::ThawAnswer& answer, const kitchen::Kitchen& kitchen,
                                          basics::Day today);

}  // namespace samebase::show
