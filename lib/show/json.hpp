// What the JSON of all answers shares: amounts with UCUM units, money, days, identifiers. Every key is always present,
// null where there is nothing.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>

#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::show {

using Json = nlohmann::ordered_json;

/// {"value": 500, "unit": "g"}, at most three decimals; pieces have unit "1", serves "{serve}".
[[nodiscard]] Json json_amount(const measure::Amount& amount, const catalogue::Ingredient& ingredient);
[[nodiscard]] Json json_money(basics::Money money, const kitchen::Kitchen& kitchen);
[[nodiscard]] Json json_day(std::optional<basics::Day> day);
[[nodiscard]] Json json_serves(std::int64_t thousandths);
/// {"problems": [{"where", "found", "expected", "hint"}]}
[[nodiscard]] Json json_problems(const basics::Problems& problems);

}  // namespace samebase::show
