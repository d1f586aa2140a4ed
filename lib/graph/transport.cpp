#include "graph/transport.hpp"

#include <algorithm>
#include <limits>
#include <vector>

namespace samebase::graph {

namespace {

constexpr std::int64_t far = std::numeric_limits<std::int64_t>::max();
constexpr std::size_t nowhere = std::numeric_limits<std::size_t>::max();

/// Every supply goes somewhere: the last column takes what stays, and is worth nothing. A cost is the best value less
/// the value; reduced by the potentials it is never below 0.
class Transport {
  public:
    Transport(std::span<const std::int64_t> demand, std::span<const Ppm> value, std::size_t rows)
        : value_(value),
          best_(*std::max_element(value.begin(), value.end())),
          rows_(rows),
          columns_(demand.size() + 1),
          room_(demand.begin(), demand.end()),
          flow_(rows_ * columns_, 0),
          row_potential_(rows_, 0),
          column_potential_(columns_, 0) {
        room_.push_back(far);
    }

    void ship(std::size_t row, std::int64_t amount) {
        while (amount > 0) {
            const std::size_t column = nearest_with_room(row);
            const std::int64_t moved = most_along(row, column, amount);
            move_along(row, column, moved);
            amount -= moved;
        }
    }

    [[nodiscard]] std::int64_t carried_value() const {
        std::int64_t sum = 0;
        for (std::size_t r = 0; r < rows_; ++r) {
            for (std::size_t c = 0; c + 1 < columns_; ++c) sum += flow_[at(r, c)] * value_[r * (columns_ - 1) + c];
        }
        return sum;
    }

  private:
    [[nodiscard]] std::size_t at(std::size_t row, std::size_t column) const { return row * columns_ + column; }
    [[nodiscard]] std::int64_t reduced(std::size_t row, std::size_t column) const {
        const std::int64_t worth = column + 1 == columns_ ? 0 : value_[row * (columns_ - 1) + column];
        return best_ - worth - row_potential_[row] - column_potential_[column];
    }

    void reach(std::size_t row, std::int64_t distance, std::size_t by_column) {
        row_distance_[row] = distance;
        by_column_[row] = by_column;
        for (std::size_t c = 0; c < columns_; ++c) {
            const std::int64_t through = distance + reduced(row, c);
            if (settled_[c] || through >= column_distance_[c]) continue;
            column_distance_[c] = through;
            by_row_[c] = row;
        }
    }

    /// The nearest column that takes more, by Dijkstra's algorithm; potentials are moved along.
    std::size_t nearest_with_room(std::size_t start) {
        row_distance_.assign(rows_, far);
        column_distance_.assign(columns_, far);
        by_column_.assign(rows_, nowhere);
        by_row_.assign(columns_, nowhere);
        settled_.assign(columns_, false);
        reach(start, 0, nowhere);
        while (true) {
            std::size_t next = nowhere;
            for (std::size_t c = 0; c < columns_; ++c) {
                if (!settled_[c] && (next == nowhere || column_distance_[c] < column_distance_[next])) next = c;
            }
            settled_[next] = true;
            if (room_[next] > 0) {
                move_potentials(column_distance_[next]);
                return next;
            }
            for (std::size_t r = 0; r < rows_; ++r) {
                if (row_distance_[r] == far && flow_[at(r, next)] > 0) reach(r, column_distance_[next], next);
            }
        }
    }

    void move_potentials(std::int64_t distance) {
        for (std::size_t r = 0; r < rows_; ++r) {
            if (row_distance_[r] != far) row_potential_[r] += distance - row_distance_[r];
        }
        for (std::size_t c = 0; c < columns_; ++c) {
            if (settled_[c]) column_potential_[c] -= distance - column_distance_[c];
        }
    }

    [[nodiscard]] std::int64_t most_along(std::size_t start, std::size_t column, std::int64_t amount) const {
        std::int64_t most = std::min(amount, room_[column]);
        for (std::size_t r = by_row_[column]; r != start; r = by_row_[by_column_[r]])
            most = std::min(most, flow_[at(r, by_column_[r])]);
        return most;
    }

    void move_along(std::size_t start, std::size_t column, std::int64_t amount) {
        if (column + 1 < columns_) room_[column] -= amount;
        while (true) {
            const std::size_t row = by_row_[column];
            flow_[at(row, column)] += amount;
            if (row == start) return;
            column = by_column_[row];
            flow_[at(row, column)] -= amount;
        }
    }

    std::span<const Ppm> value_;
    std::int64_t best_;
    std::size_t rows_;
    std::size_t columns_;
    std::vector<std::int64_t> room_;
    std::vector<std::int64_t> flow_;
    std::vector<std::int64_t> row_potential_;
    std::vector<std::int64_t> column_potential_;
    std::vector<std::int64_t> row_distance_;
    std::vector<std::int64_t> column_distance_;
    std::vector<std::size_t> by_column_;  ///< by row: the column that it was reached from
    std::vector<std::size_t> by_row_;     ///< by column: the row that it was reached from
    std::vector<bool> settled_;
};

}  // namespace

std::int64_t most_carried(std::span<const std::int64_t> supply, std::span<const std::int64_t> demand,
                          std::span<const Ppm> value) {
    if (supply.empty() || demand.empty()) return 0;
    Transport transport(demand, value, supply.size());
    for (std::size_t r = 0; r < supply.size(); ++r) transport.ship(r, supply[r]);
    return transport.carried_value();
}

}  // namespace samebase::graph
