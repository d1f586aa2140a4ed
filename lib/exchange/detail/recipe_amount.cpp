#include <fmt/format.h>

#include <array>
#include <utility>

#include "exchange/detail/documents.hpp"
#include "exchange/detail/recipe_ingredient.hpp"
#include "measure/written.hpp"

namespace samebase::exchange::detail {

namespace {

using catalogue::Catalogue;
using catalogue::Ingredient;
using catalogue::IngredientId;
using measure::Amount;
using measure::Dimension;
using measure::MeasureSet;
using measure::Written;

constexpr std::string_view like = "an amount that can be weighed, measured or counted";

/// In the ingredient's own dimension, or the reason why not.
basics::Result<Amount> own_amount(const Written& written, const Ingredient& thing) {
    auto own = in_own_dimension(written, thing);
    if (!own) return own;
    if (own->value() <= 0) return basics::problem({}, "the amount is nothing", "an amount above 0");
    if (too_large(*own, thing)) return basics::problem({}, "the amount is too large", std::string(at_most));
    return own;
}

/// "1 1/2" of 1.5; nothing where no kitchen fraction makes it exactly what it is.
std::optional<std::string> in_units(const Amount& amount, const measure::Size& size) {
    constexpr std::array<std::int64_t, 5> parts{1, 2, 3, 4, 8};
    for (const std::int64_t part : parts) {
        const auto nearest = measure::scaled(amount, size.denominator * part, size.numerator);
        if (!nearest || nearest->value() > 1'000'000) return std::nullopt;
        for (std::int64_t n = nearest->value() - 1; n <= nearest->value() + 1; ++n) {
            const auto back = n > 0 ? measure::scaled({amount.dimension(), n}, size.numerator, size.denominator * part)
                                    : std::nullopt;
            if (!back || *back != amount) continue;
            if (n % part == 0) return fmt::format("{}", n / part);
            return n > part ? fmt::format("{} {}/{}", n / part, n % part, part) : fmt::format("{}/{}", n, part);
        }
    }
    return std::nullopt;
}

/// "cups" of "cup" where it is more than one of them.
std::string in_number(std::string unit, const std::string& number) {
    if (number == "1" || (number.find('/') != std::string::npos && number.find(' ') == std::string::npos)) return unit;
    if (unit == "tbsp" || unit == "tsp" || unit == "g" || unit == "kg" || unit.ends_with("L") || unit == "mg")
        return unit;
    for (const char* tail : {"s", "es"}) {
        const auto plural = measure::find_unit(unit + tail);
        if (plural && plural->name == unit) return unit + tail;
    }
    return unit;
}

/// As a cook writes it, where that reads as the same amount; else exactly.
std::string written_amount(const Written& written, const std::string& unit, const Amount& own, const Ingredient& thing,
                           MeasureSet set) {
    const auto& amount = std::get<Amount>(written.amount);
    const std::string name = unit == "tablespoon" ? "tbsp" : unit == "teaspoon" ? "tsp" : unit;
    const auto known = measure::find_unit(name);
    const measure::Size piece{1000, 1};
    const auto number = known && known->dimension == amount.dimension() ? in_units(amount, known->size(set))
                        : amount.dimension() == Dimension::pieces       ? in_units(amount, piece)
                                                                        : std::nullopt;
    if (number) {
        std::string text = name.empty() ? *number : fmt::format("{} {}", *number, in_number(name, *number));
        const auto same = measure::read_amount(text, set).and_then(
            [&](const Written& again) { return in_own_dimension(again, thing); });
        if (same && *same == own) return text;
    }
    return measure::write(own);
}

basics::Result<DishAmount> without_amount(const Ingredient& thing, const Catalogue& catalogue, MeasureSet set) {
    const auto id = *catalogue.ingredient(thing.id);
    const auto of_family = [&](std::string_view family) {
        const auto found = catalogue.family(family);
        return found && catalogue.belongs(id, *found);
    };
    const bool fresh = of_family("soft-herbs") || of_family("woody-herbs");
    const bool seasoning = of_family("seasonings");
    if (!seasoning && !thing.staple) return basics::problem({}, "no amount", std::string(like));
    const char* text = seasoning && !fresh ? "1 pinch" : "1 tbsp";
    const auto own =
        measure::read_amount(text, set).and_then([&](const Written& written) { return own_amount(written, thing); });
    if (!own) return basics::problem({}, "no amount", std::string(like));
    return DishAmount{*own, text, fmt::format("no amount is written: {}", text)};
}

}  // namespace

basics::Result<DishAmount> amount_said(const std::string& text, IngredientId id, const Catalogue& catalogue,
                                       MeasureSet set) {
    const auto written = measure::read_amount(text, set);
    if (!written) return tl::make_unexpected(written.error());
    if (!std::holds_alternative<Amount>(written->amount)) {
        return basics::problem({}, fmt::format("'{}'", text), std::string(like));
    }
    const auto own = own_amount(*written, catalogue[id]);
    if (!own) return tl::make_unexpected(own.error());
    return DishAmount{*own, text, "the amount as asked"};
}

basics::Result<DishAmount> amount_in(const measure::WrittenLine& line, IngredientId id, const Catalogue& catalogue,
                                     MeasureSet set) {
    const Ingredient& thing = catalogue[id];
    if (!line.amount || !std::holds_alternative<Amount>(line.amount->amount)) {
        return without_amount(thing, catalogue, set);
    }
    Written written = *line.amount;
    std::string unit = line.unit;
    const auto count = std::get<Amount>(written.amount);
    const auto* each = line.each ? std::get_if<Amount>(&line.each->amount) : nullptr;
    if (each != nullptr && each->dimension() != Dimension::pieces && count.dimension() == Dimension::pieces) {
        const auto all = measure::scaled(*each, count.value(), 1000);
        if (!all) return basics::problem({}, "the amount is too large", std::string(at_most));
        written = {*all, {}, {}};
        unit = all->dimension() == Dimension::mass ? "g" : "mL";
    } else if (count.dimension() == Dimension::mass && unit == "stick") {
        unit = "g";
    }
    const auto own = own_amount(written, thing);
    if (!own) return tl::make_unexpected(own.error());
    std::string note;
    if (line.amount->upper) note = "the lower end of what is written";
    return DishAmount{*own, written_amount(written, unit, *own, thing, set), note};
}

}  // namespace samebase::exchange::detail
