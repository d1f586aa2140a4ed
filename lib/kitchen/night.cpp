#include "kitchen/night.hpp"

#include <algorithm>
#include <chrono>
#include <cstdlib>

namespace samebase::kitchen {

int minutes_of(const Household& household, basics::Day day) {
    return household.minutes[std::chrono::weekday{day}.c_encoding()];
}

std::int64_t heads(const Kitchen& kitchen, basics::Day day, Meal meal) {
    auto count = static_cast<std::int64_t>(eaters(kitchen, day, meal).size());
    if (meal == Meal::lunch) return count;
    for (const Occasion& occasion : kitchen.household.occasions) count += occasion.day == day ? occasion.guests : 0;
    return count;
}

std::optional<NotFor> not_for(const Kitchen& kitchen, basics::Day day, Meal meal, cookbook::DishId id,
                              bool ready_meal) {
    const cookbook::Dish& dish = kitchen.cookbook()[id];
    if (!(meal == Meal::dinner ? dish.dinner : dish.lunch)) return NotFor::meal;
    const auto kind = meal == Meal::dinner ? standing_kind(kitchen.household, day) : std::nullopt;
    if (kind && std::find(dish.kinds.begin(), dish.kinds.end(), *kind) == dish.kinds.end()) return NotFor::kind;
    if (!ready_meal && dish.minutes > minutes_of(kitchen.household, day)) return NotFor::minutes;
    return std::nullopt;
}

bool within_gap(const Kitchen& kitchen, basics::Day day, Meal meal, cookbook::DishId id) {
    const int gap = kitchen.cookbook()[id].gap;
    const auto near = [&](const auto& rows, const auto& counts) {
        auto row = std::lower_bound(rows.begin(), rows.end(), day - basics::days{gap - 1},
                                    [](const auto& one, basics::Day first) { return one.day < first; });
        for (; row != rows.end() && (row->day - day).count() < gap; ++row) {
            if (row->dish == id && counts(*row)) return true;
        }
        return false;
    };
    return near(kitchen.history, [](const Had&) { return true; }) ||
           near(kitchen.plan, [&](const Planned& row) { return row.day != day || row.meal != meal; });
}

}  // namespace samebase::kitchen
