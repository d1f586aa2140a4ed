// Words and figures as answers show them: amounts, money, days, and lines that fit a screen.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "basics/day.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::show {

inline constexpr std::size_t screen_width = 80;

/// How an answer is to be shown.
struct Manner {
    bool why = false;     ///< every line of every sum
    bool all = false;     ///< every row
    bool colour = false;  ///< on a terminal; never the only sign
};

/// "$3.85", "-$0.40"; "3.85 CHF" where the currency's sign is not known.
[[nodiscard]] std::string money(basics::Money money, std::string_view currency);
/// The same with a plus before what is above nothing.
[[nodiscard]] std::string signed_money(basics::Money money, std::string_view currency);

/// "500 g", "3", "2 serves": the amount with its unit, pieces as a bare number.
[[nodiscard]] std::string amount(const measure::Amount& amount, const catalogue::Ingredient& ingredient);

/// "500 g beef mince": the amount and what it is of.
[[nodiscard]] std::string named(const measure::Amount& amount, catalogue::IngredientId of,
                                const kitchen::Kitchen& kitchen);

/// "today", "tomorrow", "Fri 4 Dec"; "4 Dec 2027" where it is more than half a year away.
[[nodiscard]] std::string day(basics::Day day, basics::Day today);

/// The same in a sentence: "today", "tomorrow", "on Fri 4 Dec".
[[nodiscard]] std::string on_day(basics::Day day, basics::Day today);

/// "4", "4.1", "half" is never used: serves in thousandths.
[[nodiscard]] std::string serves(std::int64_t thousandths);

/// Breaks text at spaces so that no line is longer than `width`; lines after the first begin with `indent` spaces.
/// Bytes of UTF-8 that continue a character are not counted.
[[nodiscard]] std::string wrapped(std::string_view text, std::size_t indent = 0, std::size_t width = screen_width);

/// Characters, as a terminal counts them for Latin text.
[[nodiscard]] std::size_t length(std::string_view text);
/// Padded with spaces, or cut with an ellipsis, to exactly `width` characters.
[[nodiscard]] std::string fitted(std::string_view text, std::size_t width);

/// "a", "a and b", "a, b and c".
[[nodiscard]] std::string listed(const std::vector<std::string>& words);

/// As one or more words of a command line: with an apostrophe in it, in quotes.
[[nodiscard]] std::string shell(const std::string& text);

[[nodiscard]] std::string capitalised(std::string text);

}  // namespace samebase::show
