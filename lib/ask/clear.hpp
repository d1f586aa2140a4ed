// Clear the crisper before shopping day: which dinners and lunches until then keep the most food in danger from the
// bin, bought least?
//
// What is open. From today to the last day, every dinner and every lunch that somebody is home for, whatever is planned
// for it now; only the dish of an occasion stands. On a standing night the dinner is of its kind. A dish fits within
// the day's minutes, serves all who are home without what they avoid, and is not had again within its gap of the
// history, of the plan that stands, and of the other meals that are chosen.
//
// What is in danger. Everything that stands (the plan after the last day up to the horizon, occasions, standing uses)
// eats first, what ends first going first. What it leaves and what ends by the horizon is in danger: nothing in the
// plan eats it. What it leaves and what keeps longer is there too, and costs nothing to use.
//
// The value of a plan of the open meals is, in money,
//
//     sum over ingredients i of  c(i) x T(i) x saved(i) / D(i)
//   - sum over ingredients i of  price(i) x packs(i)
//   + sum over meals of         liking - stand-ins - had_lately
//   - sum over empty meals of   5 x a bought lunch for each eater
//   - own_bin
//
//     D(i)      what is in danger of i, T(i) its price; c(i) is 1.5 where some of that lies in a crisper, else 1
//     saved(i)  of D(i), what the chosen meals eat: meal by meal, what ends first first, each within its time
//     packs(i)  what the chosen meals want beyond all that is there of i, in whole packs; what cannot be bought is
//               never wanted beyond what is there
//     own_bin   what the chosen meals send to the bin themselves, the rest of what they open, thaw and buy: what the
//               balance with them tosses by the horizon more than without them, and what they save
//
// with stand-ins, liking and had_lately as `else` weighs them (had_lately against what stands and what was had). Frozen
// packs count by weight from the day that they can be thawed; opening and thawing shorten nothing in this sum, but
// what they would send to the bin is told beside it (`extra_bin`). A meal is cooked as its dish says, or with as much
// of what is in danger as its lines bear: of each such ingredient what could be eaten of it at that meal, at most its
// line's most. A component is one ingredient: changing one meal changes only those that it touches.
//
// Amounts are exact; each ingredient's line is rounded to a thousandth of the smallest unit of money.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "basics/day.hpp"
#include "basics/problem.hpp"
#include "flow/cooking.hpp"
#include "flow/parts.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask {

struct ClearQuestion {
    std::optional<basics::Day> until;  ///< the last day of meals; nothing: the eve of the next shopping day after today
    int effort = 100;                  ///< 100 as usual; moves and solver work are in proportion
    bool own_bin = true;               ///< false: the sum without it, for which the bound is near
};

/// How far it is; called now and then. Returning false ends the search with the best so far.
struct ClearProgress {
    std::string_view stage;
    basics::Money value;
};
using ClearWatch = std::function<bool(const ClearProgress&)>;

enum class ClearLine : std::uint8_t {
    waste_avoided,
    crisper_first,
    to_buy,
    stand_ins,
    had_lately,
    liking,
    empty,
    own_bin
};
[[nodiscard]] std::string_view name(ClearLine line);

/// One line of the sum that makes the value.
struct ClearBecause {
    ClearLine line = ClearLine::waste_avoided;
    basics::Money money;
    std::optional<catalogue::IngredientId> of;
    std::optional<measure::Amount> amount;
    std::string note;
};

struct ClearMeal {
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    cookbook::DishId dish;
    bool ready_meal = false;
    std::optional<cookbook::DishId> instead_of;  ///< what is planned now, where that is another dish
    std::vector<flow::StandInUse> stand_ins;
    std::vector<flow::Scaled> scaled;                                        ///< of these more
    std::vector<std::pair<catalogue::IngredientId, measure::Amount>> saves;  ///< from the bin
    std::vector<ClearBecause> because;                                       ///< its own lines, and its share of saved
    std::vector<std::string> cautions;
    flow::Cooking cooking;
};

/// A meal for which nothing in the cookbook will do.
struct ClearEmpty {
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::string reason;
};

/// What can still be done for food that ends in the bin. Keeping times come from the catalogue; how long a pickle
/// keeps is common practice and left to a tested recipe.
enum class LastWay : std::uint8_t { none, freeze, pickle };

/// Food in danger that the chosen meals do not eat.
struct ClearBin {
    catalogue::IngredientId ingredient;
    measure::Amount amount;
    basics::Money price;
    basics::Day by;        ///< the day on which the first of it ends
    bool use_by = false;   ///< else it is a matter of quality
    bool part_of = false;  ///< some of it was eaten: the rest of what was cut or opened
    std::string reason;
    std::optional<basics::Money> costs_more;  ///< than the plan, to save it by the nearest meal that the reason names
    LastWay way = LastWay::none;
    int freezer_days = 0;  ///< that it keeps frozen, where the way is to freeze it
};

struct ClearAnswer {
    basics::Span span;
    basics::Day horizon;
    std::vector<ClearMeal> meals;  ///< in the order of (day, meal)
    std::vector<ClearEmpty> empty;
    std::vector<ClearBecause> because;  ///< of the whole: their sum is the value
    std::vector<flow::Purchase> to_buy;
    std::vector<ClearBin> bin;  ///< soonest first
    basics::Money danger;       ///< the price of all food in danger
    basics::Money saved;        ///< of that, what the meals eat
    basics::Money extra_bin;    ///< own_bin, whether or not the sum has it
    basics::Money value;
    basics::Money bound;  ///< no plan is worth more
    bool proved_best = false;
    double gap = 0;                  ///< (bound - value) / money at stake; 0 where proved best
    basics::Money at_stake;          ///< the food in danger as it counts, at least 1
    bool stopped = false;            ///< the watch ended it
    basics::Money greedy;            ///< the value of taking the best meal again and again, where the search began
    std::vector<std::string> notes;  ///< what one should know of the question: nobody home, nothing in danger
};

/// Problems: the last day lies before today, or more than 31 days on; there is no shopping day and no last day; the
/// cookbook is empty. Costs about ten seconds on a full kitchen of ten days, less on a few days; repeats exactly.
[[nodiscard]] basics::Result<ClearAnswer> ask_clear(const kitchen::Kitchen& kitchen, basics::Day today,
                                                    const ClearQuestion& question, const ClearWatch& watch = {});

}  // namespace samebase::ask
