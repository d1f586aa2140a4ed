// Everything that may be put before people for lunch, and every plan of it.
#include <algorithm>
#include <functional>
#include <set>

#include "support/lunches_judge.hpp"

namespace samebase::tests {

using ask::LunchKind;
using basics::days;
using catalogue::IngredientId;
using kitchen::Meal;

std::vector<LunchChoice> LunchJudge::choices(const Open& open) const {
    std::vector<LunchChoice> result;
    const int meal = meal_number(open.day, Meal::lunch);
    const auto planned = [&](cookbook::DishId dish) {
        return std::any_of(kitchen_->plan.begin(), kitchen_->plan.end(), [&](const auto& row) {
            return row.day == open.day && row.meal == Meal::lunch && row.dish == dish;
        });
    };
    std::set<IngredientId> seen;
    for (const Batch& batch : batches_) {
        if (!is_lunch(batch.of) || meal < batch.first || meal > batch.last || !seen.insert(batch.of).second) continue;
        const auto dish = dish_of(batch.of, meal);
        if (planned(*dish) || !may_have_leftover(open.person, batch.of) || !may_have(open.person, *dish, true))
            continue;
        result.push_back({open.day, open.person, LunchKind::leftover, dish, batch.of});
    }
    std::set<std::pair<stock::LotNumber, std::int64_t>> packs;
    for (const Batch& pack : packs_) {
        if (meal < pack.first || !packs.insert({pack.lot, pack.pack}).second) continue;
        const auto dish = pack.dish && kitchen_->cookbook()[*pack.dish].leaves == pack.of ? pack.dish : std::nullopt;
        if (!dish || planned(*dish) || !may_have_leftover(open.person, pack.of)) continue;
        result.push_back({open.day, open.person, LunchKind::frozen_pack, dish, pack.of, pack.lot, pack.pack});
    }
    for (std::size_t r = 0; r < kitchen_->plan.size(); ++r) {
        const auto& row = kitchen_->plan[r];
        const auto& dish = kitchen_->cookbook()[row.dish];
        if (row.meal != Meal::dinner || row.ready_meal || row.day < today_ || !dish.leaves || !is_lunch(*dish.leaves))
            continue;
        if (open.day <= row.day || open.day > row.day + days{keeps(*dish.leaves)} || planned(row.dish)) continue;
        if (flow::cook(*kitchen_, row).serves_thousandths == 0 || !may_have_leftover(open.person, *dish.leaves))
            continue;
        result.push_back({open.day, open.person, LunchKind::larger, row.dish, *dish.leaves, 0, 0, r});
    }
    for (std::uint32_t i = 0; i < kitchen_->cookbook().dishes().size(); ++i) {
        const cookbook::DishId id{i};
        if (!kitchen_->cookbook()[id].lunch || planned(id) || had_as_leftover(id, open.day)) continue;
        if (may_have(open.person, id, false)) result.push_back({open.day, open.person, LunchKind::cooked, id, {}});
    }
    result.push_back({open.day, open.person, LunchKind::bought, {}, {}});
    return result;
}

std::optional<double> LunchJudge::best_of_all(std::int64_t most) const {
    std::vector<std::vector<LunchChoice>> all;
    std::int64_t plans = 1;
    for (const Open& open : open_) {
        all.push_back(choices(open));
        plans *= static_cast<std::int64_t>(all.back().size());
        if (plans > most) return std::nullopt;
    }
    double best = 0;  // all bought
    std::vector<LunchChoice> chosen(all.size());
    for (std::int64_t number = 0; number < plans; ++number) {
        std::int64_t rest = number;
        for (std::size_t i = 0; i < all.size(); ++i) {
            chosen[i] = all[i][static_cast<std::size_t>(rest) % all[i].size()];
            rest /= static_cast<std::int64_t>(all[i].size());
        }
        const JudgedLunches judged = judge(chosen);
        if (judged.value > best && judged.faults.empty() && balances(chosen)) best = judged.value;
    }
    return best;
}

std::vector<LunchChoice> LunchJudge::choices_of(const ask::LunchesAnswer& answer) const {
    std::vector<LunchChoice> result;
    for (const ask::Lunch& lunch : answer.lunches) {
        LunchChoice choice{lunch.day, lunch.person, lunch.kind, lunch.dish, {}};
        if (lunch.dish && lunch.kind != LunchKind::cooked) choice.of = kitchen_->cookbook()[*lunch.dish].leaves;
        if (lunch.kind == LunchKind::frozen_pack) {
            choice.lot = lunch.from_lot;
            choice.pack = lunch.pack;
        }
        for (std::size_t r = 0; lunch.kind == LunchKind::larger && r < kitchen_->plan.size(); ++r) {
            const auto& row = kitchen_->plan[r];
            if (row.day == lunch.made && row.meal == Meal::dinner && row.dish == lunch.dish) choice.dinner = r;
        }
        for (const ask::LunchCooked& cooked : answer.cooked) {
            if (lunch.kind == LunchKind::cooked && cooked.day == lunch.day && cooked.dish == lunch.dish)
                choice.swaps = cooked.swaps;
        }
        result.push_back(choice);
    }
    return result;
}

}  // namespace samebase::tests
