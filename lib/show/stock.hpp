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

/// Past its use-by, and not in a freezer: it is thrown out.
[[nodiscard]] bool past(const stock::Lot& lot, basics::Day today);
/// ", thawing", ", opened": what is worth saying of its state in its place; "" where nothing is.
[[nodiscard]] std::string state_words(const stock::Lot& lot, const kitchen::Kitchen& kitchen);
/// What is nearest to the stove first: fridge, crispers, near freezer, pantry, far freezers.
[[nodiscard]] std::vector<stock::PlaceId> nearest_first(const kitchen::Kitchen& kitchen);

/// One lot, without saying whether it is to be used first.
[[nodiscard]] nlohmann::ordered_json json(const stock::Lot& lot, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show
