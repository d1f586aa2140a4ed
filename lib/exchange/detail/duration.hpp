// Durations as ISO 8601 writes them: "PT1H30M", "P1DT2H", "P2W", "PT1.5H".
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace samebase::exchange::detail {

/// A recipe takes at most this: what a dish of ours may (two days).
inline constexpr int most_minutes = 2880;

/// What is the matter with a duration, and a hint or "".
struct NoDuration {
    std::string expected;
    std::string hint;

    friend bool operator==(const NoDuration&, const NoDuration&) = default;
};

/// Whole minutes, rounded up. Years and months are of no use to a cook, and are mostly minutes without their T: "P30M".
[[nodiscard]] tl::expected<int, NoDuration> read_duration(std::string_view text);

}  // namespace samebase::exchange::detail
