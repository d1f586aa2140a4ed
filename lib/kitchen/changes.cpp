#include "kitchen/changes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>

#include "basics/exact.hpp"
#include "catalogue/hand.hpp"
#include "kitchen/detail/draft.hpp"
#include "measure/written.hpp"
#include "stock/thaw.hpp"

namespace samebase::kitchen {

using detail::Draft;
using detail::Portion;
using stock::Column;
using stock::Kind;
using stock::Lot;
using stock::LotNumber;
using stock::State;

namespace {

std::string dates(const Lot& lot) {
    if (lot.use_by) return ", use by " + basics::iso(*lot.use_by);
    if (lot.best_by) return ", best by " + basics::iso(*lot.best_by);
    return {};
}

std::string named(const Kitchen& kitchen, const Lot& lot) {
    return describe(kitchen, lot) + " " + label(kitchen, lot.ingredient, lot.dish);
}

/// Puts the name of the thing before a problem that does not say where it is.
tl::unexpected<basics::Problems> about(const Draft& draft, const What& what, basics::Problems problems) {
    std::string where;
    if (what.ingredient) where = draft.ingredient(*what.ingredient).name;
    if (what.dish) where = draft.kitchen().cookbook()[*what.dish].name;
    if (what.lot) where = fmt::format("lot {}", *what.lot);
    for (auto& problem : problems) {
        if (problem.where.empty()) problem.where = where;
    }
    return tl::make_unexpected(std::move(problems));
}

tl::unexpected<basics::Problems> all_expired(const Draft& draft, const What& what) {
    return about(draft, what, {{"", "all of it is past its use-by", "something within its use-by", "toss it"}});
}

/// The lots of an item, in an order; a Problem where the item says nothing.
basics::Result<std::vector<Portion>> portions_of(Draft& draft, const Item& item, const std::vector<LotNumber>& lots,
                                                 bool whole) {
    auto portions = draft.choose(lots, item, whole);
    if (!portions) return about(draft, item.what, std::move(portions.error()));
    return portions;
}

void by_date(const Draft& draft, std::vector<LotNumber>& lots) {
    const auto key = [&](LotNumber n) { return std::pair{draft.lot(n).eat_by().value_or(basics::Day::max()), n}; };
    std::sort(lots.begin(), lots.end(), [&](LotNumber a, LotNumber b) { return key(a) < key(b); });
}

/// Says that a printed use-by does not count from now on, where that is so.
void set_aside(Draft& draft, const Lot& lot) {
    if (!lot.printed_use_by || lot.use_by == lot.printed_use_by) return;
    const std::string name = label(draft.kitchen(), lot.ingredient, lot.dish);
    const std::string why = lot.opened_on ? "opened" : std::string(stock::name(lot.state));
    draft.note(fmt::format("{}: the printed use-by {} no longer counts: it is {}{}", name,
                           basics::iso(*lot.printed_use_by), why, dates(lot)));
}

/// Whether it is sold in containers that stay closed until they are needed.
bool in_containers(const catalogue::Pack& pack) {
    constexpr std::array<std::string_view, 6> names{"bottle", "can", "carton", "jar", "tin", "tub"};
    return std::find(names.begin(), names.end(), pack.name) != names.end();
}

/// "6 L milk" is two bottles of 3 L: whole ones as they are sold, and what is more in another.
void put_in_containers(Lot& lot, const catalogue::Ingredient& thing) {
    if (!thing.pack || !in_containers(*thing.pack)) return;
    constexpr std::int64_t most = 1000;
    const std::int64_t size = thing.pack->amount.value();
    const std::int64_t amount = lot.amount.value();
    if (size <= 0 || amount < size || amount / size > most) return;
    // So many grams of tinned tuna that are no whole tins are not in tins.
    if (amount % size > 0 && thing.dimension == measure::Dimension::mass) return;
    lot.packs.assign(static_cast<std::size_t>(amount / size), size);
    if (amount % size > 0) lot.packs.push_back(amount % size);
}

basics::Result<Lot> lot_of(Draft& draft, const Got& got) {
    Lot lot = draft.arrive(got.ingredient, got.dish, got.place);
    const Quantity& quantity = got.quantity;
    const auto& thing = draft.ingredient(got.ingredient);
    if (quantity.rough) {
        lot.rough = quantity.rough;
    } else if (quantity.amount && quantity.packs) {
        const std::int64_t total = quantity.amount->value();
        const std::int64_t count = *quantity.packs / 1000;
        if (*quantity.packs % 1000 != 0 || count < 1 || total < count) {
            return basics::problem(thing.name, "packs and a weight that do not go together",
                                   "whole packs and their weight");
        }
        lot.amount = *quantity.amount;
        lot.packs = stock::even_packs(total, count);
    } else if (quantity.packs) {
        const auto size = detail::pack_size(draft, got.ingredient, got.pack);
        if (!size) return tl::make_unexpected(size.error());
        if (*quantity.packs <= 0 || *size <= 0)
            return basics::problem(thing.name, "an amount of nothing", "an amount above 0");
        stock::put_packs(lot, *quantity.packs, *size);
    } else if (quantity.amount) {
        lot.amount = *quantity.amount;
        put_in_containers(lot, thing);
    }
    if (!lot.there()) return basics::problem(thing.name, "an amount of nothing", "an amount above 0");
    if (got.use_by && *got.use_by < draft.day()) {
        return basics::problem(thing.name, "a use-by that has passed: " + basics::iso(*got.use_by),
                               "today, " + basics::iso(draft.day()) + ", or later");
    }
    lot.printed_use_by = got.use_by;
    lot.paid = got.paid;
    if (got.paid) lot.paid_for = lot.amount.value();
    lot.note = got.note;
    draft.set_dates(lot);
    if (auto reason = detail::unfit_whole(draft, lot)) return tl::make_unexpected(basics::Problems{*reason});
    set_aside(draft, lot);
    return lot;
}

/// How the lot stands after a move, or why it may not be moved so.
basics::Result<Lot> settled(const Draft& draft, Lot lot, stock::PlaceId to, std::optional<stock::ThawMethod> thaw) {
    const stock::Place& there = draft.kitchen().place(to);
    const auto& thing = draft.ingredient(lot.ingredient);
    const bool from_freezer = lot.state == State::frozen;
    const bool into_freezer = stock::freezes(there.kind);
    if (into_freezer && !from_freezer) {
        if (lot.state != State::fresh) {
            const bool raw = thing.kind == catalogue::Kind::raw;
            return basics::problem(thing.name, "thawed food does not go back into a freezer",
                                   raw ? "cooked first" : "eaten by its use-by",
                                   raw ? "cook it first and freeze the meal: 'samebase cooked DISH --freeze 3 serves'"
                                       : std::optional<std::string>{});
        }
        if (lot.use_by && *lot.use_by < draft.day()) {
            return basics::problem(thing.name, "its use-by has passed: " + basics::iso(*lot.use_by),
                                   "food within its use-by", "toss it");
        }
        if (auto reason = detail::unfit_whole(draft, lot, to)) return tl::make_unexpected(basics::Problems{*reason});
        lot.state = State::frozen;
        lot.since = draft.day();
    } else if (!into_freezer && from_freezer && thaw) {
        const auto& pantry = thing.keeps[static_cast<std::size_t>(catalogue::Keep::pantry)];
        const bool on_shelf =
            pantry.said == catalogue::Keeping::Said::time && pantry.time.limit == catalogue::Limit::best_by;
        if (there.kind == stock::PlaceKind::pantry && !on_shelf) {
            return basics::problem(there.name, fmt::format("{} is not thawed out of the fridge", thing.name),
                                   "a fridge", "thaw it in the fridge, in cold water or in the microwave");
        }
        lot.state = State::thawing;
        lot.thaw = thaw;
        lot.thawed_on = draft.day() + basics::days{stock::days_to_thaw(lot, thing, *thaw)};
        lot.since = draft.day();
        if (lot.opened_on) lot.opened_on = lot.thawed_on;
    } else if (!from_freezer) {
        if (auto reason = detail::unfit(draft, lot.ingredient, to))
            return tl::make_unexpected(basics::Problems{*reason});
    }
    lot.place = to;
    draft.set_dates(lot);
    return lot;
}

/// All that is left of a lot; the lot that was has nothing any more.
Lot emptied(Lot& lot) {
    Lot all = lot;
    lot.amount = {lot.amount.dimension(), 0};
    lot.packs.clear();
    lot.part_of = 0;
    lot.rough.reset();
    return all;
}

/// A part of a lot goes from where it is; without a number, as a lot of its own. What is told of it.
basics::Result<std::string> enter_move(Draft& draft, const Lot& rest, Lot part, stock::PlaceId to,
                                       std::optional<stock::ThawMethod> thaw) {
    if (part.number == 0) part.number = draft.next_number();
    auto after = settled(draft, part, to, thaw);
    if (!after) return tl::make_unexpected(after.error());
    const Kind kind = after->state == State::thawing && part.state == State::frozen ? Kind::thawing : Kind::moved;
    draft.enter(kind, Column::moved_out, rest, -part.amount.value());
    draft.enter(kind, Column::moved_in, *after, part.amount.value());
    if (after->state != part.state) set_aside(draft, *after);
    std::string how;
    if (kind == Kind::thawing) {
        how = fmt::format(", to be cooked from {}", basics::iso(*after->thawed_on));
    } else if (after->state == State::frozen && part.state != State::frozen) {
        how = ", to freeze";
    }
    return named(draft.kitchen(), *after) + how + dates(*after);
}

/// What is taken of each thing, told once whatever its lots.
class Sums {
  public:
    explicit Sums(const Draft& draft) : draft_(draft) {}
    void add(const Lot& lot, std::int64_t value) {
        const auto same = [&](const auto& sum) {
            return sum.first.ingredient == lot.ingredient && sum.first.dish == lot.dish && sum.first.rough == lot.rough;
        };
        const auto known = std::find_if(sums_.begin(), sums_.end(), same);
        if (known == sums_.end()) {
            sums_.emplace_back(lot, value);
        } else {
            known->second += value;
        }
    }
    [[nodiscard]] std::vector<std::string> told() const {
        std::vector<std::string> parts;
        for (const auto& [lot, value] : sums_) {
            parts.push_back(lot.rough ? named(draft_.kitchen(), lot) : draft_.told(lot, value));
        }
        return parts;
    }

  private:
    const Draft& draft_;
    std::vector<std::pair<Lot, std::int64_t>> sums_;
};

/// The line of what went to the bin.
void tell_tossed(Draft& draft, const Sums& sums, const std::string& reason) {
    const auto parts = sums.told();
    draft.change().line = parts.empty() ? "tossed of what is not counted" : "tossed " + detail::few_of(parts);
    if (!reason.empty()) draft.change().line += ": " + reason;
}

/// Whether the lot has these packs, or is loose and has that much.
bool has_packs(const Lot& lot, std::vector<std::int64_t> weights) {
    std::vector<std::int64_t> packs = lot.packs;
    if (packs.empty()) {
        const auto sum = std::accumulate(weights.begin(), weights.end(), std::int64_t{0});
        return sum > 0 && sum <= lot.amount.value();
    }
    std::sort(packs.begin(), packs.end());
    std::sort(weights.begin(), weights.end());
    return !weights.empty() && std::includes(packs.begin(), packs.end(), weights.begin(), weights.end());
}

}  // namespace

basics::Result<Change> got(const At& at, std::span<const Got> things) {
    Draft draft(at, "got");
    std::vector<std::string> parts;
    for (const Got& thing : things) {
        if (auto reason = detail::unfit(draft, thing.ingredient, thing.place)) {
            return tl::make_unexpected(basics::Problems{*reason});
        }
        auto lot = lot_of(draft, thing);
        if (!lot) return tl::make_unexpected(lot.error());
        draft.enter(Kind::got, Column::in, *lot, lot->amount.value());
        parts.push_back(
            fmt::format("{} into {}{}", named(at.kitchen, *lot), at.kitchen.place(lot->place).name, dates(*lot)));
        if (thing.pack)
            draft.change().facts.push_back({true, {Fact::Kind::pack, thing.ingredient, thing.pack->value(), {}}});
        if (thing.paid && lot->paid_for > 0 && !thing.paid_is_share) {
            draft.change().facts.push_back({true, {Fact::Kind::price, thing.ingredient, lot->paid_for, *thing.paid}});
        }
        if (at.kitchen.household.staples_out[thing.ingredient.index()]) {
            draft.change().facts.push_back({false, {Fact::Kind::out, thing.ingredient, 0, {}}});
        }
        detail::off_the_list(at, thing.ingredient, draft.change());
    }
    draft.change().line = "got " + detail::few_of(parts);
    return draft.change();
}

basics::Result<Change> moved(const At& at, std::span<const Item> things, stock::PlaceId to,
                             std::optional<stock::ThawMethod> thaw) {
    Draft draft(at, "moved");
    std::vector<std::string> parts;
    for (const Item& item : things) {
        std::vector<LotNumber> lots = draft.find(item.what);
        std::erase_if(lots, [&](LotNumber n) { return draft.lot(n).place == to; });
        const auto portions = portions_of(draft, item, lots, true);
        if (!portions) return tl::make_unexpected(portions.error());
        for (const Portion& portion : *portions) {
            Lot rest = draft.lot(portion.lot);
            const bool all = portion.value >= rest.amount.value();
            const Lot part = all ? emptied(rest) : stock::split(rest, portion.value);
            const auto told = enter_move(draft, rest, part, to, thaw);
            if (!told) return tl::make_unexpected(told.error());
            parts.push_back(*told);
        }
    }
    draft.change().line = fmt::format("moved to {}: {}", at.kitchen.place(to).name, detail::joined(parts));
    return draft.change();
}

basics::Result<Change> moved_packs(const At& at, std::span<const PacksOfLot> packs, stock::PlaceId to,
                                   std::optional<stock::ThawMethod> thaw) {
    Draft draft(at, "moved");
    std::vector<std::string> parts;
    for (const PacksOfLot& some : packs) {
        const auto there = draft.find({some.lot, {}, {}, {}});
        if (there.empty() || !has_packs(draft.lot(some.lot), some.weights)) {
            return basics::problem(fmt::format("lot {}", some.lot), "these packs are not there",
                                   "packs of the lot as it is", "'samebase stock' lists it");
        }
        Lot rest = draft.lot(some.lot);
        const auto value = std::accumulate(some.weights.begin(), some.weights.end(), std::int64_t{0});
        const Lot part = value == rest.amount.value() ? emptied(rest) : stock::split_packs(rest, some.weights);
        const auto told = enter_move(draft, rest, part, to, thaw);
        if (!told) return tl::make_unexpected(told.error());
        parts.push_back(*told);
    }
    if (!parts.empty())
        draft.change().line = fmt::format("moved to {}: {}", at.kitchen.place(to).name, detail::joined(parts));
    return draft.change();
}

basics::Result<Change> opened(const At& at, std::span<const Item> things) {
    Draft draft(at, "opened");
    std::vector<std::string> parts;
    for (const Item& item : things) {
        std::vector<LotNumber> lots = draft.find(item.what);
        std::erase_if(lots, [&](LotNumber n) { return draft.lot(n).opened_on.has_value(); });
        const bool were_there = !lots.empty();
        detail::leave_expired(draft, lots);
        if (were_there && lots.empty()) return all_expired(draft, item.what);
        by_date(draft, lots);
        std::vector<Portion> portions;
        if (item.quantity.all() && !lots.empty()) {
            const Lot& lot = draft.lot(lots.front());
            const bool pieces = lot.amount.dimension() == measure::Dimension::pieces && lot.amount.value() > 1000;
            std::int64_t value = lot.amount.value();
            if (!lot.packs.empty()) value = lot.packs.back();
            if (lot.packs.empty() && pieces) value = 1000;
            portions.push_back({lot.number, value});
        } else {
            auto chosen = portions_of(draft, item, lots, false);
            if (!chosen) return tl::make_unexpected(chosen.error());
            portions = std::move(*chosen);
        }
        for (const Portion& portion : portions) {
            detail::open(draft, portion);
            const Lot& after = draft.change().entries.back().after;
            parts.push_back(named(at.kitchen, after) + dates(after));
            set_aside(draft, after);
        }
    }
    draft.change().line = "opened " + detail::joined(parts);
    return draft.change();
}

basics::Result<Change> ate(const At& at, std::span<const Item> things) {
    Draft draft(at, "ate");
    Sums sums(draft);
    for (const Item& item : things) {
        std::vector<LotNumber> lots = draft.find(item.what);
        const bool were_there = !lots.empty();
        detail::leave_expired(draft, lots);
        if (were_there && lots.empty()) return all_expired(draft, item.what);
        detail::in_eating_order(draft, lots);
        const auto portions = portions_of(draft, item, lots, false);
        if (!portions) return tl::make_unexpected(portions.error());
        for (const Portion& portion : *portions) {
            const Lot before = draft.lot(portion.lot);
            sums.add(before, portion.value);
            detail::eat(draft, Kind::eaten, portion);
        }
    }
    const auto parts = sums.told();
    draft.change().line = parts.empty() ? "ate of what is not counted" : "ate " + detail::joined(parts);
    detail::list_used_up(at, draft.change());
    return draft.change();
}

basics::Result<Change> tossed(const At& at, std::span<const Item> things, const std::string& reason) {
    Draft draft(at, "tossed");
    Sums sums(draft);
    for (const Item& item : things) {
        std::vector<LotNumber> lots = draft.find(item.what);
        by_date(draft, lots);
        const auto portions = portions_of(draft, item, lots, false);
        if (!portions) return tl::make_unexpected(portions.error());
        for (const Portion& portion : *portions) {
            const Lot before = draft.lot(portion.lot);
            sums.add(before, portion.value);
            draft.take(Kind::tossed, Column::tossed, portion.lot, portion.value, reason);
        }
    }
    tell_tossed(draft, sums, reason);
    return draft.change();
}

basics::Result<Change> tossed_past(const At& at, const std::string& reason) {
    Draft draft(at, "tossed");
    Sums sums(draft);
    for (const LotNumber number : draft.find({})) {
        const Lot before = draft.lot(number);
        if (!before.use_by || *before.use_by >= at.day) continue;
        sums.add(before, before.amount.value());
        draft.take(Kind::tossed, Column::tossed, number, before.amount.value(), reason);
    }
    if (draft.change().entries.empty()) {
        return basics::problem("--past", "nothing is past its use-by", "something to toss");
    }
    tell_tossed(draft, sums, reason);
    return draft.change();
}

basics::Result<Change> out(const At& at, catalogue::IngredientId staple, bool is_out) {
    const auto& thing = at.kitchen.catalogue()[staple];
    if (!at.kitchen.household.staples[staple.index()]) {
        return basics::problem(thing.name, "is no staple: its stock is counted", "a staple",
                               "say 'samebase count' or 'samebase tossed'");
    }
    Draft draft(at, "out");
    draft.change().facts.push_back({is_out, {Fact::Kind::out, staple, 0, {}}});
    draft.change().line = thing.name + (is_out ? " is out" : " is there again");
    return draft.change();
}

Change one_after_other(Change first, Change second) {
    if (first.empty()) return second;
    const auto add = [](auto& to, auto& from) { to.insert(to.end(), from.begin(), from.end()); };
    if (!second.line.empty()) first.line += "; " + second.line;
    add(first.notes, second.notes);
    add(first.entries, second.entries);
    add(first.plan, second.plan);
    add(first.took, second.took);
    add(first.history, second.history);
    add(first.facts, second.facts);
    add(first.list, second.list);
    add(first.counted, second.counted);
    return first;
}

void apply(Kitchen& kitchen, const Change& change) {
    std::map<LotNumber, Lot> lots;
    for (Lot& lot : kitchen.lots) lots.emplace_hint(lots.end(), lot.number, std::move(lot));
    for (const stock::Entry& entry : change.entries) lots[entry.after.number] = entry.after;
    kitchen.lots.clear();
    for (auto& [number, lot] : lots) {
        if (lot.there()) kitchen.lots.push_back(std::move(lot));
    }
    const auto order = [](const Planned& a, const Planned& b) {
        return std::tuple{a.day, a.meal, a.dish} < std::tuple{b.day, b.meal, b.dish};
    };
    for (const PlanEdit& edit : change.plan) {
        const auto place = std::lower_bound(kitchen.plan.begin(), kitchen.plan.end(), edit.row, order);
        if (edit.adds) {
            kitchen.plan.insert(place, edit.row);
        } else if (place != kitchen.plan.end() && *place == edit.row) {
            kitchen.plan.erase(place);
        }
    }
    const auto by_day = [](const Had& a, const Had& b) {
        return std::tuple{a.day, a.meal, a.dish} < std::tuple{b.day, b.meal, b.dish};
    };
    for (const HistoryEdit& edit : change.history) {
        const auto place = std::lower_bound(kitchen.history.begin(), kitchen.history.end(), edit.row, by_day);
        if (edit.adds) {
            kitchen.history.insert(place, edit.row);
        } else if (place != kitchen.history.end() && *place == edit.row) {
            kitchen.history.erase(place);
        }
    }
    for (const FactEdit& edit : change.facts) {
        const auto id = edit.fact.ingredient;
        if (edit.fact.kind == Fact::Kind::out) kitchen.household.staples_out[id.index()] = edit.holds;
        if (edit.fact.kind != Fact::Kind::price) continue;
        auto& prices = kitchen.household.prices;
        std::erase_if(prices, [&](const Price& price) { return price.ingredient == id; });
        const measure::Amount amount{kitchen.catalogue()[id].dimension, edit.fact.amount};
        if (edit.holds) prices.push_back({id, amount, edit.fact.money});
    }
    auto& listed = kitchen.household.listed;
    for (const ListEdit& edit : change.list) {
        std::erase_if(listed, [&](const Listed& row) { return row.words == edit.row.words; });
        if (edit.adds) listed.push_back(edit.row);
    }
    std::sort(listed.begin(), listed.end(), [](const Listed& a, const Listed& b) { return a.words < b.words; });
    settle(kitchen);
}

LotNumber next_lot(const At& at, const Change& change) {
    LotNumber next = at.next_lot;
    for (const stock::Entry& entry : change.entries) next = std::max(next, entry.after.number + 1);
    return next;
}

std::string describe(const Kitchen& kitchen, const Lot& lot) {
    if (lot.rough) return std::string{measure::name(*lot.rough)};
    const auto& thing = kitchen.catalogue()[lot.ingredient];
    const std::string amount = catalogue::weighed(lot.amount, thing);
    if (thing.in_serves || lot.packs.empty()) return amount;
    return fmt::format("{} ({})", catalogue::packs_in_hand(stock::pack_count(lot)), amount);
}

std::string describe(const Kitchen& kitchen, const LineSwap& swap) {
    const catalogue::Ingredient& of = kitchen.catalogue()[swap.of];
    if (swap.use.empty()) return "no " + of.name;
    if (swap.use.size() == 1 && swap.use.front().first == swap.of) {
        return catalogue::in_hand_named({of.dimension, swap.use.front().second}, of);
    }
    std::string words;
    for (const auto& [use, amount] : swap.use) words += (words.empty() ? "" : " and ") + kitchen.catalogue()[use].name;
    return fmt::format("{} for {}", words, of.name);
}

std::string describe(const Kitchen& kitchen, std::span<const LineSwap> swaps) {
    constexpr std::size_t most = 2;  // the recipe tells them all
    const std::size_t shown = swaps.size() <= most + 1 ? swaps.size() : most;
    std::string words;
    for (const LineSwap& swap : swaps.first(shown)) words += (words.empty() ? "" : ", ") + describe(kitchen, swap);
    if (shown < swaps.size()) words += fmt::format(" and {} more", swaps.size() - shown);
    return words;
}

std::string label(const Kitchen& kitchen, catalogue::IngredientId ingredient, std::optional<cookbook::DishId> dish) {
    const auto& thing = kitchen.catalogue()[ingredient];
    if (!dish || thing.kind != catalogue::Kind::cooked) return thing.name;
    const std::string& cooked = kitchen.cookbook()[*dish].name;
    if (thing.name.find(cooked) != std::string::npos) return thing.name;
    return fmt::format("{} ({})", thing.name, cooked);
}

}  // namespace samebase::kitchen
