#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "ask/detail/candidate.hpp"
#include "stock/thaw.hpp"

namespace samebase::ask::detail {

namespace {

void thawing(const kitchen::Kitchen& kitchen, const std::vector<LotUse>& uses, const flow::Cooking& cooking,
             basics::Day today, std::vector<std::string>& cautions) {
    for (const LotUse& use : uses) {
        if (use.state != stock::State::frozen) continue;
        const catalogue::Ingredient& thing = kitchen.catalogue()[use.ingredient];
        if (thing.thaw == catalogue::Thaw::from_frozen) continue;
        if (cooking.day == today) {
            const auto mass = catalogue::weight(use.amount, thing);
            cautions.push_back(fmt::format(
                "The {} is frozen: thaw it in cold water in a leakproof bag, changed every 30 minutes, about "
                "{} minutes, never on the bench, and cook it at once.",
                thing.name, stock::cold_water_minutes(mass ? mass->value : 0)));
        } else {
            cautions.push_back(
                fmt::format("The {} is frozen: thaw it in the fridge, 24 hours for every 1.8 kg and at least 24 hours.",
                            thing.name));
        }
    }
}

}  // namespace

std::vector<std::string> safety_cautions(const kitchen::Kitchen& kitchen, const flow::Cooking& cooking,
                                         const std::vector<LotUse>& uses, basics::Day today) {
    std::vector<std::string> cautions;
    thawing(kitchen, uses, cooking, today, cautions);
    int hottest = 0;
    std::string what;
    bool leftover = false;
    for (const flow::Needed& need : cooking.needs) {
        const catalogue::Ingredient& thing = kitchen.catalogue()[need.ingredient];
        leftover = leftover || thing.kind == catalogue::Kind::cooked;
        if (thing.kind != catalogue::Kind::cooked && thing.cook_to && *thing.cook_to > hottest) {
            hottest = *thing.cook_to;
            what = thing.name;
        }
    }
    if (hottest > 0) cautions.push_back(fmt::format("Cook the {} to {} degrees in the centre.", what, hottest));
    if (leftover) {
        cautions.push_back("Leftovers: heat to 75 degrees, steaming, once only; what was out for 2 hours is not kept.");
    }
    for (const LotUse& use : uses) {
        if (use.use_by == today && cooking.day == today) {
            cautions.push_back(fmt::format("The {} must be eaten today: its use-by is {}.",
                                           kitchen.catalogue()[use.ingredient].name, basics::short_day(*use.use_by)));
        }
    }
    return cautions;
}

}  // namespace samebase::ask::detail
