// A small kitchen for tests of the ledger: some fifteen ingredients of every sort that keeps differently, four dishes,
// five places. Built in code, so that tests of stock and store need no documents.
#pragma once

#include <memory>
#include <string_view>

#include "kitchen/changes.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::tests {

struct LedgerWorld {
    std::shared_ptr<const kitchen::Knowledge> knowledge;
    kitchen::Household household;

    LedgerWorld();
    [[nodiscard]] catalogue::IngredientId ingredient(std::string_view id) const;
    [[nodiscard]] cookbook::DishId dish(std::string_view id) const;
    [[nodiscard]] stock::PlaceId place(std::string_view id) const;
    [[nodiscard]] kitchen::Kitchen empty() const;
};

/// The one world of all tests.
[[nodiscard]] const LedgerWorld& ledger_world();

/// "2026-12-04".
[[nodiscard]] basics::Day day(std::string_view text);
[[nodiscard]] measure::Amount grams(std::int64_t grams);
[[nodiscard]] measure::Amount millilitres(std::int64_t millilitres);
[[nodiscard]] measure::Amount pieces(std::int64_t thousandths);

}  // namespace samebase::tests
