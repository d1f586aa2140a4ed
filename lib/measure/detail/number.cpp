#include "measure/detail/number.hpp"

#include <array>
#include <string>

#include "measure/detail/plain.hpp"

namespace samebase::measure::detail {

namespace {

constexpr Wide widest = ~Wide{0};
constexpr std::size_t most_digits = 18;

Wide common_divisor(Wide a, Wide b) {
    while (b != 0) {
        const Wide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

std::optional<Wide> times(Wide a, Wide b) {
    if (a != 0 && b > widest / a) return std::nullopt;
    return a * b;
}

Ratio reduced(Wide numerator, Wide denominator) {
    const Wide divisor = common_divisor(numerator, denominator);
    return {numerator / divisor, denominator / divisor};
}

/// Digits, gathered into a number of at most 18 significant digits.
struct Digits {
    Wide value = 0;
    std::size_t significant = 0;

    bool add(char digit) {
        if (value == 0 && digit == '0') return true;
        value = value * 10 + static_cast<Wide>(digit - '0');
        return ++significant <= most_digits;
    }
};

std::size_t end_of_digits(std::string_view text, std::size_t at) {
    while (at < text.size() && is_digit(text[at])) ++at;
    return at;
}

/// The end of "1,000,000" at `at`, whose first group ends at `end`; `end` itself where no comma groups follow.
std::size_t end_of_groups(std::string_view text, std::size_t at, std::size_t end) {
    if (end - at > 3) return end;
    while (end < text.size() && text[end] == ',' && end_of_digits(text, end + 1) == end + 4) end += 4;
    return end;
}

bool decimal_comma(std::string_view text, std::size_t end) {
    return end + 1 < text.size() && text[end] == ',' && is_digit(text[end + 1]);
}

/// An integer or a decimal.
tl::expected<Number, Fault> read_decimal(std::string_view text, std::size_t at) {
    std::size_t end = end_of_groups(text, at, end_of_digits(text, at));
    if (decimal_comma(text, end)) return tl::make_unexpected(Fault::decimal_comma);
    Digits digits;
    for (std::size_t i = at; i < end; ++i) {
        if (text[i] != ',' && !digits.add(text[i])) return tl::make_unexpected(Fault::too_many_digits);
    }
    if (end + 1 >= text.size() || text[end] != '.' || !is_digit(text[end + 1])) {
        if (end == at) return tl::make_unexpected(Fault::absent);
        return Number{.value = {digits.value, 1}, .end = end, .whole = true};
    }
    const std::size_t first = end + 1;
    end = end_of_digits(text, first);
    std::size_t last = end;
    while (last > first && text[last - 1] == '0') --last;
    if (last - first > most_digits) return tl::make_unexpected(Fault::too_many_digits);
    Wide denominator = 1;
    for (std::size_t i = first; i < last; ++i) {
        if (!digits.add(text[i])) return tl::make_unexpected(Fault::too_many_digits);
        denominator *= 10;
    }
    return Number{.value = reduced(digits.value, denominator), .end = end};
}

/// "1/2", with spaces around the stroke allowed; absent where it is no fraction.
tl::expected<Number, Fault> read_fraction(std::string_view text, std::size_t at) {
    const auto upper = read_decimal(text, at);
    if (!upper) return upper;
    const std::size_t stroke = skip_spaces(text, upper->end);
    if (!upper->whole || stroke >= text.size() || text[stroke] != '/') return tl::make_unexpected(Fault::absent);
    const auto lower_number = read_decimal(text, skip_spaces(text, stroke + 1));
    if (!lower_number) return lower_number;
    if (!lower_number->whole) return tl::make_unexpected(Fault::absent);
    if (lower_number->value.numerator == 0) return tl::make_unexpected(Fault::zero_denominator);
    return Number{.value = reduced(upper->value.numerator, lower_number->value.numerator), .end = lower_number->end};
}

struct NumberWord {
    std::string_view word;
    std::uint16_t numerator;
    std::uint16_t denominator;
};

constexpr std::array count_number_words{
    NumberWord{"one", 1, 1},     NumberWord{"two", 2, 1},  NumberWord{"three", 3, 1},   NumberWord{"four", 4, 1},
    NumberWord{"five", 5, 1},    NumberWord{"six", 6, 1},  NumberWord{"seven", 7, 1},   NumberWord{"eight", 8, 1},
    NumberWord{"nine", 9, 1},    NumberWord{"ten", 10, 1}, NumberWord{"eleven", 11, 1}, NumberWord{"twelve", 12, 1},
    NumberWord{"twenty", 20, 1}, NumberWord{"a", 1, 1},    NumberWord{"an", 1, 1},
};

constexpr std::array fraction_words{
    NumberWord{"half", 1, 2},    NumberWord{"halves", 1, 2},   NumberWord{"third", 1, 3},  NumberWord{"thirds", 1, 3},
    NumberWord{"quarter", 1, 4}, NumberWord{"quarters", 1, 4}, NumberWord{"eighth", 1, 8}, NumberWord{"eighths", 1, 8},
};

template <std::size_t N>
const NumberWord* look_up(const std::array<NumberWord, N>& words, std::string_view word) {
    if (word.empty() || word.size() > 8) return nullptr;
    const std::string folded = lower(word);
    for (const NumberWord& candidate : words) {
        if (candidate.word == folded) return &candidate;
    }
    return nullptr;
}

std::size_t after(std::string_view text, std::size_t at, std::string_view word) {
    return skip_spaces(text, at + word.size());
}

/// Past "a", "an", "of a" and the like after a fraction: "half a cup", "a quarter of a cup", "half of the".
std::size_t skip_of_a(std::string_view text, std::size_t end) {
    std::size_t at = skip_spaces(text, end);
    if (lower(word_at(text, at)) == "of") {
        end = at + 2;
        at = skip_spaces(text, end);
    }
    const std::string_view word = word_at(text, at);
    const std::string folded = lower(word);
    return folded == "a" || folded == "an" || folded == "the" ? at + word.size() : end;
}

/// "half", "a half", "three quarters", "one", "a"; no dozens and no "and a half".
tl::expected<Number, Fault> read_simple_words(std::string_view text, std::size_t at) {
    const auto first = word_at(text, at);
    const std::size_t end = at + first.size();
    if (end + 1 < text.size() && text[end] == '-' && is_letter(text[end + 1])) {
        return tl::make_unexpected(Fault::absent);  // "five-spice powder", "half-and-half"
    }
    if (const auto* fraction = look_up(fraction_words, first); fraction != nullptr) {
        return Number{.value = {fraction->numerator, fraction->denominator}, .end = skip_of_a(text, end)};
    }
    const auto* count = look_up(count_number_words, first);
    if (count == nullptr) return tl::make_unexpected(Fault::absent);
    const std::size_t next = after(text, at, first);
    const auto second = word_at(text, next);
    if (const auto* fraction = look_up(fraction_words, second); fraction != nullptr) {
        return Number{.value = reduced(count->numerator, fraction->denominator),
                      .end = skip_of_a(text, next + second.size())};
    }
    if (lower(second) == "couple") return Number{.value = {2, 1}, .end = skip_of_a(text, next + second.size())};
    return Number{.value = {count->numerator, 1}, .end = end, .article = count->word[0] == 'a'};
}

/// The fraction of "1 1/2", "1 & 1/2", "1 and a half" after a whole number; absent where there is none.
tl::expected<Number, Fault> read_rest_of_mixed(std::string_view text, std::size_t end) {
    std::size_t at = skip_spaces(text, end);
    const bool ampersand = at < text.size() && text[at] == '&';
    const auto word = word_at(text, at);
    const bool joined = ampersand || lower(word) == "and";
    if (joined) at = skip_spaces(text, at + (ampersand ? 1 : word.size()));
    if (at >= text.size() || at == end) return tl::make_unexpected(Fault::absent);
    if (is_digit(text[at])) {
        const auto fraction = read_fraction(text, at);
        if (fraction || fraction.error() == Fault::zero_denominator) return fraction;
        return tl::make_unexpected(Fault::absent);
    }
    if (!joined) return tl::make_unexpected(Fault::absent);
    const auto half = read_simple_words(text, at);
    if (half && half->value.denominator != 1) return half;
    return tl::make_unexpected(Fault::absent);
}

/// "dozen" after a number, or by itself.
tl::expected<Number, Fault> with_dozens(std::string_view text, std::size_t at, tl::expected<Number, Fault> number) {
    const std::size_t next = number ? skip_spaces(text, number->end) : at;
    const auto word = word_at(text, next);
    const std::string folded = lower(word);
    if (folded != "dozen" && folded != "dozens") return number;
    const auto dozens = product(number ? number->value : Ratio{1, 1}, {12, 1});
    if (!dozens) return tl::make_unexpected(Fault::too_many_digits);
    return Number{.value = *dozens, .end = next + word.size(), .dozens = true};
}

}  // namespace

std::optional<Ratio> product(const Ratio& a, const Ratio& b) {
    const Wide left = common_divisor(a.numerator, b.denominator);
    const Wide right = common_divisor(b.numerator, a.denominator);
    const auto numerator = times(a.numerator / left, b.numerator / right);
    const auto denominator = times(a.denominator / right, b.denominator / left);
    if (!numerator || !denominator) return std::nullopt;
    return Ratio{*numerator, *denominator};
}

std::optional<Ratio> sum(const Ratio& a, const Ratio& b) {
    const auto left = times(a.numerator, b.denominator);
    const auto right = times(b.numerator, a.denominator);
    const auto denominator = times(a.denominator, b.denominator);
    if (!left || !right || !denominator || *left > widest - *right) return std::nullopt;
    return reduced(*left + *right, *denominator);
}

std::optional<std::int64_t> rounded(const Ratio& a) {
    Wide quotient = a.numerator / a.denominator;
    const Wide rest = a.numerator % a.denominator;
    const Wide to_next = a.denominator - rest;
    if (rest > to_next || (rest == to_next && quotient % 2 != 0)) ++quotient;
    if (quotient > static_cast<Wide>(most_readable)) return std::nullopt;
    return static_cast<std::int64_t>(quotient);
}

std::size_t skip_spaces(std::string_view text, std::size_t at) {
    while (at < text.size() && text[at] == ' ') ++at;
    return at;
}

std::string_view word_at(std::string_view text, std::size_t at) {
    if (at >= text.size()) return {};
    std::size_t end = at;
    while (end < text.size() && is_letter(text[end])) ++end;
    return text.substr(at, end - at);
}

tl::expected<Number, Fault> read_number(std::string_view text, std::size_t at) {
    auto fraction = read_fraction(text, at);
    if (fraction || fraction.error() == Fault::zero_denominator) return with_dozens(text, at, fraction);
    auto number = read_decimal(text, at);
    if (!number && number.error() != Fault::absent) return number;
    if (!number) number = read_simple_words(text, at);
    if (number && number->value.denominator == 1 && !number->article) {
        const auto rest = read_rest_of_mixed(text, number->end);
        if (!rest && rest.error() == Fault::zero_denominator) return rest;
        if (rest) {
            const auto whole = sum(number->value, rest->value);
            if (!whole) return tl::make_unexpected(Fault::too_many_digits);
            number = Number{.value = *whole, .end = rest->end};
        }
    }
    return with_dozens(text, at, number);
}

}  // namespace samebase::measure::detail
