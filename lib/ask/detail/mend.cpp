#include "ask/detail/mend.hpp"

#include <algorithm>
#include <tuple>

#include "ask/detail/at_table.hpp"
#include "ask/detail/candidate.hpp"
#include "ask/detail/there.hpp"
#include "basics/ranges.hpp"
#include "flow/room.hpp"
#include "graph/likeness.hpp"
#include "kitchen/night.hpp"
#include "kitchen/soaking.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using flow::Finding;
using kitchen::Meal;
using kitchen::Planned;

constexpr std::size_t most_stand_ins_tried = 6;
constexpr std::size_t most_dishes_tried = 12;

bool has_occasion(const kitchen::Kitchen& kitchen, basics::Day day) {
    return std::any_of(kitchen.household.occasions.begin(), kitchen.household.occasions.end(),
                       [&](const kitchen::Occasion& occasion) { return occasion.day == day; });
}

bool uses(const cookbook::Dish& dish, IngredientId id) {
    return std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                       [&](const auto& line) { return !line.optional && line.ingredient == id; });
}

/// As much as a hand measures, and no more than that: whole pieces and serves, else steps of 5 g below 100 g, of 10 g
/// below 1 kg, of 50 g above, and the same in millilitres.
std::int64_t in_hand(const catalogue::Ingredient& thing, std::int64_t amount) {
    constexpr std::int64_t unit = 1000;  // of a gram, a millilitre, a piece
    std::int64_t step = unit;
    if (!thing.in_serves && thing.dimension != measure::Dimension::pieces)
        step = unit * (amount < 100 * unit ? 5 : amount < 1000 * unit ? 10 : 50);
    return amount / step * step;
}

/// The packs that, one by one as they lie in the lot, are no more than that together; at least one.
std::int64_t packs_within(const stock::Lot& lot, std::int64_t amount) {
    std::int64_t count = 0;
    for (const std::int64_t pack : lot.packs) {
        if (pack > amount) break;
        amount -= pack;
        ++count;
    }
    return std::max<std::int64_t>(1, count);
}

}  // namespace

std::optional<Mend> Mender::mend(const Finding& finding) const {
    using Way = std::optional<Mend> (Mender::*)(const Finding&) const;
    std::vector<Way> ways;
    switch (finding.kind) {
        case Finding::Kind::past_use_by:
            ways = {&Mender::discard};
            break;
        case Finding::Kind::not_thawed:
        case Finding::Kind::short_of:
            ways = {&Mender::stand_in, &Mender::exchange_days, &Mender::other_dish, &Mender::buy};
            break;
        case Finding::Kind::tossed:
            ways = {&Mender::exchange_days, &Mender::freeze, &Mender::dish_that_eats};
            break;
        case Finding::Kind::no_room:
            ways = {&Mender::move};
            break;
    }
    for (const Way way : ways) {
        if (auto found = (this->*way)(finding)) return found;
    }
    return std::nullopt;
}

Mender::Changed Mender::carried_out(const kitchen::Change& change) const {
    Changed changed{kitchen_, {}};
    kitchen::apply(changed.kitchen, change);
    const flow::Balancer balancer(changed.kitchen, before_.span);
    changed.balance = balancer.balance(balancer.planned());
    return changed;
}

std::optional<Mend> Mender::discard(const Finding& finding) const {
    const kitchen::Item item{{finding.lot, {}, {}, {}}, {}, {}};
    auto change = kitchen::tossed(at(), {&item, 1}, "past its use-by");
    if (!change) return std::nullopt;
    kitchen::Kitchen after = kitchen_;
    kitchen::apply(after, *change);
    if (after.lot(finding.lot) != nullptr) return std::nullopt;
    Mend mend;
    mend.lot = finding.lot;
    mend.change = std::move(*change);
    return mend;
}

/// The mend with this plan in place of that, where it helps.
std::optional<Mend> Mender::tried(Mend mend, const Finding& finding, const kitchen::Plan& takes,
                                  const kitchen::Plan& adds) const {
    std::vector<flow::Cooking> cookings;
    for (const flow::Cooking& cooking : before_.cookings) {
        const bool goes = std::any_of(takes.begin(), takes.end(), [&](const Planned& row) {
            return row.day == cooking.day && row.meal == cooking.meal && row.dish == cooking.dish;
        });
        if (!goes) cookings.push_back(cooking);
    }
    for (const Planned& row : adds) cookings.push_back(flow::cook(kitchen_, row, {}, &holds_));
    std::stable_sort(cookings.begin(), cookings.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.day, a.meal) < std::tuple(b.day, b.meal);
    });
    if (!helps(finding, kitchen_, balancer_.rebalance(before_, std::move(cookings)), mend)) return std::nullopt;
    return mend;
}

std::optional<Mend> Mender::stand_in(const Finding& finding) const {
    if (!finding.dish) return std::nullopt;
    const Planned* row = kitchen::planned(kitchen_.plan, finding.day, finding.meal, finding.dish);
    if (row == nullptr || row->ready_meal) return std::nullopt;
    catalogue::AllergenSet avoid;
    for (const std::size_t eater : kitchen::eaters(kitchen_, row->day, row->meal))
        avoid.add(kitchen_.household.people[eater].avoids);
    if (row->meal == Meal::dinner) avoid.add(kitchen::guests_avoid(kitchen_, row->day));
    const cookbook::Dish& dish = kitchen_.cookbook()[row->dish];
    for (const auto& line : dish.ingredients) {
        if (line.ingredient != finding.ingredient || line.optional) continue;
        auto list =
            kitchen_.graph().stand_ins({line.ingredient, line.role}, kitchen_.graph().parameters().least_fit, avoid);
        std::erase_if(list, [&](const graph::StandIn& s) {
            if (!time_for(s, dish, kitchen_.household, row->day, row->meal)) return true;
            return std::any_of(s.use.begin(), s.use.end(), [&](const auto& part) {
                return !holds_[part.first.index()].shared_with(avoid).empty() ||
                       (!kitchen_.taken_as_there(part.first) && before_.part(part.first) == nullptr);
            });
        });
        if (list.size() > most_stand_ins_tried) list.resize(most_stand_ins_tried);
        for (const graph::StandIn& s : list) {
            Mend mend;
            mend.kind = Mend::Kind::stand_in;
            mend.day = row->day;
            mend.meal = row->meal;
            mend.dish = row->dish;
            mend.of = finding.ingredient;
            mend.fit = s.fit();
            const auto swap =
                flow::swap_of(kitchen_.catalogue(), dish, finding.ingredient, s.use, std::int64_t{1000} * dish.serves);
            mend.change = kitchen::set_swaps(at(), *row, kitchen::both({&swap, 1}, row->swaps));
            const flow::Cooking with = flow::cook(kitchen_, mend.change.plan.back().row, {}, &holds_);
            std::vector<flow::Cooking> cookings = before_.cookings;
            for (flow::Cooking& cooking : cookings) {
                if (cooking.day == row->day && cooking.meal == row->meal && cooking.dish == row->dish) cooking = with;
            }
            if (!helps(finding, kitchen_, balancer_.rebalance(before_, std::move(cookings)), mend)) continue;
            for (const auto& [id, amount] : swap.use) {
                mend.use.emplace_back(id, measure::Amount{kitchen_.catalogue()[id].dimension,
                                                          basics::fits(basics::scale(amount, with.serves_thousandths,
                                                                                     swap.serves_thousandths))});
            }
            return mend;
        }
        break;
    }
    return std::nullopt;
}

/// Whether the household's rules let that meal be there: the standing night, occasions, who eats, and the minutes.
bool Mender::may_stand_on(const Planned& row) const {
    if (has_occasion(kitchen_, row.day)) return false;
    if (kitchen::not_for(kitchen_, row.day, row.meal, row.dish, row.ready_meal)) return false;
    const bool soaks =
        row.day <= today_ && !row.ready_meal && !kitchen::soaked_overnight(kitchen_, row.dish, row.swaps).empty();
    if (soaks) return false;
    const AtTable table = at_table(kitchen_, row);
    return table.refused.empty() && table.vetoed.empty() && table.swaps.empty();
}

std::optional<Mend> Mender::exchange_days(const Finding& finding) const {
    const auto try_exchange = [&](const Planned& one, const Planned& other) -> std::optional<Mend> {
        Planned there = one;
        there.day = other.day;
        Planned here = other;
        here.day = one.day;
        if (has_occasion(kitchen_, one.day) || !may_stand_on(there) || !may_stand_on(here)) return std::nullopt;
        Mend mend;
        mend.kind = Mend::Kind::exchange_days;
        mend.day = std::min(one.day, other.day);
        mend.other = std::max(one.day, other.day);
        mend.meal = one.meal;
        auto found = tried(std::move(mend), finding, {one, other}, {there, here});
        if (!found) return std::nullopt;
        auto change = kitchen::swap_days(at(), one.day, other.day, one.meal);
        if (!change) return std::nullopt;
        found->change = std::move(*change);
        return found;
    };
    const auto in_span = [&](const Planned& row) { return before_.span.contains(row.day); };
    if (about_a_meal(finding)) {
        const Planned* row =
            finding.dish ? kitchen::planned(kitchen_.plan, finding.day, finding.meal, finding.dish) : nullptr;
        if (row == nullptr) return std::nullopt;
        for (const Planned& other : kitchen_.plan) {
            if (!in_span(other) || other.meal != row->meal || other.day == row->day) continue;
            if (auto found = try_exchange(*row, other)) return found;
        }
        return std::nullopt;
    }
    for (const Planned& late : kitchen_.plan) {
        if (!in_span(late) || late.day <= finding.day || !uses(kitchen_.cookbook()[late.dish], finding.ingredient))
            continue;
        for (const Planned& early : kitchen_.plan) {
            if (!in_span(early) || early.meal != late.meal || early.day > finding.day) continue;
            if (auto found = try_exchange(late, early)) return found;
        }
    }
    return std::nullopt;
}

/// Whether the dish was or will be had within its gap of that day.
bool Mender::lately(cookbook::DishId dish, basics::Day day) const {
    const auto gap = basics::days{kitchen_.cookbook()[dish].gap};
    const auto near = [&](basics::Day other, cookbook::DishId had) {
        return had == dish && other > day - gap && other < day + gap;
    };
    return std::any_of(kitchen_.history.rbegin(), kitchen_.history.rend(),
                       [&](const kitchen::Had& had) { return near(had.day, had.dish); }) ||
           std::any_of(kitchen_.plan.begin(), kitchen_.plan.end(),
                       [&](const Planned& row) { return near(row.day, row.dish); });
}

std::optional<Mend> Mender::dish_instead(const Finding& finding, const kitchen::Plan& takes,
                                         const Planned& instead) const {
    Mend mend;
    mend.kind = Mend::Kind::other_dish;
    mend.day = instead.day;
    mend.dish = instead.dish;
    if (!takes.empty()) mend.displaces = takes.front().dish;
    auto found = tried(std::move(mend), finding, takes, {instead});
    if (!found) return std::nullopt;
    auto change = kitchen::set_meal(at(), instead);
    if (!change) return std::nullopt;
    found->change = std::move(*change);
    return found;
}

std::optional<Mend> Mender::other_dish(const Finding& finding) const {
    const Planned* row =
        finding.dish ? kitchen::planned(kitchen_.plan, finding.day, finding.meal, finding.dish) : nullptr;
    if (row == nullptr || row->meal != Meal::dinner || row->left > 0 || finding.price < a_little) return std::nullopt;
    const flow::Slot slot = flow::dinner_of(static_cast<int>((row->day - before_.span.first).count()));
    std::vector<std::pair<graph::Ppm, cookbook::DishId>> likely;
    const auto& profiles = kitchen_.knowledge->profiles;
    for (const cookbook::DishId id : basics::handles<cookbook::DishId>(kitchen_.cookbook().dishes().size())) {
        if (!kitchen_.cookbook()[id].dinner || uses(kitchen_.cookbook()[id], finding.ingredient)) continue;
        const Planned instead{.day = row->day, .meal = row->meal, .dish = id, .serves = row->serves};
        const auto needs = flow::cook(kitchen_, instead, {}, &holds_).needs;
        const bool there = std::all_of(needs.begin(), needs.end(), [&](const flow::Needed& need) {
            const flow::Part* part = before_.part(need.ingredient);
            return part != nullptr && available_at(part->component, slot) >= need.amount;
        });
        if (!there || lately(id, row->day) || !may_stand_on(instead)) continue;
        likely.emplace_back(-graph::likeness(profiles[row->dish.index()], profiles[id.index()], kitchen_.graph()), id);
    }
    std::sort(likely.begin(), likely.end());
    if (likely.size() > most_dishes_tried) likely.resize(most_dishes_tried);
    for (const auto& [unlike, id] : likely) {
        if (auto found =
                dish_instead(finding, {*row}, {.day = row->day, .meal = row->meal, .dish = id, .serves = row->serves}))
            return found;
    }
    return std::nullopt;
}

std::optional<Mend> Mender::dish_that_eats(const Finding& finding) const {
    if (finding.price < a_little) return std::nullopt;
    std::vector<std::pair<std::int64_t, cookbook::DishId>> eating;
    for (const cookbook::DishId id : basics::handles<cookbook::DishId>(kitchen_.cookbook().dishes().size())) {
        const cookbook::Dish& dish = kitchen_.cookbook()[id];
        if (!dish.dinner) continue;
        std::int64_t amount = 0;
        for (const auto& line : dish.ingredients) {
            if (!line.optional && line.ingredient == finding.ingredient) amount += line.amount.value() / dish.serves;
        }
        if (amount > 0) eating.emplace_back(-amount, id);
    }
    std::sort(eating.begin(), eating.end());
    if (eating.size() > most_dishes_tried) eating.resize(most_dishes_tried);
    // Open nights first, then nights on which something else is planned; at each the earliest first.
    for (const bool open : {true, false}) {
        for (const basics::Day day : basics::days_of({today_, std::min(finding.day, before_.span.last)})) {
            if (kitchen::planned(kitchen_.done, day, Meal::dinner) != nullptr) continue;  // it has been had
            const Planned* row = kitchen::planned(kitchen_.plan, day, Meal::dinner);
            if ((row == nullptr) != open || kitchen::serves_wanted(kitchen_, day, Meal::dinner) == 0) continue;
            if (row != nullptr && (row->left > 0 || has_occasion(kitchen_, day))) continue;
            for (const auto& [amount, id] : eating) {
                const Planned instead{.day = day, .meal = Meal::dinner, .dish = id, .serves = {}};
                if (lately(id, day) || !may_stand_on(instead)) continue;
                const kitchen::Plan takes = row != nullptr ? kitchen::Plan{*row} : kitchen::Plan{};
                if (auto found = dish_instead(finding, takes, instead)) return found;
            }
        }
    }
    return std::nullopt;
}

std::optional<Mend> Mender::freeze(const Finding& finding) const {
    const stock::Lot* lot = kitchen_.lot(finding.lot);
    if (lot == nullptr || lot->state != stock::State::fresh || finding.day < today_) return std::nullopt;
    const auto& keeping =
        kitchen_.catalogue()[lot->ingredient].keeps[static_cast<std::size_t>(catalogue::Keep::freezer)];
    const auto freezer =
        kitchen::place_of(kitchen_.household, {stock::PlaceKind::near_freezer, stock::PlaceKind::far_freezer});
    if (keeping.said != catalogue::Keeping::Said::time || !freezer) return std::nullopt;
    Mend mend;
    mend.kind = Mend::Kind::freeze;
    mend.lot = finding.lot;
    mend.place = freezer;
    kitchen::Item item{{finding.lot, {}, {}, {}}, {}, {}};
    // So much as the plan leaves, rounded down so that what the plan eats stays; else all of it.
    if (!lot->packs.empty()) {
        mend.lot_packs = packs_within(*lot, finding.amount);
        if (mend.lot_packs == static_cast<std::int64_t>(lot->packs.size())) mend.lot_packs = 0;
        if (mend.lot_packs > 0) item.quantity.packs = 1000 * mend.lot_packs;
    } else if (finding.amount < lot->amount.value()) {
        const auto amount = in_hand(kitchen_.catalogue()[lot->ingredient], finding.amount);
        if (amount == 0) return std::nullopt;
        mend.amount = {lot->amount.dimension(), amount};
        item.quantity.amount = mend.amount;
    }
    const bool some = mend.amount || mend.lot_packs > 0;
    if (auto found = put_away(finding, item, mend); found || !some) return found;
    mend.amount.reset();
    mend.lot_packs = 0;
    item.quantity = {};
    return put_away(finding, item, std::move(mend));
}

/// The mend that moves this to its place, where that helps and there is room.
std::optional<Mend> Mender::put_away(const Finding& finding, const kitchen::Item& item, Mend mend) const {
    auto change = kitchen::moved(at(), {&item, 1}, *mend.place, std::nullopt);
    if (!change) return std::nullopt;
    const Changed frozen = carried_out(*change);
    if (!helps(finding, frozen.kitchen, frozen.balance, mend) ||
        flow::crowded(frozen.kitchen, frozen.balance).size() > flow::crowded(kitchen_, before_).size()) {
        return std::nullopt;
    }
    mend.change = std::move(*change);
    return mend;
}

std::optional<Mend> Mender::buy(const Finding& finding) const {
    const auto& pack = kitchen_.catalogue()[finding.ingredient].pack;
    const auto place = kitchen::usual_place(kitchen_, finding.ingredient);
    if (!pack || !place) return std::nullopt;
    const std::vector<IngredientId> bought{finding.ingredient};
    const flow::Balance after = balancer_.rebalance(before_, before_.cookings, bought);
    const flow::Part* part = after.part(finding.ingredient);
    Mend mend;
    mend.kind = Mend::Kind::buy;
    if (part == nullptr || !helps(finding, kitchen_, after, mend)) return std::nullopt;
    mend.day = today_;
    mend.of = finding.ingredient;
    for (const flow::Fate& fate : part->outcome.fates) {
        if (!fate.bought || fate.unit.first != flow::shopping_of(0)) continue;
        ++mend.packs;
        mend.price += fate.unit.price;
    }
    mend.amount = {pack->amount.dimension(), mend.packs * pack->amount.value()};
    kitchen::Got got{};
    got.ingredient = finding.ingredient;
    got.quantity.amount = mend.amount;
    got.place = *place;
    auto change = kitchen::got(at(), {&got, 1});
    if (!change) return std::nullopt;
    const Changed with = carried_out(*change);
    // Once it lies there it counts as stock, and as paid for: what it costs was said before.
    const auto net = mend.net;
    if (!helps(finding, with.kitchen, with.balance, mend)) return std::nullopt;
    mend.net = net;
    mend.change = std::move(*change);
    return mend;
}

std::optional<Mend> Mender::move(const Finding& finding) const {
    const stock::Lot* lot = kitchen_.lot(finding.lot);
    if (lot == nullptr || !finding.place) return std::nullopt;
    const auto from = kitchen_.place(*finding.place).kind;
    const bool crisper = from == stock::PlaceKind::crisper;
    for (std::uint32_t p = 0; p < kitchen_.household.places.size(); ++p) {
        const stock::PlaceId to{p};
        const auto kind = kitchen_.place(to).kind;
        const bool fits = stock::freezes(from)
                              ? stock::freezes(kind)
                              : crisper && (kind == stock::PlaceKind::crisper || kind == stock::PlaceKind::fridge);
        if (to == *finding.place || !fits) continue;
        const kitchen::Item item{{finding.lot, {}, {}, {}}, {}, {}};
        auto change = kitchen::moved(at(), {&item, 1}, to, std::nullopt);
        if (!change) continue;
        const Changed moved = carried_out(*change);
        const auto crowded = flow::crowded(moved.kitchen, moved.balance);
        const bool still = std::any_of(crowded.begin(), crowded.end(), [&](const flow::Crowding& c) {
            return c.place == *finding.place || c.place == to;
        });
        if (still || moved.balance.totals.unmet > before_.totals.unmet) continue;
        Mend mend;
        mend.kind = Mend::Kind::move;
        mend.lot = finding.lot;
        mend.place = to;
        mend.change = std::move(*change);
        return mend;
    }
    return std::nullopt;
}

}  // namespace samebase::ask::detail
