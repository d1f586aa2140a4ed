// Written text made plain for the readers of this room: valid UTF-8 in composed compatibility form, with `1½` as "1
// 1/2", every kind of space as ' ', every dash as '-', curly quotes straight, the multiplication sign as 'x', and no
// invisible characters.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace samebase::measure::detail {

enum class Unreadable { not_utf8, nul };

/// Linear in the length of the text. Spaces at both ends are cut off, and runs of them become one.
[[nodiscard]] tl::expected<std::string, Unreadable> plain(std::string_view text);

/// The text in quotes for an error: at most 60 characters, then "..."; bytes that cannot be shown become \xNN.
[[nodiscard]] std::string quoted(std::string_view text);

[[nodiscard]] constexpr bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
/// A letter, or a byte of a character beyond ASCII.
[[nodiscard]] constexpr bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80U;
}
/// ASCII letters in lower case; others as they are.
[[nodiscard]] std::string lower(std::string_view text);

}  // namespace samebase::measure::detail
