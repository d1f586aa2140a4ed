// The exact value of a plan of the open lunches, kept while the plan changes: setting one lunch looks only at the
// things that its old and its new source touch.
#pragma once

#include <vector>

#include "ask/detail/lunches_game.hpp"

namespace samebase::ask::detail {

/// An option for each open lunch.
using LunchPlan = std::vector<int>;

/// Every lunch bought.
[[nodiscard]] LunchPlan all_bought(const LunchGame& game);

/// What a thing comes to in a plan.
struct LunchTally {
    std::int64_t saved = 0;
    std::int64_t kept = 0;
    std::int64_t packs = 0;    ///< beyond the plan's own
    std::int64_t bought = 0;   ///< what is eaten of these and of the plan's own
    std::int64_t lacking = 0;  ///< cannot be bought, or not in time
};

class LunchValue {
  public:
    explicit LunchValue(const LunchGame& game);

    void set(int slot, int option);
    void set(const LunchPlan& plan);
    [[nodiscard]] const LunchPlan& plan() const { return plan_; }
    [[nodiscard]] int serves(int source) const { return serves_[static_cast<std::size_t>(source)]; }

    /// In thousandths of money, nothing where all are bought. A plan that cannot be had is worth less than any that
    /// can.
    [[nodiscard]] std::int64_t value() const;
    [[nodiscard]] bool sound() const { return lacking_ == 0 && !cut(); }

    /// What the value would be, and nothing is changed.
    [[nodiscard]] std::int64_t with(int slot, int option);

    [[nodiscard]] LunchTally tally(int thing) const;
    /// By time, what is eaten of each batch of a thing where what is there is eaten first, and last what is not there.
    [[nodiscard]] std::vector<std::vector<std::int64_t>> eaten(int thing) const;
    /// Frozen packs of that kind that are thawed for a day's lunch.
    [[nodiscard]] int thawed(int source) const;
    [[nodiscard]] std::int64_t effort(basics::Day day) const;

  private:
    void count(int source, int more);
    void take(const std::vector<LunchNeed>& needs, int time, int sign);
    void settle(int thing);
    void settle_packs(int pack);
    void settle_day(basics::Day day);
    [[nodiscard]] std::int64_t again(int slot, int option) const;
    [[nodiscard]] bool cut() const;
    [[nodiscard]] std::size_t day_number(basics::Day day) const;

    const LunchGame* game_;
    LunchPlan plan_;
    std::size_t width_;
    std::vector<int> serves_;                        ///< by source
    std::vector<std::int64_t> wants_;                ///< by thing and time
    std::vector<std::int64_t> lines_;                ///< by thing
    std::vector<int> short_;                         ///< by thing
    std::vector<std::int64_t> pack_lines_;           ///< by pack
    std::vector<int> pack_short_;                    ///< by pack
    std::vector<std::vector<int>> pack_sources_;     ///< by pack
    std::vector<std::vector<int>> cooked_;           ///< by day: its sources that are cooked
    std::vector<std::int64_t> effort_;               ///< by day
    std::vector<std::vector<int>> slots_of_person_;  ///< by position of the person
    std::int64_t total_ = 0;
    int lacking_ = 0;
};

[[nodiscard]] std::int64_t value_of(const LunchGame& game, const LunchPlan& plan);

}  // namespace samebase::ask::detail
