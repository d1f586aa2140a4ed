#include "stock/place.hpp"

#include <array>

namespace samebase::stock {

namespace {

constexpr std::array<std::string_view, 5> names{"far-freezer", "near-freezer", "fridge", "crisper", "pantry"};

}  // namespace

std::string_view name(PlaceKind kind) {
    return names[static_cast<std::size_t>(kind)];
}

std::optional<PlaceKind> read_place_kind(std::string_view text) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == text) return static_cast<PlaceKind>(i);
    }
    return std::nullopt;
}

catalogue::Keep keep_in(PlaceKind kind) {
    switch (kind) {
        case PlaceKind::far_freezer:
        case PlaceKind::near_freezer:
            return catalogue::Keep::freezer;
        case PlaceKind::fridge:
            return catalogue::Keep::fridge;
        case PlaceKind::crisper:
            return catalogue::Keep::crisper;
        case PlaceKind::pantry:
            break;
    }
    return catalogue::Keep::pantry;
}

}  // namespace samebase::stock
