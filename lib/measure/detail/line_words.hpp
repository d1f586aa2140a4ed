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

/// Behind the name, words[at] may stand after a participle that is about the name: "cut lengthwise", "trimmed of fat",
/// "diced small". Any other word makes a compound of what is before it: "honey coated cashews".
[[nodiscard]] bool goes_on(const Words& words, std::size_t at);

/// A number, or a word after which the line is about something else: "about 3 inches".
[[nodiscard]] bool measures_or_ends(std::string_view word);

/// "and", "&", "then", "or" between two describing words: "peeled and chopped", "fresh or frozen".
[[nodiscard]] bool joins(std::string_view word);

/// Only how large: "large" in "2 red large onions".
[[nodiscard]] bool is_size(std::string_view word);

/// No name by itself: "or", "plus", "to", "pinch".
[[nodiscard]] bool never_names(std::string_view word);

/// All the words from `first` on are colours or tastes.
[[nodiscard]] bool only_colours(const Words& words, std::size_t first);

/// Whether `kind` is one of several that share the head: chicken and stock in "chicken or vegetable stock".
[[nodiscard]] bool shares_head(std::string_view kind, std::string_view head);

/// A count word that may stand after the name: "4 garlic cloves", "6 anchovy fillets".
[[nodiscard]] bool counts_from_behind(std::string_view unit);

}  // namespace samebase::measure::detail
