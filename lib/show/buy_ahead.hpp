// What to buy when, as text and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/buy_ahead.hpp"
#include "show/words.hpp"

namespace samebase::show {

[[nodiscard]] std::string text(const ask::BuyAheadAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::BuyAheadAnswer& answer, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
