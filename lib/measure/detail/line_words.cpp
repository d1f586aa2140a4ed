#include "measure/detail/line_words.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "measure/detail/plain.hpp"
#include "measure/measure_set.hpp"

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
    "bean",  "beans",   "bread",    "breadcrumbs", "broth",     "cabbage", "cheese",  "crumbs",  "flour", "grapes",
    "juice", "lentils", "lettuce",  "mince",       "mushrooms", "mustard", "noodles", "nuts",    "oil",   "oils",
    "onion", "onions",  "potatoes", "rice",        "seeds",     "stock",   "sugar",   "vinegar", "wine",
});

// Butter is none: "butter or olive oil".
constexpr auto oils = table({
    "canola",
    "coconut",
    "corn",
    "grapeseed",
    "hazelnut",
    "nut",
    "olive",
    "peanut",
    "rapeseed",
    "safflower",
    "sesame",
    "soybean",
    "sunflower",
    "vegetable",
    "walnut",
});

// Behind a participle these are still about it: how, which way, how far.
constexpr auto manners_behind = table({
    "&",    "across", "again",      "all",  "and",        "apart",      "away",  "by",  "crosswise", "dry",
    "half", "down",   "halfway",    "just", "lengthways", "lengthwise", "of",    "off", "once",      "open",
    "out",  "over",   "separately", "then", "through",    "together",   "twice", "up",  "well",      "wise",
});

constexpr auto sizes = table({"large", "medium", "medium-large", "medium-size", "medium-sized", "small"});

constexpr auto no_names = table({
    "&",
    "and",
    "as",
    "for",
    "from",
    "in",
    "of",
    "on",
    "optional",
    "or",
    "pinch",
    "plus",
    "to",
    "with",
});

// A colour or a taste alone is no name: "1 red, ripe tomato", "sweet or hot paprika".
constexpr auto colours = table({
    "bitter", "bittersweet", "black", "brown",     "dark", "dry",   "green", "hot",   "light",  "mild",
    "pink",   "purple",      "red",   "semisweet", "sour", "spicy", "sweet", "white", "yellow",
});

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
    if (measures_or_ends(words[at])) return true;
    if (word == "mixed") return in(ends, next_word(words, at));
    if (word.find('-') == std::string::npos && participle(word)) return true;
    return ends_in(word, "ly") && !in(naming, word) && at + 1 < words.size() && participle(next_word(words, at));
}

bool measures_or_ends(std::string_view word) {
    return is_digit(word[0]) || in(ends, folded(word));
}

bool goes_on(const Words& words, std::size_t at) {
    const std::string word = folded(words[at]);
    return in(manners_behind, word) || ends_name(words, at) || describes(words, at) || find_unit(word).has_value();
}

bool joins(std::string_view word) {
    return word == "and" || word == "&" || word == "then" || word == "or";
}

bool is_size(std::string_view word) {
    return in(sizes, folded(word));
}

bool never_names(std::string_view word) {
    return in(no_names, folded(word));
}

bool only_colours(const Words& words, std::size_t first) {
    return std::all_of(words.begin() + static_cast<std::ptrdiff_t>(first), words.end(),
                       [](std::string_view word) { return in(colours, folded(word)); });
}

bool shares_head(std::string_view kind, std::string_view head) {
    const std::string folded_head = folded(head);
    const bool of_oil = folded_head == "oil" || folded_head == "oils";
    return in(heads, folded_head) && !in(heads, folded(kind)) && (!of_oil || in(oils, folded(kind)));
}

bool counts_from_behind(std::string_view unit) {
    return in(behind, unit);
}

}  // namespace samebase::measure::detail
