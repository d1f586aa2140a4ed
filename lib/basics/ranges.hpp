// Ranges that loops run over: the days of a span, all handles of a table.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <range/v3/view/iota.hpp>
#include <range/v3/view/transform.hpp>

#include "basics/day.hpp"

namespace samebase::basics {

/// Both ends included; none where the last lies before the first.
[[nodiscard]] inline auto days_of(Span span) {
    return ranges::views::iota(0, std::max(0, span.length())) |
           ranges::views::transform([first = span.first](int number) { return first + days{number}; });
}

/// The handles of a table of so many things, in order.
template <class Handle>
[[nodiscard]] auto handles(std::size_t count) {
    return ranges::views::iota(std::uint32_t{0}, static_cast<std::uint32_t>(count)) |
           ranges::views::transform([](std::uint32_t value) { return Handle{value}; });
}

}  // namespace samebase::basics
