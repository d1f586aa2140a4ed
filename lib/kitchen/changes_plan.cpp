#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <utility>

#include "kitchen/changes.hpp"

namespace samebase::kitchen {

namespace {

bool meant(const Planned& row, const basics::Span& span, std::optional<Meal> meal) {
    return span.contains(row.day) && (!meal || row.meal == *meal);
}

bool earlier(const Planned& a, const Planned& b) {
    return std::tuple{a.day, a.meal, a.dish} < std::tuple{b.day, b.meal, b.dish};
}

/// The rows of the plan in the span become `rows`: what is in both stays untouched.
Change become(const At& at, const basics::Span& span, std::optional<Meal> meal, Plan rows, std::string command) {
    std::sort(rows.begin(), rows.end(), earlier);
    Change change;
    change.command = std::move(command);
    change.day = at.day;
    // What has been had stays as it was planned.
    std::erase_if(rows, [&](const Planned& row) {
        return std::any_of(at.kitchen.done.begin(), at.kitchen.done.end(), [&](const Planned& done) {
            return done.day == row.day && done.meal == row.meal && done.dish == row.dish;
        });
    });
    for (const Planned& row : at.kitchen.plan) {
        if (!meant(row, span, meal)) continue;
        const auto same = std::find(rows.begin(), rows.end(), row);
        if (same == rows.end()) {
            change.plan.push_back({false, row});
        } else {
            rows.erase(same);
        }
    }
    for (const Planned& row : rows) change.plan.push_back({true, row});
    return change;
}

}  // namespace

basics::Result<Change> set_plan(const At& at, const basics::Span& span, std::optional<Meal> meal, const Plan& rows,
                                std::string command) {
    for (const Planned& row : rows) {
        if (!meant(row, span, meal))
            return basics::problem(basics::iso(row.day), "is not in what is planned", "a day of the span");
    }
    Plan sorted = rows;
    std::sort(sorted.begin(), sorted.end(), earlier);
    const auto twice = std::adjacent_find(sorted.begin(), sorted.end(),
                                          [](const Planned& a, const Planned& b) { return !earlier(a, b); });
    if (twice != sorted.end()) {
        return basics::problem(basics::iso(twice->day),
                               fmt::format("{} twice", at.kitchen.cookbook()[twice->dish].name),
                               "a dish once at a meal");
    }
    Change change = become(at, span, meal, std::move(sorted), std::move(command));
    const auto added = std::count_if(change.plan.begin(), change.plan.end(), [](const PlanEdit& e) { return e.adds; });
    change.line = fmt::format("planned {} {} from {} to {}", added, added == 1 ? "meal" : "meals",
                              basics::iso(span.first), basics::iso(span.last));
    if (rows.empty()) {
        change.line = fmt::format("cleared the plan from {} to {}", basics::iso(span.first), basics::iso(span.last));
    }
    return change;
}

namespace {

/// "dinner on Wed 25 Nov: tacos (mixed leaves for lettuce)".
std::string line_of(const Kitchen& kitchen, const Planned& row) {
    std::string line =
        fmt::format("{} on {}: {}", name(row.meal), basics::short_day(row.day), kitchen.cookbook()[row.dish].name);
    if (!row.swaps.empty()) line += fmt::format(" ({})", describe(kitchen, row.swaps));
    return line;
}

}  // namespace

Change set_swaps(const At& at, const Planned& row, std::vector<LineSwap> swaps) {
    Planned with = row;
    with.swaps = std::move(swaps);
    Change change;
    change.command = "swap";
    change.day = at.day;
    change.line = line_of(at.kitchen, with);
    if (with != row) change.plan = {{false, row}, {true, with}};
    return change;
}

basics::Result<Change> set_meal(const At& at, const Planned& row) {
    Change change = become(at, {row.day, row.day}, row.meal, {row}, "swap");
    change.line = line_of(at.kitchen, row);
    for (const PlanEdit& edit : change.plan) {
        if (edit.adds) continue;
        if (edit.row.dish != row.dish) {
            change.line += fmt::format(" instead of {}", at.kitchen.cookbook()[edit.row.dish].name);
        } else if (row.swaps.empty() && !edit.row.swaps.empty()) {
            change.line += " as it is written; it was with " + describe(at.kitchen, edit.row.swaps);
        }
    }
    return change;
}

basics::Result<Change> swap_days(const At& at, basics::Day one, basics::Day other, Meal meal) {
    if (one == other) return basics::problem(basics::iso(one), "the same day twice", "two days");
    Plan rows;
    for (Planned row : at.kitchen.plan) {
        if (row.meal != meal || (row.day != one && row.day != other)) continue;
        row.day = row.day == one ? other : one;
        rows.push_back(row);
    }
    if (rows.empty()) return basics::problem(basics::iso(one), "nothing is planned on either day", "a planned meal");
    Change change;
    change.command = "swap";
    change.day = at.day;
    for (const basics::Day day : {one, other}) {
        Plan here;
        std::copy_if(rows.begin(), rows.end(), std::back_inserter(here),
                     [&](const Planned& row) { return row.day == day; });
        const Change part = become(at, {day, day}, meal, std::move(here), "swap");
        change.plan.insert(change.plan.end(), part.plan.begin(), part.plan.end());
    }
    std::stable_sort(change.plan.begin(), change.plan.end(),
                     [](const PlanEdit& a, const PlanEdit& b) { return a.adds < b.adds; });
    change.line =
        fmt::format("{} of {} and {} change places", name(meal), basics::short_day(one), basics::short_day(other));
    return change;
}

Change remember(const At& at, std::span<const Had> meals) {
    Change change;
    change.command = "remember";
    change.day = at.day;
    const auto key = [](const Had& had) { return std::tuple{had.day, had.meal, had.dish}; };
    std::vector<Had> rows(meals.begin(), meals.end());
    std::sort(rows.begin(), rows.end(), [&](const Had& a, const Had& b) { return key(a) < key(b); });
    rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
    for (const Had& row : rows) {
        const auto [first, last] = std::equal_range(at.kitchen.history.begin(), at.kitchen.history.end(), row,
                                                    [](const Had& a, const Had& b) { return a.day < b.day; });
        if (std::find(first, last, row) == last) change.history.push_back({true, row});
    }
    change.line =
        fmt::format("remembered {} past {}", change.history.size(), change.history.size() == 1 ? "meal" : "meals");
    return change;
}

}  // namespace samebase::kitchen
