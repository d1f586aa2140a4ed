// Entering what is taken out of the freezers, for the commands that do.
#pragma once

#include <string>

#include "context.hpp"
#include "ledger.hpp"

namespace samebase::cli {

/// The day's moves were made (today's where no day is said): they are entered.
[[nodiscard]] Outcome take_out(const Context& context, const How& how, const std::string& day);

}  // namespace samebase::cli
