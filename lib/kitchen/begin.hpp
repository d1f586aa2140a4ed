// How a ledger begins: a stock, a plan and a history that were written down elsewhere, as one change.
#pragma once

#include <span>
#include <string_view>

#include "basics/problem.hpp"
#include "kitchen/changes.hpp"

namespace samebase::kitchen {

/// The names of the commands that a ledger begins with: what came in by them was not bought on their day.
inline constexpr std::string_view begin_command = "begin";
inline constexpr std::string_view import_command = "import";

/// Every lot arrives on its own day, as it stands; plan and history as they are. The kitchen of `at` is empty, and the
/// lots are in the order of their numbers.
[[nodiscard]] Change begin(const At& at, std::span<const stock::Lot> lots, const Plan& plan,
                           std::span<const Had> history);

}  // namespace samebase::kitchen
