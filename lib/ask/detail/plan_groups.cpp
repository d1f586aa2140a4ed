#include "ask/detail/plan_groups.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdlib>
#include <string_view>

namespace samebase::ask::detail {

namespace {

using cookbook::Dish;
using cookbook::DishId;
using menu::thousandths;

/// Days: further back nothing is too near.
constexpr basics::days look_back{14};
/// Days within which the same dinner comes too soon, if not forbidden.
constexpr int a_month = 28;
/// A household that has written down so many meals is asked to try few new ones.
constexpr std::size_t knows = 30;

/// The family of what a dish is made around: of the lines in the role main the heaviest.
std::optional<catalogue::FamilyId> main_family(const catalogue::Catalogue& catalogue, const Dish& dish) {
    std::optional<catalogue::FamilyId> family;
    measure::Mass most{};
    for (const cookbook::DishIngredient& line : dish.ingredients) {
        if (line.optional || line.role != catalogue::Role::main) continue;
        const auto weight = catalogue::weight(line.amount, catalogue[line.ingredient]).value_or(measure::Mass{});
        if (family && weight <= most) continue;
        family = catalogue[line.ingredient].family;
        most = weight;
    }
    return family;
}

bool meatless(const catalogue::Catalogue& catalogue, const Dish& dish) {
    return std::all_of(dish.ingredients.begin(), dish.ingredients.end(),
                       [&](const auto& line) { return line.optional || catalogue.meatless(line.ingredient); });
}

/// Kinds that say what lies beside: of these three a week are no repetition.
bool beside(std::string_view kind) {
    constexpr std::array<std::string_view, 3> kinds{"potatoes", "rice", "pulses"};
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

}  // namespace

PlanGroups::PlanGroups(const kitchen::Kitchen& kitchen, basics::Day first, menu::Problem& problem)
    : kitchen_(kitchen),
      monday_(first - (std::chrono::weekday{first} - std::chrono::Monday)),
      problem_(problem),
      had_(kitchen.cookbook().dishes().size(), false),
      knows_what_was_had_(kitchen.history.size() >= knows) {
    for (const kitchen::Had& had : kitchen.history) had_[had.dish.index()] = true;
    for (const kitchen::Had& had : kitchen.history) {
        if (had.meal == kitchen::Meal::dinner && had.day >= first - look_back) standing_.push_back({had.day, had.dish});
    }
    for (const kitchen::Planned& row : kitchen.plan) {
        if (row.meal == kitchen::Meal::dinner && row.day >= first) standing_.push_back({row.day, row.dish});
    }
    for (const Standing& one : standing_) {
        for (const int g : of(one.dish)) days_[static_cast<std::size_t>(g)].push_back(one.day);
    }
}

int PlanGroups::week_of(basics::Day day) const {
    return static_cast<int>((day - monday_).count() / 7);
}

int PlanGroups::group(const std::string& key, const std::string& name, const menu::Group& rules) {
    const auto [place, is_new] = by_key_.try_emplace(key, static_cast<int>(problem_.groups.size()));
    if (is_new) {
        problem_.groups.push_back(rules);
        names_.push_back(name);
        days_.emplace_back();
    }
    return place->second;
}

const std::vector<int>& PlanGroups::of(DishId id) {
    const auto [place, is_new] = of_.try_emplace(id);
    if (!is_new) return place->second;
    const Dish& dish = kitchen_.cookbook()[id];
    const menu::Worth lately = thousandths * kitchen_.household.worths.had_lately.minor;
    std::vector<int>& groups = place->second;
    groups.push_back(group("dish " + dish.id, "", {.within = dish.gap, .never = true}));
    // Past its gap it may come again, and is better left for a while.
    groups.push_back(group("again " + dish.id, "", {.within = std::max(a_month, 2 * dish.gap), .price = lately}));
    if (dish.base) {
        const std::string& base = kitchen_.cookbook()[*dish.base].id;
        groups.push_back(group("base " + base, "", {.within = 7, .price = lately / 4}));
    }
    if (const auto family = main_family(kitchen_.catalogue(), dish)) {
        const auto& of = kitchen_.catalogue()[*family];
        groups.push_back(group("main " + of.id, of.name, {.within = 3, .price = 2 * lately}));
    }
    for (const std::string& kind : dish.kinds) {
        if (kind == "leftovers") continue;
        const int most = kind == "soup" ? 1 : beside(kind) ? 3 : 2;
        groups.push_back(group("kind " + kind, kind,
                               {.within = 3, .price = lately / 4, .a_week = most, .price_over = lately * 2 / 3}));
    }
    groups.push_back(meatless(kitchen_.catalogue(), dish)
                         ? group("meatless", "", {.a_week = 3, .price_over = lately})
                         : group("meat or fish", "", {.a_week = 5, .price_over = lately / 2}));
    if (knows_what_was_had_ && !had_[id.index()])
        groups.push_back(group("new", "", {.a_week = 2, .price_over = lately * 2 / 3}));
    std::sort(groups.begin(), groups.end());
    groups.erase(std::unique(groups.begin(), groups.end()), groups.end());
    return groups;
}

void PlanGroups::beside_what_stands(basics::Day day, const std::vector<int>& groups,
                                    std::vector<PlanBecause>& because) const {
    for (const int g : groups) {
        const auto at = static_cast<std::size_t>(g);
        if (names_[at].empty()) continue;
        for (const basics::Day other : days_[at]) {
            const int apart = std::abs(static_cast<int>((other - day).count()));
            const menu::Worth cost = menu::too_soon(problem_.groups[at], apart) / thousandths;
            if (cost == 0) continue;
            because.push_back({menu::Line::had_lately,
                               basics::Money{-cost},
                               {},
                               fmt::format("{} {} day{} apart", names_[at], apart, apart == 1 ? "" : "s")});
        }
    }
}

void PlanGroups::count_standing() {
    int weeks = 1;
    for (const menu::MealSlot& slot : problem_.slots) weeks = std::max(weeks, slot.week + 1);
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
        std::vector<int>& standing = problem_.groups[g].standing;
        standing.assign(static_cast<std::size_t>(weeks), 0);
        for (const basics::Day day : days_[g]) {
            if (day >= monday_ && week_of(day) < weeks) ++standing[static_cast<std::size_t>(week_of(day))];
        }
    }
}

}  // namespace samebase::ask::detail
