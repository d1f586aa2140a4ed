#include "measure/line.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "measure/detail/explain.hpp"
#include "measure/detail/line_words.hpp"
#include "measure/detail/number.hpp"
#include "measure/detail/parting.hpp"
#include "measure/detail/plain.hpp"

namespace samebase::measure {

namespace {

using detail::Parting;
using detail::skip_spaces;
using detail::Words;

constexpr std::string_view like_a_line = "a line such as '2 onions, finely chopped'";

/// Past a bullet: "- 500 g flour", "* 2 eggs".
std::size_t skip_bullet(std::string_view text) {
    for (const std::string_view bullet : {"- ", "* ", "\u2022 ", "\u00B7 "}) {
        if (text.starts_with(bullet)) return bullet.size();
    }
    return 0;
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
        const bool either = first + 2 < words.size() && detail::lower(words[first + 1]) == "or" &&
                            detail::only_colours({words[first]}, 0);
        if (detail::describes(words, first)) {
            ++first;
        } else if (either || (first > 0 && first + 1 < words.size() && detail::joins(words[first]) &&
                              detail::describes(words, first + 1))) {
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
    if (last == end + 1 || !detail::shares_head(words[end - 1], words[last])) return {};
    return words[last];
}

/// Where a name that goes up to `end` really ends: a participle with a noun behind it is in the middle of a compound,
/// which is one thing ("honey coated cashews", "cheese filled ravioli").
std::size_t end_of_compound(const Words& words, std::size_t end) {
    std::size_t noun = end;
    while (noun < words.size() && detail::describes(words, noun) && !detail::measures_or_ends(words[noun])) ++noun;
    if (noun == end || noun >= words.size() || detail::goes_on(words, noun)) return end;
    end = noun + 1;
    while (end < words.size() && !detail::ends_name(words, end)) ++end;
    return end_of_compound(words, end);
}

/// The words of a name; how large the thing is goes aside where it stands in the middle: "red large onions".
std::string name_of(Parting& parting, const Words& words, std::size_t first, std::size_t end) {
    std::string name;
    for (std::size_t i = first; i < end; ++i) {
        if (i > first && i + 1 < end && detail::is_size(words[i])) {
            parting.aside(words[i]);
            continue;
        }
        if (!name.empty()) name += ' ';
        name += words[i];
    }
    return name;
}

/// Takes the name out of a segment, if it has one; the words before and after it go aside. With `more` segments to come
/// a colour alone is no name: "1 red, ripe tomato".
void take_name(Parting& parting, std::string_view segment, bool more) {
    const Words words = words_of(segment);
    const std::size_t first = count_describing(words);
    parting.aside(joined(words, 0, first));
    if (first == words.size()) return;
    if (more && detail::only_colours(words, first)) return parting.aside(joined(words, first, words.size()));
    parting.line.before = fmt::to_string(fmt::join(parting.asides, ", "));
    std::size_t end = first + 1;
    while (end < words.size() && !detail::ends_name(words, end)) ++end;
    end = end_of_compound(words, end);
    parting.line.name = name_of(parting, words, first, end);
    if (const auto head = head_after_or(words, first, end); !head.empty()) {
        parting.line.name += ' ';
        parting.line.name += head;
    }
    parting.aside(joined(words, end, words.size()));
}

/// "peanut, canola or olive oil": the first kind, which is a segment by itself, is of what the last one names.
void share_head(Parting& parting, const std::vector<std::string>& segments, std::size_t named) {
    if (named + 1 >= segments.size() || parting.line.name.find(' ') != std::string::npos) return;
    const Words own = words_of(segments[named]);
    if (parting.line.name != own.back()) return;
    for (std::size_t i = named + 1; i < segments.size(); ++i) {
        const Words words = words_of(segments[i]);
        const auto at = std::find_if(words.begin(), words.end(), [](auto word) { return detail::lower(word) == "or"; });
        if (at == words.end() && words.size() <= 2) continue;
        const bool heads = at != words.end() && words.end() - at > 2 && at - words.begin() <= 2 &&
                           detail::shares_head(own.back(), *(at + 2));
        if (heads) parting.line.name += fmt::format(" {}", *(at + 2));
        return;
    }
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
        line.before = fmt::to_string(fmt::join(parting.asides, ", "));
        return !line.name.empty();
    }
    if (parting.asides.empty()) return false;
    const std::string words = parting.asides.back();
    parting.asides.pop_back();
    const auto space = words.rfind(' ');
    line.name = space == std::string::npos ? words : words.substr(space + 1);
    if (space != std::string::npos) parting.aside(std::string_view(words).substr(0, space));
    line.before = fmt::to_string(fmt::join(parting.asides, ", "));
    return true;
}

void take_name_and_preparation(Parting& parting) {
    const auto segments = part_segments(parting.text.substr(parting.at, parting.end - parting.at));
    for (const std::string& segment : segments.outer) {
        if (parting.line.name.empty()) {
            take_name(parting, segment, &segment != &segments.outer.back());
            if (parting.line.name.empty()) continue;
            share_head(parting, segments.outer, static_cast<std::size_t>(&segment - segments.outer.data()));
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

/// Whether the name says nothing: "or", "plus more to taste".
bool names_nothing(std::string_view name) {
    return detail::never_names(name.substr(0, name.find(' ')));
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
    auto& line = parting.line;
    line.original = text;
    const auto unit_word = detail::take_quantity(parting);
    if (!unit_word) return tl::make_unexpected(unit_word.error());
    take_name_and_preparation(parting);
    if (!find_some_name(parting, *unit_word) || !has_letter(line.name) || names_nothing(line.name)) {
        return basics::problem({}, detail::quoted(text) + " names no ingredient", std::string(like_a_line));
    }
    if (line.amount && names_butter(line.name)) line.amount = detail::sticks_of_butter(*line.amount);
    line.preparation = fmt::to_string(fmt::join(parting.asides, ", "));
    return std::move(line);
}

}  // namespace samebase::measure
