// Looking back, as text and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ask/lookback.hpp"
#include "show/words.hpp"

namespace samebase::show {

[[nodiscard]] std::string text(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen);

[[nodiscard]] std::string text(const ask::WhenAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::WhenAnswer& answer, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
