#include "ask/detail/lunches_search.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "ask/detail/dice.hpp"
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

class Annealing {
  public:
    Annealing(const LunchGame& game, const LunchPlan& start, std::int64_t moves)
        : game_(game), value_(game), moves_(moves), days_(by_day(game)), best_(start) {
        rank();
        value_.set(start);
        best_value_ = value_.value();
    }

    LunchPlan run(const LunchLook& look) {
        constexpr int rounds = 3;
        constexpr std::int64_t between_looks = 2000;
        const std::int64_t moves = std::max<std::int64_t>(1, moves_ / rounds);
        for (int round = 0; round < rounds; ++round) {
            value_.set(best_);
            for (std::int64_t move = 0; move < moves; ++move) {
                temperature_ =
                    hottest * std::pow(coolest / hottest, static_cast<double>(move) / static_cast<double>(moves));
                const auto which = dice_.below(100);
                if (which < 65) {
                    change_one();
                } else if (which < 85) {
                    change_day();
                } else {
                    exchange_two();
                }
                if (move % between_looks == 0 && look && !look(best_value_)) return best_;
            }
        }
        return best_;
    }

  private:
    static constexpr double hottest = 150'000;  ///< in thousandths of money
    static constexpr double coolest = 1'000;

    /// Options by what they are worth alone: those that look good are tried more often.
    void rank() {
        for (const LunchSlot& slot : game_.slots) {
            std::vector<std::pair<std::int64_t, int>> alone;
            for (const int option : slot.options)
                alone.emplace_back(-value_.with(option_of(game_, option).slot, option), option);
            std::sort(alone.begin(), alone.end());
            ranked_.emplace_back();
            for (const auto& [minus, option] : alone) ranked_.back().push_back(option);
        }
    }

    int any_option(std::size_t slot) {
        // Skewed to the front: the square of an even number.
        const auto& options = ranked_[slot];
        const double skewed = dice_.unit();
        const auto at = static_cast<std::size_t>(skewed * skewed * static_cast<double>(options.size()));
        return options[std::min(at, options.size() - 1)];
    }

    /// Does the changes, and takes them back where they are not taken.
    void try_to(const std::vector<std::pair<int, int>>& changes) {
        const std::int64_t old = value_.value();
        std::vector<std::pair<int, int>> back;
        for (const auto& [slot, option] : changes) {
            back.emplace_back(slot, value_.plan()[static_cast<std::size_t>(slot)]);
            value_.set(slot, option);
        }
        const std::int64_t now = value_.value();
        if (now >= old || dice_.unit() < std::exp(static_cast<double>(now - old) / temperature_)) {
            if (now > best_value_) {
                best_value_ = now;
                best_ = value_.plan();
            }
            return;
        }
        for (auto change = back.rbegin(); change != back.rend(); ++change) value_.set(change->first, change->second);
    }

    void change_one() {
        const std::size_t slot = dice_.below(ranked_.size());
        try_to({{static_cast<int>(slot), any_option(slot)}});
    }

    /// All of a day who may have it get the same.
    void change_day() {
        const auto& slots = days_[dice_.below(days_.size())];
        const int first = slots[dice_.below(slots.size())];
        const int source = option_of(game_, any_option(static_cast<std::size_t>(first))).source;
        std::vector<std::pair<int, int>> changes;
        for (const int slot : slots) {
            const int option = option_with(game_, slot, source);
            if (option >= 0) changes.emplace_back(slot, option);
        }
        try_to(changes);
    }

    /// Two people of one day change places.
    void exchange_two() {
        const auto& slots = days_[dice_.below(days_.size())];
        const int a = slots[dice_.below(slots.size())];
        const int b = slots[dice_.below(slots.size())];
        if (a == b) return;
        const auto now = [&](int slot) {
            return option_of(game_, value_.plan()[static_cast<std::size_t>(slot)]).source;
        };
        const int to_a = option_with(game_, a, now(b));
        const int to_b = option_with(game_, b, now(a));
        if (to_a >= 0 && to_b >= 0) try_to({{a, to_a}, {b, to_b}});
    }

    const LunchGame& game_;
    LunchValue value_;
    std::int64_t moves_;
    std::vector<std::vector<int>> days_;
    LunchPlan best_;
    std::int64_t best_value_ = 0;
    std::vector<std::vector<int>> ranked_;
    double temperature_ = 0;
    Dice dice_{4};
};

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

LunchPlan lunches_by_annealing(const LunchGame& game, const LunchPlan& start, std::int64_t moves,
                               const LunchLook& look) {
    if (game.slots.empty()) return start;
    return Annealing(game, start, moves).run(look);
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
