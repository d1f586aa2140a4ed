#include "menu/problem.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace samebase::menu {

namespace {

bool in_range(int position, std::size_t size) {
    return position >= 0 && static_cast<std::size_t>(position) < size;
}

std::string check(const Problem& problem, const Option& option) {
    for (std::size_t i = 0; i < option.needs.size(); ++i) {
        const Need& need = option.needs[i];
        if (!in_range(need.item, problem.items.size())) return fmt::format("there is no item {}", need.item);
        if (need.amount <= 0) return fmt::format("an amount of {} of item {}", need.amount, need.item);
        if (i > 0 && option.needs[i - 1].item >= need.item) return "needs are not in the order of items";
    }
    for (std::size_t i = 0; i < option.groups.size(); ++i) {
        if (!in_range(option.groups[i], problem.groups.size()))
            return fmt::format("there is no group {}", option.groups[i]);
        if (i > 0 && option.groups[i - 1] >= option.groups[i]) return "groups are not in order";
    }
    return {};
}

}  // namespace

Worth too_soon(const Group& group, int days_apart) {
    if (days_apart >= group.within) return 0;
    if (group.within < 2 || days_apart < 1) return group.price;
    return group.price * (group.within - days_apart) / (group.within - 1);
}

std::string check(const Problem& problem) {
    for (std::size_t s = 0; s < problem.slots.size(); ++s) {
        const MealSlot& slot = problem.slots[s];
        if (s > 0 && problem.slots[s - 1].time >= slot.time) return "slots are not in the order of time";
        for (const int o : slot.options) {
            if (!in_range(o, problem.options.size())) return fmt::format("there is no option {}", o);
            if (problem.options[static_cast<std::size_t>(o)].slot != static_cast<int>(s))
                return fmt::format("option {} is of another slot", o);
        }
    }
    for (const Option& option : problem.options) {
        if (std::string reason = check(problem, option); !reason.empty()) return reason;
    }
    return {};
}

}  // namespace samebase::menu
