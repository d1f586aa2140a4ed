// A dish as it would be cooked for a question: who can eat it, what stands in for what, what must be bought.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ask/else.hpp"
#include "flow/balance.hpp"

namespace samebase::ask::detail {

/// What all candidates of one question share.
struct Setting {
    const kitchen::Kitchen* kitchen = nullptr;
    basics::Day today;
    ElseQuestion question;
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::vector<catalogue::Of> using_;  ///< the dish must have one of these in it; none: it need not
    std::string kind;                   ///< and be of this kind, where one is said
    std::vector<std::size_t> eaters;    ///< positions in household.people
    catalogue::AllergenSet guests_avoid;
    const flow::Balancer* balancer = nullptr;
    const flow::Balance* before = nullptr;   ///< with what is planned
    std::vector<std::int64_t> available;     ///< by ingredient handle: what can be used at that dinner
    std::vector<bool> can_be_bought_before;  ///< by ingredient handle: a shopping day lies between
    /// By ingredient handle: what can be used at that dinner and is not used in time by what else is planned. Empty:
    /// dishes are taken as they are written, with no less and no more of anything.
    std::vector<std::int64_t> in_danger;
    bool stock_first = false;  ///< what does the work nearly as well is used up before anything is bought
    flow::Holds holds;
    std::vector<flow::LineSwap> swaps;  ///< decided beforehand
};

/// A dish with everything that was decided for it. Where `ruled_out` is not empty it cannot be an answer.
struct Candidate {
    std::vector<std::string> ruled_out;
    std::vector<flow::LineSwap> swaps;
    std::vector<StandInUse> stand_ins;
    std::vector<double> stand_in_shares;  ///< by stand-in: its weight in the dish, from 0 to 1
    std::vector<Scaled> scaled;
    std::vector<catalogue::IngredientId> bought_at_once;
    std::vector<std::string> cautions;
    std::vector<std::string> vetoed;  ///< who at the table will not eat it, and why: a serve apart, or another dish
    flow::Cooking cooking;
};

[[nodiscard]] Candidate candidate(const Setting& setting, cookbook::DishId dish);

/// Whether a stand-in that takes longer leaves the dish within what the day allows for dinner. Nothing that takes
/// longer is for lunch.
[[nodiscard]] bool time_for(const graph::StandIn& stand_in, const cookbook::Dish& dish,
                            const kitchen::Household& household, basics::Day day, kitchen::Meal meal);

/// Whether there are leftovers or ready meals that were cooked as the dish.
[[nodiscard]] bool has_ready_meal(const kitchen::Kitchen& kitchen, cookbook::DishId dish);

/// A ready meal of the dish, warmed. Ruled out where there is not enough of it, or someone at the table avoids what it
/// holds.
[[nodiscard]] Candidate warmed(const Setting& setting, cookbook::DishId dish);

/// Whether a base starts from what is used.
[[nodiscard]] bool starts_from(const kitchen::Kitchen& kitchen, const cookbook::Dish& dish, const catalogue::Of& what);

/// Whether it is one of these, or of one of these families.
[[nodiscard]] bool is_any(const catalogue::Catalogue& catalogue, catalogue::IngredientId id,
                          const std::vector<catalogue::Of>& of);

/// Whether any ingredient of the eaters' lists of dislikes is in the cooking.
[[nodiscard]] std::vector<std::string> disliked(const kitchen::Kitchen& kitchen, const kitchen::Person& person,
                                                const flow::Cooking& cooking);

/// The household's usual cautions for a cooking: thawing, temperatures, leftovers, labels.
[[nodiscard]] std::vector<std::string> safety_cautions(const kitchen::Kitchen& kitchen, const flow::Cooking& cooking,
                                                       const std::vector<LotUse>& uses, basics::Day today);

}  // namespace samebase::ask::detail
