#include "ask/tonight.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "ask/detail/at_table.hpp"
#include "ask/detail/candidate.hpp"
#include "ask/detail/mend.hpp"
#include "flow/findings.hpp"
#include "kitchen/soaking.hpp"

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

/// Of what is told by itself, what the day must know; the rest is counted.
Pressing pressing(const kitchen::Kitchen& kitchen, const std::vector<flow::Finding>& findings,
                  const detail::Mender& mender, basics::Day today, basics::Day shopping) {
    using Kind = flow::Finding::Kind;
    const basics::Day tomorrow = today + basics::days{1};
    flow::Telling telling = flow::tell(kitchen, today, findings, findings.size(), kitchen.household.tell_from);
    Pressing pressing;
    pressing.more = telling.small;
    pressing.more_price = telling.small_price;
    for (const flow::Told& told : telling.told) {
        const flow::Finding& finding = told.finding;
        const bool wanted = finding.kind == Kind::not_thawed || finding.kind == Kind::short_of;
        if (finding.kind == Kind::past_use_by) {
            pressing.past.push_back(finding);
        } else if (finding.kind == Kind::tossed && finding.lot != 0 && finding.day <= tomorrow) {
            (finding.day <= today ? pressing.today : pressing.tomorrow).push_back(finding);
        } else if (wanted && finding.day <= shopping) {
            pressing.missing.push_back({finding, mender.mend(findings[told.of.front()])});
        } else {
            ++pressing.more;
            pressing.more_price += finding.price;
        }
    }
    std::stable_sort(pressing.missing.begin(), pressing.missing.end(),
                     [](const Missing& a, const Missing& b) { return a.finding.day < b.finding.day; });
    return pressing;
}

void add_occasion(const kitchen::Kitchen& kitchen, TonightAnswer& answer) {
    for (const kitchen::Occasion& occasion : kitchen.household.occasions) {
        if (occasion.day != answer.day) continue;
        answer.guests += occasion.guests;
        if (!occasion.note.empty()) answer.occasion += (answer.occasion.empty() ? "" : ", ") + occasion.note;
    }
}

MealTonight meal(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned) {
    const flow::Cooking cooking = flow::cook(kitchen, planned);
    return {planned.dish, planned.ready_meal, cooking.serves_thousandths, kitchen.cookbook()[planned.dish].minutes,
            planned.swaps};
}

/// What was had for dinner on that day.
std::optional<cookbook::DishId> cooked(const kitchen::Kitchen& kitchen, basics::Day day) {
    const auto had = std::find_if(kitchen.history.begin(), kitchen.history.end(), [&](const kitchen::Had& row) {
        return row.day == day && row.meal == kitchen::Meal::dinner;
    });
    return had == kitchen.history.end() ? std::nullopt : std::optional<cookbook::DishId>(had->dish);
}

void add_cautions(const kitchen::Kitchen& kitchen, const kitchen::Planned& planned, TonightAnswer& answer) {
    const detail::AtTable table = detail::at_table(kitchen, planned);
    for (const std::string& reason : table.refused)
        answer.apart.push_back(fmt::format("Not for everyone at the table: {}.", reason));
    answer.apart.insert(answer.apart.end(), table.cautions.begin(), table.cautions.end());
    answer.cautions = answer.apart;
    const auto usual = detail::safety_cautions(kitchen, flow::cook(kitchen, planned), {}, answer.day);
    answer.cautions.insert(answer.cautions.end(), usual.begin(), usual.end());
}

}  // namespace

bool in_danger_now(const InDanger& danger, const kitchen::Kitchen& kitchen) {
    const auto* lot = kitchen.lot(danger.lot);
    return lot != nullptr && lot->eat_by() && *lot->eat_by() <= danger.by;
}

TonightAnswer ask_tonight(const kitchen::Kitchen& kitchen, basics::Day today) {
    TonightAnswer answer;
    answer.day = today;
    const flow::Balancer balancer(kitchen, {today, flow::horizon(kitchen, today)});
    const flow::Balance balance = balancer.balance(balancer.planned());
    for (const std::size_t eater : kitchen::eaters(kitchen, today, kitchen::Meal::dinner)) {
        answer.eaters.push_back(kitchen.household.people[eater].name);
    }
    add_occasion(kitchen, answer);
    answer.cooked = cooked(kitchen, today);
    if (const auto* planned = kitchen::planned(kitchen.plan, today, kitchen::Meal::dinner); planned && !answer.cooked) {
        answer.dinner = meal(kitchen, *planned);
        add_cautions(kitchen, *planned, answer);
    } else if (!answer.cooked) {
        answer.standing_kind = kitchen::standing_kind(kitchen.household, today);
    }
    const basics::Day next = today + basics::days{1};
    if (const auto* planned = kitchen::planned(kitchen.plan, next, kitchen::Meal::dinner)) {
        answer.tomorrow = meal(kitchen, *planned);
        if (!planned->ready_meal) answer.soak = kitchen::soaked_overnight(kitchen, planned->dish, planned->swaps);
    }
    for (const kitchen::Planned& planned : kitchen.plan) {
        if (planned.day == today && planned.meal == kitchen::Meal::lunch)
            answer.lunches.push_back(meal(kitchen, planned));
    }
    for (const flow::ThawMove& move : flow::thaw_moves(kitchen, balance)) {
        if (move.day == today) answer.take_out.push_back(move);
    }
    const auto findings = flow::findings(kitchen, balance);
    for (const flow::Finding& finding : findings) tell(kitchen, finding, answer);
    std::stable_sort(answer.short_of.begin(), answer.short_of.end(),
                     [](const Short& a, const Short& b) { return a.day < b.day; });
    answer.shopping = kitchen::shopping_day(kitchen.household, today);
    const detail::Mender mender(kitchen, today, balancer, balance);
    answer.pressing = pressing(kitchen, findings, mender, today, answer.shopping.value_or(balancer.span().last));
    return answer;
}

}  // namespace samebase::ask
