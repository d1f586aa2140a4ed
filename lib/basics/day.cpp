#include "basics/day.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <string>
#include <vector>

namespace samebase::basics {

namespace {

using std::chrono::year_month_day;

constexpr std::array<std::string_view, 7> weekdays{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                   "Thursday", "Friday", "Saturday"};
constexpr std::array<std::string_view, 12> months{"January",   "February", "March",    "April",
                                                  "May",       "June",     "July",     "August",
                                                  "September", "October",  "November", "December"};

bool same_start(std::string_view text, std::string_view whole) {
    return text.size() >= 3 && text.size() <= whole.size() &&
           std::equal(text.begin(), text.end(), whole.begin(),
                      [](unsigned char a, unsigned char b) { return std::tolower(a) == std::tolower(b); });
}

std::optional<int> read_number(std::string_view text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || text.empty()) return std::nullopt;
    return value;
}

bool digits(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
}

Span whole_month(std::chrono::year year, std::chrono::month month) {
    return {Day{year / month / 1}, Day{year / month / std::chrono::last}};
}

std::string lower_case(std::string_view text) {
    std::string lower(text);
    std::transform(lower.begin(), lower.end(), lower.begin(), [](unsigned char c) { return std::tolower(c); });
    return lower;
}

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    std::string word;
    for (const char c : text) {
        if (c != ' ' && c != ',') {
            word += c;
        } else if (!word.empty()) {
            words.push_back(std::move(word));
            word.clear();
        }
    }
    if (!word.empty()) words.push_back(std::move(word));
    return words;
}

std::optional<std::chrono::month> month_named(std::string_view text) {
    const auto named =
        std::find_if(months.begin(), months.end(), [&](std::string_view month) { return same_start(text, month); });
    if (named == months.end()) return std::nullopt;
    return std::chrono::month{static_cast<unsigned>(named - months.begin()) + 1};
}

/// "1", "1st", "22nd", "03".
std::optional<std::chrono::day> day_numbered(std::string_view text) {
    constexpr std::array<std::string_view, 4> endings{"st", "nd", "rd", "th"};
    for (const auto ending : endings) {
        if (text.size() > ending.size() && text.ends_with(ending)) text.remove_suffix(ending.size());
    }
    if (text.size() > 2 || !digits(text)) return std::nullopt;
    const auto number = read_number(text);
    if (!number || *number < 1 || *number > 31) return std::nullopt;
    return std::chrono::day{static_cast<unsigned>(*number)};
}

std::optional<std::chrono::year> read_year(std::string_view text) {
    if (text.size() != 4 || !digits(text)) return std::nullopt;
    return std::chrono::year{*read_number(text)};
}

/// "december", "december 2026", "2026-12".
std::optional<Span> read_month(std::string_view text, Day today) {
    if (text.size() == 7 && text[4] == '-') {
        const auto first = read_iso_day(fmt::format("{}-01", text));
        if (!first) return std::nullopt;
        const year_month_day date{*first};
        return whole_month(date.year(), date.month());
    }
    const auto space = text.find(' ');
    const auto named = std::find_if(months.begin(), months.end(),
                                    [&](std::string_view month) { return same_start(text.substr(0, space), month); });
    if (named == months.end()) return std::nullopt;
    const std::chrono::month month{static_cast<unsigned>(named - months.begin()) + 1};
    if (space != std::string_view::npos) {
        const auto year = read_year(text.substr(space + 1));
        return year ? std::optional(whole_month(*year, month)) : std::nullopt;
    }
    const year_month_day now{today};
    return whole_month(month < now.month() ? now.year() + std::chrono::years{1} : now.year(), month);
}

struct Written {
    std::optional<std::chrono::weekday> weekday;
    std::optional<std::chrono::day> day;
    std::optional<std::chrono::month> month;
    std::optional<std::chrono::year> year;
};

/// "1/12", "1/12/2026": the day first.
bool read_figures(std::string_view text, Written& date) {
    const auto slash = text.find('/');
    if (slash == std::string_view::npos || date.day || date.month) return false;
    const auto second = std::min(text.find('/', slash + 1), text.size());
    date.day = day_numbered(text.substr(0, slash));
    const auto month = text.substr(slash + 1, second - slash - 1);
    const auto number = month.size() <= 2 && digits(month) ? read_number(month) : std::nullopt;
    if (!date.day || !number || *number < 1 || *number > 12) return false;
    date.month = std::chrono::month{static_cast<unsigned>(*number)};
    if (second == text.size()) return true;
    date.year = read_year(text.substr(second + 1));
    return date.year.has_value();
}

/// The words of "tue 1 dec 2026" in any order that people use; nothing where one of them does not fit.
std::optional<Written> read_date(std::string_view text) {
    Written date;
    for (const std::string& word : words_of(text)) {
        if (!date.weekday && !date.day && read_weekday(word)) {
            date.weekday = read_weekday(word);
        } else if (!date.month && month_named(word)) {
            date.month = month_named(word);
        } else if (!date.day && day_numbered(word)) {
            date.day = day_numbered(word);
        } else if (!date.year && date.day && read_year(word)) {
            date.year = read_year(word);
        } else if (!read_figures(word, date)) {
            return std::nullopt;
        }
    }
    if (!date.day || !date.month) return std::nullopt;
    return date;
}

/// Without a year the one that comes nearest, a past one only as far back as a quarter. A weekday has to agree.
std::optional<Day> day_of(const Written& date, Day today) {
    constexpr days quarter{92};
    const std::chrono::year now = year_month_day{today}.year();
    for (const int more : {-1, 0, 1}) {
        const year_month_day day{date.year.value_or(now + std::chrono::years{more}), *date.month, *date.day};
        if (!day.ok() || (date.weekday && *date.weekday != std::chrono::weekday{Day{day}})) continue;
        if (date.year || Day{day} >= today - quarter) return Day{day};
    }
    return std::nullopt;
}

}  // namespace

std::optional<Day> read_iso_day(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = text.substr(0, 4);
    const auto month = text.substr(5, 2);
    const auto day = text.substr(8, 2);
    if (!digits(year) || !digits(month) || !digits(day)) return std::nullopt;
    const year_month_day date{std::chrono::year{*read_number(year)},
                              std::chrono::month{static_cast<unsigned>(*read_number(month))},
                              std::chrono::day{static_cast<unsigned>(*read_number(day))}};
    if (!date.ok()) return std::nullopt;
    return Day{date};
}

std::string iso(Day day) {
    const year_month_day date{day};
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                       static_cast<unsigned>(date.day()));
}

std::string_view weekday_name(std::chrono::weekday weekday) {
    return weekdays[weekday.c_encoding()];
}

std::string_view short_weekday_name(std::chrono::weekday weekday) {
    return weekday_name(weekday).substr(0, 3);
}

std::optional<std::chrono::weekday> read_weekday(std::string_view text) {
    for (unsigned i = 0; i < weekdays.size(); ++i) {
        if (same_start(text, weekdays[i])) return std::chrono::weekday{i};
    }
    return std::nullopt;
}

std::string short_day(Day day) {
    const year_month_day date{day};
    return fmt::format("{} {} {}", short_weekday_name(std::chrono::weekday{day}), static_cast<unsigned>(date.day()),
                       months[static_cast<unsigned>(date.month()) - 1].substr(0, 3));
}

std::optional<Day> read_day(std::string_view text, Day today) {
    const std::string lower = lower_case(text);
    if (lower == "today" || lower == "tonight") return today;
    if (lower == "tomorrow") return today + days{1};
    if (lower == "yesterday") return today - days{1};
    if (const auto day = read_iso_day(text)) return day;
    if (const auto weekday = read_weekday(text)) return today + (*weekday - std::chrono::weekday{today});
    if (text.size() > 1 && text.size() < 6 && text[0] == '+' && digits(text.substr(1))) {
        return today + days{*read_number(text.substr(1))};
    }
    const auto date = read_date(text);
    return date ? day_of(*date, today) : std::nullopt;
}

std::optional<Span> read_span(std::string_view text, Day today) {
    if (const auto month = read_month(text, today)) return month;
    if (text == "week") return Span{today, today + days{6}};
    if (const auto year = read_year(text)) return Span{Day{*year / 1 / 1}, Day{*year / 12 / 31}};
    if (const auto dots = text.find(".."); dots != std::string_view::npos) {
        const auto last = read_day(text.substr(dots + 2), today);
        if (!last) return std::nullopt;
        auto first = read_day(text.substr(0, dots), today);
        // "12..14 dec": the first day is of the last one's month.
        if (const auto number = day_numbered(text.substr(0, dots)); !first && number) {
            const year_month_day end{*last};
            const year_month_day begin{end.year(), end.month(), *number};
            if (begin.ok()) first = Day{begin};
        }
        if (!first || *last < *first) return std::nullopt;
        return Span{*first, *last};
    }
    if (const auto day = read_day(text, today)) return Span{*day, *day};
    return std::nullopt;
}

}  // namespace samebase::basics
