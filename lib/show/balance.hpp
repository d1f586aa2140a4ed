// `balance` and `swap` as text and JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "ask/balance.hpp"
#include "ask/swap.hpp"
#include "show/words.hpp"

namespace samebase::show {

/// One sentence; the findings by kind, the first of each in full with its mend; what the span comes to. With `all`
/// every finding, and the ledger's rows of every ingredient and day on which something happens.
[[nodiscard]] std::string text(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen,
                                          basics::Day today);

/// "Fri 4 Dec: short of 200 g basil for pizza"; a finding in a line.
[[nodiscard]] std::string words(const flow::Finding& finding, const kitchen::Kitchen& kitchen, basics::Day today);

/// What to do, and the command that does it.
[[nodiscard]] std::string words(const ask::Mend& mend, const kitchen::Kitchen& kitchen, basics::Day today);
[[nodiscard]] std::string command(const ask::Mend& mend, const kitchen::Kitchen& kitchen);

/// What a swap does to the rest of the week, a line each.
[[nodiscard]] std::vector<std::string> lines(const ask::SwapAnswer& answer, const kitchen::Kitchen& kitchen,
                                             basics::Day today);

}  // namespace samebase::show
