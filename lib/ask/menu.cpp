#include "ask/menu.hpp"

#include <algorithm>

#include "basics/ranges.hpp"
#include "kitchen/cooking.hpp"

namespace samebase::ask {

namespace {

using kitchen::Meal;

void add_planned(const kitchen::Kitchen& kitchen, MenuDay& day) {
    for (const kitchen::Planned& row : kitchen.plan) {
        if (row.day != day.day) continue;
        MenuMeal meal{row.meal,       row.dish,  false,
                      row.ready_meal, row.swaps, kitchen::cook(kitchen, row).serves_thousandths};
        (row.meal == Meal::dinner ? day.dinners : day.lunches).push_back(std::move(meal));
    }
}

void add_had(const kitchen::Kitchen& kitchen, MenuDay& day) {
    for (const kitchen::Had& had : kitchen::had(kitchen.history, day.day))
        (had.meal == Meal::dinner ? day.dinners : day.lunches).push_back({had.meal, had.dish, true, false, {}, 0});
}

void add_people(const kitchen::Kitchen& kitchen, MenuDay& day) {
    for (const kitchen::Occasion& occasion : kitchen.household.occasions) {
        if (occasion.day != day.day) continue;
        day.guests += occasion.guests;
        if (!occasion.note.empty()) day.notes.push_back(occasion.note);
    }
    for (const kitchen::Person& person : kitchen.household.people) {
        const bool away = std::any_of(person.away.begin(), person.away.end(), [&](const kitchen::Away& period) {
            return period.span.contains(day.day) && kitchen::has(period.meals, Meal::dinner);
        });
        if (away) day.away.push_back(person.name);
    }
    for (const std::size_t eater : kitchen::eaters(kitchen, day.day, Meal::dinner))
        day.eaters.push_back(kitchen.household.people[eater].name);
}

}  // namespace

basics::Result<Menu> ask_menu(const kitchen::Kitchen& kitchen, basics::Span span) {
    constexpr int two_years = 732;
    if (span.length() > two_years)
        return basics::problem("plan", "a span of more than two years",
                               "a month, a year, or two days with '..' between");
    Menu menu{span, {}};
    for (const basics::Day day : basics::days_of(span)) {
        MenuDay row;
        row.day = day;
        add_had(kitchen, row);
        add_planned(kitchen, row);
        add_people(kitchen, row);
        if (row.dinners.empty()) row.kind = kitchen::standing_kind(kitchen.household, day);
        row.shopping = kitchen::shopping_day(kitchen.household, day) == day;
        menu.days.push_back(std::move(row));
    }
    return menu;
}

}  // namespace samebase::ask
