// The answer to "what else can I make from this?", for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "ask/else.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// The answer in a sentence, the first dish in full, then a line each; ends with a newline.
[[nodiscard]] std::string text(const ask::ElseAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::ElseAnswer& answer, const kitchen::Kitchen& kitchen);

/// What a cook must know of an alternative that is taken: stand-ins, what to buy, cautions; a line each.
[[nodiscard]] std::vector<std::string> lines(const ask::Alternative& alternative, const kitchen::Kitchen& kitchen);

[[nodiscard]] std::string text(const ask::WhyNot& answer, const kitchen::Kitchen& kitchen, basics::Day today);
[[nodiscard]] nlohmann::ordered_json json(const ask::WhyNot& answer, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
