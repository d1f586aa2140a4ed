#include "store/detail/names.hpp"

#include <fmt/format.h>

#include "basics/sorted.hpp"

namespace samebase::store::detail {

std::optional<stock::PlaceId> Names::place(const std::string& id) const {
    return basics::find_sorted<stock::PlaceId>(household.places, id);
}

std::vector<SwapRow> swap_rows(const Names& names, const std::vector<kitchen::LineSwap>& swaps) {
    std::vector<SwapRow> rows;
    for (const kitchen::LineSwap& swap : swaps) {
        SwapRow& row = rows.emplace_back(SwapRow{names.ingredient(swap.of), swap.serves_thousandths, {}});
        for (const auto& [use, amount] : swap.use) row.use.emplace_back(names.ingredient(use), amount);
    }
    return rows;
}

basics::Result<std::vector<kitchen::LineSwap>> swaps_of(const Names& names, const std::string& where,
                                                        const std::vector<SwapRow>& rows) {
    basics::Problems problems;
    const auto known = [&](const std::string& id) {
        const auto ingredient = names.knowledge.catalogue.ingredient(id);
        if (!ingredient)
            problems.push_back(
                {where, fmt::format("'{}' is not an ingredient", id), "an ingredient of the catalogue", std::nullopt});
        return ingredient.value_or(catalogue::IngredientId{});
    };
    std::vector<kitchen::LineSwap> swaps;
    for (const SwapRow& row : rows) {
        kitchen::LineSwap& swap = swaps.emplace_back(kitchen::LineSwap{known(row.of), {}, row.serves});
        for (const auto& [use, amount] : row.use) swap.use.emplace_back(known(use), amount);
    }
    if (!problems.empty()) return tl::make_unexpected(std::move(problems));
    return swaps;
}

LotRow lot_row(const Names& names, const stock::Lot& lot) {
    std::optional<std::string> dish;
    if (lot.dish) dish = names.dish(*lot.dish);
    std::vector<std::string> also;
    for (const catalogue::Allergen allergen : lot.also.members()) also.emplace_back(catalogue::name(allergen));
    return {lot.number,  names.ingredient(lot.ingredient), std::move(dish),
            lot.arrived, lot.amount.dimension(),           std::move(also)};
}

Standing standing(const Names& names, const stock::Lot& lot) {
    Standing row;
    row.place = names.place(lot.place);
    row.amount = lot.amount.value();
    row.rough = lot.rough;
    row.packs = lot.packs;
    row.part_of = lot.part_of;
    row.state = lot.state;
    row.since = lot.since;
    row.opened_on = lot.opened_on;
    row.thaw = lot.thaw;
    row.thawed_on = lot.thawed_on;
    row.printed_use_by = lot.printed_use_by;
    row.use_by = lot.use_by;
    row.best_by = lot.best_by;
    if (lot.paid) row.paid = lot.paid->minor;
    row.paid_for = lot.paid_for;
    row.note = lot.note;
    return row;
}

basics::Result<stock::Lot> lot_of(const Names& names, const std::string& file, const LotRow& row, const Standing& now) {
    const std::string where = fmt::format("{}, lot {}", file, row.number);
    const auto ingredient = names.knowledge.catalogue.ingredient(row.ingredient);
    if (!ingredient) {
        return basics::problem(where, fmt::format("'{}' is not an ingredient", row.ingredient),
                               "an ingredient of the catalogue");
    }
    const auto place = names.place(now.place);
    if (!place) {
        return basics::problem(where, fmt::format("'{}' is not a place", now.place), "a place of kitchen.json");
    }
    stock::Lot lot;
    lot.number = row.number;
    lot.ingredient = *ingredient;
    if (row.dish) {
        lot.dish = names.knowledge.cookbook.dish(*row.dish);
        if (!lot.dish) {
            return basics::problem(where, fmt::format("'{}' is not a dish", *row.dish), "a dish of the cookbook",
                                   "what is left of it holds that dish's allergens, so that it has to stay known");
        }
    }
    for (const std::string& word : row.also) {
        const auto allergen = catalogue::read_allergen(word);
        if (!allergen) return basics::problem(where, fmt::format("'{}' is not an allergen", word), "a known allergen");
        lot.also.add(*allergen);
    }
    lot.place = *place;
    lot.amount = {row.dimension, now.amount};
    lot.rough = now.rough;
    lot.packs = now.packs;
    lot.part_of = now.part_of;
    lot.state = now.state;
    lot.arrived = row.arrived;
    lot.since = now.since;
    lot.opened_on = now.opened_on;
    lot.thaw = now.thaw;
    lot.thawed_on = now.thawed_on;
    lot.printed_use_by = now.printed_use_by;
    lot.use_by = now.use_by;
    lot.best_by = now.best_by;
    if (now.paid) lot.paid = basics::Money{*now.paid};
    lot.paid_for = now.paid_for;
    lot.note = now.note;
    if (auto reason = stock::check(lot, names.knowledge.catalogue)) {
        return basics::problem(where, std::move(*reason), "a lot that adds up", "'samebase check' says more");
    }
    return lot;
}

}  // namespace samebase::store::detail
