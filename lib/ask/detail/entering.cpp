#include "ask/detail/entering.hpp"

#include <algorithm>
#include <utility>

namespace samebase::ask::detail {

void Load::add(stock::LotNumber lot, const std::vector<std::int64_t>& weights) {
    const auto same = std::find_if(packs.begin(), packs.end(), [&](const auto& other) { return other.lot == lot; });
    if (same == packs.end()) {
        packs.push_back({lot, weights});
    } else {
        same->weights.insert(same->weights.end(), weights.begin(), weights.end());
    }
}

basics::Result<kitchen::Change> entered(const kitchen::At& at, const std::string& question, const std::string& nothing,
                                        const std::vector<Load>& loads) {
    kitchen::Change all;
    all.command = "moved";
    all.day = at.day;
    all.line = nothing;
    kitchen::Kitchen kitchen = at.kitchen;
    stock::LotNumber next = at.next_lot;
    for (const Load& load : loads) {
        if (load.packs.empty()) continue;
        if (!load.to) return basics::problem(question, "no fridge among the places", "a fridge to thaw in");
        const kitchen::At then{kitchen, at.day, next};
        auto change = kitchen::moved_packs(then, load.packs, *load.to, load.thaw);
        if (!change) return change;
        next = kitchen::next_lot(then, *change);
        kitchen::apply(kitchen, *change);
        all = kitchen::one_after_other(std::move(all), std::move(*change));
    }
    return all;
}

}  // namespace samebase::ask::detail
