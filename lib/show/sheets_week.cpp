#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "kitchen/changes.hpp"
#include "show/detail/sheet_words.hpp"
#include "show/detail/thawing.hpp"
#include "show/menu.hpp"
#include "show/sheets.hpp"

namespace samebase::show {

namespace detail {

std::string span_words(basics::Span span) {
    constexpr std::array<std::string_view, 12> months{"January",   "February", "March",    "April",
                                                      "May",       "June",     "July",     "August",
                                                      "September", "October",  "November", "December"};
    const std::chrono::year_month_day first{span.first};
    const auto last = std::chrono::sys_days{first.year() / first.month() / std::chrono::last};
    if (span.first == span.last) return basics::short_day(span.first);
    if (static_cast<unsigned>(first.day()) != 1 || last != span.last)
        return fmt::format("{} to {}", basics::short_day(span.first), basics::short_day(span.last));
    return fmt::format("{} {}", months[static_cast<unsigned>(first.month()) - 1], static_cast<int>(first.year()));
}

std::string what_is_taken_out(const flow::ThawMove& move, const kitchen::Kitchen& kitchen, bool with_place) {
    const stock::Lot* lot = kitchen.lot(move.lot);
    const std::string thing =
        kitchen::label(kitchen, move.ingredient, lot != nullptr ? lot->dish : std::optional<cookbook::DishId>{});
    const std::string water = move.method == stock::ThawMethod::cold_water ? ", in cold water and cooked at once" : "";
    const std::string from = with_place ? fmt::format(" from the {}", kitchen.place(move.from).name) : "";
    return fmt::format("{}, {}{}{}", thing, packs_words(kitchen, move.ingredient, move.amount, move.packs), from,
                       water);
}

std::string take_out_words(const flow::ThawMove& move, const kitchen::Kitchen& kitchen, bool with_place) {
    const std::string meal = move.for_dish ? kitchen.cookbook()[*move.for_dish].name : "everyday use";
    return fmt::format("{}, for {}: {}", what_is_taken_out(move, kitchen, with_place), basics::short_day(move.for_day),
                       meal);
}

std::string date_words(basics::Day day, basics::Day today) {
    return day <= today + basics::days{1} ? basics::short_day(day) : show::day(day, today);
}

}  // namespace detail

namespace {

/// "for everyone", "for Alba and Ines, with 2 guests".
std::string for_whom(const ask::MenuDay& day, const kitchen::Kitchen& kitchen) {
    const bool all = day.eaters.size() == kitchen.household.people.size() && !day.eaters.empty();
    std::string words = all ? "everyone" : listed(day.eaters);
    if (day.guests > 0) words += (words.empty() ? "" : ", with ") + counted(day.guests, "guest");
    return words.empty() ? "nobody is home" : "for " + words;
}

/// "with tasty cheese for cheddar" for each meal that is cooked otherwise than it is written.
std::vector<std::string> swaps_words(const ask::MenuDay& day, const kitchen::Kitchen& kitchen) {
    std::vector<std::string> list;
    for (const auto* meals : {&day.dinners, &day.lunches}) {
        for (const ask::MenuMeal& meal : *meals) {
            if (!meal.swaps.empty()) list.push_back("with " + kitchen::describe(kitchen, meal.swaps));
        }
    }
    return list;
}

SheetCell dinner(const ask::MenuDay& day, const kitchen::Kitchen& kitchen) {
    SheetCell cell{dinner_words(day, kitchen)};
    for (const std::string& note : day.notes) cell.notes.push_back(note);
    cell.notes.push_back(for_whom(day, kitchen));
    for (const std::string& swap : swaps_words(day, kitchen)) cell.notes.push_back(swap);
    if (day.shopping) cell.notes.emplace_back("shopping trip");
    return cell;
}

std::string still_frozen(const ask::TooLate& late, const kitchen::Kitchen& kitchen) {
    return fmt::format("{} is still frozen, and it is too late for the fridge: samebase thaw",
                       kitchen.catalogue()[late.ingredient].name);
}

bool is_still_frozen(const ask::TooLate& late, basics::Day day) {
    return late.day == day && late.instead != ask::TooLate::Instead::cold_water;
}

/// The dish of a day that is on the sheet is not said twice.
SheetCell take_out(const ask::MenuDay& day, const ask::Menu& menu, const ask::ThawAnswer& thaw,
                   const kitchen::Kitchen& kitchen) {
    SheetCell cell;
    for (const ask::TakeOut& out : thaw.moves) {
        if (out.move.day != day.day) continue;
        cell.notes.push_back(menu.span.contains(out.move.for_day)
                                 ? fmt::format("{}, for {}", detail::what_is_taken_out(out.move, kitchen),
                                               basics::short_day(out.move.for_day))
                                 : detail::take_out_words(out.move, kitchen));
    }
    for (const ask::TooLate& late : thaw.late) {
        if (is_still_frozen(late, day.day)) cell.notes.push_back(still_frozen(late, kitchen));
    }
    return cell;
}

bool names_somebody(std::string_view note, const kitchen::Kitchen& kitchen) {
    return std::any_of(kitchen.household.people.begin(), kitchen.household.people.end(),
                       [&](const kitchen::Person& person) { return note.find(person.name) != std::string_view::npos; });
}

std::string shared_dinner(const ask::MenuDay& day, const kitchen::Kitchen& kitchen, Naming naming) {
    std::string line = fmt::format("{}: {}", basics::short_day(day.day), dinner_words(day, kitchen));
    std::vector<std::string> more;
    for (const std::string& note : day.notes) {
        if (naming == Naming::everybody || !names_somebody(note, kitchen)) more.push_back(note);
    }
    if (naming == Naming::everybody) {
        more.push_back(for_whom(day, kitchen));
    } else {
        const auto eat = static_cast<std::int64_t>(day.eaters.size()) + day.guests;
        more.push_back(eat == 0 ? "nobody is home" : fmt::format("for {}", eat));
    }
    return fmt::format("{} ({})", line, fmt::join(more, "; "));
}

}  // namespace

Sheet week_sheet(const ask::Menu& menu, const ask::ThawAnswer& thaw, const kitchen::Kitchen& kitchen) {
    SheetTable table{"", {"Day", "Dinner", "Take out", "Lunch"}, {}, "", true};
    for (const ask::MenuDay& day : menu.days) {
        SheetCell lunch;
        if (!day.lunches.empty()) lunch.notes.push_back(meals_words(day.lunches, kitchen));
        table.rows.push_back(
            {basics::short_day(day.day), {dinner(day, kitchen), take_out(day, menu, thaw, kitchen), std::move(lunch)}});
    }
    return {"week", "The week from " + detail::span_words(menu.span), "", {std::move(table)}, ""};
}

Sheet shared_week_sheet(const ask::Menu& menu, const ask::ThawAnswer& thaw, const kitchen::Kitchen& kitchen,
                        Naming naming) {
    SheetList dinners{"Dinners", {}};
    SheetList thawing{"Take out of the freezer", {}};
    SheetList swapped{"Swapped", {}};
    for (const ask::MenuDay& day : menu.days) {
        dinners.items.push_back(shared_dinner(day, kitchen, naming));
        for (const ask::TakeOut& out : thaw.moves) {
            if (out.move.day == day.day)
                thawing.items.push_back(fmt::format("{}: {}", basics::short_day(day.day),
                                                    detail::take_out_words(out.move, kitchen, false)));
        }
        for (const std::string& swap : swaps_words(day, kitchen))
            swapped.items.push_back(fmt::format("{}: {}", basics::short_day(day.day), swap));
    }
    Sheet sheet{"week", "Dinners from " + detail::span_words(menu.span), "", {std::move(dinners)}, ""};
    if (!thawing.items.empty()) sheet.parts.emplace_back(std::move(thawing));
    if (!swapped.items.empty()) sheet.parts.emplace_back(std::move(swapped));
    return sheet;
}

Sheet month_sheet(const ask::Menu& menu, const kitchen::Kitchen& kitchen, basics::Day today) {
    SheetCalendar calendar;
    std::int64_t open = 0;
    for (const ask::MenuDay& day : menu.days) {
        const bool none = day.dinners.empty();
        if (none && day.day >= today) ++open;
        std::string words = none && day.day < today ? "" : dinner_words(day, kitchen);
        constexpr std::string_view had = "had: ";
        if (words.starts_with(had)) words.erase(0, had.size());
        calendar.days.push_back({day.day, std::move(words), remarks(day)});
    }
    const std::string lead =
        open == 0 ? "" : fmt::format("{} still open: samebase swap DAY DISH.", counted(open, "day"));
    return {"month", detail::span_words(menu.span), lead, {std::move(calendar)}, "", true};
}

}  // namespace samebase::show
