// The exact worth of a choice, kept while the choice changes: setting one slot looks only at the items and groups that
// its old and its new option touch.
#pragma once

#include <vector>

#include "menu/problem.hpp"
#include "menu/supply.hpp"

namespace samebase::menu {

class Evaluator {
  public:
    /// Every slot empty. The problem outlives the evaluator.
    explicit Evaluator(const Problem& problem);

    void set(int slot, int option);
    void set(const Choice& choice);

    [[nodiscard]] Worth value() const { return total_; }
    [[nodiscard]] const Choice& plan() const { return choice_; }
    /// Whether everything that it takes can be had.
    [[nodiscard]] bool sound() const { return lacking_ == 0; }

    /// What the value would be; nothing is changed.
    [[nodiscard]] Worth with(int slot, int option);

    /// Whether the option may not be had, where it is, for what is chosen at other slots than `except`.
    [[nodiscard]] bool clashes(int option, int except = -1) const;

    /// What an item comes to as it is.
    [[nodiscard]] Supplied supplied(int item);

    /// What the option at its slot costs by its groups, beside what else is chosen.
    [[nodiscard]] Worth group_cost(int option) const;

  private:
    void add(const Option& option);
    void remove(const Option& option);
    void settle(const Option& option);
    [[nodiscard]] Worth pairs(int group, int day) const;

    const Problem* problem_;
    Choice choice_;
    int weeks_ = 1;
    std::vector<std::vector<flow::Want>> wants_;  ///< by item, of what is chosen, in the order of time
    std::vector<std::vector<int>> days_;          ///< by group: days of what is chosen, in order
    std::vector<int> a_week_;                     ///< by group and week: how many are chosen or stand
    std::vector<Worth> lines_;                    ///< by item
    std::vector<bool> lacks_;                     ///< by item
    Worth total_ = 0;
    int lacking_ = 0;
    Supply supply_;
};

[[nodiscard]] Worth value_of(const Problem& problem, const Choice& choice);

}  // namespace samebase::menu
