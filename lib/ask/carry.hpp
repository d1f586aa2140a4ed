// What do I bring in from the far freezers? What the span's plan wants of lots that lie in far freezers, and the fewest
// walks that bring it into the near freezer in time.
//
// The balance of the plan says which packs are thawed, and when (flow::thaw_moves), and what is cooked from frozen. A
// pack that is thawed takes room in the near freezer from the day of its walk to the eve of the day that it is taken
// out; what is cooked from frozen until it is used up, and what is left of its pack to the end. What is brought on the
// very day that it is taken out goes straight to the fridge and takes no room: so does whatever the near freezer has no
// room for. Free is the near freezer's room less what lies in it at the end of each day: what is there now, less what
// the plan takes out, and what is bought.
//
// The value is the number of walks: a walk is one far freezer on one day. Its lower bound is proved by
// ask/detail/trips.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "flow/balance.hpp"
#include "kitchen/changes.hpp"

namespace samebase::ask {

struct CarryQuestion {
    basics::Span span;  ///< of the meals
    std::optional<basics::Day>
        first;         ///< the first day for a walk; nothing: the first of the span, or the eve that is needed
    int effort = 100;  ///< 100 as usual: how much the integer programme may search
};

/// Packs of one lot for one meal, brought on one walk.
struct Carried {
    stock::LotNumber lot = 0;
    catalogue::IngredientId ingredient;
    std::optional<cookbook::DishId> cooked_as;  ///< a leftover's or ready meal's dish
    std::int64_t amount = 0;                    ///< in its own dimension
    int packs = 0;                              ///< 0: loose
    std::vector<std::int64_t> weights;          ///< of each
    std::int64_t room_ml = 0;
    stock::PlaceId from;
    basics::Day day;        ///< of the walk
    basics::Day need;       ///< to be taken out to thaw, or cooked from frozen
    bool thaws = true;      ///< else it is cooked from frozen
    bool straight = false;  ///< it does not stop at the near freezer: from the walk to the fridge, or into the pan
    stock::ThawMethod method = stock::ThawMethod::fridge;  ///< where it thaws
    basics::Day for_day;
    kitchen::Meal for_meal = kitchen::Meal::dinner;
    std::optional<cookbook::DishId> for_dish;
    std::optional<basics::Day> cook_by;  ///< once it is thawed
    std::vector<std::string> cautions;
};

struct Walk {
    stock::PlaceId from;
    basics::Day day;
    std::vector<Carried> brings;  ///< the oldest lot first, then by lot and meal

    [[nodiscard]] std::int64_t room_ml() const;  ///< of what stops at the near freezer
};

struct CarryAnswer {
    basics::Span span;
    std::optional<stock::PlaceId> near;  ///< where everything goes: the first near freezer
    std::optional<stock::PlaceId> fridge;
    std::vector<Walk> walks;              ///< in the order of (day, far freezer)
    int bound = 0;                        ///< no plan has fewer walks
    int by_rule = 0;                      ///< walks that filling up and walking as late as can be needs
    std::optional<std::int64_t> room_ml;  ///< of the near freezer; nothing: not measured
    std::int64_t fullest_ml = 0;          ///< the most that is in it at the end of a day, with what is brought
    basics::Day fullest;
    std::vector<std::string> notes;  ///< what one should know besides

    [[nodiscard]] bool proved_best() const { return static_cast<int>(walks.size()) == bound; }
    /// (walks - bound) / walks; 0 where there are none.
    [[nodiscard]] double gap() const;
};

/// Stock is read as of today. Problem: the span has passed, or ends more than two years ahead; the first day for a walk
/// is before today. Costs one exact balance up to the end of the span, and an integer programme where several far
/// freezers crowd the near one.
[[nodiscard]] basics::Result<CarryAnswer> ask_carry(const kitchen::Kitchen& kitchen, basics::Day today,
                                                    const CarryQuestion& question);

/// The answer's walks of that day as if they had been entered by hand: frozen stays frozen, and what goes straight to
/// the fridge begins to thaw. What goes into the pan is not moved. Nothing to bring: an empty change that says so.
[[nodiscard]] basics::Result<kitchen::Change> carry_done(const kitchen::At& at, const CarryAnswer& answer);

}  // namespace samebase::ask
