#include "ask/detail/clear_value.hpp"

#include <algorithm>
#include <cmath>

namespace samebase::ask::detail {

namespace {

/// More than any plan can be worth: ten million in money.
constexpr std::int64_t for_lacking = 1'000'000'000'000;

}  // namespace

ClearValue::ClearValue(const ClearGame& game)
    : game_(&game),
      plan_(game.meals.size(), -1),
      width_(game.meals.size()),
      wants_(game.things.size() * width_, 0),
      wanted_(game.things.size(), 0),
      lines_(game.things.size(), 0),
      short_(game.things.size(), 0) {
    for (const OpenMeal& meal : game.meals) total_ -= meal.empty;
}

void ClearValue::want(int thing, int meal, std::int64_t more) {
    const auto at = static_cast<std::size_t>(thing);
    wants_[at * width_ + static_cast<std::size_t>(meal)] += more;
    wanted_[at] += more;
}

ClearTally ClearValue::tally(int thing) const {
    const auto at = static_cast<std::size_t>(thing);
    const ClearThing& of = game_->things[at];
    ClearTally tally;
    std::int64_t lacks = 0;
    if (of.always) {
        tally.saved = std::min(wanted_[at], of.danger);
        lacks = std::max<std::int64_t>(0, wanted_[at] - of.there);
    } else {
        std::vector<std::int64_t> left;
        left.reserve(of.batches.size());
        for (const ClearBatch& batch : of.batches) left.push_back(batch.amount);
        for (std::size_t meal = 0; meal < width_; ++meal) {
            std::int64_t open = wants_[at * width_ + meal];
            for (std::size_t b = 0; open > 0 && b < left.size(); ++b) {
                if ((of.batches[b].when >> meal & 1U) == 0) continue;
                const auto bite = std::min(open, left[b]);
                left[b] -= bite;
                open -= bite;
                if (of.batches[b].danger) tally.saved += bite;
            }
            lacks += open;
        }
    }
    if (lacks == 0) return tally;
    if (of.pack > 0) {
        tally.packs = (lacks + of.pack - 1) / of.pack;
    } else {
        tally.lacking = lacks;
    }
    return tally;
}

std::vector<std::vector<std::int64_t>> ClearValue::eaten_by_meal(int thing) const {
    const auto at = static_cast<std::size_t>(thing);
    const ClearThing& of = game_->things[at];
    std::vector<std::int64_t> left;
    for (const ClearBatch& batch : of.batches) left.push_back(batch.amount);
    std::vector<std::vector<std::int64_t>> eaten;
    for (std::size_t meal = 0; meal < width_; ++meal) {
        auto& here = eaten.emplace_back(left.size() + 1, 0);
        here.back() = wants_[at * width_ + meal];
        for (std::size_t b = 0; here.back() > 0 && b < left.size(); ++b) {
            if ((of.batches[b].when >> meal & 1U) == 0) continue;
            here[b] = std::min(here.back(), left[b]);
            left[b] -= here[b];
            here.back() -= here[b];
        }
    }
    return eaten;
}

std::vector<std::int64_t> ClearValue::saved_by_meal(int thing) const {
    const auto& batches = game_->things[static_cast<std::size_t>(thing)].batches;
    std::vector<std::int64_t> saved;
    for (const auto& here : eaten_by_meal(thing)) {
        saved.push_back(0);
        for (std::size_t b = 0; b < batches.size(); ++b) saved.back() += batches[b].danger ? here[b] : 0;
    }
    return saved;
}

void ClearValue::settle(int thing) {
    const auto at = static_cast<std::size_t>(thing);
    const ClearThing& of = game_->things[at];
    const ClearTally now = tally(thing);
    const int lacks = now.lacking > 0 ? 1 : 0;
    const std::int64_t line =
        std::llround(of.worth * static_cast<double>(now.saved)) - now.packs * of.pack_price - lacks * for_lacking;
    total_ += line - lines_[at];
    lines_[at] = line;
    lacking_ += lacks - short_[at];
    short_[at] = lacks;
}

void ClearValue::set(int meal, int option) {
    const auto at = static_cast<std::size_t>(meal);
    const int before = plan_[at];
    if (before == option) return;
    plan_[at] = option;
    if (before >= 0) {
        const ClearOption& old = game_->options[static_cast<std::size_t>(before)];
        total_ -= old.fixed;
        for (const ClearNeed& need : old.needs) want(need.thing, meal, -need.amount);
    } else {
        total_ += game_->meals[at].empty;
    }
    if (option >= 0) {
        const ClearOption& now = game_->options[static_cast<std::size_t>(option)];
        total_ += now.fixed;
        for (const ClearNeed& need : now.needs) want(need.thing, meal, need.amount);
        for (const ClearNeed& need : now.needs) settle(need.thing);
    } else {
        total_ -= game_->meals[at].empty;
    }
    if (before < 0) return;
    for (const ClearNeed& need : game_->options[static_cast<std::size_t>(before)].needs) settle(need.thing);
}

void ClearValue::set(const ClearPlan& plan) {
    for (std::size_t meal = 0; meal < plan.size(); ++meal) set(static_cast<int>(meal), plan[meal]);
}

std::int64_t ClearValue::with(int meal, int option) {
    const int before = plan_[static_cast<std::size_t>(meal)];
    set(meal, option);
    const std::int64_t value = total_;
    set(meal, before);
    return value;
}

bool ClearValue::clashes(int option, int except) const {
    if (option < 0) return false;
    const ClearOption& wanted = game_->options[static_cast<std::size_t>(option)];
    for (std::size_t meal = 0; meal < plan_.size(); ++meal) {
        const int other = plan_[meal];
        if (other < 0 || static_cast<int>(meal) == wanted.meal || static_cast<int>(meal) == except) continue;
        if (game_->clash(wanted, game_->options[static_cast<std::size_t>(other)])) return true;
    }
    return false;
}

std::int64_t value_of(const ClearGame& game, const ClearPlan& plan) {
    ClearValue value(game);
    value.set(plan);
    return value.value();
}

}  // namespace samebase::ask::detail
