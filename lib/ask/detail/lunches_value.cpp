#include "ask/detail/lunches_value.hpp"

#include <algorithm>
#include <cmath>

namespace samebase::ask::detail {

namespace {

/// More than any plan can be worth: ten million in money.
constexpr std::int64_t for_lacking = 1'000'000'000'000;
constexpr std::int64_t one_serve = 1000;

/// Of what keeps and of packs, whichever comes to less, where so much of what keeps is eaten once packs can be had.
void choose_packs(const LunchThing& of, std::int64_t late, LunchTally& tally) {
    const std::int64_t lacks = tally.bought;
    const auto cost = [&](std::int64_t packs) {
        const auto bought = std::min(of.bought_with(packs), late + lacks);
        return static_cast<double>(packs * of.pack_price) - of.cost * static_cast<double>(bought);
    };
    tally.packs = lacks > 0 ? of.packs_for(lacks) : 0;
    while (of.bought_with(tally.packs) < late + lacks && cost(tally.packs + 1) < cost(tally.packs)) ++tally.packs;
    tally.bought = std::min(of.bought_with(tally.packs), late + lacks);
    tally.kept -= tally.bought - lacks;
}

}  // namespace

LunchPlan all_bought(const LunchGame& game) {
    LunchPlan plan;
    for (const LunchSlot& slot : game.slots) plan.push_back(slot.options.front());
    return plan;
}

LunchValue::LunchValue(const LunchGame& game)
    : game_(&game),
      plan_(all_bought(game)),
      width_(static_cast<std::size_t>(game.times)),
      serves_(game.sources.size(), 0),
      wants_(game.things.size() * width_, 0),
      lines_(game.things.size(), 0),
      short_(game.things.size(), 0),
      pack_lines_(game.packs.size(), 0),
      pack_short_(game.packs.size(), 0),
      pack_sources_(game.packs.size()),
      cooked_(static_cast<std::size_t>(game.span.length())),
      effort_(cooked_.size(), 0),
      slots_of_person_(game.kitchen->household.people.size()) {
    for (std::size_t s = 0; s < game.sources.size(); ++s) {
        const LunchSource& source = game.sources[s];
        if (source.pack >= 0) pack_sources_[static_cast<std::size_t>(source.pack)].push_back(static_cast<int>(s));
        if (source.kind == LunchKind::cooked) cooked_[day_number(source.day)].push_back(static_cast<int>(s));
    }
    for (std::size_t s = 0; s < game.slots.size(); ++s)
        slots_of_person_[game.slots[s].person].push_back(static_cast<int>(s));
}

std::size_t LunchValue::day_number(basics::Day day) const {
    return static_cast<std::size_t>((day - game_->span.first).count());
}

std::int64_t LunchValue::value() const {
    return total_ - (cut() ? for_lacking : 0);
}

bool LunchValue::cut() const {
    return std::any_of(game_->cuts.begin(), game_->cuts.end(), [&](const LunchCut& cut) {
        return std::all_of(cut.begin(), cut.end(), [&](const auto& part) { return serves(part.first) >= part.second; });
    });
}

std::vector<std::vector<std::int64_t>> LunchValue::eaten(int thing) const {
    const auto at = static_cast<std::size_t>(thing);
    const LunchThing& of = game_->things[at];
    std::vector<std::int64_t> left;
    for (const LunchBatch& batch : of.batches) left.push_back(batch.amount);
    std::vector<std::vector<std::int64_t>> result;
    for (std::size_t time = 0; time < width_; ++time) {
        auto& here = result.emplace_back(left.size() + 1, 0);
        here.back() = wants_[at * width_ + time];
        for (std::size_t b = 0; here.back() > 0 && b < left.size(); ++b) {
            if ((of.batches[b].when >> time & 1U) == 0) continue;
            here[b] = std::min(here.back(), left[b]);
            left[b] -= here[b];
            here.back() -= here[b];
        }
    }
    return result;
}

LunchTally LunchValue::tally(int thing) const {
    const auto at = static_cast<std::size_t>(thing);
    const LunchThing& of = game_->things[at];
    LunchTally tally;
    std::int64_t late = 0;
    std::vector<std::int64_t> left;
    for (std::size_t time = 0; time < width_; ++time) {
        std::int64_t open = wants_[at * width_ + time];
        if (open == 0) continue;
        const bool in_time = of.pack > 0 && static_cast<int>(time) >= game_->buys_from;
        if (left.empty()) {
            for (const LunchBatch& batch : of.batches) left.push_back(batch.amount);
        }
        for (std::size_t b = 0; open > 0 && b < left.size(); ++b) {
            if ((of.batches[b].when >> time & 1U) == 0) continue;
            const auto bite = std::min(open, left[b]);
            left[b] -= bite;
            open -= bite;
            (of.batches[b].danger ? tally.saved : tally.kept) += bite;
            if (in_time && !of.batches[b].danger) late += bite;
        }
        (in_time ? tally.bought : tally.lacking) += open;
    }
    if (tally.bought > 0 || late > 0) choose_packs(of, late, tally);
    return tally;
}

void LunchValue::settle(int thing) {
    const auto at = static_cast<std::size_t>(thing);
    const LunchThing& of = game_->things[at];
    const LunchTally now = tally(thing);
    const int lacks = now.lacking > 0 ? 1 : 0;
    const std::int64_t line =
        std::llround(of.worth * static_cast<double>(now.saved) - of.cost * static_cast<double>(now.kept)) -
        now.packs * of.pack_price - lacks * for_lacking;
    total_ += line - lines_[at];
    lines_[at] = line;
    lacking_ += lacks - short_[at];
    short_[at] = lacks;
}

int LunchValue::thawed(int source) const {
    const LunchPack& pack =
        game_->packs[static_cast<std::size_t>(game_->sources[static_cast<std::size_t>(source)].pack)];
    return static_cast<int>((one_serve * serves(source) + pack.size - 1) / pack.size);
}

void LunchValue::settle_packs(int pack) {
    const auto at = static_cast<std::size_t>(pack);
    int count = 0;
    for (const int source : pack_sources_[at]) count += thawed(source);
    const int lacks = count > game_->packs[at].count ? 1 : 0;
    const std::int64_t line = -count * game_->packs[at].price - lacks * for_lacking;
    total_ += line - pack_lines_[at];
    pack_lines_[at] = line;
    lacking_ += lacks - pack_short_[at];
    pack_short_[at] = lacks;
}

std::int64_t LunchValue::effort(basics::Day day) const {
    std::int64_t minutes = 0;
    for (const int source : cooked_[day_number(day)])
        minutes += serves(source) > 0 ? game_->sources[static_cast<std::size_t>(source)].minutes : 0;
    return game_->minute * std::max<std::int64_t>(0, minutes - lunch_minutes);
}

void LunchValue::settle_day(basics::Day day) {
    const std::int64_t now = effort(day);
    total_ -= now - effort_[day_number(day)];
    effort_[day_number(day)] = now;
}

void LunchValue::take(const std::vector<LunchNeed>& needs, int time, int sign) {
    for (const LunchNeed& need : needs)
        wants_[static_cast<std::size_t>(need.thing) * width_ + static_cast<std::size_t>(time)] += sign * need.amount;
}

void LunchValue::count(int number, int more) {
    const LunchSource& source = game_->sources[static_cast<std::size_t>(number)];
    int& serves = serves_[static_cast<std::size_t>(number)];
    const auto& before = source.needs[static_cast<std::size_t>(serves)];
    take(before, source.time, -1);
    serves += more;
    const auto& after = source.needs[static_cast<std::size_t>(serves)];
    take(after, source.time, 1);
    for (const LunchNeed& need : before) settle(need.thing);
    for (const LunchNeed& need : after) {
        const bool again =
            std::any_of(before.begin(), before.end(), [&](const LunchNeed& b) { return b.thing == need.thing; });
        if (!again) settle(need.thing);
    }
    if (source.pack >= 0) settle_packs(source.pack);
    if (source.kind == LunchKind::cooked) settle_day(source.day);
}

std::int64_t LunchValue::again(int slot, int option) const {
    const LunchOption& of = game_->options[static_cast<std::size_t>(option)];
    if (of.source < 0) return 0;
    std::int64_t sum = 0;
    for (const int other : slots_of_person_[game_->slots[static_cast<std::size_t>(slot)].person]) {
        if (other == slot) continue;
        sum += game_->again_cost(of, game_->options[static_cast<std::size_t>(plan_[static_cast<std::size_t>(other)])]);
    }
    return sum;
}

void LunchValue::set(int slot, int option) {
    int& here = plan_[static_cast<std::size_t>(slot)];
    if (here == option) return;
    const LunchOption& old = game_->options[static_cast<std::size_t>(here)];
    const LunchOption& now = game_->options[static_cast<std::size_t>(option)];
    total_ += now.fixed - old.fixed + again(slot, here) - again(slot, option);
    here = option;
    if (old.source == now.source) return;
    if (old.source >= 0) count(old.source, -1);
    if (now.source >= 0) count(now.source, 1);
}

void LunchValue::set(const LunchPlan& plan) {
    for (std::size_t slot = 0; slot < plan.size(); ++slot) set(static_cast<int>(slot), plan[slot]);
}

std::int64_t LunchValue::with(int slot, int option) {
    const int before = plan_[static_cast<std::size_t>(slot)];
    set(slot, option);
    const std::int64_t result = value();
    set(slot, before);
    return result;
}

std::int64_t value_of(const LunchGame& game, const LunchPlan& plan) {
    LunchValue value(game);
    value.set(plan);
    return value.value();
}

}  // namespace samebase::ask::detail
