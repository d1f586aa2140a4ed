#include "support/trips_oracle.hpp"

#include <set>
#include <utility>

namespace samebase::tests {

namespace {

bool room_for_all(const std::vector<OracleItem>& items, const std::vector<int>& comes,
                  const std::vector<std::int64_t>& free) {
    for (std::size_t day = 0; day < free.size(); ++day) {
        std::int64_t taken = 0;
        for (std::size_t i = 0; i < items.size(); ++i) {
            const bool there = comes[i] <= static_cast<int>(day) && static_cast<int>(day) < items[i].until;
            if (there) taken += items[i].room;
        }
        if (taken > 0 && taken > free[day]) return false;
    }
    return true;
}

}  // namespace

std::optional<int> fewest_walks(const std::vector<OracleItem>& items, const std::vector<std::int64_t>& free) {
    std::optional<int> fewest;
    std::vector<int> comes(items.size(), 0);
    while (true) {
        if (room_for_all(items, comes, free)) {
            std::set<std::pair<int, int>> walks;
            for (std::size_t i = 0; i < items.size(); ++i) walks.emplace(items[i].freezer, comes[i]);
            const int count = static_cast<int>(walks.size());
            if (!fewest || count < *fewest) fewest = count;
        }
        std::size_t next = 0;
        while (next < items.size() && comes[next] == items[next].need) comes[next++] = 0;
        if (next == items.size()) return fewest;
        ++comes[next];
    }
}

}  // namespace samebase::tests
