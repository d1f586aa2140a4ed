#include "show/json.hpp"

namespace samebase::show {

namespace {

/// Thousandths as a number with at most three decimals: whole where it is whole.
Json thousandths(std::int64_t value) {
    if (value % 1000 == 0) return value / 1000;
    return static_cast<double>(value) / 1000;
}

}  // namespace

Json json_amount(const measure::Amount& amount, const catalogue::Ingredient& ingredient) {
    const auto* unit = "g";
    if (amount.dimension() == measure::Dimension::volume) unit = "mL";
    if (amount.dimension() == measure::Dimension::pieces) unit = ingredient.in_serves ? "{serve}" : "1";
    return {{"value", thousandths(amount.value())}, {"unit", unit}};
}

Json json_money(basics::Money money, const kitchen::Kitchen& kitchen) {
    return {{"minor", money.minor}, {"currency", kitchen.household.currency}};
}

Json json_day(std::optional<basics::Day> day) {
    return day ? Json(basics::iso(*day)) : Json(nullptr);
}

Json json_serves(std::int64_t value) {
    return thousandths(value);
}

Json json_problems(const basics::Problems& problems) {
    Json list = Json::array();
    for (const auto& problem : problems) {
        list.push_back({{"where", problem.where},
                        {"found", problem.found},
                        {"expected", problem.expected},
                        {"hint", problem.hint ? Json(*problem.hint) : Json(nullptr)}});
    }
    return {{"problems", std::move(list)}};
}

}  // namespace samebase::show
