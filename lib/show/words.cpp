#include "show/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdlib>

#include "measure/written.hpp"

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

}  // namespace

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

std::string amount(const measure::Amount& amount, const catalogue::Ingredient& ingredient) {
    if (ingredient.in_serves)
        return fmt::format("{} serve{}", serves(amount.value()), amount.value() == 1000 ? "" : "s");
    return measure::write_kindly(amount);
}

std::string named(const measure::Amount& quantity, catalogue::IngredientId of, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[of];
    return fmt::format("{} {}", amount(quantity, thing), thing.name);
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

std::string serves(std::int64_t thousandths) {
    if (thousandths % 1000 == 0) return fmt::format("{}", thousandths / 1000);
    constexpr std::int64_t many = 10'000;
    const double value = static_cast<double>(thousandths) / 1000;
    return thousandths < many ? fmt::format("{:.2g}", value) : fmt::format("{:.1f}", value);
}

std::size_t length(std::string_view text) {
    std::size_t count = 0;
    for (const char c : text) count += continues(c) ? 0 : 1;
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
