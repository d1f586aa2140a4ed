#include "ask/balance.hpp"

#include <algorithm>

#include "ask/detail/ahead.hpp"
#include "ask/detail/mend.hpp"

namespace samebase::ask {

namespace {

constexpr std::int64_t a_mouthful_mg = 50'000;

/// What is left of a pack that is bought, or is eaten when it is good no more unless it was frozen.
void add_frozen(const flow::Balance& balance, const flow::Part& part, const catalogue::Ingredient& thing,
                std::vector<ToFreeze>& list) {
    const auto& fridge = thing.keeps[static_cast<std::size_t>(catalogue::Keep::fridge)];
    if (!part.component.offer || !part.component.offer->frozen || fridge.said != catalogue::Keeping::Said::time) return;
    // Fruit can be frozen too, and need not be: only what has to be cooked through is meat or fish.
    if (thing.cook_to.value_or(0) == 0 || thing.dimension != measure::Dimension::mass) return;
    for (std::size_t i = 0; i < part.outcome.fates.size(); ++i) {
        const flow::Fate& fate = part.outcome.fates[i];
        if (!fate.bought) continue;
        const int bought_on = flow::day_of(fate.unit.first);
        std::int64_t amount = fate.left();
        std::optional<basics::Day> eaten_on;
        for (const flow::Use& use : part.outcome.uses) {
            const int day = flow::day_of(part.component.wants[static_cast<std::size_t>(use.want)].slot);
            if (static_cast<std::size_t>(use.unit) != i || day <= bought_on + fridge.time.days) continue;
            amount += use.amount;
            const auto date = balance.span.first + basics::days{day};
            eaten_on = std::min(eaten_on.value_or(date), date);
        }
        if (amount < a_mouthful_mg) continue;
        const auto on = balance.span.first + basics::days{bought_on};
        const auto same = std::find_if(list.begin(), list.end(), [&](const ToFreeze& other) {
            return other.day == on && other.ingredient == part.component.ingredient;
        });
        if (same == list.end()) {
            list.push_back({on, part.component.ingredient, {thing.dimension, amount}, eaten_on});
        } else {
            same->amount += measure::Amount{thing.dimension, amount};
            if (eaten_on) same->eaten_on = std::min(same->eaten_on.value_or(*eaten_on), *eaten_on);
        }
    }
}

std::vector<ToFreeze> frozen_on_purchase(const kitchen::Kitchen& kitchen, const flow::Balance& balance) {
    std::vector<ToFreeze> list;
    for (const auto& part : balance.parts)
        add_frozen(balance, *part, kitchen.catalogue()[part->component.ingredient], list);
    std::stable_sort(list.begin(), list.end(), [](const ToFreeze& a, const ToFreeze& b) { return a.day < b.day; });
    return list;
}

}  // namespace

basics::Result<BalanceAnswer> ask_balance(const kitchen::Kitchen& kitchen, basics::Day today, basics::Span span,
                                          std::size_t most_mends) {
    if (const auto ahead = detail::ends_ahead("balance", span, today); !ahead)
        return tl::make_unexpected(ahead.error());
    span.first = std::max(span.first, today);
    const flow::Balancer balancer(kitchen, {today, span.last});
    const flow::Balance balance = balancer.balance(balancer.planned());
    BalanceAnswer answer;
    answer.span = span;
    answer.totals = balance.totals;
    answer.rows = flow::ledger(kitchen, balance);
    answer.findings = flow::findings(kitchen, balance);
    answer.to_freeze = frozen_on_purchase(kitchen, balance);
    std::erase_if(answer.rows, [&](const flow::LedgerRow& row) { return row.day < span.first; });
    std::erase_if(answer.findings,
                  [&](const flow::Finding& finding) { return finding.day < span.first && span.first > today; });
    answer.telling = flow::tell(kitchen, today, answer.findings, most_told, kitchen.household.tell_from);
    answer.looked.assign(answer.findings.size(), false);
    std::fill_n(answer.looked.begin(), std::min(most_mends, answer.findings.size()), true);
    for (const flow::Told& told : answer.telling.told) answer.looked[told.of.front()] = true;
    answer.mends.resize(answer.findings.size());
    const detail::Mender mender(kitchen, today, balancer, balance);
    for (std::size_t i = 0; i < answer.findings.size(); ++i) {
        if (answer.looked[i]) answer.mends[i] = mender.mend(answer.findings[i]);
    }
    return answer;
}

}  // namespace samebase::ask
