#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "show/clear.hpp"
#include "show/detail/parts.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t most_bins = 5;
constexpr std::size_t most_dish = 32;
constexpr std::size_t most_in_full = 8;

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

std::string sentence(const ask::ClearAnswer& answer, const Page& page) {
    basics::Money buys;
    for (const auto& buy : answer.to_buy) buys += buy.price;
    const std::string bought = answer.to_buy.empty() ? "nothing to buy" : page.price(buys) + " to buy";
    if (answer.meals.empty()) return fmt::format("No meal can be chosen until {}.", day(answer.span.last, page.today));
    return fmt::format("Until {}: {} of {} in danger is kept from the bin, {}; {}.", day(answer.span.last, page.today),
                       page.price(answer.saved), page.price(answer.danger), bought,
                       detail::how_good(answer.proved_best, answer.gap));
}

/// What marks a meal: more than the recipe says of something, or something in another's place.
std::string marks(const Page& page, const ask::ClearMeal& meal) {
    std::vector<std::string> words;
    for (const auto& use : meal.stand_ins) words.push_back(detail::stand_in_words(use, page.kitchen, false));
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

/// A cook's words for the lines of the sum.
std::string_view plain_name(ask::ClearLine line) {
    constexpr std::array<std::string_view, 7> names{"kept from the bin", "crisper first", "to buy", "stand-ins",
                                                    "had lately",        "liking",        "no meal"};
    return names[static_cast<std::size_t>(line)];
}

void every_line(const Page& page, const ask::ClearBecause& because, std::string& out) {
    out += wrapped(fmt::format("     {:>9}  {:<17} {}", page.signed_price(because.money), plain_name(because.line),
                               detail::line_words(because, page.kitchen)),
                   34) +
           "\n";
}

void in_full(const Page& page, const ask::ClearMeal& meal, std::string& out) {
    for (const auto& because : meal.because) every_line(page, because, out);
    for (const auto& use : meal.stand_ins) {
        out += wrapped(fmt::format("     Stand-in: {}, fit {:.2f}{}", detail::stand_in_words(use, page.kitchen, true),
                                   use.fit, use.note.empty() ? "" : "; " + use.note),
                       7) +
               "\n";
    }
    for (const auto& more : meal.scaled) {
        out += wrapped(fmt::format("     More than the recipe says: {}, {:.2f} times as much, which it bears",
                                   named(more.amount, more.ingredient, page.kitchen), more.thousandths / 1000.0),
                       7) +
               "\n";
    }
    for (const std::string& caution : meal.cautions) out += wrapped("     ! " + caution, 7) + "\n";
}

/// In a line of its own each; in one line cut to the screen where there are many.
void row(const Page& page, const ask::ClearMeal& meal, const Manner& manner, bool many, std::string& out) {
    const std::string dish = page.kitchen.cookbook()[meal.dish].name + (meal.ready_meal ? " (ready meal)" : "");
    const std::string head = fmt::format("  {} {:<6} ", detail::row_day(meal.day), name(meal.meal));
    const std::string more = saved(page, meal);
    if (many && !manner.why) {
        std::string line = fitted(fmt::format("{}{} {}", head, fitted(dish, most_dish), more), screen_width);
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + "\n";
        return;
    }
    out += wrapped(head + dish, length(head)) + "\n";
    if (meal.instead_of) out += wrapped("     instead of " + page.kitchen.cookbook()[*meal.instead_of].name, 7) + "\n";
    if (!more.empty()) out += wrapped("     " + more, 7) + "\n";
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
        const std::string less =
            bin.costs_more ? fmt::format(", and all would be worth {} less", page.price(*bin.costs_more)) : "";
        out += wrapped(fmt::format("  {}{}, {} {} ({}): {}{}.{}", bin.part_of ? "the rest, " : "",
                                   named(bin.amount, bin.ingredient, page.kitchen), bin.use_by ? "use by" : "best by",
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
        words.push_back(fmt::format("{} ({})", named(buy.amount, buy.ingredient, page.kitchen), page.price(buy.price)));
    out += wrapped("Buy " + listed(words) + ".", 4) + "\n";
}

void sums(const ask::ClearAnswer& answer, const Page& page, std::string& out) {
    out += "The sum:\n";
    for (const auto& because : answer.because) every_line(page, because, out);
    out += fmt::format("     {:>9}  value, the sum of these; the greedy choice alone is worth {}\n",
                       page.signed_price(answer.value), page.signed_price(answer.greedy));
}

}  // namespace

std::string text(const ask::ClearAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const Page page{kitchen, today};
    std::string out = wrapped(sentence(answer, page)) + "\n";
    for (const std::string& note : answer.notes) out += wrapped(note) + "\n";
    for (const auto& meal : answer.meals) row(page, meal, manner, answer.meals.size() > most_in_full, out);
    for (const auto& empty : answer.empty) {
        out +=
            wrapped(fmt::format("  {} {:<6} nothing: {}", detail::row_day(empty.day), name(empty.meal), empty.reason),
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
                            detail::how_good(answer.proved_best, answer.gap),
                            answer.proved_best ? "" : fmt::format(" of the {} at stake", page.price(answer.at_stake)),
                            answer.stopped ? " Stopped early." : "")) +
        "\n";
    const bool cautions = std::any_of(answer.meals.begin(), answer.meals.end(),
                                      [](const ask::ClearMeal& meal) { return !meal.cautions.empty(); });
    if (cautions && !manner.why) out += "Cautions and sums of each dish: --why.\n";
    if (!answer.meals.empty()) out += "Local food-safety advice and labels come first.\n";
    return out;
}

}  // namespace samebase::show
