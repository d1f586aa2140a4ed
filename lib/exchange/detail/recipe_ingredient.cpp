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
    return std::find_first_of(words.begin(), words.end(), joints.begin(), joints.end()) != words.end();
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

}  // namespace

bool is_water(std::string_view name) {
    constexpr std::array<std::string_view, 10> warmth{"boiling", "boiled", "hot",      "cold", "iced",
                                                      "ice",     "warm",   "lukewarm", "tap",  "cool"};
    const Words words = words_of(name);
    return !words.empty() && words.back() == "water" &&
           std::all_of(words.begin(), words.end() - 1, [&](const std::string& word) {
               return std::find(warmth.begin(), warmth.end(), word) != warmth.end();
           });
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

bool Names::of_family(IngredientId id, std::string_view family) const {
    const auto found = catalogue_->family(family);
    return found && catalogue_->belongs(id, *found);
}

/// "minced garlic" is garlic, "minced beef" is not beef; nothing raw has no salt added, that is tinned; "ground cumin"
/// is cumin, "ground almonds" are no almonds; "whole cumin" is not what cumin is, nor "thick cream" cream.
bool Names::only_cut(const Words& dropped, IngredientId id) const {
    return std::all_of(dropped.begin(), dropped.end(), [&](const std::string& word) {
        if (word == "minced") return !of_family(id, "meat") && !of_family(id, "seafood");
        if (word == "ground") return of_family(id, "seasonings") && (*catalogue_)[id].kind != catalogue::Kind::raw;
        if (word.ends_with("-salt") || word.starts_with("no-salt") || word == "salt-free" || word == "low-sodium" ||
            word == "reduced-sodium") {
            return (*catalogue_)[id].kind != catalogue::Kind::raw;
        }
        if (word == "whole") return !of_family(id, "seasonings");
        if (word == "thick" || word == "thin") return !of_family(id, "dairy");
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
        return !is_cut(words[first]) || in_serves ? std::optional(found->second) : std::nullopt;
    }
    return std::nullopt;
}

/// The ingredient of a line before whose name these words stand.
Called Names::with(const Words& before, const measure::WrittenLine& line) const {
    const bool of_it = !before.empty() && before.back() == "of";
    Words kept;
    Words dropped;
    for (const std::string& word : before) {
        const bool plain = is_plain(word) || word == "minced" || word == "ground" || (of_it && is_part_of(word));
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
    if (!result.ingredient && !result.several) {
        const auto plain = plainer(words_of(short_name));
        result = plain ? Called{plain, {}, {}} : not_called(short_name, line.name);
    }
    result = in_its_form(result, before, line);
    if (result.ingredient && !only_cut(dropped, *result.ingredient))
        result = not_called(joined(before) + " " + line.name, line.name);
    if (of_it || dropped.empty()) return result;
    const auto long_one = exact(fmt::format("{} {}", joined(before), line.name));
    if (!long_one || long_one == result.ingredient) return result;
    const bool knife = std::any_of(dropped.begin(), dropped.end(), [](const auto& word) { return is_cut(word); });
    if (result.ingredient && knife) {
        return {std::nullopt, {}, {(*catalogue_)[*result.ingredient].name, (*catalogue_)[*long_one].name}, true};
    }
    return {long_one, {}, {}};
}

/// Of "fresh or frozen peas" each is tried, the first one first.
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
    auto first = before.begin();
    for (auto at = std::find(first, before.end(), "or"); at != before.end();
         at = std::find(first, before.end(), "or")) {
        const Called one = with(Words(first, at), line);
        if (one.ingredient) return one;
        first = at + 1;
    }
    return with(Words(first, before.end()), line);
}

std::vector<measure::WrittenLine> Names::two_things(const measure::WrittenLine& line, measure::MeasureSet set) const {
    if (line.amount) return {};
    for (const std::string_view joint : {" and ", " & "}) {
        const auto at = line.original.find(joint);
        if (at == std::string::npos) continue;
        const std::string_view text = line.original;
        std::vector<measure::WrittenLine> both;
        for (const std::string_view part : {text.substr(0, at), text.substr(at + joint.size())}) {
            const auto read = measure::read_line(part, set);
            if (read && !read->amount && of(*read).ingredient) both.push_back(*read);
        }
        if (both.size() == 2) return both;
    }
    return {};
}

}  // namespace samebase::exchange::detail
