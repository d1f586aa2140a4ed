// Cuts for rows whose room is bought in whole units: some groups want enough together that one more unit is opened.
#pragma once

#include <cstdint>
#include <vector>

#include "solver/programme.hpp"

namespace samebase::solver {

/// sum over the chosen options of what they want  <=  room + unit x units, at most one option chosen of each group.
struct RoomInUnits {
    struct Want {
        int column = 0;  ///< of an option: 0 or 1
        std::int64_t amount = 0;
    };
    std::vector<std::vector<Want>> groups;
    std::int64_t room = 0;
    std::int64_t unit = 1;
    int units = 0;  ///< their column, in whole values
};

/// For each row the cover that the values break most, if they break any: k units, where in each of some groups an
/// option is chosen that wants at least so much, less what the groups without such an option could save. Every solution
/// in whole values keeps it. (Covers with groups of options: Johnson and Padberg, 1981.)
[[nodiscard]] std::vector<Row> covers(const std::vector<RoomInUnits>& rows, const std::vector<double>& values);

}  // namespace samebase::solver
