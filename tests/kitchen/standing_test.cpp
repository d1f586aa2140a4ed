// Standing uses enter the ledger as days pass.
#include "kitchen/standing.hpp"

#include "support/story.hpp"

using namespace samebase;
using namespace samebase::tests;

namespace {

Story with_milk_every_day() {
    Story story;
    story.kitchen.household.standing_uses = {{world.ingredient("milk"), millilitres(500), 0x7F}};
    story.gets("milk", of(millilitres(1800)), "fridge");
    return story;
}

}  // namespace

TEST_CASE("each day that has passed uses what the household uses, as far as it is there") {
    Story story = with_milk_every_day();
    const basics::Day came = story.today;
    const auto changes = kitchen::standing_uses({story.kitchen, came + basics::days{4}, story.next_lot}, came);
    REQUIRE(changes.size() == 4);
    std::int64_t eaten = 0;
    for (const kitchen::Change& change : changes) {
        CHECK(change.command == "standing");
        for (const stock::Entry& entry : change.entries) {
            if (entry.column == stock::Column::used) eaten -= entry.delta;
            CHECK(entry.reason == "standing use");
            CHECK(entry.kind != stock::Kind::found);
        }
    }
    CHECK(eaten == 1'800'000);
    CHECK(changes.front().day == came);
    CHECK(changes.back().day == came + basics::days{3});
}

TEST_CASE("the same day uses nothing yet, and a day that was entered is not entered again") {
    Story story = with_milk_every_day();
    CHECK(kitchen::standing_uses({story.kitchen, story.today, story.next_lot}, story.today).empty());
    CHECK(kitchen::standing_uses({story.kitchen, story.today + basics::days{1}, story.next_lot},
                                 story.today + basics::days{1})
              .empty());
    CHECK(kitchen::standing_uses({story.kitchen, story.today + basics::days{1}, story.next_lot}, std::nullopt).empty());
}

TEST_CASE("a standing use takes nothing that is past its use-by") {
    Story story = with_milk_every_day();
    const basics::Day late = story.today + basics::days{30};
    for (const kitchen::Change& change : kitchen::standing_uses({story.kitchen, late, story.next_lot}, story.today)) {
        for (const stock::Entry& entry : change.entries) {
            if (entry.after.use_by) CHECK(change.day <= *entry.after.use_by);
        }
    }
}
