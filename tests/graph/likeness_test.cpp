// Likeness of two dishes: the weights of a dish, and transport worked out by hand.
#include "graph/likeness.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "support/small_world.hpp"

using namespace samebase::graph;
using samebase::catalogue::Role;
using samebase::cookbook::Cookbook;
using samebase::cookbook::Dish;
using samebase::cookbook::DishIngredient;
using samebase::measure::Mass;
using samebase::measure::Pieces;
using samebase::tests::small_world;
using samebase::tests::SmallWorld;

namespace {

const SmallWorld& pantry() {
    static const SmallWorld world = small_world(R"(
        family all
        family flour in all siblings 0.8
        family meat in all siblings 0.5
        thing beef in meat
        thing pork in meat
        thing rye in flour
        thing salt in all
        thing wheat in flour)");
    return world;
}

DishIngredient line(const std::string& id, std::int64_t grams, Role role = Role::main) {
    DishIngredient result;
    result.ingredient = pantry().thing(id);
    result.amount = Mass{grams * 1000};
    result.role = role;
    return result;
}

Dish dish(std::vector<DishIngredient> ingredients) {
    Dish result;
    result.id = "dish";
    result.ingredients = std::move(ingredients);
    return result;
}

Weighted weighted(const std::string& id, std::int64_t weight, Role role = Role::main) {
    return {pantry().node(id, role), weight};
}

bool same(const Profile& a, const Profile& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const Weighted& x, const Weighted& y) { return x.node == y.node && x.weight == y.weight; });
}

}  // namespace

TEST_CASE("an ingredient tells more the fewer dishes use it, and a dish counts it once") {
    const Cookbook cookbook({}, {dish({line("salt", 1), line("beef", 2), line("salt", 3, Role::topping)}),
                                 dish({line("salt", 1), line("rye", 2)}), dish({line("salt", 1)})});
    Parameters parameters;
    parameters.telling_floor = 0.25;
    const auto tells = telling(cookbook, pantry().catalogue, parameters);
    REQUIRE(tells.size() == 5);
    CHECK(tells[pantry().thing("salt").index()] == Approx(0.25));  // in all three: ln(4/4)
    CHECK(tells[pantry().thing("beef").index()] == Approx(0.25 + std::log(2.0)));
    CHECK(tells[pantry().thing("pork").index()] == Approx(0.25 + std::log(4.0)));
}

TEST_CASE("a weight is role's weight times telling times a power of the share by grams, in ten-thousandths") {
    Parameters parameters;
    parameters.role_weight.fill(1.0);
    parameters.role_weight[static_cast<std::size_t>(Role::main)] = 3.0;
    parameters.share_power = 0.5;
    const std::vector<double> tells{2.0, 1.0, 1.0, 0.5, 1.0};  // beef, pork, rye, salt, wheat
    // Shares 0.64, 0.35 and 0.01; their roots 0.8, 0.5916 and 0.1.
    const auto weights =
        profile(dish({line("wheat", 350, Role::body), line("salt", 10, Role::seasoning), line("beef", 640)}),
                pantry().catalogue, tells, parameters);
    CHECK(same(weights,
               {weighted("beef", 48000), weighted("salt", 500, Role::seasoning), weighted("wheat", 5916, Role::body)}));
}

TEST_CASE("lines of the same ingredient and role add up, and no line weighs nothing") {
    Parameters parameters;
    parameters.role_weight.fill(1.0);
    parameters.share_power = 1.0;
    const std::vector<double> tells(5, 1.0);
    const auto weights = profile(dish({line("rye", 250), line("rye", 250, Role::topping), line("rye", 500)}),
                                 pantry().catalogue, tells, parameters);
    CHECK(same(weights, {weighted("rye", 7500), weighted("rye", 2500, Role::topping)}));
    const auto pinch = profile(dish({line("beef", 1'000'000), line("salt", 1)}), pantry().catalogue, tells, parameters);
    CHECK(same(pinch, {weighted("beef", 10000), weighted("salt", 1)}));
}

TEST_CASE("what the catalogue cannot weigh counts as a set number of grams, and optional lines count") {
    Parameters parameters;
    parameters.role_weight.fill(1.0);
    parameters.share_power = 1.0;
    parameters.unknown_grams = 25;
    DishIngredient pieces = line("rye", 1);
    pieces.amount = Pieces{2000};
    DishIngredient optional = line("salt", 75);
    optional.optional = true;
    const auto weights = profile(dish({pieces, optional}), pantry().catalogue, std::vector<double>(5, 1.0), parameters);
    CHECK(same(weights, {weighted("rye", 2500), weighted("salt", 7500)}));
}

TEST_CASE("likeness by hand") {
    const BaseGraph graph = pantry().graph();
    const Profile beef{weighted("beef", 30), weighted("wheat", 10)};
    CHECK(likeness(beef, beef, graph) == 1'000'000);
    // Same beef; wheat on rye at 0.8.
    CHECK(likeness(beef, {weighted("beef", 30), weighted("rye", 10)}, graph) == 950'000);
    // 30 of pork at 0.5, nothing for the salt.
    CHECK(likeness(beef, {weighted("pork", 30), weighted("salt", 10)}, graph) == 375'000);
    // The larger total divides: 10 of 40.
    CHECK(likeness(beef, {weighted("wheat", 10)}, graph) == 250'000);
    // Half of the beef finds beef, half of it pork.
    CHECK(likeness({weighted("beef", 20)}, {weighted("beef", 10), weighted("pork", 10)}, graph) == 750'000);
    // In another role, the change of role counts.
    CHECK(likeness({weighted("rye", 10)}, {weighted("rye", 10, Role::topping)}, graph) ==
          std::llround(graph.parameters().role_change * 1e6));
}

TEST_CASE("likeness is the mean of both directions") {
    const SmallWorld world = small_world(R"(
        family all
        thing a in all
        thing b in all
        for a use b fit 0.8
        for b use a fit 0.3)");
    const BaseGraph graph = world.graph();
    CHECK(likeness({{world.node("a"), 7}}, {{world.node("b"), 7}}, graph) == 550'000);
    CHECK(likeness({{world.node("b"), 7}}, {{world.node("a"), 7}}, graph) == 550'000);
}

TEST_CASE("nothing is like nothing") {
    const BaseGraph graph = pantry().graph();
    CHECK(likeness({}, {}, graph) == 0);
    CHECK(likeness({}, {weighted("beef", 1)}, graph) == 0);
    CHECK(likeness({weighted("salt", 5)}, {weighted("beef", 5)}, graph) == 0);
}

TEST_CASE("never, allergens and the least fit say nothing about likeness") {
    const SmallWorld world = small_world(R"(
        family all
        thing cream in all with milk
        thing oil in all
        for oil use cream fit 0.02 both ways
        for oil never cream both ways)");
    const BaseGraph graph = world.graph();
    CHECK(likeness({{world.node("oil"), 7}}, {{world.node("cream"), 7}}, graph) == 20'000);
}

TEST_CASE("weights of thousands of millions of parts are carried without overflow") {
    const BaseGraph graph = pantry().graph();
    const std::int64_t heavy = 1'000'000'000;
    const Profile a{weighted("beef", heavy), weighted("rye", heavy), weighted("wheat", heavy, Role::side)};
    const Profile b{weighted("pork", heavy), weighted("wheat", heavy), weighted("wheat", heavy, Role::side)};
    CHECK(likeness(a, b, graph) == 766'667);  // (0.5 + 0.8 + 1) / 3
}
