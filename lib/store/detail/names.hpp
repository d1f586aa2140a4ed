// Between handles and the identifiers that the file keeps.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"
#include "store/rows.hpp"

namespace samebase::store::detail {

struct Names {
    const kitchen::Knowledge& knowledge;
    const kitchen::Household& household;

    [[nodiscard]] const std::string& ingredient(catalogue::IngredientId id) const { return knowledge.catalogue[id].id; }
    [[nodiscard]] const std::string& dish(cookbook::DishId id) const { return knowledge.cookbook[id].id; }
    [[nodiscard]] const std::string& place(stock::PlaceId id) const { return household.places[id.index()].id; }
    [[nodiscard]] std::optional<stock::PlaceId> place(const std::string& id) const;
};

[[nodiscard]] std::vector<SwapRow> swap_rows(const Names& names, const std::vector<kitchen::LineSwap>& swaps);

/// A Problem where an ingredient is not what the kitchen knows.
[[nodiscard]] basics::Result<std::vector<kitchen::LineSwap>> swaps_of(const Names& names, const std::string& where,
                                                                      const std::vector<SwapRow>& rows);

[[nodiscard]] LotRow lot_row(const Names& names, const stock::Lot& lot);
[[nodiscard]] Standing standing(const Names& names, const stock::Lot& lot);

/// A Problem where the ingredient, its dimension, the place, or the dish of the lot is not what the kitchen knows, or
/// the lot cannot be as it is.
[[nodiscard]] basics::Result<stock::Lot> lot_of(const Names& names, const std::string& file, const LotRow& row,
                                                const Standing& standing);

}  // namespace samebase::store::detail
