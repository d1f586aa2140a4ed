#include "store/rows.hpp"

#include <array>
#include <cstddef>
#include <string_view>

namespace samebase::store {

namespace {

constexpr std::array<std::string_view, 3> fact_kinds{"out", "pack", "price"};
constexpr std::array<std::string_view, 3> dimensions{"mass", "volume", "pieces"};

template <class Enum, std::size_t N>
std::optional<Enum> read(const std::array<std::string_view, N>& names, std::string_view text) {
    for (std::size_t i = 0; i < N; ++i) {
        if (names[i] == text) return static_cast<Enum>(i);
    }
    return std::nullopt;
}

}  // namespace

std::string_view name(kitchen::Fact::Kind kind) {
    return fact_kinds[static_cast<std::size_t>(kind)];
}

std::optional<kitchen::Fact::Kind> read_fact_kind(std::string_view text) {
    return read<kitchen::Fact::Kind>(fact_kinds, text);
}

std::string_view name(measure::Dimension dimension) {
    return dimensions[static_cast<std::size_t>(dimension)];
}

std::optional<measure::Dimension> read_dimension(std::string_view text) {
    return read<measure::Dimension>(dimensions, text);
}

std::optional<measure::Rough> read_rough(std::string_view text) {
    for (const auto rough : {measure::Rough::some, measure::Rough::low, measure::Rough::lots}) {
        if (measure::name(rough) == text) return rough;
    }
    return std::nullopt;
}

}  // namespace samebase::store
