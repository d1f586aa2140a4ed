#include "ask/detail/lunches_search.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "flow/hand_out.hpp"

namespace samebase::ask::detail {

namespace {

constexpr std::int64_t one_serve = 1000;

const LunchOption& option_of(const LunchGame& game, int option) {
    return game.options[static_cast<std::size_t>(option)];
}

/// The option of a slot with that source; below 0 where it has none.
int option_with(const LunchGame& game, int slot, int source) {
    for (const int option : game.slots[static_cast<std::size_t>(slot)].options) {
        if (option_of(game, option).source == source) return option;
    }
    return -1;
}

/// Slots of each day.
std::vector<std::vector<int>> by_day(const LunchGame& game) {
    std::map<basics::Day, std::vector<int>> days;
    for (std::size_t s = 0; s < game.slots.size(); ++s) days[game.slots[s].day].push_back(static_cast<int>(s));
    std::vector<std::vector<int>> result;
    result.reserve(days.size());
    for (auto& [day, slots] : days) result.push_back(std::move(slots));
    return result;
}

using Search = menu::Annealing<LunchValue>;
using Days = std::vector<std::vector<int>>;

void change_one(Search& search) {
    const std::size_t slot = search.any_place();
    const std::array<Search::Change, 1> change{{{static_cast<int>(slot), search.any_option(slot)}}};
    search.try_to(change);
}

/// All of a day who may have it get the same.
void change_day(const LunchGame& game, const Days& days, Search& search) {
    const auto& slots = days[search.dice().below(days.size())];
    const int first = slots[search.dice().below(slots.size())];
    const int source = option_of(game, search.any_option(static_cast<std::size_t>(first))).source;
    std::vector<Search::Change> changes;
    for (const int slot : slots) {
        const int option = option_with(game, slot, source);
        if (option >= 0) changes.emplace_back(slot, option);
    }
    search.try_to(changes);
}

/// Two people of one day change places.
void exchange_two(const LunchGame& game, const Days& days, Search& search) {
    const auto& slots = days[search.dice().below(days.size())];
    const int a = slots[search.dice().below(slots.size())];
    const int b = slots[search.dice().below(slots.size())];
    if (a == b) return;
    const auto now = [&](int slot) { return option_of(game, search.now(static_cast<std::size_t>(slot))).source; };
    const int to_a = option_with(game, a, now(b));
    const int to_b = option_with(game, b, now(a));
    if (to_a < 0 || to_b < 0) return;
    const std::array<Search::Change, 2> changes{{{a, to_a}, {b, to_b}}};
    search.try_to(changes);
}

}  // namespace

LunchPlan leftovers_handed_out(const LunchGame& game) {
    std::vector<int> serves;
    std::vector<flow::Suits> suits;
    std::vector<std::pair<const LunchThing*, const LunchBatch*>> batches;
    for (const LunchThing& thing : game.things) {
        for (const LunchBatch& batch : thing.batches) {
            if (batch.amount < one_serve || !game.kitchen->catalogue()[thing.ingredient].in_serves) continue;
            batches.emplace_back(&thing, &batch);
            serves.push_back(static_cast<int>(batch.amount / one_serve));
        }
    }
    for (std::size_t s = 0; s < game.slots.size(); ++s) {
        for (const int number : game.slots[s].options) {
            const LunchOption& option = option_of(game, number);
            if (option.source < 0) continue;
            const LunchSource& source = game.sources[static_cast<std::size_t>(option.source)];
            if (source.kind != LunchKind::leftover) continue;
            for (std::size_t b = 0; b < batches.size(); ++b) {
                const auto& [thing, batch] = batches[b];
                if (thing->ingredient != *source.of || (batch->when >> static_cast<unsigned>(source.time) & 1U) == 0)
                    continue;
                const double each = batch->danger ? thing->worth : -thing->cost;
                const std::int64_t gain =
                    option.fixed + game.bought + std::llround(each * static_cast<double>(one_serve));
                if (gain > 0) suits.push_back({static_cast<int>(b), static_cast<int>(s), -gain});
            }
        }
    }
    const auto given = flow::hand_out(serves, game.slots.size(), suits);
    LunchPlan plan = all_bought(game);
    for (std::size_t s = 0; s < plan.size(); ++s) {
        if (given[s] < 0) continue;
        const auto id = batches[static_cast<std::size_t>(given[s])].first->ingredient;
        for (const int option : game.slots[s].options) {
            const int source = option_of(game, option).source;
            if (source < 0) continue;
            const LunchSource& of = game.sources[static_cast<std::size_t>(source)];
            if (of.kind == LunchKind::leftover && of.of == id) plan[s] = option;
        }
    }
    return lunches_that_can_be_had(game, plan);
}

LunchPlan lunches_that_can_be_had(const LunchGame& game, const LunchPlan& plan) {
    LunchValue value(game);
    value.set(plan);
    while (!value.sound()) {
        int chosen = -1;
        std::int64_t best = 0;
        for (std::size_t s = 0; s < plan.size(); ++s) {
            const int bought = game.slots[s].options.front();
            if (value.plan()[s] == bought) continue;
            const std::int64_t with = value.with(static_cast<int>(s), bought);
            if (chosen >= 0 && with <= best) continue;
            best = with;
            chosen = static_cast<int>(s);
        }
        value.set(chosen, game.slots[static_cast<std::size_t>(chosen)].options.front());
    }
    return value.plan();
}

LunchPlan lunches_greedily(const LunchGame& game, const LunchPlan& start) {
    LunchValue value(game);
    value.set(start);
    while (true) {
        std::int64_t best = value.value();
        int chosen = -1;
        for (std::size_t s = 0; s < game.slots.size(); ++s) {
            if (value.plan()[s] != game.slots[s].options.front()) continue;
            for (const int option : game.slots[s].options) {
                const std::int64_t with = value.with(static_cast<int>(s), option);
                if (with <= best) continue;
                best = with;
                chosen = option;
            }
        }
        if (chosen < 0) return value.plan();
        value.set(option_of(game, chosen).slot, chosen);
    }
}

menu::Ranked lunch_options_alone(const LunchGame& game) {
    std::vector<const std::vector<int>*> options;
    options.reserve(game.slots.size());
    for (const LunchSlot& slot : game.slots) options.push_back(&slot.options);
    return menu::ranked_alone(LunchValue(game), options);
}

LunchPlan lunches_by_annealing(const LunchGame& game, const LunchPlan& start, const menu::Ranked& options,
                               std::int64_t moves, const menu::Look& look) {
    if (game.slots.empty()) return start;
    const Days days = by_day(game);
    constexpr int changing_one = 65;  // of a hundred moves
    constexpr int changing_a_day = 20;
    return Search(LunchValue(game), options, start)
        .run({.rounds = 3, .moves = moves, .between_looks = 2000, .hottest = 150'000, .coolest = 1'000}, look,
             [&](Search& search) {
                 const auto which = search.dice().below(100);
                 if (which < changing_one) {
                     change_one(search);
                 } else if (which < changing_one + changing_a_day) {
                     change_day(game, days, search);
                 } else {
                     exchange_two(game, days, search);
                 }
             });
}

LunchPlan lunches_polished(const LunchGame& game, const LunchPlan& start) {
    LunchValue value(game);
    value.set(start);
    const auto days = by_day(game);
    for (bool better = true; better;) {
        better = false;
        for (std::size_t s = 0; s < game.slots.size(); ++s) {
            for (const int option : game.slots[s].options) {
                if (value.with(static_cast<int>(s), option) <= value.value()) continue;
                value.set(static_cast<int>(s), option);
                better = true;
            }
        }
        for (const auto& slots : days) {
            for (const int option : game.slots[static_cast<std::size_t>(slots.front())].options) {
                const LunchPlan before = value.plan();
                const std::int64_t was = value.value();
                const int source = option_of(game, option).source;
                for (const int slot : slots) {
                    const int alike = option_with(game, slot, source);
                    if (alike >= 0) value.set(slot, alike);
                }
                if (value.value() > was) {
                    better = true;
                } else {
                    value.set(before);
                }
            }
        }
    }
    return value.plan();
}

}  // namespace samebase::ask::detail
