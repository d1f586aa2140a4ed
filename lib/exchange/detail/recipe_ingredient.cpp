#include "exchange/detail/recipe_ingredient.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>

namespace samebase::exchange::detail {

namespace {

using catalogue::IngredientId;
using Words = std::vector<std::string>;

constexpr std::size_t most_nearest = 3;
constexpr std::size_t most_words = 12;  ///< that stand before the name of an ingredient
constexpr std::size_t longest_name = 200;

template <std::size_t N>
bool in(const std::array<std::string_view, N>& words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// The work of knife, grater and scales: the thing is the same afterwards, unless the whole phrase is a name of its own.
constexpr std::array<std::string_view, 40> cut{
    "beaten",    "blanched", "chopped",   "cleaned",  "cored",     "crumbled", "crushed", "cubed",
    "cut",       "deseeded", "deveined",  "diced",    "drained",   "flaked",   "grated",  "halved",
    "hulled",    "juiced",   "julienned", "mashed",   "melted",    "peeled",   "picked",  "pitted",
    "quartered", "rinsed",   "scrubbed",  "seeded",   "separated", "shaved",   "shelled", "shredded",
    "sifted",    "skinned",  "sliced",    "softened", "stemmed",   "toasted",  "trimmed", "washed"};

// How large, how good, how warm, and little words.
constexpr std::array<std::string_view, 83> quality{
    "a",          "about",    "additional",   "all",         "and",          "approximately",
    "assorted",   "best",     "best-quality", "big",         "bone-in",      "boneless",
    "bruised",    "chilled",  "coarse",       "coarsely",    "cold",         "cool",
    "crisp",      "each",     "extra",        "extra-large", "extra-lean",   "extra-virgin",
    "fine",       "finely",   "firm",         "firmly",      "free-range",   "freshly",
    "generous",   "good",     "good-quality", "heaped",      "heaping",      "high-quality",
    "home-made",  "homemade", "hot",          "imported",    "jumbo",        "large",
    "lean",       "level",    "lightly",      "long",        "loosely",      "low-salt",
    "low-sodium", "lukewarm", "medium",       "medium-size", "medium-sized", "mini",
    "no-salt",    "of",       "organic",      "packed",      "plump",        "pure",
    "quality",    "raw",      "rested",       "ripe",        "roughly",      "scant",
    "seedless",   "skin-on",  "skinless",     "slender",     "small",        "tender",
    "thick",      "thickly",  "thin",         "thinly",      "tiny",         "unpeeled",
    "very",       "virgin",   "warm",         "whole",       "young"};

// Before "of": "juice of 1 lemon" is of the lemon.
constexpr std::array<std::string_view, 5> part_of{"juice", "zest", "rind", "peel", "grated"};

// Behind the name these say that it is another thing: "peas, frozen".
constexpr std::array<std::string_view, 17> other_thing{
    "frozen",      "thawed",   "dried",    "tinned",       "canned",     "smoked",
    "cooked",      "pickled",  "powdered", "gluten-free",  "dairy-free", "vegan",
    "plant-based", "egg-free", "nut-free", "lactose-free", "wheat-free"};

// Before these it is the recipe that cooks: "potatoes, cooked until tender".
constexpr std::array<std::string_view, 8> by_recipe{"in", "until", "as", "according", "with", "till", "for", "to"};

// What follows one of these is about something else, or another day.
constexpr std::array<std::string_view, 11> no_more{"or",   "for", "to",   "until", "such", "see",
                                                   "plus", "if",  "with", "from",  "like"};

bool is_plain(const std::string& word) {
    return in(cut, word) || in(quality, word) || (word.front() >= '0' && word.front() <= '9') ||
           measure::find_unit(word).has_value();
}

std::string joined(std::span<const std::string> words) {
    return fmt::format("{}", fmt::join(words, " "));
}

std::string spaced(std::string id) {
    std::replace(id.begin(), id.end(), '-', ' ');
    return id;
}

bool holds_can(const Words& words) {
    return std::any_of(words.begin(), words.end(), [](const std::string& word) {
        const auto unit = measure::find_unit(word);
        return unit && unit->name == "can";
    });
}

/// "rice and noodles" are no rice noodles, though the names of things are compared without "and".
bool joins_two(std::string_view name) {
    constexpr std::array<std::string_view, 5> joints{"and", "&", "or", "plus", "with"};
    const Words words = words_of(name);
    return std::any_of(words.begin(), words.end(), [&](const std::string& word) { return in(joints, word); });
}

/// Whether the words that the name has not are long enough for one edit to be a slip: "carots" for "carrots". Short
/// words are often others: "dash" and "dashi", "lardo" and "lard".
bool long_slip(std::string_view written, std::string_view name) {
    constexpr std::size_t least = 6;
    const Words there = words_of(name);
    const Words words = words_of(written);
    return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
        return word.size() >= least || std::find(there.begin(), there.end(), word) != there.end();
    });
}

/// The words behind the name that make it another thing. Not "cooked or raw", which is either; nor what the cook dries
/// ("rinsed and dried").
Words changing(const measure::WrittenLine& line) {
    Words result;
    const Words behind = words_of(std::string_view(line.preparation).substr(line.before.size()));
    for (std::size_t i = 0; i < behind.size() && !in(no_more, behind[i]); ++i) {
        const bool cooks = behind[i] == "cooked" && i + 1 < behind.size() && in(by_recipe, behind[i + 1]);
        const bool either = i + 1 < behind.size() && behind[i + 1] == "or";
        const bool wiped = behind[i] == "dried" && i > 0 && behind[i - 1] == "and";
        if (in(other_thing, behind[i]) && !cooks && !either && !wiped)
            result.push_back(behind[i] == "thawed" ? "frozen" : behind[i]);
    }
    return result;
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

bool is_water(std::string_view name) {
    constexpr std::array<std::string_view, 10> warmth{"boiling", "boiled", "hot",      "cold", "iced",
                                                      "ice",     "warm",   "lukewarm", "tap",  "cool"};
    const Words words = words_of(name);
    return !words.empty() && words.back() == "water" &&
           std::all_of(words.begin(), words.end() - 1, [&](const std::string& word) { return in(warmth, word); });
}

Names::Names(const catalogue::Catalogue& catalogue) : catalogue_(&catalogue) {
    std::uint32_t key = 0;
    for (const auto& thing : catalogue.ingredients()) {
        index_.add(key, 0, thing.name);
        index_.add(key, 0, spaced(thing.id));
        for (const auto& other : thing.also) index_.add(key, 0, other);
        if (thing.name.find(' ') != std::string::npos) long_names_.emplace(lower(thing.name), IngredientId{key});
        ++key;
    }
    index_.finish();
}

/// What the words might be instead: the things whose names have them for a part, then those that are called like the
/// shorter words, like the last of them, and the family of the first that was found.
Called Names::not_called(const std::string& words, const std::string& shorter) const {
    std::vector<IngredientId> ids;
    const auto add = [&](IngredientId id) {
        const bool there = std::find(ids.begin(), ids.end(), id) != ids.end();
        if (!there && ids.size() < most_nearest) ids.push_back(id);
    };
    Words phrases{words, shorter};
    const Words all = words_of(words);
    phrases.insert(phrases.end(), all.rbegin(), all.rend());
    for (const std::string& phrase : phrases) {
        for (const auto& f : index_.find(phrase).found) add(IngredientId{f.key});
        if (!ids.empty()) break;
    }
    if (!ids.empty()) {
        for (const auto id : catalogue_->members((*catalogue_)[ids.front()].family)) add(id);
    }
    for (const auto& f : index_.find(words).nearest) add(IngredientId{f.key});
    Called result;
    for (const auto id : ids) result.nearest.push_back((*catalogue_)[id].name);
    return result;
}

Called Names::called(const std::string& words) const {
    const auto match = index_.find(words);
    const auto is_other = [&](const catalogue::Found& f) { return joins_two(words) && !joins_two(f.name); };
    if (!match.whole || std::any_of(match.found.begin(), match.found.end(), is_other)) return not_called(words);
    const bool cooked = (*catalogue_)[IngredientId{match.found.front().key}].kind == catalogue::Kind::cooked;
    if (match.found.front().distance > (cooked ? 0 : 1) ||
        (match.found.front().distance == 1 && !long_slip(words, match.found.front().name))) {
        return not_called(words);
    }
    Called result;
    if (match.found.size() == 1) {
        result.ingredient = IngredientId{match.found.front().key};
        if (match.found.front().distance > 0) result.slip_of = match.found.front().name;
        return result;
    }
    result.several = true;
    for (const auto& f : match.found) {
        if (result.nearest.size() < most_nearest) result.nearest.push_back((*catalogue_)[IngredientId{f.key}].name);
    }
    return result;
}

std::optional<IngredientId> Names::exact(const std::string& words) const {
    const Called found = called(words);
    return found.slip_of.empty() ? found.ingredient : std::nullopt;
}

/// The thing whose whole name, of several words, is all that stands between the amount and the first comma: "peas in
/// pod", "lamb shoulder diced". Not where the name begins with the knife's work ("mashed potato"), which may be that of
/// the recipe, unless it is counted in serves.
std::optional<IngredientId> Names::letter_for_letter(const measure::WrittenLine& line) const {
    const Words words = words_of(std::string_view(line.original).substr(0, line.original.find(',')));
    const auto ours = [&](std::size_t first) {
        return std::all_of(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(first), [](const auto& word) {
            return measure::find_unit(word) || word == "serve" || word == "serves" ||
                   word.find_first_not_of("0123456789./") == std::string::npos;
        });
    };
    for (std::size_t first = 0; first + 1 < words.size() && ours(first); ++first) {
        const auto found = long_names_.find(joined(std::span(words).subspan(first)));
        if (found == long_names_.end()) continue;
        const bool in_serves = line.unit == "serve" && (*catalogue_)[found->second].in_serves;
        return !in(cut, words[first]) || in_serves ? std::optional(found->second) : std::nullopt;
    }
    return std::nullopt;
}

/// "minced garlic" is garlic, "minced beef" is not beef; "ground cumin" is cumin, "ground almonds" are no almonds;
/// "whole cumin" is not what cumin is, nor "thick cream" cream.
bool Names::only_cut(const Words& dropped, IngredientId id) const {
    const auto of_family = [&](std::string_view family) {
        const auto found = catalogue_->family(family);
        return found && catalogue_->belongs(id, *found);
    };
    return std::all_of(dropped.begin(), dropped.end(), [&](const std::string& word) {
        if (word == "minced") return !of_family("meat") && !of_family("seafood");
        if (word == "ground") return of_family("seasonings");
        if (word == "whole") return !of_family("seasonings");
        if (word == "thick" || word == "thin") return !of_family("dairy");
        return true;
    });
}

/// A tin of tomatoes is tinned tomatoes where there is such a thing; else what usually comes in tins.
Called Names::in_container(const measure::WrittenLine& line, const std::string& words) const {
    if (const auto tinned = exact(fmt::format("tinned {}", words))) return {tinned, {}, {}};
    Called plain = called(words);
    if (!plain.ingredient) return plain;
    const auto& thing = (*catalogue_)[*plain.ingredient];
    const bool comes_so = thing.piece_mg.contains("can") || thing.piece_mg.contains("tin") ||
                          (thing.pack && (thing.pack->name == "can" || thing.pack->name == "tin")) ||
                          thing.kind == catalogue::Kind::made;
    return comes_so ? plain : not_called(fmt::format("tinned {}", line.name));
}

Called Names::of(const measure::WrittenLine& line) const {
    const Words before = words_of(line.before);
    if (before.size() > most_words || line.name.size() > longest_name) return not_called(line.name);
    if (const auto by_letter = letter_for_letter(line)) {
        const Words own = words_of((*catalogue_)[*by_letter].name);
        const Words changed = changing(line);
        const bool same = std::all_of(changed.begin(), changed.end(), [&](const std::string& word) {
            return std::find(own.begin(), own.end(), word) != own.end();
        });
        if (same) return {by_letter, {}, {}};
    }
    const bool of_it = !before.empty() && before.back() == "of";
    Words kept;
    Words dropped;
    for (const std::string& word : before) {
        const bool plain = is_plain(word) || word == "minced" || word == "ground" || (of_it && in(part_of, word));
        (plain ? dropped : kept).push_back(word);
    }
    const Words name = words_of(line.name);
    for (const std::string& word : changing(line)) {
        const auto is_there = [&](const Words& words) {
            return std::find(words.begin(), words.end(), word) != words.end();
        };
        if (!is_there(kept) && !is_there(name)) kept.push_back(word);
    }
    kept.push_back(line.name);
    const std::string short_name = joined(kept);
    if (line.unit == "can" || holds_can(before)) return in_container(line, short_name);
    Called result = called(short_name);
    if (!result.ingredient && !result.several) result = not_called(short_name, line.name);
    if (result.ingredient && !only_cut(dropped, *result.ingredient))
        result = not_called(line.before + " " + line.name, line.name);
    if (of_it || dropped.empty()) return result;
    const auto long_one = exact(fmt::format("{} {}", joined(before), line.name));
    if (!long_one || long_one == result.ingredient) return result;
    const bool knife = std::any_of(dropped.begin(), dropped.end(), [](const auto& word) { return in(cut, word); });
    if (result.ingredient && knife) {
        return {std::nullopt, {}, {(*catalogue_)[*result.ingredient].name, (*catalogue_)[*long_one].name}, true};
    }
    return {long_one, {}, {}};
}

}  // namespace samebase::exchange::detail
