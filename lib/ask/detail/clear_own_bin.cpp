#include "ask/detail/clear_own_bin.hpp"

#include <algorithm>
#include <utility>

#include "ask/detail/clear_search.hpp"
#include "basics/exact.hpp"
#include "menu/supply.hpp"

namespace samebase::ask::detail {

namespace {

using basics::Money;

constexpr std::int64_t thousandths = 1000;

/// What the plan that stands leaves of a thing; more can be bought on the first day.
menu::Item left_of(const flow::Balancer& balancer, const flow::Balance& before, catalogue::IngredientId id) {
    const flow::Part* part = before.part(id);
    menu::Item item = menu::left_by_wants(part != nullptr ? part->component : balancer.stock(id), 0);
    if (item.offer) item.offer->slots.insert(item.offer->slots.begin(), flow::lunch_of(0));
    return item;
}

}  // namespace

ClearOwnBin::ClearOwnBin(const ClearGame& game, basics::Day today)
    : game_(game),
      balancer_(game.bare, {today, game.horizon}, flow::Effort::quick),
      before_(balancer_.balance(game.standing)) {}

Money ClearOwnBin::of(const ClearPlan& plan) {
    ClearValue value(game_);
    value.set(plan);
    std::vector<flow::Cooking> cookings = game_.standing;
    std::vector<catalogue::IngredientId> bought;
    Money saved;
    for (const int o : plan) {
        if (o < 0) continue;
        const ClearOption& option = game_.options[static_cast<std::size_t>(o)];
        cookings.push_back(game_.details[static_cast<std::size_t>(option.detail)].cooking);
        for (const ClearNeed& need : option.needs) {
            const ClearThing& of = game_.things[static_cast<std::size_t>(need.thing)];
            if (value.tally(need.thing).packs > 0) bought.push_back(of.ingredient);
        }
    }
    for (std::size_t t = 0; t < game_.things.size(); ++t) {
        const ClearThing& of = game_.things[t];
        if (of.danger > 0)
            saved += basics::share_of(of.danger_price, value.tally(static_cast<int>(t)).saved, of.danger);
    }
    std::sort(bought.begin(), bought.end());
    bought.erase(std::unique(bought.begin(), bought.end()), bought.end());
    const flow::Balance after = balancer_.rebalance(before_, std::move(cookings), bought, &memory_);
    return std::max(Money{}, after.totals.tossed - before_.totals.tossed + saved);
}

std::vector<std::int64_t> ClearOwnBin::alone() const {
    std::vector<menu::Item> items;
    std::vector<std::int64_t> before;
    menu::Supply supply;
    for (const ClearThing& thing : game_.things) {
        items.push_back(left_of(balancer_, before_, thing.ingredient));
        before.push_back(supply.run(items.back(), {}).tossed);
    }
    std::vector<std::int64_t> result;
    for (const ClearOption& option : game_.options) {
        const flow::Slot time = game_.meals[static_cast<std::size_t>(option.meal)].slot;
        std::int64_t own = 0;
        for (const ClearNeed& need : option.needs) {
            const auto at = static_cast<std::size_t>(need.thing);
            const ClearThing& of = game_.things[at];
            const flow::Want want{time, need.amount};
            const std::int64_t tossed = supply.run(items[at], {&want, 1}).tossed;
            const std::int64_t eaten = std::min(need.amount, danger_at(of, option.meal));
            const std::int64_t saved =
                of.danger > 0 ? basics::fits(basics::scale(thousandths * of.danger_price.minor, eaten, of.danger)) : 0;
            own += std::max<std::int64_t>(0, tossed - before[at] + saved);
        }
        result.push_back(own);
    }
    return result;
}

ClearPlan clear_that_opens_little(const ClearGame& game, const ClearOwnBin& own_bin, const ClearPlan& start,
                                  std::int64_t moves, const menu::Look& look) {
    ClearGame dearer = game;
    const std::vector<std::int64_t> alone = own_bin.alone();
    for (std::size_t o = 0; o < alone.size(); ++o) dearer.options[o].fixed -= alone[o];
    return clear_polished(dearer, clear_by_annealing(dearer, start, clear_options_alone(dearer), moves, look));
}

ClearPlan clear_with_own_bin(const ClearGame& game, ClearOwnBin& own_bin, const ClearPlan& start, int balances,
                             const menu::Look& look) {
    const auto sum = [&](const ClearPlan& plan) { return value_of(game, plan) - thousandths * own_bin.of(plan).minor; };
    ClearValue value(game);
    value.set(start);
    std::int64_t best = sum(start);
    for (bool better = true; better && balances > 0;) {
        better = false;
        for (std::size_t m = 0; m < game.meals.size() && balances > 0; ++m) {
            if (look && !look(best)) return value.plan();
            // No plan is worth more than without what it sends to the bin: only these can be better.
            std::vector<std::pair<std::int64_t, int>> hopeful;
            for (const int option : game.meals[m].options) {
                if (value.clashes(option)) continue;
                const std::int64_t with = value.with(static_cast<int>(m), option);
                if (with > best) hopeful.emplace_back(-with, option);
            }
            std::sort(hopeful.begin(), hopeful.end());
            for (const auto& [minus, option] : hopeful) {
                if (-minus <= best || balances == 0) break;
                ClearPlan plan = value.plan();
                if (plan[m] == option) continue;
                plan[m] = option;
                --balances;
                const std::int64_t now = sum(plan);
                if (now <= best) continue;
                best = now;
                value.set(static_cast<int>(m), option);
                better = true;
            }
        }
    }
    return value.plan();
}

}  // namespace samebase::ask::detail
