// Do the week's swaps still balance the stock? The stock flow over a span of days as a ledger, and what a cook must see
// to, each with a mend that has been tried where there is one.
#pragma once

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "basics/problem.hpp"
#include "flow/findings.hpp"
#include "flow/ledger.hpp"
#include "flow/serve.hpp"
#include "kitchen/changes.hpp"

namespace samebase::ask {

/// One thing to do. Every mend has been tried: with it the finding is gone, of no ingredient more goes unmet than
/// before, and where the finding was about waste, less is spent and tossed together.
struct Mend {
    enum class Kind : std::uint8_t {
        discard,        ///< what is past its use-by goes to the bin
        stand_in,       ///< the dish is cooked with something else in place of what lacks
        exchange_days,  ///< two meals change places
        other_dish,     ///< another dish that night
        freeze,         ///< to a freezer today
        buy,            ///< packs more, bought today
        move            ///< to another place
    };
    Kind kind = Kind::discard;
    stock::LotNumber lot = 0;             ///< discard, freeze, move
    std::optional<stock::PlaceId> place;  ///< freeze, move: where to
    basics::Day day;                      ///< of the meal
    std::optional<basics::Day> other;     ///< exchange_days: with which
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::optional<cookbook::DishId> dish;       ///< stand_in: the dish; other_dish: the new one
    std::optional<catalogue::IngredientId> of;  ///< stand_in: what is replaced; buy: what is bought
    std::vector<std::pair<catalogue::IngredientId, measure::Amount>> use;  ///< stand_in: by what
    double fit = 0;                                                        ///< stand_in
    int packs = 0;                                                         ///< buy
    std::optional<measure::Amount> amount;  ///< freeze, where it is not all of the lot; buy: of all packs
    basics::Money price;                    ///< buy
    kitchen::Change change;                 ///< what it does to the kitchen; empty for a stand-in
    std::vector<flow::LineSwap> swaps;      ///< stand_in: for cook()
};

struct BalanceAnswer {
    basics::Span span;
    flow::Totals totals;                     ///< from today to the end of the span
    std::vector<flow::LedgerRow> rows;       ///< of the span's days, in the order of (ingredient, day)
    std::vector<flow::Finding> findings;     ///< in the order in which a cook must act
    std::vector<std::optional<Mend>> mends;  ///< by finding; nothing where none was found, or none was looked for
    std::size_t mended = 0;                  ///< for so many findings, the first, mends were looked for
};

/// Stock is read as of today, so that the span ends on or after it; days of it before today are left out. Problem: the
/// span has passed, or ends more than two years ahead. Costs one exact balance, and some tens of partial ones for each
/// of the first `most_mends` findings.
[[nodiscard]] basics::Result<BalanceAnswer> ask_balance(const kitchen::Kitchen& kitchen, basics::Day today,
                                                        basics::Span span, std::size_t most_mends);

}  // namespace samebase::ask
