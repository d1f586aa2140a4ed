// Keeping times: for how many days a thing keeps where it is, and whether that is a matter of safety or of quality.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace samebase::catalogue {

/// Where and how something is kept.
enum class Keep : std::uint8_t { pantry, fridge, crisper, freezer, thawed, opened };
inline constexpr std::size_t keep_count = 6;

[[nodiscard]] std::string_view name(Keep keep);
[[nodiscard]] std::optional<Keep> read_keep(std::string_view text);

/// use_by: the last day that it may be eaten. best_by: the last day of good quality; past it one looks and decides.
enum class Limit : std::uint8_t { use_by, best_by };

struct KeepingTime {
    int days = 0;
    Limit limit = Limit::best_by;

    friend constexpr bool operator==(const KeepingTime&, const KeepingTime&) = default;
};

/// Unknown (nothing is said), never (it does not go there), or a time.
struct Keeping {
    enum class Said : std::uint8_t { nothing, never, time };
    Said said = Said::nothing;
    KeepingTime time;

    friend constexpr bool operator==(const Keeping&, const Keeping&) = default;
};

using KeepingTimes = std::array<Keeping, keep_count>;

/// "2 days use-by"; nothing where the text is not written so. Days are from 0 to 3,660.
[[nodiscard]] std::optional<KeepingTime> read_keeping_time(std::string_view text);

}  // namespace samebase::catalogue
