#include "measure/detail/line_words.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "measure/detail/plain.hpp"

namespace samebase::measure::detail {

namespace {

template <std::size_t N>
using Table = std::array<std::string_view, N>;

template <std::size_t N>
constexpr Table<N> sorted(Table<N> words) {
    std::sort(words.begin(), words.end());
    return words;
}

template <std::size_t N>
constexpr Table<N> table(const std::string_view (&words)[N]) {  // NOLINT: so that nobody counts the words
    return sorted(std::to_array(words));
}

template <std::size_t N>
bool in(const Table<N>& words, std::string_view word) {
    return std::binary_search(words.begin(), words.end(), word);
}

// Size, quality, freshness, heat, and how it was bought or kept.
constexpr auto describing = table({
    "about",        "additional",  "all-natural",  "assorted",   "best",          "best-quality", "big",
    "boiling",      "boneless",    "bone-in",      "canned",     "chunky",        "coarse",       "cold",
    "cool",         "crisp",       "crusty",       "day-old",    "each",          "edible",       "extra",
    "extra-large",  "extra-lean",  "extra-virgin", "fat",        "fat-free",      "fine",         "firm",
    "flat-leaf",    "free-range",  "fresh",        "full",       "generous",      "good",         "good-quality",
    "granulated",   "heaped",      "heaping",      "homemade",   "home-made",     "hulled",       "imported",
    "in-shell",     "jumbo",       "kosher",       "large",      "lean",          "leftover",     "level",
    "long",         "low-fat",     "low-salt",     "low-sodium", "lukewarm",      "medium",       "medium-grain",
    "medium-large", "medium-size", "medium-small", "mild",       "mini",          "miniature",    "more",
    "nonfat",       "non-fat",     "no-salt",      "nonstick",   "optional",      "organic",      "other",
    "perfect",      "plump",       "pure",         "quality",    "quick-cooking", "raw",          "ready-to-cook",
    "ripe",         "scant",       "seedless",     "short",      "skim-milk",     "skinless",     "skin-on",
    "slender",      "small",       "soft",         "stiff",      "store-bought",  "strong",       "superfine",
    "tender",       "tepid",       "thick",        "thin",       "tiny",          "underripe",    "unflavored",
    "unflavoured",  "unpeeled",    "unsweetened",  "very",       "virgin",        "warm",         "whole",
    "young",
});

// Past participles that do not end in "ed", or that do so and are dealt with here; and words used like them.
constexpr auto participles = table({
    "beaten",
    "broken",
    "cut",
    "drawn",
    "frozen",
    "ground",
    "hard-boiled",
    "halved",
    "julienne",
    "overripe",
    "split",
    "torn",
});

// Words in "ed" and "ly" that belong to the name: salted butter is not butter, and jelly is no adverb.
constexpr auto naming = table({
    "aged",    "aniseed",   "belly",      "bread",     "clotted",  "condensed", "corned", "cured",
    "curly",   "dandelion", "evaporated", "fermented", "flaxseed", "holy",      "jelly",  "lily",
    "linseed", "malted",    "mixed",      "pickled",   "rapeseed", "red",       "rolled", "salted",
    "seaweed", "seed",      "smoked",     "sweetened", "unsalted",
});

// After these a word that would describe is part of the name.
constexpr auto ground_meats = table({"beef", "chuck", "lamb", "meat", "pork", "sirloin", "turkey", "veal"});
constexpr auto hot_things = table({"chili", "chilies", "chilli", "chillies", "dog", "dogs", "green", "mustard",
                                   "paprika", "pepper", "peppers", "red", "sauce", "sausage", "sausages", "smoked"});
constexpr auto whole_things = table({"grain", "wheat", "wholemeal"});
constexpr auto powders = table({"milk", "sugar"});

// What follows one of these is about the ingredient, not its name.
constexpr auto ends = table({
    "about",  "according", "approximately", "as",    "at",   "available",  "because", "but",  "each",
    "enough", "for",       "from",          "if",    "in",   "including",  "into",    "left", "like",
    "more",   "on",        "optional",      "or",    "plus", "preferably", "see",     "such", "that",
    "to",     "until",     "weighing",      "which", "with", "without",
});

constexpr auto heads = table({
    "bean",   "beans",  "bread",    "breadcrumbs", "broth", "cabbage",   "cheese",  "crumbs",  "flour",
    "grapes", "juice",  "lentils",  "lettuce",     "mince", "mushrooms", "mustard", "noodles", "nuts",
    "onion",  "onions", "potatoes", "rice",        "seeds", "stock",     "sugar",   "vinegar", "wine",
});

constexpr auto colours =
    table({"black", "brown", "dark", "green", "light", "pink", "purple", "red", "white", "yellow"});

constexpr auto behind = table({"bulb", "clove", "fillet", "floret", "rasher", "slice", "spear", "sprig", "stalk"});

bool ends_in(std::string_view word, std::string_view tail) {
    return word.size() > tail.size() + 2 && word.ends_with(tail);
}

/// The word in lower case, without a possible full stop or apostrophe at its end; "" where it is too long for any
/// table.
std::string folded(std::string_view word) {
    if (word.size() > 24) return {};
    return lower(word);
}

bool participle(const std::string& word) {
    if (in(naming, word)) return false;
    return in(participles, word) || ends_in(word, "ed");
}

/// "2-inch", "store-bought", "medium-sized", "oil-cured": by what comes first or last.
bool hyphenated_description(const std::string& word) {
    const auto hyphen = word.rfind('-');
    if (hyphen == std::string::npos || hyphen == 0) return false;
    if (is_digit(word[0])) return true;
    const std::string last = word.substr(hyphen + 1);
    return last == "size" || last == "style" || last == "free" || last == "added" || last == "cured" || last == "fat" ||
           last == "sodium" || last == "quality" || participle(last);
}

std::string next_word(const Words& words, std::size_t at) {
    return at + 1 < words.size() ? folded(words[at + 1]) : std::string();
}

}  // namespace

bool describes(const Words& words, std::size_t at) {
    const std::string word = folded(words[at]);
    const std::string next = next_word(words, at);
    if (word == "ground") return !in(ground_meats, next);
    if (word == "hot") return !in(hot_things, next);
    if (word == "whole") return !in(whole_things, next);
    if (word == "powdered") return !in(powders, next);
    if (is_digit(words[at][0])) return true;
    if (in(describing, word) || participle(word)) return true;
    if (ends_in(word, "ly") && !in(naming, word)) return true;
    return hyphenated_description(word);
}

bool ends_name(const Words& words, std::size_t at) {
    const std::string word = folded(words[at]);
    if (in(ends, word) || is_digit(words[at][0])) return true;
    if (word.find('-') == std::string::npos && participle(word)) return true;
    return ends_in(word, "ly") && !in(naming, word) && at + 1 < words.size() && participle(next_word(words, at));
}

bool joins(std::string_view word) {
    return word == "and" || word == "&" || word == "then";
}

bool only_colours(const Words& words, std::size_t first) {
    return std::all_of(words.begin() + static_cast<std::ptrdiff_t>(first), words.end(),
                       [](std::string_view word) { return in(colours, folded(word)); });
}

bool shared_head(std::string_view word) {
    return in(heads, folded(word));
}

bool counts_from_behind(std::string_view unit) {
    return in(behind, unit);
}

}  // namespace samebase::measure::detail
