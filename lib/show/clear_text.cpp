#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "show/clear.hpp"
#include "show/detail/parts.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t most_bins = 5;
constexpr std::size_t most_in_full = 8;

struct Page {
    const kitchen::Kitchen& kitchen;
    basics::Day today;

    [[nodiscard]] const catalogue::Ingredient& thing(catalogue::IngredientId id) const {
        return kitchen.catalogue()[id];
    }
    [[nodiscard]] std::string price(basics::Money amount) const { return money(amount, kitchen.household.currency); }
    [[nodiscard]] std::string about(basics::Money amount) const {
        return about_money(amount, kitchen.household.currency);
    }
    [[nodiscard]] std::string signed_price(basics::Money amount) const {
        return signed_money(amount, kitchen.household.currency);
    }
};

std::string sentence(const ask::ClearAnswer& answer, const Page& page) {
    basics::Money buys;
    for (const auto& buy : answer.to_buy) buys += buy.price;
    const std::string bought = answer.to_buy.empty() ? "nothing to buy" : page.about(buys) + " to buy";
    if (answer.meals.empty()) return fmt::format("No meal can be chosen until {}.", day(answer.span.last, page.today));
    return fmt::format("Until {}: {} of {} in danger is kept from the bin, {}; {}.", day(answer.span.last, page.today),
                       page.about(answer.saved), page.about(answer.danger), bought,
                       detail::how_good(answer.proved_best, answer.gap));
}

/// At most a few of them, and how many more.
std::string few(const std::vector<std::string>& words) {
    constexpr std::size_t most = 4;
    if (words.size() <= most) return listed(words);
    std::string result;
    for (std::size_t i = 0; i + 1 < most; ++i) result += (i == 0 ? "" : ", ") + words[i];
    return fmt::format("{} and {} more", result, words.size() - most + 1);
}

/// What marks a meal: what it uses up, and what is in another's place.
std::string marks(const Page& page, const ask::ClearMeal& meal) {
    std::vector<std::string> used_up;
    for (const auto& because : meal.because) {
        if (because.line == ask::ClearLine::waste_avoided) used_up.push_back(page.thing(*because.of).name);
    }
    std::vector<std::string> instead;
    for (const auto& use : meal.stand_ins) instead.push_back(detail::stand_in_words(use, page.kitchen, false));
    std::string result = used_up.empty() ? "" : "uses up " + few(used_up);
    if (!instead.empty()) result += (result.empty() ? "" : "; ") + few(instead);
    return result;
}

/// A cook's words for the lines of the sum.
std::string_view plain_name(ask::ClearLine line) {
    constexpr std::array<std::string_view, 8> names{"kept from the bin", "crisper first", "to buy",  "stand-ins",
                                                    "had lately",        "liking",        "no meal", "its own bin"};
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
        out += wrapped(fmt::format("     More than the recipe says, which it bears: {}",
                                   named(more.amount, more.ingredient, page.kitchen)),
                       7) +
               "\n";
    }
    for (const std::string& caution : meal.cautions) out += wrapped("     ! " + caution, 7) + "\n";
}

/// In two lines; in one where there are many.
void row(const Page& page, const ask::ClearMeal& meal, const Manner& manner, bool many, std::string& out) {
    const std::string dish = page.kitchen.cookbook()[meal.dish].name + (meal.ready_meal ? " (ready meal)" : "");
    const std::string head = fmt::format("  {} {:<6} ", detail::row_day(meal.day), name(meal.meal));
    const std::string instead =
        meal.instead_of ? fmt::format(", not {}", page.kitchen.cookbook()[*meal.instead_of].name) : "";
    if (many && !manner.why) {
        out += wrapped(head + dish, length(head)) + "\n";
        return;
    }
    out += wrapped(head + dish + instead, length(head)) + "\n";
    const std::string more = marks(page, meal);
    if (!more.empty()) out += wrapped("     " + more, 7) + "\n";
    if (manner.why) in_full(page, meal, out);
}

std::string last_way(const ask::ClearBin& bin) {
    if (bin.way == ask::LastWay::freeze) return fmt::format(": freeze it now, it keeps {} days", bin.freezer_days);
    if (bin.way == ask::LastWay::pickle) return ": pickle it, to a tested recipe";
    return "";
}

/// The dearest first; all of it, with what would take it, with --all.
void bins(const ask::ClearAnswer& answer, const Page& page, const Manner& manner, std::string& out) {
    if (answer.bin.empty()) return;
    out += fmt::format("Still ends in the bin, {}\n", page.about(answer.danger - answer.saved));
    auto ordered = answer.bin;
    std::stable_sort(ordered.begin(), ordered.end(),
                     [](const auto& a, const auto& b) { return a.price.minor > b.price.minor; });
    std::size_t shown = 0;
    basics::Money rest;
    for (const auto& bin : ordered) {
        if (!manner.all && (shown == most_bins || bin.price < page.kitchen.household.tell_from)) {
            rest += bin.price;
            continue;
        }
        ++shown;
        const std::string less =
            bin.costs_more ? fmt::format(", and all would be worth {} less", page.price(*bin.costs_more)) : "";
        const std::string reason = manner.all ? fmt::format(". {}{}", capitalised(bin.reason), less) : "";
        out += wrapped(fmt::format("  {}, {} {}, {}{}{}", named(bin.amount, bin.ingredient, page.kitchen),
                                   bin.use_by ? "use by" : "best by", day(bin.by, page.today), page.about(bin.price),
                                   last_way(bin), reason),
                       4) +
               "\n";
    }
    if (shown < ordered.size())
        out += fmt::format("  {} other things, {} in all: --all\n", ordered.size() - shown, page.about(rest));
}

void buys(const ask::ClearAnswer& answer, const Page& page, std::string& out) {
    if (answer.to_buy.empty()) return;
    std::vector<std::string> words;
    for (const auto& buy : answer.to_buy)
        words.push_back(fmt::format("{} ({})", detail::purchase_words(buy, page.kitchen), page.price(buy.price)));
    out += wrapped("Buy " + listed(words) + ".", 4) + "\n";
}

void sums(const ask::ClearAnswer& answer, const Page& page, std::string& out) {
    out += "The sum:\n";
    for (const auto& because : answer.because) every_line(page, because, out);
    out += fmt::format("     {:>9}  value, their sum; greedy alone {}\n", page.signed_price(answer.value),
                       page.signed_price(answer.greedy));
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
    if (answer.extra_bin >= kitchen.household.tell_from)
        out += wrapped(fmt::format("What is opened, thawed and bought for it leaves {} more for the bin by {}.",
                                   page.about(answer.extra_bin), day(answer.horizon, today)),
                       2) +
               "\n";
    if (answer.stopped) out += "Stopped early.\n";
    if (manner.why) {
        sums(answer, page, out);
        out += wrapped(fmt::format(
                   "Value {}, no plan above {}: {}{}.", page.price(answer.value), page.price(answer.bound),
                   detail::how_good(answer.proved_best, answer.gap),
                   answer.proved_best ? "" : fmt::format(" of the {} at stake", page.price(answer.at_stake)))) +
               "\n";
    }
    if (!answer.meals.empty()) out += "Plan it: samebase clear --write. Sums and cautions: --why\n";
    return out;
}

}  // namespace samebase::show
