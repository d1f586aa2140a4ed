// What is for lunch each day, for each person?
//
// Who is open. Everyone at home for lunch on a day of the span, but for those whom the lunches that are planned serve:
// these stand. A planned row serves as many as it says (else all), none of them what they avoid or dislike, and as many
// in all as can be, those whose identifiers come first first. An occasion's guests come to dinner.
//
// What there is. Everything that stands (the plan up to the horizon with its lunches, the standing uses) eats first,
// what ends first going first; what it lacks after the first shopping slot it buys. What it leaves is there for lunch,
// each within its time; leftovers no longer than three days after they were made, two where the catalogue knows no
// time, and one day once thawed. What ends by the horizon is in danger: nothing else eats it.
//
// Each open lunch is one serve of one of these:
//     leftover     what is left of a dish, as it is; also a frozen serve, from the day that it can be thawed
//     frozen pack  of several serves, thawed as a whole and eaten that day by as many as share it
//     larger       a serve of a planned dinner that is cooked larger for it, from the next day on
//     cooked       a serve of a lunch dish of the cookbook, cooked that day as it is written; never a dish that can be
//                  had as a leftover on that day, or that is planned for that lunch
//     bought       a lunch bought outside: always possible
// Nobody gets what they avoid or dislike. Where it is not known which tub is eaten, a leftover holds what any lot of it
// may hold. A serve apart that a dish defines is made as the plan makes it (flow::cook). What a cooked dish asks for
// and is not there is replaced by what is there and does its work nearly as well (fit 0.85 or more: one kind of bread
// by another), which costs nothing in the sum. A lunch is one serve for everyone, however much they eat at dinner: tubs
// are not cut, and plans count whole serves.
//
// The value of a plan of the open lunches is, in money,
//
//       sum over open lunches of  a bought lunch
//     - sum over lunches of       a bought lunch where it is bought; had_lately - liking where it is not
//     + sum over things i of      T(i) x saved(i) / D(i) - K(i) x kept(i) / L(i) - price(i) x packs(i)
//     - sum over frozen packs of  their price
//     - sum over days of          the minutes of its cooked dishes beyond 20, and 2 for each serve more of a dinner
//     - sum over each two lunches of one person of one dish within its gap: had_lately, fading with the days between
//
//     D(i), L(i)         what is there of i in danger and what keeps, T(i) and K(i) their prices
//     saved(i)           of what is in danger, what the lunches eat: day by day, what ends first first
//     kept(i), packs(i)  what they want beyond that: of what keeps, and after the first shopping slot of what the packs
//                        that the plan buys leave and of whole packs beyond these, whichever comes to less. Nothing is
//                        wanted beyond what is there before that slot, nor of what is not sold
//
// with liking as `else` weighs it for one eater; had_lately, against what stands and was had, likewise, and a person's
// part of it is one in as many as live there. A frozen thing counts by weight from the day that it can be thawed.
// Opening and thawing shorten nothing in this sum; what they would send to the bin is told beside it (`extra_bin`).
// Where the balance of the plan with the lunches would lack something that it does not lack without them, those lunches
// together are not to be had. (Spans of more than two weeks compare balances by the rule, which proves less.)
//
// Amounts are exact; each thing's line is rounded to a thousandth of the smallest unit of money.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "basics/day.hpp"
#include "basics/problem.hpp"
#include "flow/cooking.hpp"
#include "flow/parts.hpp"
#include "flow/thaw.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask {

inline constexpr int most_lunch_days = 31;

struct LunchesQuestion {
    int days = 7;      ///< from today on
    int effort = 100;  ///< 100 as usual; moves and solver work are in proportion
};

/// How far it is; called now and then. Returning false ends the search with the best so far.
struct LunchesProgress {
    std::string_view stage;
    basics::Money value;
};
using LunchesWatch = std::function<bool(const LunchesProgress&)>;

enum class LunchKind : std::uint8_t { leftover, frozen_pack, larger, cooked, bought };
[[nodiscard]] std::string_view name(LunchKind kind);  ///< "frozen-pack"

enum class LunchLine : std::uint8_t {
    all_bought,  ///< what bought lunches would cost
    waste_avoided,
    kept,
    to_buy,
    bought,
    effort,
    had_lately,
    liking
};
[[nodiscard]] std::string_view name(LunchLine line);

/// One line of the sum that makes the value.
struct LunchBecause {
    LunchLine line = LunchLine::all_bought;
    basics::Money money;
    std::optional<catalogue::IngredientId> of;
    std::optional<measure::Amount> amount;
    std::string note;
};

/// One person's lunch.
struct Lunch {
    basics::Day day;
    std::size_t person = 0;  ///< position in household.people
    LunchKind kind = LunchKind::bought;
    std::optional<cookbook::DishId> dish;  ///< nothing: bought
    stock::LotNumber from_lot = 0;         ///< 0: what a dinner leaves, is cooked, or is bought
    std::int64_t pack = 0;                 ///< of a frozen pack: the serves in it, in thousandths
    std::optional<basics::Day> made;       ///< the dinner that leaves it, where that is yet to be cooked
    std::optional<basics::Day> use_by;     ///< the last day for a leftover
    std::vector<LunchBecause> because;     ///< what is its own: the thing it eats, had lately, liking
    std::string reason;                    ///< why it is bought
};

/// A lunch dish that is cooked for some of those at home.
struct LunchCooked {
    basics::Day day;
    cookbook::DishId dish;
    std::vector<std::size_t> eaters;
    std::vector<kitchen::LineSwap> swaps;  ///< what is cooked in place of what is not there
    flow::Cooking cooking;
    std::vector<std::pair<catalogue::IngredientId, measure::Amount>> saves;  ///< from the bin
    std::vector<std::string> cautions;
};

/// A planned dinner that is cooked larger.
struct LunchLarger {
    basics::Day day;
    cookbook::DishId dish;
    int more = 0;  ///< serves
};

/// A lunch that was planned before.
struct LunchStanding {
    basics::Day day;
    std::size_t person = 0;
    cookbook::DishId dish;
    bool ready_meal = false;
};

struct LunchesAnswer {
    basics::Span span;
    basics::Day horizon;
    std::vector<Lunch> lunches;            ///< in the order of (day, person)
    std::vector<LunchStanding> standing;   ///< in the order of (day, person)
    std::vector<LunchCooked> cooked;       ///< in the order of (day, dish)
    std::vector<LunchLarger> larger;       ///< in the order of (day, dish)
    std::vector<flow::Purchase> to_buy;    ///< beyond what the plan buys
    std::vector<flow::ThawMove> take_out;  ///< for these lunches and larger dinners, beyond what the plan takes out
    std::vector<LunchBecause> because;     ///< of the whole: their sum is the value
    basics::Money all_bought;              ///< what bought lunches would cost for all that are open
    basics::Money spent;                   ///< what the lunches cost: what keeps, what is bought, bought lunches
    basics::Money saved;                   ///< the price of what they keep from the bin
    basics::Money extra_bin;  ///< what opening, thawing and buying for them toss besides, by the full balance
    basics::Money value;
    basics::Money bound;  ///< no plan of lunches is worth more
    bool proved_best = false;
    double gap = 0;                     ///< (bound - value) / money at stake; 0 where proved best
    basics::Money at_stake;             ///< all_bought, at least 1
    bool stopped = false;               ///< the watch ended it
    basics::Money greedy;               ///< the value where the search began
    std::vector<std::string> cautions;  ///< for all of them
    std::vector<std::string> notes;     ///< what one should know of the question
    kitchen::Plan rows;                 ///< the plan of the span with these lunches in it; bought ones are not planned
};

/// Problems: no days, or more than 31. An empty cookbook is none: lunches are bought. Costs some seconds on a full
/// kitchen of seven days, most of them for the proof; where more than six hundred options may be in a better plan, as
/// from about ten days on, the bound is the relaxation's, and some per cent above. Repeats exactly.
[[nodiscard]] basics::Result<LunchesAnswer> ask_lunches(const kitchen::Kitchen& kitchen, basics::Day today,
                                                        const LunchesQuestion& question,
                                                        const LunchesWatch& watch = {});

}  // namespace samebase::ask
