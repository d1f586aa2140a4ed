#include "show/menu.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "kitchen/changes.hpp"
#include "show/detail/parts.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t lunch_days = 10;  // a longer menu shows dinners only

std::string meal_words(const ask::MenuMeal& meal, const kitchen::Kitchen& kitchen) {
    std::string words = kitchen.cookbook()[meal.dish].name;
    if (meal.ready_meal) words += " from the freezer";
    return words;
}

}  // namespace

std::string meals_words(const std::vector<ask::MenuMeal>& meals, const kitchen::Kitchen& kitchen) {
    std::vector<std::string> words;
    for (const ask::MenuMeal& meal : meals) words.push_back(meal_words(meal, kitchen));
    return listed(words);
}

std::string dinner_words(const ask::MenuDay& day, const kitchen::Kitchen& kitchen) {
    if (!day.dinners.empty()) {
        const bool had = day.dinners.front().had;
        return (had ? "had: " : "") + meals_words(day.dinners, kitchen);
    }
    return day.kind ? fmt::format("open, {} night", *day.kind) : "open";
}

std::vector<std::string> remarks(const ask::MenuDay& day) {
    std::vector<std::string> list;
    if (day.guests > 0) list.push_back(counted(day.guests, "guest"));
    list.insert(list.end(), day.notes.begin(), day.notes.end());
    if (!day.away.empty()) list.push_back("without " + listed(day.away));
    if (day.shopping) list.emplace_back("trip");
    return list;
}

std::string text(const ask::Menu& menu, const kitchen::Kitchen& kitchen, basics::Day today, const Manner& manner) {
    const auto open = std::count_if(menu.days.begin(), menu.days.end(),
                                    [&](const ask::MenuDay& d) { return d.dinners.empty() && d.day >= today; });
    std::string out = fmt::format(
        "{} to {}: {} dinner{} planned or had, {} open.\n", capitalised(day(menu.span.first, today)),
        day(menu.span.last, today),
        std::count_if(menu.days.begin(), menu.days.end(), [](const ask::MenuDay& d) { return !d.dinners.empty(); }),
        menu.days.size() == 1 ? "" : "s", open);
    const bool lunches = manner.all || menu.days.size() <= lunch_days;
    for (const ask::MenuDay& row : menu.days) {
        std::string line = fmt::format("  {:<10} {}", basics::short_day(row.day), dinner_words(row, kitchen));
        if (const auto more = remarks(row); !more.empty()) line += fmt::format(" ({})", fmt::join(more, "; "));
        out += wrapped(line, 13) + "\n";
        if (lunches && !row.lunches.empty())
            out += wrapped("             lunch: " + meals_words(row.lunches, kitchen), 15) + "\n";
    }
    const auto first = std::find_if(menu.days.begin(), menu.days.end(),
                                    [&](const ask::MenuDay& d) { return d.dinners.empty() && d.day >= today; });
    if (first != menu.days.end())
        out += fmt::format("Fill them: samebase plan {}. One day: samebase swap DAY DISH.\n",
                           basics::iso(first->day).substr(0, 7));
    return out;
}

Json json(const ask::Menu& menu, const kitchen::Kitchen& kitchen) {
    const auto meals = [&](const std::vector<ask::MenuMeal>& list) {
        Json rows = Json::array();
        for (const ask::MenuMeal& meal : list) {
            const cookbook::Dish& dish = kitchen.cookbook()[meal.dish];
            rows.push_back({{"dish", dish.id},
                            {"label", dish.name},
                            {"had", meal.had},
                            {"ready_meal", meal.ready_meal},
                            {"serves", meal.had ? Json(nullptr) : json_serves(meal.serves_thousandths)},
                            {"swaps", detail::swaps_json(meal.swaps, kitchen)}});
        }
        return rows;
    };
    Json days = Json::array();
    for (const ask::MenuDay& row : menu.days) {
        days.push_back({{"day", json_day(row.day)},
                        {"dinners", meals(row.dinners)},
                        {"lunches", meals(row.lunches)},
                        {"standing_kind", row.kind ? Json(*row.kind) : Json(nullptr)},
                        {"notes", row.notes},
                        {"guests", row.guests},
                        {"away", row.away},
                        {"shopping", row.shopping}});
    }
    return {{"from", json_day(menu.span.first)}, {"until", json_day(menu.span.last)}, {"days", std::move(days)}};
}

}  // namespace samebase::show
