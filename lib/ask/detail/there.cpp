#include "ask/detail/there.hpp"

namespace samebase::ask::detail {

std::int64_t in_danger_at(const flow::Part& part, flow::Slot slot) {
    std::int64_t total = 0;
    for (std::size_t i = 0; i < part.component.units.size(); ++i) {
        const flow::Fate& fate = part.outcome.fates[i];
        if (fate.tossed == 0 || slot < fate.from || slot > fate.end()) continue;
        total += fate.tossed;
        for (const flow::Use& use : part.outcome.uses) {
            const auto want = static_cast<std::size_t>(use.want);
            if (use.unit == static_cast<int>(i) && part.component.wants[want].slot == slot) total += use.amount;
        }
    }
    return total;
}

std::int64_t available_at(const flow::Component& component, flow::Slot slot) {
    std::int64_t total = 0;
    for (const flow::Unit& unit : component.units) {
        const bool late = unit.cold_water && slot == flow::dinner_of(0);
        const bool thawed = unit.thaw_days <= 0 || late || flow::day_of(slot) >= unit.thaw_days;
        if (thawed && slot >= unit.first && slot <= unit.last) total += unit.amount;
    }
    return total;
}

}  // namespace samebase::ask::detail
