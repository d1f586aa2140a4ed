#include <algorithm>
#include <catch2/catch.hpp>

#include "ask/balance.hpp"
#include "ask/swap.hpp"
#include "support/demo.hpp"
#include "support/law.hpp"

namespace {

using namespace samebase;
using tests::demo;
using tests::demo_day;

/// The demo kitchen with some lots gone, some dinners exchanged for others, and some dates nearer.
kitchen::Kitchen any_kitchen() {
    kitchen::Kitchen kitchen = demo();
    std::erase_if(kitchen.lots, [](const stock::Lot&) { return *rc::gen::inRange(0, 6) == 0; });
    for (stock::Lot& lot : kitchen.lots) {
        if (lot.use_by && *rc::gen::inRange(0, 4) == 0) *lot.use_by -= basics::days{*rc::gen::inRange(0, 4)};
    }
    std::vector<cookbook::DishId> dinners;
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size(); ++i) {
        if (kitchen.cookbook()[cookbook::DishId{i}].dinner) dinners.emplace_back(i);
    }
    for (kitchen::Planned& row : kitchen.plan) {
        if (row.meal != kitchen::Meal::dinner || row.ready_meal || *rc::gen::inRange(0, 3) != 0) continue;
        row.dish = dinners[*rc::gen::inRange<std::size_t>(0, dinners.size())];
    }
    RC_PRE(!kitchen.check());
    return kitchen;
}

bool same_trouble(const flow::Finding& a, const flow::Finding& b) {
    if (a.kind != b.kind || a.ingredient != b.ingredient) return false;
    const bool wanted = a.kind == flow::Finding::Kind::short_of || a.kind == flow::Finding::Kind::not_thawed;
    if (!wanted) return a.lot == b.lot && a.place == b.place;
    return a.dish == b.dish && a.meal == b.meal && (a.dish || a.day == b.day);
}

/// The findings of the kitchen as it is once a mend is carried out.
std::vector<flow::Finding> findings_with(const kitchen::Kitchen& kitchen, basics::Span span, const ask::Mend& mend) {
    kitchen::Kitchen changed = kitchen;
    kitchen::apply(changed, mend.change);
    const flow::Balancer balancer(changed, span);
    return flow::findings(changed, balancer.balance(balancer.planned()));
}

}  // namespace

TEST_CASE("every row of a balance adds up, and rows follow on one another") {
    tests::holds(40, [] {
        const kitchen::Kitchen kitchen = any_kitchen();
        const flow::Balancer balancer(kitchen, {demo_day, demo_day + basics::days{*rc::gen::inRange(0, 20)}});
        const auto balance = balancer.balance(balancer.planned());
        const auto wrong = flow::check(balance, flow::ledger(kitchen, balance));
        if (wrong) RC_FAIL(*wrong);
    });
}

TEST_CASE("what the ledger opens with is the stock, lot by lot") {
    const kitchen::Kitchen& kitchen = demo();
    const flow::Balancer balancer(kitchen, {demo_day, demo_day + basics::days{3}});
    std::map<catalogue::IngredientId, std::int64_t> opening;
    for (const auto& row : flow::ledger(kitchen, balancer.balance(balancer.planned()))) {
        if (row.day == demo_day) opening[row.ingredient] = row.opening;
    }
    std::map<catalogue::IngredientId, std::int64_t> stock;
    for (const auto& lot : kitchen.lots) {
        if (!lot.rough && !kitchen.taken_as_there(lot.ingredient)) stock[lot.ingredient] += lot.amount.value();
    }
    for (const auto& lot : kitchen.lots) {
        if (lot.rough) stock.erase(lot.ingredient);
    }
    REQUIRE(stock.size() > 40);
    for (const auto& [id, amount] : stock) {
        INFO(kitchen.catalogue()[id].id);
        CHECK(opening[id] == amount);
    }
}

/// Of what goes to the bin, the lot's own at most halves; everything else is gone.
bool helped(const std::vector<flow::Finding>& left, const std::vector<flow::Finding>& all,
            const flow::Finding& finding) {
    if (finding.kind != flow::Finding::Kind::tossed)
        return std::none_of(left.begin(), left.end(), [&](const auto& f) { return same_trouble(f, finding); });
    const auto sum = [&](const std::vector<flow::Finding>& list) {
        std::int64_t minor = 0;
        for (const auto& f : list) minor += same_trouble(f, finding) ? f.price.minor : 0;
        return minor;
    };
    return 2 * (sum(all) - sum(left)) >= finding.price.minor;
}

/// And no dinner is given up for cents; what is frozen can be measured by hand.
void costs_no_more_than_it_saves(const flow::Finding& finding, const ask::Mend& mend) {
    using Kind = ask::Mend::Kind;
    constexpr basics::Money dollar{100};
    if (mend.kind == Kind::stand_in) RC_ASSERT(mend.net <= dollar);
    if (mend.kind == Kind::exchange_days || mend.kind == Kind::other_dish) RC_ASSERT(mend.net.minor <= 0);
    if (mend.kind == Kind::freeze) RC_ASSERT(mend.net.minor < 0);
    if (mend.displaces) RC_ASSERT(finding.price >= dollar);
    if (!mend.amount || mend.kind != Kind::freeze) return;
    const auto amount = mend.amount->value();
    const bool pieces = mend.amount->dimension() == measure::Dimension::pieces;
    RC_ASSERT(amount % (pieces ? 1000 : amount < 100'000 ? 5'000 : amount < 1'000'000 ? 10'000 : 50'000) == 0);
}

TEST_CASE("mends, carried out, remove their finding, or keep half of what would go to the bin") {
    int mended = 0;
    std::map<ask::Mend::Kind, int> kinds;
    tests::holds(40, [&] {
        const kitchen::Kitchen kitchen = any_kitchen();
        const basics::Span span{demo_day, demo_day + basics::days{7}};
        const auto answer = ask::ask_balance(kitchen, demo_day, span, 12);
        RC_ASSERT(answer.has_value());
        for (std::size_t i = 0; i < answer->findings.size(); ++i) {
            if (!answer->mends[i]) continue;
            ++mended;
            ++kinds[answer->mends[i]->kind];
            costs_no_more_than_it_saves(answer->findings[i], *answer->mends[i]);
            RC_ASSERT(helped(findings_with(kitchen, span, *answer->mends[i]), answer->findings, answer->findings[i]));
        }
    });
    CHECK(mended > 200);
    CHECK(kinds.size() >= 3);
}

TEST_CASE("days exchanged there and back leave the plan and its balance as they were") {
    tests::holds(12, [] {
        kitchen::Kitchen kitchen = any_kitchen();
        for (auto& person : kitchen.household.people) person.avoids = {};
        const kitchen::Plan plan = kitchen.plan;
        ask::SwapQuestion question;
        question.row.day = demo_day + basics::days{*rc::gen::inRange(0, 5)};
        question.other = question.row.day + basics::days{*rc::gen::inRange(1, 6)};
        const auto there = ask::ask_swap({kitchen, demo_day, 1000}, question);
        RC_ASSERT(there.has_value());
        kitchen::apply(kitchen, there->change);
        const auto back = ask::ask_swap({kitchen, demo_day, 1000}, question);
        RC_ASSERT(back.has_value());
        kitchen::apply(kitchen, back->change);
        RC_ASSERT(kitchen.plan == plan);
        RC_ASSERT(there->before == back->after);
        RC_ASSERT(there->after == back->before);
        RC_ASSERT(there->gone.size() == back->fresh.size());
        RC_ASSERT(there->fresh.size() == back->gone.size());
    });
}
