// What keeps a menu varied: the groups of alike dishes, and what stands of each. The rules are common practice.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "ask/plan.hpp"
#include "menu/problem.hpp"

namespace samebase::ask::detail {

class PlanGroups {
  public:
    /// Groups are added to the problem as dishes are looked at. Kitchen and problem outlive this; `kitchen` has what
    /// stands in its plan.
    PlanGroups(const kitchen::Kitchen& kitchen, basics::Day first, menu::Problem& problem);

    /// The dish's groups, in order.
    [[nodiscard]] const std::vector<int>& of(cookbook::DishId dish);

    /// What the groups cost on that day beside dinners that were had or stand. Bases are left to the line that says
    /// what was had lately.
    void beside_what_stands(basics::Day day, const std::vector<int>& groups, std::vector<PlanBecause>& because) const;

    /// Writes into the groups how many of each stand in each week. Once all dishes have been looked at.
    void count_standing();

    /// Weeks begin on Monday; the first day's is 0.
    [[nodiscard]] int week_of(basics::Day day) const;

  private:
    struct Standing {
        basics::Day day;
        cookbook::DishId dish;
    };
    int group(const std::string& key, const std::string& name, const menu::Group& rules);

    const kitchen::Kitchen& kitchen_;
    basics::Day monday_;
    menu::Problem& problem_;
    std::map<std::string, int> by_key_;
    std::vector<std::string> names_;  ///< by group, as a reason says it; empty: no reason
    std::map<cookbook::DishId, std::vector<int>> of_;
    std::vector<bool> had_;  ///< by dish handle
    bool knows_what_was_had_ = false;
    std::vector<Standing> standing_;              ///< in the order of days
    std::vector<std::vector<basics::Day>> days_;  ///< by group: when one of it was had or stands
};

}  // namespace samebase::ask::detail
