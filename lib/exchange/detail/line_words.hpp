// What the words around the name of a written line do to it: leave it the same thing, or make it another.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "measure/line.hpp"

namespace samebase::exchange::detail {

/// ASCII letters in lower case.
[[nodiscard]] std::string lower(std::string_view text);
/// The words between spaces and commas, in lower case.
[[nodiscard]] std::vector<std::string> words_of(std::string_view text);
/// The words with a space between each two.
[[nodiscard]] std::string joined(std::span<const std::string> words);

/// The work of knife, grater and scales: the thing is the same afterwards, unless the whole phrase is a name of its
/// own.
[[nodiscard]] bool is_cut(std::string_view word);

/// How it is cut, how large, how good, how warm it is, numbers, units and little words.
[[nodiscard]] bool is_plain(const std::string& word);

/// Before "of": "juice of 1 lemon" is of the lemon.
[[nodiscard]] bool is_part_of(std::string_view word);

/// A closed list: where it comes from, which variety it is, how it tastes, and what is only praise. A name that nobody
/// knows with such a word may be known without it: "Spanish onion", "unsalted butter".
[[nodiscard]] bool is_variety(std::string_view word);

/// The same of a colour, which may be left out of a fresh vegetable or fruit only.
[[nodiscard]] bool is_colour(std::string_view word);

/// The words behind the name that make it another thing: "peas, frozen", "olives stuffed with almonds".
[[nodiscard]] std::vector<std::string> changing(const measure::WrittenLine& line);

}  // namespace samebase::exchange::detail
