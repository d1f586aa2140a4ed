#include "exchange/detail/duration.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace samebase::exchange::detail {

namespace {

constexpr double most_seconds = 366.0 * 24 * 3600;

bool digit(char c) {
    return c >= '0' && c <= '9';
}

/// Takes "90" or "1.5" off the front, at most 9 digits before the point and 6 after it.
std::optional<double> take_number(std::string_view& text) {
    double value = 0;
    std::size_t digits = 0;
    for (; !text.empty() && digit(text.front()); text.remove_prefix(1), ++digits)
        value = value * 10 + (text.front() - '0');
    if (digits == 0 || digits > 9) return std::nullopt;
    if (text.empty() || (text.front() != '.' && text.front() != ',')) return value;
    text.remove_prefix(1);
    double unit = 0.1;
    std::size_t places = 0;
    for (; !text.empty() && digit(text.front()); text.remove_prefix(1), ++places, unit /= 10) {
        value += (text.front() - '0') * unit;
    }
    if (places == 0 || places > 6) return std::nullopt;
    return value;
}

}  // namespace

std::optional<int> read_duration(std::string_view text) {
    if (text.empty() || text.front() != 'P') return std::nullopt;
    text.remove_prefix(1);
    struct Part {
        char letter;
        bool time;
        double seconds;
    };
    constexpr Part parts[] = {
        {'W', false, 7 * 86400.0}, {'D', false, 86400.0}, {'H', true, 3600.0}, {'M', true, 60.0}, {'S', true, 1.0}};
    const Part* next = std::begin(parts);
    bool time = false;
    bool any = false;
    double seconds = 0;
    while (!text.empty()) {
        if (text.front() == 'T') {
            if (time) return std::nullopt;
            time = true;
            text.remove_prefix(1);
            any = false;
        }
        const auto number = take_number(text);
        if (!number || text.empty()) return std::nullopt;
        const auto* part = std::find_if(next, std::end(parts),
                                        [&](const Part& p) { return p.letter == text.front() && p.time == time; });
        if (part == std::end(parts)) return std::nullopt;
        seconds += *number * part->seconds;
        text.remove_prefix(1);
        next = part + 1;
        any = true;
    }
    if (!any || seconds > most_seconds) return std::nullopt;
    return static_cast<int>(std::ceil(seconds / 60 - 1e-9));
}

std::string write_duration(int minutes) {
    const int hours = minutes / 60;
    const int rest = minutes % 60;
    if (hours == 0) return fmt::format("PT{}M", rest);
    return rest == 0 ? fmt::format("PT{}H", hours) : fmt::format("PT{}H{}M", hours, rest);
}

}  // namespace samebase::exchange::detail
