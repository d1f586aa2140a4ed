#include "show/terminal.hpp"

#include <utf8proc.h>

namespace samebase::show {

namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";  // U+FFFD

struct Character {
    utf8proc_int32_t code = -1;  ///< below 0: no UTF-8
    std::size_t bytes = 1;
};

Character first_of(std::string_view text) {
    Character first;
    const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(text.data());  // NOLINT: utf8proc reads bytes
    const auto read = utf8proc_iterate(bytes, static_cast<utf8proc_ssize_t>(text.size()), &first.code);
    if (read > 0) first.bytes = static_cast<std::size_t>(read);
    if (read <= 0) first.code = -1;
    return first;
}

bool is_control(utf8proc_int32_t code) {
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x2028 || code == 0x2029;
}

bool turns_text_around(utf8proc_int32_t code) {
    return code == 0x061C || code == 0x200E || code == 0x200F || (code >= 0x202A && code <= 0x202E) ||
           (code >= 0x2066 && code <= 0x2069);
}

/// The length of "ESC [ 1 ; 31 m" at the start of the text; 0 where there is none, or it could hide what follows (8).
std::size_t colour_at_start(std::string_view text) {
    if (!text.starts_with("\x1B[")) return 0;
    const auto end = text.find_first_not_of("0123456789;", 2);
    if (end == std::string_view::npos || text[end] != 'm') return 0;
    const std::string parts = ";" + std::string(text.substr(2, end - 2)) + ";";
    return parts.find(";8;") == std::string::npos && parts.find(";08;") == std::string::npos ? end + 1 : 0;
}

}  // namespace

std::string fit_for_terminal(std::string_view text, Escapes escapes) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const std::size_t colour = escapes == Escapes::colours ? colour_at_start(text) : 0;
        if (colour > 0) {
            out += text.substr(0, colour);
            text.remove_prefix(colour);
            continue;
        }
        const Character next = first_of(text);
        if (next.code == '\n') {
            out += '\n';
        } else if (next.code == '\t') {
            out += ' ';
        } else if (next.code < 0 || is_control(next.code) || turns_text_around(next.code)) {
            out += replacement;
        } else {
            out += text.substr(0, next.bytes);
        }
        text.remove_prefix(next.bytes);
    }
    return out;
}

bool is_plain_line(std::string_view text) {
    while (!text.empty()) {
        const Character next = first_of(text);
        if (next.code < 0 || is_control(next.code)) return false;
        text.remove_prefix(next.bytes);
    }
    return true;
}

}  // namespace samebase::show
