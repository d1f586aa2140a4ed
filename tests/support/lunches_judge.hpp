// What a plan of lunches is worth, found by living through it meal by meal, and the best of all plans by trying every
// one. Written from the words of ask/lunches.hpp alone; shares no code with the search or the programme.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ask/lunches.hpp"
#include "flow/balance.hpp"

namespace samebase::tests {

struct LunchChoice {
    basics::Day day;
    std::size_t person = 0;
    ask::LunchKind kind = ask::LunchKind::bought;
    std::optional<cookbook::DishId> dish;
    std::optional<catalogue::IngredientId> of;  ///< the leftover
    stock::LotNumber lot = 0;                   ///< of a frozen pack
    std::int64_t pack = 0;                      ///< and what is in it
    std::size_t dinner = 0;                     ///< the row of the plan that is cooked larger
    std::vector<kitchen::LineSwap> swaps{};     ///< what is cooked in place of what is not there
};

struct JudgedLunches {
    double value = 0;  ///< in minor units, no line rounded
    std::vector<std::string> faults;
};

/// The days that a thing keeps there, where the catalogue says them.
[[nodiscard]] std::optional<int> told(const catalogue::Ingredient& thing, catalogue::Keep where);

class LunchJudge {
  public:
    /// The kitchen outlives the judge.
    LunchJudge(const kitchen::Kitchen& kitchen, basics::Day today, int days);

    struct Open {
        basics::Day day;
        std::size_t person = 0;
    };
    [[nodiscard]] const std::vector<Open>& open() const { return open_; }
    /// Everything that may be put before that person on that day; bought is the last.
    [[nodiscard]] std::vector<LunchChoice> choices(const Open& open) const;
    [[nodiscard]] JudgedLunches judge(std::span<const LunchChoice> lunches) const;
    /// Whether the balance of the plan with these lunches lacks nothing more than it does without them.
    [[nodiscard]] bool balances(std::span<const LunchChoice> lunches) const;
    /// The value of the best plan, and how many were tried; nothing where there are more than `most`.
    [[nodiscard]] std::optional<double> best_of_all(std::int64_t most) const;

    /// The answer's lunches in these terms.
    [[nodiscard]] std::vector<LunchChoice> choices_of(const ask::LunchesAnswer& answer) const;

  private:
    struct Batch {
        catalogue::IngredientId of;
        std::int64_t amount = 0;
        int first = 0;
        int last = 0;
        stock::LotNumber lot = 0;
        std::optional<cookbook::DishId> dish;
        std::int64_t pack = 0;  ///< of a frozen pack of several serves: what was in it
        basics::Money price;    ///< of `amount` as it was at first
        std::int64_t whole = 0;
    };
    struct Want {
        catalogue::IngredientId of;
        std::int64_t amount = 0;
        int meal = 0;
    };

    void seat();
    void stock_up();
    void eat_what_stands();
    void price();
    [[nodiscard]] int meal_number(basics::Day day, kitchen::Meal meal) const;
    [[nodiscard]] bool in_danger(const Batch& batch) const { return batch.last <= end_; }
    [[nodiscard]] int keeps(catalogue::IngredientId id) const;
    [[nodiscard]] bool may_have(std::size_t person, cookbook::DishId dish, bool as_leftover,
                                std::span<const kitchen::LineSwap> with = {}) const;
    [[nodiscard]] bool may_have_leftover(std::size_t person, catalogue::IngredientId of) const;
    [[nodiscard]] bool is_lunch(catalogue::IngredientId of) const;
    [[nodiscard]] std::optional<cookbook::DishId> dish_of(catalogue::IngredientId of, int meal) const;
    [[nodiscard]] bool had_as_leftover(cookbook::DishId dish, basics::Day day) const;
    [[nodiscard]] std::vector<Want> wants_of(std::span<const LunchChoice> lunches) const;
    [[nodiscard]] std::vector<flow::Cooking> cookings_of(std::span<const LunchChoice> lunches) const;
    [[nodiscard]] double liking(const LunchChoice& lunch) const;
    [[nodiscard]] double had_lately(const LunchChoice& lunch) const;
    [[nodiscard]] static std::int64_t eat(std::vector<Batch>& batches, const Want& want, int end,
                                          std::map<catalogue::IngredientId, std::int64_t>* saved,
                                          std::map<catalogue::IngredientId, std::int64_t>* kept);
    [[nodiscard]] double cost_of_rest(catalogue::IngredientId of, std::int64_t early, std::int64_t late,
                                      std::int64_t lacks) const;

    const kitchen::Kitchen* kitchen_;
    basics::Day today_;
    int days_;
    basics::Day horizon_;
    int end_ = 0;
    int buys_from_ = 1'000'000;  ///< the first meal for which something can be bought
    std::vector<Open> open_;
    std::vector<Batch> batches_;  ///< packs of several serves are not among them
    std::vector<Batch> packs_;
    std::map<catalogue::IngredientId, std::int64_t> plan_buys_;
    std::map<catalogue::IngredientId, double> worth_;
    std::map<catalogue::IngredientId, double> cost_;
    flow::Holds holds_;
};

}  // namespace samebase::tests
