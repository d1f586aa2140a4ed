// Do the week's swaps still balance the stock? The stock flow over a span of days as a ledger, and what a cook must see
// to, each with a mend that has been tried where there is one.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "basics/problem.hpp"
#include "flow/findings.hpp"
#include "flow/ledger.hpp"
#include "flow/mend.hpp"
#include "flow/told.hpp"

namespace samebase::ask {

using flow::Mend;

/// Meat or fish of which more is bought than is eaten fresh: the balance counts on the freezer for it.
struct ToFreeze {
    basics::Day day;  ///< of the purchase
    catalogue::IngredientId ingredient;
    measure::Amount amount;
    std::optional<basics::Day> eaten_on;  ///< the first meal that eats of it; nothing: none in the span
};

struct BalanceAnswer {
    basics::Span span;
    flow::Totals totals;                     ///< from today to the end of the span
    std::vector<flow::LedgerRow> rows;       ///< of the span's days, in the order of (ingredient, day)
    std::vector<flow::Finding> findings;     ///< in the order in which a cook must act
    std::vector<std::optional<Mend>> mends;  ///< by finding; nothing where none was found, or none was looked for
    std::vector<bool> looked;                ///< by finding: whether a mend was looked for
    flow::Telling telling;            ///< what is told by itself, each with a mend looked for its dearest finding
    std::vector<ToFreeze> to_freeze;  ///< in the order of (day, ingredient)
};

/// So many things at most are told by themselves, besides what stops a meal or can hurt.
inline constexpr std::size_t most_told = 12;

/// Stock is read as of today, so that the span ends on or after it; days of it before today are left out. Problem: the
/// span has passed, or ends more than two years ahead. Mends are looked for the first `most_mends` findings and for
/// what is told by itself. Costs one exact balance, and some tens of partial ones for each mend.
[[nodiscard]] basics::Result<BalanceAnswer> ask_balance(const kitchen::Kitchen& kitchen, basics::Day today,
                                                        basics::Span span, std::size_t most_mends);

}  // namespace samebase::ask
