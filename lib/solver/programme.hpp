// A linear or integer programme as plain data, and a solver for it. Neutral: nothing here says which solver stands
// behind.
#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <utility>
#include <vector>

namespace samebase::solver {

inline constexpr double unbounded = std::numeric_limits<double>::infinity();

struct Column {
    double lower = 0;
    double upper = unbounded;
    bool whole = false;  ///< takes whole values only
};

using Terms = std::vector<std::pair<int, double>>;  ///< column, factor; a column once

struct Row {
    Terms terms;
    double lower = -unbounded;
    double upper = unbounded;
};

/// Minimise a cost over columns subject to rows.
struct Programme {
    std::vector<Column> columns;
    std::vector<Row> rows;

    int add(Column column);
    void add(Row row) { rows.push_back(std::move(row)); }
};

enum class Status : std::uint8_t { proved, limited, infeasible, failed };

struct Solution {
    Status status = Status::failed;
    std::vector<double> values;  ///< by column; empty where nothing was found
    double cost = 0;             ///< of `values`
    double bound = 0;            ///< no solution costs less; says nothing where the solver failed
    /// By column, where no column takes whole values only and the least was proved: what the cost rises by, at least,
    /// for each unit that the column moves away from the bound at which it stands.
    std::vector<double> reduced;
};

struct Effort {
    std::int64_t nodes = 200'000;  ///< of the search tree: the limit that repeats
    double guard_seconds = 60;     ///< only a guard against a solver that hangs
};

/// Minimises. One solve at a time in a process; single-threaded, so that it repeats. `start`, where it is not empty,
/// gives values of all columns of a known solution, which is the answer where nothing cheaper is found.
[[nodiscard]] Solution minimise(const Programme& programme, const Terms& cost, const Effort& effort = {},
                                std::span<const double> start = {});

/// Minimises the first cost, then the second among the best of the first, and so on. Each is held within a tolerance of
/// one millionth of its size (at least one millionth) while the next is minimised. The status is that of the first that
/// was not proved; `cost` and `bound` are of the last.
[[nodiscard]] Solution minimise_in_order(const Programme& programme, std::span<const Terms> costs,
                                         const Effort& effort = {});

}  // namespace samebase::solver
