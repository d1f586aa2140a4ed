// Amounts as a hand measures them: pieces, spoons, serves, and what is only weighed.
#include "catalogue/hand.hpp"

#include <catch2/catch.hpp>

using namespace samebase::catalogue;
using samebase::measure::Amount;
using samebase::measure::Dimension;

namespace {

Ingredient thing(const std::string& name, Dimension dimension, Measured measured = Measured::not_said) {
    Ingredient one;
    one.id = name;
    one.name = name;
    one.dimension = dimension;
    one.measured = measured;
    return one;
}

Amount grams(std::int64_t mg) {
    return {Dimension::mass, mg};
}

Amount millilitres(std::int64_t ul) {
    return {Dimension::volume, ul};
}

Amount pieces(std::int64_t thousandths) {
    return {Dimension::pieces, thousandths};
}

Ingredient capsicum() {
    Ingredient one = thing("capsicum", Dimension::mass, Measured::pieces);
    one.also = {"bell pepper", "capsicums"};
    one.conversion.mg_per_piece = 165'000;
    return one;
}

Ingredient eggs() {
    Ingredient one = thing("eggs", Dimension::pieces);
    one.also = {"egg"};
    one.conversion.mg_per_piece = 50'000;
    return one;
}

Ingredient dried_basil() {
    Ingredient one = thing("dried basil", Dimension::mass, Measured::spoons);
    one.conversion.mg_per_ml = 142;
    return one;
}

}  // namespace

TEST_CASE("eggs are whole, and at least one") {
    CHECK(in_hand_named(pieces(800), eggs()) == "1 egg");
    CHECK(in_hand_named(pieces(1'680), eggs()) == "2 eggs");
    CHECK(in_hand_named(pieces(100), eggs()) == "1 egg");
    CHECK(in_hand_named(pieces(18'000), eggs()) == "18 eggs");
}

TEST_CASE("a large fruit that is counted is cut into quarters") {
    Ingredient lemon = thing("lemon", Dimension::pieces);
    lemon.also = {"lemons"};
    lemon.conversion.mg_per_piece = 110'000;
    CHECK(in_hand_named(pieces(820), lemon) == "3/4 lemon");
    CHECK(in_hand_named(pieces(40), lemon) == "1/4 lemon");
    CHECK(in_hand_named(pieces(1'200), lemon) == "1 1/4 lemons");
    CHECK(in_hand_named(pieces(4'200), lemon) == "4 lemons");
}

TEST_CASE("vegetables that are kept by weight are told in pieces, as far as a hand counts them") {
    CHECK(in_hand_named(grams(495'000), capsicum()) == "3 capsicums");
    CHECK(in_hand_named(grams(203'000), capsicum()) == "1 1/4 capsicums");
    CHECK(in_hand_named(grams(82'500), capsicum()) == "1/2 capsicum");
    // More than six are weighed, and so is less than an eighth of one.
    CHECK(in_hand_named(grams(1'650'000), capsicum()) == "1.65 kg capsicum");
    CHECK(in_hand_named(grams(12'300), capsicum()) == "10 g capsicum");
}

TEST_CASE("what is weighed, or said by a cook, stays as it is down to the gram") {
    CHECK(weighed(grams(495'000), capsicum()) == "495 g");
    CHECK(weighed(grams(1'015'000), capsicum()) == "1.02 kg");
    CHECK(weighed_named(grams(185'000), capsicum()) == "185 g capsicum");
    CHECK(weighed(grams(143'690), capsicum()) == "140 g");
    CHECK(weighed_named(pieces(1'000), eggs()) == "1 egg");
}

TEST_CASE("vegetables with small pieces are weighed") {
    Ingredient beans = thing("green beans", Dimension::mass, Measured::pieces);
    beans.conversion.mg_per_piece = 5'500;
    CHECK(in_hand_named(grams(183'000), beans) == "180 g green beans");
}

TEST_CASE("what is measured with spoons is told in teaspoons below a tablespoon") {
    CHECK(in_hand_named(grams(1'930), dried_basil()) == "2 1/2 tsp dried basil");
    CHECK(in_hand(grams(700), dried_basil()) == "1 tsp");
    CHECK(in_hand(grams(2'840), dried_basil()) == "1 tbsp");
    CHECK(in_hand_named(grams(50), dried_basil()) == "a pinch of dried basil");
    CHECK(in_hand(grams(9'400), dried_basil()) == "9 g");
    Ingredient unknown = dried_basil();
    unknown.conversion.mg_per_ml.reset();
    CHECK(in_hand(grams(1'930), unknown) == "2 g");
}

TEST_CASE("every liquid is told in teaspoons below a tablespoon") {
    const Ingredient soy = thing("soy sauce", Dimension::volume);
    CHECK(in_hand(millilitres(2'400), soy) == "1/2 tsp");
    CHECK(in_hand_named(millilitres(500), soy) == "a little soy sauce");
    CHECK(in_hand(millilitres(20'000), soy) == "1 tbsp");
    CHECK(in_hand(millilitres(36'300), soy) == "35 mL");
    CHECK(in_hand(millilitres(1'149'000), soy) == "1.15 L");
}

TEST_CASE("serves are told in halves, and packs too") {
    Ingredient rice = thing("cooked rice", Dimension::pieces);
    rice.in_serves = true;
    CHECK(in_hand_named(pieces(1'100), rice) == "1 serve cooked rice");
    CHECK(in_hand_named(pieces(750), rice) == "1 serve cooked rice");
    CHECK(in_hand_named(pieces(2'600), rice) == "2 1/2 serves cooked rice");
    CHECK(in_hand_named(pieces(100), rice) == "1/2 serve cooked rice");
    CHECK(packs_in_hand(312) == "half a pack");
    CHECK(packs_in_hand(1'000) == "1 pack");
    CHECK(packs_in_hand(13'500) == "13 1/2 packs");
}

TEST_CASE("less than nothing has its sign, and nothing is nothing") {
    CHECK(in_hand(grams(-495'000), capsicum()) == "-3");
    CHECK(in_hand(grams(0), dried_basil()) == "0 g");
    CHECK(in_hand_named(grams(0), capsicum()) == "0 g capsicum");
}
