#include <fmt/format.h>

#include <cmath>

#include "exchange/detail/documents.hpp"

namespace samebase::exchange::detail {

namespace {

using catalogue::Catalogue;
using cookbook::Base;
using cookbook::BaseId;
using cookbook::Dish;
using cookbook::DishIngredient;

std::vector<Base> read_bases(const std::vector<Entry>& entries, const Catalogue& catalogue) {
    std::vector<Base> result;
    const auto roles = names_of<catalogue::Role>(catalogue::role_count);
    for (const Entry& entry : entries) {
        const Element& e = entry.element;
        e.object({"id", "name", "note", "needs"});
        Base base{entry.id, e.text("name"), e.optional_text("note").value_or(""), {}};
        for (const Element& need : e.list("needs")) {
            if (!need.object({"of", "role"})) continue;
            const auto of = ingredient_or_family(need, "of", catalogue);
            const auto at = need.need("role");
            const auto role = at ? word(*at, catalogue::read_role, roles) : std::nullopt;
            if (of && role) base.needs.push_back({*of, *role});
        }
        result.push_back(std::move(base));
    }
    return result;
}

void scale(const Element& line, DishIngredient& result) {
    const auto at = line.find("scale");
    if (!at || at->is_null()) return;
    if (!at->value().is_array()) return static_cast<void>(at->list());
    const auto factors = at->list();
    if (factors.size() != 2) {
        at->wrong(fmt::format("a list of {}", factors.size()), "two numbers: the least and the most, as factors");
        return;
    }
    result.least_thousandths = static_cast<int>(std::lround(factors[0].number(0, 1) * 1000));
    result.most_thousandths = static_cast<int>(std::lround(factors[1].number(1, 10) * 1000));
}

std::optional<DishIngredient> read_line(const Element& line, const Catalogue& catalogue, measure::MeasureSet set) {
    if (!line.object({"of", "amount", "role", "prep", "scale", "optional"})) return std::nullopt;
    DishIngredient result;
    const auto id = ingredient(line, "of", catalogue);
    const auto role_at = line.need("role");
    const auto role =
        role_at ? word(*role_at, catalogue::read_role, names_of<catalogue::Role>(catalogue::role_count)) : std::nullopt;
    result.preparation = line.optional_text("prep").value_or("");
    result.optional = line.boolean("optional", false);
    scale(line, result);
    const auto amount_at = line.need("amount");
    if (!id || !role || !amount_at) return std::nullopt;
    const auto amount = amount_of(*amount_at, *id, catalogue, set);
    if (!amount) return std::nullopt;
    result.ingredient = *id;
    result.amount = *amount;
    result.written = amount_at->text();
    result.role = *role;
    return result;
}

std::vector<cookbook::SeparateServe> separate(const Element& dish, const Catalogue& catalogue) {
    std::vector<cookbook::SeparateServe> result;
    for (const Element& e : dish.list("separate")) {
        if (!e.object({"avoids", "swap", "note"})) continue;
        cookbook::SeparateServe serve;
        const auto at = e.need("avoids");
        const auto avoids =
            at ? word(*at, catalogue::read_allergen, names_of<catalogue::Allergen>(catalogue::allergen_count))
               : std::nullopt;
        for (const Element& swap : e.list("swap")) {
            if (!swap.object({"of", "use"})) continue;
            const auto of = ingredient(swap, "of", catalogue);
            const auto use = ingredient(swap, "use", catalogue);
            if (of && use) serve.swaps.emplace_back(*of, *use);
        }
        serve.note = e.optional_text("note").value_or("");
        if (!avoids) continue;
        serve.avoids = *avoids;
        result.push_back(std::move(serve));
    }
    return result;
}

void meals(const Element& e, Dish& dish) {
    for (const Element& meal : e.list("meals")) {
        const std::string text = meal.text();
        if (text == "dinner") {
            dish.dinner = true;
        } else if (text == "lunch") {
            dish.lunch = true;
        } else if (meal.value().is_string()) {
            meal.wrong(meal.shown(), "one of: dinner, lunch");
        }
    }
    // A night without cooking is of no meal: it is never proposed, only planned by name.
    const bool cooks = e.find("ingredients") && !e.find("ingredients")->value().empty();
    const bool named = e.find("meals") && !e.find("meals")->value().empty();
    if (!e.find("meals") || named != cooks)
        e.wrong(named ? "no ingredients" : "no meal",
                "'meals' and 'ingredients', or neither on a night without cooking");
}

void what_remains(const Element& e, Dish& dish, const Catalogue& catalogue, measure::MeasureSet set) {
    if (const auto at = e.find("leaves"); at && !at->is_null()) dish.leaves = named_ingredient(*at, catalogue);
    if (dish.leaves && catalogue[*dish.leaves].kind != catalogue::Kind::cooked) {
        const Element at = *e.find("leaves");
        at.wrong(fmt::format("{} is not of kind cooked", at.shown()), "a leftover: an ingredient of kind cooked");
    }
    for (const Element& by_product : e.list("gives")) {
        if (!by_product.object({"of", "amount"})) continue;
        const auto id = ingredient(by_product, "of", catalogue);
        const auto at = by_product.need("amount");
        if (!id || !at) continue;
        if (const auto amount = amount_of(*at, *id, catalogue, set)) dish.gives.push_back({*id, *amount});
    }
    dish.freezes = e.boolean("freezes", false);
}

measure::MeasureSet measures(const Element& e) {
    const auto at = e.find("measures");
    if (!at) return measure::MeasureSet::australian_metric;
    return word(*at, measure::read_measure_set, names_of<measure::MeasureSet>(measure::measure_set_count))
        .value_or(measure::MeasureSet::australian_metric);
}

void base(const Element& e, Dish& dish, const std::vector<Base>& bases) {
    const auto id = e.optional_text("base");
    if (!id) return;
    dish.base = basics::find_sorted<BaseId>(bases, *id);
    if (dish.base) return;
    std::vector<std::string> known;
    for (const Base& b : bases) known.push_back(b.id);
    const Element at = *e.find("base");
    if (!at.value().is_string()) return;
    at.wrong(fmt::format("{} is not a base", at.shown()), "the identifier of a base, or null",
             did_you_mean(*id, known));
}

Dish read_dish(const Entry& entry, const std::vector<Base>& bases, const Catalogue& catalogue) {
    const Element& e = entry.element;
    e.object({"id", "name", "base", "meals", "kinds", "serves", "minutes", "hands_on", "gap", "leaves", "gives",
              "freezes", "measures", "ingredients", "separate", "method"});
    Dish dish;
    dish.id = entry.id;
    dish.name = e.text("name");
    base(e, dish, bases);
    meals(e, dish);
    for (const Element& kind : e.list("kinds")) {
        if (auto found = word(kind, read_dish_kind, dish_kinds())) dish.kinds.push_back(std::move(*found));
    }
    if (const auto serves = e.need("serves")) dish.serves = static_cast<int>(serves->integer(1, 1000));
    dish.minutes = static_cast<int>(e.optional_integer("minutes", 0, 2880).value_or(0));
    dish.hands_on = static_cast<int>(e.optional_integer("hands_on", 0, 1440).value_or(dish.minutes));
    dish.gap = static_cast<int>(e.optional_integer("gap", 0, 3660).value_or(dish.dinner ? 21 : 5));
    const auto set = measures(e);
    what_remains(e, dish, catalogue, set);
    for (const Element& line : e.list("ingredients")) {
        if (auto read = read_line(line, catalogue, set)) dish.ingredients.push_back(std::move(*read));
    }
    dish.separate = separate(e, catalogue);
    for (const Element& step : e.list("method")) dish.method.push_back(step.text());
    return dish;
}

}  // namespace

cookbook::Cookbook read_cookbook(std::span<const Document> bases, std::span<const Document> dishes,
                                 const Catalogue& catalogue, basics::Problems& problems) {
    std::vector<Base> all_bases = read_bases(entries(bases, "bases", problems), catalogue);
    std::vector<Dish> all_dishes;
    for (const Entry& entry : entries(dishes, "dishes", problems)) {
        all_dishes.push_back(read_dish(entry, all_bases, catalogue));
    }
    return {std::move(all_bases), std::move(all_dishes)};
}

}  // namespace samebase::exchange::detail
