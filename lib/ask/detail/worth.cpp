#include "ask/detail/worth.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>

#include "basics/exact.hpp"
#include "kitchen/night.hpp"

namespace samebase::ask::detail {

namespace {

using basics::Money;
using catalogue::IngredientId;

std::int64_t total_tossed(const flow::Part* part) {
    if (part == nullptr) return 0;
    return std::accumulate(part->outcome.fates.begin(), part->outcome.fates.end(), std::int64_t{0},
                           [](std::int64_t sum, const flow::Fate& fate) { return sum + fate.tossed; });
}

std::int64_t total_bought(const flow::Part* part) {
    if (part == nullptr) return 0;
    return std::accumulate(
        part->outcome.fates.begin(), part->outcome.fates.end(), std::int64_t{0},
        [](std::int64_t sum, const flow::Fate& fate) { return sum + (fate.bought ? fate.unit.amount : 0); });
}

/// How much of it the household eats in four weeks: as in the last four, as planned after the span, and every day. Of a
/// household that has written down no meal yet, a pack of what ordinary households eat.
std::int64_t eaten_by_habit(const kitchen::Kitchen& kitchen, IngredientId of, basics::Span span) {
    constexpr basics::days weeks{28};
    std::int64_t sum = 0;
    const auto add = [&](cookbook::DishId dish) {
        for (const cookbook::DishIngredient& line : kitchen.cookbook()[dish].ingredients) {
            if (!line.optional && line.ingredient == of) sum += line.amount.value();
        }
    };
    for (auto had = kitchen.history.rbegin(); had != kitchen.history.rend() && had->day >= span.first - weeks; ++had)
        add(had->dish);
    for (const kitchen::Planned& row : kitchen.plan) {
        if (row.day > span.last && row.day <= span.last + weeks && !row.ready_meal) add(row.dish);
    }
    for (const kitchen::StandingUse& use : kitchen.household.standing_uses) {
        if (use.ingredient == of)
            sum += use.amount.value() * std::popcount(static_cast<unsigned>(use.weekdays)) * (weeks.count() / 7);
    }
    const catalogue::Ingredient& thing = kitchen.catalogue()[of];
    const bool usual = kitchen.history.empty() && thing.everyday && thing.pack;
    return usual ? std::max(sum, thing.pack->amount.value()) : sum;
}

struct Kept {
    Money price;
    std::int64_t amount = 0;
};

Kept kept_of(const kitchen::Kitchen& kitchen, const flow::Part* part, basics::Span span) {
    if (part == nullptr) return {};
    Kept kept{part->outcome.kept, 0};
    std::int64_t bought = 0;
    Money paid;
    for (const flow::Fate& fate : part->outcome.fates) {
        kept.amount += fate.left();
        if (!fate.bought || fate.left() == 0) continue;
        bought += fate.left();
        paid += basics::share_of(fate.unit.price, fate.left(), fate.unit.amount);
    }
    if (bought == 0) return kept;
    const auto counts = std::min(bought, eaten_by_habit(kitchen, part->component.ingredient, span));
    kept.price += basics::share_of(paid, counts, bought) - paid;
    kept.amount += counts - bought;
    return kept;
}

std::int64_t total_unmet(const flow::Part* part) {
    if (part == nullptr) return 0;
    return std::accumulate(part->outcome.unmet.begin(), part->outcome.unmet.end(), std::int64_t{0});
}

/// The lines that compare two balances, an ingredient each.
class Difference {
  public:
    Difference(const kitchen::Kitchen& kitchen, const flow::Balance& before, const flow::Balance& after,
               std::vector<Because>& lines)
        : kitchen_(kitchen), span_(before.span), lines_(lines) {
        auto b = before.parts.begin();
        auto a = after.parts.begin();
        while (b != before.parts.end() || a != after.parts.end()) {
            const bool only_before =
                a == after.parts.end() ||
                (b != before.parts.end() && (*b)->component.ingredient < (*a)->component.ingredient);
            const bool only_after = b == before.parts.end() ||
                                    (a != after.parts.end() && (*a)->component.ingredient < (*b)->component.ingredient);
            if (only_before) {
                compare((*b)->component.ingredient, b->get(), nullptr);
                ++b;
            } else if (only_after) {
                compare((*a)->component.ingredient, nullptr, a->get());
                ++a;
            } else {
                if (*a != *b) compare((*a)->component.ingredient, b->get(), a->get());
                ++a;
                ++b;
            }
        }
    }

  private:
    void compare(IngredientId of, const flow::Part* before, const flow::Part* after) {
        const auto money = [](const flow::Part* part, Money flow::Outcome::*which) {
            return part == nullptr ? Money{} : part->outcome.*which;
        };
        const auto unmet = [](const flow::Part* part) {
            return part == nullptr ? Money{} : flow::unmet_price(part->component, part->outcome);
        };
        add(Line::waste_avoided, money(before, &flow::Outcome::tossed) - money(after, &flow::Outcome::tossed), of,
            total_tossed(before) - total_tossed(after));
        add(Line::to_buy, money(before, &flow::Outcome::spent) - money(after, &flow::Outcome::spent), of,
            total_bought(before) - total_bought(after));
        const Kept kept_before = kept_of(kitchen_, before, span_);
        const Kept kept_after = kept_of(kitchen_, after, span_);
        add(Line::kept, kept_after.price - kept_before.price, of, kept_after.amount - kept_before.amount);
        add(Line::unmet, unmet(before) - unmet(after), of, total_unmet(before) - total_unmet(after));
    }

    void add(Line line, Money money, IngredientId of, std::int64_t amount) {
        if (money.minor == 0) return;
        lines_.push_back({line, money, of, measure::Amount{kitchen_.catalogue()[of].dimension, std::abs(amount)}, ""});
    }

    const kitchen::Kitchen& kitchen_;
    basics::Span span_;
    std::vector<Because>& lines_;
};

/// Days since, or until, the dish was or will be had nearest to the day; the meal in question does not count.
std::optional<int> nearest_time(const Setting& setting, int within, const auto& is_it) {
    const kitchen::Kitchen& kitchen = *setting.kitchen;
    const basics::Day day = setting.question.day;
    std::optional<int> nearest;
    const auto consider = [&](basics::Day other, cookbook::DishId dish) {
        const int apart = static_cast<int>(std::abs((other - day).count()));
        if (apart > within || !is_it(dish)) return;
        if (!nearest || apart < *nearest) nearest = apart;
    };
    for (auto had = kitchen.history.rbegin(); had != kitchen.history.rend() && had->day >= day - basics::days{within};
         ++had) {
        consider(had->day, had->dish);
    }
    for (const kitchen::Planned& planned : kitchen.plan) {
        if (planned.day != day || planned.meal != setting.meal) consider(planned.day, planned.dish);
    }
    return nearest;
}

constexpr int base_gap = 7;

void had_lately(const Setting& setting, cookbook::DishId id, std::vector<Because>& lines) {
    const kitchen::Kitchen& kitchen = *setting.kitchen;
    const cookbook::Dish& dish = kitchen.cookbook()[id];
    const Money price = kitchen.household.worths.had_lately;
    const auto itself = nearest_time(setting, dish.gap, [&](cookbook::DishId other) { return other == id; });
    if (itself && dish.gap > 0) {
        const Money cost = basics::share_of(price, dish.gap - *itself, dish.gap);
        if (cost.minor != 0)
            lines.push_back({Line::had_lately, -cost, {}, {}, fmt::format("had or planned {} days apart", *itself)});
    }
    if (!dish.base) return;
    const auto base = nearest_time(setting, base_gap, [&](cookbook::DishId other) {
        return other != id && kitchen.cookbook()[other].base == dish.base;
    });
    if (!base) return;
    const Money cost = basics::share_of(price, base_gap - *base, std::int64_t{4} * base_gap);
    if (cost.minor != 0) {
        lines.push_back({Line::had_lately,
                         -cost,
                         {},
                         {},
                         fmt::format("another dish on {} {} days apart", kitchen.cookbook()[*dish.base].name, *base)});
    }
}

int mark_of(const kitchen::Kitchen& kitchen, const kitchen::Person& person, cookbook::DishId id,
            const flow::Cooking& cooking) {
    constexpr int worst = -3;
    constexpr int top = 3;
    for (const kitchen::Mark& mark : person.marks) {
        if (mark.dish == id) return mark.mark;
    }
    if (!disliked(kitchen, person, cooking).empty()) return worst;
    int sum = 0;
    for (const kitchen::Mark& mark : person.marks) {
        if (mark.dish) continue;
        const bool in_it = std::any_of(cooking.needs.begin(), cooking.needs.end(), [&](const flow::Needed& need) {
            return kitchen.catalogue().is(need.ingredient, mark.of);
        });
        if (in_it) sum += mark.mark;
    }
    return std::clamp(sum, worst, top);
}

void liking(const Setting& setting, cookbook::DishId id, const flow::Cooking& cooking, std::vector<Because>& lines) {
    const kitchen::Kitchen& kitchen = *setting.kitchen;
    if (setting.eaters.empty()) return;
    std::int64_t marks = 0;
    for (const std::size_t eater : setting.eaters)
        marks += mark_of(kitchen, kitchen.household.people[eater], id, cooking);
    if (marks == 0) return;
    const Money money =
        basics::share_of(kitchen.household.worths.mark, marks, static_cast<std::int64_t>(setting.eaters.size()));
    if (money.minor != 0) lines.push_back({Line::liking, money, {}, {}, "the mean of the eaters' marks"});
}

void effort(const Setting& setting, const cookbook::Dish& dish, std::vector<Because>& lines) {
    const kitchen::Kitchen& kitchen = *setting.kitchen;
    const int over = dish.minutes - kitchen::minutes_of(kitchen.household, setting.question.day);
    if (over <= 0) return;
    lines.push_back({Line::effort,
                     Money{-kitchen.household.worths.minute.minor * over},
                     {},
                     {},
                     fmt::format("{} minutes, {} more than the day allows", dish.minutes, over)});
}

/// Whether what was asked about is in the dish only because it stands in for something.
bool is_only_a_stand_in(const Setting& setting, const cookbook::Dish& dish) {
    return std::none_of(dish.ingredients.begin(), dish.ingredients.end(), [&](const cookbook::DishIngredient& line) {
        return !line.optional && is_any(setting.kitchen->catalogue(), line.ingredient, setting.using_);
    });
}

/// A stand-in costs by its line's share of the dish; but to the cook who asked about it the whole dish is about it.
void stand_ins(const Setting& setting, const cookbook::Dish& dish, const Candidate& candidate,
               std::vector<Because>& lines) {
    const auto fussiness = static_cast<double>(setting.kitchen->household.worths.fussiness.minor);
    const bool only_a_stand_in = is_only_a_stand_in(setting, dish);
    for (std::size_t i = 0; i < candidate.stand_ins.size(); ++i) {
        const StandInUse& use = candidate.stand_ins[i];
        const bool asked_for = only_a_stand_in && use.use.size() == 1 &&
                               is_any(setting.kitchen->catalogue(), use.use.front().first, setting.using_);
        const double share = asked_for ? 1 : candidate.stand_in_shares[i];
        const Money cost{std::llround(share * (1 - use.fit) * fussiness)};
        if (cost.minor != 0) lines.push_back({Line::stand_ins, -cost, use.replaced, {}, use.note});
    }
}

/// Use-by of what a dish leaves.
std::optional<basics::Day> leftover_use_by(const catalogue::Ingredient& thing, basics::Day cooked) {
    const auto& keeping = thing.keeps[static_cast<std::size_t>(catalogue::Keep::fridge)];
    if (keeping.said != catalogue::Keeping::Said::time) return std::nullopt;
    return cooked + basics::days{keeping.time.days};
}

bool in_danger(const flow::Balance& before, IngredientId ingredient, stock::LotNumber lot) {
    const flow::Part* part = before.part(ingredient);
    if (part == nullptr) return false;
    return std::any_of(part->outcome.fates.begin(), part->outcome.fates.end(),
                       [&](const flow::Fate& fate) { return fate.unit.lot == lot && fate.tossed > 0; });
}

void lots_used(const Setting& setting, const flow::Balance& after, const Candidate& candidate, Alternative& result) {
    const kitchen::Kitchen& kitchen = *setting.kitchen;
    const flow::Slot slot = flow::dinner_of(static_cast<int>((setting.question.day - after.span.first).count()));
    for (const flow::Needed& need : candidate.cooking.needs) {
        const flow::Part* part = after.part(need.ingredient);
        if (part == nullptr) continue;
        for (const flow::Use& use : part->outcome.uses) {
            const auto want = static_cast<std::size_t>(use.want);
            if (part->component.wants[want].slot != slot || part->reasons[want].dish != candidate.cooking.dish)
                continue;
            const flow::Fate& fate = part->outcome.fates[static_cast<std::size_t>(use.unit)];
            const stock::Lot* lot = kitchen.lot(fate.unit.lot);
            if (lot == nullptr) continue;
            const bool again = !result.uses.empty() && result.uses.back().lot == lot->number;
            const measure::Amount amount{kitchen.catalogue()[need.ingredient].dimension, use.amount};
            if (again) {
                result.uses.back().amount += amount;
                continue;
            }
            result.uses.push_back({need.ingredient, lot->number, amount, lot->state, lot->use_by, lot->best_by,
                                   in_danger(*setting.before, need.ingredient, lot->number)});
        }
    }
}

/// The packs that the dinner at that slot eats of, of those that are bought by then.
std::int64_t packs_eaten_of(const flow::Part& part, flow::Slot slot, cookbook::DishId dish) {
    std::int64_t packs = 0;
    for (std::size_t i = 0; i < part.outcome.fates.size(); ++i) {
        if (!part.outcome.fates[i].bought) continue;
        packs += std::any_of(part.outcome.uses.begin(), part.outcome.uses.end(), [&](const flow::Use& use) {
            const auto want = static_cast<std::size_t>(use.want);
            return static_cast<std::size_t>(use.unit) == i && part.component.wants[want].slot == slot &&
                   part.reasons[want].dish == dish;
        });
    }
    return packs;
}

void bought(const Setting& setting, const flow::Balance& after, const Candidate& candidate, Alternative& result) {
    const flow::Slot slot = flow::dinner_of(static_cast<int>((setting.question.day - after.span.first).count()));
    for (const flow::Needed& need : candidate.cooking.needs) {
        const flow::Part* part = after.part(need.ingredient);
        if (part == nullptr || !part->component.offer) continue;
        const flow::Offer& offer = *part->component.offer;
        const auto more = (total_bought(part) - total_bought(setting.before->part(need.ingredient))) / offer.pack;
        const auto packs = std::max(more, packs_eaten_of(*part, slot, candidate.cooking.dish));
        if (packs <= 0) continue;
        result.to_buy.push_back({need.ingredient,
                                 {setting.kitchen->catalogue()[need.ingredient].dimension, packs * offer.pack},
                                 static_cast<int>(packs),
                                 Money{packs * offer.price.minor}});
    }
}

void lacking(const Setting& setting, const flow::Balance& after, const Candidate& candidate, Alternative& result) {
    const flow::Slot slot = flow::dinner_of(static_cast<int>((setting.question.day - after.span.first).count()));
    for (const flow::Needed& need : candidate.cooking.needs) {
        const flow::Part* part = after.part(need.ingredient);
        if (part == nullptr) continue;
        std::int64_t unmet = 0;
        for (std::size_t w = 0; w < part->reasons.size(); ++w) {
            const bool its_own =
                part->component.wants[w].slot == slot && part->reasons[w].dish == candidate.cooking.dish;
            if (its_own) unmet += part->outcome.unmet[w];
        }
        if (unmet > 0) {
            result.lacks.emplace_back(need.ingredient,
                                      measure::Amount{setting.kitchen->catalogue()[need.ingredient].dimension, unmet});
        }
    }
}

}  // namespace

Money kept(const kitchen::Kitchen& kitchen, const flow::Balance& balance) {
    return std::accumulate(balance.parts.begin(), balance.parts.end(), Money{}, [&](Money sum, const auto& part) {
        return sum + kept_of(kitchen, part.get(), balance.span).price;
    });
}

void weigh(const Setting& setting, const flow::Balance& after, const Candidate& candidate, Alternative& alternative) {
    const kitchen::Kitchen& kitchen = *setting.kitchen;
    auto& lines = alternative.because;
    Difference(kitchen, *setting.before, after, lines);
    stand_ins(setting, kitchen.cookbook()[alternative.dish], candidate, lines);
    had_lately(setting, alternative.dish, lines);
    liking(setting, alternative.dish, candidate.cooking, lines);
    if (!candidate.cooking.ready_meal) effort(setting, kitchen.cookbook()[alternative.dish], lines);
    std::stable_sort(lines.begin(), lines.end(), [](const Because& a, const Because& b) { return a.line < b.line; });
    for (const Because& because : lines) alternative.worth += because.money;
}

void describe(const Setting& setting, const flow::Balance& after, const Candidate& candidate,
              Alternative& alternative) {
    const kitchen::Kitchen& kitchen = *setting.kitchen;
    lots_used(setting, after, candidate, alternative);
    bought(setting, after, candidate, alternative);
    lacking(setting, after, candidate, alternative);
    for (const flow::Needed& made : candidate.cooking.makes) {
        const catalogue::Ingredient& thing = kitchen.catalogue()[made.ingredient];
        if (thing.in_serves)
            alternative.leaves.push_back({made.ingredient, made.amount, leftover_use_by(thing, setting.question.day)});
    }
    alternative.cautions = candidate.cautions;
    const auto usual = safety_cautions(kitchen, candidate.cooking, alternative.uses, setting.today);
    alternative.cautions.insert(alternative.cautions.end(), usual.begin(), usual.end());
}

}  // namespace samebase::ask::detail
