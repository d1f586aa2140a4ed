// What the judge finds in stock, and what the plan leaves of it.
#include <algorithm>
#include <cmath>

#include "stock/thaw.hpp"
#include "support/frozen_packs.hpp"
#include "support/lunches_judge.hpp"

namespace samebase::tests {

namespace {

using basics::days;
using catalogue::IngredientId;
using kitchen::Meal;

constexpr int forever = 1'000'000;

}  // namespace

void LunchJudge::stock_up() {
    for (const stock::Lot& lot : kitchen_->lots) {
        const auto& thing = kitchen_->catalogue()[lot.ingredient];
        const bool rough = std::any_of(kitchen_->lots.begin(), kitchen_->lots.end(), [&](const stock::Lot& other) {
            return other.ingredient == lot.ingredient && other.rough;
        });
        if (rough || lot.amount.value() == 0 || kitchen_->taken_as_there(lot.ingredient)) continue;
        Batch batch{lot.ingredient, lot.amount.value(), 0, forever, lot.number, lot.dish, 0, {}, 0};
        const auto put = [&](std::int64_t amount, std::vector<Batch>& where) {
            batch.amount = batch.whole = amount;
            batch.price = kitchen::price(*kitchen_, lot, amount);
            where.push_back(batch);
        };
        if (lot.state != stock::State::frozen) {
            const auto kind = kitchen_->place(lot.place).kind;
            const bool cool = kind == stock::PlaceKind::fridge || kind == stock::PlaceKind::crisper;
            auto last = lot.use_by;
            if (cool && lot.best_by && (!last || *lot.best_by < *last)) last = lot.best_by;
            if (thing.in_serves) {
                const auto latest = lot.since + days{lot.state == stock::State::fresh ? keeps(lot.ingredient) : 1};
                const bool waits = lot.state == stock::State::thawing && lot.thawed_on;
                const auto cap = waits ? std::max(latest, *lot.thawed_on) : latest;
                last = last ? std::min(*last, cap) : cap;
            }
            if (last) batch.last = meal_number(*last, Meal::dinner);
            if (batch.last < 0) continue;
            if (lot.state == stock::State::thawing && lot.thawed_on)
                batch.first = std::max(0, meal_number(*lot.thawed_on, Meal::lunch));
            put(lot.amount.value(), batches_);
            continue;
        }
        for (const auto pack : frozen_packs(lot, thing)) {
            stock::Lot alone = lot;
            alone.amount = {thing.dimension, pack};
            alone.packs = {pack};
            const int thaws = thing.thaw == catalogue::Thaw::from_frozen
                                  ? 0
                                  : stock::days_to_thaw(alone, thing, stock::ThawMethod::fridge);
            batch.first = 2 * thaws;
            const bool water =
                thaws == 1 && thing.kind != catalogue::Kind::cooked && thing.thaw == catalogue::Thaw::flat;
            if (water) batch.first = 1;
            const bool shared = thing.in_serves && pack > 1000 && is_lunch(lot.ingredient);
            batch.pack = shared ? pack : 0;
            put(pack, batches_);
        }
    }
    for (const auto& row : kitchen_->plan) {
        if (row.day < today_ || row.day > horizon_) continue;
        for (const auto& made : flow::cook(*kitchen_, row).makes) {
            const auto& thing = kitchen_->catalogue()[made.ingredient];
            Batch batch{
                made.ingredient, made.amount, meal_number(row.day + days{1}, Meal::lunch), forever, 0, row.dish, 0, {},
                made.amount};
            const auto kept = told(thing, catalogue::Keep::fridge);
            if (kept) batch.last = meal_number(row.day + days{*kept}, Meal::dinner);
            if (thing.in_serves) batch.last = meal_number(row.day + days{keeps(made.ingredient)}, Meal::dinner);
            if (const auto known = kitchen::price(*kitchen_, made.ingredient, made.amount)) {
                batch.price = *known;
            } else if (thing.in_serves) {
                batch.price = {std::llround(
                    static_cast<double>(kitchen::cost_per_serve(*kitchen_, row.dish).minor * made.amount) / 1000)};
            }
            batches_.push_back(batch);
        }
    }
    std::stable_sort(batches_.begin(), batches_.end(),
                     [](const Batch& a, const Batch& b) { return a.last != b.last ? a.last < b.last : a.lot < b.lot; });
}

void LunchJudge::eat_what_stands() {
    std::vector<Want> wants;
    for (const auto& row : kitchen_->plan) {
        if (row.day < today_ || row.day > horizon_) continue;
        for (const auto& need : flow::cook(*kitchen_, row).needs)
            wants.push_back({need.ingredient, need.amount, meal_number(row.day, row.meal)});
    }
    for (const auto& use : kitchen_->household.standing_uses) {
        if (kitchen_->taken_as_there(use.ingredient)) continue;
        for (basics::Day day = today_; day <= horizon_; day += days{1}) {
            if ((use.weekdays >> std::chrono::weekday{day}.c_encoding() & 1U) != 0)
                wants.push_back({use.ingredient, use.amount.value(), meal_number(day, Meal::lunch)});
        }
    }
    std::stable_sort(wants.begin(), wants.end(), [](const Want& a, const Want& b) { return a.meal < b.meal; });
    for (const Want& want : wants) {
        const auto lacks = eat(batches_, want, end_, nullptr, nullptr);
        if (want.meal >= buys_from_) plan_buys_[want.of] += lacks;
    }
    // Packs of several serves are for lunches only as a whole.
    for (const Batch& batch : batches_) {
        if (batch.pack > 0 && batch.amount == batch.pack) packs_.push_back(batch);
    }
    std::erase_if(batches_, [](const Batch& batch) { return batch.pack > 0 || batch.amount == 0; });
}

void LunchJudge::price() {
    std::map<IngredientId, std::pair<double, double>> danger;
    std::map<IngredientId, std::pair<double, double>> keeping;
    for (const Batch& batch : batches_) {
        auto& [amount, money] = (in_danger(batch) ? danger : keeping)[batch.of];
        amount += static_cast<double>(batch.amount);
        money += static_cast<double>(batch.price.minor) * static_cast<double>(batch.amount) /
                 static_cast<double>(batch.whole);
    }
    for (const auto& [of, sum] : danger) worth_[of] = sum.second / sum.first;
    for (const auto& [of, sum] : keeping) cost_[of] = sum.second / sum.first;
}

}  // namespace samebase::tests
