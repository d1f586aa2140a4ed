// A recipe's own measures, scaled.
#include "show/recipe.hpp"

#include <catch2/catch.hpp>

using samebase::show::in_own_measure;

TEST_CASE("spoons, cups and cloves stay what the recipe says, in parts that a hand can measure") {
    CHECK(in_own_measure("2 tbsp", 1000) == "2 tbsp");
    CHECK(in_own_measure("2 tbsp", 820) == "1 1/2 tbsp");
    CHECK(in_own_measure("1 tsp", 820) == "3/4 tsp");
    CHECK(in_own_measure("1 cup", 1500) == "1 1/2 cups");
    CHECK(in_own_measure("1 cup", 200) == "2 1/2 tbsp");
    CHECK(in_own_measure("1 tbsp", 400) == "1 1/2 tsp");
    CHECK(in_own_measure("2 cloves", 820) == "1 1/2 cloves");
    CHECK(in_own_measure("1 bunch", 2000) == "2 bunches");
    CHECK(in_own_measure("6 cups", 820) == "5 cups");
}

TEST_CASE("a bare number is quarters, then halves, and at last whole, and weights have no measure of their own") {
    CHECK(in_own_measure("1", 820) == "3/4");
    CHECK(in_own_measure("2", 820) == "1 3/4");
    CHECK(in_own_measure("5", 820) == "4");
    CHECK(in_own_measure("1", 10) == "1/4");
    CHECK_FALSE(in_own_measure("500 g", 820));
    CHECK_FALSE(in_own_measure("250 mL", 1000));
    CHECK_FALSE(in_own_measure("4 serves", 1000));
}
