// Durations as ISO 8601 writes them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace samebase::exchange::detail {

/// The minutes of "PT1H30M", "P1DT2H", "PT90M", "PT0.5H", rounded up; nothing where the text is not written so, has
/// years or months, or is longer than a year.
[[nodiscard]] std::optional<int> read_duration(std::string_view text);

/// "PT1H30M", "PT20M", "PT0M". Not below 0.
[[nodiscard]] std::string write_duration(int minutes);

}  // namespace samebase::exchange::detail
