#include "ask/balance.hpp"

#include <catch2/catch.hpp>

#include "ask/swap.hpp"
#include "stock/room.hpp"
#include "support/demo.hpp"

namespace {

using namespace samebase;
using tests::demo;
using tests::demo_day;
using tests::thing;
using Kind = flow::Finding::Kind;
using MendKind = ask::Mend::Kind;

const basics::Span week{demo_day, demo_day + basics::days{7}};

cookbook::DishId dish(std::string_view id) {
    const auto found = demo().cookbook().dish(id);
    REQUIRE(found);
    return *found;
}

stock::Lot& lot_of(kitchen::Kitchen& kitchen, std::string_view id) {
    const auto found = std::find_if(kitchen.lots.begin(), kitchen.lots.end(),
                                    [&](const stock::Lot& lot) { return lot.ingredient == thing(id); });
    REQUIRE(found != kitchen.lots.end());
    return *found;
}

void plan_dinner(kitchen::Kitchen& kitchen, basics::Day day, std::string_view id) {
    const auto change = kitchen::set_meal({kitchen, demo_day, 1000}, {.day = day, .dish = dish(id), .serves = {}});
    REQUIRE(change);
    kitchen::apply(kitchen, *change);
}

ask::BalanceAnswer balanced(const kitchen::Kitchen& kitchen, basics::Span span = week) {
    auto answer = ask::ask_balance(kitchen, demo_day, span, 1000);
    REQUIRE(answer);
    REQUIRE(answer->mends.size() == answer->findings.size());
    return std::move(*answer);
}

/// The position of the first finding of that kind about that ingredient.
std::size_t find(const ask::BalanceAnswer& answer, Kind kind, std::string_view id) {
    const auto found = std::find_if(answer.findings.begin(), answer.findings.end(), [&](const flow::Finding& finding) {
        return finding.kind == kind && finding.ingredient == thing(id);
    });
    INFO(flow::name(kind) << " " << id);
    REQUIRE(found != answer.findings.end());
    return static_cast<std::size_t>(found - answer.findings.begin());
}

}  // namespace

TEST_CASE("what is past its use-by is found first, and is to be thrown out") {
    kitchen::Kitchen kitchen = demo();
    stock::Lot& lot = lot_of(kitchen, "goats-cheese");
    lot.use_by = demo_day - basics::days{1};
    const auto answer = balanced(kitchen);
    REQUIRE(find(answer, Kind::past_use_by, "goats-cheese") == 0);
    const flow::Finding& finding = answer.findings.front();
    CHECK(finding.lot == lot.number);
    CHECK(finding.amount == lot.amount.value());
    CHECK(finding.day == demo_day - basics::days{1});
    REQUIRE(answer.mends.front());
    CHECK(answer.mends.front()->kind == MendKind::discard);
    kitchen::apply(kitchen, answer.mends.front()->change);
    CHECK(kitchen.lot(finding.lot) == nullptr);
}

TEST_CASE("what keeps its quality only is past its best, and is looked at, not thrown out") {
    kitchen::Kitchen kitchen = demo();
    lot_of(kitchen, "spinach").best_by = demo_day - basics::days{1};
    const auto answer = balanced(kitchen);
    const auto at = find(answer, Kind::tossed, "spinach");
    CHECK_FALSE(answer.findings[at].use_by);
    CHECK(answer.findings[at].day == demo_day - basics::days{1});
}

TEST_CASE("a joint that would take two days to thaw is not thawed for tomorrow, and the dinner is mended") {
    // The lamb leg weighs 1.94 kg: 24 hours for every 1.8 kg in the fridge are two days.
    kitchen::Kitchen kitchen = demo();
    // Without what could stand in for it: another dish, or another day, has to do.
    const auto& graph = kitchen.graph();
    for (const auto& other :
         graph.stand_ins({thing("lamb-leg"), catalogue::Role::main}, graph.parameters().least_fit, {}))
        std::erase_if(kitchen.lots, [&](const auto& lot) { return lot.ingredient == other.use.front().first; });
    plan_dinner(kitchen, demo_day + basics::days{1}, "roast-lamb-leg");
    const auto answer = balanced(kitchen);
    const auto at = find(answer, Kind::not_thawed, "lamb-leg");
    const flow::Finding& finding = answer.findings[at];
    CHECK(finding.day == demo_day + basics::days{1});
    CHECK(finding.dish == dish("roast-lamb-leg"));
    for (std::size_t i = 0; i < at; ++i) CHECK(answer.findings[i].kind <= Kind::not_thawed);
    REQUIRE(answer.mends[at]);
    CHECK(answer.mends[at]->kind != MendKind::stand_in);
    CHECK_FALSE(answer.mends[at]->change.plan.empty());
    kitchen::apply(kitchen, answer.mends[at]->change);
    for (const auto& left : balanced(kitchen).findings)
        CHECK_FALSE((left.kind == Kind::not_thawed && left.ingredient == thing("lamb-leg")));
}

TEST_CASE("a fridge that is too small is found on its first day, with what takes most room") {
    kitchen::Kitchen kitchen = demo();
    for (stock::Place& place : kitchen.household.places) {
        if (place.kind == stock::PlaceKind::fridge) place.room_ml = 1000;
        if (place.kind == stock::PlaceKind::crisper) place.room_ml = 0;
    }
    const auto answer = balanced(kitchen);
    const auto found = std::find_if(answer.findings.begin(), answer.findings.end(),
                                    [](const flow::Finding& finding) { return finding.kind == Kind::no_room; });
    REQUIRE(found != answer.findings.end());
    CHECK(found->day == demo_day);
    CHECK(found->over_ml > 0);
    CHECK(found->place == kitchen::place_of(kitchen.household, {stock::PlaceKind::fridge}));
}

TEST_CASE("a freezer that is too small is mended by moving what takes most room to another") {
    kitchen::Kitchen kitchen = demo();
    const auto near = kitchen::place_of(kitchen.household, {stock::PlaceKind::near_freezer});
    REQUIRE(near);
    std::int64_t in_it = 0;
    std::int64_t lots = 0;
    for (const stock::Lot& lot : kitchen.lots) {
        if (lot.place != *near) continue;
        in_it += stock::room_taken(kitchen.catalogue()[lot.ingredient], lot.amount);
        ++lots;
    }
    kitchen.plan.clear();
    kitchen.household.standing_uses.clear();
    kitchen.household.places[near->index()].room_ml = in_it - 100;
    const auto answer = balanced(kitchen);
    const auto found = std::find_if(answer.findings.begin(), answer.findings.end(),
                                    [](const flow::Finding& finding) { return finding.kind == Kind::no_room; });
    REQUIRE(found != answer.findings.end());
    CHECK(found->place == near);
    CHECK(found->over_ml >= 100);
    CHECK(found->over_ml <= 100 + lots);  // the room of each pack is rounded up, above that of its whole lot
    const auto& mend = answer.mends[static_cast<std::size_t>(found - answer.findings.begin())];
    REQUIRE(mend);
    CHECK(mend->kind == MendKind::move);
    kitchen::apply(kitchen, mend->change);
    for (const auto& left : balanced(kitchen).findings) CHECK(left.kind != Kind::no_room);
}

TEST_CASE("a plan that eats what there is balances") {
    kitchen::Kitchen kitchen = demo();
    kitchen.plan.clear();
    kitchen.household.standing_uses.clear();
    std::erase_if(kitchen.lots, [](const stock::Lot& lot) { return lot.ingredient != thing("white-rice"); });
    CHECK(balanced(kitchen).findings.empty());
}

TEST_CASE("a span that has passed cannot be balanced, and days of it that have passed are left out") {
    const auto past = ask::ask_balance(demo(), demo_day, {demo_day - basics::days{9}, demo_day - basics::days{1}}, 0);
    REQUIRE_FALSE(past);
    CHECK(basics::to_text(past.error().front()) ==
          "balance: the span ends on 2026-11-24; expected a span that ends on 2026-11-25 or later");
    const auto answer = ask::ask_balance(demo(), demo_day, {demo_day - basics::days{9}, demo_day}, 0);
    REQUIRE(answer);
    CHECK(answer->span == basics::Span{demo_day, demo_day});
    for (const auto& row : answer->rows) CHECK(row.day == demo_day);
}

TEST_CASE("a swap to a dish that someone at the table must not have is refused") {
    kitchen::Kitchen kitchen = demo();
    // All five avoid what scrambled eggs are made of, and nothing without egg does its work.
    for (auto& person : kitchen.household.people) person.avoids.add(catalogue::Allergen::egg);
    ask::SwapQuestion question;
    question.row.day = demo_day + basics::days{1};
    int refused = 0;
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size(); ++i) {
        const cookbook::Dish& candidate = kitchen.cookbook()[cookbook::DishId{i}];
        if (!candidate.dinner) continue;
        question.row.dish = cookbook::DishId{i};
        const auto answer = ask::ask_swap({kitchen, demo_day, 1000}, question);
        if (answer) continue;
        ++refused;
        CHECK(answer.error().front().expected == "a dish that everyone at the table may have");
        CHECK(cookbook::allergens(candidate, kitchen.catalogue()).has(catalogue::Allergen::egg));
        if (refused == 3) break;
    }
    CHECK(refused == 3);
}

TEST_CASE("a swap to a dish that someone must not have as it is written plans what stands in, and says so") {
    // It was only said, and the pot was filled with what they avoid.
    kitchen::Kitchen kitchen = demo();
    for (auto& person : kitchen.household.people) person.avoids = {};
    kitchen.household.people.front().avoids.add(catalogue::Allergen::egg);
    kitchen.household.people.front().away.clear();
    ask::SwapQuestion question;
    question.row.day = demo_day;
    int replaced = 0;
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size() && replaced < 5; ++i) {
        const cookbook::Dish& candidate = kitchen.cookbook()[cookbook::DishId{i}];
        if (!candidate.dinner || !candidate.separate.empty()) continue;
        question.row.dish = cookbook::DishId{i};
        const auto answer = ask::ask_swap({kitchen, demo_day, 1000}, question);
        if (!answer || answer->change.plan.back().row.swaps.empty()) continue;
        ++replaced;
        INFO(candidate.id);
        CHECK(std::any_of(answer->cautions.begin(), answer->cautions.end(), [](const std::string& caution) {
            return caution.find("for everyone") != std::string::npos;
        }));
        for (const flow::Needed& need : flow::cook(kitchen, answer->change.plan.back().row).needs) {
            INFO(kitchen.catalogue()[need.ingredient].id);
            CHECK_FALSE(kitchen.catalogue()[need.ingredient].counted_allergens().has(catalogue::Allergen::egg));
        }
    }
    CHECK(replaced == 5);
}

TEST_CASE("meat that is bought to be eaten after its time is to be frozen, and that is said") {
    kitchen::Kitchen kitchen = demo();
    const auto beef = *kitchen.catalogue().ingredient("beef-mince");
    std::erase_if(kitchen.lots, [&](const stock::Lot& lot) { return lot.ingredient == beef; });
    kitchen.plan.clear();
    // Saturday is the only trip, and the dinner is on Thursday.
    plan_dinner(kitchen, demo_day + basics::days{8}, "rissoles");
    const auto answer = balanced(kitchen, {demo_day, demo_day + basics::days{9}});
    const auto found = std::find_if(answer.to_freeze.begin(), answer.to_freeze.end(),
                                    [&](const ask::ToFreeze& one) { return one.ingredient == beef; });
    REQUIRE(found != answer.to_freeze.end());
    CHECK(found->day == demo_day + basics::days{3});
    CHECK(found->eaten_on == demo_day + basics::days{8});
    CHECK(found->amount.value() > 0);
}

TEST_CASE("a ready meal that someone at the table avoids is refused") {
    kitchen::Kitchen kitchen = demo();
    ask::SwapQuestion question;
    question.row = {.day = demo_day, .dish = dish("chilli"), .ready_meal = true, .serves = {}};
    REQUIRE(ask::ask_swap({kitchen, demo_day, 1000}, question));
    const auto holds = cookbook::allergens(kitchen.cookbook()[dish("chilli")], kitchen.catalogue());
    REQUIRE_FALSE(holds.empty());
    kitchen.household.people.front().avoids.add(holds.members().front());
    CHECK_FALSE(ask::ask_swap({kitchen, demo_day, 1000}, question));
}
