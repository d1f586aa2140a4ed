// The exact value of a plan of the open meals, kept while the plan changes: setting one meal looks only at the things
// that its old and its new dish touch.
#pragma once

#include <vector>

#include "ask/detail/clear_game.hpp"

namespace samebase::ask::detail {

/// An option for each open meal; below 0: empty.
using ClearPlan = std::vector<int>;

/// What a thing comes to in a plan.
struct ClearTally {
    std::int64_t saved = 0;
    std::int64_t packs = 0;
    std::int64_t lacking = 0;  ///< cannot be bought
};

class ClearValue {
  public:
    explicit ClearValue(const ClearGame& game);

    void set(int meal, int option);
    void set(const ClearPlan& plan);
    [[nodiscard]] const ClearPlan& plan() const { return plan_; }

    /// In thousandths of money. A plan that lacks what cannot be bought is worth less than any that does not.
    [[nodiscard]] std::int64_t value() const { return total_; }
    [[nodiscard]] bool sound() const { return lacking_ == 0; }

    /// What the value would be, and nothing is changed.
    [[nodiscard]] std::int64_t with(int meal, int option);

    /// Whether an option's dish comes too soon for what the plan has at other meals than `except`.
    [[nodiscard]] bool clashes(int option, int except = -1) const;

    [[nodiscard]] ClearTally tally(int thing) const;
    /// By open meal, what is eaten of each batch of a thing, and last what is bought.
    [[nodiscard]] std::vector<std::vector<std::int64_t>> eaten_by_meal(int thing) const;
    /// What of a thing each open meal saves from the bin.
    [[nodiscard]] std::vector<std::int64_t> saved_by_meal(int thing) const;

  private:
    void want(int thing, int meal, std::int64_t more);
    void settle(int thing);

    const ClearGame* game_;
    ClearPlan plan_;
    std::size_t width_;
    std::vector<std::int64_t> wants_;   ///< by thing and open meal
    std::vector<std::int64_t> wanted_;  ///< by thing
    std::vector<std::int64_t> lines_;   ///< by thing
    std::vector<int> short_;            ///< by thing
    std::int64_t total_ = 0;
    int lacking_ = 0;
};

[[nodiscard]] std::int64_t value_of(const ClearGame& game, const ClearPlan& plan);

}  // namespace samebase::ask::detail
