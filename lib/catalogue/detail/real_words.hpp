// Words of food that the data may not have, and that are no slip of a word that it has: mullet is no millet, and batter
// no butter.
#pragma once

#include "catalogue/detail/letters.hpp"

namespace samebase::catalogue::detail {

/// The word in its one form for singular and plural.
[[nodiscard]] bool is_real_word(const Letters& word);

}  // namespace samebase::catalogue::detail
