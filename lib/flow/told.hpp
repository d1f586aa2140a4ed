// What of a balance's findings is told by itself, and what is only summed. One thing is told once, whatever its lots.
//
// A finding is told by itself where it stops a meal, can hurt, or is worth at least a threshold. It stops a meal where
// a quarter or more lacks of a main, the body or the starch of a dish, if that is a tenth of the dish by weight, or
// where a place has no room; what is past its use-by can hurt.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "flow/findings.hpp"

namespace samebase::flow {

/// The least worth that is told by itself, where a household does not say.
inline constexpr basics::Money tell_from{100};

/// Findings about one thing: what lacks for one meal, what of one ingredient ends in the bin on one day, what of it is
/// past its use-by, one place without room.
struct Told {
    Finding finding;              ///< the dearest of them, with the sums of amount, price, and the earliest day
    std::vector<std::size_t> of;  ///< their positions, the dearest first; never empty
};

struct Telling {
    std::vector<Told> told;  ///< in the order of findings
    std::size_t small = 0;   ///< how many other things
    basics::Money small_price;
};

/// All that stops a meal or can hurt; while they are fewer than `most`, others too: first what else lacks, then what
/// ends by tomorrow, then the dearest. The rest counts as small.
[[nodiscard]] Telling tell(const kitchen::Kitchen& kitchen, basics::Day today, std::span<const Finding> findings,
                           std::size_t most, basics::Money from = tell_from);

/// Whether the meal cannot be cooked as planned without it.
[[nodiscard]] bool stops_a_meal(const kitchen::Kitchen& kitchen, const Finding& finding);

}  // namespace samebase::flow
