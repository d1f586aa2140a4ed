// Where in a JSON text the value of a path stands.
#pragma once

#include <cstddef>
#include <string_view>

namespace samebase::exchange::detail {

/// The line, from 1 on, on which the value of the path ("/people/3/dislikes/0") begins; where there is no such value,
/// that of the nearest one above it. The caller guarantees that the text is JSON.
[[nodiscard]] std::size_t line_of(std::string_view text, std::string_view path);

}  // namespace samebase::exchange::detail
