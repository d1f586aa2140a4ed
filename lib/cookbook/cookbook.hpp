// The cookbook: dishes as sets of ingredients with amounts and roles, and the bases that groups of dishes start from.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "basics/handle.hpp"
#include "catalogue/catalogue.hpp"
#include "catalogue/role.hpp"

namespace samebase::cookbook {

using BaseId = basics::Handle<struct BaseTag>;
using DishId = basics::Handle<struct DishTag>;

struct BaseNeed {
    catalogue::Of of;
    catalogue::Role role = catalogue::Role::main;
};

struct Base {
    std::string id;
    std::string name;
    std::string note;
    std::vector<BaseNeed> needs;
};

struct DishIngredient {
    catalogue::IngredientId ingredient;
    measure::Amount amount;  ///< for all serves together, in the ingredient's own dimension
    std::string written;     ///< the amount as the recipe writes it
    catalogue::Role role = catalogue::Role::main;
    std::string preparation;
    int least_thousandths = 1000;  ///< how far down the recipe bears it, in thousandths of what is written
    int most_thousandths = 1000;
    bool optional = false;
};

/// How one eater who avoids an allergen gets a serve without it.
struct SeparateServe {
    catalogue::Allergen avoids = catalogue::Allergen::gluten;
    std::vector<std::pair<catalogue::IngredientId, catalogue::IngredientId>> swaps;  ///< of, use
    std::string note;
};

struct ByProduct {
    catalogue::IngredientId ingredient;
    measure::Amount amount;
};

struct Dish {
    std::string id;
    std::string name;
    std::optional<BaseId> base;
    bool dinner = false;
    bool lunch = false;
    std::vector<std::string> kinds;
    int serves = 1;
    int minutes = 0;
    int hands_on = 0;
    int gap = 21;  ///< days before it should come again
    std::vector<DishIngredient> ingredients;
    std::vector<SeparateServe> separate;
    std::optional<catalogue::IngredientId> leaves;  ///< what uneaten serves become, one serve each
    std::vector<ByProduct> gives;
    bool freezes = false;
    std::vector<std::string> method;
};

/// Invariants, checked by check(): bases and dishes stand in the order of their identifiers, which are unique in each;
/// serves are above 0; amounts are above 0 and in the ingredient's own dimension; what a dish leaves is of kind cooked;
/// a dish has, for each need of its base, an ingredient that is it or is a member of it.
class Cookbook {
  public:
    Cookbook() = default;
    /// The caller guarantees sorted, unique ids and handles in range.
    Cookbook(std::vector<Base> bases, std::vector<Dish> dishes);

    [[nodiscard]] std::span<const Base> bases() const { return bases_; }
    [[nodiscard]] std::span<const Dish> dishes() const { return dishes_; }
    [[nodiscard]] const Base& operator[](BaseId id) const { return bases_[id.index()]; }
    [[nodiscard]] const Dish& operator[](DishId id) const { return dishes_[id.index()]; }
    [[nodiscard]] std::optional<BaseId> base(std::string_view id) const;
    [[nodiscard]] std::optional<DishId> dish(std::string_view id) const;
    [[nodiscard]] std::span<const DishId> on(BaseId base) const { return on_base_[base.index()]; }

    [[nodiscard]] std::optional<std::string> check(const catalogue::Catalogue& catalogue) const;

  private:
    std::vector<Base> bases_;
    std::vector<Dish> dishes_;
    std::vector<std::vector<DishId>> on_base_;
};

/// What the dish contains: the union over its ingredients, optional ones included.
[[nodiscard]] catalogue::AllergenSet allergens(const Dish& dish, const catalogue::Catalogue& catalogue);

/// Whether everything that the dish needs is in every ordinary shop and most homes; what is optional does not count.
[[nodiscard]] bool everyday(const Dish& dish, const catalogue::Catalogue& catalogue);

/// The weight of the dish as written, over the ingredients whose weight the catalogue knows.
[[nodiscard]] measure::Mass weight(const Dish& dish, const catalogue::Catalogue& catalogue);

}  // namespace samebase::cookbook
