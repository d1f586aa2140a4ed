// What else can I make from this? Ranks dishes by worth, and shows every line of every sum.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "basics/day.hpp"
#include "basics/problem.hpp"
#include "flow/balance.hpp"
#include "flow/parts.hpp"
#include "kitchen/kitchen.hpp"
#include "menu/line.hpp"

namespace samebase::ask {

struct ElseQuestion {
    basics::Day day;  ///< of the dinner
    /// What to use: an ingredient or a family. Nothing: the main ingredient of `instead_of`.
    std::optional<catalogue::Of> using_;
    std::optional<stock::LotNumber> lot;         ///< the lot that was asked about, where one was
    std::optional<cookbook::DishId> instead_of;  ///< a dish that was named
    std::optional<int> serves;                   ///< nothing: as many as are home
    int left = 0;                                ///< extra serves on purpose
    std::vector<catalogue::Of> also{};           ///< what a general word means beside `using_`: any of them will do
    std::string word{};                          ///< the general word
    std::string kind{};                          ///< a kind of dish, where nothing is said that it must use: "soup"
    bool from_stock = false;  ///< only what needs no trip before the next one; all, where that would be none
};

using menu::Line;
using menu::line_count;
using menu::name;

/// One line of the sum that makes a dish's worth.
struct Because {
    Line line = Line::waste_avoided;
    basics::Money money;
    std::optional<catalogue::IngredientId> of;
    std::optional<measure::Amount> amount;
    std::string note;
};

using flow::LotUse;
using flow::Purchase;
using flow::Scaled;
using flow::StandInUse;

struct Leaving {
    catalogue::IngredientId ingredient;
    std::int64_t serves_thousandths = 0;
    std::optional<basics::Day> use_by;
};

struct Alternative {
    cookbook::DishId dish;
    std::string label;  ///< the dish's name, without what a stand-in takes from it: see honest_name()
    bool ready_meal = false;
    bool needs_trip = false;  ///< something has to be bought for it, and no shopping day comes before
    bool same_base = false;
    graph::Ppm likeness = 0;  ///< to the dish that it would replace; 0 where there is none
    basics::Money worth;      ///< the sum of `because`, exactly
    std::vector<Because> because;
    std::vector<LotUse> uses;
    std::vector<StandInUse> stand_ins;
    std::vector<Scaled> scaled;  ///< of what there is not enough of, or what nothing planned eats in time
    /// All that is to be bought for this dinner, whether or not the plan would buy it later anyway.
    std::vector<Purchase> to_buy;
    /// What it wants more of than there is or can be bought by then, as of a leftover: fewer eat it, or more is made.
    std::vector<std::pair<catalogue::IngredientId, measure::Amount>> lacks;
    std::vector<Leaving> leaves;
    std::vector<std::string> cautions;
    flow::Cooking cooking;  ///< what would be cooked
};

struct ElseAnswer {
    ElseQuestion question;
    std::vector<catalogue::Of> used;  ///< any of these; none: dishes of question.kind
    std::int64_t serves_thousandths = 0;
    basics::Day horizon;
    std::optional<cookbook::DishId> planned;  ///< for that dinner
    std::vector<Alternative> alternatives;    ///< best first
    std::size_t with_trip = 0;                ///< so many more need a trip, and were left out
};

/// Ranks every dinner that can be made from it; with nothing planned or named, the dishes of the standing night's kind.
/// Problems: nothing to use can be told, the dish has no main ingredient,
/// the day lies before today, nobody is home and no serves are given. Costs one balance and a part of one for each
/// dish.
[[nodiscard]] basics::Result<ElseAnswer> ask_else(const kitchen::Kitchen& kitchen, basics::Day today,
                                                  const ElseQuestion& question);

/// Why a dish is not among the answers, or what holds it down.
struct WhyNot {
    cookbook::DishId dish;
    std::vector<std::string> reasons;     ///< what rules it out; empty where it is among the answers
    std::optional<std::size_t> position;  ///< among the answers, from 0
    std::optional<Alternative> alternative;
};

[[nodiscard]] basics::Result<WhyNot> why_not(const kitchen::Kitchen& kitchen, basics::Day today,
                                             const ElseQuestion& question, cookbook::DishId dish);

}  // namespace samebase::ask
