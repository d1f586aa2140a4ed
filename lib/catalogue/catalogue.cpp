#include "catalogue/catalogue.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "basics/sorted.hpp"

namespace samebase::catalogue {

namespace {

constexpr int not_to_matter = 0;

/// What the ingredient does not say itself, its families say, the nearest first.
void inherit(Ingredient& ingredient, const std::vector<FamilyId>& ancestors, const std::vector<Family>& families) {
    for (const FamilyId id : ancestors) {
        const Family& family = families[id.index()];
        for (std::size_t i = 0; i < keep_count; ++i) {
            if (ingredient.keeps[i].said == Keeping::Said::nothing) ingredient.keeps[i] = family.keeps[i];
        }
        if (!ingredient.cook_to) ingredient.cook_to = family.cook_to;
        if (ingredient.thaw == Thaw::not_said) ingredient.thaw = family.thaw;
        if (ingredient.measured == Measured::not_said) ingredient.measured = family.measured;
        if (!ingredient.ml_per_kg) ingredient.ml_per_kg = family.ml_per_kg;
    }
    if (ingredient.cook_to == not_to_matter) ingredient.cook_to.reset();
}

}  // namespace

Catalogue::Catalogue(std::vector<Family> families, std::vector<Ingredient> ingredients)
    : families_(std::move(families)),
      ingredients_(std::move(ingredients)),
      ancestors_(ingredients_.size()),
      members_(families_.size()) {
    for (std::uint32_t i = 0; i < ingredients_.size(); ++i) {
        std::optional<FamilyId> family = ingredients_[i].family;
        while (family && ancestors_[i].size() <= families_.size()) {
            ancestors_[i].push_back(*family);
            members_[family->index()].push_back(IngredientId{i});
            family = families_[family->index()].parent;
        }
        inherit(ingredients_[i], ancestors_[i], families_);
    }
}

std::optional<IngredientId> Catalogue::ingredient(std::string_view id) const {
    return basics::find_sorted<IngredientId>(ingredients_, id);
}

std::optional<FamilyId> Catalogue::family(std::string_view id) const {
    return basics::find_sorted<FamilyId>(families_, id);
}

std::optional<Of> Catalogue::ingredient_or_family(std::string_view id) const {
    if (const auto found = ingredient(id)) return Of{*found};
    if (const auto found = family(id)) return Of{*found};
    return std::nullopt;
}

bool Catalogue::belongs(IngredientId id, FamilyId family) const {
    const auto above = ancestors(id);
    return std::find(above.begin(), above.end(), family) != above.end();
}

bool Catalogue::is(IngredientId id, const Of& what) const {
    if (const auto* ingredient = std::get_if<IngredientId>(&what)) return *ingredient == id;
    return belongs(id, std::get<FamilyId>(what));
}

bool Catalogue::meatless(IngredientId id) const {
    if (const auto said = (*this)[id].said_meatless) return *said;
    const auto above = ancestors(id);
    return std::none_of(above.begin(), above.end(), [&](FamilyId family) {
        const std::string& slug = (*this)[family].id;
        return slug == "meat" || slug == "seafood";
    });
}

const std::string& Catalogue::name(const Of& what) const {
    if (const auto* ingredient = std::get_if<IngredientId>(&what)) return (*this)[*ingredient].name;
    return (*this)[std::get<FamilyId>(what)].name;
}

const std::string& Catalogue::slug(const Of& what) const {
    if (const auto* ingredient = std::get_if<IngredientId>(&what)) return (*this)[*ingredient].id;
    return (*this)[std::get<FamilyId>(what)].id;
}

std::optional<std::string> Catalogue::check() const {
    if (auto id = basics::out_of_order(families_)) return fmt::format("family '{}' is out of order", *id);
    if (auto id = basics::out_of_order(ingredients_)) return fmt::format("ingredient '{}' is out of order", *id);
    for (const Family& child : families_) {
        if (ingredient(child.id)) return fmt::format("'{}' is both a family and an ingredient", child.id);
        std::optional<FamilyId> above = child.parent;
        for (std::size_t steps = 0; above; ++steps) {
            if (steps > families_.size()) return fmt::format("family '{}' is its own ancestor", child.id);
            above = families_[above->index()].parent;
        }
        if (child.siblings && !(*child.siblings > 0 && *child.siblings < 1)) {
            return fmt::format("family '{}': the fit of siblings is not between 0 and 1", child.id);
        }
        if (!child.parent || !child.siblings) continue;
        const Family& parent = families_[child.parent->index()];
        if (parent.siblings && *parent.siblings > *child.siblings) {
            return fmt::format("family '{}' has a fit of siblings below that of its parent '{}'", child.id, parent.id);
        }
    }
    for (const Ingredient& thing : ingredients_) {
        if ((thing.kind == Kind::cooked) != thing.in_serves) {
            return fmt::format("'{}': what is cooked, and only that, is counted in serves", thing.id);
        }
        if (!thing.pack) continue;
        if (thing.kind == Kind::cooked) return fmt::format("'{}' is cooked and has a pack", thing.id);
        if (thing.pack->amount.dimension() != thing.dimension || thing.pack->amount.value() <= 0) {
            return fmt::format("'{}': its pack is not an amount of what it is counted in", thing.id);
        }
    }
    return std::nullopt;
}

basics::Result<measure::Amount> in_own_dimension(const measure::Amount& amount, const Ingredient& ingredient) {
    const auto result = measure::converted(amount, ingredient.dimension, ingredient.conversion);
    if (result) return *result;
    switch (result.error()) {
        case measure::Missing::density:
            return basics::problem(ingredient.id, "its density is not in the catalogue",
                                   "a density in g per mL, to turn a volume into what it is counted in");
        case measure::Missing::piece_weight:
            return basics::problem(ingredient.id, "the weight of one piece is not in the catalogue",
                                   "a weight in g, to turn pieces into what it is counted in");
        case measure::Missing::range:
            break;
    }
    return basics::problem(ingredient.id, "the amount is too large", "an amount below a million tonnes");
}

std::optional<measure::Mass> weight(const measure::Amount& amount, const Ingredient& ingredient) {
    const auto result = measure::converted(amount, measure::Dimension::mass, ingredient.conversion);
    if (!result) return std::nullopt;
    return measure::Mass{result->value()};
}

}  // namespace samebase::catalogue
