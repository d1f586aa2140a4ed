// Branch and cut, for programmes in whole values whose relaxation says little until rows are added to it.
//
// The relaxation is tightened in rounds: by rows on demand where its values break them, by cuts of the caller's, and by
// mixed integer rounding (Marchand and Wolsey, 2001). Columns that are 0 in whatever costs less than a known solution
// leave it by their reduced cost. Then a search tree is gone through, the node with the least bound first, so that the
// bound rises with every node.
#pragma once

#include <functional>
#include <memory>

#include "solver/programme.hpp"

namespace samebase::solver {

/// By the columns of the programme.
using Values = std::vector<double>;

/// Rows that are in play only once a relaxation breaks them.
struct OnDemand {
    std::vector<Row> needed;                              ///< say what a solution is: the search tree has all of them
    std::vector<Row> helpful;                             ///< every solution in whole values keeps them as it is
    std::function<std::vector<Row>(const Values&)> cuts;  ///< more such rows, that the values break; may be empty
};

/// Asked at the nodes of the search tree; either may be empty.
struct AtNodes {
    std::function<bool()> go_on;                   ///< false ends the search
    std::function<Values(const Values&)> rounded;  ///< a solution near the relaxation's values; empty: none is known
};

class BranchAndCut {
  public:
    BranchAndCut(Programme programme, const Terms& cost, OnDemand rows);
    ~BranchAndCut();
    BranchAndCut(const BranchAndCut&) = delete;
    BranchAndCut& operator=(const BranchAndCut&) = delete;

    /// Tightens the relaxation. `known` are the values of a solution; a column is left out where it can only raise the
    /// cost above the known one and the margin. Proved: `cost` and `bound` are the relaxation's, and `reduced` is
    /// infinite for what is left out.
    [[nodiscard]] Solution tighten(const Values& known, double margin);

    /// Searches what tighten() left, once that is proved. The cheapest of what is found and of `known`; no solution
    /// costs less than `bound`, but for the margin. Repeats exactly unless the guard or the caller ends it.
    [[nodiscard]] Solution search(const Values& known, const Effort& effort, const AtNodes& at_nodes);

    /// The programme with the rows that say what a solution is, and 0 for what tighten() left out.
    [[nodiscard]] Programme left() const;

    /// Rows times columns of what tighten() left: what a node costs grows like that.
    [[nodiscard]] std::int64_t size() const;

  private:
    class Tightened;
    std::unique_ptr<Tightened> tightened_;
};

}  // namespace samebase::solver
