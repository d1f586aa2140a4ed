// What a standard cookery book makes of cold fish and cold beef, and what we make of them: for each of its dishes that
// a home cook would know today, one of ours that eats the same leftover and goes about it in the same way.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "support/shipped.hpp"
#include "support/table.hpp"

using namespace samebase;
using tests::Row;

namespace {

/// Leftover | dish | our leftover | our dish | remark
constexpr const char* uses = R"(
@ F. M. Farmer, The Boston Cooking-School Cook Book (United States public domain)
cooked fish              | Fish a la Creme              | cold-cooked-fish   | fish-in-cream-on-toast
cooked fish              | Fish Hash                    | cold-cooked-fish   | fish-hash
cooked fish              | Fish Croquettes              | cold-cooked-fish   | fish-and-mash-croquettes
cooked fish              | Fish and Egg Croquettes      | cold-cooked-fish   | fish-and-egg-croquettes
cooked fish              | Scalloped Cod                | cold-cooked-fish   | scalloped-fish-with-crumbs
cooked fish              | Salmon Box                   | cold-cooked-salmon | salmon-packed-in-rice        | salmon in a case of rice
cold roast/broiled beef  | Roast Beef with Gravy        | cold-roast-beef    | roast-beef-in-gravy-on-toast
cold roast/broiled beef  | Roast Beef, Mexican Sauce    | cold-roast-beef    | cold-beef-in-spicy-tomato    | tomato, onion and hot pepper
cold roast/broiled beef  | Cottage Pie                  | cold-roast-beef    | cold-beef-cottage-pie
cold roast/broiled beef  | Beefsteak Pie                | cold-roast-beef    | cold-beef-and-mushroom-pie
cold roast/broiled beef  | Cecils with Tomato Sauce     | cold-roast-beef    | cold-beef-meatballs-in-tomato | chopped, shaped and fried
cold roast/broiled beef  | Corned Beef Hash             | cold-corned-beef   | corned-beef-hash
cold roast/broiled beef  | Corned Beef Hash with Beets  | cold-corned-beef   | corned-beef-and-beetroot-hash
)";
// Left out: Turban of Fish, fish and sauce piled up in a ring under crumbs, which no home cook would know today.

}  // namespace

TEST_CASE("ours make of cold fish and cold beef what the cookery book makes of them") {
    for (const Row& row : tests::read_table(uses)) {
        INFO(row[1] << " of " << row[0] << " (" << row.source << "); ours: " << row[3]);
        const auto leftover = tests::shipped_ingredient(row[2]);
        const auto id = tests::shipped().cookbook.dish(row[3]);
        REQUIRE(id);
        const cookbook::Dish& dish = tests::shipped().cookbook[*id];
        CHECK(std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                          [&](const auto& part) { return part.ingredient == leftover; }));
        CHECK((dish.lunch || dish.dinner));
    }
}
