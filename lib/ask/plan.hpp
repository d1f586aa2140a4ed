// What shall we have? Fills the open dinners of a span, weeks or a year ahead.
//
// What is open. Every dinner from today on that somebody is home for and that nothing is planned for; with `again` the
// planned ones too. The dish of an occasion stands. On a standing night the dinner is of its kind, in turn.
//
// What may be had. A dish that fits the day's minutes, that all who are home can eat (a serve apart counts) and none
// refuses, that is not had again within its gap, and whose ingredients are in stock or are ones that the household
// buys: everyday ones, those of dishes that it has had, those with a price of its own, those in stock, and what a serve
// apart takes. With `unusual` any.
// Only what is needed before the first trip that sells it may be replaced by a stand-in; later it is bought.
//
// The worth of a menu is that of menu/problem.hpp: packs bought and food binned over the whole span against what is
// kept, liking, stand-ins, what was had lately or not for long, and, to keep a week varied (common practice), what it
// costs to have the same dish, base, main or kind too soon, more than two dinners of a kind a week (one soup), more
// than three without meat or fish, or more than five with.
//
// The search is told how far it may go in moves; the bound is Lagrangian (menu/bound.hpp). What is bought and binned
// is told as the balance has it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basics/day.hpp"
#include "basics/problem.hpp"
#include "flow/cooking.hpp"
#include "flow/parts.hpp"
#include "kitchen/kitchen.hpp"
#include "menu/line.hpp"

namespace samebase::ask {

struct PlanQuestion {
    basics::Span span;
    bool again = false;    ///< what is planned in the span is open too
    bool unusual = false;  ///< what the household does not usually buy may be bought
    int effort = 100;      ///< 100 as usual; moves and rounds of the bound are in proportion
    /// For all that is bought from today to the end of the span. Where the menu costs more, cash counts for more until
    /// it does not, or counts for four times as much.
    std::optional<basics::Money> budget{};
    std::optional<basics::Day> explain{};  ///< give the sum of that day and its runners-up
};

/// How far it is; called now and then. Returning false ends the search with the best so far.
struct PlanProgress {
    std::string_view stage;
    basics::Money value;
};
using PlanWatch = std::function<bool(const PlanProgress&)>;

/// Why a dinner is what it is, the most telling first.
struct PlanReason {
    enum class Kind : std::uint8_t {
        wished,      ///< an occasion asks for it
        uses_up,     ///< `of` would end in the bin
        from_stock,  ///< all of it is in the house today
        not_since,   ///< last had on `day`, more than two months before
        never_had,   ///< and the household has written down what it had
    };
    Kind kind = Kind::wished;
    std::optional<catalogue::IngredientId> of;
    std::optional<basics::Day> day;
};

struct PlanDay {
    enum class State : std::uint8_t { proposed, planned, had, wished, empty, nobody_home };
    basics::Day day;
    State state = State::proposed;
    std::optional<std::string> kind;       ///< of a standing night
    std::optional<cookbook::DishId> dish;  ///< nothing: empty, nobody home
    bool ready_meal = false;
    std::vector<flow::StandInUse> stand_ins;
    flow::Cooking cooking;
    std::vector<PlanReason> reasons;
};

/// A night for which no dish will do, and the smallest change that would help.
struct PlanEmpty {
    /// In the order in which they are told: the first that helps.
    enum class Way : std::uint8_t {
        none,     ///< the cookbook has none of that kind
        trip,     ///< what is in the house makes none, and no trip comes before
        unusual,  ///< with things that the household does not usually buy
        minutes,
        gap,     ///< had, planned or chosen too near
        eaters,  ///< none is for all who are home
    };
    basics::Day day;
    std::optional<std::string> kind;
    Way way = Way::none;
    int minutes = 0;  ///< the least that would do, where the way is minutes
    int dishes = 0;   ///< that would do then
};

struct PlanBecause {
    menu::Line line = menu::Line::to_buy;
    basics::Money money;
    std::optional<catalogue::IngredientId> of;
    std::string note;
};

struct PlanRunnerUp {
    cookbook::DishId dish;
    basics::Money less;  ///< than the one chosen, with all else as it is
};

struct PlanWhy {
    basics::Day day;
    std::vector<PlanBecause> because;
    basics::Money worth;  ///< what the menu is worth more with it than with nothing there, but for what nothing costs
    std::vector<PlanRunnerUp> runners_up;
};

/// A shopping day, and what is spent there on everything that is planned until the end of the span.
struct PlanTrip {
    basics::Day day;
    basics::Money spent;
};

struct PlanAnswer {
    basics::Span span;
    std::vector<PlanDay> days;
    std::vector<PlanEmpty> empty;
    std::vector<PlanTrip> trips;
    /// By the balance from today to the end of the span, with what was planned before and what goes without a dish.
    basics::Money spent;
    basics::Money more;                   ///< of that, what the chosen dinners add
    basics::Money binned;                 ///< what no meal takes in time
    std::optional<basics::Money> budget;  ///< that was asked for
    basics::Money cost;                   ///< what the chosen dinners come to at the household's prices
    basics::Money value;
    basics::Money bound;  ///< no menu is worth more
    bool proved_best = false;
    double gap = 0;  ///< (bound - value) / cost; 0 where proved best
    bool stopped = false;
    std::optional<PlanWhy> why;
};

/// Problems: the span ends before today or is longer than two years; the cookbook is empty; effort out of range; the
/// day to explain is not one that is chosen. Costs some seconds for a month; repeats exactly.
[[nodiscard]] basics::Result<PlanAnswer> ask_plan(const kitchen::Kitchen& kitchen, basics::Day today,
                                                  const PlanQuestion& question, const PlanWatch& watch = {});

/// The chosen dinners as rows of a plan.
[[nodiscard]] kitchen::Plan rows_of(const PlanAnswer& answer);

}  // namespace samebase::ask
