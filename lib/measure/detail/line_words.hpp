// What sort of word stands in an ingredient line: one that describes, one that is left out, one that ends the name.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace samebase::measure::detail {

using Words = std::vector<std::string_view>;

/// Before the name, words[at] says how the thing is (chopped, finely, fresh, large, 2-inch), rather than what it is.
/// Looks at the next word too: "hot water" is water, "hot sauce" is not.
[[nodiscard]] bool describes(const Words& words, std::size_t at);

/// After the first word of the name, words[at] begins what is no longer the name: "to taste", "cut into cubes",
/// "drained".
[[nodiscard]] bool ends_name(const Words& words, std::size_t at);

/// "and", "&", "then" between two describing words.
[[nodiscard]] bool joins(std::string_view word);

/// All the words from `first` on are colours.
[[nodiscard]] bool only_colours(const Words& words, std::size_t first);

/// What several kinds share: stock in "chicken or vegetable stock".
[[nodiscard]] bool shared_head(std::string_view word);

/// A count word that may stand after the name: "4 garlic cloves", "6 anchovy fillets".
[[nodiscard]] bool counts_from_behind(std::string_view unit);

}  // namespace samebase::measure::detail
