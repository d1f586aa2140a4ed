// The worth of a dish in place of what is planned: a sum in money whose every line is shown.
#pragma once

#include "ask/detail/candidate.hpp"
#include "ask/else.hpp"

namespace samebase::ask::detail {

/// Sets because and worth, from two balances and the household's prices.
void weigh(const Setting& setting, const flow::Balance& after, const Candidate& candidate, Alternative& alternative);

/// The price of what is good at the end of a balance. Of what was bought only as much counts as the household will
/// eat within the next weeks, by its habit: what it had of it lately, what is planned after the balance, what it uses
/// every day.
[[nodiscard]] basics::Money kept(const kitchen::Kitchen& kitchen, const flow::Balance& balance);

/// Sets uses, to_buy, leaves and cautions.
void describe(const Setting& setting, const flow::Balance& after, const Candidate& candidate, Alternative& alternative);

}  // namespace samebase::ask::detail
