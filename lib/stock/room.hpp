// The room that food takes.
#pragma once

#include <cstdint>

#include "catalogue/catalogue.hpp"

namespace samebase::stock {

/// Millilitres that an amount takes in a place, with its pack: what the catalogue says of the ingredient or its family,
/// else its volume by density, else a litre for every kilogram, these two with a quarter more for the pack and the air
/// around it (common practice). What has no weight counts as 200 g a piece.
[[nodiscard]] std::int64_t room_taken(const catalogue::Ingredient& ingredient, const measure::Amount& amount);

}  // namespace samebase::stock
