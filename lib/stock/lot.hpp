// Lots: an amount of one ingredient that arrived together, where it is, in which state, and how long it keeps.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basics/day.hpp"
#include "basics/money.hpp"
#include "catalogue/catalogue.hpp"
#include "cookbook/cookbook.hpp"
#include "measure/amount.hpp"
#include "measure/written.hpp"
#include "stock/place.hpp"

namespace samebase::stock {

enum class State : std::uint8_t { fresh, frozen, thawing, thawed };
enum class ThawMethod : std::uint8_t { fridge, cold_water, microwave };

[[nodiscard]] std::string_view name(State state);
[[nodiscard]] std::optional<State> read_state(std::string_view text);
[[nodiscard]] std::string_view name(ThawMethod method);  ///< "cold-water"
[[nodiscard]] std::optional<ThawMethod> read_thaw_method(std::string_view text);

/// The number by which people and documents name a lot; given in the order of arrival, never again.
using LotNumber = std::int64_t;

struct Lot {
    LotNumber number = 0;
    catalogue::IngredientId ingredient;
    std::optional<cookbook::DishId> dish;  ///< for a leftover or ready meal: what was cooked
    /// What went into it holds these, and neither the ingredient nor the dish says so.
    catalogue::AllergenSet also;
    PlaceId place;
    measure::Amount amount;               ///< in the ingredient's own dimension; 0 with `rough`
    std::optional<measure::Rough> rough;  ///< "some", "low", "lots": present, and left out of sums
    std::vector<std::int64_t> packs;  ///< true weights (or volumes, or counts) of whole and part packs; empty: loose
    std::int64_t part_of = 0;         ///< above 0: the last pack is what is left of one that weighed this
    State state = State::fresh;
    basics::Day arrived;
    basics::Day since;  ///< the day on which its present keeping time began
    std::optional<basics::Day> opened_on;
    std::optional<ThawMethod> thaw;  ///< how it is being, or was, thawed
    std::optional<basics::Day>
        thawed_on;  ///< the first day on which it can be cooked, where it was taken out of a freezer
    std::optional<basics::Day> printed_use_by;
    std::optional<basics::Day> use_by;
    std::optional<basics::Day> best_by;
    std::optional<basics::Money> paid;  ///< for `paid_for`
    std::int64_t paid_for = 0;          ///< the amount that the payment was for
    std::string note;

    [[nodiscard]] bool usable_amount() const { return !rough && amount.value() > 0; }
    /// Something of it is left, be it only "some".
    [[nodiscard]] bool there() const { return rough || amount.value() > 0; }
    /// It can be cooked with on that day as it is: neither frozen nor still thawing. Says nothing of its dates.
    [[nodiscard]] bool ready(basics::Day day) const;
    /// The nearer of the two dates, by which it should be eaten.
    [[nodiscard]] std::optional<basics::Day> eat_by() const;
    friend bool operator==(const Lot&, const Lot&) = default;
};

/// The last days of the lot as it is (place, state, `since`, `opened_on`). A use-by that is printed on it stands while
/// it is closed and fresh, whether it is nearer or further than the catalogue's keeping time; opened, the printed day
/// or the time once opened, whichever is sooner. What is loose, undated, frozen or thawed goes by the catalogue: food
/// is frozen before its use-by, and has a best-by then. Sets use_by and best_by. A crisper of which nothing is known
/// keeps like the fridge that it is a drawer of, and a perishable that has no time in the pantry keeps there only for
/// the day, so that no perishable is ever without a use-by.
void set_dates(Lot& lot, const catalogue::Ingredient& ingredient, PlaceKind place);

/// What the lot holds: its ingredient's allergens, those of the dish that it was cooked as, and what went into it else.
[[nodiscard]] catalogue::AllergenSet counted_allergens(const Lot& lot, const catalogue::Catalogue& catalogue,
                                                       const cookbook::Cookbook& cookbook);

/// Reasons why the lot cannot be as it is: packs that do not sum to the amount, an amount below 0, a date before it
/// came.
[[nodiscard]] std::optional<std::string> check(const Lot& lot, const catalogue::Catalogue& catalogue);

}  // namespace samebase::stock
