#include <fmt/format.h>

#include <algorithm>

#include "basics/exact.hpp"
#include "catalogue/hand.hpp"
#include "kitchen/changes.hpp"
#include "kitchen/detail/draft.hpp"
#include "measure/written.hpp"

namespace samebase::kitchen {

using detail::Draft;
using stock::Column;
using stock::Kind;
using stock::Lot;
using stock::LotNumber;

namespace {

struct Need {
    catalogue::IngredientId ingredient;
    measure::Amount amount;
    bool optional = false;
};

/// What the dish takes, in the order of its lines, with what really went in; an ingredient once.
std::vector<Need> needs(const Draft& draft, const Cooked& what) {
    const Kitchen& kitchen = draft.kitchen();
    const cookbook::Dish& dish = kitchen.cookbook()[what.dish];
    std::vector<Need> list;
    const auto add = [&](const Needed& need, bool optional) {
        const measure::Amount amount{draft.ingredient(need.ingredient).dimension, need.amount};
        const auto same = std::find_if(list.begin(), list.end(), [&](const Need& n) {
            return n.ingredient == need.ingredient && n.optional == optional;
        });
        if (same == list.end()) {
            list.push_back({need.ingredient, amount, optional});
        } else {
            same->amount += amount;
        }
    };
    if (what.ready_meal) {
        add({*dish.leaves, what.serves}, false);
    } else {
        const Takes taken = takes(kitchen, {draft.day(), what.meal, what.dish, what.serves, what.swaps});
        for (const LineTake& line : taken.lines) {
            const bool optional = dish.ingredients[line.line].optional;
            for (const Needed& need : line.takes) add(need, optional);
            for (const ApartTake& apart : line.apart) add(apart.take, optional);
        }
    }
    for (const Needed& used : what.used) {
        std::erase_if(list, [&](const Need& need) { return need.ingredient == used.ingredient; });
        add(used, false);
    }
    return list;
}

/// Eats it, and adds to `holds` what the lots hold that it comes from.
basics::Result<void> eat_need(Draft& draft, const Need& need, std::optional<cookbook::DishId> of_dish,
                              catalogue::AllergenSet& holds) {
    std::vector<LotNumber> lots = draft.find({{}, need.ingredient, of_dish, {}});
    detail::leave_expired(draft, lots);
    detail::in_eating_order(draft, lots);
    Item item{{{}, need.ingredient, of_dish, {}}, {need.amount, {}, {}}, {}};
    if (need.optional) {
        std::int64_t there = 0;
        for (const LotNumber number : lots) there += draft.lot(number).amount.value();
        item.quantity.amount = {need.amount.dimension(), std::min(there, need.amount.value())};
    }
    if (item.quantity.amount->value() == 0) return {};
    const auto portions = draft.choose(lots, item, false);
    if (!portions) return tl::make_unexpected(portions.error());
    Took took{need.ingredient, of_dish, 0, false};
    for (const detail::Portion& portion : *portions) {
        const Lot before = draft.lot(portion.lot);
        took.amount += portion.value;
        holds.add(stock::counted_allergens(before, draft.kitchen().catalogue(), draft.kitchen().cookbook()));
        const bool from_frozen = draft.ingredient(before.ingredient).thaw == catalogue::Thaw::from_frozen;
        if (!before.ready(draft.day()) && !(from_frozen && before.state == stock::State::frozen)) {
            draft.note(
                fmt::format("{} was still down as {}", draft.told(before, portion.value), stock::name(before.state)));
        }
        detail::eat(draft, Kind::cooked, portion);
    }
    took.last = draft.find({{}, need.ingredient, of_dish, {}}).empty();
    if (took.amount > 0) draft.change().took.push_back(took);
    return {};
}

/// A lot of what was cooked, from things that hold these allergens.
void make(Draft& draft, Lot lot, const measure::Amount& amount, catalogue::AllergenSet holds,
          std::vector<std::string>& parts) {
    lot.amount = amount;
    lot.also = holds.without(stock::counted_allergens(lot, draft.kitchen().catalogue(), draft.kitchen().cookbook()));
    if (!lot.also.empty()) {
        draft.note(fmt::format("{} holds {}, which its recipe does not say", draft.ingredient(lot.ingredient).name,
                               catalogue::in_words(lot.also)));
    }
    draft.set_dates(lot);
    draft.enter(Kind::cooked, Column::in, lot, amount.value());
    parts.push_back(fmt::format("{} into {}{}", draft.told(lot, amount.value()), draft.kitchen().place(lot.place).name,
                                lot.eat_by() ? fmt::format(", {} {}", lot.use_by ? "use by" : "best by",
                                                           basics::iso(lot.use_by ? *lot.use_by : *lot.best_by))
                                             : ""));
}

basics::Result<void> sound(const Draft& draft, const Cooked& what) {
    const cookbook::Dish& dish = draft.kitchen().cookbook()[what.dish];
    if (what.serves <= 0 || what.serves > 1'000'000'000)
        return basics::problem(dish.name, "no serves", "one serve or more");
    if (what.eaten < 0 || what.freeze < 0 || what.eaten + what.freeze > what.serves) {
        return basics::problem(
            dish.name, "more serves eaten and frozen than cooked",
            fmt::format("{} at most", measure::write_kindly({measure::Dimension::pieces, what.serves})));
    }
    if (what.freeze > 0 && !what.freezer)
        return basics::problem(dish.name, "no freezer for the ready meal", "a freezer");
    if (what.ready_meal && (!dish.leaves || what.freeze > 0 || what.eaten != what.serves))
        return basics::problem(dish.name, "is warmed, not cooked", "as many serves as are eaten");
    if (what.freeze > 0 && !dish.leaves)
        return basics::problem(dish.name, "does not keep", "a dish that leaves something");
    const auto readable = [](const std::optional<measure::Amount>& amount) {
        return amount && amount->value() <= measure::most_readable;
    };
    bool fits = true;
    for (const cookbook::DishIngredient& line : dish.ingredients)
        fits = fits && readable(measure::scaled(line.amount, what.serves, std::int64_t{1000} * dish.serves));
    for (const LineSwap& swap : what.swaps) {
        for (const auto& [id, amount] : swap.use) {
            const measure::Amount whole{draft.kitchen().catalogue()[id].dimension, amount};
            fits = fits && readable(measure::scaled(whole, what.serves, swap.serves_thousandths));
        }
    }
    if (!fits) return basics::problem(dish.name, "too many serves", "fewer serves");
    return {};
}

}  // namespace

basics::Result<Change> cooked(const At& at, const Cooked& what) {
    Draft draft(at, "cooked");
    if (auto fine = sound(draft, what); !fine) return tl::make_unexpected(fine.error());
    const cookbook::Dish& dish = at.kitchen.cookbook()[what.dish];
    catalogue::AllergenSet holds;
    for (const LineSwap& swap : what.swaps) {
        for (const auto& [use, amount] : swap.use) holds.add(at.kitchen.catalogue()[use].counted_allergens());
    }
    for (const Need& need : needs(draft, what)) {
        if (need.amount.value() == 0) continue;
        const bool staple = at.kitchen.household.staples[need.ingredient.index()];
        const Need wanted{need.ingredient, need.amount, need.optional || staple};
        const auto of_dish = what.ready_meal ? std::optional(what.dish) : std::nullopt;
        if (auto eaten = eat_need(draft, wanted, of_dish, holds); !eaten) return tl::make_unexpected(eaten.error());
    }
    const std::int64_t more =
        what.ready_meal ? 0
                        : takes(at.kitchen, {at.day, what.meal, what.dish, what.serves, what.swaps}).more_thousandths;
    const auto pieces = [](std::int64_t value) { return measure::Amount{measure::Dimension::pieces, value}; };
    const basics::Money each = cost_per_serve(at.kitchen, what.dish);
    std::vector<std::string> made;
    const auto leave = [&](std::int64_t serves, stock::PlaceId place) {
        if (serves == 0) return;
        Lot lot = draft.arrive(*dish.leaves, what.dish, place);
        lot.paid = basics::Money{basics::fits(basics::scale(each.minor, serves, 1000))};
        lot.paid_for = serves;
        make(draft, lot, pieces(serves), holds, made);
    };
    if (what.freeze > 0) {
        if (!stock::freezes(at.kitchen.place(*what.freezer).kind)) {
            return basics::problem(at.kitchen.place(*what.freezer).name, "is no freezer", "a freezer");
        }
        if (!dish.freezes) draft.note(dish.name + " is not known to freeze well");
        leave(what.freeze, *what.freezer);
    }
    const std::int64_t left = what.serves - what.eaten - what.freeze + more;
    if (dish.leaves) {
        leave(left, what.leftovers);
    } else if (left > 0) {
        draft.note(fmt::format("{} does not keep: what was left over is not entered", dish.name));
    }
    for (const cookbook::ByProduct& by_product : dish.gives) {
        if (what.ready_meal) break;
        const auto amount = measure::scaled(by_product.amount, what.serves, std::int64_t{1000} * dish.serves);
        if (!amount || amount->is_zero()) continue;
        Lot lot = draft.arrive(by_product.ingredient, what.dish, what.leftovers);
        make(draft, lot, *amount, holds, made);
    }
    const Had had{at.day, what.meal, what.dish};
    if (std::find(at.kitchen.history.begin(), at.kitchen.history.end(), had) == at.kitchen.history.end()) {
        draft.change().history.push_back({true, had});
    }
    draft.change().line = fmt::format("{} {}, {}", what.ready_meal ? "warmed" : "cooked", dish.name,
                                      catalogue::serves_in_hand(what.serves));
    if (!made.empty()) draft.change().line += ": " + detail::joined(made);
    detail::list_used_up(at, draft.change());
    return draft.change();
}

}  // namespace samebase::kitchen
