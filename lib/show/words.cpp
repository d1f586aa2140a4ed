#include "show/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdlib>

#include "catalogue/hand.hpp"

namespace samebase::show {

namespace {

struct Currency {
    std::string_view code;
    std::string_view sign;
    int digits;
};

/// Signs and digits of a few currencies (ISO 4217).
constexpr std::array<Currency, 8> currencies{{{"AUD", "$", 2},
                                              {"NZD", "$", 2},
                                              {"USD", "$", 2},
                                              {"CAD", "$", 2},
                                              {"EUR", "€", 2},
                                              {"GBP", "£", 2},
                                              {"JPY", "¥", 0},
                                              {"CHF", "", 2}}};

bool continues(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

constexpr char escape = '\x1b';
constexpr std::size_t narrowest = 40;

std::size_t& width_of_screen() {
    static std::size_t width = usual_width;
    return width;
}

}  // namespace

std::size_t screen_width() {
    return width_of_screen();
}

void set_screen_width(std::size_t width) {
    width_of_screen() = std::max(narrowest, width);
}

std::string in_colour(const std::string& text, Colour colour, const Manner& manner) {
    if (!manner.colour) return text;
    return fmt::format("{}[{}m{}{}[0m", escape, colour == Colour::red ? 31 : 33, text, escape);
}

std::string money(basics::Money money, std::string_view currency) {
    std::string_view sign;
    int digits = 2;
    for (const Currency& known : currencies) {
        if (known.code != currency) continue;
        sign = known.sign;
        digits = known.digits;
    }
    const auto size =
        money.minor < 0 ? 0 - static_cast<std::uint64_t>(money.minor) : static_cast<std::uint64_t>(money.minor);
    const std::string figure = digits == 0 ? fmt::format("{}", size) : fmt::format("{}.{:02}", size / 100, size % 100);
    const char* minus = money.minor < 0 ? "-" : "";
    return sign.empty() ? fmt::format("{}{} {}", minus, figure, currency) : fmt::format("{}{}{}", minus, sign, figure);
}

std::string signed_money(basics::Money amount, std::string_view currency) {
    return amount.minor > 0 ? fmt::format("+{}", money(amount, currency)) : money(amount, currency);
}

std::string about_money(basics::Money amount, std::string_view currency) {
    constexpr std::int64_t decides = 500;
    constexpr std::int64_t unit = 100;
    const bool cents = currency != "JPY";
    if (!cents || std::abs(amount.minor) < decides) {
        const std::string exact = money(amount, currency);
        return exact.ends_with(".00") ? exact.substr(0, exact.size() - 3) : exact;
    }
    const std::int64_t half = amount.minor < 0 ? -unit / 2 : unit / 2;
    const std::string whole = money(basics::Money{(amount.minor + half) / unit * unit}, currency);
    return whole.ends_with(".00") ? whole.substr(0, whole.size() - 3) : whole;
}

std::string amount(const measure::Amount& amount, const catalogue::Ingredient& ingredient) {
    return catalogue::in_hand(amount, ingredient);
}

std::string named(const measure::Amount& quantity, catalogue::IngredientId of, const kitchen::Kitchen& kitchen) {
    return catalogue::in_hand_named(quantity, kitchen.catalogue()[of]);
}

std::string on_day(basics::Day when, basics::Day today) {
    return when == today || when == today + basics::days{1} ? day(when, today) : "on " + day(when, today);
}

std::string day(basics::Day day, basics::Day today) {
    if (day == today) return "today";
    if (day == today + basics::days{1}) return "tomorrow";
    constexpr basics::days half_a_year{182};
    std::string short_day = basics::short_day(day);
    if (day - today <= half_a_year && today - day <= half_a_year) return short_day;
    const std::chrono::year_month_day date{day};
    return fmt::format("{} {}", short_day.substr(short_day.find(' ') + 1), static_cast<int>(date.year()));
}

std::string near_day(basics::Day when, basics::Day today) {
    constexpr basics::days a_week{7};
    constexpr std::array<std::string_view, 7> names{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                    "Thursday", "Friday", "Saturday"};
    if (when <= today + basics::days{1} || when >= today + a_week) return day(when, today);
    return std::string(names[std::chrono::weekday{when}.c_encoding()]);
}

std::string of_day(basics::Day when, basics::Day today) {
    return near_day(when, today) + "'s";
}

std::string serves(std::int64_t thousandths) {
    const std::string words = catalogue::serves_in_hand(thousandths);
    return words.substr(0, words.rfind(' '));
}

std::string packs(std::int64_t count) {
    return counted(count, "pack");
}

std::string counted(std::int64_t count, const std::string& thing) {
    if (count == 1) return "1 " + thing;
    if (const auto of = thing.find(" of "); of != std::string::npos)
        return counted(count, thing.substr(0, of)) + thing.substr(of);
    const bool hisses = thing.ends_with("ch") || thing.ends_with("sh") || thing.ends_with('s') || thing.ends_with('x');
    if (thing.ends_with("loaf")) return fmt::format("{} {}ves", count, thing.substr(0, thing.size() - 1));
    return fmt::format("{} {}{}", count, thing, hisses ? "es" : "s");
}

std::size_t length(std::string_view text) {
    std::size_t count = 0;
    bool colouring = false;
    for (const char c : text) {
        colouring = colouring || c == escape;
        count += colouring || continues(c) ? 0 : 1;
        if (c == 'm') colouring = false;
    }
    return count;
}

std::string wrapped(std::string_view text, std::size_t indent, std::size_t width) {
    const auto start = std::min(text.find_first_not_of(' '), text.size());
    std::string result(start, ' ');
    text.remove_prefix(start);
    std::size_t column = start;
    bool first_of_line = true;
    while (!text.empty()) {
        const auto space = text.find(' ');
        const std::string_view word = text.substr(0, space);
        text = space == std::string_view::npos ? std::string_view{} : text.substr(space + 1);
        if (!first_of_line && column + 1 + length(word) > width) {
            result += '\n';
            result.append(indent, ' ');
            column = indent;
            first_of_line = true;
        }
        if (!first_of_line) {
            result += ' ';
            ++column;
        }
        result += word;
        column += length(word);
        first_of_line = false;
    }
    return result;
}

std::string fitted(std::string_view text, std::size_t width) {
    std::string result;
    const std::size_t size = length(text);
    if (size <= width) {
        result = text;
        result.append(width - size, ' ');
        return result;
    }
    std::size_t count = 0;
    for (const char c : text) {
        if (!continues(c) && ++count >= width) break;
        result += c;
    }
    return result + "…";
}

std::string listed(const std::vector<std::string>& words) {
    std::string result;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) result += i + 1 == words.size() ? " and " : ", ";
        result += words[i];
    }
    return result;
}

std::string shell(const std::string& text) {
    return text.find('\'') == std::string::npos ? text : fmt::format("\"{}\"", text);
}

std::string capitalised(std::string text) {
    if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    return text;
}

}  // namespace samebase::show
