// What each eater's serve of a dish holds: the common serve, or the serves apart that the dish defines for those who
// avoid what it holds.
#pragma once

#include <span>
#include <utility>
#include <vector>

#include "kitchen/kitchen.hpp"

namespace samebase::kitchen {

/// By ingredient handle: what it counts as holding. A leftover holds what the dishes hold that its lots, or the plan,
/// came from.
using Holds = std::vector<catalogue::AllergenSet>;
[[nodiscard]] Holds held_allergens(const Kitchen& kitchen);

struct Serve {
    /// The dish's separate serves that are put together for this eater, in the dish's order; empty: the common serve.
    std::vector<const cookbook::SeparateServe*> apart;
    catalogue::AllergenSet holds;  ///< what it holds in the end, optional lines left out

    /// Their swaps, of each line the first.
    [[nodiscard]] std::vector<std::pair<catalogue::IngredientId, catalogue::IngredientId>> swaps() const;
};

/// The serve of someone who avoids these allergens, where `swaps` are for all: the common one where that holds none of
/// them, else with every separate serve that is there for one that it holds. Where `holds` shares something with
/// `avoids` even so, the dish is not for them. The dish's pointers live as long as the dish.
[[nodiscard]] Serve serve_for(const cookbook::Dish& dish, catalogue::AllergenSet avoids,
                              std::span<const LineSwap> swaps, const Holds& holds);

}  // namespace samebase::kitchen
