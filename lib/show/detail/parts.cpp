#include "show/detail/parts.hpp"

#include <fmt/format.h>

#include <cmath>

#include "catalogue/hand.hpp"

namespace samebase::show::detail {

std::string stand_in_words(const flow::StandInUse& use, const kitchen::Kitchen& kitchen, bool with_amounts) {
    std::vector<std::string> words;
    for (const auto& [id, quantity] : use.use)
        words.push_back(with_amounts ? named(quantity, id, kitchen) : kitchen.catalogue()[id].name);
    return fmt::format("{} for {}", listed(words), kitchen.catalogue()[use.replaced].name);
}

Json stand_in_json(const flow::StandInUse& use, const kitchen::Kitchen& kitchen) {
    Json parts = Json::array();
    for (const auto& [id, amount] : use.use) {
        const auto& thing = kitchen.catalogue()[id];
        parts.push_back({{"ingredient", thing.id}, {"label", thing.name}, {"amount", json_amount(amount, thing)}});
    }
    return {{"for", kitchen.catalogue()[use.replaced].id},
            {"use", std::move(parts)},
            {"role", name(use.role)},
            {"fit", std::round(use.fit * 1000) / 1000},
            {"note", use.note.empty() ? Json(nullptr) : Json(use.note)}};
}

Json scaled_json(std::span<const flow::Scaled> scaled, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    for (const flow::Scaled& one : scaled) {
        const auto& thing = kitchen.catalogue()[one.ingredient];
        list.push_back({{"ingredient", thing.id},
                        {"label", thing.name},
                        {"amount", json_amount(one.amount, thing)},
                        {"times", one.thousandths / 1000.0}});
    }
    return list;
}

Json swaps_json(std::span<const kitchen::LineSwap> swaps, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    for (const kitchen::LineSwap& swap : swaps) {
        Json parts = Json::array();
        for (const auto& [id, amount] : swap.use) {
            const auto& thing = kitchen.catalogue()[id];
            parts.push_back({{"ingredient", thing.id},
                             {"label", thing.name},
                             {"amount", json_amount({thing.dimension, amount}, thing)}});
        }
        list.push_back({{"for", kitchen.catalogue()[swap.of].id},
                        {"use", std::move(parts)},
                        {"serves", json_serves(swap.serves_thousandths)}});
    }
    return list;
}

std::string purchase_words(const flow::Purchase& buy, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[buy.ingredient];
    if (!thing.pack || buy.packs <= 0 || thing.pack->name == "loose") return named(buy.amount, buy.ingredient, kitchen);
    const std::string& pack = thing.pack->name;
    if (pack == "each") return fmt::format("{} {}", buy.packs, catalogue::name_of(thing, buy.packs > 1));
    constexpr std::string_view tinned = "tinned ";
    const bool said = pack == "tin" && thing.name.starts_with(tinned);
    return fmt::format("{} {}", counted(buy.packs, pack), said ? thing.name.substr(tinned.size()) : thing.name);
}

Json purchase_json(const flow::Purchase& buy, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[buy.ingredient];
    return {{"ingredient", thing.id},
            {"label", thing.name},
            {"amount", json_amount(buy.amount, thing)},
            {"packs", buy.packs},
            {"minor", buy.price.minor}};
}

std::string_view plain_name(menu::Line line) {
    constexpr std::array<std::string_view, menu::line_count> names{
        "kept from the bin", "to buy",     "good stock kept", "later meals met",
        "stand-ins",         "had lately", "liking",          "effort"};
    return names[static_cast<std::size_t>(line)];
}

std::string how_good(bool proved_best, double gap) {
    if (proved_best) return "proved best";
    return fmt::format("within {:.1f} % of best", std::ceil(gap * 1000) / 10);
}

std::string row_day(basics::Day day) {
    return fitted(basics::short_day(day).substr(0, row_day_width), row_day_width);
}

}  // namespace samebase::show::detail
