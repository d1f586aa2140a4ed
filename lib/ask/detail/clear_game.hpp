// The question of ask/clear.hpp as plain numbers: open meals, what may be had at each, and what there is of each
// ingredient. Built once; the search and the programme look at nothing else.
//
// Money here is in thousandths of the smallest unit.
#pragma once

#include <cstdint>
#include <memory>
#include <utility>
#include <vector>

#include "ask/clear.hpp"
#include "ask/detail/candidate.hpp"
#include "ask/detail/worth.hpp"

namespace samebase::ask::detail {

/// The open meals at which something can be eaten, as bits.
using OpenBits = std::uint64_t;
inline constexpr int most_clear_days = 31;

/// What is left of one unit of stock once everything that stands has eaten.
struct ClearBatch {
    std::int64_t amount = 0;
    OpenBits when = 0;
    flow::Slot last = flow::never;
    stock::LotNumber lot = 0;
    bool danger = false;
    basics::Money price;  ///< of the amount
};

struct ClearThing {
    catalogue::IngredientId ingredient;
    std::vector<ClearBatch> batches;  ///< what ends first first, then by lot
    std::int64_t there = 0;
    std::int64_t danger = 0;
    basics::Money danger_price;
    bool crisper = false;   ///< some of what is in danger lies in one
    double worth = 0;       ///< thousandths of money for an amount saved, as it counts
    std::int64_t pack = 0;  ///< 0: cannot be bought
    std::int64_t pack_price = 0;
    bool always = true;  ///< all of it can be eaten at every open meal
};

struct ClearNeed {
    int thing = 0;
    std::int64_t amount = 0;
};

struct ClearOption {
    int meal = 0;  ///< position of the open meal
    cookbook::DishId dish;
    std::vector<ClearNeed> needs;  ///< in the order of things, each once
    std::int64_t fixed = 0;        ///< liking less stand-ins and had lately
    int detail = 0;
};

/// What an option is beside its numbers.
struct ClearDetail {
    flow::Cooking cooking;  ///< with what is scaled
    std::vector<flow::StandInUse> stand_ins;
    std::vector<flow::Scaled> scaled;
    std::vector<ClearBecause> because;
    std::vector<std::string> cautions;
    bool ready_meal = false;
};

struct OpenMeal {
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    flow::Slot slot = 0;
    std::int64_t empty = 0;  ///< what leaving it empty costs
    std::vector<int> options;
};

struct ClearGame {
    basics::Span span;
    basics::Day horizon;
    kitchen::Kitchen bare;  ///< with the plan that stands
    std::vector<OpenMeal> meals;
    std::vector<ClearOption> options;
    std::vector<ClearThing> things;  ///< in the order of ingredients
    std::vector<ClearDetail> details;
    std::vector<flow::Cooking> standing;
    std::int64_t at_stake = 0;

    /// Whether the two options' meals may not both have them: one dish too soon again.
    [[nodiscard]] bool clash(const ClearOption& a, const ClearOption& b) const;
    [[nodiscard]] int gap(cookbook::DishId dish) const { return bare.cookbook()[dish].gap; }
};

[[nodiscard]] std::unique_ptr<ClearGame> clear_game(const kitchen::Kitchen& kitchen, basics::Day today,
                                                    basics::Span span);

/// What of a thing is in danger and can be eaten at that open meal, if nothing else is chosen.
[[nodiscard]] std::int64_t danger_at(const ClearThing& thing, int meal);
[[nodiscard]] std::int64_t there_at(const ClearThing& thing, int meal);

}  // namespace samebase::ask::detail
