#include "solver/branch_and_cut.hpp"

#include <algorithm>
#include <cmath>
#include <coin/CbcCompareObjective.hpp>
#include <coin/CbcEventHandler.hpp>
#include <coin/CbcHeuristic.hpp>
#include <coin/CbcModel.hpp>
#include <coin/CglMixedIntegerRounding2.hpp>
#include <coin/CoinError.hpp>
#include <coin/CoinPackedMatrix.hpp>
#include <coin/CoinWarmStartBasis.hpp>
#include <coin/OsiClpSolverInterface.hpp>
#include <numeric>
#include <utility>

#include "solver/detail/numbers.hpp"
#include "solver/detail/turn.hpp"

namespace samebase::solver {

namespace {

constexpr double whole_enough = 1e-6;

// Rounds of cuts. More of them gain little that the search tree does not gain as fast.
constexpr int most_rounds = 40;
constexpr int fewest_rounds = 3;
constexpr std::int64_t size_of_all_rounds = 200'000'000;  ///< rows times columns times rounds
constexpr int most_idle_rounds = 5;
constexpr double idle = 0.001;  ///< of what lies between the known cost and the relaxation's
constexpr std::size_t most_cuts_in_a_round = 60;
constexpr double least_violation = 1e-4;  ///< of a cut whose factors have a length of 1
constexpr int rounds_between_clearings = 3;
constexpr double worth_leaving_out = 0.03;  ///< of the columns

// The search tree: few trials of a column before its history is trusted, each cut short, so that nodes are many.
constexpr int trials_at_a_node = 5;
constexpr int trials_before_trust = 4;
constexpr int iterations_of_a_trial = 40;
constexpr int nodes_between_roundings = 20;

bool broken(const Row& row, const Values& values) {
    const double sum = detail::sum_of(row.terms, values);
    return sum > row.upper + whole_enough * 10 || sum < row.lower - whole_enough * 10;
}

/// A row in the columns that are left.
struct Packed {
    CoinPackedVector terms;
    double lower = 0;
    double upper = 0;

    [[nodiscard]] double at(const Values& values) const {
        double sum = 0;
        for (int i = 0; i < terms.getNumElements(); ++i)
            sum += terms.getElements()[i] * values[static_cast<std::size_t>(terms.getIndices()[i])];
        return sum;
    }
    /// How far outside the values lie, in lengths of the row's factors.
    [[nodiscard]] double violation(const Values& values) const {
        const double sum = at(values);
        return std::max(sum - upper, lower - sum) / std::max(1e-9, std::sqrt(terms.normSquare()));
    }
};

class Watched : public CbcEventHandler {
  public:
    explicit Watched(const std::function<bool()>* go_on) : go_on_(go_on) {}
    CbcEventHandler* clone() const override { return new Watched(*this); }  // CBC owns what is cloned
    CbcAction event(CbcEvent event) override { return event == node && *go_on_ && !(*go_on_)() ? stop : noAction; }

  private:
    const std::function<bool()>* go_on_;
};

/// Values of the solver's columns to a solution in them; empty where there is none.
using Rounded = std::function<Values(const double*)>;

class Rounding : public CbcHeuristic {
  public:
    Rounding(CbcModel& model, const Rounded* rounded, const Values* cost)
        : CbcHeuristic(model), rounded_(rounded), cost_(cost) {
        setWhen(3);  // wherever it may
    }
    CbcHeuristic* clone() const override { return new Rounding(*this); }  // CBC owns what is cloned
    void resetModel(CbcModel* model) override { model_ = model; }
    int solution(double& objective, double* best) override {
        if (model_->getNodeCount() % nodes_between_roundings != 0) return 0;
        const Values found = (*rounded_)(model_->solver()->getColSolution());
        if (found.empty()) return 0;
        const double cost = std::inner_product(found.begin(), found.end(), cost_->begin(), 0.0);
        if (cost >= objective) return 0;
        objective = cost;
        std::copy(found.begin(), found.end(), best);
        return 1;
    }

  private:
    const Rounded* rounded_;
    const Values* cost_;
};

}  // namespace

class BranchAndCut::Tightened {
  public:
    Tightened(Programme programme, const Terms& cost, OnDemand rows)
        : programme_(std::move(programme)),
          rows_(std::move(rows)),
          costs_(programme_.columns.size(), 0),
          column_(programme_.columns.size()),
          position_(programme_.columns.size()) {
        for (const auto& [column, factor] : cost) costs_[static_cast<std::size_t>(column)] += factor;
        std::iota(column_.begin(), column_.end(), 0);
        std::iota(position_.begin(), position_.end(), 0);
        all_out_of_play();
        load();
    }

    Solution tighten(const Values& known, double margin) {
        const std::lock_guard lock(detail::one_at_a_time());
        Solution solution;
        lp_.initialSolve();
        if (!resolve()) return solution;
        const double limit = cost_of(known) + margin;
        leave_out(known, limit);
        const std::int64_t affordable = size_of_all_rounds / std::max<std::int64_t>(1, size());
        const auto rounds = static_cast<int>(std::clamp<std::int64_t>(affordable, fewest_rounds, most_rounds));
        int idle_rounds = 0;
        for (int round = 0; round < rounds && idle_rounds < most_idle_rounds; ++round) {
            const double before = lp_.getObjValue();
            if (add_cuts(known) == 0) break;
            if (!resolve()) return solution;
            if (round % rounds_between_clearings == rounds_between_clearings - 1) clear_slack_rows();
            leave_out(known, limit);
            if (!resolve()) return solution;
            idle_rounds = lp_.getObjValue() - before < idle * (limit - before) ? idle_rounds + 1 : 0;
        }
        solution.status = Status::proved;
        solution.values = values_of(lp_.getColSolution());
        solution.cost = solution.bound = lp_.getObjValue();
        solution.reduced.assign(column_count(), unbounded);
        for (std::size_t i = 0; i < column_.size(); ++i)
            solution.reduced[static_cast<std::size_t>(column_[i])] = lp_.getReducedCost()[i];
        put_needed_rows_in_play();
        bound_ = solution.bound;
        return solution;
    }

    [[nodiscard]] Solution nothing_new(const Values& known) const {
        Solution solution;
        solution.status = Status::limited;
        solution.values = known;
        solution.cost = cost_of(known);
        solution.bound = std::min(solution.cost, bound_);
        return solution;
    }

    Solution search(const Values& known, const Effort& effort, const AtNodes& at_nodes) {
        const std::lock_guard lock(detail::one_at_a_time());
        lp_.setupForRepeatedUse(1, 0);
        lp_.setIntParam(OsiMaxNumIterationHotStart, iterations_of_a_trial);
        CbcModel model(lp_);
        model.setLogLevel(0);
        model.messageHandler()->setLogLevel(0);
        model.solver()->messageHandler()->setLogLevel(0);
        const Values start = of_columns_left(known);
        model.setBestSolution(start.data(), static_cast<int>(start.size()), cost_of(known));
        CbcCompareObjective least_bound_first;
        model.setNodeComparison(least_bound_first);
        model.setNumberStrong(trials_at_a_node);
        model.setNumberBeforeTrust(trials_before_trust);
        model.setAllowableGap(0);
        model.setMaximumNodes(static_cast<int>(std::min<std::int64_t>(effort.nodes, 2'000'000'000)));
        model.setMaximumSeconds(effort.guard_seconds);
        const Watched watched(&at_nodes.go_on);
        model.passInEventHandler(&watched);
        const Rounded rounded = [&](const double* values) {
            const Values found = at_nodes.rounded(values_of(values));
            return found.empty() ? found : of_columns_left(found);
        };
        const Values costs = of_columns_left(costs_);
        Rounding rounding(model, &rounded, &costs);
        if (at_nodes.rounded) model.addHeuristic(&rounding, "rounding");
        model.branchAndBound();
        return told(model, known);
    }

    [[nodiscard]] Programme left() const {
        Programme programme = programme_;
        for (std::size_t i = 0; i < position_.size(); ++i) {
            if (position_[i] < 0) programme.columns[i].upper = 0;
        }
        programme.rows.insert(programme.rows.end(), rows_.needed.begin(), rows_.needed.end());
        return programme;
    }

    [[nodiscard]] std::int64_t size() const {
        return static_cast<std::int64_t>(lp_.getNumRows()) * static_cast<std::int64_t>(lp_.getNumCols());
    }

  private:
    [[nodiscard]] std::size_t column_count() const { return programme_.columns.size(); }

    void load() {
        lp_.messageHandler()->setLogLevel(0);
        lp_.getModelPtr()->setLogLevel(0);
        CoinPackedMatrix matrix(false, 0, 0);
        matrix.setDimensions(0, static_cast<int>(column_count()));
        Values lower;
        Values upper;
        for (const Row& row : programme_.rows) {
            const Packed packed = pack(row);
            matrix.appendRow(packed.terms);
            lower.push_back(packed.lower);
            upper.push_back(packed.upper);
        }
        Values least;
        Values most;
        for (const Column& column : programme_.columns) {
            least.push_back(detail::finite(column.lower));
            most.push_back(detail::finite(column.upper));
        }
        lp_.loadProblem(matrix, least.data(), most.data(), costs_.data(), lower.data(), upper.data());
        for (std::size_t i = 0; i < column_count(); ++i) {
            if (programme_.columns[i].whole) lp_.setInteger(static_cast<int>(i));
        }
    }

    [[nodiscard]] Packed pack(const Row& row) const {
        Packed packed{{}, detail::finite(row.lower), detail::finite(row.upper)};
        for (const auto& [column, factor] : row.terms) {
            const int here = position_[static_cast<std::size_t>(column)];
            if (here >= 0) packed.terms.insert(here, factor);
        }
        return packed;
    }

    [[nodiscard]] Values values_of(const double* left) const {
        Values values(column_count(), 0);
        for (std::size_t i = 0; i < column_.size(); ++i) values[static_cast<std::size_t>(column_[i])] = left[i];
        return values;
    }
    [[nodiscard]] Values of_columns_left(const Values& values) const {
        Values left;
        left.reserve(column_.size());
        for (const int column : column_) left.push_back(values[static_cast<std::size_t>(column)]);
        return left;
    }
    [[nodiscard]] double cost_of(const Values& values) const {
        return std::inner_product(values.begin(), values.end(), costs_.begin(), 0.0);
    }

    /// All at once: each addition copies the matrix.
    void add(const std::vector<Packed>& rows) {
        std::vector<const CoinPackedVectorBase*> terms;
        Values lower;
        Values upper;
        for (const Packed& row : rows) {
            terms.push_back(&row.terms);
            lower.push_back(row.lower);
            upper.push_back(row.upper);
        }
        if (!rows.empty()) lp_.addRows(static_cast<int>(rows.size()), terms.data(), lower.data(), upper.data());
    }

    // Rows on demand.

    void all_out_of_play() {
        needed_in_play_.assign(rows_.needed.size(), false);
        helpful_in_play_.assign(rows_.helpful.size(), false);
    }

    void take_broken(const std::vector<Row>& rows, std::vector<bool>& in_play, const Values& values,
                     std::vector<Packed>& taken) const {
        for (std::size_t i = 0; i < rows.size(); ++i) {
            if (in_play[i] || !broken(rows[i], values)) continue;
            in_play[i] = true;
            taken.push_back(pack(rows[i]));
        }
    }

    /// Solves again until no row on demand is broken. False where the solver fails.
    bool resolve() {
        while (true) {
            lp_.resolve();
            if (!lp_.isProvenOptimal()) return false;
            const Values values = values_of(lp_.getColSolution());
            std::vector<Packed> taken;
            take_broken(rows_.needed, needed_in_play_, values, taken);
            take_broken(rows_.helpful, helpful_in_play_, values, taken);
            if (taken.empty()) return true;
            add(taken);
        }
    }

    /// Whether the columns' bounds alone keep the row.
    [[nodiscard]] bool goes_without_saying(const Packed& row) const {
        double least = 0;
        double most = 0;
        for (int k = 0; k < row.terms.getNumElements(); ++k) {
            const int column = row.terms.getIndices()[k];
            const double low = row.terms.getElements()[k] * lp_.getColLower()[column];
            const double high = row.terms.getElements()[k] * lp_.getColUpper()[column];
            least += std::min(low, high);
            most += std::max(low, high);
        }
        return least >= row.lower && most <= row.upper;
    }

    void put_needed_rows_in_play() {
        std::vector<Packed> rows;
        for (std::size_t i = 0; i < rows_.needed.size(); ++i) {
            if (needed_in_play_[i]) continue;
            Packed row = pack(rows_.needed[i]);
            if (goes_without_saying(row)) continue;
            needed_in_play_[i] = true;
            rows.push_back(std::move(row));
        }
        add(rows);
    }

    // Cuts.

    std::size_t add_cuts(const Values& known) {
        const Values values = values_of(lp_.getColSolution());
        const Values left = of_columns_left(values);
        const Values known_left = of_columns_left(known);
        std::vector<Packed> found;
        if (rows_.cuts) {
            for (const Row& row : rows_.cuts(values)) found.push_back(pack(row));
        }
        mixed_integer_rounding(found);
        std::vector<std::pair<double, std::size_t>> order;
        for (std::size_t i = 0; i < found.size(); ++i) {
            // A cut that the known solution breaks is an error of rounding.
            if (found[i].violation(known_left) > whole_enough) continue;
            const double violation = found[i].violation(left);
            if (violation > least_violation) order.emplace_back(-violation, i);
        }
        std::sort(order.begin(), order.end());
        order.resize(std::min(order.size(), most_cuts_in_a_round));
        std::vector<Packed> best;
        best.reserve(order.size());
        for (const auto& [minus, i] : order) best.push_back(std::move(found[i]));
        add(best);
        return best.size();
    }

    void mixed_integer_rounding(std::vector<Packed>& found) {
        CglMixedIntegerRounding2 generator;
        generator.setMAXAGGR_(3);
        generator.setCRITERION_(1);
        OsiCuts cuts;
        try {
            generator.generateCuts(lp_, cuts);
        } catch (const CoinError&) {
            // Cgl 0.60 ends on some rows with "Index already exists", and loses a few bytes: what it found before is
            // good.
        }
        for (int i = 0; i < cuts.sizeRowCuts(); ++i) {
            const OsiRowCut& cut = cuts.rowCut(i);
            found.push_back({cut.row(), std::max(cut.lb(), -detail::infinite), std::min(cut.ub(), detail::infinite)});
        }
    }

    /// Rows that were added and do not hold the relaxation: they come back where they are broken again.
    void clear_slack_rows() {
        const std::unique_ptr<CoinWarmStart> start(lp_.getWarmStart());
        const auto* basis = dynamic_cast<const CoinWarmStartBasis*>(start.get());
        if (basis == nullptr) return;
        std::vector<int> slack;
        for (int row = static_cast<int>(programme_.rows.size()); row < lp_.getNumRows(); ++row) {
            if (basis->getArtifStatus(row) == CoinWarmStartBasis::basic) slack.push_back(row);
        }
        if (slack.empty()) return;
        all_out_of_play();
        lp_.deleteRows(static_cast<int>(slack.size()), slack.data());
    }

    // Columns that are left out.

    void leave_out(const Values& known, double limit) {
        const double cost = lp_.getObjValue();
        std::vector<int> out;
        for (std::size_t i = 0; i < column_.size(); ++i) {
            const auto column = static_cast<std::size_t>(column_[i]);
            if (!programme_.columns[column].whole || programme_.columns[column].lower != 0) continue;
            if (known[column] > whole_enough || lp_.getColSolution()[i] > whole_enough) continue;
            if (cost + lp_.getReducedCost()[i] > limit) out.push_back(static_cast<int>(i));
        }
        if (static_cast<double>(out.size()) < worth_leaving_out * static_cast<double>(column_.size())) return;
        lp_.deleteCols(static_cast<int>(out.size()), out.data());
        for (const int i : out) position_[static_cast<std::size_t>(column_[static_cast<std::size_t>(i)])] = -1;
        std::erase_if(column_, [&](int column) { return position_[static_cast<std::size_t>(column)] < 0; });
        for (std::size_t i = 0; i < column_.size(); ++i)
            position_[static_cast<std::size_t>(column_[i])] = static_cast<int>(i);
    }

    Solution told(CbcModel& model, const Values& known) const {
        Solution solution = nothing_new(known);
        if (model.bestSolution() != nullptr) {
            Values found = values_of(model.bestSolution());
            for (std::size_t i = 0; i < found.size(); ++i) {
                if (programme_.columns[i].whole) found[i] = std::round(found[i]);
            }
            const double cost = cost_of(found);
            if (cost < solution.cost) {
                solution.values = std::move(found);
                solution.cost = cost;
            }
        }
        const bool all = model.isProvenOptimal() || model.isProvenInfeasible();
        if (all) solution.status = Status::proved;
        solution.bound = all ? solution.cost : std::min(solution.cost, model.getBestPossibleObjValue());
        return solution;
    }

    Programme programme_;
    OnDemand rows_;
    Values costs_;
    double bound_ = -unbounded;  ///< that tighten() proved
    std::vector<int> column_;    ///< of each that is left: which of the programme's
    std::vector<int> position_;  ///< of each of the programme's: among those left; below 0: left out
    std::vector<bool> needed_in_play_;
    std::vector<bool> helpful_in_play_;
    OsiClpSolverInterface lp_;
};

BranchAndCut::BranchAndCut(Programme programme, const Terms& cost, OnDemand rows)
    : tightened_(std::make_unique<Tightened>(std::move(programme), cost, std::move(rows))) {}
BranchAndCut::~BranchAndCut() = default;

Solution BranchAndCut::tighten(const Values& known, double margin) {
    try {
        return tightened_->tighten(known, margin);
    } catch (const CoinError&) {
        return {};
    }
}

Solution BranchAndCut::search(const Values& known, const Effort& effort, const AtNodes& at_nodes) {
    try {
        return tightened_->search(known, effort, at_nodes);
    } catch (const CoinError&) {
        return tightened_->nothing_new(known);
    }
}

Programme BranchAndCut::left() const {
    return tightened_->left();
}

std::int64_t BranchAndCut::size() const {
    return tightened_->size();
}

}  // namespace samebase::solver
