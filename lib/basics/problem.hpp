// A problem is an error as a value: where it is, what was found there, what was expected, and a hint. Functions that
// can fail on what they are given return Result<T>; nothing throws across a room's border.
#pragma once

#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace samebase::basics {

struct Problem {
    std::string where;                ///< file and JSON path, command-line argument, or name of the thing
    std::string found;                ///< what stands there, or what is the matter
    std::string expected;             ///< what would have been right
    std::optional<std::string> hint;  ///< a nearest known name or a way out, where there is one

    friend bool operator==(const Problem&, const Problem&) = default;
};

using Problems = std::vector<Problem>;

template <class T>
using Result = tl::expected<T, Problems>;

/// A failed Result with one problem.
[[nodiscard]] tl::unexpected<Problems> problem(std::string where, std::string found, std::string expected,
                                               std::optional<std::string> hint = std::nullopt);

/// One line for people: "kitchen.json, /places/2/kind: 'frige' is not a kind of place; expected ...; did you mean
/// 'fridge'?"
[[nodiscard]] std::string to_text(const Problem& problem);

}  // namespace samebase::basics
