#include "exchange/detail/duration.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cstdint>
#include <optional>

namespace samebase::exchange::detail {

namespace {

constexpr std::string_view like = "a duration by ISO 8601, such as PT45M or PT1H30M";
constexpr std::int64_t most_digits_value = 1'000'000;

/// A number with up to three decimals, in thousandths; taken off the text.
std::optional<std::int64_t> take_number(std::string_view& text) {
    std::int64_t whole = 0;
    const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), whole);
    if (error != std::errc{} || whole < 0 || whole > most_digits_value || text.front() == '-') return std::nullopt;
    text.remove_prefix(static_cast<std::size_t>(stop - text.data()));
    std::int64_t thousandths = whole * 1000;
    if (text.empty() || (text.front() != '.' && text.front() != ',')) return thousandths;
    text.remove_prefix(1);
    std::int64_t part = 100;
    bool any = false;
    for (; !text.empty() && text.front() >= '0' && text.front() <= '9'; text.remove_prefix(1)) {
        thousandths += (text.front() - '0') * part;
        part /= 10;
        any = true;
    }
    return any ? std::optional(thousandths) : std::nullopt;
}

/// Seconds of one unit; nothing where there is no such unit on that side of the T.
std::optional<std::int64_t> seconds_of(char unit, bool time) {
    if (time)
        return unit == 'H'   ? std::optional(3600)
               : unit == 'M' ? std::optional(60)
               : unit == 'S' ? std::optional(1)
                             : std::nullopt;
    return unit == 'W' ? std::optional(604'800) : unit == 'D' ? std::optional(86'400) : std::nullopt;
}

/// Units follow one another from the large to the small.
std::size_t rank(char unit, bool time) {
    return std::string_view("WDHMS").find(unit, time ? 2 : 0);
}

tl::unexpected<NoDuration> none(std::string hint = {}) {
    return tl::make_unexpected(NoDuration{std::string(like), std::move(hint)});
}

}  // namespace

tl::expected<int, NoDuration> read_duration(std::string_view text) {
    if (text.size() > 100 || text.size() < 2 || (text.front() != 'P' && text.front() != 'p')) return none();
    const std::string written(text);
    text.remove_prefix(1);
    std::int64_t thousandths = 0;  // of a second
    bool time = false;
    bool any = false;
    std::size_t last = 0;
    while (!text.empty()) {
        if (!time && (text.front() == 'T' || text.front() == 't')) {
            time = true;
            text.remove_prefix(1);
            if (text.empty()) return none();
            continue;
        }
        const auto number = take_number(text);
        if (!number || text.empty()) return none();
        const char unit = text.front() >= 'a' ? static_cast<char>(text.front() - 'a' + 'A') : text.front();
        text.remove_prefix(1);
        const auto seconds = seconds_of(unit, time);
        if (!seconds && unit == 'M' && !any && text.empty()) {
            return none(fmt::format("without a T it is months: PT{}?", written.substr(1)));
        }
        if (!seconds || (any && rank(unit, time) <= last)) return none();
        last = rank(unit, time);
        thousandths += *number * *seconds;
        any = true;
    }
    if (!any) return none();
    const std::int64_t minutes = (thousandths + 59'999) / 60'000;
    if (minutes > most_minutes) {
        return tl::make_unexpected(NoDuration{fmt::format("at most {} minutes, two days", most_minutes), {}});
    }
    return static_cast<int>(minutes);
}

}  // namespace samebase::exchange::detail
