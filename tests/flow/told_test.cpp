// What is told by itself, and what is summed.
#include "flow/told.hpp"

#include "support/demo.hpp"

using namespace samebase;
using flow::Finding;
using Kind = flow::Finding::Kind;
using tests::demo;
using tests::demo_day;
using tests::dish;
using tests::thing;

namespace {

Finding tossed(const char* ingredient, std::int64_t cents, int day, stock::LotNumber lot = 1) {
    Finding finding;
    finding.kind = Kind::tossed;
    finding.day = demo_day + basics::days{day};
    finding.ingredient = thing(ingredient);
    finding.amount = 1'000;
    finding.price = basics::Money{cents};
    finding.lot = lot;
    return finding;
}

Finding short_of(const char* ingredient, const char* of, std::int64_t cents) {
    Finding finding = tossed(ingredient, cents, 2, 0);
    finding.kind = Kind::short_of;
    finding.dish = dish(of);
    finding.amount = 500'000;
    return finding;
}

}  // namespace

TEST_CASE("what of one thing ends on one day is told once, whatever its lots, with the sum of them") {
    const std::vector<Finding> findings{tossed("milk", 60, 3, 7), tossed("milk", 90, 3, 8)};
    const auto telling = flow::tell(demo(), demo_day, findings, 12);
    REQUIRE(telling.told.size() == 1);
    CHECK(telling.told.front().finding.amount == 2'000);
    CHECK(telling.told.front().finding.price == basics::Money{150});
    CHECK(telling.told.front().finding.day == demo_day + basics::days{3});
    CHECK(telling.told.front().of == std::vector<std::size_t>{1, 0});
    CHECK(telling.small == 0);
    // What ends later is another thing.
    const std::vector<Finding> later{tossed("milk", 600, 3, 7), tossed("milk", 90, 5, 8)};
    CHECK(flow::tell(demo(), demo_day, later, 12).told.front().finding.amount == 1'000);
    CHECK(flow::tell(demo(), demo_day, later, 12).small == 1);
}

TEST_CASE("a herb of the body stops no meal") {
    CHECK(flow::stops_a_meal(demo(), short_of("beef-mince", "rissoles", 4)));
    CHECK_FALSE(flow::stops_a_meal(demo(), short_of("eggs", "rissoles", 4)));
    CHECK_FALSE(flow::stops_a_meal(demo(), short_of("parsley", "rissoles", 4)));
    // And 3 g of mince that lack do not either.
    Finding little = short_of("beef-mince", "rissoles", 4);
    little.amount = 3'000;
    CHECK_FALSE(flow::stops_a_meal(demo(), little));
}

TEST_CASE("what is worth less than the threshold is summed, unless it stops a meal or can hurt") {
    Finding past = tossed("ham", 5, -1);
    past.kind = Kind::past_use_by;
    const std::vector<Finding> findings{past, short_of("beef-mince", "rissoles", 4), short_of("eggs", "rissoles", 40),
                                        tossed("tomato", 6, 1)};
    const auto telling = flow::tell(demo(), demo_day, findings, 12);
    REQUIRE(telling.told.size() == 2);
    CHECK(telling.told[0].finding.kind == Kind::past_use_by);
    CHECK(telling.told[1].finding.ingredient == thing("beef-mince"));
    CHECK(telling.small == 2);
    CHECK(telling.small_price == basics::Money{46});
}

TEST_CASE("of more than so many things those that end soonest and the dearest are told, in the order of findings") {
    const std::vector<Finding> findings{tossed("milk", 300, 5), tossed("carrot", 120, 1), tossed("ham", 900, 6)};
    const auto telling = flow::tell(demo(), demo_day, findings, 2);
    REQUIRE(telling.told.size() == 2);
    CHECK(telling.told[0].finding.ingredient == thing("carrot"));
    CHECK(telling.told[1].finding.ingredient == thing("ham"));
    CHECK(telling.small == 1);
    CHECK(telling.small_price == basics::Money{300});
}

TEST_CASE("what stops a meal is never left out, however much there is of it") {
    const std::vector<Finding> findings{short_of("beef-mince", "rissoles", 4), tossed("ham", 900, 6)};
    const auto telling = flow::tell(demo(), demo_day, findings, 0);
    REQUIRE(telling.told.size() == 1);
    CHECK(telling.told.front().finding.kind == Kind::short_of);
}
