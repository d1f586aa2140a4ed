// What the cook's words mean: ingredients, families, dishes, places, lots.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "context.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::cli {

/// What `else` can be asked about.
using Meant = std::variant<catalogue::IngredientId, catalogue::FamilyId, cookbook::DishId, stock::LotNumber>;

/// One clear thing; else a failure that lists what the words might mean, or the three nearest. "lot 12" is a lot.
[[nodiscard]] tl::expected<Meant, Failure> meant(const kitchen::Kitchen& kitchen, const std::string& words);
[[nodiscard]] tl::expected<cookbook::DishId, Failure> dish_meant(const kitchen::Kitchen& kitchen, const std::string& words);

[[nodiscard]] tl::expected<basics::Day, Failure> day_meant(const std::string& text, basics::Day today, const std::string& where);

[[nodiscard]] std::string joined(const std::vector<std::string>& words);

}  // namespace samebase::cli
