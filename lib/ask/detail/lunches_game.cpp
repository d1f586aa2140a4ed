#include "ask/detail/lunches_game.hpp"

#include <algorithm>
#include <cmath>

#include "ask/detail/lunches_seats.hpp"
#include "ask/detail/lunches_sources.hpp"
#include "ask/detail/lunches_stock.hpp"
#include "basics/ranges.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using catalogue::Keep;
using cookbook::DishId;
using kitchen::Meal;

constexpr std::int64_t thousandths = 1000;
/// Where the catalogue knows no keeping time of a leftover, and never more than three days: the stricter guess.
constexpr int days_unknown = 2;
constexpr int most_days = 3;
/// Beyond so many days a balance of a full kitchen takes minutes to prove: two by the rule are compared.
constexpr int longest_exact = 14;

/// Those at home whom no planned lunch serves.
void open_slots(LunchGame& game) {
    for (const basics::Day day : basics::days_of(game.span)) {
        for (const std::size_t person : kitchen::eaters(*game.kitchen, day, Meal::lunch)) {
            const bool served = std::any_of(game.standing.begin(), game.standing.end(), [&](const LunchStanding& seat) {
                return seat.day == day && seat.person == person;
            });
            if (!served) game.slots.push_back({day, person, {}});
        }
    }
}

}  // namespace

std::int64_t LunchThing::there_at(int time) const {
    std::int64_t sum = 0;
    for (const LunchBatch& batch : batches)
        sum += (batch.when >> static_cast<unsigned>(time) & 1U) != 0 ? batch.amount : 0;
    return sum;
}

std::int64_t LunchThing::packs_for(std::int64_t lacks) const {
    return (plan_buys + lacks + pack - 1) / pack - (plan_buys + pack - 1) / pack;
}

int LunchGame::keeps_days(IngredientId id) const {
    const auto& keeping = kitchen->catalogue()[id].keeps[static_cast<std::size_t>(Keep::fridge)];
    return std::min(most_days, keeping.said == catalogue::Keeping::Said::time ? keeping.time.days : days_unknown);
}

std::int64_t LunchThing::bought_with(std::int64_t packs) const {
    return ((plan_buys + pack - 1) / pack + packs) * pack - plan_buys;
}

std::int64_t LunchGame::again_cost(const LunchOption& a, const LunchOption& b) const {
    if (a.source < 0 || b.source < 0) return 0;
    const DishId dish = sources[static_cast<std::size_t>(a.source)].dish;
    if (dish != sources[static_cast<std::size_t>(b.source)].dish) return 0;
    const std::int64_t gap = kitchen->cookbook()[dish].gap;
    const auto apart =
        std::abs((slots[static_cast<std::size_t>(a.slot)].day - slots[static_cast<std::size_t>(b.slot)].day).count());
    return apart < gap ? again * (gap - apart) / gap : 0;
}

std::unique_ptr<LunchGame> lunch_game(const kitchen::Kitchen& kitchen, basics::Day today, basics::Span span) {
    auto game = std::make_unique<LunchGame>();
    game->kitchen = &kitchen;
    game->today = today;
    game->span = span;
    game->horizon = std::max(flow::horizon(kitchen, today), span.last);
    game->times = 2 * span.length();
    if (const auto shopping = kitchen::shopping_day(kitchen.household, today))
        game->buys_from = game->lunch_time(*shopping) + 1;
    const auto& worths = kitchen.household.worths;
    game->bought = thousandths * worths.bought_lunch.minor;
    game->minute = thousandths * worths.minute.minor;
    game->again = thousandths * worths.had_lately.minor /
                  std::max<std::int64_t>(1, static_cast<std::int64_t>(kitchen.household.people.size()));
    const LunchTable table(kitchen);
    game->standing = table.standing(span);
    open_slots(*game);
    const auto effort = span.length() > longest_exact ? flow::Effort::quick : flow::Effort::exact;
    game->balancer = std::make_unique<flow::Balancer>(kitchen, basics::Span{today, game->horizon}, effort);
    game->before = game->balancer->balance(game->balancer->planned());
    take_stock(*game, table);
    find_sources(*game, table);
    return game;
}

}  // namespace samebase::ask::detail
