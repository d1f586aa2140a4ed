#include "catalogue/keeping.hpp"

#include <charconv>

namespace samebase::catalogue {

namespace {

constexpr std::array<std::string_view, keep_count> names{"pantry", "fridge", "crisper", "freezer", "thawed", "opened"};
constexpr int most_days = 3660;

}  // namespace

std::string_view name(Keep keep) {
    return names[static_cast<std::size_t>(keep)];
}

std::optional<Keep> read_keep(std::string_view text) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == text) return static_cast<Keep>(i);
    }
    return std::nullopt;
}

std::optional<KeepingTime> read_keeping_time(std::string_view text) {
    KeepingTime time;
    const auto [rest, error] = std::from_chars(text.data(), text.data() + text.size(), time.days);
    if (error != std::errc{} || time.days < 0 || time.days > most_days) return std::nullopt;
    const std::string_view tail = text.substr(static_cast<std::size_t>(rest - text.data()));
    if (tail == " days use-by" || tail == " day use-by") {
        time.limit = Limit::use_by;
    } else if (tail == " days best-by" || tail == " day best-by") {
        time.limit = Limit::best_by;
    } else {
        return std::nullopt;
    }
    return time;
}

}  // namespace samebase::catalogue
