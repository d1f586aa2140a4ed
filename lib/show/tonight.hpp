// Today's row of everything, for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/thaw.hpp"
#include "ask/tonight.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// The answer first: dinner and for whom; then what to do now, what must be eaten and what is missing, a line each;
/// what is small in one line with its sum; one next step. Of `thaw` what is to be taken out today and what is too late.
[[nodiscard]] std::string text(const ask::TonightAnswer& answer, const ask::ThawAnswer& thaw,
                               const kitchen::Kitchen& kitchen, const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::TonightAnswer& answer, const kitchen::Kitchen& kitchen);

/// One thaw move in words: "beef mince, 2 packs, from the shed freezer to the fridge: for Friday's meat loaf".
[[nodiscard]] std::string words(const flow::ThawMove& move, const kitchen::Kitchen& kitchen, basics::Day today);
[[nodiscard]] nlohmann::ordered_json json(const flow::ThawMove& move, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
