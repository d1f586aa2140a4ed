#include "measure/line.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "measure/detail/explain.hpp"
#include "measure/detail/lead.hpp"
#include "measure/detail/line_words.hpp"
#include "measure/detail/number.hpp"
#include "measure/detail/plain.hpp"

namespace samebase::measure {

namespace {

using detail::Lead;
using detail::LeadFault;
using detail::skip_spaces;
using detail::Within;
using detail::word_at;
using detail::Words;

constexpr std::string_view like_a_line = "a line such as '2 onions, finely chopped'";

/// The line as it is taken apart: `at` moves through the plain text, what is not name or amount gathers in `asides`.
struct Parting {
    std::string_view text;
    MeasureSet set;
    std::size_t at = 0;
    std::size_t end = 0;  ///< of the text that is not yet taken
    WrittenLine line;
    std::vector<std::string> asides;

    void aside(std::string_view words) {
        while (!words.empty() && words.front() == ' ') words.remove_prefix(1);
        while (!words.empty() && words.back() == ' ') words.remove_suffix(1);
        if (!words.empty()) asides.emplace_back(words);
    }
    void take(const Lead& lead) {
        line.amount = lead.written;
        line.unit = lead.unit;
        aside(lead.manner);
        at = lead.end;
    }
};

/// Past a bullet: "- 500 g flour", "* 2 eggs".
std::size_t skip_bullet(std::string_view text) {
    for (const std::string_view bullet : {"- ", "* ", "\u2022 ", "\u00B7 "}) {
        if (text.starts_with(bullet)) return bullet.size();
    }
    return 0;
}

/// Faults that stand for words rather than for a miswritten amount.
bool is_words(LeadFault fault) {
    return fault == LeadFault::absent || fault == LeadFault::units_differ;
}

/// "Pinch of salt", "Sprigs of parsley": a unit without a number, one where it is singular, else some.
bool take_bare_unit(Parting& parting) {
    const auto unit = detail::read_bare_unit(parting.text, parting.at);
    if (!unit) return false;
    const std::size_t next = skip_spaces(parting.text, unit->end);
    if (detail::lower(word_at(parting.text, next)) != "of") return false;
    const auto one = detail::read_lead("1 " + std::string(unit->unit.name), 0, parting.set, Within::line);
    if (!one) return false;
    parting.take(*one);
    if (parting.text[unit->end - 1] == 's') parting.line.amount->amount = Rough::some;
    parting.at = unit->end;
    return true;
}

/// "Juice of 1 lemon", "Scant 1/2 teaspoon salt": up to eight words, of which the last is "of" or "from" or each is of
/// manner, then a number in digits.
tl::expected<bool, LeadFault> take_after_words(Parting& parting) {
    std::size_t at = parting.at;
    bool manner = true;
    for (int words = 0; words < 8; ++words) {
        const auto word = word_at(parting.text, at);
        if (word.empty()) return false;
        const std::string folded = word.size() <= 4 ? detail::lower(word) : std::string();
        manner = manner && detail::end_of_manner(parting.text, at) != at;
        at = skip_spaces(parting.text, at + word.size());
        if (at >= parting.text.size()) return false;
        if (!detail::is_digit(parting.text[at])) continue;
        if (!manner && folded != "of" && folded != "from") return false;
        const auto lead = detail::read_lead(parting.text, at, parting.set, Within::line);
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
        if (!detail::is_digit(parting.text[at])) continue;
        if (at == 0 || parting.text[at - 1] != ' ') return;
        const auto lead = detail::read_lead(parting.text, at, parting.set, Within::line);
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
    const auto lead = detail::read_lead(parting.text, parting.at, parting.set, Within::line);
    if (lead) {
        parting.take(*lead);
        return true;
    }
    if (!is_words(lead.error())) return detail::explain(lead.error(), parting.line.original);
    if (take_bare_unit(parting)) return true;
    const auto after = take_after_words(parting);
    if (!after && !is_words(after.error())) return detail::explain(after.error(), parting.line.original);
    if (!after || !*after) take_from_behind(parting);
    return true;
}

/// "1 1/2-inch piece" is one piece of half an inch, and "2-inch piece" is one as well.
void mend_inches(Parting& parting, std::size_t start) {
    const auto rest = parting.text.substr(parting.at);
    if (!parting.line.unit.empty() || !(rest.starts_with("-inch") || rest.starts_with("-cm"))) return;
    const auto number = parting.text.substr(start, parting.at - start);
    const auto space = number.find(' ');
    const auto first = detail::read_lead(space == std::string_view::npos ? "1" : number.substr(0, space), 0,
                                         parting.set, Within::line);
    if (!first || number.find('/') == std::string_view::npos) {
        if (space != std::string_view::npos) return;
    }
    if (first) parting.line.amount = first->written;
    parting.at = space == std::string_view::npos ? start : start + space;
}

std::size_t end_of_token(std::string_view text, std::size_t at) {
    while (at < text.size() && text[at] != ' ' && text[at] != ',') ++at;
    return at;
}

/// "(400 g)", "14-ounce", "3-inch", "8- to 12-pound" between the number and what it counts; the place after it, or `at`
/// itself.
std::size_t take_size(Parting& parting, std::size_t at) {
    const auto text = parting.text;
    if (at >= parting.end) return at;
    const bool bracket = text[at] == '(';
    const std::size_t start = bracket ? skip_spaces(text, at + 1) : at;
    if (start >= parting.end || !detail::is_digit(text[start])) return at;
    const auto lead = detail::read_lead(text, start, parting.set, Within::line);
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
    for (std::size_t next = detail::end_of_manner(parting.text, at); next != at;) {
        at = skip_spaces(parting.text, next);
        next = detail::end_of_manner(parting.text, at);
    }
    const auto unit = detail::read_bare_unit(parting.text, at);
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
    const auto unit = detail::read_bare_unit(parting.text, at);
    if (!unit || !unit->unit.counted || unit->end >= parting.end) return;
    parting.aside(parting.text.substr(at, unit->end - at));
    parting.at = unit->end;
}

/// After a measure: the same in another one ("1 cup / 250 mL", "500 g - 1 lb"), which goes aside.
void take_other_measure(Parting& parting) {
    std::size_t at = skip_spaces(parting.text, parting.at);
    if (at >= parting.end || (parting.text[at] != '/' && parting.text[at] != '-')) return;
    at = skip_spaces(parting.text, at + 1);
    if (at >= parting.end || !detail::is_digit(parting.text[at])) return;
    const auto lead = detail::read_lead(parting.text, at, parting.set, Within::line);
    if (!lead || lead->unit.empty()) return;
    parting.aside(parting.text.substr(at, lead->end - at));
    parting.at = lead->end;
}

/// The rest of the line outside brackets, parted at commas, semicolons and lone dashes; what is in brackets goes to
/// `inner`.
struct Segments {
    std::vector<std::string> outer;
    std::vector<std::string> inner;
};

Segments part_segments(std::string_view text) {
    Segments segments;
    segments.outer.emplace_back();
    int depth = 0;
    const auto last_close = text.find_last_of(")]");
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '(' || c == '[') {
            segments.outer.back() += ' ';
            if (last_close == std::string_view::npos || i > last_close) continue;  // never closed: no bracket
            if (depth++ == 0) segments.inner.emplace_back();
        } else if ((c == ')' || c == ']') && depth > 0) {
            --depth;
        } else if (depth > 0) {
            segments.inner.back() += c;
        } else if (c == ';' || (c == ',' && (i + 1 == text.size() || !detail::is_digit(text[i + 1]))) ||
                   (c == '-' && i > 0 && text[i - 1] == ' ' && i + 1 < text.size() && text[i + 1] == ' ')) {
            segments.outer.emplace_back();
        } else {
            segments.outer.back() += c;
        }
    }
    return segments;
}

Words words_of(std::string_view segment) {
    Words words;
    for (std::size_t at = skip_spaces(segment, 0); at < segment.size();) {
        const auto end = std::min(segment.find(' ', at), segment.size());
        words.push_back(segment.substr(at, end - at));
        at = skip_spaces(segment, end);
    }
    return words;
}

std::string joined(const Words& words, std::size_t first, std::size_t last) {
    std::string out;
    for (std::size_t i = first; i < last; ++i) {
        if (i > first) out += ' ';
        out += words[i];
    }
    return out;
}

/// The number of words that describe before the name begins: "peeled and finely chopped" of "peeled and finely chopped
/// onion".
std::size_t count_describing(const Words& words) {
    std::size_t first = 0;
    while (first < words.size()) {
        if (detail::describes(words, first)) {
            ++first;
        } else if (first > 0 && first + 1 < words.size() && detail::joins(words[first]) &&
                   detail::describes(words, first + 1)) {
            first += 2;
        } else {
            break;
        }
    }
    return first;
}

/// "chicken or vegetable stock": the head that the first kind shares with the last, "" where they share none.
std::string_view head_after_or(const Words& words, std::size_t first, std::size_t end) {
    if (end == first || end + 2 >= words.size() || detail::lower(words[end]) != "or") return {};
    std::size_t last = end + 1;
    while (last + 1 < words.size() && !detail::ends_name(words, last + 1)) ++last;
    if (last == end + 1 || detail::shared_head(words[end - 1]) || !detail::shared_head(words[last])) return {};
    return words[last];
}

/// Takes the name out of a segment, if it has one; the words before and after it go aside. With `more` segments to come
/// a colour alone is no name: "1 red, ripe tomato".
void take_name(Parting& parting, std::string_view segment, bool more) {
    const Words words = words_of(segment);
    const std::size_t first = count_describing(words);
    parting.aside(joined(words, 0, first));
    if (first == words.size()) return;
    if (more && detail::only_colours(words, first)) return parting.aside(joined(words, first, words.size()));
    std::size_t end = first + 1;
    while (end < words.size() && !detail::ends_name(words, end)) ++end;
    parting.line.name = joined(words, first, end);
    if (const auto head = head_after_or(words, first, end); !head.empty()) {
        parting.line.name += ' ';
        parting.line.name += head;
    }
    parting.aside(joined(words, end, words.size()));
}

/// "4 garlic cloves": the count word after the name becomes the unit.
void take_unit_from_behind(WrittenLine& line) {
    const auto space = line.name.rfind(' ');
    if (!line.amount || !line.unit.empty() || space == std::string::npos) return;
    const auto unit = find_unit(std::string_view(line.name).substr(space + 1));
    if (!unit || !detail::counts_from_behind(unit->name)) return;
    line.unit = line.amount->counted = unit->name;
    line.name.resize(space);
}

/// A line whose words all describe ("6 cloves", "2 halves") names the last of them.
bool find_some_name(Parting& parting, std::string_view unit_word) {
    auto& line = parting.line;
    if (!line.name.empty()) return true;
    if (!line.unit.empty() && line.amount && !line.amount->counted.empty()) {
        line.name = unit_word;
        line.unit = line.amount->counted = "";
        return !line.name.empty();
    }
    if (parting.asides.empty()) return false;
    const std::string words = parting.asides.back();
    parting.asides.pop_back();
    const auto space = words.rfind(' ');
    line.name = space == std::string::npos ? words : words.substr(space + 1);
    if (space != std::string::npos) parting.aside(std::string_view(words).substr(0, space));
    return true;
}

void take_name_and_preparation(Parting& parting) {
    const auto segments = part_segments(parting.text.substr(parting.at, parting.end - parting.at));
    for (const std::string& segment : segments.outer) {
        if (parting.line.name.empty()) {
            take_name(parting, segment, &segment != &segments.outer.back());
        } else {
            parting.aside(segment);
        }
    }
    for (const std::string& segment : segments.inner) parting.aside(segment);
    while (!parting.line.name.empty() &&
           std::string_view(".:*!?").find(parting.line.name.back()) != std::string::npos) {
        parting.line.name.pop_back();
    }
    take_unit_from_behind(parting.line);
}

/// Past "of", "of the" after the unit.
void skip_of(Parting& parting) {
    for (const std::string_view word : {"of", "the"}) {
        const std::size_t at = skip_spaces(parting.text, parting.at);
        if (detail::lower(word_at(parting.text, at)) == word) parting.at = at + word.size();
    }
}

bool has_letter(std::string_view text) {
    return std::any_of(text.begin(), text.end(), detail::is_letter);
}

bool names_butter(std::string_view name) {
    const std::string folded = detail::lower(name);
    return folded.ends_with("butter") || folded.ends_with("margarine");
}

}  // namespace

basics::Result<WrittenLine> read_line(std::string_view text, MeasureSet set) {
    const auto plain = detail::plain_or_problem(text, longest_line, like_a_line);
    if (!plain) return tl::make_unexpected(plain.error());
    Parting parting{*plain, set, skip_bullet(*plain), plain->size(), {}, {}};
    parting.line.original = text;
    const std::size_t start = parting.at;
    if (const auto taken = take_amount(parting); !taken) return tl::make_unexpected(taken.error());
    auto& line = parting.line;
    if (line.amount) {
        mend_inches(parting, start);
        if (line.unit.empty()) take_sizes_and_unit(parting);
        if (line.amount->counted.empty() && !line.unit.empty()) {
            take_other_measure(parting);
            take_container(parting);
        } else if (!line.unit.empty()) {
            take_size_of_one(parting);
        }
    }
    const auto before = std::string_view(*plain).substr(start, parting.at - start);
    if (line.amount) skip_of(parting);
    take_name_and_preparation(parting);
    if (!find_some_name(parting, before.substr(before.rfind(' ') + 1)) || !has_letter(line.name)) {
        return basics::problem({}, detail::quoted(text) + " names no ingredient", std::string(like_a_line));
    }
    if (line.amount && names_butter(line.name)) line.amount = detail::sticks_of_butter(*line.amount);
    for (const std::string& words : parting.asides) {
        if (!line.preparation.empty()) line.preparation += ", ";
        line.preparation += words;
    }
    return std::move(line);
}

}  // namespace samebase::measure
