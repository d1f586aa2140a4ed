// Places: where stock is.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "basics/handle.hpp"
#include "catalogue/keeping.hpp"

namespace samebase::stock {

using PlaceId = basics::Handle<struct PlaceTag>;

enum class PlaceKind : std::uint8_t { far_freezer, near_freezer, fridge, crisper, pantry };

struct Place {
    std::string id;
    std::string name;
    PlaceKind kind = PlaceKind::pantry;
    std::optional<std::int64_t> room_ml;  ///< nothing: not measured, so that it is never said to be too small
};

[[nodiscard]] std::string_view name(PlaceKind kind);  ///< "far-freezer"
[[nodiscard]] std::optional<PlaceKind> read_place_kind(std::string_view text);
[[nodiscard]] constexpr bool freezes(PlaceKind kind) {
    return kind == PlaceKind::far_freezer || kind == PlaceKind::near_freezer;
}
/// The keeping time that holds in a place of that kind.
[[nodiscard]] catalogue::Keep keep_in(PlaceKind kind);

}  // namespace samebase::stock
