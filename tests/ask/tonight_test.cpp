// What is for dinner, what do I take out, what must be used? On the shipped demo kitchen.
#include "ask/tonight.hpp"

#include "support/demo.hpp"

using namespace samebase;
using tests::demo;
using tests::demo_day;
using tests::dish;
using tests::thing;

TEST_CASE("tonight's dinner, for those who are home") {
    const auto answer = ask::ask_tonight(demo(), demo_day);
    CHECK(answer.day == demo_day);
    REQUIRE(answer.dinner);
    CHECK(answer.dinner->dish == dish("spaghetti-bolognese"));
    CHECK_FALSE(answer.dinner->ready_meal);
    CHECK(answer.dinner->minutes == 60);
    CHECK(answer.dinner->serves_thousandths == kitchen::serves_wanted(demo(), demo_day, kitchen::Meal::dinner));
    // Odette's first week has lunches on weekdays from Wednesday on.
    CHECK(answer.eaters == std::vector<std::string>{"Alba", "Bram", "Ines", "Tovi"});
    CHECK(answer.lunches.empty());
    CHECK_FALSE(answer.standing_kind);
    CHECK(answer.shopping == basics::read_iso_day("2026-11-28"));
}

TEST_CASE("a lunch that is planned is told on its day") {
    const auto friday = demo_day + basics::days{2};
    const auto answer = ask::ask_tonight(demo(), friday);
    REQUIRE(answer.lunches.size() == 1);
    CHECK(answer.lunches.front().dish == dish("cheese-and-celery-sandwich"));
}

TEST_CASE("with nothing planned, the standing night says its kind, and nights without one say nothing") {
    kitchen::Kitchen kitchen = demo();
    kitchen.plan.clear();
    const auto friday = ask::ask_tonight(kitchen, demo_day + basics::days{2});
    CHECK_FALSE(friday.dinner);
    CHECK(friday.standing_kind == "pizza");
    CHECK_FALSE(ask::ask_tonight(kitchen, demo_day).standing_kind);
}

TEST_CASE("what must be used lies in danger of its day, soonest first, and no more of it than there is") {
    const auto answer = ask::ask_tonight(demo(), demo_day);
    REQUIRE_FALSE(answer.use_first.empty());
    for (std::size_t i = 0; i < answer.use_first.size(); ++i) {
        const auto& row = answer.use_first[i];
        const stock::Lot* lot = demo().lot(row.lot);
        REQUIRE(lot != nullptr);
        CHECK(lot->ingredient == row.ingredient);
        CHECK(row.amount.value() > 0);
        CHECK(row.amount.value() <= lot->amount.value());
        if (i > 0) CHECK(answer.use_first[i - 1].by <= row.by);
    }
}

TEST_CASE("nothing to take out is already out of the freezer, and each is out before it is wanted") {
    bool some = false;
    for (int i = 0; i < 7; ++i) {
        const auto today = demo_day + basics::days{i};
        for (const auto& move : ask::ask_tonight(demo(), today).take_out) {
            CHECK(move.day == today);
            CHECK(move.for_day >= today);
            CHECK(move.cook_by >= move.for_day);
            CHECK(demo().lot(move.lot)->state == stock::State::frozen);
            some = true;
        }
    }
    CHECK(some);
}

TEST_CASE("what is past its use-by is to be thrown out, and what is frozen is not") {
    kitchen::Kitchen kitchen = demo();
    stock::Lot& chicken =
        *std::find_if(kitchen.lots.begin(), kitchen.lots.end(), [](const auto& lot) { return lot.number == 81; });
    REQUIRE(chicken.use_by);
    const auto later = *chicken.use_by + basics::days{1};
    const auto answer = ask::ask_tonight(kitchen, later);
    const auto found =
        std::find_if(answer.past.begin(), answer.past.end(), [](const auto& row) { return row.lot == 81; });
    REQUIRE(found != answer.past.end());
    CHECK(found->amount == chicken.amount);
    CHECK(found->by == *chicken.use_by);
    CHECK(found->use_by);
    for (const auto& row : answer.past) CHECK(demo().lot(row.lot)->state != stock::State::frozen);
    const auto in_time = ask::ask_tonight(kitchen, *chicken.use_by);
    CHECK(std::none_of(in_time.past.begin(), in_time.past.end(), [](const auto& row) { return row.lot == 81; }));
}

TEST_CASE("a meal whose ingredient is gone is short of it before the next shopping day") {
    kitchen::Kitchen kitchen = demo();
    std::erase_if(kitchen.lots, [](const stock::Lot& lot) { return lot.ingredient == thing("beef-mince"); });
    const auto answer = ask::ask_tonight(kitchen, demo_day);
    const auto found = std::find_if(answer.short_of.begin(), answer.short_of.end(),
                                    [](const auto& row) { return row.ingredient == thing("beef-mince"); });
    REQUIRE(found != answer.short_of.end());
    CHECK(found->day == demo_day);
    CHECK(found->dish == dish("spaghetti-bolognese"));
    // 600 g for five, for Alba, Bram, Ines (1.25) and Tovi (0.85).
    CHECK(found->amount == measure::Amount{measure::Dimension::mass, 500'000});
}
