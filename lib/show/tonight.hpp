// Today's row of everything, for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/tonight.hpp"
#include "show/words.hpp"

namespace samebase::show {

[[nodiscard]] std::string text(const ask::TonightAnswer& answer, const kitchen::Kitchen& kitchen, const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::TonightAnswer& answer, const kitchen::Kitchen& kitchen);

/// One thaw move in words: "2 packs (1.01 kg) of beef mince from the shed freezer to the fridge, for meat loaf on Fri 4
/// Dec".
[[nodiscard]] std::string words(const flow::ThawMove& move, const kitchen::Kitchen& kitchen, basics::Day today);
[[nodiscard]] nlohmann::ordered_json json(const flow::ThawMove& move, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
