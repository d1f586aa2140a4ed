#include "ask/tonight.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "ask/detail/at_table.hpp"
#include "ask/detail/candidate.hpp"
#include "flow/findings.hpp"

namespace samebase::ask {

namespace {

measure::Amount amount_of(const kitchen::Kitchen& kitchen, const flow::Finding& finding) {
    return {kitchen.catalogue()[finding.ingredient].dimension, finding.amount};
}

/// What the findings say about stock and about meals; what is yet to be bought or cooked is left out.
void tell(const kitchen::Kitchen& kitchen, const flow::Finding& finding, TonightAnswer& answer) {
    using Kind = flow::Finding::Kind;
    const InDanger danger{finding.ingredient, finding.lot, amount_of(kitchen, finding),
                          finding.price,      finding.day, finding.use_by};
    switch (finding.kind) {
        case Kind::past_use_by:
            answer.past.push_back(danger);
            break;
        case Kind::not_thawed:
        case Kind::short_of:
            answer.short_of.push_back({finding.ingredient, amount_of(kitchen, finding), finding.day, finding.dish});
            break;
        case Kind::tossed:
            if (finding.lot != 0) answer.use_first.push_back(danger);
            break;
        case Kind::no_room:
            break;
    }
}

MealTonight meal(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned) {
    const flow::Cooking cooking = flow::cook(kitchen, planned);
    return {planned.dish, planned.ready_meal, cooking.serves_thousandths, kitchen.cookbook()[planned.dish].minutes,
            planned.swaps};
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
        const detail::AtTable table = detail::at_table(kitchen, *planned);
        for (const std::string& reason : table.refused)
            answer.cautions.push_back(fmt::format("Not for everyone at the table: {}.", reason));
        answer.cautions.insert(answer.cautions.end(), table.cautions.begin(), table.cautions.end());
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
    for (const flow::Finding& finding : flow::findings(kitchen, balance)) tell(kitchen, finding, answer);
    std::stable_sort(answer.short_of.begin(), answer.short_of.end(),
                     [](const Short& a, const Short& b) { return a.day < b.day; });
    answer.shopping = kitchen::shopping_day(kitchen.household, today);
    return answer;
}

}  // namespace samebase::ask
