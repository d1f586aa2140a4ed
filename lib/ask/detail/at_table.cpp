#include "ask/detail/at_table.hpp"

#include <fmt/format.h>

#include <limits>

#include "ask/detail/candidate.hpp"

namespace samebase::ask::detail {

AtTable at_table(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned) {
    return at_table(kitchen, planned, kitchen::eaters(kitchen, planned.day, planned.meal));
}

AtTable at_table(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned, std::vector<std::size_t> eaters) {
    AtTable table;
    if (kitchen.cookbook()[planned.dish].ingredients.empty()) return table;  // a night without cooking
    Setting setting;
    setting.kitchen = &kitchen;
    setting.today = planned.day;
    setting.question.day = planned.day;
    setting.question.serves = planned.serves;
    setting.meal = planned.meal;
    setting.using_ = kitchen.cookbook()[planned.dish].ingredients.front().ingredient;
    setting.eaters = std::move(eaters);
    if (planned.meal == kitchen::Meal::dinner) setting.guests_avoid = kitchen::guests_avoid(kitchen, planned.day);
    setting.available.assign(kitchen.catalogue().ingredients().size(), std::numeric_limits<std::int64_t>::max());
    setting.can_be_bought_before.assign(setting.available.size(), true);
    setting.holds = flow::held_allergens(kitchen);
    setting.swaps = planned.swaps;
    const Candidate checked = planned.ready_meal ? warmed(setting, planned.dish) : candidate(setting, planned.dish);
    table.refused = checked.ruled_out;
    for (const StandInUse& use : checked.stand_ins) {
        std::string words;
        for (const auto& [id, amount] : use.use) {
            if (!words.empty()) words += " and ";
            words += kitchen.catalogue()[id].name;
        }
        table.cautions.push_back(fmt::format("Someone at the table avoids what {} holds: use {} in its place.",
                                             kitchen.catalogue()[use.replaced].name, words));
    }
    table.cautions.insert(table.cautions.end(), checked.cautions.begin(), checked.cautions.end());
    return table;
}

}  // namespace samebase::ask::detail
