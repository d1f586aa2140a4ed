#include "solver/programme.hpp"

#include <coin/Cbc_C_Interface.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <mutex>
#include <numeric>

#include "solver/detail/numbers.hpp"
#include "solver/detail/turn.hpp"

namespace samebase::solver {

namespace {

struct Delete {
    void operator()(Cbc_Model* model) const { Cbc_deleteModel(model); }
};
using Model = std::unique_ptr<Cbc_Model, Delete>;

constexpr std::size_t small = 400;  // columns

/// The programme by columns, as the solver wants it.
struct ByColumn {
    std::vector<CoinBigIndex> start;
    std::vector<int> index;
    std::vector<double> value;

    explicit ByColumn(const Programme& programme) : start(programme.columns.size() + 1, 0) {
        for (const Row& row : programme.rows) {
            for (const auto& [column, factor] : row.terms) ++start[static_cast<std::size_t>(column) + 1];
        }
        std::partial_sum(start.begin(), start.end(), start.begin());
        index.resize(static_cast<std::size_t>(start.back()));
        value.resize(index.size());
        auto next = start;
        for (std::size_t r = 0; r < programme.rows.size(); ++r) {
            for (const auto& [column, factor] : programme.rows[r].terms) {
                const auto at = static_cast<std::size_t>(next[static_cast<std::size_t>(column)]++);
                index[at] = static_cast<int>(r);
                value[at] = factor;
            }
        }
    }
};

void load(Cbc_Model* model, const Programme& programme, const Terms& cost) {
    const ByColumn by_column(programme);
    std::vector<double> lower;
    std::vector<double> upper;
    std::vector<double> costs(programme.columns.size(), 0);
    for (const Column& column : programme.columns) {
        lower.push_back(detail::finite(column.lower));
        upper.push_back(detail::finite(column.upper));
    }
    for (const auto& [column, factor] : cost) costs[static_cast<std::size_t>(column)] = factor;
    std::vector<double> row_lower;
    std::vector<double> row_upper;
    for (const Row& row : programme.rows) {
        row_lower.push_back(detail::finite(row.lower));
        row_upper.push_back(detail::finite(row.upper));
    }
    Cbc_loadProblem(model, static_cast<int>(programme.columns.size()), static_cast<int>(programme.rows.size()),
                    by_column.start.data(), by_column.index.data(), by_column.value.data(), lower.data(), upper.data(),
                    costs.data(), row_lower.data(), row_upper.data());
    for (std::size_t i = 0; i < programme.columns.size(); ++i) {
        if (programme.columns[i].whole) Cbc_setInteger(model, static_cast<int>(i));
    }
}

/// What costs more than the known solution is not looked for; what costs the same is. CBC's own way to start from a
/// solution is not used: where its presolve has removed columns, CBC 2.10.8 asks the smaller programme for the names of
/// all of them, throws, and has solved nothing.
void look_below(Cbc_Model* model, double known) {
    Cbc_setCutoff(model, known + std::max(1.0, std::abs(known)) * 1e-6);
}

/// The least that the bounds of the columns alone allow.
double least(const Programme& programme, const Terms& cost) {
    double sum = 0;
    for (const auto& [column, factor] : cost) {
        const Column& of = programme.columns[static_cast<std::size_t>(column)];
        if (factor != 0) sum += factor * (factor > 0 ? of.lower : of.upper);
    }
    return sum;
}

/// From now on the cost is not above what was reached. Where that is the least that columns allow, it is they that are
/// held.
void hold(Programme& programme, const Terms& cost, double reached) {
    if (reached > least(programme, cost)) {
        programme.add(Row{cost, -unbounded, reached + std::max(1.0, std::abs(reached)) * 1e-6});
        return;
    }
    for (const auto& [column, factor] : cost) {
        Column& of = programme.columns[static_cast<std::size_t>(column)];
        if (factor > 0) of.upper = of.lower;
        if (factor < 0) of.lower = of.upper;
    }
}

/// Limited only where a limit ended the search, or left something found: a solver that gave up has no bound either.
Status status_of(Cbc_Model* model, bool found) {
    if (Cbc_isProvenOptimal(model) != 0) return Status::proved;
    if (Cbc_isProvenInfeasible(model) != 0) return Status::infeasible;
    const bool ended = Cbc_isNodeLimitReached(model) != 0 || Cbc_isSecondsLimitReached(model) != 0;
    return found || ended ? Status::limited : Status::failed;
}

/// What the solver has found.
Solution read(Cbc_Model* model, const Programme& programme, const Terms& cost) {
    Solution solution;
    const bool whole =
        std::any_of(programme.columns.begin(), programme.columns.end(), [](const Column& c) { return c.whole; });
    const double* best = Cbc_getColSolution(model);
    const bool found = whole ? Cbc_bestSolution(model) != nullptr : Cbc_isProvenOptimal(model) != 0;
    solution.status = status_of(model, found);
    if (solution.status == Status::limited) solution.bound = Cbc_getBestPossibleObjValue(model);
    if (solution.status == Status::infeasible || !found || best == nullptr) return solution;
    if (whole) best = Cbc_bestSolution(model);
    solution.values.assign(best, best + programme.columns.size());
    for (std::size_t i = 0; i < solution.values.size(); ++i) {
        if (programme.columns[i].whole) solution.values[i] = std::round(solution.values[i]);
    }
    if (!whole) {
        const double* reduced = Cbc_getReducedCost(model);
        solution.reduced.assign(reduced, reduced + programme.columns.size());
    }
    solution.cost = detail::sum_of(cost, solution.values);
    if (solution.status == Status::proved) solution.bound = solution.cost;
    return solution;
}

/// The known solution stands where nothing cheaper was found: proved where the solver says that there is nothing below
/// it.
Solution better_of(Solution found, const std::vector<double>& known, const Terms& cost) {
    const double known_cost = detail::sum_of(cost, known);
    if (!found.values.empty() && found.cost <= known_cost) return found;
    const bool none_below = found.status == Status::infeasible || found.status == Status::proved;
    if (none_below) found.status = Status::proved;
    found.values = known;
    found.cost = known_cost;
    found.bound = none_below                       ? known_cost
                  : found.status == Status::failed ? -unbounded
                                                   : std::min(found.bound, known_cost);
    return found;
}

}  // namespace

int Programme::add(Column column) {
    columns.push_back(column);
    return static_cast<int>(columns.size()) - 1;
}

Solution minimise(const Programme& programme, const Terms& cost, const Effort& effort, std::span<const double> start) {
    const std::lock_guard lock(detail::one_at_a_time());
    const Model model(Cbc_newModel());
    Cbc_setLogLevel(model.get(), 0);
    load(model.get(), programme, cost);
    Cbc_setMaximumNodes(model.get(), static_cast<int>(std::min<std::int64_t>(effort.nodes, 2'000'000'000)));
    Cbc_setMaximumSeconds(model.get(), effort.guard_seconds);
    Cbc_setParameter(model.get(), "threads", "0");
    if (programme.columns.size() < small) {
        // Here they cost more than they save; and heuristics end the process (an assertion of CBC 2.10.8) on some rows
        // that leave next to no room.
        Cbc_setParameter(model.get(), "preprocess", "off");
        Cbc_setParameter(model.get(), "heuristicsOnOff", "off");
        Cbc_setParameter(model.get(), "cutsOnOff", "off");
    }
    Cbc_setParameter(model.get(), "ratioGap", "0");
    Cbc_setParameter(model.get(), "allowableGap", "0");
    const std::vector<double> known(start.begin(), start.end());
    if (!known.empty()) look_below(model.get(), detail::sum_of(cost, known));
    Cbc_solve(model.get());
    Solution solution = read(model.get(), programme, cost);
    return known.empty() ? solution : better_of(std::move(solution), known, cost);
}

Solution minimise_in_order(const Programme& programme, std::span<const Terms> costs, const Effort& effort) {
    Programme held = programme;
    Solution last;
    Status worst = Status::proved;
    for (const Terms& cost : costs) {
        if (!last.values.empty() && detail::sum_of(cost, last.values) <= least(programme, cost)) {
            hold(held, cost, least(programme, cost));
            last.cost = last.bound = detail::sum_of(cost, last.values);
            continue;
        }
        Solution next = minimise(held, cost, effort, last.values);
        if (next.values.empty()) {
            // What was found before satisfies every row: the solver lost it to its tolerances.
            if (last.values.empty()) return next;
            last.status = Status::limited;
            return last;
        }
        if (next.status != Status::proved && worst == Status::proved) worst = next.status;
        hold(held, cost, next.cost);
        last = std::move(next);
    }
    last.status = worst;
    return last;
}

}  // namespace samebase::solver
