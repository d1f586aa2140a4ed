#include "exchange/detail/page.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

namespace samebase::exchange::detail {

namespace {

constexpr std::size_t longest_entity = 10;
constexpr std::size_t longest_tag = 2000;

struct Entity {
    std::string_view name;
    std::string_view text;
};

constexpr std::array entities{
    Entity{"amp", "&"},         Entity{"lt", "<"},          Entity{"gt", ">"},          Entity{"quot", "\""},
    Entity{"apos", "'"},        Entity{"nbsp", " "},        Entity{"deg", "\u00B0"},    Entity{"frac12", "\u00BD"},
    Entity{"frac14", "\u00BC"}, Entity{"frac34", "\u00BE"}, Entity{"ndash", "\u2013"},  Entity{"mdash", "\u2014"},
    Entity{"rsquo", "\u2019"},  Entity{"lsquo", "\u2018"},  Entity{"rdquo", "\u201D"},  Entity{"ldquo", "\u201C"},
    Entity{"eacute", "\u00E9"}, Entity{"egrave", "\u00E8"}, Entity{"ecirc", "\u00EA"},  Entity{"agrave", "\u00E0"},
    Entity{"ccedil", "\u00E7"}, Entity{"ntilde", "\u00F1"}, Entity{"auml", "\u00E4"},   Entity{"ouml", "\u00F6"},
    Entity{"uuml", "\u00FC"},   Entity{"times", "\u00D7"},  Entity{"hellip", "\u2026"},
};

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool same_word(std::string_view text, std::string_view lower) {
    return std::equal(text.begin(), text.end(), lower.begin(), lower.end(),
                      [](char a, char b) { return small(a) == b; });
}

/// The character of a number such as "#189" or "#xBD"; nothing where there is none.
std::optional<std::string> numbered(std::string_view entity) {
    entity.remove_prefix(1);
    const bool hex = !entity.empty() && small(entity.front()) == 'x';
    if (hex) entity.remove_prefix(1);
    std::int32_t code = 0;
    const char* end = entity.data() + entity.size();
    const auto [stop, error] = std::from_chars(entity.data(), end, code, hex ? 16 : 10);
    if (entity.empty() || error != std::errc{} || stop != end || code == 0 || !utf8proc_codepoint_valid(code)) {
        return std::nullopt;
    }
    std::array<utf8proc_uint8_t, 4> bytes{};
    const auto length = static_cast<std::size_t>(utf8proc_encode_char(code, bytes.data()));
    return std::string(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(length));
}

std::optional<std::string> resolved(std::string_view entity) {
    if (entity.starts_with('#')) return numbered(entity);
    const auto* found =
        std::find_if(entities.begin(), entities.end(), [&](const Entity& e) { return e.name == entity; });
    return found == entities.end() ? std::nullopt : std::optional(std::string(found->text));
}

std::string without_entities(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        if (text[at] == '&') {
            const auto end = text.substr(at, longest_entity + 2).find(';');
            const auto found = end == std::string_view::npos ? std::nullopt : resolved(text.substr(at + 1, end - 1));
            if (found) {
                out += *found;
                at += end + 1;
                continue;
            }
        }
        out += text[at++];
    }
    return out;
}

/// Whether a tag, without its brackets, ends a line.
bool ends_line(std::string_view tag) {
    const std::string_view name = tag.substr(0, tag.find_first_of(" \t\r\n", 1));
    return same_word(name, "br") || same_word(name, "br/") || same_word(name, "/p") || same_word(name, "/li") ||
           same_word(name, "/div");
}

/// The text with tags left out; an end of line where one ends it. A "<" that begins no tag stays: "< 1 hour".
std::string without_tags(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const char next = at + 1 < text.size() ? small(text[at + 1]) : ' ';
        if (text[at] == '<' && ((next >= 'a' && next <= 'z') || next == '/')) {
            const auto end = text.substr(at, longest_tag).find('>');
            if (end != std::string_view::npos) {
                out += ends_line(text.substr(at + 1, end - 1)) ? '\n' : ' ';
                at += end + 1;
                continue;
            }
        }
        out += text[at++];
    }
    return out;
}

/// Control characters, and runs of spaces of any kind, as one space.
std::string evened(std::string_view text) {
    constexpr std::string_view no_break = "\u00A0";
    std::string out;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const bool wide = text.substr(at).starts_with(no_break);
        const auto byte = static_cast<unsigned char>(text[at]);
        const bool control = byte == 0xC2 && at + 1 < text.size() && static_cast<unsigned char>(text[at + 1]) < 0xA0;
        if (wide || control) ++at;
        if (!wide && !control && byte > 0x20 && byte != 0x7F) {
            out += text[at];
        } else if (!out.empty() && out.back() != ' ') {
            out += ' ';
        }
    }
    if (!out.empty() && out.back() == ' ') out.pop_back();
    return out;
}

/// The place of a word in any case from `at` on, or npos.
std::size_t find_word(std::string_view text, std::string_view lower, std::size_t at) {
    const auto found = std::search(text.begin() + static_cast<std::ptrdiff_t>(std::min(at, text.size())), text.end(),
                                   lower.begin(), lower.end(), [](char a, char b) { return small(a) == b; });
    return found == text.end() ? std::string_view::npos : static_cast<std::size_t>(found - text.begin());
}

/// Counts lines and columns onwards, so that a page is walked over once.
struct Counter {
    std::string_view text;
    std::size_t at = 0;
    std::size_t line = 1;
    std::size_t began = 0;  ///< of the line

    void go_to(std::size_t place) {
        for (; at < place; ++at) {
            if (text[at] != '\n') continue;
            ++line;
            began = at + 1;
        }
    }
};

}  // namespace

std::string plain_text(std::string_view text) {
    return evened(without_entities(without_tags(text)));
}

std::vector<std::string> plain_lines(std::string_view text) {
    const std::string without = without_tags(text);
    const std::string_view all = without;
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < all.size();) {
        const auto end = std::min(all.find('\n', at), all.size());
        std::string line = evened(without_entities(all.substr(at, end - at)));
        if (!line.empty()) lines.push_back(std::move(line));
        at = end + 1;
    }
    return lines;
}

std::vector<Block> linked_data_blocks(std::string_view page) {
    std::vector<Block> blocks;
    Counter counter{page};
    for (std::size_t at = find_word(page, "<script", 0); at != std::string_view::npos && blocks.size() < most_blocks;) {
        const auto tag_end = page.find('>', at);
        if (tag_end == std::string_view::npos) break;
        const std::size_t start = tag_end + 1;
        const std::size_t end = std::min(find_word(page, "</script", start), page.size());
        if (find_word(page.substr(at, tag_end - at), "application/ld+json", 0) != std::string_view::npos) {
            counter.go_to(start);
            blocks.push_back({page.substr(start, end - start), counter.line, start - counter.began + 1});
        }
        at = find_word(page, "<script", end);
    }
    return blocks;
}

}  // namespace samebase::exchange::detail
