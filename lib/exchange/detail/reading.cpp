#include "exchange/detail/reading.hpp"

#include <fmt/format.h>

namespace samebase::exchange::detail {

std::optional<basics::Day> checked_day(const Element& element) {
    const std::string text = element.text();
    const auto result = basics::read_iso_day(text);
    if (!result && element.value().is_string()) element.wrong(element.shown(), "a day such as 2026-12-04");
    return result;
}

basics::Day day(const Element& element) {
    return checked_day(element).value_or(basics::Day{});
}

std::optional<basics::Day> optional_day(const Element& element, std::string_view key) {
    const auto at = element.find(key);
    if (!at || at->is_null()) return std::nullopt;
    return checked_day(*at);
}

std::optional<cookbook::DishId> dish(const Element& element, std::string_view key, const cookbook::Cookbook& cookbook) {
    const auto at = element.need(key);
    if (!at) return std::nullopt;
    const std::string id = at->text();
    auto found = cookbook.dish(id);
    if (found || !at->value().is_string() || at->enough()) return found;
    std::vector<std::string> known;
    for (const auto& d : cookbook.dishes()) known.push_back(d.id);
    at->wrong(fmt::format("{} is not a dish", at->shown()), "the identifier of a dish of the cookbook",
              did_you_mean(id, known));
    return std::nullopt;
}

void version(const Element& element) {
    if (element.value() != 1) element.wrong(element.shown(), "1, the version of the form in which this is written");
}

}  // namespace samebase::exchange::detail
