// What opening begins, on the shipped catalogue (common practice).
#include "stock/opening.hpp"

#include <catch2/catch.hpp>

using namespace samebase;

namespace {

catalogue::Ingredient thing(catalogue::Kind kind, measure::Dimension dimension, std::optional<std::int64_t> mg,
                            catalogue::Limit opened) {
    catalogue::Ingredient thing;
    thing.kind = kind;
    thing.dimension = dimension;
    thing.conversion.mg_per_piece = mg;
    thing.keeps[static_cast<std::size_t>(catalogue::Keep::opened)] = {catalogue::Keeping::Said::time, {2, opened}};
    return thing;
}

}  // namespace

TEST_CASE("eggs and carrots are small pieces, a pumpkin is a large one, mince and cut meat are neither") {
    using catalogue::Kind;
    using catalogue::Limit;
    using measure::Dimension;
    const auto eggs = thing(Kind::raw, Dimension::pieces, 60'000, Limit::use_by);
    const auto carrots = thing(Kind::raw, Dimension::mass, 120'000, Limit::best_by);
    const auto pumpkin = thing(Kind::raw, Dimension::mass, 1'500'000, Limit::best_by);
    const auto thighs = thing(Kind::raw, Dimension::mass, 150'000, Limit::use_by);
    const auto mince = thing(Kind::raw, Dimension::mass, std::nullopt, Limit::use_by);
    const auto olives = thing(Kind::made, Dimension::mass, 4'000, Limit::best_by);
    CHECK(stock::in_small_pieces(eggs));
    CHECK(stock::in_small_pieces(carrots));
    for (const auto* other : {&pumpkin, &thighs, &mince, &olives}) CHECK_FALSE(stock::in_small_pieces(*other));
    CHECK(stock::large_piece(pumpkin) == 1'500'000);
    for (const auto* other : {&eggs, &carrots, &thighs, &mince, &olives}) CHECK_FALSE(stock::large_piece(*other));
}
