// The layout of the file, version by version.
#pragma once

#include <span>
#include <string_view>

namespace samebase::store::detail {

/// "samb": which program the file belongs to (PRAGMA application_id, bytes 68 to 71 of the file).
inline constexpr int application = 0x73616D62;

/// The statements that bring a file from version i to version i + 1, in order; version 0 is an empty file.
[[nodiscard]] std::span<const std::string_view> migrations();

}  // namespace samebase::store::detail
