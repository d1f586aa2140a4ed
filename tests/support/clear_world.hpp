// Kitchens to be cleared: small ones that can be searched whole, and full ones with all shipped dishes. The same number
// gives the same kitchen on every machine.
#pragma once

#include <cstdint>
#include <memory>

#include "kitchen/kitchen.hpp"

namespace samebase::tests {

struct ClearWorld {
    kitchen::Kitchen kitchen;
    basics::Day today;
    basics::Day until;
};

struct ClearSize {
    int days = 2;
    int perishables = 3;
    int keepers = 2;
    int dishes = 4;
    int lunch_dishes = 1;
};

/// A world of its own: a few perishables with one to three lots each (some of them cooked leftovers, that nobody
/// sells), a few things that keep (some frozen, some not there), a few dishes, marks, history, standing nights, a plan
/// that follows and standing uses. Nobody avoids anything and nothing stands in for anything.
[[nodiscard]] ClearWorld random_clear_world(std::uint64_t number, const ClearSize& size);

/// The household, its pantry and freezers as given, no plan; crispers and fridge filled as after a large shopping,
/// some days ago. Ten days.
[[nodiscard]] ClearWorld full_clear_world(std::uint64_t number, const kitchen::Kitchen& household);

}  // namespace samebase::tests
