// What is said about written text that cannot be read: the Problems of this room, without a `where`.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "basics/problem.hpp"
#include "measure/detail/lead.hpp"

namespace samebase::measure::detail {

/// `text` made plain (detail/plain.hpp). A Problem where it is longer than `longest` bytes, not UTF-8, holds a NUL
/// byte, or is empty; `like` says what should stand there.
[[nodiscard]] basics::Result<std::string> plain_or_problem(std::string_view text, std::size_t longest,
                                                           std::string_view like);

[[nodiscard]] tl::unexpected<basics::Problems> explain(LeadFault fault, std::string_view text);

inline constexpr std::string_view like_an_amount = "an amount such as '500 g', '2 packs', '1 1/2 cups' or 'half'";

}  // namespace samebase::measure::detail
