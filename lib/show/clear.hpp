// The answer to "clear the crisper before shopping day", for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/clear.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// The answer in a sentence, then a line a day, what to buy, and what still ends in the bin; ends with a newline.
[[nodiscard]] std::string text(const ask::ClearAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::ClearAnswer& answer, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
