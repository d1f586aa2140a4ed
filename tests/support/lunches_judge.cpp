#include "support/lunches_judge.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

namespace samebase::tests {

namespace {

using ask::LunchKind;
using basics::days;
using catalogue::IngredientId;
using kitchen::Meal;

bool shopping_on(const kitchen::Kitchen& kitchen, basics::Day day) {
    const auto& trips = kitchen.household.trips;  // weekly ones, for everything
    return std::any_of(trips.begin(), trips.end(),
                       [&](const auto& trip) { return trip.weekday == std::chrono::weekday{day}; });
}

basics::Day looked_at_until(const kitchen::Kitchen& kitchen, basics::Day today, basics::Day last) {
    std::vector<basics::Day> shopping;
    for (int i = 1; i <= 21; ++i) {
        if (shopping_on(kitchen, today + days{i})) shopping.push_back(today + days{i});
    }
    basics::Day result = std::max(today + days{7}, last);
    if (shopping.size() >= 2) result = std::max(result, shopping[1]);
    return result;
}

}  // namespace

std::optional<int> told(const catalogue::Ingredient& thing, catalogue::Keep where) {
    const auto& keeping = thing.keeps[static_cast<std::size_t>(where)];
    if (keeping.said != catalogue::Keeping::Said::time) return std::nullopt;
    return keeping.time.days;
}

LunchJudge::LunchJudge(const kitchen::Kitchen& kitchen, basics::Day today, int number)
    : kitchen_(&kitchen), today_(today), days_(number), holds_(flow::held_allergens(kitchen)) {
    horizon_ = looked_at_until(kitchen, today, today + days{number - 1});
    end_ = meal_number(horizon_, Meal::dinner);
    for (basics::Day day = horizon_; day >= today; day -= days{1}) {
        if (shopping_on(kitchen, day)) buys_from_ = meal_number(day, Meal::dinner);
    }
    seat();
    stock_up();
    eat_what_stands();
    price();
}

int LunchJudge::meal_number(basics::Day day, Meal meal) const {
    return 2 * static_cast<int>((day - today_).count()) + (meal == Meal::dinner ? 1 : 0);
}

int LunchJudge::keeps(IngredientId id) const {
    return std::min(3, told(kitchen_->catalogue()[id], catalogue::Keep::fridge).value_or(2));
}

/// Who avoids or dislikes nothing of the dish: as it is cooked for them, or of the common serve as a leftover.
bool LunchJudge::may_have(std::size_t who, cookbook::DishId id, bool as_leftover,
                          std::span<const kitchen::LineSwap> with) const {
    const auto& person = kitchen_->household.people[who];
    const cookbook::Dish& dish = kitchen_->cookbook()[id];
    if (as_leftover) {
        if (!cookbook::allergens(dish, kitchen_->catalogue()).shared_with(person.avoids).empty()) return false;
    } else if (!flow::serve_for(dish, person.avoids, with, holds_).holds.shared_with(person.avoids).empty()) {
        return false;
    }
    const auto dislikes = [&](IngredientId of) {
        return std::any_of(person.dislikes.begin(), person.dislikes.end(),
                           [&](const auto& disliked) { return kitchen_->catalogue().is(of, disliked); });
    };
    const auto serve = flow::serve_for(dish, as_leftover ? catalogue::AllergenSet{} : person.avoids, with, holds_);
    for (const auto& line : dish.ingredients) {
        if (line.optional) continue;
        std::vector<IngredientId> used{line.ingredient};
        for (const auto& swap : with) {
            if (swap.of != line.ingredient) continue;
            used.clear();
            for (const auto& [use, amount] : swap.use) used.push_back(use);
        }
        for (const auto& [of, use] : serve.swaps()) {
            if (of == line.ingredient) used = {use};
        }
        if (std::any_of(used.begin(), used.end(), dislikes)) return false;
    }
    return !(as_leftover && dish.leaves && dislikes(*dish.leaves));
}

bool LunchJudge::may_have_leftover(std::size_t who, IngredientId of) const {
    const auto& person = kitchen_->household.people[who];
    if (!holds_[of.index()].shared_with(person.avoids).empty()) return false;
    for (const auto& disliked : person.dislikes) {
        if (kitchen_->catalogue().is(of, disliked)) return false;
    }
    for (const auto& lot : kitchen_->lots) {
        if (lot.ingredient == of && lot.dish && !may_have(who, *lot.dish, true)) return false;
    }
    for (const auto& row : kitchen_->plan) {
        if (kitchen_->cookbook()[row.dish].leaves == of && !may_have(who, row.dish, true)) return false;
    }
    return true;
}

/// Rows of planned lunches and those at home: as many as can be served, those whose identifiers come first first.
void LunchJudge::seat() {
    for (basics::Day day = today_; day < today_ + days{days_}; day += days{1}) {
        std::vector<const kitchen::Planned*> serves;
        const auto home = kitchen::eaters(*kitchen_, day, Meal::lunch);
        for (const auto& row : kitchen_->plan) {
            if (row.day != day || row.meal != Meal::lunch) continue;
            const std::size_t count = row.serves ? static_cast<std::size_t>(*row.serves) : home.size();
            serves.insert(serves.end(), count, &row);
        }
        const auto suits = [&](std::size_t who, const kitchen::Planned& row) {
            const auto& leaves = kitchen_->cookbook()[row.dish].leaves;
            if (!row.ready_meal) return may_have(who, row.dish, false, row.swaps);
            return leaves && may_have(who, row.dish, true) && may_have_leftover(who, *leaves);
        };
        std::vector<std::optional<std::size_t>> given(serves.size());
        for (const std::size_t who : home) {
            std::vector<bool> seen(serves.size(), false);
            const std::function<bool(std::size_t)> place = [&](std::size_t person) {
                for (std::size_t i = 0; i < serves.size(); ++i) {
                    if (seen[i] || !suits(person, *serves[i])) continue;
                    seen[i] = true;
                    if (given[i] && !place(*given[i])) continue;
                    given[i] = person;
                    return true;
                }
                return false;
            };
            if (!place(who)) open_.push_back({day, who});
        }
    }
}

std::int64_t LunchJudge::eat(std::vector<Batch>& batches, const Want& want, int end,
                             std::map<IngredientId, std::int64_t>* saved, std::map<IngredientId, std::int64_t>* kept) {
    std::int64_t open = want.amount;
    for (Batch& batch : batches) {
        if (batch.of != want.of || want.meal < batch.first || want.meal > batch.last) continue;
        const auto bite = std::min(open, batch.amount);
        batch.amount -= bite;
        open -= bite;
        if (saved != nullptr) (batch.last <= end ? *saved : *kept)[want.of] += bite;
    }
    return open;
}

bool LunchJudge::is_lunch(IngredientId of) const {
    const auto dishes = kitchen_->cookbook().dishes();
    const bool left = std::any_of(dishes.begin(), dishes.end(), [&](const auto& dish) { return dish.leaves == of; });
    const bool given = std::any_of(dishes.begin(), dishes.end(), [&](const auto& dish) {
        return std::any_of(dish.gives.begin(), dish.gives.end(), [&](const auto& by) { return by.ingredient == of; });
    });
    return left && !given;
}

/// What the leftover is called at a meal: the dish of what ends first there.
std::optional<cookbook::DishId> LunchJudge::dish_of(IngredientId of, int meal) const {
    for (const Batch& batch : batches_) {
        if (batch.of != of || meal < batch.first || meal > batch.last) continue;
        if (batch.dish && kitchen_->cookbook()[*batch.dish].leaves == of) return batch.dish;
        for (std::uint32_t i = 0; i < kitchen_->cookbook().dishes().size(); ++i) {
            if (kitchen_->cookbook()[cookbook::DishId{i}].leaves == of) return cookbook::DishId{i};
        }
    }
    return std::nullopt;
}

bool LunchJudge::had_as_leftover(cookbook::DishId id, basics::Day day) const {
    const int meal = meal_number(day, Meal::lunch);
    for (const Batch& batch : batches_) {
        if (is_lunch(batch.of) && dish_of(batch.of, meal) == id) return true;
    }
    for (const Batch& pack : packs_) {
        if (meal >= pack.first && pack.dish == id) return true;
    }
    for (const auto& row : kitchen_->plan) {
        const auto& dish = kitchen_->cookbook()[row.dish];
        if (row.meal != Meal::dinner || row.dish != id || row.ready_meal || !dish.leaves || !is_lunch(*dish.leaves))
            continue;
        if (row.day >= today_ && day > row.day && day <= row.day + days{keeps(*dish.leaves)} &&
            flow::cook(*kitchen_, row).serves_thousandths > 0)
            return true;
    }
    return false;
}

std::vector<flow::Cooking> LunchJudge::cookings_of(std::span<const LunchChoice> lunches) const {
    std::map<std::tuple<basics::Day, cookbook::DishId, bool>, int> rows;
    std::map<std::pair<basics::Day, cookbook::DishId>, std::vector<kitchen::LineSwap>> swaps;
    std::map<std::size_t, int> more;
    for (const LunchChoice& lunch : lunches) {
        if (lunch.kind == LunchKind::bought) continue;
        ++rows[{lunch.day, *lunch.dish, lunch.kind != LunchKind::cooked}];
        if (lunch.kind == LunchKind::cooked) swaps[{lunch.day, *lunch.dish}] = lunch.swaps;
        if (lunch.kind == LunchKind::larger) ++more[lunch.dinner];
    }
    std::vector<flow::Cooking> result;
    for (std::size_t r = 0; r < kitchen_->plan.size(); ++r) {
        kitchen::Planned row = kitchen_->plan[r];
        if (row.day < today_ || row.day > horizon_) continue;
        row.left += more[r];
        result.push_back(flow::cook(*kitchen_, row));
    }
    for (const auto& [key, serves] : rows) {
        const auto& [day, dish, ready] = key;
        kitchen::Planned row{
            .day = day, .meal = Meal::lunch, .dish = dish, .ready_meal = ready, .serves = serves, .left = 0};
        if (!ready) row.swaps = swaps[{day, dish}];
        result.push_back(flow::cook(*kitchen_, row));
    }
    return result;
}

bool LunchJudge::balances(std::span<const LunchChoice> lunches) const {
    const flow::Balancer balancer(*kitchen_, {today_, horizon_});
    const auto before = balancer.balance(balancer.planned());
    const auto after = balancer.balance(cookings_of(lunches));
    for (const auto& part : after.parts) {
        const auto now = part->outcome.value(part->component).unmet;
        const auto* was = before.part(part->component.ingredient);
        for (std::size_t day = 0; day < now.size(); ++day) {
            if (now[day] > (was == nullptr ? 0 : was->outcome.value(was->component).unmet[day])) return false;
        }
    }
    return true;
}

std::vector<LunchJudge::Want> LunchJudge::wants_of(std::span<const LunchChoice> lunches) const {
    std::vector<Want> wants;
    std::map<std::pair<basics::Day, cookbook::DishId>, int> cooked;
    std::map<std::pair<basics::Day, cookbook::DishId>, std::vector<kitchen::LineSwap>> swaps;
    std::map<std::size_t, int> more;
    for (const LunchChoice& lunch : lunches) {
        if (lunch.kind == LunchKind::cooked) {
            ++cooked[{lunch.day, *lunch.dish}];
            swaps[{lunch.day, *lunch.dish}] = lunch.swaps;
        }
        if (lunch.kind == LunchKind::larger) ++more[lunch.dinner];
        if (lunch.kind == LunchKind::leftover) wants.push_back({*lunch.of, 1000, meal_number(lunch.day, Meal::lunch)});
    }
    for (const auto& [key, serves] : cooked) {
        const kitchen::Planned row{.day = key.first,
                                   .meal = Meal::lunch,
                                   .dish = key.second,
                                   .ready_meal = false,
                                   .serves = serves,
                                   .left = 0,
                                   .swaps = swaps[key]};
        for (const auto& need : flow::cook(*kitchen_, row).needs)
            wants.push_back({need.ingredient, need.amount, meal_number(key.first, Meal::lunch)});
    }
    for (const auto& [r, serves] : more) {
        kitchen::Planned row = kitchen_->plan[r];
        std::map<IngredientId, std::int64_t> extra;
        for (const auto& need : flow::cook(*kitchen_, row).needs) extra[need.ingredient] -= need.amount;
        row.left += serves;
        for (const auto& need : flow::cook(*kitchen_, row).needs) extra[need.ingredient] += need.amount;
        for (const auto& [of, amount] : extra) {
            if (amount > 0) wants.push_back({of, amount, meal_number(row.day, Meal::dinner)});
        }
    }
    std::stable_sort(wants.begin(), wants.end(), [](const Want& a, const Want& b) { return a.meal < b.meal; });
    return wants;
}

double LunchJudge::liking(const LunchChoice& lunch) const {
    const auto& person = kitchen_->household.people[lunch.person];
    for (const auto& said : person.marks) {
        if (said.dish == lunch.dish) return static_cast<double>(said.mark * kitchen_->household.worths.mark.minor);
    }
    int sum = 0;
    for (const auto& said : person.marks) {
        if (said.dish) continue;
        for (const auto& line : kitchen_->cookbook()[*lunch.dish].ingredients) {
            if (line.optional || kitchen_->taken_as_there(line.ingredient)) continue;
            if (!kitchen_->catalogue().is(line.ingredient, said.of)) continue;
            sum += said.mark;
            break;
        }
    }
    return static_cast<double>(std::clamp(sum, -3, 3) * kitchen_->household.worths.mark.minor);
}

/// Against what stands and was had, for cooked dishes; a person's part of it.
double LunchJudge::had_lately(const LunchChoice& lunch) const {
    if (lunch.kind != LunchKind::cooked) return 0;
    const auto& dish = kitchen_->cookbook()[*lunch.dish];
    long itself = 999;
    long base = 999;
    const auto near = [&](basics::Day day, cookbook::DishId other) {
        const auto apart = static_cast<long>(std::abs((day - lunch.day).count()));
        if (other == *lunch.dish) itself = std::min(itself, apart);
        if (other != *lunch.dish && dish.base && kitchen_->cookbook()[other].base == dish.base)
            base = std::min(base, apart);
    };
    for (const auto& had : kitchen_->history) near(had.day, had.dish);
    for (const auto& row : kitchen_->plan) {
        if (row.day != lunch.day || row.meal != Meal::lunch) near(row.day, row.dish);
    }
    const auto price = static_cast<double>(kitchen_->household.worths.had_lately.minor);
    double cost = 0;
    if (itself < dish.gap) cost += std::nearbyint(price * static_cast<double>(dish.gap - itself) / dish.gap);
    if (base < 7) cost += std::nearbyint(price * static_cast<double>(7 - base) / 28);
    return cost / static_cast<double>(kitchen_->household.people.size());
}

/// The least that what keeps and what is bought come to.
double LunchJudge::cost_of_rest(IngredientId of, std::int64_t early, std::int64_t late, std::int64_t lacks) const {
    const auto found = cost_.find(of);
    const double each = found == cost_.end() ? 0 : found->second;
    const auto& thing = kitchen_->catalogue()[of];
    double least = lacks > 0 ? 1e12 : each * static_cast<double>(early + late);
    if (!thing.pack || thing.kind == catalogue::Kind::cooked) return least;
    const auto pack = thing.pack->amount.value();
    const auto price = kitchen::price(*kitchen_, of, pack).value_or(thing.pack->price).minor;
    const auto plan = plan_buys_.find(of);
    std::int64_t free = plan == plan_buys_.end() ? 0 : (pack - plan->second % pack) % pack;
    for (std::int64_t packs = 0; packs == 0 || free - pack < late + lacks; ++packs, free += pack) {
        if (free < lacks) continue;
        const auto kept = early + late + lacks - std::min(free, late + lacks);
        least = std::min(least, each * static_cast<double>(kept) + static_cast<double>(packs * price));
    }
    return least;
}

JudgedLunches LunchJudge::judge(std::span<const LunchChoice> lunches) const {
    JudgedLunches judged;
    const auto& worths = kitchen_->household.worths;
    const auto heads = static_cast<double>(kitchen_->household.people.size());
    judged.value = static_cast<double>(worths.bought_lunch.minor) * static_cast<double>(open_.size());
    std::map<basics::Day, std::map<cookbook::DishId, int>> minutes;
    std::map<std::tuple<stock::LotNumber, std::int64_t, basics::Day>, int> shared;
    for (std::size_t i = 0; i < lunches.size(); ++i) {
        const LunchChoice& lunch = lunches[i];
        if (lunch.kind == LunchKind::bought) {
            judged.value -= static_cast<double>(worths.bought_lunch.minor);
            continue;
        }
        judged.value += liking(lunch) - had_lately(lunch);
        if (lunch.kind == LunchKind::cooked)
            minutes[lunch.day][*lunch.dish] = kitchen_->cookbook()[*lunch.dish].minutes;
        if (lunch.kind == LunchKind::larger) judged.value -= static_cast<double>(2 * worths.minute.minor);
        if (lunch.kind == LunchKind::frozen_pack) ++shared[{lunch.lot, lunch.pack, lunch.day}];
        for (std::size_t j = 0; j < i; ++j) {
            if (lunches[j].person != lunch.person || lunches[j].dish != lunch.dish) continue;
            const int gap = kitchen_->cookbook()[*lunch.dish].gap;
            const auto apart = static_cast<double>(std::abs((lunches[j].day - lunch.day).count()));
            if (apart < gap) judged.value -= static_cast<double>(worths.had_lately.minor) * (gap - apart) / gap / heads;
        }
    }
    for (const auto& [day, dishes] : minutes) {
        int sum = 0;
        for (const auto& [dish, number] : dishes) sum += number;
        judged.value -= static_cast<double>(std::max(0, sum - 20) * worths.minute.minor);
    }
    std::map<std::pair<stock::LotNumber, std::int64_t>, int> thawed;
    for (const auto& [key, eaters] : shared) {
        const auto& [lot, pack, day] = key;
        const int count = static_cast<int>((std::int64_t{1000} * eaters + pack - 1) / pack);
        thawed[{lot, pack}] += count;
        judged.value -= static_cast<double>(kitchen::price(*kitchen_, *kitchen_->lot(lot), pack).minor * count);
    }
    for (const auto& [key, count] : thawed) {
        const auto there = std::count_if(packs_.begin(), packs_.end(), [&, k = key](const Batch& pack) {
            return pack.lot == k.first && pack.pack == k.second;
        });
        if (count > there) judged.faults.emplace_back("more packs than there are");
    }
    std::map<IngredientId, std::int64_t> saved;
    std::map<IngredientId, std::int64_t> early;
    std::map<IngredientId, std::int64_t> late;
    std::map<IngredientId, std::int64_t> lacks;
    std::set<IngredientId> wanted;
    std::vector<Batch> batches = batches_;
    for (const Want& want : wants_of(lunches)) {
        wanted.insert(want.of);
        const auto lacking = eat(batches, want, end_, &saved, want.meal < buys_from_ ? &early : &late);
        if (lacking == 0) continue;
        const auto& thing = kitchen_->catalogue()[want.of];
        if (want.meal < buys_from_ || !thing.pack || thing.kind == catalogue::Kind::cooked)
            judged.faults.push_back("lacks " + thing.id);
        lacks[want.of] += lacking;
    }
    for (const IngredientId of : wanted) {
        if (saved[of] > 0) judged.value += worth_.at(of) * static_cast<double>(saved[of]);
        judged.value -= cost_of_rest(of, early[of], late[of], lacks[of]);
    }
    return judged;
}

}  // namespace samebase::tests
