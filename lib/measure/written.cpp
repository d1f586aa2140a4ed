#include "measure/written.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "measure/detail/explain.hpp"
#include "measure/detail/lead.hpp"
#include "measure/detail/number.hpp"
#include "measure/detail/plain.hpp"

namespace samebase::measure {

namespace {

/// "of butter" or "butter" to the end of the text.
bool is_butter(std::string_view rest) {
    return rest == "butter" || rest == "of butter";
}

std::string decimal(std::uint64_t thousandths) {
    std::string out = std::to_string(thousandths / 1000);
    std::string fraction = std::to_string(1000 + thousandths % 1000).substr(1);
    while (!fraction.empty() && fraction.back() == '0') fraction.pop_back();
    if (!fraction.empty()) out += "." + fraction;
    return out;
}

/// Without the sign; right for the least value too.
std::uint64_t size_of(std::int64_t value) {
    const auto bits = static_cast<std::uint64_t>(value);
    return value < 0 ? ~bits + 1 : bits;
}

std::uint64_t to_nearest(std::uint64_t value, std::uint64_t step) {
    return (value + step / 2) / step * step;
}

/// Rounded once to what is told apart at that size: from 100 units up to whole ones, from 10 up to tenths, from 1 up to
/// hundredths. The error is at most a half in 100.
std::uint64_t three_figures(std::uint64_t value, std::uint64_t unit) {
    if (value >= unit / 100 * 9995) return to_nearest(value, unit);
    if (value >= unit / 1000 * 9995) return to_nearest(value, unit / 10);
    return value >= unit ? to_nearest(value, unit / 100) : value;
}

/// "480 g", or "1.25 kg" from a thousand up.
std::string kindly(std::uint64_t value, std::string_view unit, std::string_view thousand) {
    const std::uint64_t shown = three_figures(value, 1000);
    if (shown < 1'000'000) return decimal(shown) + " " + std::string(unit);
    const std::uint64_t thousands = three_figures(std::max(value, std::uint64_t{1'000'000}), 1'000'000);
    return decimal(thousands / 1000) + " " + std::string(thousand);
}

struct Part {
    std::uint64_t thousandths;
    std::string_view written;
};

constexpr std::array parts_of_a_piece{Part{125, "1/8"}, Part{250, "1/4"}, Part{333, "1/3"},
                                      Part{375, "3/8"}, Part{500, "1/2"}, Part{625, "5/8"},
                                      Part{667, "2/3"}, Part{750, "3/4"}, Part{875, "7/8"}};

std::string kindly_pieces(std::uint64_t value) {
    const std::uint64_t whole = value / 1000;
    for (const Part& part : parts_of_a_piece) {
        if (value % 1000 != part.thousandths) continue;
        return (whole == 0 ? std::string() : std::to_string(whole) + " ") + std::string(part.written);
    }
    return decimal(three_figures(value, 1000));
}

/// In thousandths of a gram or millilitre, to what a hand tells apart at that size.
std::uint64_t in_hand(std::uint64_t value) {
    constexpr std::uint64_t unit = 1000;
    constexpr std::uint64_t thousand = 1'000'000;
    if (value < 10 * unit) return to_nearest(value, unit);
    if (value < 100 * unit) return to_nearest(value, 5 * unit);
    return to_nearest(value, value < thousand ? 10 * unit : 50 * unit);
}

std::string rounded(std::uint64_t value, std::string_view unit, std::string_view thousand) {
    if (value == 0) return "0 " + std::string(unit);
    const std::uint64_t shown = in_hand(value);
    if (shown == 0) return "a little";
    if (shown < 1'000'000) return decimal(shown) + " " + std::string(unit);
    return decimal(shown / 1000) + " " + std::string(thousand);
}

}  // namespace

std::string_view name(Rough rough) {
    constexpr std::array<std::string_view, 3> names{"some", "low", "lots"};
    return names[static_cast<std::size_t>(rough)];
}

basics::Result<Written> read_amount(std::string_view text, MeasureSet set) {
    const auto plain = detail::plain_or_problem(text, longest_amount, detail::like_an_amount);
    if (!plain) return tl::make_unexpected(plain.error());
    auto lead = detail::read_lead(*plain, 0, set, detail::Within::amount);
    if (!lead) return detail::explain(lead.error(), text);
    const auto rest = std::string_view(*plain).substr(detail::skip_spaces(*plain, lead->end));
    if (lead->unit == "stick" && is_butter(detail::lower(rest))) return detail::sticks_of_butter(lead->written);
    if (lead->article && rest.empty()) return detail::explain(detail::LeadFault::absent, text);
    if (!rest.empty()) {
        return basics::problem({}, detail::quoted(rest) + " in " + detail::quoted(text) + " is not a unit",
                               "a unit such as 'g', 'mL', 'cup' or 'pack', and nothing after it");
    }
    return std::move(lead->written);
}

std::string write(const Amount& amount) {
    constexpr std::array<std::string_view, 3> units{" g", " mL", ""};
    const std::string sign = amount.value() < 0 ? "-" : "";
    return sign + decimal(size_of(amount.value())) + std::string(units[static_cast<std::size_t>(amount.dimension())]);
}

std::string write_kindly(const Amount& amount) {
    const std::string sign = amount.value() < 0 ? "-" : "";
    const std::uint64_t size = size_of(amount.value());
    switch (amount.dimension()) {
        case Dimension::mass:
            return sign + kindly(size, "g", "kg");
        case Dimension::volume:
            return sign + kindly(size, "mL", "L");
        case Dimension::pieces:
            break;
    }
    return sign + kindly_pieces(size);
}

std::string write_rounded(const Amount& amount) {
    const std::string sign = amount.value() < 0 ? "-" : "";
    const std::uint64_t size = size_of(amount.value());
    switch (amount.dimension()) {
        case Dimension::mass:
            return sign + rounded(size, "g", "kg");
        case Dimension::volume:
            return sign + rounded(size, "mL", "L");
        case Dimension::pieces:
            break;
    }
    const std::uint64_t whole = to_nearest(size, 1000) / 1000;
    return sign + std::to_string(size == 0 ? 0 : std::max<std::uint64_t>(1, whole));
}

}  // namespace samebase::measure
