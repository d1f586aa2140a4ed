// What opening does not begin: a bag of carrots is opened, and no carrot is. The ledger and the balance go by it alike.
#pragma once

#include <cstdint>
#include <optional>

#include "catalogue/catalogue.hpp"

namespace samebase::stock {

/// From this weight on what is left of a piece that was cut is worth a thought: half a pumpkin, not half an onion.
inline constexpr std::int64_t large_piece_mg = 300'000;

/// The amount of one piece in the thing's own dimension, where its pieces are large and cut one by one.
[[nodiscard]] std::optional<std::int64_t> large_piece(const catalogue::Ingredient& thing);

/// Whether it comes as small pieces that keep as they are once their bag or carton is opened: what is counted by the
/// piece, and raw things in pieces whose quality only suffers when they are cut.
[[nodiscard]] bool in_small_pieces(const catalogue::Ingredient& thing);

}  // namespace samebase::stock
