#include "ask/detail/plan_report.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "basics/exact.hpp"
#include "basics/ranges.hpp"
#include "kitchen/cooking.hpp"
#include "menu/evaluator.hpp"

namespace samebase::ask::detail {

namespace {

using basics::Money;
using menu::thousandths;

/// Less is not worth telling as a reason.
constexpr menu::Worth worth_telling = 50 * thousandths;
constexpr std::size_t most_runners_up = 3;

Money rounded(menu::Worth worth) {
    return {std::llround(static_cast<double>(worth) / static_cast<double>(thousandths))};
}

/// What an option does to one item, beside all else that is chosen.
struct Change {
    catalogue::IngredientId of;
    menu::Worth spent = 0;   ///< more
    menu::Worth tossed = 0;  ///< more
    menu::Worth tossed_of_stock = 0;
    menu::Worth kept = 0;  ///< more, as it counts
};

std::vector<Change> changes(const PlanProblem& built, menu::Evaluator& evaluator, int slot) {
    const int chosen = evaluator.plan()[static_cast<std::size_t>(slot)];
    const menu::Option& option = built.problem.options[static_cast<std::size_t>(chosen)];
    std::vector<menu::Supplied> with;
    for (const menu::Need& need : option.needs) with.push_back(evaluator.supplied(need.item));
    evaluator.set(slot, -1);
    std::vector<Change> result;
    for (std::size_t n = 0; n < with.size(); ++n) {
        const menu::Item& item = built.problem.items[static_cast<std::size_t>(option.needs[n].item)];
        const menu::Supplied without = evaluator.supplied(option.needs[n].item);
        const auto counts = [&](const menu::Supplied& s) { return s.kept * item.kept_thousandths / 1000; };
        result.push_back({item.ingredient, with[n].spent - without.spent, with[n].tossed - without.tossed,
                          with[n].tossed_of_stock - without.tossed_of_stock, counts(with[n]) - counts(without)});
    }
    evaluator.set(slot, chosen);
    return result;
}

class Reporter {
  public:
    Reporter(const PlanProblem& built, const kitchen::Kitchen& kitchen, const menu::Choice& choice)
        : built_(built), kitchen_(kitchen), evaluator_(built.problem) {
        evaluator_.set(choice);
        for (std::size_t s = 0; s < built.problem.slots.size(); ++s)
            slot_of_[built.problem.slots[s].day] = static_cast<int>(s);
    }

    PlanAnswer report() {
        answer_.span = built_.span;
        answer_.empty = built_.empty;
        answer_.value = rounded(evaluator_.value());
        for (const basics::Day day : basics::days_of(built_.span)) one_day(day);
        balance();
        return std::move(answer_);
    }

  private:
    void one_day(basics::Day day) {
        PlanDay row;
        row.day = day;
        const auto had = kitchen::had(kitchen_.history, day);
        const auto dinner =
            std::find_if(had.begin(), had.end(), [](const auto& one) { return one.meal == kitchen::Meal::dinner; });
        const auto* planned = kitchen::planned(built_.bare.plan, day, kitchen::Meal::dinner);
        const auto slot = slot_of_.find(day);
        if (dinner != had.end()) {
            row.state = PlanDay::State::had;
            row.dish = dinner->dish;
        } else if (planned != nullptr) {
            stands(*planned, row);
        } else if (slot == slot_of_.end()) {
            row.state = PlanDay::State::nobody_home;
        } else {
            row.kind = kitchen::standing_kind(kitchen_.household, day);
            chosen(slot->second, row);
        }
        answer_.days.push_back(std::move(row));
    }

    void stands(const kitchen::Planned& planned, PlanDay& row) const {
        const bool wished = std::find(built_.wished.begin(), built_.wished.end(), row.day) != built_.wished.end();
        row.state = wished ? PlanDay::State::wished : PlanDay::State::planned;
        row.dish = planned.dish;
        row.ready_meal = planned.ready_meal;
        row.cooking = kitchen::cook(built_.bare, planned);
        if (wished) row.reasons.push_back({PlanReason::Kind::wished, {}, {}});
    }

    void chosen(int slot, PlanDay& row) {
        const int o = evaluator_.plan()[static_cast<std::size_t>(slot)];
        if (o < 0) {
            row.state = PlanDay::State::empty;
            const auto& options = built_.problem.slots[static_cast<std::size_t>(slot)].options;
            // What could be had comes too near to what is chosen.
            if (!options.empty())
                answer_.empty.push_back({row.day, row.kind, PlanEmpty::Way::gap, 0, static_cast<int>(options.size())});
            return;
        }
        const menu::Option& option = built_.problem.options[static_cast<std::size_t>(o)];
        const PlanDetail& detail = built_.details[static_cast<std::size_t>(option.detail)];
        row.dish = option.dish;
        row.ready_meal = detail.cooking.ready_meal;
        row.stand_ins = detail.stand_ins;
        row.cooking = detail.cooking;
        answer_.cost +=
            basics::share_of(kitchen::cost_per_serve(kitchen_, option.dish), detail.cooking.serves_thousandths, 1000);
        reasons(slot, row);
    }

    /// When the dish was had, stands or is chosen last before that day.
    [[nodiscard]] std::optional<basics::Day> last_time(cookbook::DishId dish, basics::Day day) const {
        std::optional<basics::Day> last;
        const auto consider = [&](basics::Day other, cookbook::DishId what) {
            if (what == dish && other < day && (!last || other > *last)) last = other;
        };
        for (const kitchen::Had& had : kitchen_.history) consider(had.day, had.dish);
        for (const kitchen::Planned& row : built_.bare.plan) consider(row.day, row.dish);
        for (const PlanDay& row : answer_.days) {
            if (row.state == PlanDay::State::proposed) consider(row.day, *row.dish);
        }
        return last;
    }

    void reasons(int slot, PlanDay& row) {
        auto all = changes(built_, evaluator_, slot);
        std::stable_sort(all.begin(), all.end(),
                         [](const Change& a, const Change& b) { return a.tossed_of_stock < b.tossed_of_stock; });
        for (const Change& change : all) {
            if (change.tossed_of_stock <= -worth_telling)
                row.reasons.push_back({PlanReason::Kind::uses_up, change.of, {}});
        }
        const auto last = last_time(*row.dish, row.day);
        if (last && (row.day - *last).count() >= a_while)
            row.reasons.push_back({PlanReason::Kind::not_since, {}, last});
        if (!last && !kitchen_.history.empty()) row.reasons.push_back({PlanReason::Kind::never_had, {}, {}});
        if (all_in_the_house(row.cooking)) row.reasons.push_back({PlanReason::Kind::from_stock, {}, {}});
    }

    [[nodiscard]] bool all_in_the_house(const flow::Cooking& cooking) const {
        return std::all_of(cooking.needs.begin(), cooking.needs.end(), [&](const flow::Needed& need) {
            if (!built_.balancer->counted(need.ingredient)) return true;
            std::int64_t there = 0;
            for (const flow::Unit& unit : built_.balancer->stock(need.ingredient).units) there += unit.amount;
            return there >= need.amount;
        });
    }

    void balance() {
        std::vector<flow::Cooking> cookings = built_.standing;
        for (const PlanDay& day : answer_.days) {
            if (day.state == PlanDay::State::proposed) cookings.push_back(day.cooking);
        }
        const flow::Balance balance = built_.balancer->balance(std::move(cookings));
        answer_.spent = balance.totals.spent;
        answer_.more = answer_.spent - built_.balancer->balance(built_.standing).totals.spent;
        answer_.binned = balance.totals.tossed;
        std::map<basics::Day, Money> trips;
        for (const auto& part : balance.parts) {
            for (const flow::Fate& fate : part->outcome.fates) {
                if (fate.bought)
                    trips[balance.span.first + basics::days{flow::day_of(fate.unit.first)}] += fate.unit.price;
            }
        }
        for (const auto& [day, spent] : trips) answer_.trips.push_back({day, spent});
    }

    const PlanProblem& built_;
    const kitchen::Kitchen& kitchen_;
    menu::Evaluator evaluator_;
    std::map<basics::Day, int> slot_of_;
    PlanAnswer answer_;
};

std::vector<PlanRunnerUp> runners_up(const PlanProblem& built, menu::Evaluator& evaluator, int slot) {
    const int chosen = evaluator.plan()[static_cast<std::size_t>(slot)];
    std::vector<PlanRunnerUp> all;
    for (const int o : built.problem.slots[static_cast<std::size_t>(slot)].options) {
        if (o == chosen || evaluator.clashes(o)) continue;
        all.push_back({built.problem.options[static_cast<std::size_t>(o)].dish,
                       rounded(evaluator.value() - evaluator.with(slot, o))});
    }
    std::sort(all.begin(), all.end(), [](const PlanRunnerUp& a, const PlanRunnerUp& b) {
        return a.less != b.less ? a.less < b.less : a.dish < b.dish;
    });
    if (all.size() > most_runners_up) all.resize(most_runners_up);
    return all;
}

}  // namespace

PlanAnswer plan_reported(const PlanProblem& built, const kitchen::Kitchen& kitchen, const menu::Choice& choice) {
    return Reporter(built, kitchen, choice).report();
}

std::optional<PlanWhy> plan_explained(const PlanProblem& built, const menu::Choice& choice, basics::Day day) {
    const auto& slots = built.problem.slots;
    const auto found = std::find_if(slots.begin(), slots.end(), [&](const auto& slot) { return slot.day == day; });
    if (found == slots.end()) return std::nullopt;
    const auto slot = static_cast<int>(found - slots.begin());
    const int chosen = choice[static_cast<std::size_t>(slot)];
    if (chosen < 0) return std::nullopt;
    menu::Evaluator evaluator(built.problem);
    evaluator.set(choice);
    PlanWhy why{day, {}, {}, {}};
    why.worth = rounded(evaluator.value() - evaluator.with(slot, -1) - found->empty);
    const auto add = [&](menu::Line line, menu::Worth worth, catalogue::IngredientId of) {
        if (const Money money = rounded(worth); money.minor != 0) why.because.push_back({line, money, of, {}});
    };
    for (const Change& change : changes(built, evaluator, slot)) {
        add(menu::Line::waste_avoided, -change.tossed, change.of);
        add(menu::Line::to_buy, -change.spent, change.of);
        add(menu::Line::kept, change.kept, change.of);
    }
    const menu::Option& option = built.problem.options[static_cast<std::size_t>(chosen)];
    const PlanDetail& detail = built.details[static_cast<std::size_t>(option.detail)];
    why.because.insert(why.because.end(), detail.because.begin(), detail.because.end());
    if (const Money money = rounded(-evaluator.group_cost(chosen)); money.minor != 0)
        why.because.push_back({menu::Line::had_lately, money, {}, "too like the days and the week around it"});
    std::stable_sort(why.because.begin(), why.because.end(),
                     [](const PlanBecause& a, const PlanBecause& b) { return a.line < b.line; });
    why.runners_up = runners_up(built, evaluator, slot);
    return why;
}

}  // namespace samebase::ask::detail
