// What the answers about freezers share: packs, meals and what to do when it is too late, in words.
#pragma once

#include <string>

#include "ask/thaw.hpp"
#include "show/words.hpp"

namespace samebase::show::detail {

/// "2 packs", "3 serves", "650 g" where it is loose.
[[nodiscard]] std::string packs_words(const kitchen::Kitchen& kitchen, catalogue::IngredientId id,
                                      std::int64_t quantity, int packs);

/// "tomorrow's rissoles", "Friday's lunch, cheese toastie", "rissoles on Fri 11 Dec", "everyday use today".
[[nodiscard]] std::string meal_words(const kitchen::Kitchen& kitchen, std::optional<cookbook::DishId> dish,
                                     kitchen::Meal meal, basics::Day on, basics::Day today);

/// "about an hour", "about 2 1/2 hours": to the next half hour.
[[nodiscard]] std::string about(int minutes);

/// What to do instead, and the command that does it.
[[nodiscard]] std::string words(const ask::TooLate& late, const kitchen::Kitchen& kitchen, basics::Day today);
[[nodiscard]] std::string command(const ask::TooLate& late, const kitchen::Kitchen& kitchen);

}  // namespace samebase::show::detail
