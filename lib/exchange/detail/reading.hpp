// What the readers of a kitchen's documents share.
#pragma once

#include <optional>
#include <string_view>

#include "basics/day.hpp"
#include "cookbook/cookbook.hpp"
#include "exchange/detail/element.hpp"
#include "kitchen/household.hpp"

namespace samebase::exchange::detail {

/// An ISO day; nothing, and a problem, where it is not one.
[[nodiscard]] std::optional<basics::Day> checked_day(const Element& element);
/// The same, with the first day of 1970 where it is not one.
[[nodiscard]] basics::Day day(const Element& element);
/// Nothing where the key is absent or null, or what stands there is not a day, which is a problem.
[[nodiscard]] std::optional<basics::Day> optional_day(const Element& element, std::string_view key);
[[nodiscard]] std::optional<cookbook::DishId> dish(const Element& element, std::string_view key,
                                                   const cookbook::Cookbook& cookbook);
/// "samebase": the version of the form in which a kitchen's documents are written.
void version(const Element& element);

}  // namespace samebase::exchange::detail
