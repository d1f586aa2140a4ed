#include "show/prices.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "show/json.hpp"

namespace samebase::show {

namespace {

using ask::ThingPrices;
using kitchen::PriceFrom;

/// "$9.50/kg", "$0.80 each".
std::string each(basics::Money price, const ThingPrices& thing, const kitchen::Kitchen& kitchen) {
    std::string_view per = "/kg";
    if (thing.unit.dimension() == measure::Dimension::volume) per = "/L";
    if (thing.unit.dimension() == measure::Dimension::pieces) per = " each";
    return money(price, kitchen.household.currency) + std::string{per};
}

std::string each(const std::optional<ask::UnitPrice>& price, const ThingPrices& thing,
                 const kitchen::Kitchen& kitchen) {
    return price ? each(price->money, thing, kitchen) : "-";
}

std::string guide_words(const ThingPrices& thing, const kitchen::Kitchen& kitchen) {
    if (!thing.guide) return "no price is known";
    return fmt::format("the guide price {} counts until you pay one", each(*thing.guide, thing, kitchen));
}

/// "Milk: usually $1.55/L, lowest $1.40/L on Sat 14 Nov, last $1.52/L."
std::string head(const ThingPrices& thing, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string name = capitalised(kitchen.catalogue()[thing.ingredient].name);
    if (!thing.last && thing.house && thing.guide != thing.house)
        return fmt::format("{}: {}, as the household said at first.", name, each(*thing.house, thing, kitchen));
    if (!thing.last) return fmt::format("{}: {}.", name, guide_words(thing, kitchen));
    return fmt::format("{}: usually {}, lowest {} {}, last {}.", name, each(*thing.usual, thing, kitchen),
                       each(thing.lowest, thing, kitchen), on_day(thing.lowest->day, today),
                       each(thing.last, thing, kitchen));
}

std::string in_full(const ThingPrices& thing, const kitchen::Kitchen& kitchen, basics::Day today, bool all) {
    std::string out = wrapped(head(thing, kitchen, today)) + "\n";
    constexpr std::size_t few = 12;
    const std::size_t shown = all ? thing.seen.size() : std::min(few, thing.seen.size());
    for (std::size_t i = 0; i < shown; ++i) {
        const kitchen::PriceSeen& seen = thing.seen[i];
        const auto& known = kitchen.catalogue()[thing.ingredient];
        const std::string_view from = seen.from == PriceFrom::share  ? "  estimated: a share of a total"
                                      : seen.from == PriceFrom::said ? "  said"
                                                                     : "";
        out += fmt::format("  {}  {}  {}{}\n", fitted(day(seen.day, today), 11),
                           fitted(fmt::format("{} for {}", money(seen.money, kitchen.household.currency),
                                              amount({known.dimension, seen.amount}, known)),
                                  20),
                           each(thing.unit_prices[i].money, thing, kitchen), from);
    }
    if (shown < thing.seen.size()) out += fmt::format("  {} more: --all\n", thing.seen.size() - shown);
    return out;
}

std::string table(const std::vector<ThingPrices>& things, const kitchen::Kitchen& kitchen, bool all) {
    constexpr std::size_t few = 20;
    const std::size_t shown = all ? things.size() : std::min(few, things.size());
    std::size_t width = 5;
    for (std::size_t i = 0; i < shown; ++i)
        width = std::max(width, length(kitchen.catalogue()[things[i].ingredient].name));
    width = std::min<std::size_t>(width, 30);
    std::string out =
        fmt::format("{}  {}  {}  {}\n", fitted("", width), fitted("usually", 12), fitted("last", 12), "lowest");
    for (std::size_t i = 0; i < shown; ++i) {
        const ThingPrices& thing = things[i];
        const std::string& name = kitchen.catalogue()[thing.ingredient].name;
        if (!thing.usual) {
            out += fmt::format("{}  only shares of a total\n", fitted(name, width));
            continue;
        }
        out += fmt::format("{}  {}  {}  {}\n", fitted(name, width), fitted(each(*thing.usual, thing, kitchen), 12),
                           fitted(each(thing.last, thing, kitchen), 12), each(thing.lowest, thing, kitchen));
    }
    if (shown < things.size()) out += fmt::format("{} more: --all\n", things.size() - shown);
    return out + "One in full: samebase prices milk. A new one: samebase household price milk 4.65 for 3 L\n";
}

std::string_view name(PriceFrom from) {
    return from == PriceFrom::paid ? "paid" : from == PriceFrom::said ? "said" : "share";
}

}  // namespace

std::string text(const std::vector<ThingPrices>& things, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    if (things.empty())
        return "No price was seen yet: guide prices count. Say what you pay: samebase got 3 L milk @ 4.65\n";
    if (things.size() == 1) return in_full(things.front(), kitchen, today, manner.all);
    return table(things, kitchen, manner.all);
}

Json json(const std::vector<ThingPrices>& things, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    const auto unit_price = [&](const std::optional<ask::UnitPrice>& price) {
        if (!price) return Json(nullptr);
        return Json{{"day", basics::iso(price->day)}, {"price", json_money(price->money, kitchen)}};
    };
    const auto price = [&](const std::optional<basics::Money>& money) {
        return money ? json_money(*money, kitchen) : Json(nullptr);
    };
    for (const ThingPrices& thing : things) {
        const auto& known = kitchen.catalogue()[thing.ingredient];
        Json seen = Json::array();
        for (std::size_t i = 0; i < thing.seen.size(); ++i) {
            seen.push_back({{"day", basics::iso(thing.seen[i].day)},
                            {"amount", json_amount({known.dimension, thing.seen[i].amount}, known)},
                            {"paid", json_money(thing.seen[i].money, kitchen)},
                            {"from", name(thing.seen[i].from)},
                            {"unit_price", json_money(thing.unit_prices[i].money, kitchen)}});
        }
        list.push_back({{"ingredient", known.id},
                        {"label", known.name},
                        {"unit", json_amount(thing.unit, known)},
                        {"usual", price(thing.usual)},
                        {"last", unit_price(thing.last)},
                        {"lowest", unit_price(thing.lowest)},
                        {"reckoned_with", price(thing.house)},
                        {"guide", price(thing.guide)},
                        {"seen", std::move(seen)}});
    }
    return {{"prices", std::move(list)}};
}

}  // namespace samebase::show
