// The catalogue: ingredients and the families that they belong to. Built once from documents, then never changed.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "basics/handle.hpp"
#include "basics/money.hpp"
#include "basics/problem.hpp"
#include "catalogue/allergen.hpp"
#include "catalogue/keeping.hpp"
#include "measure/amount.hpp"

namespace samebase::catalogue {

using IngredientId = basics::Handle<struct IngredientTag>;
using FamilyId = basics::Handle<struct FamilyTag>;
/// Something that a base needs, a stand-in is for, or a person dislikes: one ingredient, or all of a family.
using Of = std::variant<IngredientId, FamilyId>;

/// raw (beef mince), made (pasta sauce: bought or made, not a meal's leftover), cooked (a leftover, counted in serves).
enum class Kind : std::uint8_t { raw, made, cooked };

/// How something frozen is thawed: flat (trays, fillets), a block (roasts, whole birds), or cooked from frozen.
enum class Thaw : std::uint8_t { not_said, flat, block, from_frozen };

/// What a cook measures it by: the scales, whole pieces and quarters of them, or spoons where it is little.
enum class Measured : std::uint8_t { not_said, weight, pieces, spoons };

/// The usual purchase pack and its guide price.
struct Pack {
    measure::Amount amount;  ///< in the ingredient's own dimension
    std::string name;        ///< "tray", "bag"
    basics::Money price;
};

/// A set of months as bits, bit 0 for January.
using Months = std::uint16_t;
inline constexpr Months every_month = 0x0FFF;

struct Family {
    std::string id;
    std::string name;
    std::optional<FamilyId> parent;
    std::optional<double> siblings;  ///< fit between members whose nearest common family this is, in (0, 1)
    KeepingTimes keeps{};
    std::optional<int> cook_to;  ///< degrees C in the centre; 0: said not to matter, whatever its parent says
    Thaw thaw = Thaw::not_said;
    Measured measured = Measured::not_said;
    std::optional<std::int64_t> ml_per_kg;  ///< room taken, millilitres per kilogram
};

struct Ingredient {
    std::string id;
    std::string name;
    std::vector<std::string> also;
    FamilyId family;
    Kind kind = Kind::raw;
    measure::Dimension dimension = measure::Dimension::mass;  ///< what it is counted in
    bool in_serves = false;                                   ///< its pieces are serves
    measure::Conversion conversion;
    std::map<std::string, std::int64_t> piece_mg;  ///< named pieces ("clove"), in milligrams
    int edible_thousandths = 1000;
    std::optional<Pack> pack;
    std::optional<AllergenSet> allergens;  ///< nothing: not known, which counts as all
    Months season_south = every_month;
    Months season_north = every_month;
    bool staple = false;
    bool everyday = false;  ///< an ordinary discount shop always has it and most homes use it
    bool only_stand_in = false;
    std::optional<bool> said_meatless;  ///< where the family does not tell: stock powder, gelatine
    KeepingTimes keeps{};  ///< resolved: the ingredient's own statement, else its family's, else the parent's ...
    std::optional<int> cook_to;
    Thaw thaw = Thaw::not_said;
    Measured measured = Measured::not_said;  ///< its family's
    std::optional<std::int64_t> ml_per_kg;
    std::string note;

    [[nodiscard]] AllergenSet counted_allergens() const { return allergens.value_or(AllergenSet::all()); }
};

/// Invariants, checked by check():
///  1. Ingredients and families stand in the order of their identifiers, which are unique over both.
///  2. Families form a forest: no family is its own ancestor.
///  3. A parent's sibling fit is never above its child's, and every fit lies in (0, 1).
///  4. Everything of kind cooked is counted in serves and has no pack; a pack's amount is in the ingredient's own
///  dimension.
class Catalogue {
  public:
    Catalogue() = default;
    /// Both lists in the order of identifiers, with keeping times and the like as stated; this resolves what is
    /// inherited. The caller guarantees that ids are sorted and unique and that handles are in range.
    Catalogue(std::vector<Family> families, std::vector<Ingredient> ingredients);

    [[nodiscard]] std::span<const Ingredient> ingredients() const { return ingredients_; }
    [[nodiscard]] std::span<const Family> families() const { return families_; }
    [[nodiscard]] const Ingredient& operator[](IngredientId id) const { return ingredients_[id.index()]; }
    [[nodiscard]] const Family& operator[](FamilyId id) const { return families_[id.index()]; }

    [[nodiscard]] std::optional<IngredientId> ingredient(std::string_view id) const;
    [[nodiscard]] std::optional<FamilyId> family(std::string_view id) const;
    [[nodiscard]] std::optional<Of> ingredient_or_family(std::string_view id) const;

    /// The family of the ingredient, its parent, and so on up to the root.
    [[nodiscard]] std::span<const FamilyId> ancestors(IngredientId id) const { return ancestors_[id.index()]; }
    /// All ingredients below the family, in order, those of nested families included.
    [[nodiscard]] std::span<const IngredientId> members(FamilyId id) const { return members_[id.index()]; }
    [[nodiscard]] bool is(IngredientId id, const Of& what) const;
    [[nodiscard]] bool belongs(IngredientId id, FamilyId family) const;
    /// Neither meat nor seafood, nor made with them: as the ingredient says, else whether a family of it is `meat` or
    /// `seafood`.
    [[nodiscard]] bool meatless(IngredientId id) const;
    [[nodiscard]] const std::string& name(const Of& what) const;
    [[nodiscard]] const std::string& slug(const Of& what) const;

    [[nodiscard]] std::optional<std::string> check() const;

  private:
    std::vector<Family> families_;
    std::vector<Ingredient> ingredients_;
    std::vector<std::vector<FamilyId>> ancestors_;
    std::vector<std::vector<IngredientId>> members_;
};

/// The amount in the ingredient's own dimension; a Problem that names the ingredient and the figure that is missing.
[[nodiscard]] basics::Result<measure::Amount> in_own_dimension(const measure::Amount& amount,
                                                               const Ingredient& ingredient);

/// The weight of an amount of the ingredient. Nothing where the catalogue lacks the figure.
[[nodiscard]] std::optional<measure::Mass> weight(const measure::Amount& amount, const Ingredient& ingredient);

}  // namespace samebase::catalogue
