#include "measure/detail/plain.hpp"

#include <utf8proc.h>

#include <array>
#include <cstdint>
#include <cstdlib>
#include <memory>

namespace samebase::measure::detail {

namespace {

constexpr std::int32_t fraction_slash = 0x2044;
constexpr std::size_t most_quoted = 60;

const utf8proc_uint8_t* bytes(std::string_view text) {
    return reinterpret_cast<const utf8proc_uint8_t*>(text.data());  // NOLINT: utf8proc reads bytes
}

void append(std::string& out, std::int32_t code) {
    std::array<utf8proc_uint8_t, 4> buffer{};
    const auto length = utf8proc_encode_char(code, buffer.data());
    for (utf8proc_ssize_t i = 0; i < length; ++i) out += static_cast<char>(buffer[static_cast<std::size_t>(i)]);
}

/// A character such as U+00BD, as "1/2" with a space before it where a digit stands there; false where it is no
/// fraction.
bool append_fraction(std::string& out, std::int32_t code) {
    std::array<utf8proc_int32_t, 8> parts{};
    int last_class = 0;
    const auto options = static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT);
    const auto length = utf8proc_decompose_char(code, parts.data(), parts.size(), options, &last_class);
    if (length < 2 || length > static_cast<utf8proc_ssize_t>(parts.size()) || parts[0] > '9') return false;
    bool slash = false;
    for (utf8proc_ssize_t i = 0; i < length; ++i) slash |= parts[static_cast<std::size_t>(i)] == fraction_slash;
    if (!slash) return false;
    if (!out.empty() && is_digit(out.back())) out += ' ';
    for (utf8proc_ssize_t i = 0; i < length; ++i) {
        const auto part = parts[static_cast<std::size_t>(i)];
        append(out, part == fraction_slash ? '/' : part);
    }
    return true;
}

void append_space(std::string& out) {
    if (!out.empty() && out.back() != ' ') out += ' ';
}

void append_plain(std::string& out, std::int32_t code) {
    switch (utf8proc_category(code)) {
        case UTF8PROC_CATEGORY_ZS:
        case UTF8PROC_CATEGORY_ZL:
        case UTF8PROC_CATEGORY_ZP:
        case UTF8PROC_CATEGORY_CC:
            return append_space(out);
        case UTF8PROC_CATEGORY_PD:
            out += '-';
            return;
        case UTF8PROC_CATEGORY_CF:
            return;  // soft hyphens, joiners, byte order marks
        default:
            break;
    }
    switch (code) {
        case 0x2018:
        case 0x2019:
            out += '\'';
            return;
        case 0x201C:
        case 0x201D:
            out += '"';
            return;
        case 0x00D7:
        case 0x2715:
            out += 'x';
            return;
        case 0x2212:
            out += '-';
            return;
        case fraction_slash:
            out += '/';
            return;
        default:
            if (!append_fraction(out, code)) append(out, code);
    }
}

std::string composed(const std::string& text) {
    utf8proc_uint8_t* raw = nullptr;
    const auto options = static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_COMPAT);
    const auto length = utf8proc_map(bytes(text), static_cast<utf8proc_ssize_t>(text.size()), &raw, options);
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owner(raw, &std::free);
    if (length < 0) return text;
    return {raw, raw + length};
}

}  // namespace

tl::expected<std::string, Unreadable> plain(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    bool ascii = true;
    for (std::size_t at = 0; at < text.size();) {
        const char c = text[at];
        if (c == '\0') return tl::make_unexpected(Unreadable::nul);
        if (c > ' ' && c < 0x7F) {
            out += c;
            ++at;
            continue;
        }
        std::int32_t code = 0;
        const auto length =
            utf8proc_iterate(bytes(text.substr(at)), static_cast<utf8proc_ssize_t>(text.size() - at), &code);
        if (length <= 0) return tl::make_unexpected(Unreadable::not_utf8);
        if (code > 0x7F) ascii = false;
        append_plain(out, code);
        at += static_cast<std::size_t>(length);
    }
    if (!out.empty() && out.back() == ' ') out.pop_back();
    return ascii ? out : composed(out);
}

std::string quoted(std::string_view text) {
    constexpr std::string_view hex = "0123456789ABCDEF";
    std::string out = "'";
    std::size_t shown = 0;
    for (std::size_t at = 0; at < text.size(); ++shown) {
        if (shown == most_quoted) return out + "...'";
        std::int32_t code = 0;
        const auto length =
            utf8proc_iterate(bytes(text.substr(at)), static_cast<utf8proc_ssize_t>(text.size() - at), &code);
        if (length > 0 && utf8proc_category(code) != UTF8PROC_CATEGORY_CC) {
            out += text.substr(at, static_cast<std::size_t>(length));
            at += static_cast<std::size_t>(length);
            continue;
        }
        const auto byte = static_cast<unsigned char>(text[at++]);
        out += "\\x";
        out += hex[byte / 16U];
        out += hex[byte % 16U];
    }
    return out + "'";
}

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return out;
}

}  // namespace samebase::measure::detail
