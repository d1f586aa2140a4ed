// The less usual ways in which a line names a thing: by a part of it, with its variety, in a form of its own.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>

#include "exchange/detail/recipe_ingredient.hpp"

namespace samebase::exchange::detail {

namespace {

using catalogue::IngredientId;
using Words = std::vector<std::string>;

/// Whether the line speaks of the thing as it grew or was caught: a sprig, "fresh", a weight of fish. Spices that are
/// ground or grated in the line are meant dried.
bool speaks_of_fresh(const Words& words, const measure::WrittenLine& line, bool fish) {
    constexpr std::array<std::string_view, 5> grown{"sprig", "bunch", "leaf", "handful", "branch"};
    constexpr std::array<std::string_view, 8> worked{"ground",  "grated", "dried",  "cracked",
                                                     "crushed", "tinned", "canned", "drained"};
    if (std::find_first_of(words.begin(), words.end(), worked.begin(), worked.end()) != words.end()) return false;
    if (std::find(words.begin(), words.end(), "fresh") != words.end()) return true;
    if (!fish) return std::find(grown.begin(), grown.end(), line.unit) != grown.end();
    const auto* amount = line.amount ? std::get_if<measure::Amount>(&line.amount->amount) : nullptr;
    return amount != nullptr && amount->dimension() == measure::Dimension::mass;
}

}  // namespace

/// The thing of which the last word names a part: "parsley leaves", "cauliflower florets", "lemon zest", "cheddar
/// cheese". Lime leaves are no lime, and mustard leaves no mustard.
std::optional<IngredientId> Names::whole_of(const Words& words) const {
    struct Part {
        std::string_view word;
        std::array<std::string_view, 6> families;
    };
    static constexpr std::array<std::string_view, 6> leafy{"herbs",     "salad-leaves", "leafy-greens",
                                                           "brassicas", "asian-greens", "stem-vegetables"};
    static constexpr std::array<std::string_view, 6> green{"vegetables", "herbs", "", "", "", ""};
    static constexpr std::array<std::string_view, 6> citrus{"citrus", "", "", "", "", ""};
    static constexpr std::array<std::string_view, 6> grown{"vegetables", "fruit", "", "", "", ""};
    static constexpr std::array parts{Part{"leaf", leafy},
                                      Part{"leaves", leafy},
                                      Part{"stems", green},
                                      Part{"stalks", green},
                                      Part{"sprigs", leafy},
                                      Part{"florets", green},
                                      Part{"flowerets", green},
                                      Part{"zest", citrus},
                                      Part{"rind", citrus},
                                      Part{"peel", citrus},
                                      Part{"wedges", grown},
                                      Part{"slices", grown},
                                      Part{"wedge", grown},
                                      Part{"slice", grown},
                                      Part{"halves", {"vegetables", "fruit", "nuts", "chicken-pieces", "", ""}},
                                      Part{"meats", {"nuts", "", "", "", "", ""}},
                                      Part{"flesh", grown},
                                      Part{"pulp", grown},
                                      Part{"cheese", {"cheese", "", "", "", "", ""}},
                                      Part{"cubes", grown}};
    if (words.size() < 2) return std::nullopt;
    const auto* part = std::find_if(parts.begin(), parts.end(), [&](const Part& p) { return p.word == words.back(); });
    if (part == parts.end()) return std::nullopt;
    const auto id = exact(joined(std::span(words).first(words.size() - 1)));
    const bool has = id && std::any_of(part->families.begin(), part->families.end(), [&](std::string_view family) {
                         return !family.empty() && of_family(*id, family);
                     });
    const bool dried = has && (*catalogue_)[*id].kind == catalogue::Kind::made && !of_family(*id, "cheese");
    return has && !dried ? id : std::nullopt;
}

/// What nobody knows by all its words, by those that are neither its variety nor its colour, and as the whole of a
/// part.
std::optional<IngredientId> Names::plainer(const Words& words) const {
    if (const auto whole = whole_of(words)) return whole;
    Words plain;
    bool coloured = false;
    for (const std::string& word : words) {
        if (is_variety(word)) continue;
        const bool colour = is_colour(word) && words.size() > 1 && word != words.back();
        coloured |= colour;
        if (!colour) plain.push_back(word);
    }
    if (plain.size() == words.size() || plain.empty()) return std::nullopt;
    auto id = exact(joined(plain));
    if (!id) id = whole_of(plain);
    const bool grown = id && (*catalogue_)[*id].kind == catalogue::Kind::raw &&
                       (of_family(*id, "vegetables") || of_family(*id, "fruit"));
    // Italian sausages are of pork, and Italian peppers are no spice.
    const bool spice = id && of_family(*id, "spices") && words_of((*catalogue_)[*id].name).back() != plain.back();
    const bool another = id && ((coloured && !grown) || of_family(*id, "meat") || spice);
    return another ? std::nullopt : id;
}

/// A sprig, a fresh herb or a weight of fish is never the dried or the tinned thing that has the bare name.
Called Names::in_its_form(const Called& found, const Words& before, const measure::WrittenLine& line) const {
    if (!found.ingredient) return found;
    const auto id = *found.ingredient;
    const auto& thing = (*catalogue_)[id];
    const bool fish = of_family(id, "tinned-fish");
    const bool preserved =
        thing.kind == catalogue::Kind::made && (fish || of_family(id, "herbs") || of_family(id, "spices") ||
                                                thing.name.starts_with("tinned ") || thing.name.starts_with("dried "));
    Words words = before;
    for (const auto& more : {words_of(line.name), words_of(line.preparation)}) {
        words.insert(words.end(), more.begin(), more.end());
    }
    if (!preserved || !speaks_of_fresh(words, line, fish)) return found;
    const auto other = exact(fmt::format("fresh {}", line.name));
    if (other && (*catalogue_)[*other].kind == catalogue::Kind::raw) return {other, {}, {}};
    return not_called(fmt::format("fresh {}", line.name), line.name);
}

}  // namespace samebase::exchange::detail
