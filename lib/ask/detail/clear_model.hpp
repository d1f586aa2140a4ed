// The question of clear as a programme in whole numbers: minimised, so that what is worth something costs less than
// nothing. Money in it is in the smallest unit.
//
// Columns: one for each option and each empty meal (0 or 1), one for how often a dish is had, one for the packs that
// are bought of a thing, one for what is saved of it. What stands in the way of an amount is said by sets of meals: the
// meals that reach none but some batches eat no more than these hold and than is bought. Where the meals that the
// batches of a thing can be eaten at lie within one another, these sets are few and say all; else columns say what each
// meal eats of each batch.
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "ask/detail/clear_value.hpp"
#include "solver/branch_and_cut.hpp"
#include "solver/covers.hpp"

namespace samebase::ask::detail {

class ClearModel {
  public:
    explicit ClearModel(const ClearGame& game);

    [[nodiscard]] const solver::Programme& programme() const { return programme_; }
    [[nodiscard]] const solver::Terms& cost() const { return cost_; }
    /// Dishes kept apart are needed; packs that a meal or a dish would have to buy alone help.
    [[nodiscard]] const solver::OnDemand& on_demand() const { return on_demand_; }

    /// By option.
    [[nodiscard]] int column_of(int option) const { return column_of_[static_cast<std::size_t>(option)]; }

    /// All columns' values for a plan: eaten as ClearValue eats.
    [[nodiscard]] solver::Values values(const ClearPlan& plan) const;
    /// Of the options that have a part in the values, the greatest first, those that can be had together.
    [[nodiscard]] ClearPlan plan(const solver::Values& values) const;

  private:
    struct Want {
        int option = 0;
        std::int64_t amount = 0;
    };
    /// What the options want of a thing, by open meal.
    using Wants = std::vector<std::vector<Want>>;
    struct Saved {
        int thing;
        int meal;   ///< below 0: all meals together
        int batch;  ///< below 0: bought
        int column;
        double unit;
    };
    using Factors = std::vector<std::pair<int, double>>;  ///< by option

    int add(double cost, double most, bool whole);
    void one_at_a_meal();
    void dishes();
    void things();
    void thing(int number, const Wants& wants);
    void by_sets_of_meals(int number, const Wants& wants, const std::vector<const ClearBatch*>& widest_first);
    void saved_by_sets_of_meals(int number, const Wants& wants, const std::vector<const ClearBatch*>& widest_first);
    void by_each_meal(int number, const Wants& wants);
    void packs_alone(int number, const Wants& wants, int packs);
    int packs_of(int number, std::int64_t most_lacking);

    [[nodiscard]] const ClearOption& option(int o) const { return game_->options[static_cast<std::size_t>(o)]; }
    [[nodiscard]] std::vector<solver::Terms> stretches(cookbook::DishId dish, const Factors& options) const;

    const ClearGame* game_;
    solver::Programme programme_;
    solver::Terms cost_;
    solver::OnDemand on_demand_;
    std::vector<int> column_of_;
    std::vector<int> empty_;
    std::map<cookbook::DishId, int> had_;  ///< how often
    std::map<int, int> packs_;             ///< by thing
    std::vector<Saved> saved_;
    std::vector<solver::RoomInUnits> pack_rows_;
};

}  // namespace samebase::ask::detail
