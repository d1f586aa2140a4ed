#include "catalogue/detail/letters.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <numeric>
#include <utility>

namespace samebase::catalogue::detail {

namespace {

constexpr char32_t first_stray = 0x110000;  // stray bytes stand above all of Unicode

constexpr std::array<std::u32string_view, 18> little_words{U"a",    U"an",  U"and",   U"any",  U"fresh", U"in",
                                                           U"my",   U"of",  U"on",    U"or",   U"our",   U"some",
                                                           U"that", U"the", U"these", U"this", U"those", U"with"};

struct Irregular {
    std::u32string_view plural;
    std::u32string_view singular;
};
constexpr std::array<Irregular, 14> irregulars{{{U"calves", U"calf"},
                                                {U"children", U"child"},
                                                {U"feet", U"foot"},
                                                {U"geese", U"goose"},
                                                {U"halves", U"half"},
                                                {U"hooves", U"hoof"},
                                                {U"knives", U"knife"},
                                                {U"leaves", U"leaf"},
                                                {U"loaves", U"loaf"},
                                                {U"molasses", U"molasses"},
                                                {U"scarves", U"scarf"},
                                                {U"shelves", U"shelf"},
                                                {U"teeth", U"tooth"},
                                                {U"wolves", U"wolf"}}};

bool ends(const Letters& word, std::u32string_view tail) {
    return std::u32string_view(word).ends_with(tail);
}

/// Letters that Unicode keeps whole and a keyboard spells out.
bool append_spelt_out(Letters& out, char32_t code) {
    switch (code) {
        case 0x00E6:
            out += U"ae";
            return true;
        case 0x0153:
            out += U"oe";
            return true;
        case 0x00F8:
            out += U'o';
            return true;
        case 0x0142:
            out += U'l';
            return true;
        case 0x0131:
            out += U'i';
            return true;
        default:
            return false;
    }
}

void append_folded(Letters& out, std::int32_t code) {
    std::array<utf8proc_int32_t, 32> parts{};
    int last_class = 0;
    const auto options = static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_CASEFOLD |
                                                        UTF8PROC_STRIPMARK | UTF8PROC_IGNORE);
    const auto length = utf8proc_decompose_char(code, parts.data(), parts.size(), options, &last_class);
    if (length < 0 || length > static_cast<utf8proc_ssize_t>(parts.size())) {
        out += static_cast<char32_t>(code);
        return;
    }
    for (std::size_t i = 0; i < static_cast<std::size_t>(length); ++i) {
        const auto part = static_cast<char32_t>(parts[i]);
        if (!append_spelt_out(out, part)) out += part;
    }
}

bool is_apostrophe(char32_t code) {
    return code == U'\'' || code == U'`' || code == 0x00B4 || code == 0x02BC || code == 0x2018 || code == 0x2019;
}

bool is_part_of_a_word(char32_t code) {
    if (code < 0x80) return (code >= U'a' && code <= U'z') || (code >= U'0' && code <= U'9');
    if (code >= first_stray) return true;
    switch (utf8proc_category(static_cast<utf8proc_int32_t>(code))) {
        case UTF8PROC_CATEGORY_LU:
        case UTF8PROC_CATEGORY_LL:
        case UTF8PROC_CATEGORY_LT:
        case UTF8PROC_CATEGORY_LM:
        case UTF8PROC_CATEGORY_LO:
        case UTF8PROC_CATEGORY_ND:
        case UTF8PROC_CATEGORY_NL:
        case UTF8PROC_CATEGORY_NO:
            return true;
        default:
            return false;
    }
}

std::vector<Letters> split(const Letters& text) {
    std::vector<Letters> words;
    bool inside = false;
    for (const char32_t code : text) {
        if (is_apostrophe(code)) continue;
        if (!is_part_of_a_word(code)) {
            inside = false;
            continue;
        }
        if (!inside) words.emplace_back();
        inside = true;
        words.back() += code;
    }
    return words;
}

/// The bit of a little word, 0 for any other.
std::uint32_t little_bit(const Letters& word) {
    const auto* at = std::find(little_words.begin(), little_words.end(), word);
    if (at == little_words.end()) return 0;
    return std::uint32_t{1} << static_cast<unsigned>(at - little_words.begin());
}

}  // namespace

Letters folded(std::string_view text) {
    Letters out;
    out.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if (byte < 0x80) {
            out += byte >= 'A' && byte <= 'Z' ? static_cast<char32_t>(byte - 'A' + 'a') : static_cast<char32_t>(byte);
            ++at;
            continue;
        }
        std::int32_t code = 0;
        const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(text.data() + at);  // NOLINT: it reads bytes
        const auto length = utf8proc_iterate(bytes, static_cast<utf8proc_ssize_t>(text.size() - at), &code);
        if (length <= 0) {
            out.push_back(first_stray + byte);
            ++at;
            continue;
        }
        append_folded(out, code);
        at += static_cast<std::size_t>(length);
    }
    return out;
}

Letters singular(Letters word) {
    for (const Irregular& irregular : irregulars) {
        if (word == irregular.plural) return Letters(irregular.singular);
    }
    const auto without = [&word](std::size_t letters) { return word.substr(0, word.size() - letters); };
    if (word.size() > 5 && ends(word, U"ies")) return without(3) + U'y';
    if (word.size() > 4 && ends(word, U"ie")) return without(2) + U'y';
    if (word.size() > 5 && (ends(word, U"ches") || ends(word, U"shes") || ends(word, U"sses") || ends(word, U"oes"))) {
        return without(2);
    }
    if (word.size() > 4 && ends(word, U"xes")) return without(2);
    // "quiche" and "mousse" must agree with "quiches" and "mousses".
    if (word.size() > 4 && (ends(word, U"che") || ends(word, U"sse"))) return without(1);
    if (word.size() > 3 && ends(word, U"s") && !ends(word, U"ss") && !ends(word, U"us")) return without(1);
    return word;
}

Words read_words(std::string_view text) {
    std::vector<Letters> all = split(folded(text));
    const bool only_little =
        std::all_of(all.begin(), all.end(), [](const Letters& word) { return little_bit(word) != 0; });
    Words words;
    for (Letters& word : all) {
        const std::uint32_t bit = only_little ? 0 : little_bit(word);
        words.little |= bit;
        if (bit != 0) continue;
        words.plain += word;
        words.singular.push_back(singular(word));
        words.written.push_back(std::move(word));
        words.joined += words.singular.back();
    }
    return words;
}

std::uint64_t letter_set(std::u32string_view word) {
    std::uint64_t set = 0;
    for (const char32_t letter : word) set |= std::uint64_t{1} << (letter % 64U);
    return set;
}

int least_edits(std::uint64_t a, std::uint64_t b) {
    return std::max(std::popcount(a & ~b), std::popcount(b & ~a));
}

int edits(std::u32string_view a, std::u32string_view b, int most) {
    const auto apart = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
    if (most < 0 || apart > static_cast<std::size_t>(most)) return most + 1;
    if (most == 0) return a == b ? 0 : 1;
    std::vector<int> before(b.size() + 1);
    std::vector<int> last(b.size() + 1);
    std::vector<int> row(b.size() + 1);
    std::iota(last.begin(), last.end(), 0);
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = static_cast<int>(i);
        int least = row[0];
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const int exchanged = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, exchanged});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], before[j - 2] + 1);
            }
            least = std::min(least, row[j]);
        }
        if (least > most) return most + 1;
        before.swap(last);
        last.swap(row);
    }
    return std::min(last[b.size()], most + 1);
}

EditPattern::EditPattern(Letters word) : word_(std::move(word)), set_(letter_set(word_)) {
    if (word_.size() > 64) return;
    for (std::size_t i = 0; i < word_.size(); ++i) {
        const std::uint64_t bit = std::uint64_t{1} << i;
        if (word_[i] < places_.size()) {
            places_[word_[i]] |= bit;
            continue;
        }
        const auto same = [&](const auto& other) { return other.first == word_[i]; };
        const auto at = std::find_if(others_.begin(), others_.end(), same);
        if (at != others_.end()) {
            at->second |= bit;
        } else {
            others_.emplace_back(word_[i], bit);
        }
    }
}

std::uint64_t EditPattern::places_of(char32_t letter) const {
    if (letter < places_.size()) return places_[letter];
    for (const auto& [other, places] : others_) {
        if (other == letter) return places;
    }
    return 0;
}

int EditPattern::edits_to(std::u32string_view other, std::uint64_t other_set, int most) const {
    const auto apart = word_.size() > other.size() ? word_.size() - other.size() : other.size() - word_.size();
    if (most < 0 || apart > static_cast<std::size_t>(most) || least_edits(set_, other_set) > most) return most + 1;
    if (word_.empty() || word_.size() > 64) return edits(word_, other, most);
    // A column of the table of edits is two bit vectors: where it rises by one from the cell above, and where it falls.
    const std::uint64_t bottom = std::uint64_t{1} << (word_.size() - 1);
    std::uint64_t rises = ~std::uint64_t{0};
    std::uint64_t falls = 0;
    std::uint64_t free_diagonal = 0;
    std::uint64_t places_before = 0;
    int far = static_cast<int>(word_.size());
    for (const char32_t letter : other) {
        const std::uint64_t places = places_of(letter);
        const std::uint64_t swapped = ((~free_diagonal & places) << 1U) & places_before;
        free_diagonal = (((places & rises) + rises) ^ rises) | places | falls | swapped;
        std::uint64_t right_up = falls | ~(free_diagonal | rises);
        std::uint64_t right_down = free_diagonal & rises;
        far += (right_up & bottom) != 0 ? 1 : 0;
        far -= (right_down & bottom) != 0 ? 1 : 0;
        right_up = right_up << 1U | 1U;
        right_down <<= 1U;
        rises = right_down | ~(free_diagonal | right_up);
        falls = right_up & free_diagonal;
        places_before = places;
    }
    return std::min(far, most + 1);
}

}  // namespace samebase::catalogue::detail
