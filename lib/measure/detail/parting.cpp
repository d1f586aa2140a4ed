#include "measure/detail/parting.hpp"

#include <algorithm>
#include <array>

#include "measure/detail/explain.hpp"
#include "measure/detail/number.hpp"
#include "measure/detail/plain.hpp"

namespace samebase::measure::detail {

namespace {

/// Faults that stand for words rather than for a miswritten amount.
bool is_words(LeadFault fault) {
    return fault == LeadFault::absent || fault == LeadFault::units_differ;
}

/// These need no "of": "pinch nutmeg", "handful basil leaves".
constexpr std::array<std::string_view, 4> by_hand_units{"pinch", "dash", "handful", "knob"};

/// "Pinch of salt", "Sprigs of parsley": a unit without a number, one where it is singular, else some.
bool take_bare_unit(Parting& parting) {
    const auto unit = read_bare_unit(parting.text, parting.at);
    if (!unit) return false;
    const std::size_t next = skip_spaces(parting.text, unit->end);
    const bool by_hand = std::find(by_hand_units.begin(), by_hand_units.end(), unit->unit.name) != by_hand_units.end();
    if (word_at(parting.text, next).empty()) return false;
    if (!by_hand && lower(word_at(parting.text, next)) != "of") return false;
    const auto one = read_lead("1 " + std::string(unit->unit.name), 0, parting.set, Within::line);
    if (!one) return false;
    parting.take(*one);
    if (parting.text[unit->end - 1] == 's') parting.line.amount->amount = Rough::some;
    parting.at = unit->end;
    return true;
}

/// "Juice of half a lemon", "rind of one orange".
bool is_number_word(std::string_view word) {
    constexpr std::array<std::string_view, 6> numbers{"a", "an", "half", "one", "two", "three"};
    return word.size() <= 5 && std::find(numbers.begin(), numbers.end(), lower(word)) != numbers.end();
}

/// "Juice of 1 lemon", "Scant 1/2 teaspoon salt": up to eight words, of which the last is "of" or "from" or each is of
/// manner, then a number in digits.
tl::expected<bool, LeadFault> take_after_words(Parting& parting) {
    std::size_t at = parting.at;
    bool manner = true;
    for (int words = 0; words < 8; ++words) {
        const auto word = word_at(parting.text, at);
        if (word.empty()) return false;
        const std::string folded = word.size() <= 4 ? lower(word) : std::string();
        manner = manner && end_of_manner(parting.text, at) != at;
        at = skip_spaces(parting.text, at + word.size());
        if (at >= parting.text.size()) return false;
        const bool of_some = (folded == "of" || folded == "from") && is_number_word(word_at(parting.text, at));
        if (!is_digit(parting.text[at]) && !of_some) continue;
        if (!manner && folded != "of" && folded != "from") return false;
        const auto lead = read_lead(parting.text, at, parting.set, Within::line);
        if (!lead) return tl::make_unexpected(lead.error());
        parting.aside(parting.text.substr(parting.at, at - parting.at));
        parting.take(*lead);
        return true;
    }
    return false;
}

/// "Beef mince 500 g", "Flour, 2 cups": an amount with a unit that ends the line.
void take_from_behind(Parting& parting) {
    for (std::size_t at = parting.at; at < parting.text.size(); ++at) {
        if (!is_digit(parting.text[at])) continue;
        if (at == 0 || parting.text[at - 1] != ' ') return;
        const auto lead = read_lead(parting.text, at, parting.set, Within::line);
        if (!lead || lead->unit.empty() || lead->end != parting.text.size()) return;
        const std::size_t start = parting.at;
        parting.take(*lead);
        parting.at = start;
        parting.end = at;
        while (parting.end > start) {
            const char last = parting.text[parting.end - 1];
            if (last != ' ' && last != ',' && last != '-' && last != ':') break;
            --parting.end;
        }
        return;
    }
}

basics::Result<bool> take_amount(Parting& parting) {
    const auto lead = read_lead(parting.text, parting.at, parting.set, Within::line);
    if (lead) {
        parting.take(*lead);
        return true;
    }
    if (!is_words(lead.error())) return explain(lead.error(), parting.line.original);
    if (take_bare_unit(parting)) return true;
    const auto after = take_after_words(parting);
    if (!after && !is_words(after.error())) return explain(after.error(), parting.line.original);
    if (!after || !*after) take_from_behind(parting);
    return true;
}

std::size_t end_of_token(std::string_view text, std::size_t at) {
    while (at < text.size() && text[at] != ' ' && text[at] != ',') ++at;
    return at;
}

/// Past "-inch", "cm", " mm", "-inch-thick" at `at`; `at` itself where no length stands there.
std::size_t end_of_length(std::string_view text, std::size_t at) {
    constexpr std::array<std::string_view, 4> lengths{"cm", "mm", "inch", "inches"};
    std::size_t start = skip_spaces(text, at);
    if (start == at && at < text.size() && text[at] == '-') ++start;
    const auto word = word_at(text, start);
    const bool length = word.size() <= 6 && std::find(lengths.begin(), lengths.end(), lower(word)) != lengths.end();
    return length ? end_of_token(text, start) : at;
}

/// "1 1/2-inch piece" is one piece of half an inch, and "2-inch piece" and "3 cm piece" are one as well.
void mend_lengths(Parting& parting, std::size_t start) {
    const std::size_t past = end_of_length(parting.text, parting.at);
    if (!parting.line.unit.empty() || past == parting.at) return;
    const auto number = parting.text.substr(start, parting.at - start);
    const auto space = number.rfind(' ');
    const auto first = space == std::string_view::npos ? std::string_view{} : number.substr(0, space);
    const auto count = read_lead(first, 0, parting.set, Within::line);
    const bool counts = count && count->end == first.size();
    parting.line.amount = counts ? count->written : Written{Amount{Dimension::pieces, 1000}, {}, {}};
    const std::size_t size = start + (space == std::string_view::npos ? 0 : space + 1);
    parting.aside(parting.text.substr(size, past - size));
    parting.at = past;
}

/// "(400 g)", "14-ounce", "3-inch", "8- to 12-pound" between the number and what it counts; the place after it, or `at`
/// itself.
std::size_t take_size(Parting& parting, std::size_t at) {
    const auto text = parting.text;
    if (at >= parting.end) return at;
    const bool bracket = text[at] == '(';
    const std::size_t start = bracket ? skip_spaces(text, at + 1) : at;
    if (start >= parting.end || !is_digit(text[start])) return at;
    const auto lead = read_lead(text, start, parting.set, Within::line);
    std::size_t end = end_of_token(text, start);
    if (lead && !lead->unit.empty() && lead->written.counted.empty()) {
        parting.line.each = lead->written;
        end = lead->end;
    } else if (bracket || text.substr(start, end - start).find('-') == std::string_view::npos) {
        return at;
    }
    if (bracket) {
        const auto close = text.find(')', start);
        if (close == std::string_view::npos || close >= parting.end) return at;
        end = close;
    }
    parting.aside(text.substr(start, end - start));
    return skip_spaces(text, bracket ? end + 1 : end);
}

/// After a number without a unit: sizes of one, then what is counted, as in "2 (400 g) cans".
void take_sizes_and_unit(Parting& parting) {
    std::size_t at = skip_spaces(parting.text, parting.at);
    for (std::size_t next = take_size(parting, at); next != at; next = take_size(parting, at)) parting.at = at = next;
    for (std::size_t next = end_of_manner(parting.text, at); next != at;) {
        at = skip_spaces(parting.text, next);
        next = end_of_manner(parting.text, at);
    }
    const auto unit = read_bare_unit(parting.text, at);
    if (!unit || !unit->unit.counted) return;
    parting.aside(parting.text.substr(parting.at, at - parting.at));
    parting.line.unit = parting.line.amount->counted = unit->unit.name;
    parting.at = unit->end;
}

/// "1 can (400 g)": of one, the size in brackets is its own; of several it could be that of all.
void take_size_of_one(Parting& parting) {
    const auto* amount = std::get_if<Amount>(&parting.line.amount->amount);
    const std::size_t at = skip_spaces(parting.text, parting.at);
    if (amount == nullptr || *amount != Amount{Dimension::pieces, 1000} || parting.line.each) return;
    if (at < parting.end && parting.text[at] == '(') parting.at = take_size(parting, at);
}

/// "400 g can tomatoes", "2 x 400 g cans tomatoes": the measure is the amount, and the can goes aside.
void take_container(Parting& parting) {
    const std::size_t at = skip_spaces(parting.text, parting.at);
    const auto unit = read_bare_unit(parting.text, at);
    if (!unit || !unit->unit.counted || unit->end >= parting.end) return;
    parting.aside(parting.text.substr(at, unit->end - at));
    parting.at = unit->end;
}

/// After a measure: the same in another one ("1 cup / 250 mL", "500 g - 1 lb"), which goes aside.
void take_other_measure(Parting& parting) {
    std::size_t at = skip_spaces(parting.text, parting.at);
    if (at >= parting.end || (parting.text[at] != '/' && parting.text[at] != '-')) return;
    at = skip_spaces(parting.text, at + 1);
    if (at >= parting.end || !is_digit(parting.text[at])) return;
    const auto lead = read_lead(parting.text, at, parting.set, Within::line);
    if (!lead || lead->unit.empty()) return;
    parting.aside(parting.text.substr(at, lead->end - at));
    parting.at = lead->end;
}

/// "1 cup plus 2 tablespoons": both together, where they are of one dimension.
void take_sum(Parting& parting) {
    auto& line = parting.line;
    const std::size_t at = skip_spaces(parting.text, parting.at);
    const auto word = word_at(parting.text, at);
    if (lower(word) != "plus") return;
    const std::size_t next = skip_spaces(parting.text, at + word.size());
    const auto more = read_lead(parting.text, next, parting.set, Within::line);
    const auto* have = std::get_if<Amount>(&line.amount->amount);
    const auto* add = more ? std::get_if<Amount>(&more->written.amount) : nullptr;
    const bool sums = have != nullptr && add != nullptr && !line.amount->upper && !more->written.upper &&
                      have->dimension() == add->dimension() && line.amount->counted == more->written.counted &&
                      !line.unit.empty() && !more->unit.empty() && add->value() <= most_readable - have->value();
    if (!sums) return;
    line.amount->amount = *have + *add;
    parting.at = more->end;
}

/// Past "of", "of the" after the unit.
void skip_of(Parting& parting) {
    for (const std::string_view word : {"of", "the"}) {
        const std::size_t at = skip_spaces(parting.text, parting.at);
        if (lower(word_at(parting.text, at)) == word) parting.at = at + word.size();
    }
}

}  // namespace

basics::Result<std::string_view> take_quantity(Parting& parting) {
    const std::size_t start = parting.at;
    if (const auto taken = take_amount(parting); !taken) return tl::make_unexpected(taken.error());
    auto& line = parting.line;
    if (!line.amount) return std::string_view{};
    mend_lengths(parting, start);
    if (line.unit.empty()) {
        take_sizes_and_unit(parting);
    } else if (line.amount->counted.empty()) {
        take_sum(parting);
        take_other_measure(parting);
        take_container(parting);
    }
    if (!line.amount->counted.empty()) take_size_of_one(parting);
    const auto taken = parting.text.substr(start, parting.at - start);
    skip_of(parting);
    return taken.substr(taken.rfind(' ') + 1);
}

}  // namespace samebase::measure::detail
