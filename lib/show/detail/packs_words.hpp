// So many packs as a shop sells them.
#pragma once

#include <string>
#include <vector>

#include "kitchen/kitchen.hpp"

namespace samebase::show::detail {

/// "beef mince 2 trays", "lemon 3", "potato 2 kg".
[[nodiscard]] std::string packs_words(catalogue::IngredientId id, int packs, const measure::Amount& amount,
                                      const kitchen::Kitchen& kitchen);

/// What was put on the list by hand: "2 sponges", "batteries".
[[nodiscard]] std::vector<std::string> by_hand_words(const std::vector<kitchen::Listed>& rows);

}  // namespace samebase::show::detail
