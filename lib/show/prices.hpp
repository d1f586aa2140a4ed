// The price book, as text and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "ask/prices.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// One thing in full, several as a table.
[[nodiscard]] std::string text(const std::vector<ask::ThingPrices>& things, const kitchen::Kitchen& kitchen,
                               basics::Day today, const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const std::vector<ask::ThingPrices>& things, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
