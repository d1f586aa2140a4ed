// Kitchens in which lunches are to be found: small ones, so that every plan can be tried. The same number gives the
// same kitchen on every machine.
#pragma once

#include <cstdint>

#include "kitchen/kitchen.hpp"

namespace samebase::tests {

struct LunchWorld {
    kitchen::Kitchen kitchen;
    basics::Day today;
    int days = 2;
};

/// Two or three people and days, of whom some avoid milk or dislike something; perishables, things that keep, leftovers
/// in the fridge and the freezer, loose and in packs; a few lunch dishes, dinners that leave something, a plan with
/// dinners and now and then a lunch, history, marks, standing uses. Nothing is cut or opened.
[[nodiscard]] LunchWorld random_lunch_world(std::uint64_t number);

}  // namespace samebase::tests
