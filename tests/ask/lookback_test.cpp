// Looking back on the demo kitchen, and the price book.
#include "ask/lookback.hpp"

#include <algorithm>

#include "ask/prices.hpp"
#include "support/demo.hpp"

using namespace samebase;
using basics::days;
using kitchen::Meal;
using tests::demo;
using tests::demo_day;
using tests::dish;
using tests::thing;

namespace {

constexpr std::int64_t kilogram = 1'000'000;

kitchen::Kitchen without_past() {
    kitchen::Kitchen kitchen = demo();
    kitchen.history.clear();
    kitchen.plan.clear();
    return kitchen;
}

kitchen::Gone gone(basics::Day day, std::string_view id, std::int64_t amount, std::string reason) {
    kitchen::Gone one{day, {}, amount, std::move(reason)};
    one.lot.ingredient = thing(id);
    return one;
}

basics::Span year(basics::Day last) {
    return {last - days{364}, last};
}

}  // namespace

TEST_CASE("not had for a while: what was had twice first, then what was had longest ago, and nothing that is planned") {
    kitchen::Kitchen kitchen = without_past();
    const auto had = [&](int ago, std::string_view id) {
        kitchen.history.push_back({demo_day - days{ago}, Meal::dinner, dish(id)});
    };
    had(400, "roast-lamb-leg");
    had(300, "beef-stew");
    had(200, "rissoles");
    had(100, "beef-stew");
    had(90, "rissoles");
    had(80, "spaghetti-bolognese");
    had(10, "meat-loaf");
    kitchen.plan.push_back({demo_day + days{1}, Meal::dinner, dish("spaghetti-bolognese"), false, {}, 0, {}});
    const auto answer = ask::ask_lookback(kitchen, {}, demo_day, year(demo_day));
    std::vector<cookbook::DishId> dishes;
    for (const auto& one : answer.dishes) dishes.push_back(std::get<cookbook::DishId>(one.what));
    CHECK(dishes == std::vector{dish("beef-stew"), dish("rissoles"), dish("roast-lamb-leg")});
    CHECK(answer.dinners == 6);
    REQUIRE(answer.most.size() == 4);
    CHECK(answer.most.front().times == 2);
    CHECK(std::get<cookbook::DishId>(answer.most.front().what) == dish("rissoles"));
}

TEST_CASE("months hold what was spent and tossed in them, and add up") {
    const kitchen::Kitchen kitchen = without_past();
    kitchen::Past past;
    past.bought.push_back({*basics::read_iso_day("2026-10-31"), thing("beef-mince"), kilogram, basics::Money{1300}});
    past.bought.push_back({*basics::read_iso_day("2026-11-01"), thing("beef-mince"), kilogram, {}});
    past.bought.push_back({*basics::read_iso_day("2020-01-01"), thing("beef-mince"), kilogram, basics::Money{5}});
    past.tossed.push_back(gone(*basics::read_iso_day("2026-11-02"), "beef-mince", kilogram / 2, "smelt off"));
    past.tossed.push_back(gone(*basics::read_iso_day("2026-11-03"), "milk", kilogram, ""));
    const auto answer = ask::ask_lookback(kitchen, past, demo_day, year(demo_day));
    CHECK(answer.spent == basics::Money{1300 + 1290});
    CHECK(answer.estimated == basics::Money{1290});
    CHECK(answer.months.size() == 13);
    basics::Money spent;
    basics::Money tossed;
    for (const auto& month : answer.months) {
        spent += month.spent;
        tossed += month.tossed;
    }
    CHECK(spent == answer.spent);
    CHECK(tossed == answer.tossed);
    REQUIRE(answer.tossed_for.size() == 2);
    CHECK(answer.tossed_for.front().reason == "smelt off");
    CHECK(answer.tossed_for.front().money == basics::Money{645});
    const auto long_ago = ask::ask_lookback(kitchen, past, demo_day, {*basics::read_iso_day("2019-06-01"), demo_day});
    CHECK(long_ago.by_year);
    CHECK(long_ago.months.size() == 8);
    CHECK(long_ago.spent == basics::Money{1300 + 1290 + 5});
}

TEST_CASE("saved: lunches at home against bought ones, and what was eaten on its last days") {
    kitchen::Kitchen kitchen = without_past();
    const basics::Day monday = *basics::read_iso_day("2026-11-23");
    kitchen.history.push_back({monday, Meal::lunch, dish("tuna-melts-with-celery")});
    kitchen::Past past;
    past.used.push_back(gone(monday, "beef-mince", kilogram, ""));
    past.used.back().lot.use_by = monday + days{1};
    past.used.push_back(gone(monday, "beef-mince", kilogram, ""));
    past.used.back().lot.use_by = monday + days{2};
    const auto answer = ask::ask_lookback(kitchen, past, demo_day, year(demo_day));
    const auto eaters = static_cast<int>(kitchen::eaters(kitchen, monday, Meal::lunch).size());
    CHECK(eaters > 0);
    CHECK(answer.saved.lunches == eaters);
    const auto cost = kitchen::cost_per_serve(kitchen, dish("tuna-melts-with-celery"));
    CHECK(answer.saved.lunches_by.minor == eaters * (kitchen.household.worths.bought_lunch - cost).minor);
    CHECK(answer.saved.rescued == basics::Money{1290});
}

TEST_CASE("when we last had it: a dish, a family of it, newest first") {
    kitchen::Kitchen kitchen = without_past();
    kitchen.history.push_back({demo_day - days{30}, Meal::dinner, dish("rissoles")});
    kitchen.history.push_back({demo_day - days{20}, Meal::dinner, dish("roast-lamb-leg")});
    kitchen.history.push_back({demo_day - days{10}, Meal::dinner, dish("spaghetti-bolognese")});
    kitchen.plan.push_back({demo_day + days{3}, Meal::dinner, dish("rissoles"), false, {}, 0, {}});
    const auto mince = ask::ask_when(kitchen, demo_day, ask::AnyOf{"beef mince", {thing("beef-mince")}});
    REQUIRE(mince.had.size() == 2);
    CHECK(mince.had.front().dish == dish("spaghetti-bolognese"));
    CHECK(mince.planned == std::vector{demo_day + days{3}});
    const auto one = ask::ask_when(kitchen, demo_day, dish("roast-lamb-leg"));
    CHECK(one.had.size() == 1);
    CHECK(one.planned.empty());
}

TEST_CASE("the price book: usual, lowest and last are of prices that were paid or said, not of shares") {
    using kitchen::PriceFrom;
    const basics::Day day = demo_day;
    kitchen::Past past;
    const auto seen = [&](int ago, std::int64_t amount, std::int64_t minor, PriceFrom from) {
        past.prices.push_back({day - days{ago}, thing("milk"), amount, {minor}, from});
    };
    seen(50, 3 * kilogram, 450, PriceFrom::paid);
    seen(40, 2 * kilogram, 200, PriceFrom::share);
    seen(30, 3 * kilogram, 480, PriceFrom::paid);
    seen(20, 2 * kilogram, 280, PriceFrom::said);
    const auto book = ask::ask_prices(demo(), past, {});
    REQUIRE(book.size() == 1);
    const ask::ThingPrices& milk = book.front();
    CHECK(milk.unit == measure::Amount{measure::Dimension::volume, kilogram});
    CHECK(milk.usual == basics::Money{150});
    CHECK(milk.last == ask::UnitPrice{day - days{20}, {140}});
    CHECK(milk.lowest == ask::UnitPrice{day - days{20}, {140}});
    CHECK(milk.seen.front().day == day - days{20});
    CHECK(milk.house == basics::Money{152});
    const auto guide_only = ask::ask_prices(demo(), past, {thing("butter")});
    REQUIRE(guide_only.size() == 1);
    CHECK_FALSE(guide_only.front().last);
    CHECK(guide_only.front().guide);
}
