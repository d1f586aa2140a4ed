// A balance as a ledger: what there is of each ingredient on each day, and where it went.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "flow/balance.hpp"

namespace samebase::flow {

/// opening + bought + made = used + tossed + closing, exactly, in the ingredient's own dimension; a day's closing is
/// the next day's opening.
struct LedgerRow {
    catalogue::IngredientId ingredient;
    basics::Day day;
    std::int64_t opening = 0;
    std::int64_t bought = 0;
    std::int64_t made = 0;
    std::int64_t used = 0;
    std::int64_t tossed = 0;
    std::int64_t closing = 0;

    friend bool operator==(const LedgerRow&, const LedgerRow&) = default;
};

/// A row for every day of the balance and every ingredient that has a part in it or a lot past its time (which counts
/// as tossed on the first day), in the order of (ingredient, day). Rough amounts are left out. Costs the rows and the
/// uses.
[[nodiscard]] std::vector<LedgerRow> ledger(const kitchen::Kitchen& kitchen, const Balance& balance);

/// Invariants: the identity holds in every row, rows follow on one another, nothing is below nothing, and what was used
/// is what the meals and standing uses asked for less what is unmet.
[[nodiscard]] std::optional<std::string> check(const Balance& balance, const std::vector<LedgerRow>& rows);

/// A lot past its use-by, or past the best-by that ends what is kept cool, on that day; frozen ones never are.
[[nodiscard]] bool past_its_time(const kitchen::Kitchen& kitchen, const stock::Lot& lot, basics::Day day);

}  // namespace samebase::flow
