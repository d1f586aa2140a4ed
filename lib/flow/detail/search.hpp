// The ways to decide, and a bound: parts of best().
#pragma once

#include "flow/component.hpp"

namespace samebase::flow::detail {

/// Whether anything has to be decided: thawing, opening that shortens a time, or buying.
[[nodiscard]] bool nothing_to_decide(const Component& component);

/// Decides want by want: what is in use first, then what is opened, then thawed (the packs that leave least over), then
/// bought as late as possible. Quick, and often best.
[[nodiscard]] Decisions by_rule(const Component& component);

/// No decisions do better than this: thawing and opening shorten nothing, and of what is bought only the last pack is
/// rounded up.
[[nodiscard]] Value bound(const Component& component);

/// The days on which the unit can be thawed by or opened, -1 for not at all; empty where nothing is to be decided of
/// it.
[[nodiscard]] std::vector<int> choices_of(const Component& component, const Unit& unit);

/// Betters decisions as long as one unit decided otherwise, or two units that change places, does better: never worse.
/// Costs some hundred outcomes where there are many units, and stops at a limit in work where there are days in plenty.
[[nodiscard]] Outcome by_exchanging(const Component& component, Decisions decisions);

/// Tries every combination, units that are alike in one order only, where there are at most so many, and returns the
/// first of the best: exact.
[[nodiscard]] std::optional<Outcome> by_trying(const Component& component, std::int64_t most);

struct Programmed {
    Decisions decisions;
    bool proved = false;
};

/// Decides by an integer programme on the solver room. `least_unmet`, where it is not empty, is what is unmet by day in
/// the best outcome, known beforehand. Nothing where the solver found nothing, or the programme is larger than it could
/// solve in a moment.
[[nodiscard]] std::optional<Programmed> by_programme(const Component& component,
                                                     const std::vector<std::int64_t>& least_unmet = {});

}  // namespace samebase::flow::detail
