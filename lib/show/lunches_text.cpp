#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

#include "basics/ranges.hpp"
#include "show/detail/parts.hpp"
#include "show/lunches.hpp"
#include "show/tonight.hpp"

namespace samebase::show {

namespace {

using ask::LunchKind;

constexpr std::size_t most_cautions = 3;

struct Page {
    const ask::LunchesAnswer& answer;
    const kitchen::Kitchen& kitchen;
    basics::Day today;
    const Manner& manner;

    [[nodiscard]] std::string price(basics::Money amount) const { return money(amount, kitchen.household.currency); }
    [[nodiscard]] std::string about(basics::Money amount) const {
        return about_money(amount, kitchen.household.currency);
    }
    [[nodiscard]] const std::string& name_of(std::size_t person) const { return kitchen.household.people[person].name; }
    [[nodiscard]] std::string names(const std::vector<std::size_t>& people) const {
        std::vector<std::string> words;
        words.reserve(people.size());
        for (const std::size_t person : people) words.push_back(name_of(person));
        return listed(words);
    }
};

std::string days_words(int days) {
    return days == 1 ? "today" : fmt::format("on {} days", days);
}

std::string lunches_words(std::size_t count) {
    return fmt::format("{} {}", count, count == 1 ? "lunch" : "lunches");
}

std::string sentence(const Page& page) {
    const ask::LunchesAnswer& answer = page.answer;
    const auto bought = static_cast<std::size_t>(std::count_if(
        answer.lunches.begin(), answer.lunches.end(), [](const auto& l) { return l.kind == LunchKind::bought; }));
    if (answer.lunches.empty()) return answer.notes.empty() ? "No lunch is open." : answer.notes.front();
    const std::string when = days_words(answer.span.length());
    basics::Money paid;
    for (const auto& because : answer.because) {
        if (because.line == ask::LunchLine::bought) paid -= because.money;
    }
    if (bought == answer.lunches.size())
        return fmt::format("Nothing here is worth having for lunch {}: {} to buy, for {}.", when, lunches_words(bought),
                           page.about(answer.spent));
    const std::string some = bought > 0 ? fmt::format(", and {} bought for {}", bought, page.about(paid)) : "";
    const std::string saved =
        answer.saved.minor > 0 ? fmt::format(" {} of food is kept from the bin.", page.about(answer.saved)) : "";
    return fmt::format("Everyone at home has a lunch {}: {} from {} of food{}; {}.{}", when,
                       lunches_words(answer.lunches.size() - bought), page.about(answer.spent - paid), some,
                       detail::how_good(answer.proved_best, answer.gap), saved);
}

/// "chilli, left over (eat by tomorrow)".
std::string leftover_words(const Page& page, const ask::Lunch& lunch) {
    const stock::Lot* lot = page.kitchen.lot(lunch.from_lot);
    const auto& dish = page.kitchen.cookbook()[lot != nullptr && lot->dish ? *lot->dish : *lunch.dish];
    const std::string by = lunch.use_by ? fmt::format("eat by {}", near_day(*lunch.use_by, page.today)) : "";
    if (lunch.made) {
        const char* larger = lunch.kind == LunchKind::larger ? "larger " : "";
        return fmt::format("{}, from {} {}dinner ({})", dish.name, of_day(*lunch.made, page.today), larger, by);
    }
    if (lot == nullptr) return dish.name + ", left over";
    if (lot->state == stock::State::frozen) return dish.name + ", from the freezer";
    return fmt::format("{}, left over{}", dish.name, by.empty() ? "" : fmt::format(" ({})", by));
}

std::string cooked_words(const Page& page, const ask::LunchCooked& cooked) {
    const auto& dish = page.kitchen.cookbook()[cooked.dish];
    std::string saves;
    for (const auto& [id, amount] : cooked.saves)
        saves += (saves.empty() ? "; uses up " : ", ") + page.kitchen.catalogue()[id].name;
    // They do nearly the same work: what they replace is not worth a word.
    std::vector<std::string> with;
    for (const kitchen::LineSwap& swap : cooked.swaps) {
        const std::string& name = page.kitchen.catalogue()[swap.use.front().first].name;
        if (dish.name.find(name) == std::string::npos) with.push_back(name);
    }
    return fmt::format("{}{} ({} min{})", dish.name, with.empty() ? "" : " with " + listed(with), dish.minutes, saves);
}

/// A cook's words for the lines of the sum.
std::string_view plain_name(ask::LunchLine line) {
    constexpr std::array<std::string_view, 8> names{"all bought", "kept from the bin", "from stock", "to buy", "bought",
                                                    "effort",     "had lately",        "liking"};
    return names[static_cast<std::size_t>(line)];
}

void every_line(const Page& page, const ask::LunchBecause& because, std::string& out) {
    out +=
        wrapped(fmt::format("         {:>9}  {:<17} {}", signed_money(because.money, page.kitchen.household.currency),
                            plain_name(because.line), detail::line_words(because, page.kitchen)),
                38);
    out.erase(out.find_last_not_of(' ') + 1);
    out += "\n";
}

/// Rows of one day: the day stands before the first.
class Rows {
  public:
    Rows(const Page& page, std::string& out) : page_(page), out_(out) {}

    void of(basics::Day day) {
        day_ = detail::row_day(day);
        planned(day);
        leftovers(day);
        for (const auto& cooked : page_.answer.cooked) {
            if (cooked.day != day) continue;
            row(page_.names(cooked.eaters), cooked_words(page_, cooked));
            for (const std::size_t person : cooked.eaters) lines_of(day, person);
            if (page_.manner.why) {
                for (const std::string& caution : cooked.cautions) out_ += wrapped("         ! " + caution, 11) + "\n";
            }
        }
        for (const auto& lunch : page_.answer.lunches) {
            if (lunch.day == day && lunch.kind == LunchKind::bought)
                row(page_.name_of(lunch.person), fmt::format("a bought lunch: {}", lunch.reason));
        }
    }

  private:
    void row(const std::string& who, const std::string& what) {
        out_ += wrapped(fmt::format("  {} {}: {}", day_, who, what), 9) + "\n";
        day_.assign(detail::row_day_width, ' ');
    }

    /// Those who have one and the same, together.
    void planned(basics::Day day) {
        std::vector<std::tuple<cookbook::DishId, bool, std::vector<std::size_t>>> rows;
        for (const auto& seat : page_.answer.standing) {
            if (seat.day != day) continue;
            const auto same = std::find_if(rows.begin(), rows.end(), [&](const auto& r) {
                return std::get<0>(r) == seat.dish && std::get<1>(r) == seat.ready_meal;
            });
            if (same != rows.end()) {
                std::get<2>(*same).push_back(seat.person);
            } else {
                rows.push_back({seat.dish, seat.ready_meal, {seat.person}});
            }
        }
        for (const auto& [dish, ready, people] : rows)
            row(page_.names(people),
                fmt::format("{}{}, as planned", page_.kitchen.cookbook()[dish].name, ready ? ", left over" : ""));
    }

    void leftovers(basics::Day day) {
        std::vector<std::pair<std::string, std::vector<std::size_t>>> rows;
        for (const auto& lunch : page_.answer.lunches) {
            if (lunch.day != day || lunch.kind == LunchKind::bought || lunch.kind == LunchKind::cooked) continue;
            const std::string what = leftover_words(page_, lunch);
            const auto same = std::find_if(rows.begin(), rows.end(), [&](const auto& r) { return r.first == what; });
            if (same != rows.end()) {
                same->second.push_back(lunch.person);
            } else {
                rows.push_back({what, {lunch.person}});
            }
        }
        for (const auto& [what, people] : rows) {
            row(page_.names(people), what);
            for (const std::size_t person : people) lines_of(day, person);
        }
    }

    void lines_of(basics::Day day, std::size_t person) {
        if (!page_.manner.why) return;
        for (const auto& lunch : page_.answer.lunches) {
            if (lunch.day != day || lunch.person != person) continue;
            for (ask::LunchBecause because : lunch.because) {
                because.note = page_.name_of(person) + (because.note.empty() ? "" : ", " + because.note);
                every_line(page_, because, out_);
            }
        }
    }

    const Page& page_;
    std::string& out_;
    std::string day_;
};

void to_do(const Page& page, std::string& out) {
    for (const auto& dinner : page.answer.larger) {
        out += wrapped(fmt::format("Cook {} more {} ({}).", counted(dinner.more, "serve"),
                                   on_day(dinner.day, page.today), page.kitchen.cookbook()[dinner.dish].name),
                       2) +
               "\n";
    }
    for (const auto& move : page.answer.take_out)
        out += wrapped(
                   fmt::format("Take out {}: {}.", on_day(move.day, page.today), words(move, page.kitchen, page.today)),
                   2) +
               "\n";
    if (page.answer.to_buy.empty()) return;
    std::vector<std::string> words;
    for (const auto& buy : page.answer.to_buy)
        words.push_back(fmt::format("{} ({})", detail::purchase_words(buy, page.kitchen), page.price(buy.price)));
    out += wrapped("Buy " + listed(words) + ".", 4) + "\n";
}

void sums(const Page& page, std::string& out) {
    if (page.answer.because.empty()) return;
    out += "The sum:\n";
    for (const auto& because : page.answer.because) every_line(page, because, out);
    out += fmt::format("         {:>9}  value, their sum; {} at first\n",
                       signed_money(page.answer.value, page.kitchen.household.currency),
                       signed_money(page.answer.greedy, page.kitchen.household.currency));
}

void cautions(const Page& page, std::string& out) {
    const auto& all = page.answer.cautions;
    const std::size_t shown = page.manner.why ? all.size() : std::min(all.size(), most_cautions);
    for (std::size_t i = 0; i < shown; ++i) out += wrapped("! " + all[i], 2) + "\n";
    if (shown < all.size()) out += fmt::format("! {} more cautions: --why\n", all.size() - shown);
}

}  // namespace

std::string text(const ask::LunchesAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const Page page{answer, kitchen, today, manner};
    std::string out = wrapped(sentence(page)) + "\n";
    for (std::size_t i = answer.lunches.empty() ? 1 : 0; i < answer.notes.size(); ++i)
        out += wrapped(answer.notes[i]) + "\n";
    Rows rows(page, out);
    for (const basics::Day day : basics::days_of(answer.span)) rows.of(day);
    to_do(page, out);
    if (answer.extra_bin >= kitchen.household.tell_from)
        out += wrapped(fmt::format("What is opened, thawed and bought for them leaves {} more for the bin by {}.",
                                   page.about(answer.extra_bin), day(answer.horizon, today)),
                       2) +
               "\n";
    if (answer.stopped) out += "Stopped early.\n";
    if (manner.why) sums(page, out);
    if (manner.why && !answer.lunches.empty()) {
        const std::string stake =
            answer.proved_best ? "" : fmt::format(", of the {} at stake", page.price(answer.at_stake));
        out += wrapped(fmt::format("Value {}, no plan above {}: {}{}.", page.price(answer.value),
                                   page.price(answer.bound), detail::how_good(answer.proved_best, answer.gap), stake)) +
               "\n";
    }
    cautions(page, out);
    if (!answer.lunches.empty()) out += "Plan them: samebase lunches --write\n";
    return out;
}

}  // namespace samebase::show
