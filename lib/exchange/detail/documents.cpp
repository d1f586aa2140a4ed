#include "exchange/detail/documents.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "catalogue/names.hpp"
#include "measure/written.hpp"

namespace samebase::exchange::detail {

namespace {

std::vector<std::string> ids(const catalogue::Catalogue& catalogue, bool families) {
    std::vector<std::string> result;
    for (const auto& thing : catalogue.ingredients()) result.push_back(thing.id);
    if (families) {
        for (const auto& family : catalogue.families()) result.push_back(family.id);
    }
    return result;
}

/// Pieces with a name weigh what the catalogue says of that name, else what one piece weighs.
basics::Result<measure::Amount> by_pieces(const measure::Written& written, const catalogue::Ingredient& thing) {
    const auto& amount = std::get<measure::Amount>(written.amount);
    const auto named = thing.piece_mg.find(written.counted);
    if (amount.dimension() != measure::Dimension::pieces || named == thing.piece_mg.end()) {
        return catalogue::in_own_dimension(amount, thing);
    }
    catalogue::Ingredient by_name = thing;
    by_name.conversion.mg_per_piece = named->second;
    if (thing.dimension != measure::Dimension::pieces) return catalogue::in_own_dimension(amount, by_name);
    const auto mass = catalogue::weight(amount, by_name);
    if (!mass) return basics::problem(thing.id, "the amount is too large", "an amount below a million tonnes");
    return catalogue::in_own_dimension(*mass, thing);
}

/// "pack" and the like count the usual purchase pack.
bool counts_packs(const measure::Written& written, const catalogue::Ingredient& thing) {
    if (!thing.pack || (written.counted != "pack" && written.counted != thing.pack->name)) return false;
    return !thing.piece_mg.contains(written.counted);
}

}  // namespace

basics::Result<measure::Amount> in_own_dimension(const measure::Written& written, const catalogue::Ingredient& thing) {
    if (!counts_packs(written, thing)) return by_pieces(written, thing);
    const auto packs = measure::scaled(thing.pack->amount, std::get<measure::Amount>(written.amount).value(), 1000);
    if (packs) return *packs;
    return basics::problem(thing.id, "the amount is too large", std::string(at_most));
}

const std::vector<std::string>& dish_kinds() {
    static const std::vector<std::string> all{
        "roast",    "mince",    "loaf",      "pasta",   "pie",       "curry",      "soup",    "stew",
        "traybake", "stir-fry", "salad",     "pizza",   "flatbread", "pancakes",   "fish",    "eggs",
        "pulses",   "rice",     "grill",     "burgers", "dumplings", "potatoes",   "noodles", "sausages",
        "sandwich", "toast",    "leftovers", "bake",    "fritters",  "snack-plate"};
    return all;
}

std::optional<std::string> read_dish_kind(std::string_view text) {
    const auto& all = dish_kinds();
    const auto found = std::find(all.begin(), all.end(), text);
    return found == all.end() ? std::nullopt : std::optional(*found);
}

bool too_large(const measure::Amount& amount, const catalogue::Ingredient& ingredient) {
    const auto mass = catalogue::weight(amount, ingredient);
    return amount.value() > most_in_document || (mass && mass->value > most_in_document);
}

std::vector<Entry> entries(std::span<const Document> documents, std::string_view list, basics::Problems& problems) {
    std::vector<Entry> result;
    for (const Document& document : documents) {
        const Element whole(document.value, document.name, problems);
        if (!whole.object({list, "sources"})) continue;
        for (const Element& source : whole.list("sources")) static_cast<void>(source.text());
        const auto found = whole.need(list);
        if (!found) continue;
        for (const Element& element : found->list()) {
            if (element.value().is_object()) {
                result.push_back({element.id("id"), element});
            } else {
                element.wrong(element.shown(), "an object");
            }
        }
    }
    std::stable_sort(result.begin(), result.end(), [](const Entry& a, const Entry& b) { return a.id < b.id; });
    for (std::size_t i = 1; i < result.size(); ++i) {
        if (result[i].id != result[i - 1].id) continue;
        if (!result[i].id.empty()) {
            result[i].element.wrong(fmt::format("'{}' once more", result[i].id), "an identifier that occurs once");
        }
    }
    result.erase(std::unique(result.begin(), result.end(), [](const Entry& a, const Entry& b) { return a.id == b.id; }),
                 result.end());
    return result;
}

namespace {

/// "did you mean": the nearest identifier; else those whose names a cook would mean by the word, families first.
std::optional<std::string> meant(const std::string& id, const catalogue::Catalogue& catalogue, bool families) {
    constexpr std::size_t longest_word = 60;
    constexpr std::size_t most = 3;
    if (auto near = did_you_mean(id, ids(catalogue, families)); near || id.size() > longest_word) return near;
    catalogue::NameIndex index;
    const auto add = [&](std::uint8_t rank, const auto& things) {
        for (std::uint32_t i = 0; i < things.size(); ++i) index.add(i, rank, things[i].name);
    };
    if (families) add(0, catalogue.families());
    add(1, catalogue.ingredients());
    index.finish();
    auto found = index.find(id).found;
    const auto family = [](const catalogue::Found& f) { return f.rank == 0; };
    if (std::any_of(found.begin(), found.end(), family))
        std::erase_if(found, [&](const auto& f) { return !family(f); });
    if (found.empty()) return std::nullopt;
    if (found.size() > most) found.resize(most);
    std::vector<std::string> words;
    for (const auto& f : found)
        words.push_back(
            fmt::format("'{}'", f.rank == 0 ? catalogue.families()[f.key].id : catalogue.ingredients()[f.key].id));
    return fmt::format("did you mean {}?", fmt::join(words, " or "));
}

}  // namespace

std::optional<catalogue::IngredientId> named_ingredient(const Element& name, const catalogue::Catalogue& catalogue) {
    const std::string id = name.text();
    auto found = catalogue.ingredient(id);
    if (!found && name.value().is_string() && !name.enough()) {
        name.wrong(fmt::format("{} is not an ingredient", name.shown()),
                   "the identifier of an ingredient of the catalogue", meant(id, catalogue, false));
    }
    return found;
}

std::optional<catalogue::Of> named_ingredient_or_family(const Element& name, const catalogue::Catalogue& catalogue) {
    const std::string id = name.text();
    auto found = catalogue.ingredient_or_family(id);
    if (!found && name.value().is_string() && !name.enough()) {
        name.wrong(fmt::format("{} is neither an ingredient nor a family", name.shown()),
                   "the identifier of an ingredient or a family of the catalogue", meant(id, catalogue, true));
    }
    return found;
}

std::optional<catalogue::IngredientId> ingredient(const Element& element, std::string_view key,
                                                  const catalogue::Catalogue& catalogue) {
    const auto name = element.need(key);
    return name ? named_ingredient(*name, catalogue) : std::nullopt;
}

std::optional<catalogue::Of> ingredient_or_family(const Element& element, std::string_view key,
                                                  const catalogue::Catalogue& catalogue) {
    const auto name = element.need(key);
    return name ? named_ingredient_or_family(*name, catalogue) : std::nullopt;
}

std::optional<measure::Amount> amount_of(const Element& text, catalogue::IngredientId id,
                                         const catalogue::Catalogue& catalogue, measure::MeasureSet set) {
    const std::string words = text.text();
    if (!text.value().is_string()) return std::nullopt;
    const auto written = measure::read_amount(words, set);
    if (!written) {
        for (const auto& problem : written.error()) text.wrong(problem.found, problem.expected, problem.hint);
        return std::nullopt;
    }
    if (std::holds_alternative<measure::Rough>(written->amount)) {
        text.wrong(text.shown(), "an amount that can be weighed, measured or counted");
        return std::nullopt;
    }
    const auto amount = in_own_dimension(*written, catalogue[id]);
    if (!amount) {
        for (const auto& problem : amount.error()) {
            text.wrong(fmt::format("{}: for '{}' {}", text.shown(), problem.where, problem.found), problem.expected);
        }
        return std::nullopt;
    }
    if (amount->value() <= 0) {
        text.wrong(text.shown(), "an amount above 0");
        return std::nullopt;
    }
    if (too_large(*amount, catalogue[id])) {
        text.wrong(fmt::format("{} is too large", text.shown()), std::string(at_most));
        return std::nullopt;
    }
    return *amount;
}

catalogue::AllergenSet allergens(const std::vector<Element>& names) {
    catalogue::AllergenSet set;
    const auto known = names_of<catalogue::Allergen>(catalogue::allergen_count);
    for (const Element& element : names) {
        if (const auto allergen = word(element, catalogue::read_allergen, known)) set.add(*allergen);
    }
    return set;
}

}  // namespace samebase::exchange::detail
