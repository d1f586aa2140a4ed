// Amounts as a hand measures them, for everything that a cook reads. What is kept, computed and printed as JSON or in a
// command stays exact.
//
// Grams and millilitres to 1 below 10, to 5 below 100, to 10 below a kilogram or litre, to 50 above. Vegetables and
// fruit in pieces, up to six of them: large ones in quarters, small ones whole. What is measured with spoons, and every
// liquid, below a tablespoon of 20 mL in teaspoons of 5 mL, by its density. Serves in halves. (Common practice.)
#pragma once

#include <string>

#include "catalogue/catalogue.hpp"

namespace samebase::catalogue {

/// "500 g", "1.25 kg", "1/2 tsp", "3", "1/4", "2 serves", "a pinch".
[[nodiscard]] std::string in_hand(const measure::Amount& amount, const Ingredient& ingredient);

/// The same with its name: "500 g beef mince", "3 capsicums", "1 egg", "a pinch of saffron".
[[nodiscard]] std::string in_hand_named(const measure::Amount& amount, const Ingredient& ingredient);

/// As weighed or counted, for stock and for what a cook said: whole grams as they are, even of what is measured in
/// pieces or spoons; what is left of a gram is rounded away.
[[nodiscard]] std::string weighed(const measure::Amount& amount, const Ingredient& ingredient);

/// "1/2 serve", "2 serves", of serves in thousandths.
[[nodiscard]] std::string serves_in_hand(std::int64_t thousandths);

/// The same with its name: "185 g tinned tuna", "1 egg".
[[nodiscard]] std::string weighed_named(const measure::Amount& amount, const Ingredient& ingredient);

/// "2 packs", "half a pack", "13 1/2 packs": packs in thousandths, in halves.
[[nodiscard]] std::string packs_in_hand(std::int64_t thousandths);

/// "capsicums", "eggs", "potatoes", as the catalogue lists a plural or a singular among its other names; else the name
/// as it is.
[[nodiscard]] std::string name_of(const Ingredient& ingredient, bool several);

}  // namespace samebase::catalogue
