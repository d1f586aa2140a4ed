#include "exchange/detail/line_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>

namespace samebase::exchange::detail {

namespace {

using Words = std::vector<std::string>;

template <std::size_t N>
constexpr std::array<std::string_view, N> table(const std::string_view (&words)[N]) {  // NOLINT: nobody counts them
    return std::to_array(words);
}

template <std::size_t N>
bool in(const std::array<std::string_view, N>& words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

constexpr auto cut =
    table({"beaten",    "blanched", "chopped",   "cleaned",  "cored",     "crumbled", "crushed", "cubed",
           "cut",       "deseeded", "deveined",  "diced",    "drained",   "flaked",   "grated",  "halved",
           "hulled",    "juiced",   "julienned", "mashed",   "melted",    "peeled",   "picked",  "pitted",
           "quartered", "rinsed",   "scrubbed",  "seeded",   "separated", "shaved",   "shelled", "shredded",
           "sifted",    "skinned",  "sliced",    "softened", "stemmed",   "toasted",  "trimmed", "washed"});

// How large, how good, how warm, and little words.
constexpr auto quality = table({"a",
                                "about",
                                "additional",
                                "all",
                                "and",
                                "approximately",
                                "assorted",
                                "best",
                                "best-quality",
                                "big",
                                "bone-in",
                                "boneless",
                                "bruised",
                                "chilled",
                                "coarse",
                                "coarsely",
                                "cold",
                                "cool",
                                "crisp",
                                "each",
                                "extra",
                                "extra-large",
                                "extra-lean",
                                "extra-virgin",
                                "fine",
                                "finely",
                                "firm",
                                "firmly",
                                "free-range",
                                "freshly",
                                "generous",
                                "good",
                                "good-quality",
                                "heaped",
                                "heaping",
                                "high-quality",
                                "home-made",
                                "homemade",
                                "hot",
                                "imported",
                                "jumbo",
                                "large",
                                "lean",
                                "level",
                                "lightly",
                                "long",
                                "loosely",
                                "low-salt",
                                "low-sodium",
                                "lukewarm",
                                "medium",
                                "medium-size",
                                "medium-sized",
                                "mini",
                                "newly",
                                "no-salt",
                                "no-salt-added",
                                "of",
                                "organic",
                                "packed",
                                "plump",
                                "preferably",
                                "pure",
                                "quality",
                                "raw",
                                "reduced-sodium",
                                "rested",
                                "ripe",
                                "roughly",
                                "salt-free",
                                "scant",
                                "seedless",
                                "skin-on",
                                "skinless",
                                "slender",
                                "small",
                                "squeezed",
                                "tender",
                                "thick",
                                "thickly",
                                "thin",
                                "thinly",
                                "tiny",
                                "unbleached",
                                "unpeeled",
                                "very",
                                "virgin",
                                "warm",
                                "well-flavored",
                                "well-flavoured",
                                "well-seasoned",
                                "whole",
                                "young"});

constexpr auto lengths = table({"cm", "inch", "inches", "mm"});

constexpr auto part_of = table({"juice", "zest", "rind", "peel", "grated", "strips"});

constexpr auto variety = table(
    {"australian",  "bartlett",   "bosc",        "bramley",   "californian", "cortland", "delicious",    "desiree",
     "dijon-style", "dutch",      "extra-sharp", "fuji",      "gala",        "garden",   "gold",         "golden",
     "granny",      "greenhouse", "hass",        "homegrown", "hungarian",   "idaho",    "italian",      "japanese",
     "jonathan",    "kipfler",    "macoun",      "maine",     "market",      "mcintosh", "mexican",      "meyer",
     "moroccan",    "navel",      "new-season",  "packham",   "persian",     "premium",  "roma",         "rome",
     "russet",      "seasonal",   "sebago",      "sharp",     "sicilian",    "smith",    "spanish",      "tart",
     "tasty",       "thai",       "truss",       "unsalted",  "valencia",    "vidalia",  "vine-ripened", "winesap",
     "yukon"});

constexpr auto colours = table({"brown", "orange", "purple", "red", "white", "yellow"});

// Behind the name these say that it is another thing: "peas, frozen".
constexpr auto other_thing = table(
    {"frozen",     "thawed",      "dried",      "tinned",       "canned",       "smoked",    "cooked",   "pickled",
     "powdered",   "gluten-free", "dairy-free", "vegan",        "plant-based",  "egg-free",  "nut-free", "lactose-free",
     "wheat-free", "stuffed",     "filled",     "coated",       "infused",      "flavoured", "flavored", "battered",
     "crumbed",    "breaded",     "candied",    "crystallised", "crystallized", "marinated", "glazed",   "crusted"});

// Before these it is the recipe that cooks: "potatoes, cooked until tender".
constexpr auto by_recipe = table({"in", "until", "as", "according", "with", "till", "for", "to"});

// What is dried after one of these is only wiped: "dill, washed and dried".
constexpr auto wet = table({"cleaned", "drained", "patted", "rinsed", "scored", "soaked", "spun", "washed", "well"});

// What follows one of these is about something else, or another day.
constexpr auto no_more = table({"or", "for", "to", "until", "such", "see", "plus", "if", "with", "from", "like"});

bool wiped(const Words& words, std::size_t dried) {
    return std::any_of(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(dried),
                       [](const std::string& word) { return in(wet, word); });
}

}  // namespace

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& c : result) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return result;
}

std::vector<std::string> words_of(std::string_view text) {
    Words result;
    for (std::size_t at = 0; at < text.size();) {
        const auto first = text.find_first_not_of(" ,;()", at);
        if (first == std::string_view::npos) break;
        const auto end = std::min(text.find_first_of(" ,;()", first), text.size());
        result.push_back(lower(text.substr(first, end - first)));
        at = end;
    }
    return result;
}

std::string joined(std::span<const std::string> words) {
    return fmt::to_string(fmt::join(words, " "));
}

bool is_cut(std::string_view word) {
    return in(cut, word);
}

bool is_plain(const std::string& word) {
    return in(cut, word) || in(lengths, word) || in(quality, word) || (word.front() >= '0' && word.front() <= '9') ||
           measure::find_unit(word).has_value();
}

bool is_part_of(std::string_view word) {
    return in(part_of, word);
}

bool is_variety(std::string_view word) {
    return in(variety, word);
}

bool is_colour(std::string_view word) {
    return in(colours, word);
}

std::vector<std::string> changing(const measure::WrittenLine& line) {
    Words result;
    const Words behind = words_of(std::string_view(line.preparation).substr(line.before.size()));
    for (std::size_t i = 0; i < behind.size() && !in(no_more, behind[i]); ++i) {
        const bool cooks = behind[i] == "cooked" && i + 1 < behind.size() && in(by_recipe, behind[i + 1]);
        const bool either = behind[i] == "cooked" && i + 1 < behind.size() && behind[i + 1] == "or";
        const bool wipes = behind[i] == "dried" && wiped(behind, i);
        const bool crumbles = behind[i] == "crumbed" && line.name.ends_with("bread");
        if (in(other_thing, behind[i]) && !cooks && !either && !wipes && !crumbles)
            result.push_back(behind[i] == "thawed" ? "frozen" : behind[i]);
    }
    return result;
}

}  // namespace samebase::exchange::detail
