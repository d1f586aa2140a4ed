// The kitchen: an immutable snapshot of everything that a question may look at. Loading builds it; every question is a
// pure function of it.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "cookbook/cookbook.hpp"
#include "graph/base_graph.hpp"
#include "graph/likeness.hpp"
#include "kitchen/household.hpp"
#include "stock/lot.hpp"

namespace samebase::kitchen {

/// What goes into a dish in place of an ingredient of it: something else, another amount of the same, or nothing.
struct LineSwap {
    catalogue::IngredientId of;
    /// Amounts in their own dimensions, for all lines of it together.
    std::vector<std::pair<catalogue::IngredientId, std::int64_t>> use;
    std::int64_t serves_thousandths = 1000;  ///< for so many serves; above 0

    friend bool operator==(const LineSwap&, const LineSwap&) = default;
};

/// A meal that is planned: a dish to cook, or a ready meal of it to thaw and warm.
struct Planned {
    basics::Day day;
    Meal meal = Meal::dinner;
    cookbook::DishId dish;
    bool ready_meal = false;
    std::optional<int> serves;      ///< nothing: as many as are home
    int left = 0;                   ///< extra serves on purpose
    std::vector<LineSwap> swaps{};  ///< of one ingredient at most one

    friend bool operator==(const Planned&, const Planned&) = default;
};

/// In the order of (day, meal, dish).
using Plan = std::vector<Planned>;

/// A meal that was had.
struct Had {
    basics::Day day;
    Meal meal = Meal::dinner;
    cookbook::DishId dish;

    friend constexpr bool operator==(const Had&, const Had&) = default;
};

/// What does not change while a household cooks: shared by snapshots.
struct Knowledge {
    catalogue::Catalogue catalogue;
    cookbook::Cookbook cookbook;
    graph::BaseGraph graph;
    std::vector<graph::Profile> profiles;  ///< by dish handle

    Knowledge(catalogue::Catalogue the_catalogue, cookbook::Cookbook the_cookbook,
              std::vector<graph::Statement> statements, const graph::Parameters& parameters = {});
    Knowledge(const Knowledge&) = delete;
    Knowledge& operator=(const Knowledge&) = delete;
};

/// Invariants, checked by check(): lots in the order of their numbers, each as stock::check wants it; places, people,
/// dishes and ingredients that are named exist; plan and history in order.
struct Kitchen {
    std::shared_ptr<const Knowledge> knowledge;
    Household household;
    std::vector<stock::Lot> lots;  ///< in the order of numbers
    Plan plan;                     ///< what is still to come, and past days' meals of which nothing was said
    Plan done;                     ///< rows of the plan whose meal is in the history: see settle()
    std::vector<Had> history;      ///< in the order of days

    [[nodiscard]] const catalogue::Catalogue& catalogue() const { return knowledge->catalogue; }
    [[nodiscard]] const cookbook::Cookbook& cookbook() const { return knowledge->cookbook; }
    [[nodiscard]] const graph::BaseGraph& graph() const { return knowledge->graph; }
    [[nodiscard]] const stock::Place& place(stock::PlaceId id) const { return household.places[id.index()]; }
    [[nodiscard]] const stock::Lot* lot(stock::LotNumber number) const;

    /// Taken as there and never counted, until someone says that it is out.
    [[nodiscard]] bool taken_as_there(catalogue::IngredientId id) const;

    [[nodiscard]] std::optional<std::string> check() const;
};

/// Puts every row of plan and done where it belongs. A dinner is done where any dinner of its day is in the history. A
/// lunch is done where its dish is, or where as many lunches of its day are in the history as were planned. Whoever
/// changes plan or history calls it; no question plans, thaws, buys or serves what is done.
void settle(Kitchen& kitchen);

/// What was had at that meal.
[[nodiscard]] std::span<const Had> had(const std::vector<Had>& history, basics::Day day);

/// Who eats that meal that day, as positions in household.people.
[[nodiscard]] std::vector<std::size_t> eaters(const Kitchen& kitchen, basics::Day day, Meal meal);

/// Serves wanted at a meal in thousandths: the eaters' shares and the guests of an occasion (dinner).
[[nodiscard]] std::int64_t serves_wanted(const Kitchen& kitchen, basics::Day day, Meal meal);

/// What guests at that day's dinner avoid.
[[nodiscard]] catalogue::AllergenSet guests_avoid(const Kitchen& kitchen, basics::Day day);

/// The dinner or lunch planned for that day, of that dish where one is given; the first where there are several.
[[nodiscard]] const Planned* planned(const Plan& plan, basics::Day day, Meal meal,
                                     std::optional<cookbook::DishId> dish = std::nullopt);

/// All of `first`, and those of `rest` that are of other ingredients.
[[nodiscard]] std::vector<LineSwap> both(std::span<const LineSwap> first, std::span<const LineSwap> rest);

/// Where such a thing usually is: a place of the kind that it keeps in, where there is some of it already, else of its
/// family, else the first; the first place at all where there is none of that kind; nothing where there are no places.
[[nodiscard]] std::optional<stock::PlaceId> usual_place(const Kitchen& kitchen, catalogue::IngredientId id);

/// The price of an amount of an ingredient: the household's last price, else the guide price; nothing where neither is
/// known.
[[nodiscard]] std::optional<basics::Money> price(const Kitchen& kitchen, catalogue::IngredientId id,
                                                 std::int64_t amount);

/// The price of an amount of a lot: what was paid, else as above, else for a leftover its dish's cost per serve, else
/// 0.
[[nodiscard]] basics::Money price(const Kitchen& kitchen, const stock::Lot& lot, std::int64_t amount);

/// What one serve of the dish costs at the household's prices.
[[nodiscard]] basics::Money cost_per_serve(const Kitchen& kitchen, cookbook::DishId dish);

}  // namespace samebase::kitchen
