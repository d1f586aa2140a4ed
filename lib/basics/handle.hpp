// Handles: dense numbers for things that have identifiers. Handles of one kind are dealt in the order of their
// identifiers
// ("apple" before "beef-mince"), so that comparing handles compares identifiers, and a table indexed by them is a plain
// vector.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <functional>

namespace samebase::basics {

template <class Tag>
struct Handle {
    std::uint32_t value = 0;

    [[nodiscard]] constexpr std::size_t index() const { return value; }
    friend constexpr auto operator<=>(const Handle&, const Handle&) = default;
};

}  // namespace samebase::basics

template <class Tag>
struct std::hash<samebase::basics::Handle<Tag>> {
    std::size_t operator()(samebase::basics::Handle<Tag> handle) const noexcept { return handle.value; }
};
