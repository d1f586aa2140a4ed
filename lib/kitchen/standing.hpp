// What goes without a dish, as days pass: standing uses are entered in the ledger by themselves.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "kitchen/changes.hpp"

namespace samebase::kitchen {

/// The name of these commands in the log.
inline constexpr std::string_view standing_command = "standing";

/// One change for each day from `since` up to the day before at.day on which something is used: what the household's
/// standing uses ask for, as far as it is there and not past its use-by. `since`: the first day that has not been
/// entered; nothing: none has to be. Each is computed from the kitchen after the one before.
[[nodiscard]] std::vector<Change> standing_uses(const At& at, std::optional<basics::Day> since);

}  // namespace samebase::kitchen
