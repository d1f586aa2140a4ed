// One ingredient over days: cases whose best answer a cook can see.
#include "flow/component.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>

using namespace samebase::flow;
using samebase::basics::Money;

namespace {

std::int64_t total(const std::vector<std::int64_t>& amounts) {
    return std::accumulate(amounts.begin(), amounts.end(), std::int64_t{0});
}

/// The best outcome, which passes check() and is proved.
Outcome solved(const Component& component) {
    const Outcome outcome = best(component);
    REQUIRE(check(component, outcome) == std::nullopt);
    CHECK(outcome.proved);
    return outcome;
}

/// Lots are numbered from 1.
Component week(std::vector<Unit> units, std::vector<Want> wants, int days = 7) {
    Component component{
        .ingredient = {}, .units = std::move(units), .wants = std::move(wants), .offer = {}, .unit_price = {}};
    component.days = days;
    samebase::stock::LotNumber lot = 0;
    for (Unit& unit : component.units) unit.lot = ++lot;
    return component;
}

Unit cream(std::int64_t amount, int last_day) {
    return {.amount = amount, .price = Money{amount / 1000}, .last = dinner_of(last_day), .opened_days = 3};
}

Unit tray(std::int64_t grams) {
    return {.amount = grams * 1000, .price = Money{grams}, .thaw_days = 1, .thawed_days = 1, .cold_water = true};
}

}  // namespace

TEST_CASE("two lots of cream that keep three days once opened: the smaller is opened first and both are met") {
    const std::vector<Want> wants{{dinner_of(1), 300'000}, {dinner_of(6), 600'000}};
    const Component component = week({cream(600'000, 6), cream(300'000, 20)}, wants);
    const Outcome outcome = solved(component);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0, 0});
    CHECK(outcome.decisions.opened_day == std::vector<int>{6, 1});
    CHECK(outcome.tossed.minor == 0);
    // What ends first would be opened first by habit: 300 mL of it go off and 300 mL are short on day 6.
    Decisions habit;
    habit.opened_day = {1, 6};
    CHECK(carry_out(component, habit).unmet == std::vector<std::int64_t>{0, 300'000});
    CHECK(carry_out(component, habit).tossed == Money{300});
}

TEST_CASE("ten weeks of wants are decided within a limit in work, and says where that is not proved") {
    std::vector<Want> wants;
    for (int day = 0; day < 70; ++day) wants.push_back({dinner_of(day), 180'000 + 7'000 * (day % 11)});
    std::vector<Unit> units;
    for (int i = 0; i < 8; ++i) units.push_back(tray(500 + 30 * i));
    Component component = week(std::move(units), std::move(wants), 70);
    component.offer = Offer{.pack = 650'000, .price = Money{700}, .slots = {}, .keeps_days = 3, .opened_days = 2};
    for (int day = 3; day < 70; day += 7) component.offer->slots.push_back(shopping_of(day));
    component.unit_price = Money{700};
    component.unit_amount = 650'000;
    const Outcome outcome = best(component);
    CHECK(check(component, outcome) == std::nullopt);
    CHECK_FALSE(outcome.proved);
    CHECK(best(component).decisions == outcome.decisions);
}

TEST_CASE("what ends first goes first, and equal ends go by lot") {
    const Component component = week({{.amount = 5, .price = Money{5}, .last = dinner_of(4)},
                                      {.amount = 5, .price = Money{5}, .last = dinner_of(2)},
                                      {.amount = 5, .price = Money{5}, .last = dinner_of(2)}},
                                     {{lunch_of(1), 7}});
    const Outcome outcome = solved(component);
    CHECK(outcome.uses == std::vector<Use>{{0, 1, 5}, {0, 2, 2}});
    CHECK(outcome.fates[2].tossed == 3);
    CHECK(outcome.fates[0].tossed == 5);  // day 4 is within the seven days
    CHECK(outcome.tossed.minor == 8);
    CHECK(outcome.kept.minor == 0);
}

TEST_CASE("where something must be tossed anyway, it is what is cheaper") {
    // One of two bags goes off, whichever is used: the one that was paid less for.
    const Component component = week({{.amount = 10, .price = Money{20}, .last = dinner_of(2)},
                                      {.amount = 10, .price = Money{90}, .last = dinner_of(3)}},
                                     {{dinner_of(2), 10}});
    const Outcome outcome = solved(component);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0});
    CHECK(outcome.tossed.minor == 20);
    // With a want that only the later one can meet there is no choice left.
    Component both = component;
    both.wants.push_back({dinner_of(3), 10});
    CHECK(solved(both).tossed.minor == 0);
    CHECK(solved(both).unmet == std::vector<std::int64_t>{0, 0});
}

TEST_CASE("a thing is used until the dinner of its last day, and from the meal on which it comes") {
    const Component component = week({{.amount = 4, .first = lunch_of(2), .last = dinner_of(3)}},
                                     {{dinner_of(1), 1}, {lunch_of(2), 1}, {dinner_of(3), 1}, {lunch_of(4), 1}});
    CHECK(solved(component).unmet == std::vector<std::int64_t>{1, 0, 0, 1});
}

TEST_CASE("packs thaw whole: those are taken out that leave least over") {
    const Component component = week({tray(520), tray(480), tray(750)}, {{dinner_of(3), 700'000}});
    const Outcome outcome = solved(component);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0});
    CHECK(outcome.decisions.ready_day == std::vector<int>{-1, -1, 3});
    CHECK(outcome.fates[2].tossed == 50'000);
    CHECK(outcome.tossed.minor == 50);
    CHECK(outcome.kept.minor == 1000);
}

TEST_CASE("what is thawed for one dinner is used up at the next") {
    const Component component =
        week({tray(500), tray(500), tray(500)}, {{dinner_of(3), 750'000}, {dinner_of(4), 250'000}});
    const Outcome outcome = solved(component);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0, 0});
    CHECK(outcome.tossed.minor == 0);
    CHECK(outcome.kept.minor == 500);
}

TEST_CASE("frozen food is there for the first dinner only by way of cold water, and is cooked at once") {
    const Component thin = week({tray(500)}, {{dinner_of(0), 300'000}, {lunch_of(1), 200'000}});
    const Outcome outcome = solved(thin);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0, 200'000});
    CHECK(outcome.decisions.ready_day == std::vector<int>{0});
    CHECK(outcome.fates[0].from == dinner_of(0));
    CHECK(outcome.fates[0].to == dinner_of(0));
    CHECK(outcome.fates[0].tossed == 200'000);
    Component block = thin;
    block.units[0].cold_water = false;
    CHECK(solved(block).unmet == std::vector<std::int64_t>{300'000, 0});
    Component at_lunch = thin;
    at_lunch.wants = {{lunch_of(0), 300'000}};
    CHECK(solved(at_lunch).unmet == std::vector<std::int64_t>{300'000});
}

TEST_CASE("a big piece is ready only after so many days") {
    Unit roast = tray(2000);
    roast.thaw_days = 2;
    roast.cold_water = false;
    CHECK(solved(week({roast}, {{dinner_of(1), 2'000'000}})).unmet == std::vector<std::int64_t>{2'000'000});
    CHECK(solved(week({roast}, {{dinner_of(2), 2'000'000}})).unmet == std::vector<std::int64_t>{0});
}

TEST_CASE("a frozen unit is never opened: opening changes nothing about it") {
    Unit both = tray(500);
    both.opened_days = 0;
    CHECK(solved(week({both}, {{dinner_of(2), 250'000}, {dinner_of(3), 250'000}})).unmet ==
          std::vector<std::int64_t>{0, 0});
}

TEST_CASE("what comes later is not thawed for a dinner before it comes") {
    Unit later = tray(500);
    later.first = lunch_of(2);
    CHECK(solved(week({later}, {{dinner_of(0), 500'000}})).unmet == std::vector<std::int64_t>{500'000});
}

TEST_CASE("whole packs are bought, as late as they still come in time") {
    Component component = week({{.amount = 100, .price = Money{100}}}, {{dinner_of(1), 150}, {dinner_of(5), 260}});
    component.offer =
        Offer{.pack = 200, .price = Money{350}, .slots = {shopping_of(0), shopping_of(4)}, .keeps_days = 2};
    const Outcome outcome = solved(component);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0, 0});
    CHECK(outcome.decisions.packs == std::vector<int>{1, 1});  // and what is there is kept for day 5
    CHECK(outcome.spent.minor == 700);
    CHECK(outcome.tossed.minor == 88);  // 50 of the first pack go off on day 2
    CHECK(outcome.kept.minor == 40);    // all of the second is used, as it would go off on day 6
}

TEST_CASE("one pack on the earlier day that serves both beats two as late as they can be") {
    Component component = week({}, {{dinner_of(1), 100}, {dinner_of(5), 100}});
    component.offer = Offer{.pack = 200, .price = Money{350}, .slots = {shopping_of(0), shopping_of(4)}};
    const Outcome outcome = solved(component);
    CHECK(outcome.decisions.packs == std::vector<int>{1, 0});
    CHECK(outcome.spent.minor == 350);
}

TEST_CASE("lunch of a shopping day comes before the shopping") {
    Component component = week({}, {{lunch_of(2), 100}, {dinner_of(2), 100}});
    component.offer = Offer{.pack = 100, .price = Money{10}, .slots = {shopping_of(2)}};
    CHECK(solved(component).unmet == std::vector<std::int64_t>{100, 0});
    CHECK(solved(component).spent.minor == 10);
}

TEST_CASE("a bought pack that is opened and goes off is bought once more") {
    Component component = week({}, {{dinner_of(1), 100}, {dinner_of(6), 100}});
    component.offer =
        Offer{.pack = 500, .price = Money{40}, .slots = {shopping_of(0)}, .keeps_days = 20, .opened_days = 3};
    const Outcome outcome = solved(component);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0, 0});
    CHECK(outcome.decisions.packs == std::vector<int>{2});
    auto opened = outcome.decisions.bought_opened_day;
    std::sort(opened.begin(), opened.end());
    CHECK(opened == std::vector<int>{1, 6});
    CHECK(outcome.spent.minor == 80);
    CHECK(outcome.tossed.minor == 32);  // the one opened on day 6 still keeps
}

TEST_CASE("an earlier day's want comes before a later day's, however much larger") {
    // Opened on day 0 the jar is gone by day 4; left shut it would have met far more.
    const Component component = week({{.amount = 900, .price = Money{900}, .last = dinner_of(20), .opened_days = 1}},
                                     {{dinner_of(0), 1}, {dinner_of(4), 900}});
    const Outcome outcome = solved(component);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0, 900});
    CHECK(outcome.value(component).unmet == std::vector<std::int64_t>{0, 0, 0, 0, 900, 0, 0});
    CHECK(outcome.tossed.minor == 899);
}

TEST_CASE("stock is kept for what cannot be bought, where a purchase can stand in for it before") {
    // What is bought keeps only for its day; what is there keeps longer.
    Component component = week({{.amount = 100, .price = Money{100}}}, {{dinner_of(0), 100}, {dinner_of(3), 100}});
    component.offer = Offer{.pack = 100, .price = Money{120}, .slots = {shopping_of(0)}, .keeps_days = 0};
    const Outcome outcome = solved(component);
    CHECK(outcome.unmet == std::vector<std::int64_t>{0, 0});
    CHECK(outcome.spent.minor == 120);
}

TEST_CASE("nothing is bought to save what is tossed anyway") {
    Component component = week({{.amount = 10, .price = Money{1000}, .last = dinner_of(1)}}, {});
    component.offer = Offer{.pack = 100, .price = Money{1}, .slots = {shopping_of(0)}};
    const Outcome outcome = solved(component);
    CHECK(outcome.tossed.minor == 1000);
    CHECK(outcome.spent.minor == 0);
    CHECK(outcome.fates.size() == 1);
}

TEST_CASE("the price of what is tossed is rounded by unit, half to even") {
    const Component component = week({{.amount = 3, .price = Money{100}, .last = dinner_of(1)},
                                      {.amount = 2, .price = Money{5}, .last = dinner_of(2)}},
                                     {{dinner_of(0), 1}, {dinner_of(2), 1}});
    const Outcome outcome = solved(component);
    CHECK(outcome.tossed.minor == 67 + 2);
    CHECK(total(outcome.unmet) == 0);
}

TEST_CASE("an outcome that does not add up is found out") {
    const Component component = week({tray(500)}, {{dinner_of(3), 300'000}});
    const Outcome sound = solved(component);
    const auto reason = [&](auto spoil) {
        Outcome outcome = sound;
        spoil(outcome);
        return check(component, outcome).value_or("sound");
    };
    CHECK(reason([](Outcome& o) { o.uses[0].amount = 0; }) == "a use of nothing");
    CHECK(reason([](Outcome& o) { o.fates[0].to = lunch_of(3); }) == "a use outside the time of what is used");
    CHECK(reason([](Outcome& o) { o.unmet[0] = 1; }) == "a want is not accounted for");
    CHECK(reason([](Outcome& o) { o.fates[0].used = 1; }) == "a unit is not accounted for");
    CHECK(reason([](Outcome& o) { o.fates[0].bought = true; }) == "a part pack was bought");
    CHECK(reason([](Outcome& o) { o.decisions.ready_day[0] = 0; }) == "sound");
    Component block = component;
    block.units[0].cold_water = false;
    Outcome sooner = sound;
    sooner.decisions.ready_day[0] = 0;
    CHECK(check(block, sooner) == "a unit is thawed sooner than it can be");
}

TEST_CASE("sixteen trays that are nearly alike, for three dinners, are decided as well as two exchanges can tell") {
    // An integer programme takes minutes over these: many ways come to nearly the same.
    std::vector<Unit> trays;
    for (const std::int64_t grams : {505, 512, 498, 523, 487, 501, 516, 494, 508, 530, 489, 502, 511, 497, 506, 492})
        trays.push_back(tray(grams));
    const Component component =
        week(trays, {{dinner_of(1), 574'000}, {dinner_of(4), 1'134'000}, {dinner_of(6), 399'000}}, 9);
    const Outcome outcome = best(component);
    CHECK(check(component, outcome) == std::nullopt);
    CHECK(total(outcome.unmet) == 0);
    // Two, three and one tray at least, and the six lightest are enough; every line of money is rounded.
    const auto thawed =
        std::count_if(outcome.fates.begin(), outcome.fates.end(), [](const Fate& fate) { return fate.from != never; });
    CHECK(thawed == 6);
    CHECK(outcome.tossed <= Money{487 + 489 + 492 + 494 + 497 + 498 - 574 - 1134 - 399 + 3});
    CHECK(outcome.tossed >= Money{487 + 489 + 492 + 494 + 497 + 498 - 574 - 1134 - 399 - 3});
}
