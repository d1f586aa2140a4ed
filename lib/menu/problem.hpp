// The menu-planning problem of operations research, as plain numbers: slots to fill, options for each, items that
// options take from stock or have bought, and rules of what may come again how soon. Built by a question; evaluator,
// search and bound look at nothing else.
//
// The worth of a choice of options is
//
//     sum over slots  of  the option's own worth, or less what an empty slot costs
//   - sum over items  of  spent + tossed - kept        (menu/supply.hpp, with all that is chosen)
//   - sum over groups of  the price of every pair that comes again too soon
//   - sum over groups of  the price of every option beyond its number a week
//
// Money here is in thousandths of its smallest unit. Time runs in the slots of flow/component.hpp, from the first day
// of the problem on.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basics/day.hpp"
#include "cookbook/cookbook.hpp"
#include "flow/component.hpp"

namespace samebase::menu {

/// Thousandths of the smallest unit of money.
using Worth = std::int64_t;
inline constexpr Worth thousandths = 1000;

/// More than any choice can be worth: ten million in money. An item of which options take more than can be had costs
/// this much, once.
inline constexpr Worth cannot_be_had = 1'000'000'000'000;

/// What there is of an item for options to take, as one: what stands has eaten before. As flow::Unit, with what is
/// left.
struct Batch {
    std::int64_t amount = 0;
    flow::Slot first = 0;  ///< from when and until when it can be used, both included
    flow::Slot last = flow::never;
    std::int64_t whole = 1;  ///< what `price` is for
    Worth price = 0;
    int opened_days = -1;  ///< below 0: opening changes nothing
    int thaw_days = 0;
    int thawed_days = 0;
    bool cold_water = false;
    bool in_stock = false;  ///< today

    friend bool operator==(const Batch&, const Batch&) = default;
};

/// An ingredient that options take.
struct Item {
    catalogue::IngredientId ingredient;
    std::vector<Batch> there;
    std::optional<flow::Offer> offer;  ///< what can be bought
    int days = 1;                      ///< of the problem
    int kept_thousandths = 0;          ///< of the price of what is good at the end: so much of it counts
};

struct Need {
    int item = 0;
    std::int64_t amount = 0;

    friend bool operator==(const Need&, const Need&) = default;
};

/// What one slot may be filled with. The groups that it belongs to are in order, each once.
struct Option {
    int slot = 0;
    cookbook::DishId dish;
    std::vector<Need> needs;  ///< in the order of items, each once
    Worth worth = 0;          ///< by itself: liking, less stand-ins, effort, what stands too near
    std::vector<int> groups;
    int detail = 0;  ///< of the question's own
};

/// Options that are alike: one dish, one base, one kind.
struct Group {
    int within = 0;               ///< days: two of it that are less than this apart come too soon
    bool never = false;           ///< too soon is forbidden; else it costs
    Worth price = 0;              ///< of two on consecutive days; falls evenly to nothing at `within`
    int a_week = -1;              ///< at most so many in a week from Monday on; below 0: any number
    Worth price_over = 0;         ///< of each more
    std::vector<int> standing{};  ///< by week of the problem: how many of it stand; empty: none
};

/// A meal to fill.
struct MealSlot {
    basics::Day day;
    flow::Slot time = 0;
    int day_number = 0;  ///< from the first day of the problem
    int week = 0;        ///< from the week of the first day on
    Worth empty = 0;     ///< what leaving it empty costs
    std::vector<int> options;
};

struct Problem {
    int days = 1;
    std::vector<MealSlot> slots;  ///< in the order of time
    std::vector<Option> options;
    std::vector<Item> items;
    std::vector<Group> groups;
};

/// An option for each slot; below 0: empty.
using Choice = std::vector<int>;

/// What two options of a group cost that are so many days apart; `never` is not looked at.
[[nodiscard]] Worth too_soon(const Group& group, int days_apart);

/// Why the problem is none: orders, positions out of range, amounts not above 0.
[[nodiscard]] std::string check(const Problem& problem);

}  // namespace samebase::menu
