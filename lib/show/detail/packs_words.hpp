// So many packs as a shop sells them.
#pragma once

#include <string>

#include "kitchen/kitchen.hpp"

namespace samebase::show::detail {

/// "beef mince 2 trays", "lemon 3", "potato 2 kg".
[[nodiscard]] std::string packs_words(catalogue::IngredientId id, int packs, const measure::Amount& amount,
                                      const kitchen::Kitchen& kitchen);

}  // namespace samebase::show::detail
