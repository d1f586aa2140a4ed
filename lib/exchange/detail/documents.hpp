// Documents by the list that they hold, and what their readers share.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "basics/sorted.hpp"
#include "catalogue/catalogue.hpp"
#include "cookbook/cookbook.hpp"
#include "exchange/detail/element.hpp"
#include "graph/stand_in.hpp"
#include "measure/measure_set.hpp"
#include "measure/written.hpp"

namespace samebase::exchange::detail {

struct Document {
    std::string name;
    nlohmann::json value;
};

/// One entry of a list, read apart from the others.
struct Entry {
    std::string id;
    Element element;
};

/// The entries of the named list over all documents, in the order of their identifiers; one that comes twice is a
/// problem. A document with other keys than the list and "sources" is a problem.
[[nodiscard]] std::vector<Entry> entries(std::span<const Document> documents, std::string_view list,
                                         basics::Problems& problems);

[[nodiscard]] catalogue::Catalogue read_catalogue(std::span<const Document> of_families,
                                                  std::span<const Document> of_ingredients, basics::Problems& problems);
[[nodiscard]] std::vector<graph::Statement> read_stand_ins(std::span<const Document> documents,
                                                           const catalogue::Catalogue& catalogue,
                                                           basics::Problems& problems);
[[nodiscard]] cookbook::Cookbook read_cookbook(std::span<const Document> bases, std::span<const Document> dishes,
                                               const catalogue::Catalogue& catalogue, basics::Problems& problems);

/// What a key names; a problem, with the nearest known identifier, where there is no such ingredient (or family).
[[nodiscard]] std::optional<catalogue::IngredientId> ingredient(const Element& element, std::string_view key,
                                                                const catalogue::Catalogue& catalogue);
[[nodiscard]] std::optional<catalogue::Of> ingredient_or_family(const Element& element, std::string_view key,
                                                                const catalogue::Catalogue& catalogue);
[[nodiscard]] std::optional<catalogue::IngredientId> named_ingredient(const Element& name,
                                                                      const catalogue::Catalogue& catalogue);
[[nodiscard]] std::optional<catalogue::Of> named_ingredient_or_family(const Element& name,
                                                                      const catalogue::Catalogue& catalogue);

/// An amount of an ingredient as a cook writes it, in the ingredient's own dimension ("3 cloves" by the weight of a
/// clove where the catalogue has it). Above 0. A problem where it is not one.
[[nodiscard]] std::optional<measure::Amount> amount_of(const Element& text, catalogue::IngredientId id,
                                                       const catalogue::Catalogue& catalogue, measure::MeasureSet set);

/// A written amount in the ingredient's own dimension: named pieces and packs by what the catalogue says of them.
[[nodiscard]] basics::Result<measure::Amount> in_own_dimension(const measure::Written& written,
                                                               const catalogue::Ingredient& ingredient);

/// The kinds of dish that a standing night can ask for.
[[nodiscard]] const std::vector<std::string>& dish_kinds();
[[nodiscard]] std::optional<std::string> read_dish_kind(std::string_view text);

/// A document's amounts are at most this in size, and weigh at most this (1,000 tonnes): millions of them add up.
inline constexpr std::int64_t most_in_document = 1'000'000'000'000;
[[nodiscard]] bool too_large(const measure::Amount& amount, const catalogue::Ingredient& ingredient);
inline constexpr std::string_view at_most = "at most 1000 tonnes, 1000000 L or 1000000000 pieces";

/// Every element whose identifier (or number) an earlier one has is a problem.
template <class Id>
void sound_ids(const std::vector<std::pair<Id, Element>>& read) {
    std::set<Id> seen;
    for (const auto& [id, element] : read) {
        if (!seen.insert(id).second) element.wrong(fmt::format("'{}' once more", id), "an identifier that occurs once");
    }
}

[[nodiscard]] catalogue::AllergenSet allergens(const std::vector<Element>& names);

/// One of a few known words, as `read` knows them.
template <class Read>
[[nodiscard]] auto word(const Element& element, Read read, const std::vector<std::string>& known)
    -> decltype(read(std::string_view{})) {
    const std::string text = element.text();
    auto result = read(std::string_view{text});
    if (!result && element.value().is_string() && !element.enough()) {
        element.wrong(element.shown(), fmt::format("one of: {}", fmt::join(known, ", ")), did_you_mean(text, known));
    }
    return result;
}

template <class Enum>
[[nodiscard]] std::vector<std::string> names_of(std::size_t count) {
    std::vector<std::string> result;
    for (std::size_t i = 0; i < count; ++i) result.emplace_back(name(static_cast<Enum>(i)));
    return result;
}

}  // namespace samebase::exchange::detail
