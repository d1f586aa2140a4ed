// What those at the table must know of a planned meal.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "flow/cooking.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask::detail {

/// What those at the table must know of a planned meal.
struct AtTable {
    std::vector<std::string> refused;   ///< someone there must not have it, and nothing helps
    std::vector<std::string> vetoed;    ///< someone there will not eat it
    std::vector<std::string> cautions;  ///< serves apart, what replaces what
    std::vector<flow::LineSwap> swaps;  ///< what replaces what, for all, beside what is planned
};
[[nodiscard]] AtTable at_table(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned);
/// The same where only these of the household eat it, as positions in household.people.
[[nodiscard]] AtTable at_table(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned,
                               std::vector<std::size_t> eaters);

}  // namespace samebase::ask::detail
