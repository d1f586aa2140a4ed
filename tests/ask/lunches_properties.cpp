// The lunches against every plan that there is, in small kitchens, and what is so in all of them.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <tuple>

#include "ask/lunches.hpp"
#include "flow/findings.hpp"
#include "support/lunches_judge.hpp"
#include "support/lunches_world.hpp"

using namespace samebase;
using basics::days;

namespace {

ask::LunchesAnswer answer_of(const tests::LunchWorld& world, int effort = 20) {
    auto answer = ask::ask_lunches(world.kitchen, world.today, {.days = world.days, .effort = effort});
    REQUIRE(answer);
    return std::move(*answer);
}

}  // namespace

TEST_CASE("lunches of small kitchens are worth what the best of all plans is worth") {
    int tried = 0;
    int with_larger = 0;
    int with_cooked = 0;
    int with_packs = 0;
    int proved = 0;
    for (std::uint64_t number = 0; tried < 400; ++number) {
        const auto world = tests::random_lunch_world(number);
        const tests::LunchJudge judge(world.kitchen, world.today, world.days);
        const auto best = judge.best_of_all(20'000);
        if (!best) continue;
        ++tried;
        INFO("kitchen " << number);
        const auto answer = answer_of(world);
        REQUIRE(answer.lunches.size() == judge.open().size());
        const auto lunches = judge.choices_of(answer);
        const auto judged = judge.judge(lunches);
        for (const auto& fault : judged.faults) FAIL_CHECK(fault);
        CHECK(judged.value >= *best - 0.1);
        CHECK(judged.value <= *best + 0.1);
        // The lines are rounded, each by half a unit at most.
        CHECK(std::abs(static_cast<double>(answer.value.minor) - judged.value) <=
              0.5 * static_cast<double>(answer.because.size()) + 0.1);
        CHECK(static_cast<double>(answer.bound.minor) >= *best - 0.5 * static_cast<double>(answer.because.size()) - 1);
        proved += answer.proved_best ? 1 : 0;
        for (const auto& lunch : lunches) {
            with_larger += lunch.kind == ask::LunchKind::larger ? 1 : 0;
            with_cooked += lunch.kind == ask::LunchKind::cooked ? 1 : 0;
            with_packs += lunch.kind == ask::LunchKind::frozen_pack ? 1 : 0;
        }
    }
    // The kitchens are such that each of these matters.
    INFO(with_larger << " larger, " << with_cooked << " cooked, " << with_packs << " from packs, " << proved
                     << " proved");
    CHECK(with_larger > 10);
    CHECK(with_cooked > 50);
    CHECK(with_packs > 10);
    CHECK(proved == tried);
}

TEST_CASE("no lunch is a leftover past its day, is avoided by its eater, or is eaten twice") {
    for (std::uint64_t number = 5000; number < 5200; ++number) {
        const auto world = tests::random_lunch_world(number);
        const auto answer = answer_of(world, 5);
        INFO("kitchen " << number);
        const tests::LunchJudge judge(world.kitchen, world.today, world.days);
        for (const auto& fault : judge.judge(judge.choices_of(answer)).faults) FAIL_CHECK(fault);
        std::map<stock::LotNumber, std::int64_t> eaten;
        for (const ask::Lunch& lunch : answer.lunches) {
            if (lunch.use_by) CHECK(lunch.day <= *lunch.use_by);
            if (lunch.kind == ask::LunchKind::leftover && lunch.from_lot > 0) eaten[lunch.from_lot] += 1000;
            if (!lunch.dish || lunch.kind == ask::LunchKind::cooked) continue;
            const auto& person = world.kitchen.household.people[lunch.person];
            const auto holds = cookbook::allergens(world.kitchen.cookbook()[*lunch.dish], world.kitchen.catalogue());
            CHECK(holds.shared_with(person.avoids).empty());
        }
        for (const auto& [lot, amount] : eaten) CHECK(amount <= world.kitchen.lot(lot)->amount.value());
    }
}

TEST_CASE("with more leftovers the lunches are worth no less") {
    // The same again of a leftover, at the same price, that no planned dinner makes: what is kept from the bin counts
    // for the lunches, and what stays uneaten does not count against them.
    int tried = 0;
    int worth_more = 0;
    for (std::uint64_t number = 6000; number < 7200; ++number) {
        auto world = tests::random_lunch_world(number);
        kitchen::Kitchen& kitchen = world.kitchen;
        const auto made = [&](catalogue::IngredientId id) {
            return std::any_of(kitchen.plan.begin(), kitchen.plan.end(),
                               [&](const auto& row) { return kitchen.cookbook()[row.dish].leaves == id; });
        };
        const auto leftover = std::find_if(kitchen.lots.begin(), kitchen.lots.end(), [&](const stock::Lot& lot) {
            return kitchen.catalogue()[lot.ingredient].in_serves && lot.state == stock::State::fresh &&
                   lot.packs.empty() && !made(lot.ingredient);
        });
        if (leftover == kitchen.lots.end()) continue;
        const auto id = leftover->ingredient;
        for (stock::Lot& lot : kitchen.lots) {
            if (lot.ingredient != id) continue;
            lot.paid = basics::Money{3 * lot.amount.value() / 10};
            lot.paid_for = lot.amount.value();
        }
        const auto before = answer_of(world);
        stock::Lot more = *leftover;
        more.number = kitchen.lots.back().number + 1;
        kitchen.lots.push_back(more);
        const auto after = answer_of(world);
        if (!before.proved_best || !after.proved_best) continue;
        ++tried;
        INFO("kitchen " << number);
        CHECK(after.value.minor + 1 >= before.value.minor);
        worth_more += after.value > before.value ? 1 : 0;
    }
    CHECK(tried > 50);
    CHECK(worth_more > 5);
}

TEST_CASE("the same kitchen gives the same lunches, to the byte") {
    for (std::uint64_t number = 7000; number < 7020; ++number) {
        const auto world = tests::random_lunch_world(number);
        const auto once = answer_of(world);
        const auto again = answer_of(world);
        REQUIRE(once.lunches.size() == again.lunches.size());
        for (std::size_t i = 0; i < once.lunches.size(); ++i) {
            CHECK(once.lunches[i].kind == again.lunches[i].kind);
            CHECK(once.lunches[i].dish == again.lunches[i].dish);
            CHECK(once.lunches[i].from_lot == again.lunches[i].from_lot);
        }
        CHECK(once.value == again.value);
        CHECK(once.bound == again.bound);
        CHECK(once.rows == again.rows);
    }
}

TEST_CASE("lunches that are written leave the balance short of nothing more, and nothing open but what is bought") {
    int written = 0;
    for (std::uint64_t number = 2000; number < 2150; ++number) {
        auto world = tests::random_lunch_world(number);
        INFO("kitchen " << number);
        const auto answer = answer_of(world, 2);
        const basics::Span span{world.today, answer.horizon};
        const auto short_of = [&] {
            const flow::Balancer balancer(world.kitchen, span);
            std::vector<std::pair<std::string, std::int64_t>> list;
            for (const auto& finding : flow::findings(world.kitchen, balancer.balance(balancer.planned()))) {
                if (finding.kind == flow::Finding::Kind::short_of || finding.kind == flow::Finding::Kind::not_thawed)
                    list.emplace_back(basics::iso(finding.day) + world.kitchen.catalogue()[finding.ingredient].id,
                                      finding.amount);
            }
            return list;
        };
        const auto sum = [](const auto& list) {
            std::int64_t total = 0;
            for (const auto& [what, amount] : list) total += amount;
            return total;
        };
        const auto before = short_of();
        std::erase_if(world.kitchen.plan, [&](const auto& row) { return answer.span.contains(row.day); });
        for (const auto& row : answer.rows) world.kitchen.plan.push_back(row);
        std::sort(world.kitchen.plan.begin(), world.kitchen.plan.end(), [](const auto& a, const auto& b) {
            return std::tie(a.day, a.meal, a.dish) < std::tie(b.day, b.meal, b.dish);
        });
        REQUIRE_FALSE(world.kitchen.check().has_value());
        CHECK(sum(short_of()) <= sum(before));
        const auto again = answer_of(world, 2);
        const auto bought = std::count_if(answer.lunches.begin(), answer.lunches.end(),
                                          [](const auto& lunch) { return lunch.kind == ask::LunchKind::bought; });
        written += static_cast<int>(answer.lunches.size()) - static_cast<int>(bought);
        CHECK(static_cast<std::ptrdiff_t>(again.lunches.size()) == bought);
    }
    CHECK(written > 100);
}
