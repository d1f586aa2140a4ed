// A slow oracle for transport: tries every way of carrying whole units. For a few places and a few units only.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace samebase::tests {

/// The largest total of value[i * demand.size() + j] for each unit from i to j, supplies and demands not exceeded.
class EveryTransport {
  public:
    EveryTransport(std::vector<std::int64_t> supply, std::vector<std::int64_t> demand, std::vector<std::int64_t> value)
        : supply_(std::move(supply)), demand_(std::move(demand)), value_(std::move(value)) {}

    [[nodiscard]] std::int64_t most() {
        best_ = 0;
        from_cell(0, 0);
        return best_;
    }

  private:
    void from_cell(std::size_t cell, std::int64_t so_far) {
        if (cell == value_.size()) {
            best_ = std::max(best_, so_far);
            return;
        }
        std::int64_t& supply = supply_[cell / demand_.size()];
        std::int64_t& demand = demand_[cell % demand_.size()];
        const std::int64_t most = std::min(supply, demand);
        for (std::int64_t units = 0; units <= most; ++units) {
            supply -= units;
            demand -= units;
            from_cell(cell + 1, so_far + units * value_[cell]);
            supply += units;
            demand += units;
        }
    }

    std::vector<std::int64_t> supply_;
    std::vector<std::int64_t> demand_;
    std::vector<std::int64_t> value_;
    std::int64_t best_ = 0;
};

}  // namespace samebase::tests
