// Whole things: what does not come in parts is cooked whole.
#include "kitchen/cooking.hpp"

#include "support/story.hpp"

using namespace samebase;
using namespace samebase::tests;

namespace {

std::int64_t needs(const kitchen::Kitchen& kitchen, std::int64_t serves_thousandths, const char* what) {
    const kitchen::Batch batch{
        day("2026-11-25"), kitchen::Meal::dinner, world.dish("meat-loaf"), serves_thousandths, {}};
    const auto takes = kitchen::takes(kitchen, batch);
    for (const kitchen::Needed& need :
         kitchen::sums(kitchen, world.dish("meat-loaf"), takes, kitchen::Lines::required)) {
        if (need.ingredient == world.ingredient(what)) return need.amount;
    }
    return 0;
}

}  // namespace

TEST_CASE("eggs are whole, one at least, and other pieces come in quarters") {
    const kitchen::Kitchen kitchen = world.empty();
    for (const std::int64_t serves : {500, 1000, 2200, 4100, 5000, 5500, 9500}) {
        const auto eggs = needs(kitchen, serves, "eggs");
        CHECK(eggs >= 1000);
        CHECK(eggs % 1000 == 0);
        CHECK(needs(kitchen, serves, "onion") % 250 == 0);
    }
}

TEST_CASE("a main that is nearly a number of packs is so many packs, and else what is wanted") {
    Story story;
    story.gets("beef-mince", packs(4'000), "fridge");
    const auto five = needs(story.kitchen, 5000, "beef-mince");
    CHECK(five == 750'000);                                      // one and a half: the dish is not stretched to two
    CHECK(needs(story.kitchen, 3500, "beef-mince") == 500'000);  // 525 g: one pack
    CHECK(needs(story.kitchen, 6500, "beef-mince") == 1'000'000);
    CHECK(needs(story.kitchen, 2000, "beef-mince") == 300'000);
}
