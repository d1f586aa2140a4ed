// "What do I bring in from the far freezers?", for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/carry.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// How often to walk where, and when, in a sentence, and whether that is proved the fewest; then walk by walk a line
/// for each lot, the oldest first.
[[nodiscard]] std::string text(const ask::CarryAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::CarryAnswer& answer, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
