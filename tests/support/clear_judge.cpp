#include "support/clear_judge.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "kitchen/cooking.hpp"
#include "stock/thaw.hpp"
#include "support/frozen_packs.hpp"

namespace samebase::tests {

namespace {

using basics::days;
using catalogue::IngredientId;

constexpr int forever = 1'000'000;

/// The second shopping day after today, and at least a week.
basics::Day looked_at_until(const kitchen::Kitchen& kitchen, basics::Day today, basics::Day until) {
    int seen = 0;
    basics::Day second = today;
    for (int i = 1; i <= 21 && seen < 2; ++i) {
        const std::chrono::weekday weekday{today + days{i}};
        const auto& trips = kitchen.household.trips;  // weekly ones, for everything
        if (std::none_of(trips.begin(), trips.end(), [&](const auto& trip) { return trip.weekday == weekday; }))
            continue;
        ++seen;
        second = today + days{i};
    }
    basics::Day result = today + days{7};
    if (seen == 2) result = std::max(result, second);
    return std::max(result, until);
}

/// What a dish takes is the kitchen's own arithmetic, whole packs of a main among it; nobody here needs a serve apart.
std::vector<std::pair<IngredientId, std::int64_t>> wants_of(const kitchen::Kitchen& kitchen, cookbook::DishId id,
                                                            std::int64_t serves) {
    const kitchen::Takes takes = kitchen::takes(kitchen, {{}, kitchen::Meal::dinner, id, serves, {}});
    std::vector<std::pair<IngredientId, std::int64_t>> wants;
    for (const kitchen::Needed& need : kitchen::sums(kitchen, id, takes, kitchen::Lines::required)) {
        if (!kitchen.taken_as_there(need.ingredient)) wants.emplace_back(need.ingredient, need.amount);
    }
    return wants;
}

std::int64_t serves_at(const kitchen::Kitchen& kitchen, basics::Day day, kitchen::Meal meal) {
    std::int64_t serves = 0;
    for (const auto& person : kitchen.household.people) {
        if (kitchen::home(person, day, meal)) serves += person.serve_thousandths;
    }
    if (meal == kitchen::Meal::lunch) return serves;
    for (const auto& occasion : kitchen.household.occasions) {
        if (occasion.day == day) serves += std::int64_t{1000} * occasion.guests;
    }
    return serves;
}

}  // namespace

Judge::Judge(const kitchen::Kitchen& kitchen, basics::Day today, basics::Day until)
    : kitchen_(&kitchen), today_(today), until_(until), horizon_(looked_at_until(kitchen, today, until)) {
    end_ = meal_number(horizon_, kitchen::Meal::dinner);
    for (basics::Day day = today; day <= until; day += days{1}) {
        for (const auto meal : {kitchen::Meal::lunch, kitchen::Meal::dinner}) {
            const bool taken = meal == kitchen::Meal::dinner &&
                               std::any_of(kitchen.household.occasions.begin(), kitchen.household.occasions.end(),
                                           [&](const auto& occasion) { return occasion.day == day && occasion.dish; });
            if (!taken && serves_at(kitchen, day, meal) > 0) open_.emplace_back(day, meal);
        }
    }
    stock_up();
    eat_what_stands();
    price_the_danger();
}

void Judge::price_the_danger() {
    std::map<IngredientId, double> price;
    std::map<IngredientId, bool> crisper;
    for (const Batch& batch : batches_) {
        if (!in_danger(batch) || batch.amount == 0) continue;
        const stock::Lot& lot = *kitchen_->lot(batch.lot);
        danger_[batch.ingredient] += batch.amount;
        price[batch.ingredient] += static_cast<double>(kitchen::price(*kitchen_, lot, batch.amount).minor);
        crisper[batch.ingredient] = crisper[batch.ingredient] || batch.crisper;
    }
    for (const auto& [id, amount] : danger_)
        worth_[id] = (crisper[id] ? 1.5 : 1.0) * price[id] / static_cast<double>(amount);
}

double Judge::price_of_nothing(basics::Day day, kitchen::Meal meal) const {
    std::int64_t heads = 0;
    for (const auto& person : kitchen_->household.people) heads += kitchen::home(person, day, meal) ? 1 : 0;
    for (const auto& occasion : kitchen_->household.occasions) {
        if (occasion.day == day && meal == kitchen::Meal::dinner) heads += occasion.guests;
    }
    return static_cast<double>(5 * heads * kitchen_->household.worths.bought_lunch.minor);
}

int Judge::meal_number(basics::Day day, kitchen::Meal meal) const {
    return 2 * static_cast<int>((day - today_).count()) + (meal == kitchen::Meal::dinner ? 1 : 0);
}

void Judge::stock_up() {
    for (const stock::Lot& lot : kitchen_->lots) {
        if (lot.rough || lot.amount.value() == 0 || kitchen_->taken_as_there(lot.ingredient)) continue;
        const bool rough = std::any_of(kitchen_->lots.begin(), kitchen_->lots.end(), [&](const stock::Lot& other) {
            return other.ingredient == lot.ingredient && other.rough;
        });
        if (rough) continue;
        const auto& thing = kitchen_->catalogue()[lot.ingredient];
        const auto kind = kitchen_->place(lot.place).kind;
        const bool cool = kind == stock::PlaceKind::fridge || kind == stock::PlaceKind::crisper;
        Batch batch{lot.ingredient, lot.amount.value(), 0, forever, lot.number, kind == stock::PlaceKind::crisper};
        if (lot.state != stock::State::frozen) {
            auto last = lot.use_by;
            if (cool && lot.best_by && (!last || *lot.best_by < *last)) last = lot.best_by;
            if (last) batch.last = meal_number(*last, kitchen::Meal::dinner);
            if (batch.last < 0) continue;
            if (lot.state == stock::State::thawing && lot.thawed_on)
                batch.first = std::max(0, meal_number(*lot.thawed_on, kitchen::Meal::lunch));
            batches_.push_back(batch);
            continue;
        }
        if (thing.thaw == catalogue::Thaw::from_frozen) {
            batches_.push_back(batch);
            continue;
        }
        // Pack by pack: each thaws in its own time, and what is flat and not cooked yet also in cold water today.
        for (const auto pack : frozen_packs(lot, thing)) {
            stock::Lot alone = lot;
            alone.amount = {thing.dimension, pack};
            alone.packs = {pack};
            const int thaws = stock::days_to_thaw(alone, thing, stock::ThawMethod::fridge);
            const bool water =
                thaws == 1 && thing.thaw == catalogue::Thaw::flat && thing.kind != catalogue::Kind::cooked;
            batch.amount = pack;
            batch.first = water ? 1 : 2 * thaws;
            batches_.push_back(batch);
        }
    }
    // What ends first comes first; then by lot.
    std::stable_sort(batches_.begin(), batches_.end(),
                     [](const Batch& a, const Batch& b) { return a.last != b.last ? a.last < b.last : a.lot < b.lot; });
}

bool Judge::stands(const kitchen::Planned& row) const {
    if (row.day < today_ || row.day > horizon_) return false;
    return std::find(open_.begin(), open_.end(), std::pair(row.day, row.meal)) == open_.end();
}

std::int64_t Judge::eat(std::vector<Batch>& batches, IngredientId id, int meal, std::int64_t amount, int danger_until,
                        std::int64_t* saved) {
    for (Batch& batch : batches) {
        if (batch.ingredient != id || meal < batch.first || meal > batch.last) continue;
        const auto bite = std::min(amount, batch.amount);
        batch.amount -= bite;
        amount -= bite;
        if (saved != nullptr && batch.last <= danger_until) *saved += bite;
    }
    return amount;
}

void Judge::eat_what_stands() {
    struct Mouth {
        int meal;
        IngredientId ingredient;
        std::int64_t amount;
    };
    std::vector<Mouth> mouths;
    for (const auto& row : kitchen_->plan) {
        if (!stands(row)) continue;
        const auto serves = (row.serves ? std::int64_t{1000} * *row.serves : serves_at(*kitchen_, row.day, row.meal)) +
                            std::int64_t{1000} * row.left;
        if (serves == 0) continue;
        if (row.ready_meal) {
            if (const auto left = kitchen_->cookbook()[row.dish].leaves)
                mouths.push_back({meal_number(row.day, row.meal), *left, serves});
            continue;
        }
        for (const auto& [id, amount] : wants_of(*kitchen_, row.dish, serves))
            mouths.push_back({meal_number(row.day, row.meal), id, amount});
    }
    for (const auto& use : kitchen_->household.standing_uses) {
        for (basics::Day day = today_; day <= horizon_; day += days{1}) {
            if ((use.weekdays >> std::chrono::weekday{day}.c_encoding() & 1U) == 0) continue;
            mouths.push_back({meal_number(day, kitchen::Meal::lunch), use.ingredient, use.amount.value()});
        }
    }
    std::stable_sort(mouths.begin(), mouths.end(), [](const Mouth& a, const Mouth& b) { return a.meal < b.meal; });
    for (const Mouth& mouth : mouths)
        static_cast<void>(eat(batches_, mouth.ingredient, mouth.meal, mouth.amount, end_, nullptr));
}

std::int64_t Judge::danger_at(IngredientId id, basics::Day day, kitchen::Meal meal) const {
    const int at = meal_number(day, meal);
    std::int64_t sum = 0;
    for (const Batch& batch : batches_) {
        if (batch.ingredient == id && in_danger(batch) && batch.first <= at && at <= batch.last) sum += batch.amount;
    }
    return sum;
}

Judged Judge::judge(std::span<const ChosenMeal> meals) const {
    Judged judged;
    std::vector<const ChosenMeal*> in_order;
    for (const auto& meal : meals) in_order.push_back(&meal);
    std::stable_sort(in_order.begin(), in_order.end(), [&](const auto* a, const auto* b) {
        return meal_number(a->day, a->meal) < meal_number(b->day, b->meal);
    });
    std::vector<Batch> batches = batches_;
    std::map<IngredientId, std::int64_t> bought;
    for (const ChosenMeal* meal : in_order) {
        for (const auto& [id, amount] : meal->wants) {
            const bool rough = std::any_of(kitchen_->lots.begin(), kitchen_->lots.end(),
                                           [&, of = id](const auto& lot) { return lot.ingredient == of && lot.rough; });
            if (rough) continue;
            std::int64_t saved = 0;
            const auto short_of = eat(batches, id, meal_number(meal->day, meal->meal), amount, end_, &saved);
            judged.saved[id] += saved;
            bought[id] += short_of;
        }
        judged.value += liking_and_variety(*meal) - meal->stand_in_loss;
    }
    judged.danger = danger_;
    for (const auto& [id, worth] : worth_) judged.value += worth * static_cast<double>(judged.saved[id]);
    for (const auto& [id, amount] : bought) {
        if (amount == 0) continue;
        const auto& pack = kitchen_->catalogue()[id].pack;
        if (!pack) {
            judged.faults.push_back("wants more than there is of " + kitchen_->catalogue()[id].id);
            continue;
        }
        const auto packs = (amount + pack->amount.value() - 1) / pack->amount.value();
        judged.packs[id] = packs;
        const auto each = kitchen::price(*kitchen_, id, pack->amount.value()).value_or(pack->price);
        judged.value -= static_cast<double>(packs * each.minor);
    }
    for (const auto& [day, meal] : open_) {
        const bool had = std::any_of(meals.begin(), meals.end(),
                                     [&, d = day, m = meal](const auto& x) { return x.day == d && x.meal == m; });
        if (had) continue;
        judged.value -= price_of_nothing(day, meal);
    }
    find_faults(meals, judged);
    return judged;
}

void Judge::find_faults(std::span<const ChosenMeal> meals, Judged& judged) const {
    const auto fault = [&](const ChosenMeal& meal, const std::string& words) {
        judged.faults.push_back(basics::iso(meal.day) + " " + kitchen_->cookbook()[meal.dish].id + ": " + words);
    };
    for (std::size_t i = 0; i < meals.size(); ++i) {
        const ChosenMeal& meal = meals[i];
        const cookbook::Dish& dish = kitchen_->cookbook()[meal.dish];
        if (std::find(open_.begin(), open_.end(), std::pair(meal.day, meal.meal)) == open_.end())
            fault(meal, "not open");
        if (!(meal.meal == kitchen::Meal::dinner ? dish.dinner : dish.lunch)) fault(meal, "not for that meal");
        if (!meal.ready_meal && dish.minutes > kitchen_->household.minutes[std::chrono::weekday{meal.day}.c_encoding()])
            fault(meal, "takes too long");
        for (const auto& person : kitchen_->household.people) {
            const bool never = std::any_of(person.marks.begin(), person.marks.end(),
                                           [&](const auto& said) { return said.dish == meal.dish && said.mark == -3; });
            if (never && kitchen::home(person, meal.day, meal.meal)) fault(meal, "somebody there will not eat it");
        }
        const auto kind = kitchen::standing_kind(kitchen_->household, meal.day);
        if (meal.meal == kitchen::Meal::dinner && kind &&
            std::find(dish.kinds.begin(), dish.kinds.end(), *kind) == dish.kinds.end())
            fault(meal, "not of the night's kind");
        const auto too_near = [&](basics::Day other) { return std::abs((other - meal.day).count()) < dish.gap; };
        for (const auto& had : kitchen_->history) {
            if (had.dish == meal.dish && too_near(had.day)) fault(meal, "had lately");
        }
        for (const auto& row : kitchen_->plan) {
            const bool open = std::find(open_.begin(), open_.end(), std::pair(row.day, row.meal)) != open_.end();
            if (!open && row.dish == meal.dish && too_near(row.day)) fault(meal, "planned near");
        }
        for (std::size_t j = 0; j < i; ++j) {
            if (meals[j].day == meal.day && meals[j].meal == meal.meal) fault(meal, "a second dish at one meal");
            // A dish never twice on one day, whatever its gap.
            if (meals[j].dish == meal.dish && (too_near(meals[j].day) || meals[j].day == meal.day))
                fault(meal, "twice within its gap");
        }
    }
}

double Judge::liking_and_variety(const ChosenMeal& meal) const {
    const cookbook::Dish& dish = kitchen_->cookbook()[meal.dish];
    double sum = 0;
    int eaters = 0;
    for (const auto& person : kitchen_->household.people) {
        if (!kitchen::home(person, meal.day, meal.meal)) continue;
        ++eaters;
        int mark = 0;
        bool dish_marked = false;
        bool dislikes = false;
        for (const auto& said : person.marks) {
            if (said.dish == meal.dish && !dish_marked) {
                mark = said.mark;
                dish_marked = true;
            }
        }
        if (!dish_marked) {
            for (const auto& [id, amount] : meal.wants) {
                for (const auto& of : person.dislikes) dislikes = dislikes || kitchen_->catalogue().is(id, of);
            }
            for (const auto& said : person.marks) {
                const bool in_it =
                    !said.dish && std::any_of(meal.wants.begin(), meal.wants.end(), [&](const auto& want) {
                        return kitchen_->catalogue().is(want.first, said.of);
                    });
                if (in_it) mark += said.mark;
            }
            mark = dislikes ? -3 : std::clamp(mark, -3, 3);
        }
        sum += mark;
    }
    double result =
        eaters == 0 ? 0 : std::nearbyint(static_cast<double>(kitchen_->household.worths.mark.minor) * sum / eaters);
    // Another dish of its base within seven days of what stands or was had; the dish itself is kept away by its gap.
    if (!dish.base) return result;
    long nearest = 99;
    const auto near = [&](basics::Day day, cookbook::DishId other) {
        if (other == meal.dish || kitchen_->cookbook()[other].base != dish.base) return;
        nearest = std::min(nearest, static_cast<long>(std::abs((day - meal.day).count())));
    };
    for (const auto& had : kitchen_->history) near(had.day, had.dish);
    for (const auto& row : kitchen_->plan) {
        if (std::find(open_.begin(), open_.end(), std::pair(row.day, row.meal)) == open_.end()) near(row.day, row.dish);
    }
    if (nearest <= 7) {
        result -= std::nearbyint(static_cast<double>(kitchen_->household.worths.had_lately.minor) *
                                 static_cast<double>(7 - nearest) / 28);
    }
    return result;
}

std::vector<ChosenMeal> choices(const kitchen::Kitchen& kitchen, const Judge& judge, basics::Day day,
                                kitchen::Meal meal) {
    std::vector<ChosenMeal> result;
    const auto serves = serves_at(kitchen, day, meal);
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size(); ++i) {
        const cookbook::Dish& dish = kitchen.cookbook()[cookbook::DishId{i}];
        ChosenMeal choice{day, meal, {i}, false, wants_of(kitchen, {i}, serves), 0};
        const ChosenMeal one[] = {choice};
        if (!judge.judge(one).faults.empty()) continue;
        result.push_back(choice);
        bool more = false;
        for (auto& [id, amount] : choice.wants) {
            const auto lines = std::count_if(dish.ingredients.begin(), dish.ingredients.end(),
                                             [&, of = id](const auto& l) { return !l.optional && l.ingredient == of; });
            const auto line = std::find_if(dish.ingredients.begin(), dish.ingredients.end(),
                                           [&, of = id](const auto& l) { return !l.optional && l.ingredient == of; });
            if (lines != 1) continue;
            const auto most = amount * line->most_thousandths / 1000;
            const auto wanted = std::min(most, judge.danger_at(id, day, meal));
            if (wanted <= amount) continue;
            amount = wanted;
            more = true;
        }
        if (more) result.push_back(choice);
    }
    return result;
}

}  // namespace samebase::tests
