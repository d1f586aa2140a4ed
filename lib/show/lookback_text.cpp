#include <fmt/format.h>

#include <algorithm>
#include <chrono>

#include "show/lookback.hpp"

namespace samebase::show {

namespace {

using ask::LastHad;

std::string name_of(const ask::HadBy& what, const kitchen::Kitchen& kitchen) {
    if (const auto* dish = std::get_if<cookbook::DishId>(&what)) return kitchen.cookbook()[*dish].name;
    if (const auto* base = std::get_if<cookbook::BaseId>(&what)) return kitchen.cookbook()[*base].name;
    return kitchen.catalogue()[std::get<catalogue::FamilyId>(what)].name;
}

/// "9 weeks", "14 months", "3 years".
std::string ago(basics::Day then, basics::Day today) {
    const auto days = (today - then).count();
    constexpr int week = 7;
    constexpr int weeks_are_told = 16 * week;
    constexpr int months_are_told = 24;
    constexpr double month = 30.44;
    if (days < 2 * week) return fmt::format("{} days", days);
    if (days < weeks_are_told) return fmt::format("{} weeks", days / week);
    const int months = static_cast<int>(static_cast<double>(days) / month);
    return months < months_are_told ? fmt::format("{} months", months) : fmt::format("{} years", months / 12);
}

/// A row a dish: how long ago, and when.
std::string not_lately(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                       bool all) {
    if (answer.dishes.empty()) return "";
    constexpr std::size_t few = 8;
    const std::size_t shown = all ? answer.dishes.size() : std::min(few, answer.dishes.size());
    std::size_t width = 0;
    const std::size_t widest = screen_width() - 28;
    for (std::size_t i = 0; i < shown; ++i) width = std::max(width, length(name_of(answer.dishes[i].what, kitchen)));
    width = std::min(width, widest);
    std::string out = "Not had for a while\n";
    for (std::size_t i = 0; i < shown; ++i) {
        const LastHad& one = answer.dishes[i];
        out += fmt::format("  {}  {}  {}\n", fitted(name_of(one.what, kitchen), width), fitted(ago(one.last, today), 9),
                           day(one.last, today));
    }
    if (shown < answer.dishes.size()) out += fmt::format("  {} more: --all\n", answer.dishes.size() - shown);
    return out;
}

/// "By what they start from: white sauce (9 weeks), ...".
std::string row(std::string_view head, const std::vector<LastHad>& list, const kitchen::Kitchen& kitchen,
                basics::Day today) {
    constexpr std::size_t few = 4;
    std::vector<std::string> words;
    for (std::size_t i = 0; i < std::min(few, list.size()); ++i)
        words.push_back(fmt::format("{} ({})", name_of(list[i].what, kitchen), ago(list[i].last, today)));
    return words.empty() ? "" : wrapped(fmt::format("{}: {}", head, fmt::join(words, ", ")), 2) + "\n";
}

std::string most(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen) {
    constexpr std::size_t few = 5;
    std::vector<std::string> words;
    for (const LastHad& one : answer.most) {
        if (one.times < 2 || words.size() == few) break;
        words.push_back(fmt::format("{} {} times", name_of(one.what, kitchen), one.times));
    }
    return words.empty() ? "" : wrapped(fmt::format("Had most: {}", fmt::join(words, ", ")), 2) + "\n";
}

std::string month_name(basics::Day first, bool by_year) {
    const std::chrono::year_month_day ymd{first};
    const int year = static_cast<int>(ymd.year());
    if (by_year) return std::to_string(year);
    const std::string day = basics::short_day(first);  // "Sun 1 Nov"
    return fmt::format("{} {}", day.substr(day.rfind(' ') + 1), year);
}

/// A row a month: what was spent as a bar, and what of it went to the bin.
std::string plot(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen) {
    std::int64_t highest = 0;
    for (const auto& month : answer.months) highest = std::max({highest, month.spent.minor, month.tossed.minor});
    if (highest == 0) return "";
    constexpr std::size_t head = 10;
    const std::size_t room = screen_width() - 40;
    const std::string& currency = kitchen.household.currency;
    std::string out = answer.by_year ? "By year: spent, and to the bin\n" : "By month: spent, and to the bin\n";
    bool begun = false;
    for (const auto& month : answer.months) {
        begun = begun || month.spent.minor > 0 || month.tossed.minor > 0;
        if (!begun) continue;
        const auto bar = static_cast<std::size_t>(month.spent.minor) * room / static_cast<std::size_t>(highest);
        const std::string bin = month.tossed.minor > 0 ? ", bin " + about_money(month.tossed, currency) : std::string();
        out += fmt::format("  {}{} {}{}\n", fitted(month_name(month.first, answer.by_year), head),
                           std::string(bar, '#'), about_money(month.spent, currency), bin);
    }
    return out;
}

std::string tossed(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen) {
    constexpr std::size_t few = 3;
    std::vector<std::string> words;
    for (const ask::TossedFor& one : answer.tossed_for) {
        std::vector<std::string> things;
        for (std::size_t i = 0; i < std::min(few, one.things.size()); ++i)
            things.push_back(kitchen.catalogue()[one.things[i]].name);
        if (one.things.size() > few) things.push_back(fmt::format("{} more", one.things.size() - few));
        words.push_back(fmt::format("{} {} ({})", about_money(one.money, kitchen.household.currency),
                                    one.reason.empty() ? "no reason said" : one.reason, listed(things)));
    }
    return words.empty() ? "" : wrapped(fmt::format("Tossed: {}", fmt::join(words, "; ")), 2) + "\n";
}

std::string saved(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen) {
    const std::string& currency = kitchen.household.currency;
    std::vector<std::string> words;
    if (answer.saved.lunches > 0)
        words.push_back(fmt::format("{} by {} at home", about_money(answer.saved.lunches_by, currency),
                                    counted(answer.saved.lunches, "lunch")));
    if (answer.saved.rescued.minor > 0)
        words.push_back(
            fmt::format("{} of food eaten on its last two days", about_money(answer.saved.rescued, currency)));
    return words.empty() ? "" : wrapped("Saved: " + listed(words), 2) + "\n";
}

std::string head(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string& currency = kitchen.household.currency;
    std::string out = fmt::format("{} to {}: {}", capitalised(day(answer.span.first, today)),
                                  day(answer.span.last, today), counted(answer.dinners, "dinner"));
    if (answer.spent.minor > 0) {
        const bool guessed = answer.estimated.minor * 2 > answer.spent.minor;
        out += fmt::format(", {} on food{}", about_money(answer.spent, currency),
                           guessed ? " (mostly by usual prices)" : "");
    }
    if (answer.tossed.minor > 0) out += fmt::format(", {} to the bin", about_money(answer.tossed, currency));
    return wrapped(out + ".", 2) + "\n";
}

}  // namespace

std::string text(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    if (answer.dinners == 0 && answer.spent.minor == 0 && answer.dishes.empty())
        return "Nothing is remembered yet: say what you cook with 'samebase cooked', what you buy with 'samebase "
               "got'.\n";
    std::string out = head(answer, kitchen, today);
    out += not_lately(answer, kitchen, today, manner.all);
    out += row("Not had of these either", answer.families, kitchen, today);
    out += row("Nor from these", answer.bases, kitchen, today);
    out += most(answer, kitchen) + plot(answer, kitchen) + tossed(answer, kitchen) + saved(answer, kitchen);
    return out + "When was it had: samebase lookback lamb. Another time: samebase lookback 2025\n";
}

namespace {

std::string name_of(const ask::WhenOf& what, const kitchen::Kitchen& kitchen) {
    if (const auto* any = std::get_if<ask::AnyOf>(&what)) return any->words;
    if (const auto* family = std::get_if<catalogue::FamilyId>(&what)) return kitchen.catalogue()[*family].name;
    if (const auto* base = std::get_if<cookbook::BaseId>(&what)) return kitchen.cookbook()[*base].name;
    return kitchen.cookbook()[std::get<cookbook::DishId>(what)].name;
}

}  // namespace

std::string text(const ask::WhenAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const std::string name = capitalised(name_of(answer.of, kitchen));
    const bool one_dish = std::holds_alternative<cookbook::DishId>(answer.of);
    const std::string next =
        answer.planned.empty() ? "" : fmt::format(" Next: {}.", day(answer.planned.front(), today));
    if (answer.had.empty()) return wrapped(fmt::format("{}: never had, as far as is known.{}", name, next)) + "\n";
    const kitchen::Had& last = answer.had.front();
    std::string out = fmt::format("{}: last had {}", name, on_day(last.day, today));
    if (last.day < today) out += fmt::format(", {} ago", ago(last.day, today));
    out += fmt::format("; {} in all.{}", counted(static_cast<std::int64_t>(answer.had.size()), "time"), next);
    out = wrapped(out, 2) + "\n";
    constexpr std::size_t few = 10;
    const std::size_t shown = manner.all ? answer.had.size() : std::min(few, answer.had.size());
    for (std::size_t i = 0; i < shown; ++i) {
        const kitchen::Had& had = answer.had[i];
        const std::string lunch = had.meal == kitchen::Meal::lunch ? "lunch" : "";
        out += fmt::format("  {}  {}", fitted(day(had.day, today), 11), lunch);
        if (!one_dish) out += fmt::format("{}{}", lunch.empty() ? "" : ": ", kitchen.cookbook()[had.dish].name);
        out.erase(out.find_last_not_of(' ') + 1);
        out += "\n";
    }
    if (shown < answer.had.size()) out += fmt::format("  {} more: --all\n", answer.had.size() - shown);
    return out;
}

}  // namespace samebase::show
