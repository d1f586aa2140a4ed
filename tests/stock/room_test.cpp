#include "stock/room.hpp"

#include <catch2/catch.hpp>

using namespace samebase;

namespace {

catalogue::Ingredient mass_thing() {
    catalogue::Ingredient thing;
    thing.dimension = measure::Dimension::mass;
    return thing;
}

constexpr std::int64_t kilogram = 1'000'000;

}  // namespace

TEST_CASE("room goes by what the catalogue says of a kilogram") {
    auto lettuce = mass_thing();
    lettuce.ml_per_kg = 8000;
    lettuce.conversion.mg_per_ml = 500;
    CHECK(stock::room_taken(lettuce, {measure::Dimension::mass, kilogram / 2}) == 4000);
}

TEST_CASE("room goes by density with a quarter more for the pack, else by a litre for each kilogram") {
    auto thing = mass_thing();
    CHECK(stock::room_taken(thing, {measure::Dimension::mass, 2 * kilogram}) == 2500);
    thing.conversion.mg_per_ml = 500;
    CHECK(stock::room_taken(thing, {measure::Dimension::mass, 2 * kilogram}) == 5000);
}

TEST_CASE("a piece whose weight is not known takes the room of 200 g") {
    catalogue::Ingredient thing;
    thing.dimension = measure::Dimension::pieces;
    CHECK(stock::room_taken(thing, {measure::Dimension::pieces, 3000}) == 750);
    thing.conversion.mg_per_piece = kilogram;
    CHECK(stock::room_taken(thing, {measure::Dimension::pieces, 3000}) == 3750);
}
