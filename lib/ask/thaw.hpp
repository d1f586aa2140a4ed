// What do I take out, and when? Back from each planned meal by weight and method: whole packs, from the freezer to the
// fridge; where it is too late for that, what to do instead.
//
// Where published rules differ, the stricter holds. In the fridge a pack takes 24 hours for every 1.8 kg and at least
// 24 (stock/thaw.hpp), and is cooked within the time that its thawed state keeps (meat, fish and leftovers: a day; NSW
// Government and NSW Food Authority). In cold water it takes stock::cold_water_minutes and is cooked at once; so it is
// only for the day of the meal, for what is not cooked yet, and where it is done in most_cold_water_minutes. In the
// microwave it is cooked at once too. Nothing is ever thawed on the bench.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "flow/mend.hpp"
#include "flow/thaw.hpp"
#include "kitchen/changes.hpp"

namespace samebase::ask {

/// From a morning to a dinner: our choice. What would take longer is not thawed in cold water.
inline constexpr int most_cold_water_minutes = 360;

struct TakeOut {
    flow::ThawMove move;
    int minutes = 0;                    ///< in cold water: of its largest pack
    bool late = false;                  ///< it was too late for the fridge
    std::vector<std::string> cautions;  ///< with the source of each rule
};

/// Wanted, frozen, and too late for the fridge.
struct TooLate {
    enum class Instead : std::uint8_t {
        cold_water,  ///< one of the answer's moves does it
        microwave,   ///< thawed in it and cooked at once
        mend,        ///< something that has been tried: a stand-in, another dish, days exchanged, or buying
        other_dish   ///< nothing that was tried helps: look for another dish
    };
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;  ///< in its own dimension
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::optional<cookbook::DishId> dish;  ///< nothing: a standing use
    stock::LotNumber lot = 0;              ///< the oldest frozen one that is left
    Instead instead = Instead::other_dish;
    int packs = 0;  ///< microwave: how many of that lot
    std::optional<flow::Mend> mend;
};

struct ThawAnswer {
    basics::Span span;
    std::vector<TakeOut> moves;                ///< in the order of (day, meal's day, lot)
    std::vector<TooLate> late;                 ///< in the order of (day, meal, ingredient)
    std::vector<flow::FrozenUse> from_frozen;  ///< needs no taking out
    std::optional<stock::PlaceId> fridge;      ///< where everything thaws; nothing: the household has none
    std::vector<std::string> cautions;         ///< what holds for all of it, with the source of each rule
};

/// For the meals of the span. Stock is read as of today; days of the span before today are left out. Problem: the span
/// has passed, or ends more than two years ahead. Costs one exact balance, and some tens of partial ones for each thing
/// that is too late.
[[nodiscard]] basics::Result<ThawAnswer> ask_thaw(const kitchen::Kitchen& kitchen, basics::Day today,
                                                  basics::Span span);

/// The answer's moves of that day as if they had been entered by hand, one for each lot and method. Nothing to move: an
/// empty change that says so. Problem: no fridge, and what moved_packs() refuses.
[[nodiscard]] basics::Result<kitchen::Change> thaw_done(const kitchen::At& at, const ThawAnswer& answer);

}  // namespace samebase::ask
