// What is for dinner, what do I take out, what must be used?
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "flow/balance.hpp"
#include "flow/mend.hpp"
#include "flow/thaw.hpp"
#include "flow/told.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask {

/// A meal of the day as planned, for those who are home.
struct MealTonight {
    cookbook::DishId dish;
    bool ready_meal = false;
    std::int64_t serves_thousandths = 0;
    int minutes = 0;
    std::vector<kitchen::LineSwap> swaps;  ///< with what in place of what
};

/// Stock that nothing in the plan eats in time.
struct InDanger {
    catalogue::IngredientId ingredient;
    stock::LotNumber lot = 0;
    measure::Amount amount;  ///< what would be left
    basics::Money price;
    basics::Day by;
    bool use_by = false;  ///< else it is a matter of quality
};

/// Whether the lot itself ends by then: what will be left over of something that is still to be thawed or opened does
/// not make it urgent now.
[[nodiscard]] bool in_danger_now(const InDanger& danger, const kitchen::Kitchen& kitchen);

/// What a planned meal lacks before the next shopping day.
struct Short {
    catalogue::IngredientId ingredient;
    measure::Amount amount;
    basics::Day day;
    std::optional<cookbook::DishId> dish;  ///< nothing: a standing use
};

/// What a meal before the next shopping day lacks, and what can be done.
struct Missing {
    flow::Finding finding;
    std::optional<flow::Mend> mend;
};

/// The findings as the day needs them: one thing once, whatever its lots.
struct Pressing {
    std::vector<flow::Finding> past;      ///< past its use-by
    std::vector<flow::Finding> today;     ///< in stock, and nothing planned eats it in time
    std::vector<flow::Finding> tomorrow;  ///< the same, by tomorrow
    std::vector<Missing> missing;         ///< told by itself, in the order of days
    std::size_t more = 0;                 ///< how many other things there are
    basics::Money more_price;
};

struct TonightAnswer {
    basics::Day day;
    std::optional<MealTonight> dinner;          ///< planned, and not cooked yet
    std::optional<cookbook::DishId> cooked;     ///< what is in the day's history for dinner
    std::optional<MealTonight> tomorrow;        ///< tomorrow's dinner
    std::vector<catalogue::IngredientId> soak;  ///< what of it goes into water tonight
    std::string occasion;                       ///< its note; "" where there is none
    int guests = 0;
    std::optional<std::string> standing_kind;  ///< what the night asks for, where nothing is planned
    std::vector<std::string> eaters;
    std::vector<MealTonight> lunches;
    std::vector<flow::ThawMove> take_out;  ///< today, for coming meals
    std::vector<InDanger> use_first;       ///< soonest first
    std::vector<Short> short_of;           ///< before shopping day
    std::vector<InDanger> past;            ///< past its use-by: to be tossed
    std::optional<basics::Day> shopping;   ///< the next shopping day
    std::vector<std::string> apart;        ///< serves apart, and what those at the table must not have
    std::vector<std::string> cautions;     ///< all of them: those apart first, then the usual ones
    Pressing pressing;
};

/// Costs one balance up to the horizon, and some tens of partial ones for each thing that is missing.
[[nodiscard]] TonightAnswer ask_tonight(const kitchen::Kitchen& kitchen, basics::Day today);

}  // namespace samebase::ask
