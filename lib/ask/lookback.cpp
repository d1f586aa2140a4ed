#include "ask/lookback.hpp"

#include <algorithm>
#include <chrono>
#include <map>
#include <set>
#include <tuple>

namespace samebase::ask {

namespace {

using basics::Day;
using basics::days;
using catalogue::IngredientId;
using kitchen::Kitchen;
using kitchen::Meal;

/// What a dish is mainly of: the families of its mains, each once.
std::set<catalogue::FamilyId> families_of(const Kitchen& kitchen, const cookbook::Dish& dish) {
    std::set<catalogue::FamilyId> families;
    for (const auto& line : dish.ingredients) {
        if (line.role == catalogue::Role::main) families.insert(kitchen.catalogue()[line.ingredient].family);
    }
    return families;
}

template <class Key>
using Count = std::map<Key, std::pair<int, Day>>;  ///< times, and the last day

template <class Key>
void count(Count<Key>& counts, Key key, Day day) {
    auto& [times, last] = counts[key];
    ++times;
    last = std::max(last, day);
}

template <class Key>
std::vector<LastHad> not_lately(const Count<Key>& counts, Day today) {
    constexpr days a_while{28};
    std::vector<LastHad> list;
    for (const auto& [key, had] : counts) {
        if (had.second + a_while <= today) list.push_back({key, had.second, had.first});
    }
    // The order of keys is that of identifiers.
    std::stable_sort(list.begin(), list.end(), [](const LastHad& a, const LastHad& b) {
        return std::tuple{a.times < 2, a.last} < std::tuple{b.times < 2, b.last};
    });
    return list;
}

/// Dinners that were ever had, and what of them is not to come.
void had(const Kitchen& kitchen, Day today, LookbackAnswer& answer) {
    Count<cookbook::DishId> dishes;
    Count<cookbook::DishId> within;
    Count<cookbook::BaseId> bases;
    Count<catalogue::FamilyId> families;
    for (const kitchen::Had& row : kitchen.history) {
        if (row.meal != Meal::dinner || row.day > today) continue;
        const cookbook::Dish& dish = kitchen.cookbook()[row.dish];
        if (dish.ingredients.empty()) continue;
        count(dishes, row.dish, row.day);
        if (dish.base) count(bases, *dish.base, row.day);
        for (const auto family : families_of(kitchen, dish)) count(families, family, row.day);
        if (answer.span.contains(row.day)) count(within, row.dish, row.day);
    }
    for (const kitchen::Planned& row : kitchen.plan) {
        if (row.day < today) continue;
        dishes.erase(row.dish);
        const cookbook::Dish& dish = kitchen.cookbook()[row.dish];
        if (dish.base) bases.erase(*dish.base);
        for (const auto family : families_of(kitchen, dish)) families.erase(family);
    }
    answer.dishes = not_lately(dishes, today);
    answer.bases = not_lately(bases, today);
    answer.families = not_lately(families, today);
    for (const auto& [dish, times] : within) answer.most.push_back({dish, times.second, times.first});
    std::stable_sort(answer.most.begin(), answer.most.end(), [](const LastHad& a, const LastHad& b) {
        return std::tuple{b.times, b.last} < std::tuple{a.times, a.last};
    });
}

/// The months of a span, or its years, with the sums of each.
class Months {
  public:
    explicit Months(const basics::Span& span) {
        constexpr days two_years{731};
        by_year_ = span.last - span.first > two_years;
        for (Day day = start(span.first); day <= span.last; day = next(day)) months_.push_back({day, 0, {}, {}, {}});
    }
    [[nodiscard]] bool by_year() const { return by_year_; }
    LookbackMonth& of(Day day) {
        const auto after = std::upper_bound(months_.begin(), months_.end(), day,
                                            [](Day d, const LookbackMonth& month) { return d < month.first; });
        return *std::prev(after);
    }
    std::vector<LookbackMonth> take() { return std::move(months_); }

  private:
    [[nodiscard]] Day start(Day day) const {
        const std::chrono::year_month_day ymd{day};
        return Day{std::chrono::year_month_day{ymd.year(), by_year_ ? std::chrono::January : ymd.month(),
                                               std::chrono::day{1}}};
    }
    [[nodiscard]] Day next(Day first) const {
        constexpr days longest_month{31};
        constexpr days longest_year{366};
        return start(first + (by_year_ ? longest_year : longest_month));
    }

    bool by_year_ = false;
    std::vector<LookbackMonth> months_;
};

void spent(const Kitchen& kitchen, const kitchen::Past& past, LookbackAnswer& answer, Months& months) {
    for (const kitchen::Bought& bought : past.bought) {
        if (!answer.span.contains(bought.day)) continue;
        const basics::Money guess = kitchen::price(kitchen, bought.ingredient, bought.amount).value_or(basics::Money{});
        const basics::Money money = bought.paid.value_or(guess);
        LookbackMonth& month = months.of(bought.day);
        month.spent += money;
        answer.spent += money;
        if (bought.paid) continue;
        month.estimated += money;
        answer.estimated += money;
    }
}

void tossed(const Kitchen& kitchen, const kitchen::Past& past, LookbackAnswer& answer, Months& months) {
    std::map<std::string, std::map<IngredientId, basics::Money>> by_reason;
    for (const kitchen::Gone& gone : past.tossed) {
        if (!answer.span.contains(gone.day)) continue;
        const basics::Money money = kitchen::price(kitchen, gone.lot, gone.amount);
        months.of(gone.day).tossed += money;
        answer.tossed += money;
        by_reason[gone.reason][gone.lot.ingredient] += money;
    }
    for (const auto& [reason, things] : by_reason) {
        TossedFor& one = answer.tossed_for.emplace_back();
        one.reason = reason;
        for (const auto& [id, money] : things) {
            one.money += money;
            one.things.push_back(id);
        }
        const auto& prices = things;
        std::stable_sort(one.things.begin(), one.things.end(),
                         [&](IngredientId a, IngredientId b) { return prices.at(b) < prices.at(a); });
    }
    std::stable_sort(answer.tossed_for.begin(), answer.tossed_for.end(),
                     [](const TossedFor& a, const TossedFor& b) { return b.money < a.money; });
}

/// Lunches at home, and what was eaten just before it would have gone.
void saved(const Kitchen& kitchen, const kitchen::Past& past, LookbackAnswer& answer) {
    Saved& saved = answer.saved;
    const basics::Money bought = kitchen.household.worths.bought_lunch;
    for (const kitchen::Had& row : kitchen.history) {
        if (row.meal != Meal::lunch || !answer.span.contains(row.day)) continue;
        const auto eaters = static_cast<int>(kitchen::eaters(kitchen, row.day, Meal::lunch).size());
        saved.lunches += eaters;
        saved.lunches_by += {(bought - kitchen::cost_per_serve(kitchen, row.dish)).minor * eaters};
    }
    constexpr std::int64_t a_serve = 1000;
    for (const kitchen::Gone& gone : past.used) {
        if (!answer.span.contains(gone.day)) continue;
        const basics::Money money = kitchen::price(kitchen, gone.lot, gone.amount);
        if (kitchen.catalogue()[gone.lot.ingredient].in_serves) {
            saved.lunches += static_cast<int>(gone.amount / a_serve);
            saved.lunches_by += basics::share_of(bought, gone.amount, a_serve) - money;
        }
        const auto end = gone.lot.use_by ? gone.lot.use_by : gone.lot.best_by;
        if (end && *end <= gone.day + days{1}) saved.rescued += money;
    }
}

bool tells(catalogue::Role role) {
    return role != catalogue::Role::seasoning && role != catalogue::Role::topping;
}

bool is_of(const Kitchen& kitchen, cookbook::DishId id, const WhenOf& of) {
    const cookbook::Dish& dish = kitchen.cookbook()[id];
    if (const auto* one = std::get_if<cookbook::DishId>(&of)) return *one == id;
    if (const auto* base = std::get_if<cookbook::BaseId>(&of)) return dish.base == *base;
    return std::any_of(dish.ingredients.begin(), dish.ingredients.end(), [&](const cookbook::DishIngredient& line) {
        if (!tells(line.role)) return false;
        if (const auto* any = std::get_if<AnyOf>(&of))
            return std::find(any->things.begin(), any->things.end(), line.ingredient) != any->things.end();
        return kitchen.catalogue().belongs(line.ingredient, std::get<catalogue::FamilyId>(of));
    });
}

}  // namespace

LookbackAnswer ask_lookback(const Kitchen& kitchen, const kitchen::Past& past, Day today, const basics::Span& span) {
    LookbackAnswer answer;
    answer.span = span;
    Months months(span);
    answer.by_year = months.by_year();
    had(kitchen, today, answer);
    std::set<Day> dinners;
    for (const kitchen::Had& row : kitchen.history) {
        const bool first = row.meal == Meal::dinner && span.contains(row.day) && dinners.insert(row.day).second;
        if (first) ++months.of(row.day).dinners;
    }
    answer.dinners = static_cast<int>(dinners.size());
    spent(kitchen, past, answer, months);
    tossed(kitchen, past, answer, months);
    saved(kitchen, past, answer);
    answer.months = months.take();
    return answer;
}

WhenAnswer ask_when(const Kitchen& kitchen, Day today, const WhenOf& of) {
    WhenAnswer answer{of, {}, {}};
    for (auto row = kitchen.history.rbegin(); row != kitchen.history.rend(); ++row) {
        if (row->day <= today && is_of(kitchen, row->dish, of)) answer.had.push_back(*row);
    }
    for (const kitchen::Planned& row : kitchen.plan) {
        if (row.day >= today && is_of(kitchen, row.dish, of)) answer.planned.push_back(row.day);
    }
    return answer;
}

}  // namespace samebase::ask
