// What there is, by place: in packs first, then amounts; until when; and what is to be used first.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <set>
#include <string>
#include <vector>

#include "kitchen/kitchen.hpp"
#include "show/words.hpp"

namespace samebase::show {

struct StockAnswer {
    basics::Day day;
    std::optional<stock::PlaceId> place;   ///< nothing: everywhere
    std::vector<const stock::Lot*> lots;   ///< of the kitchen, in the order of their numbers
    std::set<stock::LotNumber> use_first;  ///< nothing in the plan eats them in time
};

[[nodiscard]] std::string text(const StockAnswer& answer, const kitchen::Kitchen& kitchen, const Manner& manner = {});
[[nodiscard]] nlohmann::ordered_json json(const StockAnswer& answer, const kitchen::Kitchen& kitchen);

/// One lot, without saying whether it is to be used first.
[[nodiscard]] nlohmann::ordered_json json(const stock::Lot& lot, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
