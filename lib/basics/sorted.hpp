// Lists of things with identifiers, kept in the order of those, so that a thing's place in its list is its handle.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace samebase::basics {

/// The handle of the thing of that identifier; nothing where there is none. Logarithmic.
template <class Id, class Thing>
[[nodiscard]] std::optional<Id> find_sorted(const std::vector<Thing>& things, std::string_view id) {
    const auto found = std::lower_bound(things.begin(), things.end(), id,
                                        [](const Thing& thing, std::string_view key) { return thing.id < key; });
    if (found == things.end() || found->id != id) return std::nullopt;
    return Id{static_cast<std::uint32_t>(found - things.begin())};
}

/// The identifier of the first thing that does not come after the one before it; nothing where the order is right.
template <class Thing>
[[nodiscard]] std::optional<std::string> out_of_order(const std::vector<Thing>& things) {
    const auto found =
        std::adjacent_find(things.begin(), things.end(), [](const Thing& a, const Thing& b) { return a.id >= b.id; });
    if (found == things.end()) return std::nullopt;
    return std::next(found)->id;
}

}  // namespace samebase::basics
