// The fewest walks by trying every day for every item: slow, plain, and without a line of the library.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace samebase::tests {

struct OracleItem {
    int freezer = 0;
    int need = 0;   ///< it comes on a day from 0 to this
    int until = 0;  ///< and takes room at the end of each day from then to the one before this
    std::int64_t room = 0;
};

/// The least number of different (freezer, day) over all ways to give each item a day so that on no day more room is
/// taken than there is (a room below 0 counts as 0); nothing where there is no such way.
[[nodiscard]] std::optional<int> fewest_walks(const std::vector<OracleItem>& items,
                                              const std::vector<std::int64_t>& free);

}  // namespace samebase::tests
