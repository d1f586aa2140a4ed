#include <catch2/catch.hpp>

#include "flow/cooking.hpp"

namespace {

using namespace samebase;
using catalogue::Allergen;
using catalogue::AllergenSet;
using catalogue::IngredientId;

constexpr IngredientId rolls{0};
constexpr IngredientId mayonnaise{1};
constexpr IngredientId plain_rolls{2};    // holds soy
constexpr IngredientId yoghurt{3};        // holds milk
constexpr IngredientId bean_dressing{4};  // holds nothing

AllergenSet set(std::initializer_list<Allergen> allergens) {
    AllergenSet result;
    for (const Allergen allergen : allergens) result.add(allergen);
    return result;
}

flow::Holds holds() {
    return {set({Allergen::wheat}), set({Allergen::egg}), set({Allergen::soy}), set({Allergen::milk}), {}};
}

/// Rolls with mayonnaise: a serve apart without wheat, one without egg.
cookbook::Dish rolls_with_mayonnaise() {
    cookbook::Dish dish;
    for (const IngredientId id : {rolls, mayonnaise}) {
        cookbook::DishIngredient line;
        line.ingredient = id;
        dish.ingredients.push_back(line);
    }
    dish.separate.push_back({Allergen::wheat, {{rolls, plain_rolls}}, "on its own plate"});
    dish.separate.push_back({Allergen::egg, {{mayonnaise, yoghurt}}, "in its own bowl"});
    return dish;
}

}  // namespace

TEST_CASE("who avoids nothing that a dish holds gets the common serve") {
    const auto dish = rolls_with_mayonnaise();
    const auto serve = flow::serve_for(dish, set({Allergen::milk, Allergen::soy}), {}, holds());
    CHECK(serve.apart.empty());
    CHECK(serve.holds == set({Allergen::wheat, Allergen::egg}));
}

TEST_CASE("who avoids one thing gets the serve apart for that, and no other") {
    const auto dish = rolls_with_mayonnaise();
    const auto serve = flow::serve_for(dish, set({Allergen::wheat}), {}, holds());
    REQUIRE(serve.apart.size() == 1);
    CHECK(serve.apart.front()->avoids == Allergen::wheat);
    CHECK(serve.holds == set({Allergen::soy, Allergen::egg}));
}

TEST_CASE("who avoids two things gets both serves apart on one plate") {
    const auto dish = rolls_with_mayonnaise();
    const auto serve = flow::serve_for(dish, set({Allergen::wheat, Allergen::egg}), {}, holds());
    CHECK(serve.apart.size() == 2);
    CHECK(serve.swaps() ==
          std::vector<std::pair<IngredientId, IngredientId>>{{rolls, plain_rolls}, {mayonnaise, yoghurt}});
    CHECK(serve.holds == set({Allergen::soy, Allergen::milk}));
}

TEST_CASE("a serve apart that brings something else that its eater avoids shows that it does") {
    const auto dish = rolls_with_mayonnaise();
    const auto serve = flow::serve_for(dish, set({Allergen::egg, Allergen::milk}), {}, holds());
    CHECK(serve.holds.has(Allergen::milk));
}

TEST_CASE("where a stand-in for all takes away what someone avoids, the serve apart stays away") {
    // The serve apart would bring milk onto a plate that is free of egg and milk without it.
    const auto dish = rolls_with_mayonnaise();
    const std::vector<flow::LineSwap> swaps{{mayonnaise, {{bean_dressing, 50'000}}}};
    const auto serve = flow::serve_for(dish, set({Allergen::egg, Allergen::milk}), swaps, holds());
    CHECK(serve.apart.empty());
    CHECK(serve.holds == set({Allergen::wheat}));
}

TEST_CASE("optional lines are not on anyone's plate") {
    auto dish = rolls_with_mayonnaise();
    dish.ingredients.back().optional = true;
    CHECK(flow::serve_for(dish, set({Allergen::egg}), {}, holds()).apart.empty());
}
