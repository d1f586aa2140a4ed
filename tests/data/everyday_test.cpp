// Everyday ingredients, the dinners and lunches that need nothing else, and whether what an ordinary household buys is
// found under the names that it uses.
#include <algorithm>
#include <catch2/catch.hpp>
#include <iostream>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "catalogue/names.hpp"
#include "exchange/file.hpp"
#include "support/shipped.hpp"

using namespace samebase;
using catalogue::Kind;
using catalogue::Role;
using cookbook::Dish;
using cookbook::DishIngredient;

namespace {

const catalogue::Catalogue& things() {
    return tests::shipped_catalogue();
}

std::map<std::string, int> everyday_by_kind(bool Dish::*meal) {
    std::map<std::string, int> found;
    for (const Dish& dish : tests::shipped().cookbook.dishes()) {
        if (!(dish.*meal) || !cookbook::everyday(dish, things())) continue;
        for (const auto& kind : dish.kinds) ++found[kind];
    }
    return found;
}

long everyday_dishes(bool Dish::*meal) {
    const auto dishes = tests::shipped().cookbook.dishes();
    return std::count_if(dishes.begin(), dishes.end(),
                         [&](const Dish& dish) { return dish.*meal && cookbook::everyday(dish, things()); });
}

/// A thing that few homes have and that carries the dish: not its seasoning, sauce or topping, and no leftover.
bool is_unusual(const DishIngredient& line) {
    const bool carries =
        line.role != Role::seasoning && line.role != Role::sauce && line.role != Role::topping && !line.optional;
    const catalogue::Ingredient& thing = things()[line.ingredient];
    return carries && !thing.everyday && thing.kind != Kind::cooked;
}

bool needs_the_unusual(const Dish& dish) {
    return std::any_of(dish.ingredients.begin(), dish.ingredients.end(), is_unusual);
}

catalogue::NameIndex names_of_ingredients() {
    catalogue::NameIndex index;
    for (std::uint32_t key = 0; key < things().ingredients().size(); ++key) {
        const auto& thing = things().ingredients()[key];
        index.add(key, 0, thing.name);
        for (const std::string& other : thing.also) index.add(key, 0, other);
    }
    index.finish();
    return index;
}

}  // namespace

TEST_CASE("What every ordinary shop has is marked everyday, and what few homes have is not") {
    for (const char* id :
         {"beef-mince", "carrot", "milk", "eggs", "penne", "white-bread", "frozen-peas", "fish-fingers"}) {
        INFO(id);
        CHECK(things()[tests::shipped_ingredient(id)].everyday);
    }
    for (const char* id : {"romanesco", "choko", "kohlrabi", "kangaroo-mince", "ras-el-hanout", "cold-roast-beef"}) {
        INFO(id);
        CHECK_FALSE(things()[tests::shipped_ingredient(id)].everyday);
    }
    const auto all = things().ingredients();
    const auto everyday = std::count_if(all.begin(), all.end(), [](const auto& thing) { return thing.everyday; });
    CHECK(everyday >= 150);
    CHECK(everyday <= 320);
}

TEST_CASE("A dish is everyday where all that it needs is, whatever may be left out") {
    const auto& cookbook = tests::shipped().cookbook;
    const auto everyday = [&](const char* id) {
        return cookbook::everyday(cookbook[cookbook.dish(id).value()], things());
    };
    CHECK(everyday("plain-macaroni-cheese"));
    CHECK(everyday("spaghetti-bolognese"));  // its wine is optional
    CHECK_FALSE(everyday("spirals-with-marrow-and-capsicum"));
    CHECK_FALSE(everyday("bolognese-penne-bake"));  // of a leftover
}

TEST_CASE("A family can live on everyday dinners and lunches") {
    CHECK(everyday_dishes(&Dish::dinner) >= 200);
    CHECK(everyday_dishes(&Dish::lunch) >= 90);
    const auto dinners = everyday_by_kind(&Dish::dinner);
    for (const auto& [kind, least] : std::map<std::string, int>{
             {"mince", 30},   {"pasta", 25},    {"bake", 20},    {"rice", 20},    {"curry", 12},
             {"pie", 12},     {"fish", 12},     {"stew", 8},     {"soup", 10},    {"eggs", 10},
             {"roast", 6},    {"sausages", 8},  {"pizza", 6},    {"grill", 6},    {"toast", 6},
             {"noodles", 6},  {"flatbread", 6}, {"stir-fry", 8}, {"pulses", 8},   {"salad", 6},
             {"pancakes", 6}, {"fritters", 6},  {"burgers", 6},  {"potatoes", 6}, {"traybake", 6}}) {
        INFO(kind);
        const auto found = dinners.find(kind);
        REQUIRE(found != dinners.end());
        CHECK(found->second >= least);
    }
}

TEST_CASE("No more dinners need something unusual than was reached") {
    // The aim is a quarter. Every fresh vegetable has eight dinners (soundness_test.cpp), some thirty of them unusual.
    const auto dishes = tests::shipped().cookbook.dishes();
    const auto dinners = std::count_if(dishes.begin(), dishes.end(), [](const Dish& dish) { return dish.dinner; });
    const auto unusual = std::count_if(dishes.begin(), dishes.end(),
                                       [](const Dish& dish) { return dish.dinner && needs_the_unusual(dish); });
    std::cout << unusual << " of " << dinners << " dinners need something unusual\n";
    CHECK(100 * unusual <= 54 * dinners);
}

TEST_CASE("Receipts and a freezer list are found by the names that the catalogue has") {
    const std::string path = SAMEBASE_SOURCE_DIR "/tests/data/receipts.json";
    const auto document = exchange::parse(exchange::read_file(path).value(), path).value();
    const auto index = names_of_ingredients();
    std::size_t lines = 0;
    std::size_t right = 0;
    for (const auto& list : document.at("lists")) {
        for (const auto& line : list.at("lines")) {
            const std::string words = line.at(0);
            const std::string meant = line.at(1);
            const auto match = index.find(words);
            const bool one = match.whole && match.found.size() == 1;
            const std::string got = one ? things().ingredients()[match.found.front().key].id : "no one thing";
            ++lines;
            right += got == meant ? 1 : 0;
            if (got != meant) std::cout << list.at("name") << ": '" << words << "' is " << got << '\n';
        }
    }
    CHECK(lines >= 120);
    CHECK(100 * right >= 95 * lines);
}

TEST_CASE("Sealed goods keep by a sealed time, and by a short one only once opened") {
    for (const char* id : {"tasty-cheese", "feta", "sour-cream", "greek-yoghurt", "pesto", "salsa", "curry-sauce"}) {
        INFO(id);
        const auto thing = tests::shipped_ingredient(id);
        const auto sealed = tests::keeping(thing, catalogue::Keep::fridge);
        const auto opened = tests::keeping(thing, catalogue::Keep::opened);
        CHECK(sealed.time.days >= 21);
        CHECK(opened.said == catalogue::Keeping::Said::time);
        CHECK(opened.time.days < sealed.time.days);
    }
    const auto eggs = tests::keeping(tests::shipped_ingredient("eggs"), catalogue::Keep::fridge);
    CHECK(eggs.time.days >= 28);
    CHECK(eggs.time.limit == catalogue::Limit::best_by);
}
