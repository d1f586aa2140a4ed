#include "stock/opening.hpp"

namespace samebase::stock {

std::optional<std::int64_t> large_piece(const catalogue::Ingredient& thing) {
    const auto mg = thing.conversion.mg_per_piece;
    if (!mg || *mg < large_piece_mg || thing.kind != catalogue::Kind::raw) return std::nullopt;
    if (thing.dimension == measure::Dimension::pieces) return 1000;
    return thing.dimension == measure::Dimension::mass ? mg : std::nullopt;
}

bool in_small_pieces(const catalogue::Ingredient& thing) {
    if (large_piece(thing)) return false;
    if (thing.dimension == measure::Dimension::pieces) return true;
    const catalogue::Keeping& opened = thing.keeps[static_cast<std::size_t>(catalogue::Keep::opened)];
    return thing.kind == catalogue::Kind::raw && thing.conversion.mg_per_piece &&
           opened.time.limit == catalogue::Limit::best_by;
}

}  // namespace samebase::stock
