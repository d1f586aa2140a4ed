// What may reach a terminal. Names, notes and file names come from other people's files: a control character among them
// could move the cursor, hide a warning or type an answer, and a bidirectional control could turn a line around.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace samebase::show {

enum class Escapes : std::uint8_t {
    none,
    colours  ///< those that set colour and weight stay: ours, on a terminal
};

/// The text with U+FFFD in place of each control character but the line's end, each bidirectional control, and each
/// byte that is no UTF-8. A tab is a space.
[[nodiscard]] std::string fit_for_terminal(std::string_view text, Escapes escapes = Escapes::none);

/// UTF-8 (RFC 3629) of one line: no overlong forms, no surrogates, no control characters.
[[nodiscard]] bool is_plain_line(std::string_view text);

}  // namespace samebase::show
