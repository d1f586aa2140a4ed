#include "ask/detail/at_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "ask/detail/candidate.hpp"

namespace samebase::ask::detail {

namespace {

/// By ingredient handle: so that of two stand-ins the one that is there is taken. A ready meal is taken as there.
std::vector<std::int64_t> in_stock(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned) {
    constexpr auto plenty = std::numeric_limits<std::int64_t>::max();
    std::vector<std::int64_t> amounts(kitchen.catalogue().ingredients().size(), planned.ready_meal ? plenty : 0);
    if (planned.ready_meal) return amounts;
    for (const stock::Lot& lot : kitchen.lots) {
        auto& amount = amounts[lot.ingredient.index()];
        if (lot.rough) amount = plenty;
        if (lot.usable_amount() && amount < plenty) amount += lot.amount.value();
    }
    return amounts;
}

}  // namespace

AtTable at_table(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned) {
    return at_table(kitchen, planned, kitchen::eaters(kitchen, planned.day, planned.meal));
}

AtTable at_table(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned, std::vector<std::size_t> eaters) {
    AtTable table;
    if (kitchen.cookbook()[planned.dish].ingredients.empty()) return table;  // a night without cooking
    Setting setting;
    setting.kitchen = &kitchen;
    setting.today = planned.day - basics::days{1};  // what soaks overnight is no matter of the table
    setting.question.day = planned.day;
    setting.question.serves = planned.serves;
    setting.meal = planned.meal;
    setting.eaters = std::move(eaters);
    if (planned.meal == kitchen::Meal::dinner) setting.guests_avoid = kitchen::guests_avoid(kitchen, planned.day);
    setting.available = in_stock(kitchen, planned);
    setting.can_be_bought_before.assign(setting.available.size(), true);
    setting.holds = flow::held_allergens(kitchen);
    setting.swaps = planned.swaps;
    const Candidate checked = planned.ready_meal ? warmed(setting, planned.dish) : candidate(setting, planned.dish);
    table.refused = checked.ruled_out;
    table.vetoed = checked.vetoed;
    for (const flow::LineSwap& swap : checked.swaps) {
        const bool said = std::any_of(planned.swaps.begin(), planned.swaps.end(),
                                      [&](const flow::LineSwap& other) { return other.of == swap.of; });
        if (!said) table.swaps.push_back(swap);
    }
    for (const StandInUse& use : checked.stand_ins) {
        std::string words;
        for (const auto& [id, amount] : use.use) {
            if (!words.empty()) words += " and ";
            words += kitchen.catalogue()[id].name;
        }
        table.cautions.push_back(fmt::format("Someone at the table avoids what {} holds: use {} in its place.",
                                             kitchen.catalogue()[use.replaced].name, words));
    }
    for (const std::string& veto : checked.vetoed)
        table.cautions.push_back(veto + ": a serve apart for them, or another dish.");
    table.cautions.insert(table.cautions.end(), checked.cautions.begin(), checked.cautions.end());
    return table;
}

}  // namespace samebase::ask::detail
