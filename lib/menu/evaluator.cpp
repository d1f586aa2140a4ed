#include "menu/evaluator.hpp"

#include <algorithm>
#include <cstdlib>

namespace samebase::menu {

namespace {

std::size_t at(int position) {
    return static_cast<std::size_t>(position);
}

}  // namespace

Evaluator::Evaluator(const Problem& problem)
    : problem_(&problem),
      choice_(problem.slots.size(), -1),
      wants_(problem.items.size()),
      days_(problem.groups.size()),
      lacks_(problem.items.size(), false) {
    for (const MealSlot& slot : problem.slots) {
        total_ -= slot.empty;
        weeks_ = std::max(weeks_, slot.week + 1);
    }
    for (const Item& item : problem.items) {
        lines_.push_back(supply_.run(item, {}).worth(item));
        total_ += lines_.back();
    }
    a_week_.assign(problem.groups.size() * at(weeks_), 0);
    for (std::size_t g = 0; g < problem.groups.size(); ++g) {
        const auto& standing = problem.groups[g].standing;
        for (std::size_t week = 0; week < std::min(standing.size(), at(weeks_)); ++week)
            a_week_[g * at(weeks_) + week] = standing[week];
    }
}

Worth Evaluator::pairs(int group, int day) const {
    const Group& of = problem_->groups[at(group)];
    Worth cost = 0;
    if (of.never) return cost;
    for (const int other : days_[at(group)]) cost += too_soon(of, std::abs(other - day));
    return cost;
}

Worth Evaluator::group_cost(int option) const {
    const Option& of = problem_->options[at(option)];
    const MealSlot& slot = problem_->slots[at(of.slot)];
    const bool chosen = choice_[at(of.slot)] == option;
    Worth cost = 0;
    for (const int g : of.groups) {
        const Group& group = problem_->groups[at(g)];
        cost += pairs(g, slot.day_number) - (chosen && !group.never ? too_soon(group, 0) : 0);
        const int others = a_week_[at(g) * at(weeks_) + at(slot.week)] - (chosen ? 1 : 0);
        if (group.a_week >= 0 && others >= group.a_week) cost += group.price_over;
    }
    return cost;
}

void Evaluator::add(const Option& option) {
    const MealSlot& slot = problem_->slots[at(option.slot)];
    total_ += option.worth;
    for (const int g : option.groups) {
        const Group& group = problem_->groups[at(g)];
        total_ -= pairs(g, slot.day_number);
        auto& days = days_[at(g)];
        days.insert(std::upper_bound(days.begin(), days.end(), slot.day_number), slot.day_number);
        int& count = a_week_[at(g) * at(weeks_) + at(slot.week)];
        if (group.a_week >= 0 && count >= group.a_week) total_ -= group.price_over;
        ++count;
    }
    for (const Need& need : option.needs) {
        auto& wants = wants_[at(need.item)];
        const auto after = std::upper_bound(wants.begin(), wants.end(), slot.time,
                                            [](flow::Slot time, const flow::Want& want) { return time < want.slot; });
        wants.insert(after, {slot.time, need.amount});
    }
}

void Evaluator::remove(const Option& option) {
    const MealSlot& slot = problem_->slots[at(option.slot)];
    total_ -= option.worth;
    for (const int g : option.groups) {
        const Group& group = problem_->groups[at(g)];
        auto& days = days_[at(g)];
        days.erase(std::find(days.begin(), days.end(), slot.day_number));
        total_ += pairs(g, slot.day_number);
        int& count = a_week_[at(g) * at(weeks_) + at(slot.week)];
        --count;
        if (group.a_week >= 0 && count >= group.a_week) total_ += group.price_over;
    }
    for (const Need& need : option.needs) {
        auto& wants = wants_[at(need.item)];
        wants.erase(std::find(wants.begin(), wants.end(), flow::Want{slot.time, need.amount}));
    }
}

void Evaluator::settle(const Option& option) {
    for (const Need& need : option.needs) {
        const Item& item = problem_->items[at(need.item)];
        const Supplied now = supply_.run(item, wants_[at(need.item)]);
        const bool lacks = now.missing > 0;
        const Worth line = now.worth(item) - (lacks ? cannot_be_had : 0);
        total_ += line - lines_[at(need.item)];
        lines_[at(need.item)] = line;
        lacking_ += (lacks ? 1 : 0) - (lacks_[at(need.item)] ? 1 : 0);
        lacks_[at(need.item)] = lacks;
    }
}

void Evaluator::set(int slot, int option) {
    const int before = choice_[at(slot)];
    if (before == option) return;
    const Worth empty = problem_->slots[at(slot)].empty;
    choice_[at(slot)] = option;
    if (before >= 0) {
        remove(problem_->options[at(before)]);
        total_ -= empty;
    }
    if (option >= 0) {
        add(problem_->options[at(option)]);
        total_ += empty;
        settle(problem_->options[at(option)]);
    }
    if (before >= 0) settle(problem_->options[at(before)]);
}

void Evaluator::set(const Choice& choice) {
    for (std::size_t slot = 0; slot < choice.size(); ++slot) set(static_cast<int>(slot), choice[slot]);
}

Worth Evaluator::with(int slot, int option) {
    const int before = choice_[at(slot)];
    set(slot, option);
    const Worth value = total_;
    set(slot, before);
    return value;
}

bool Evaluator::clashes(int option, int except) const {
    if (option < 0) return false;
    const Option& of = problem_->options[at(option)];
    const int day = problem_->slots[at(of.slot)].day_number;
    for (const int g : of.groups) {
        const Group& group = problem_->groups[at(g)];
        if (!group.never) continue;
        int near = 0;
        for (const int other : days_[at(g)]) near += std::abs(other - day) < group.within ? 1 : 0;
        // What is chosen at the two slots that make way does not count.
        const auto makes_way = [&](int slot) {
            const int chosen = slot < 0 ? -1 : choice_[at(slot)];
            if (chosen < 0) return 0;
            const Option& other = problem_->options[at(chosen)];
            const bool in_group = std::binary_search(other.groups.begin(), other.groups.end(), g);
            return in_group && std::abs(problem_->slots[at(slot)].day_number - day) < group.within ? 1 : 0;
        };
        near -= makes_way(of.slot) + (except != of.slot ? makes_way(except) : 0);
        if (near > 0) return true;
    }
    return false;
}

Supplied Evaluator::supplied(int item) {
    return supply_.run(problem_->items[at(item)], wants_[at(item)]);
}

Worth value_of(const Problem& problem, const Choice& choice) {
    Evaluator evaluator(problem);
    evaluator.set(choice);
    return evaluator.value();
}

}  // namespace samebase::menu
