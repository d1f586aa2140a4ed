// What a mend does for its finding, and what it costs.
#include <algorithm>

#include "ask/detail/mend.hpp"

namespace samebase::ask::detail {

using catalogue::IngredientId;
using flow::Finding;

bool Mender::about_a_meal(const Finding& finding) {
    return finding.kind == Finding::Kind::not_thawed || finding.kind == Finding::Kind::short_of;
}

/// Whether it is found no more; of what goes to the bin, at least half of it is kept.
bool Mender::gone_or_smaller(const Finding& finding, const kitchen::Kitchen& kitchen,
                             const flow::Balance& after) const {
    const auto left = flow::findings_of(kitchen, after, finding.ingredient);
    if (finding.kind == Finding::Kind::tossed) {
        const auto of_the_lot = [&](const std::vector<Finding>& list) {
            basics::Money sum;
            for (const Finding& other : list) {
                if (other.kind == finding.kind && other.lot == finding.lot) sum += other.price;
            }
            return sum;
        };
        const auto was = of_the_lot(flow::findings_of(kitchen_, before_, finding.ingredient));
        return 2 * (was - of_the_lot(left)).minor >= finding.price.minor;
    }
    return std::none_of(left.begin(), left.end(), [&](const Finding& other) {
        if (other.kind != finding.kind) return false;
        if (!about_a_meal(finding)) return other.lot == finding.lot;
        return other.dish == finding.dish && other.meal == finding.meal && (finding.dish || other.day == finding.day);
    });
}

/// Sets what the mend costs in all, and what then goes to the bin.
bool Mender::helps(const Finding& finding, const kitchen::Kitchen& kitchen, const flow::Balance& after,
                   Mend& mend) const {
    if (!gone_or_smaller(finding, kitchen, after)) return false;
    const flow::Totals& was = before_.totals;
    const flow::Totals& is = after.totals;
    if (about_a_meal(finding)) {
        if (is.unmet >= was.unmet || !nothing_else_lacks(after)) return false;
    } else if (is.unmet > was.unmet || is.spent + is.tossed >= was.spent + was.tossed) {
        return false;
    }
    mend.net = net_cost(kitchen, after);
    mend.then_tossed = more_tossed(after);
    return worth_its_cost(finding, mend);
}

bool Mender::worth_its_cost(const Finding& finding, const Mend& mend) const {
    switch (mend.kind) {
        case Mend::Kind::buy:
            return true;
        case Mend::Kind::stand_in:
            return mend.net <= a_little;
        case Mend::Kind::other_dish:
            if (mend.displaces && !about_a_meal(finding)) return mend.net <= -a_little;
            break;
        default:
            break;
    }
    return about_a_meal(finding) ? mend.net.minor <= 0 : mend.net.minor < 0;
}

basics::Money Mender::net_cost(const kitchen::Kitchen& kitchen, const flow::Balance& after) const {
    const auto paid = [](const flow::Totals& totals) { return totals.unmet + totals.spent + totals.tossed; };
    // Stock that is kept is no saving beside what is not tossed: it would count twice.
    const auto kept_lost = std::max(basics::Money{}, kept_before_ - kept(kitchen, after));
    return paid(after.totals) - paid(before_.totals) + kept_lost;
}

std::vector<std::pair<IngredientId, basics::Money>> Mender::more_tossed(const flow::Balance& after) const {
    std::vector<std::pair<IngredientId, basics::Money>> list;
    for (const auto& part : after.parts) {
        const flow::Part* was = before_.part(part->component.ingredient);
        const auto more = part->outcome.tossed - (was == nullptr ? basics::Money{} : was->outcome.tossed);
        if (more.minor > 0) list.emplace_back(part->component.ingredient, more);
    }
    std::stable_sort(list.begin(), list.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
    return list;
}

/// Whether of no ingredient more goes unmet than before.
bool Mender::nothing_else_lacks(const flow::Balance& after) const {
    return std::all_of(after.parts.begin(), after.parts.end(), [&](const auto& part) {
        const basics::Money unmet = flow::unmet_price(part->component, part->outcome);
        const flow::Part* was = before_.part(part->component.ingredient);
        return unmet.minor == 0 || (was != nullptr && unmet <= flow::unmet_price(was->component, was->outcome));
    });
}

}  // namespace samebase::ask::detail
