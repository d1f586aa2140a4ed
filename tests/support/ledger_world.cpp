#include "support/ledger_world.hpp"

#include <cassert>
#include <utility>
#include <vector>

#include "basics/sorted.hpp"

namespace samebase::tests {

namespace {

using catalogue::Ingredient;
using catalogue::Keep;
using catalogue::Kind;
using catalogue::Role;
using measure::Dimension;
using stock::PlaceKind;

/// "7 days use-by", "never", or "" for nothing said.
catalogue::Keeping keeping(std::string_view text) {
    if (text.empty()) return {};
    if (text == "never") return {catalogue::Keeping::Said::never, {}};
    return {catalogue::Keeping::Said::time, catalogue::read_keeping_time(text).value()};
}

struct Keeps {
    std::string_view pantry, fridge, crisper, freezer, thawed, opened;
};

Ingredient thing(std::string id, Kind kind, Dimension dimension, const Keeps& keeps) {
    Ingredient it;
    it.name = id;
    std::replace(it.name.begin(), it.name.end(), '-', ' ');
    it.id = std::move(id);
    it.kind = kind;
    it.dimension = dimension;
    it.in_serves = kind == Kind::cooked;
    it.allergens = catalogue::AllergenSet{};
    const std::string_view times[] = {keeps.pantry,  keeps.fridge, keeps.crisper,
                                      keeps.freezer, keeps.thawed, keeps.opened};
    for (std::size_t i = 0; i < catalogue::keep_count; ++i) it.keeps[i] = keeping(times[i]);
    if (dimension == Dimension::pieces) it.conversion.mg_per_piece = 200'000;
    return it;
}

Ingredient packed(Ingredient it, std::int64_t amount, std::string name, std::int64_t price) {
    it.pack = catalogue::Pack{{it.dimension, amount}, std::move(name), basics::Money{price}};
    return it;
}

std::vector<Ingredient> ingredients() {
    const Keeps leftovers{"never", "3 days use-by", "", "60 days best-by", "1 day use-by", ""};
    std::vector<Ingredient> list;
    const auto add = [&](Ingredient it) -> Ingredient& { return list.emplace_back(std::move(it)); };
    add(packed(thing("beef-mince", Kind::raw, Dimension::mass,
                     {"never", "2 days use-by", "never", "90 days best-by", "1 day use-by", "2 days use-by"}),
               500'000, "tray", 750))
        .thaw = catalogue::Thaw::flat;
    add(thing("cabbage", Kind::raw, Dimension::pieces,
              {"never", "14 days best-by", "21 days best-by", "never", "", "4 days best-by"}));
    add(thing("chicken-carcass", Kind::cooked, Dimension::pieces, leftovers));
    add(thing("cold-meat-loaf", Kind::cooked, Dimension::pieces, leftovers));
    add(thing("cold-roast-chicken", Kind::cooked, Dimension::pieces, leftovers));
    add(packed(
            thing("eggs", Kind::raw, Dimension::pieces, {"never", "28 days use-by", "", "never", "", "2 days use-by"}),
            12'000, "dozen", 600))
        .allergens->add(catalogue::Allergen::egg);
    Ingredient& flour = add(thing("flour", Kind::raw, Dimension::mass, {"180 days best-by", "", "", "", "", ""}));
    flour.staple = true;
    flour.allergens->add(catalogue::Allergen::wheat);
    Ingredient& milk =
        add(packed(thing("milk", Kind::raw, Dimension::volume,
                         {"never", "8 days use-by", "", "30 days best-by", "2 days use-by", "4 days use-by"}),
                   2'000'000, "bottle", 350));
    milk.allergens->add(catalogue::Allergen::milk);
    add(thing("oil", Kind::made, Dimension::volume, {"365 days best-by", "", "", "", "", ""})).staple = true;
    add(thing("onion", Kind::raw, Dimension::pieces,
              {"40 days best-by", "60 days best-by", "never", "", "", "7 days best-by"}));
    add(thing("parsley", Kind::raw, Dimension::mass,
              {"never", "5 days best-by", "7 days best-by", "180 days best-by", "", ""}));
    add(packed(thing("pasta-sauce", Kind::made, Dimension::volume,
                     {"365 days best-by", "", "", "90 days best-by", "2 days use-by", "5 days use-by"}),
               500'000, "jar", 280));
    add(packed(thing("peas", Kind::raw, Dimension::mass,
                     {"never", "1 day use-by", "", "240 days best-by", "1 day use-by", ""}),
               1'000'000, "bag", 320))
        .thaw = catalogue::Thaw::from_frozen;
    add(packed(thing("rice", Kind::raw, Dimension::mass, {"700 days best-by", "", "", "", "", ""}), 2'000'000, "bag",
               500));
    add(packed(thing("whole-chicken", Kind::raw, Dimension::mass,
                     {"never", "2 days use-by", "never", "270 days best-by", "1 day use-by", "1 day use-by"}),
               2'000'000, "bird", 1200))
        .thaw = catalogue::Thaw::block;
    return list;
}

cookbook::Cookbook cookbook(const catalogue::Catalogue& known) {
    const auto line = [&](std::string_view id, std::int64_t value, Role role, bool optional = false) {
        cookbook::DishIngredient it;
        it.ingredient = known.ingredient(id).value();
        it.amount = {known[it.ingredient].dimension, value};
        it.role = role;
        it.optional = optional;
        return it;
    };
    const auto dish = [&](std::string id, int serves, std::vector<cookbook::DishIngredient> lines,
                          std::string_view leaves) {
        cookbook::Dish it;
        it.name = id;
        std::replace(it.name.begin(), it.name.end(), '-', ' ');
        it.id = std::move(id);
        it.dinner = true;
        it.lunch = true;
        it.serves = serves;
        it.ingredients = std::move(lines);
        if (!leaves.empty()) it.leaves = known.ingredient(leaves);
        it.freezes = !leaves.empty();
        return it;
    };
    std::vector<cookbook::Dish> dishes;
    dishes.push_back(dish(
        "cabbage-rice", 4,
        {line("cabbage", 500, Role::main), line("rice", 300'000, Role::starch), line("oil", 30'000, Role::sauce)}, ""));
    dishes.push_back(dish(
        "meat-loaf", 5,
        {line("beef-mince", 750'000, Role::main), line("onion", 1'000, Role::body), line("eggs", 1'000, Role::binder),
         line("flour", 30'000, Role::binder), line("parsley", 10'000, Role::seasoning, true)},
        "cold-meat-loaf"));
    dishes.push_back(dish("omelette", 2, {line("eggs", 5'000, Role::main), line("milk", 60'000, Role::body)}, ""));
    dishes.push_back(dish("roast-chicken", 4,
                          {line("whole-chicken", 1'800'000, Role::main), line("peas", 400'000, Role::side)},
                          "cold-roast-chicken"));
    dishes.back().gives.push_back({known.ingredient("chicken-carcass").value(), {Dimension::pieces, 1'000}});
    return {{}, std::move(dishes)};
}

}  // namespace

LedgerWorld::LedgerWorld() {
    catalogue::Family food;
    food.id = "food";
    food.name = "food";
    std::vector<Ingredient> things = ingredients();
    for (Ingredient& it : things) it.family = catalogue::FamilyId{0};
    catalogue::Catalogue known({food}, std::move(things));
    cookbook::Cookbook dishes = cookbook(known);
    household.name = "test";
    for (const auto& [id, kind] : {std::pair{"crisper", PlaceKind::crisper},
                                   {"far-freezer", PlaceKind::far_freezer},
                                   {"fridge", PlaceKind::fridge},
                                   {"near-freezer", PlaceKind::near_freezer},
                                   {"pantry", PlaceKind::pantry}}) {
        household.places.push_back({id, id, kind, {}});
    }
    household.staples.resize(known.ingredients().size());
    household.staples_out.resize(known.ingredients().size());
    for (std::size_t i = 0; i < known.ingredients().size(); ++i) household.staples[i] = known.ingredients()[i].staple;
    knowledge = std::make_shared<const kitchen::Knowledge>(std::move(known), std::move(dishes),
                                                           std::vector<graph::Statement>{});
}

catalogue::IngredientId LedgerWorld::ingredient(std::string_view id) const {
    return knowledge->catalogue.ingredient(id).value();
}

cookbook::DishId LedgerWorld::dish(std::string_view id) const {
    return knowledge->cookbook.dish(id).value();
}

stock::PlaceId LedgerWorld::place(std::string_view id) const {
    return basics::find_sorted<stock::PlaceId>(household.places, id).value();
}

kitchen::Kitchen LedgerWorld::empty() const {
    kitchen::Kitchen kitchen;
    kitchen.knowledge = knowledge;
    kitchen.household = household;
    return kitchen;
}

const LedgerWorld& ledger_world() {
    static const LedgerWorld world;
    return world;
}

basics::Day day(std::string_view text) {
    return basics::read_iso_day(text).value();
}

measure::Amount grams(std::int64_t grams) {
    return {Dimension::mass, grams * 1000};
}

measure::Amount millilitres(std::int64_t millilitres) {
    return {Dimension::volume, millilitres * 1000};
}

measure::Amount pieces(std::int64_t thousandths) {
    return {Dimension::pieces, thousandths};
}

}  // namespace samebase::tests
