#include "measure/detail/lead.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "measure/detail/number.hpp"
#include "measure/detail/plain.hpp"

namespace samebase::measure::detail {

namespace {

using Failed = tl::unexpected<LeadFault>;

Failed failed(Fault fault) {
    switch (fault) {
        case Fault::zero_denominator:
            return Failed(LeadFault::zero_denominator);
        case Fault::too_many_digits:
            return Failed(LeadFault::too_many_digits);
        case Fault::decimal_comma:
            return Failed(LeadFault::decimal_comma);
        case Fault::absent:
            break;
    }
    return Failed(LeadFault::absent);
}

bool hyphenated(std::string_view text, std::size_t end) {
    return end + 1 < text.size() && text[end] == '-' && is_letter(text[end + 1]);
}

constexpr std::array<std::string_view, 23> manners{
    "big",    "extra", "fat",    "full",    "generous", "good",  "heaped", "heaping", "jumbo", "large", "level", "long",
    "medium", "mini",  "packed", "rounded", "scant",    "short", "small",  "thick",   "thin",  "very",  "whole"};

}  // namespace

std::optional<UnitAt> read_bare_unit(std::string_view text, std::size_t at) {
    const auto past_stop = [&](std::size_t end) { return end < text.size() && text[end] == '.' ? end + 1 : end; };
    const auto word = word_at(text, at);
    std::size_t end = past_stop(at + word.size());
    const std::string folded = word.size() <= 8 ? lower(word) : std::string();
    if (folded == "fl" || folded == "fluid") {
        const std::size_t next = skip_spaces(text, end);
        const auto second = word_at(text, next);
        if (second.size() <= 8) {
            if (const auto unit = find_unit(folded + " " + lower(second))) {
                return UnitAt{*unit, past_stop(next + second.size()), {}};
            }
        }
    }
    const auto unit = find_unit(word);
    if (!unit || hyphenated(text, end)) return std::nullopt;
    return UnitAt{*unit, end, {}};
}

std::size_t end_of_manner(std::string_view text, std::size_t at) {
    const auto word = word_at(text, at);
    if (word.size() > 8 || std::find(manners.begin(), manners.end(), lower(word)) == manners.end()) return at;
    std::size_t end = at + word.size();
    if (!hyphenated(text, end)) return end;
    const auto second = word_at(text, end + 1);
    const std::string folded = second.size() <= 5 ? lower(second) : std::string();
    return folded == "size" || folded == "sized" || folded == "large" ? end + 1 + second.size() : at;
}

namespace {

/// The unit after a number, with a hyphen before it allowed ("14-ounce"), and in a line words of size ("2 large
/// cloves").
std::optional<UnitAt> read_unit(std::string_view text, std::size_t end, Within within) {
    if (hyphenated(text, end)) return read_bare_unit(text, end + 1);
    std::size_t at = skip_spaces(text, end);
    const std::size_t first = at;
    if (within == Within::line) {
        for (std::size_t next = end_of_manner(text, at); next != at; next = end_of_manner(text, at)) {
            at = skip_spaces(text, next);
            if (at < text.size() && text[at] == ',') at = skip_spaces(text, at + 1);
        }
    }
    auto unit = read_bare_unit(text, at);
    if (unit && at > first) unit->manner = text.substr(first, at - first - 1);
    return unit;
}

/// One factor of an amount, "400 g", "3 packs", "500-600 g": in smallest units where the unit is a measure, else a
/// number.
struct Factor {
    Ratio lower;
    std::optional<Ratio> upper;
    std::optional<UnitAt> unit;
    std::size_t end = 0;
    bool article = false;
};

/// Where the number after "-", "to" or "or" begins; nothing where none does.
std::optional<std::size_t> after_range_sign(std::string_view text, std::size_t end, bool with_unit) {
    std::size_t at = skip_spaces(text, end);
    if (at < text.size() && text[at] == '-') {
        at = skip_spaces(text, at + 1);
        if (at < text.size() && is_digit(text[at])) return at;
    }
    const auto word = word_at(text, at);
    if (word.size() != 2) return std::nullopt;
    const std::string folded = lower(word);
    if (folded != "to" && (folded != "or" || with_unit)) return std::nullopt;
    return skip_spaces(text, at + 2);
}

std::optional<Ratio> measured(const Ratio& number, const std::optional<UnitAt>& unit, MeasureSet set) {
    if (!unit || unit->unit.counted) return number;
    const Size size = unit->unit.size(set);
    return product(number, {static_cast<Wide>(size.numerator), static_cast<Wide>(size.denominator)});
}

bool proper_fraction(const Number& number) {
    return number.value.denominator > 1 && number.value.numerator < number.value.denominator;
}

tl::expected<Factor, LeadFault> finish(Factor factor, const Number& lower, const std::optional<Number>& upper,
                                       const std::optional<UnitAt>& lower_unit, MeasureSet set) {
    if (lower_unit && factor.unit &&
        (lower_unit->unit.dimension != factor.unit->unit.dimension ||
         (lower_unit->unit.counted && lower_unit->unit.name != factor.unit->unit.name))) {
        return Failed(LeadFault::units_differ);
    }
    const auto low = measured(lower.value, lower_unit ? lower_unit : factor.unit, set);
    if (!low) return Failed(LeadFault::too_large);
    factor.lower = *low;
    if (!factor.unit) factor.unit = lower_unit;
    if (!upper) return factor;
    factor.upper = measured(upper->value, factor.unit, set);
    if (!factor.upper) return Failed(LeadFault::too_large);
    return factor;
}

tl::expected<Factor, LeadFault> read_factor(std::string_view text, std::size_t at, MeasureSet set, Within within,
                                            bool ranges) {
    auto lower = read_number(text, at);
    if (!lower) return failed(lower.error());
    Factor factor;
    auto unit = read_unit(text, lower->end, within);
    factor.end = unit ? unit->end : lower->end;
    const auto next = after_range_sign(text, factor.end, unit.has_value());
    if (!next || lower->article || !ranges) {
        factor.article = lower->article && !unit;
        factor.unit = unit;
        return finish(factor, *lower, std::nullopt, unit, set);
    }
    auto upper = read_number(text, *next);
    if (!upper && upper.error() != Fault::absent) return failed(upper.error());
    if (!upper || upper->article) {
        factor.unit = unit;
        return finish(factor, *lower, std::nullopt, unit, set);
    }
    const auto upper_unit = read_unit(text, upper->end, within);
    factor.end = upper_unit ? upper_unit->end : upper->end;
    factor.unit = upper_unit;
    // "2-1/2 cups" is two and a half, not a range that runs backwards.
    if (!unit && lower->whole && lower->value.numerator > 0 && *next == lower->end + 1 && proper_fraction(*upper)) {
        const auto mixed = sum(lower->value, upper->value);
        if (!mixed) return Failed(LeadFault::too_many_digits);
        lower->value = *mixed;
        return finish(factor, *lower, std::nullopt, unit, set);
    }
    return finish(factor, *lower, *upper, unit, set);
}

/// Where the factor after "x" or "*" begins; nothing where there is no such sign.
std::optional<std::size_t> after_times_sign(std::string_view text, std::size_t end) {
    const std::size_t at = skip_spaces(text, end);
    if (at >= text.size()) return std::nullopt;
    const auto word = word_at(text, at);
    if (text[at] != '*' && word != "x" && word != "X") return std::nullopt;
    const std::size_t next = skip_spaces(text, at + 1);
    if (next < text.size() && (is_digit(text[next]) || text[next] == '.')) return next;
    return std::nullopt;
}

/// Multiplies `by` into `factor`. At most one of the two has a measure; a count word gives way to it.
std::optional<LeadFault> multiply_in(Factor& factor, const Factor& by) {
    const auto is_measure = [](const Factor& one) { return one.unit && !one.unit->unit.counted; };
    if (is_measure(factor) && is_measure(by)) return LeadFault::units_differ;
    std::optional<Ratio> upper;
    if (factor.upper || by.upper) {
        upper = product(factor.upper.value_or(factor.lower), by.upper.value_or(by.lower));
        if (!upper) return LeadFault::too_large;
    }
    const auto lower = product(factor.lower, by.lower);
    if (!lower) return LeadFault::too_large;
    factor.lower = *lower;
    factor.upper = upper;
    factor.end = by.end;
    if (by.unit && !is_measure(factor)) factor.unit = by.unit;
    return std::nullopt;
}

tl::expected<Lead, LeadFault> to_lead(const Factor& factor) {
    const bool counted = !factor.unit || factor.unit->unit.counted;
    const Dimension dimension = factor.unit ? factor.unit->unit.dimension : Dimension::pieces;
    const auto whole = [&](const Ratio& ratio) -> std::optional<std::int64_t> {
        const auto smallest = counted ? product(ratio, {1000, 1}) : ratio;
        return smallest ? rounded(*smallest) : std::nullopt;
    };
    Lead lead;
    lead.end = factor.end;
    lead.article = factor.article;
    if (factor.unit) {
        lead.unit = factor.unit->unit.name;
        lead.manner = factor.unit->manner;
        if (counted) lead.written.counted = factor.unit->unit.name;
    }
    const auto lower = whole(factor.lower);
    if (!lower) return Failed(LeadFault::too_large);
    lead.written.amount = Amount{dimension, *lower};
    if (!factor.upper) return lead;
    const auto upper = whole(*factor.upper);
    if (!upper) return Failed(LeadFault::too_large);
    if (*upper < *lower) return Failed(LeadFault::range_backwards);
    lead.written.upper = Amount{dimension, *upper};
    return lead;
}

tl::expected<Lead, LeadFault> read_product(std::string_view text, std::size_t at, MeasureSet set, Within within,
                                           bool ranges) {
    auto factor = read_factor(text, at, set, within, ranges);
    if (!factor) return Failed(factor.error());
    while (const auto next = after_times_sign(text, factor->end)) {
        const auto by = read_factor(text, *next, set, within, ranges);
        if (!by) return Failed(by.error());
        if (const auto fault = multiply_in(*factor, *by)) return Failed(*fault);
    }
    return to_lead(*factor);
}

struct RoughWords {
    std::string_view words;
    Rough rough;
    Within least;  ///< `line` where it may also begin an ingredient line
};

constexpr std::array rough_words{
    RoughWords{"some", Rough::some, Within::line},      RoughWords{"a few", Rough::some, Within::line},
    RoughWords{"a little", Rough::some, Within::line},  RoughWords{"a bit of", Rough::some, Within::line},
    RoughWords{"several", Rough::some, Within::line},   RoughWords{"lots of", Rough::lots, Within::line},
    RoughWords{"plenty of", Rough::lots, Within::line}, RoughWords{"running low", Rough::low, Within::amount},
    RoughWords{"lots", Rough::lots, Within::amount},    RoughWords{"plenty", Rough::lots, Within::amount},
    RoughWords{"low", Rough::low, Within::amount},      RoughWords{"a bit", Rough::some, Within::amount},
};

std::optional<Lead> read_rough(std::string_view text, std::size_t at, Within within) {
    for (const RoughWords& row : rough_words) {
        if (within == Within::line && row.least != Within::line) continue;
        if (lower(text.substr(at, row.words.size())) != row.words) continue;
        const std::size_t end = at + row.words.size();
        if (end < text.size() && text[end] != ' ') continue;
        Lead lead;
        lead.written.amount = row.rough;
        lead.end = end;
        if (within == Within::amount) return lead;
        if (auto unit = read_unit(text, end, within); unit && unit->unit.counted) {
            lead.unit = lead.written.counted = unit->unit.name;
            lead.manner = unit->manner;
            lead.end = unit->end;
        }
        return lead;
    }
    return std::nullopt;
}

constexpr std::array<std::string_view, 6> about{"about", "approx", "approximately", "around", "roughly", "circa"};

std::size_t skip_about(std::string_view text, std::size_t at) {
    if (at < text.size() && text[at] == '~') return skip_spaces(text, at + 1);
    const auto word = word_at(text, at);
    if (word.size() > 13 || std::find(about.begin(), about.end(), lower(word)) == about.end()) return at;
    std::size_t end = at + word.size();
    if (end < text.size() && text[end] == '.') ++end;
    return skip_spaces(text, end);
}

}  // namespace

tl::expected<Lead, LeadFault> read_lead(std::string_view text, std::size_t at, MeasureSet set, Within within) {
    at = skip_about(text, at);
    if (at + 1 < text.size() && text[at] == '-') {
        const char next = text[skip_spaces(text, at + 1)];
        if (is_digit(next) || next == '.') return Failed(LeadFault::below_nothing);
    }
    if (auto rough = read_rough(text, at, within)) return *rough;
    auto lead = read_product(text, at, set, within, true);
    const bool no_range =
        !lead && (lead.error() == LeadFault::range_backwards || lead.error() == LeadFault::units_differ);
    return no_range && within == Within::line ? read_product(text, at, set, within, false) : lead;
}
Written sticks_of_butter(const Written& written) {
    const auto by_weight = [](const Amount& sticks) -> std::optional<Amount> {
        const auto mg = basics::scale(sticks.value(), stick_of_butter.numerator, stick_of_butter.denominator * 1000);
        if (!mg || *mg > most_readable) return std::nullopt;
        return Amount{Dimension::mass, *mg};
    };
    const auto* sticks = std::get_if<Amount>(&written.amount);
    if (written.counted != "stick" || sticks == nullptr) return written;
    const auto lower = by_weight(*sticks);
    const auto upper = written.upper ? by_weight(*written.upper) : std::nullopt;
    if (!lower || written.upper.has_value() != upper.has_value()) return written;
    return Written{*lower, upper, {}};
}

}  // namespace samebase::measure::detail
