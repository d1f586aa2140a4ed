// Words and figures as answers show them: amounts, money, days, and lines that fit a screen.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "basics/day.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::show {

/// Characters of a line where nothing else is said.
inline constexpr std::size_t usual_width = 80;

/// The width that lines are broken at. The program says it once, before it writes anything; else `usual_width`.
[[nodiscard]] std::size_t screen_width();
/// At least 40: on less, everything wraps.
void set_screen_width(std::size_t width);

/// How an answer is to be shown.
struct Manner {
    bool why = false;     ///< every line of every sum
    bool all = false;     ///< every row
    bool colour = false;  ///< on a terminal; never the only sign
};

enum class Colour : std::uint8_t { red, yellow };

/// The text in that colour where the manner has colour, else as it is.
[[nodiscard]] std::string in_colour(const std::string& text, Colour colour, const Manner& manner);

/// Once on a screen that is about cooking or thawing.
inline constexpr std::string_view advice = "Local food-safety advice and labels come first.";

/// "$3.85", "-$0.40"; "3.85 CHF" where the currency's sign is not known.
[[nodiscard]] std::string money(basics::Money money, std::string_view currency);
/// The same with a plus before what is above nothing.
[[nodiscard]] std::string signed_money(basics::Money money, std::string_view currency);

/// To whole units from five up, where cents decide nothing: "$14"; less is exact, without empty cents: "$4.50", "$3".
[[nodiscard]] std::string about_money(basics::Money money, std::string_view currency);

/// As a hand measures it (catalogue/hand.hpp): "500 g", "3", "2 serves".
[[nodiscard]] std::string amount(const measure::Amount& amount, const catalogue::Ingredient& ingredient);

/// "500 g beef mince", "3 capsicums".
[[nodiscard]] std::string named(const measure::Amount& amount, catalogue::IngredientId of,
                                const kitchen::Kitchen& kitchen);

/// "today", "tomorrow", "Fri 4 Dec"; "4 Dec 2027" where it is more than half a year away.
[[nodiscard]] std::string day(basics::Day day, basics::Day today);

/// The same in a sentence: "today", "tomorrow", "on Fri 4 Dec".
[[nodiscard]] std::string on_day(basics::Day day, basics::Day today);

/// "today", "tomorrow", "Friday" within a week, else as day() says it.
[[nodiscard]] std::string near_day(basics::Day day, basics::Day today);
/// The same as whose it is: "today's", "Friday's".
[[nodiscard]] std::string of_day(basics::Day day, basics::Day today);

/// "4", "4 1/2": of serves in thousandths.
[[nodiscard]] std::string serves(std::int64_t thousandths);

/// "1 pack", "3 packs".
[[nodiscard]] std::string packs(std::int64_t count);
/// "3 bags", "1 bunch", "2 bunches".
[[nodiscard]] std::string counted(std::int64_t count, const std::string& thing);

/// Breaks text at spaces so that no line is longer than `width`; lines after the first begin with `indent` spaces.
[[nodiscard]] std::string wrapped(std::string_view text, std::size_t indent = 0, std::size_t width = screen_width());

/// Characters, as a terminal counts them for Latin text: what follows in UTF-8 and what sets a colour are not counted.
[[nodiscard]] std::size_t length(std::string_view text);
/// Padded with spaces, or cut with an ellipsis, to exactly `width` characters.
[[nodiscard]] std::string fitted(std::string_view text, std::size_t width);

/// "a", "a and b", "a, b and c".
[[nodiscard]] std::string listed(const std::vector<std::string>& words);

/// As one or more words of a command line: with an apostrophe in it, in quotes.
[[nodiscard]] std::string shell(const std::string& text);

[[nodiscard]] std::string capitalised(std::string text);

}  // namespace samebase::show
