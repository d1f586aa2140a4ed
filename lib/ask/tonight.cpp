#include "ask/tonight.hpp"

#include <algorithm>
#include <tuple>

#include "ask/detail/candidate.hpp"

namespace samebase::ask {

namespace {

std::vector<InDanger> in_danger(const kitchen::Kitchen& kitchen, const flow::Balance& balance) {
    std::vector<InDanger> result;
    for (const auto& part : balance.parts) {
        for (const flow::Fate& fate : part->outcome.fates) {
            const stock::Lot* lot = kitchen.lot(fate.unit.lot);
            if (lot == nullptr || fate.tossed <= 0) continue;
            const basics::Day by =
                balance.span.first + basics::days{flow::day_of(fate.from == flow::never ? fate.unit.last : fate.to)};
            const auto price = basics::share_of(fate.unit.price, fate.tossed, fate.unit.amount);
            const measure::Amount amount{kitchen.catalogue()[lot->ingredient].dimension, fate.tossed};
            const auto same = std::find_if(result.begin(), result.end(),
                                           [&](const InDanger& d) { return d.lot == lot->number && d.by == by; });
            if (same == result.end()) {
                result.push_back({lot->ingredient, lot->number, amount, price, by, lot->use_by && *lot->use_by <= by});
            } else {
                same->amount += amount;
                same->price += price;
            }
        }
    }
    std::stable_sort(result.begin(), result.end(), [](const InDanger& a, const InDanger& b) {
        return std::tuple(a.by, -a.price.minor, a.lot) < std::tuple(b.by, -b.price.minor, b.lot);
    });
    return result;
}

std::vector<InDanger> past(const kitchen::Kitchen& kitchen, basics::Day today) {
    std::vector<InDanger> result;
    for (const stock::Lot& lot : kitchen.lots) {
        if (!lot.use_by || *lot.use_by >= today || lot.state == stock::State::frozen) continue;
        result.push_back({lot.ingredient, lot.number, lot.amount, kitchen::price(kitchen, lot, lot.amount.value()),
                          *lot.use_by, true});
    }
    return result;
}

std::vector<Short> short_of(const kitchen::Kitchen& kitchen, const flow::Balance& balance) {
    std::vector<Short> result;
    for (const auto& part : balance.parts) {
        for (std::size_t w = 0; w < part->component.wants.size(); ++w) {
            if (part->outcome.unmet[w] == 0) continue;
            result.push_back({part->component.ingredient,
                              {kitchen.catalogue()[part->component.ingredient].dimension, part->outcome.unmet[w]},
                              balance.span.first + basics::days{flow::day_of(part->component.wants[w].slot)},
                              part->reasons[w].dish});
        }
    }
    std::stable_sort(result.begin(), result.end(), [](const Short& a, const Short& b) { return a.day < b.day; });
    return result;
}

MealTonight meal(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned) {
    const flow::Cooking cooking = flow::cook(kitchen, planned);
    return {planned.dish, planned.ready_meal, cooking.serves_thousandths, kitchen.cookbook()[planned.dish].minutes};
}

}  // namespace

TonightAnswer ask_tonight(const kitchen::Kitchen& kitchen, basics::Day today) {
    TonightAnswer answer;
    answer.day = today;
    const flow::Balancer balancer(kitchen, {today, flow::horizon(kitchen, today)});
    const flow::Balance balance = balancer.balance(balancer.planned());
    for (const std::size_t eater : kitchen::eaters(kitchen, today, kitchen::Meal::dinner)) {
        answer.eaters.push_back(kitchen.household.people[eater].name);
    }
    if (const auto* planned = kitchen::planned(kitchen.plan, today, kitchen::Meal::dinner)) {
        answer.dinner = meal(kitchen, *planned);
        answer.cautions = detail::table_cautions(kitchen, today, planned->dish);
        const auto usual = detail::safety_cautions(kitchen, flow::cook(kitchen, *planned), {}, today);
        answer.cautions.insert(answer.cautions.end(), usual.begin(), usual.end());
    } else {
        answer.standing_kind = kitchen::standing_kind(kitchen.household, today);
    }
    for (const kitchen::Planned& planned : kitchen.plan) {
        if (planned.day == today && planned.meal == kitchen::Meal::lunch)
            answer.lunches.push_back(meal(kitchen, planned));
    }
    for (const flow::ThawMove& move : flow::thaw_moves(kitchen, balance)) {
        if (move.day == today) answer.take_out.push_back(move);
    }
    answer.use_first = in_danger(kitchen, balance);
    answer.short_of = short_of(kitchen, balance);
    answer.past = past(kitchen, today);
    answer.shopping = kitchen::shopping_day(kitchen.household, today);
    return answer;
}

}  // namespace samebase::ask
