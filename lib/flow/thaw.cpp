#include "flow/thaw.hpp"

#include <algorithm>
#include <bit>
#include <cstddef>
#include <iterator>
#include <tuple>
#include <utility>

namespace samebase::flow {

namespace {

/// A pack that may be thawed.
struct Pack {
    std::size_t unit = 0;
    const stock::Lot* lot = nullptr;
    std::int64_t amount = 0;
    bool far = false;
    std::optional<int> want;  ///< the first that it serves
};

/// Packs that are ready on one day and keep as long: any of them does what another does, by weight.
struct Batch {
    int ready = 0;
    int thaw_days = 0;
    bool cold_water = false;
    std::optional<cookbook::DishId> dish;
    Slot to = never;
    std::vector<Pack> packs;
    std::vector<Use> uses;  ///< in the order of wants
    std::int64_t most = 0;  ///< a tenth more than the balance thaws

    [[nodiscard]] std::int64_t amount() const {
        std::int64_t sum = 0;
        for (const Pack& pack : packs) sum += pack.amount;
        return sum;
    }
    [[nodiscard]] std::int64_t needed() const {
        std::int64_t sum = 0;
        for (const Use& use : uses) sum += use.amount;
        return sum;
    }
    [[nodiscard]] bool like(const Unit& unit, const stock::Lot& lot) const {
        return unit.thaw_days == thaw_days && unit.cold_water == cold_water && lot.dish == dish;
    }
};

Pack pack_of(const kitchen::Kitchen& kitchen, std::size_t unit, const stock::Lot& lot, std::int64_t amount) {
    return {unit, &lot, amount, kitchen.place(lot.place).kind == stock::PlaceKind::far_freezer, std::nullopt};
}

void add_to_batch(const kitchen::Kitchen& kitchen, const Part& part, std::size_t unit, const stock::Lot& lot,
                  std::vector<Batch>& batches) {
    const Fate& fate = part.outcome.fates[unit];
    const int ready = part.outcome.decisions.ready_day[unit];
    Pack pack = pack_of(kitchen, unit, lot, fate.unit.amount);
    std::vector<Use> uses;
    for (const Use& use : part.outcome.uses) {
        if (static_cast<std::size_t>(use.unit) == unit) uses.push_back(use);
    }
    if (uses.empty()) return;
    pack.want = uses.front().want;
    auto batch = std::find_if(batches.begin(), batches.end(),
                              [&](const Batch& other) { return other.ready == ready && other.like(fate.unit, lot); });
    if (batch == batches.end()) {
        batches.push_back({ready, fate.unit.thaw_days, fate.unit.cold_water, lot.dish, fate.to, {}, {}, 0});
        batch = std::prev(batches.end());
    }
    batch->packs.push_back(pack);
    batch->uses.insert(batch->uses.end(), uses.begin(), uses.end());
}

/// Of the packs and the spare ones those that come from as few far freezers' packs as can be, then weigh least: enough
/// for what is used, no more packs than there were, and at most a tenth more by weight. Beyond some number of packs
/// none are exchanged.
std::vector<Pack> near_first(const Batch& batch, const std::vector<Pack>& spare) {
    constexpr std::size_t most = 14;
    const std::int64_t needed = batch.needed();
    std::vector<Pack> all = batch.packs;
    for (const Pack& pack : spare) {
        if (all.size() < most) all.push_back(pack);
    }
    if (batch.packs.size() >= most) return batch.packs;
    const auto far_packs = [](const std::vector<Pack>& packs) {
        return std::count_if(packs.begin(), packs.end(), [](const Pack& pack) { return pack.far; });
    };
    std::vector<Pack> best = batch.packs;
    auto best_key = std::tuple(far_packs(best), std::int64_t{0});
    for (std::uint32_t set = 1; set < (1U << all.size()); ++set) {
        if (static_cast<std::size_t>(std::popcount(set)) > batch.packs.size()) continue;
        std::vector<Pack> some;
        std::int64_t amount = 0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if ((set >> i & 1U) == 0) continue;
            some.push_back(all[i]);
            amount += all[i].amount;
        }
        const auto key = std::tuple(far_packs(some), amount);
        if (amount < needed || amount > batch.most || key >= best_key) continue;
        best = std::move(some);
        best_key = key;
    }
    return best;
}

/// Which want each pack serves first, once packs were exchanged: in their order, each begins where the one before it
/// ends.
void serve(Batch& batch) {
    std::stable_sort(batch.uses.begin(), batch.uses.end(), [](const Use& a, const Use& b) { return a.want < b.want; });
    std::size_t use = 0;
    std::int64_t left = batch.uses.front().amount;  // of that use
    for (Pack& pack : batch.packs) {
        pack.want = batch.uses[use].want;
        std::int64_t amount = pack.amount;
        while (amount >= left && use + 1 < batch.uses.size()) {
            amount -= left;
            left = batch.uses[++use].amount;
        }
        left -= std::min(left, amount);
    }
}

/// Packs of near freezers that the balance leaves, in place of those of far ones.
void take_spare(const kitchen::Kitchen& kitchen, const Part& part, std::vector<Batch>& batches) {
    std::vector<bool> taken(part.component.units.size(), false);
    for (Batch& batch : batches) {
        std::vector<Pack> spare;
        for (std::size_t u = 0; u < part.component.units.size(); ++u) {
            const Fate& fate = part.outcome.fates[u];
            const stock::Lot* lot = kitchen.lot(fate.unit.lot);
            if (lot == nullptr || taken[u] || fate.from != never || !batch.like(fate.unit, *lot)) continue;
            if (kitchen.place(lot->place).kind == stock::PlaceKind::near_freezer)
                spare.push_back(pack_of(kitchen, u, *lot, fate.unit.amount));
        }
        const bool far = std::any_of(batch.packs.begin(), batch.packs.end(), [](const Pack& pack) { return pack.far; });
        if (!far || spare.empty()) continue;
        batch.packs = near_first(batch, spare);
        for (const Pack& pack : batch.packs) taken[pack.unit] = true;
        serve(batch);
    }
}

/// What lies near is taken sooner than what lies far: two packs change places where both batches still have enough, and
/// not too much.
void near_sooner(std::vector<Batch>& batches) {
    const auto may = [](const Batch& batch, std::int64_t less, std::int64_t more) {
        const std::int64_t amount = batch.amount() - less + more;
        return amount >= batch.needed() && (amount <= batch.most || more <= less);
    };
    for (std::size_t i = 0; i < batches.size(); ++i) {
        for (std::size_t j = i + 1; j < batches.size(); ++j) {
            Batch& sooner = batches[i];
            Batch& later = batches[j];
            if (sooner.thaw_days != later.thaw_days || sooner.cold_water != later.cold_water ||
                sooner.dish != later.dish)
                continue;
            bool exchanged = false;
            for (Pack& far : sooner.packs) {
                for (Pack& near : later.packs) {
                    if (!far.far || near.far || !may(sooner, far.amount, near.amount) ||
                        !may(later, near.amount, far.amount))
                        continue;
                    std::swap(far, near);
                    exchanged = true;
                }
            }
            if (!exchanged) continue;
            serve(sooner);
            serve(later);
        }
    }
}

void add_moves(const kitchen::Kitchen& kitchen, const Balance& balance, const Part& part,
               std::vector<ThawMove>& moves) {
    std::vector<Batch> batches;
    for (std::size_t u = 0; u < part.component.units.size(); ++u) {
        const Fate& fate = part.outcome.fates[u];
        const stock::Lot* lot = kitchen.lot(fate.unit.lot);
        if (fate.unit.thaw_days > 0 && fate.from != never && lot != nullptr)
            add_to_batch(kitchen, part, u, *lot, batches);
    }
    std::stable_sort(batches.begin(), batches.end(), [](const Batch& a, const Batch& b) { return a.ready < b.ready; });
    for (Batch& batch : batches) batch.most = batch.amount() + batch.amount() / 10;
    take_spare(kitchen, part, batches);
    near_sooner(batches);
    for (const Batch& batch : batches) {
        for (const Pack& pack : batch.packs) {
            const auto w = static_cast<std::size_t>(*pack.want);
            ThawMove move;
            move.lot = pack.lot->number;
            move.ingredient = pack.lot->ingredient;
            move.amount = pack.amount;
            move.packs = 1;
            move.weights = {pack.amount};
            move.from = pack.lot->place;
            move.method = batch.ready == 0 ? stock::ThawMethod::cold_water : stock::ThawMethod::fridge;
            move.day = balance.span.first + basics::days{batch.ready == 0 ? 0 : batch.ready - batch.thaw_days};
            move.for_day = balance.span.first + basics::days{day_of(part.component.wants[w].slot)};
            move.for_meal = part.reasons[w].meal;
            move.for_dish = part.reasons[w].dish;
            move.cook_by = balance.span.first + basics::days{day_of(batch.to)};
            const auto same = std::find_if(moves.begin(), moves.end(), [&](const ThawMove& other) {
                return other.lot == move.lot && other.day == move.day && other.for_day == move.for_day &&
                       other.for_meal == move.for_meal;
            });
            if (same == moves.end()) {
                moves.push_back(move);
            } else {
                same->amount += move.amount;
                ++same->packs;
                same->weights.push_back(pack.amount);
            }
        }
    }
}

/// What is used straight from the freezer is alike in all lots: what lies near goes first, then the oldest.
void add_frozen_uses(const kitchen::Kitchen& kitchen, const Balance& balance, const Part& part,
                     std::vector<FrozenUse>& list) {
    struct Pool {
        const stock::Lot* lot = nullptr;
        bool far = false;
        std::int64_t left = 0;
    };
    std::vector<Pool> pools;
    for (const Fate& fate : part.outcome.fates) {
        const stock::Lot* lot = kitchen.lot(fate.unit.lot);
        if (lot == nullptr || lot->state != stock::State::frozen || fate.unit.thaw_days > 0) continue;
        pools.push_back({lot, kitchen.place(lot->place).kind == stock::PlaceKind::far_freezer, fate.unit.amount});
    }
    std::stable_sort(pools.begin(), pools.end(), [](const Pool& a, const Pool& b) {
        return std::tuple(a.far, a.lot->arrived, a.lot->number) < std::tuple(b.far, b.lot->arrived, b.lot->number);
    });
    std::size_t pool = 0;
    int last_want = -1;
    for (const Use& use : part.outcome.uses) {
        const Unit& unit = part.outcome.fates[static_cast<std::size_t>(use.unit)].unit;
        const stock::Lot* lot = kitchen.lot(unit.lot);
        if (lot == nullptr || lot->state != stock::State::frozen || unit.thaw_days > 0) continue;
        const auto w = static_cast<std::size_t>(use.want);
        for (std::int64_t wanted = use.amount; wanted > 0;) {
            while (pools[pool].left == 0) ++pool;
            const std::int64_t some = std::min(wanted, pools[pool].left);
            pools[pool].left -= some;
            wanted -= some;
            const FrozenUse now{pools[pool].lot->number,
                                pools[pool].lot->ingredient,
                                some,
                                pools[pool].lot->place,
                                balance.span.first + basics::days{day_of(part.component.wants[w].slot)},
                                part.reasons[w].meal,
                                part.reasons[w].dish};
            const bool again = use.want == last_want && list.back().lot == now.lot;
            last_want = use.want;
            if (again) {
                list.back().amount += some;
            } else {
                list.push_back(now);
            }
        }
    }
}

}  // namespace

std::vector<ThawMove> thaw_moves(const kitchen::Kitchen& kitchen, const Balance& balance) {
    std::vector<ThawMove> moves;
    for (const auto& part : balance.parts) add_moves(kitchen, balance, *part, moves);
    std::stable_sort(moves.begin(), moves.end(), [](const ThawMove& a, const ThawMove& b) {
        return std::tuple(a.day, a.for_day, a.lot) < std::tuple(b.day, b.for_day, b.lot);
    });
    return moves;
}

std::vector<FrozenUse> frozen_uses(const kitchen::Kitchen& kitchen, const Balance& balance) {
    std::vector<FrozenUse> list;
    for (const auto& part : balance.parts) add_frozen_uses(kitchen, balance, *part, list);
    std::stable_sort(list.begin(), list.end(), [](const FrozenUse& a, const FrozenUse& b) {
        return std::tuple(a.day, a.meal, a.lot) < std::tuple(b.day, b.meal, b.lot);
    });
    return list;
}

}  // namespace samebase::flow
