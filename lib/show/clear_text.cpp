#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "show/clear.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t most_bins = 5;
constexpr std::size_t most_dish = 34;

struct Page {
    const kitchen::Kitchen& kitchen;
    basics::Day today;

    [[nodiscard]] const catalogue::Ingredient& thing(catalogue::IngredientId id) const {
        return kitchen.catalogue()[id];
    }
    [[nodiscard]] std::string price(basics::Money amount) const { return money(amount, kitchen.household.currency); }
    [[nodiscard]] std::string signed_price(basics::Money amount) const {
        return signed_money(amount, kitchen.household.currency);
    }
};

std::string of(const Page& page, const measure::Amount& quantity, catalogue::IngredientId id) {
    return amount(quantity, page.thing(id)) + " " + page.thing(id).name;
}

std::string sentence(const ask::ClearAnswer& answer, const Page& page) {
    basics::Money buys;
    for (const auto& buy : answer.to_buy) buys += buy.price;
    const std::string bought = answer.to_buy.empty() ? "nothing to buy" : page.price(buys) + " to buy";
    if (answer.meals.empty()) return fmt::format("No meal can be chosen until {}.", day(answer.span.last, page.today));
    return fmt::format("Until {}: {} of {} in danger is kept from the bin, {}; {}.", day(answer.span.last, page.today),
                       page.price(answer.saved), page.price(answer.danger), bought, how_good(answer));
}

/// What marks a meal: more than the recipe says of something, or something in another's place.
std::string marks(const Page& page, const ask::ClearMeal& meal) {
    std::vector<std::string> words;
    for (const auto& use : meal.stand_ins) {
        std::vector<std::string> parts;
        for (const auto& [id, quantity] : use.use) parts.push_back(page.thing(id).name);
        words.push_back(fmt::format("{} for {}", listed(parts), page.thing(use.replaced).name));
    }
    for (const auto& more : meal.scaled) words.push_back("more " + page.thing(more.ingredient).name);
    std::string result;
    for (const auto& word : words) result += (result.empty() ? "" : ", ") + word;
    return result;
}

std::string saved(const Page& page, const ask::ClearMeal& meal) {
    std::string result;
    for (const auto& because : meal.because) {
        if (because.line != ask::ClearLine::waste_avoided) continue;
        result += (result.empty() ? "saves " : ", ") + page.thing(*because.of).name;
    }
    const std::string marked = marks(page, meal);
    if (marked.empty()) return result;
    return result + (result.empty() ? "" : "; ") + marked;
}

void in_full(const Page& page, const ask::ClearMeal& meal, std::string& out) {
    for (const auto& because : meal.because) {
        std::string what = because.of ? page.thing(*because.of).name : "";
        if (because.of && because.amount) what = of(page, *because.amount, *because.of);
        if (!because.note.empty()) what += (what.empty() ? "" : ": ") + because.note;
        out += wrapped(fmt::format("     {:>9}  {:<14} {}", page.signed_price(because.money), name(because.line), what),
                       32) +
               "\n";
    }
    for (const auto& use : meal.stand_ins) {
        std::vector<std::string> parts;
        for (const auto& [id, quantity] : use.use) parts.push_back(of(page, quantity, id));
        out += wrapped(fmt::format("     Stand-in: {} for {}, fit {:.2f}{}", listed(parts),
                                   page.thing(use.replaced).name, use.fit, use.note.empty() ? "" : "; " + use.note),
                       7) +
               "\n";
    }
    for (const auto& more : meal.scaled) {
        out += wrapped(fmt::format("     More than the recipe says: {}, {:.2f} times as much, which it bears",
                                   of(page, more.amount, more.ingredient), more.thousandths / 1000.0),
                       7) +
               "\n";
    }
    for (const std::string& caution : meal.cautions) out += wrapped("     ! " + caution, 7) + "\n";
}

void one_line(const Page& page, const ask::ClearMeal& meal, const Manner& manner, std::string& out) {
    const std::string dish = page.kitchen.cookbook()[meal.dish].name + (meal.ready_meal ? " (ready meal)" : "");
    std::string line =
        fmt::format("  {:<10} {:<6} {} {}", basics::short_day(meal.day),
                    meal.meal == kitchen::Meal::lunch ? "lunch" : "dinner", fitted(dish, most_dish), saved(page, meal));
    if (length(line) > screen_width && !manner.why) line = fitted(line, screen_width);
    line.erase(line.find_last_not_of(' ') + 1);
    out += manner.why ? wrapped(line, 5) + "\n" : line + "\n";
    if (manner.why) in_full(page, meal, out);
}

std::string last_way(const ask::ClearBin& bin) {
    if (bin.way == ask::LastWay::freeze)
        return fmt::format(" Last way out: freeze it now, it keeps {} days.", bin.freezer_days);
    if (bin.way == ask::LastWay::pickle) return " Last way out: pickle it, to a tested recipe.";
    return "";
}

void bins(const ask::ClearAnswer& answer, const Page& page, const Manner& manner, std::string& out) {
    if (answer.bin.empty()) return;
    out += fmt::format("Still ends in the bin ({}):\n", page.price(answer.danger - answer.saved));
    const std::size_t rows = manner.all ? answer.bin.size() : std::min(answer.bin.size(), most_bins);
    for (std::size_t i = 0; i < rows; ++i) {
        const auto& bin = answer.bin[i];
        const std::string less = bin.costs_more ? fmt::format(", and lose {}", page.price(*bin.costs_more)) : "";
        out += wrapped(fmt::format("  {}{}, {} {} ({}): {}{}.{}", bin.part_of ? "the rest, " : "",
                                   of(page, bin.amount, bin.ingredient), bin.use_by ? "use by" : "best by",
                                   day(bin.by, page.today), page.price(bin.price), bin.reason, less, last_way(bin)),
                       4) +
               "\n";
    }
    if (rows < answer.bin.size()) out += fmt::format("  ... {} more: --all\n", answer.bin.size() - rows);
}

void buys(const ask::ClearAnswer& answer, const Page& page, std::string& out) {
    if (answer.to_buy.empty()) return;
    std::vector<std::string> words;
    for (const auto& buy : answer.to_buy)
        words.push_back(fmt::format("{} ({})", of(page, buy.amount, buy.ingredient), page.price(buy.price)));
    out += wrapped("Buy " + listed(words) + ".", 4) + "\n";
}

void sums(const ask::ClearAnswer& answer, const Page& page, std::string& out) {
    out += "The sum:\n";
    for (const auto& because : answer.because) {
        std::string what = because.of ? page.thing(*because.of).name : "";
        if (because.of && because.amount) what = of(page, *because.amount, *because.of);
        if (!because.note.empty()) what += (what.empty() ? "" : ": ") + because.note;
        out += wrapped(fmt::format("     {:>9}  {:<14} {}", page.signed_price(because.money), name(because.line), what),
                       32) +
               "\n";
    }
    out += fmt::format("     {:>9}  value, the sum of these; the greedy choice alone is worth {}\n",
                       page.signed_price(answer.value), page.signed_price(answer.greedy));
}

}  // namespace

std::string how_good(const ask::ClearAnswer& answer) {
    if (answer.proved_best) return "proved best";
    return fmt::format("within {:.1f} % of best", std::ceil(answer.gap * 1000) / 10);
}

std::string text(const ask::ClearAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const Page page{kitchen, today};
    std::string out = wrapped(sentence(answer, page)) + "\n";
    for (const std::string& note : answer.notes) out += wrapped(note) + "\n";
    for (const auto& meal : answer.meals) one_line(page, meal, manner, out);
    for (const auto& empty : answer.empty) {
        out += wrapped(fmt::format("  {:<10} {:<6} nothing: {}", basics::short_day(empty.day),
                                   empty.meal == kitchen::Meal::lunch ? "lunch" : "dinner", empty.reason),
                       20) +
               "\n";
    }
    buys(answer, page, out);
    bins(answer, page, manner, out);
    if (answer.extra_bin.minor > 0)
        out += wrapped(fmt::format("What is opened, thawed and bought leaves {} more that ends by {}.",
                                   page.price(answer.extra_bin), day(answer.horizon, today)),
                       2) +
               "\n";
    if (manner.why) sums(answer, page, out);
    out +=
        wrapped(fmt::format("Value {}, no plan above {}: {}{}.{}", page.price(answer.value), page.price(answer.bound),
                            how_good(answer),
                            answer.proved_best ? "" : fmt::format(" of the {} at stake", page.price(answer.at_stake)),
                            answer.stopped ? " Stopped early." : "")) +
        "\n";
    if (!answer.meals.empty()) out += "Local food-safety advice and labels come first.\n";
    return out;
}

}  // namespace samebase::show
