// Files that are made anew each time: pages and calendars.
#pragma once

#include <string>
#include <string_view>

#include "context.hpp"

namespace samebase::cli {

/// Writes a new file, or one that is ours: what is there already holds `mark`. Any other file is left as it is.
[[nodiscard]] tl::expected<void, Failure> write_page(const std::string& file, const std::string& text,
                                                     std::string_view mark);

}  // namespace samebase::cli
