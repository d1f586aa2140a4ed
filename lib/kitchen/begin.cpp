#include "kitchen/begin.hpp"

#include <fmt/format.h>

namespace samebase::kitchen {

Change begin(const At& at, std::span<const stock::Lot> lots, const Plan& plan, std::span<const Had> history) {
    Change change;
    change.command = begin_command;
    change.day = at.day;
    change.line =
        fmt::format("Began with {} lots, {} planned meals and {} past ones.", lots.size(), plan.size(), history.size());
    for (const stock::Lot& lot : lots) {
        stock::Entry entry;
        entry.kind = stock::Kind::got;
        entry.column = stock::Column::in;
        entry.day = at.day;
        entry.place = lot.place;
        entry.delta = lot.amount.value();
        entry.after = lot;
        change.entries.push_back(std::move(entry));
    }
    for (const Planned& row : plan) change.plan.push_back({true, row});
    for (const Had& row : history) change.history.push_back({true, row});
    return change;
}

}  // namespace samebase::kitchen
