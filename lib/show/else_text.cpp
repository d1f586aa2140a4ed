#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "catalogue/hand.hpp"
#include "show/detail/parts.hpp"
#include "show/else.hpp"

namespace samebase::show {

namespace {

using ask::Alternative;

constexpr std::size_t rows_from_stock = 6;
constexpr std::size_t rows_with_a_trip = 3;
constexpr std::size_t most_named = 3;  // of what is used up or bought, in one line

struct Page {
    const kitchen::Kitchen& kitchen;
    basics::Day today;

    [[nodiscard]] const catalogue::Ingredient& thing(catalogue::IngredientId id) const {
        return kitchen.catalogue()[id];
    }
    [[nodiscard]] const cookbook::Dish& dish(cookbook::DishId id) const { return kitchen.cookbook()[id]; }
    [[nodiscard]] std::string price(basics::Money money) const {
        return signed_money(money, kitchen.household.currency);
    }
};

std::string label(const Alternative& a) {
    return a.label + (a.ready_meal ? " (ready meal)" : "");
}

std::string state_words(const Page& page, const ask::LotUse& use) {
    std::vector<std::string> words;
    if (use.state != stock::State::fresh) words.emplace_back(name(use.state));
    if (use.use_by && use.state != stock::State::frozen) words.push_back("use by " + day(*use.use_by, page.today));
    if (use.use_first) words.emplace_back("use first");
    std::string result;
    for (const auto& word : words) result += (result.empty() ? "" : ", ") + word;
    return result.empty() ? "" : " (" + result + ")";
}

/// Lots of one ingredient in one state are said together; what is in danger comes first.
std::string uses(const Page& page, const Alternative& a) {
    struct Row {
        ask::LotUse use;
        std::string state;
    };
    std::vector<Row> rows;
    for (const ask::LotUse& use : a.uses) {
        const std::string state = state_words(page, use);
        const auto same = std::find_if(rows.begin(), rows.end(), [&](const Row& row) {
            return row.use.ingredient == use.ingredient && row.state == state;
        });
        if (same != rows.end()) {
            same->use.amount += use.amount;
        } else {
            rows.push_back({use, state});
        }
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const Row& x, const Row& y) { return x.use.use_first && !y.use.use_first; });
    std::vector<std::string> words;
    for (const Row& row : rows) words.push_back(named(row.use.amount, row.use.ingredient, page.kitchen) + row.state);
    return listed(words);
}

/// "2 bags flour, $4.50".
std::string purchase(const Page& page, const ask::Purchase& buy) {
    return fmt::format("{}, {}", detail::purchase_words(buy, page.kitchen),
                       money(buy.price, page.kitchen.household.currency));
}

void paragraph(std::string& out, const std::string& head, const std::string& text) {
    if (text.empty()) return;
    out += wrapped(fmt::format("     {} {}", head, text), 7) + "\n";
}

/// Every line of the sum.
void every_line(const Page& page, const Alternative& a, std::string& out) {
    for (const ask::Because& because : a.because) {
        out += wrapped(fmt::format("     {:>9}  {:<17}  {}", page.price(because.money),
                                   detail::plain_name(because.line), detail::line_words(because, page.kitchen)),
                       35) +
               "\n";
    }
    out += fmt::format("     {:>9}  worth, the sum of these\n", page.price(a.worth));
}

/// "less pork sausages and more carrot".
std::string scaled(const Page& page, const Alternative& a) {
    std::vector<std::string> words;
    for (const ask::Scaled& one : a.scaled) {
        words.push_back(
            fmt::format("{} {}", one.thousandths < 1000 ? "less" : "more", page.thing(one.ingredient).name));
    }
    return listed(words);
}

void in_full(const Page& page, const Alternative& a, std::string& out) {
    paragraph(out, "Uses", uses(page, a));
    for (const ask::StandInUse& use : a.stand_ins) {
        paragraph(out, "Stand-in:",
                  fmt::format("{}, fit {:.2f}{}", detail::stand_in_words(use, page.kitchen, true), use.fit,
                              use.note.empty() ? "" : "; " + use.note));
    }
    if (!a.scaled.empty()) paragraph(out, "Takes", scaled(page, a) + " than the recipe says; it bears that.");
    std::vector<std::string> buys;
    for (const ask::Purchase& buy : a.to_buy) buys.push_back(purchase(page, buy));
    paragraph(out, "Buy", buys.empty() ? "nothing." : fmt::format("{}.", fmt::join(buys, "; ")));
    std::vector<std::string> lacks;
    for (const auto& [id, amount] : a.lacks) lacks.push_back(named(amount, id, page.kitchen));
    if (!lacks.empty()) paragraph(out, "Lacks", listed(lacks) + ".");
    for (const ask::Leaving& leaving : a.leaves) {
        paragraph(out, "Leaves",
                  fmt::format("{} of {}{}.", catalogue::serves_in_hand(leaving.serves_thousandths),
                              page.thing(leaving.ingredient).name,
                              leaving.use_by ? ", to eat by " + day(*leaving.use_by, page.today) : ""));
    }
    every_line(page, a, out);
    for (const std::string& caution : a.cautions) paragraph(out, "!", caution);
}

/// At most a few of them, and how many more.
std::string few(const std::vector<std::string>& words) {
    if (words.size() <= most_named) return listed(words);
    std::string result;
    for (std::size_t i = 0; i + 1 < most_named; ++i) result += (i == 0 ? "" : ", ") + words[i];
    return fmt::format("{} and {} more", result, words.size() - most_named + 1);
}

/// What one line can say: what must be bought, and what it uses up besides what was asked for.
std::string remark(const Page& page, const ask::ElseAnswer& answer, const Alternative& a) {
    std::vector<std::string> buys;
    for (const auto& buy : a.to_buy) buys.push_back(page.thing(buy.ingredient).name);
    for (const auto& [id, amount] : a.lacks) buys.push_back(page.thing(id).name);
    std::vector<std::string> used_up;
    for (const ask::LotUse& use : a.uses) {
        const std::string& name = page.thing(use.ingredient).name;
        const bool asked = std::any_of(answer.used.begin(), answer.used.end(), [&](const catalogue::Of& of) {
            return page.kitchen.catalogue().is(use.ingredient, of);
        });
        if (use.use_first && !asked && std::find(used_up.begin(), used_up.end(), name) == used_up.end())
            used_up.push_back(name);
    }
    std::vector<std::string> parts;
    basics::Money price;
    for (const auto& buy : a.to_buy) price += buy.price;
    if (!a.to_buy.empty())
        parts.push_back(fmt::format("buy {}, {}", few(buys), about_money(price, page.kitchen.household.currency)));
    if (a.to_buy.empty() && !buys.empty()) parts.push_back("lacks " + few(buys));
    if (!used_up.empty()) parts.push_back("uses up " + few(used_up));
    return fmt::format("{}", fmt::join(parts, "; "));
}

/// "$6 better", "$2 worse": against what is planned, or against nothing, in whole units.
std::string against(const Page& page, const Alternative& a) {
    constexpr std::int64_t unit = 100;
    const std::int64_t units = (std::abs(a.worth.minor) + unit / 2) / unit;
    if (units == 0) return "the same";
    return fmt::format("{} {}", about_money(basics::Money{units * unit}, page.kitchen.household.currency),
                       a.worth.minor > 0 ? "better" : "worse");
}

std::string how_long(const Page& page, const Alternative& a) {
    return a.ready_meal ? "  ready" : fmt::format("{:>3} min", page.dish(a.dish).minutes);
}

/// In one line where it fits, else with the remark in the next.
void one_dish(const Page& page, const ask::ElseAnswer& answer, std::size_t position, std::size_t name_width,
              std::string& out) {
    const Alternative& a = answer.alternatives[position];
    const std::string name = label(a);
    std::string line = fmt::format("{:>4}  {}  {}  {}", position + 1, fitted(name, std::max(name_width, length(name))),
                                   how_long(page, a), against(page, a));
    const std::string more = remark(page, answer, a);
    const std::size_t widest_money = std::max<std::size_t>(10, length(against(page, a)));
    const std::string beside =
        fmt::format("{}  {}", fitted(line, length(line) - length(against(page, a)) + widest_money), more);
    if (more.empty() || length(beside) > screen_width()) {
        out += wrapped(line, 6) + "\n";
        if (!more.empty()) out += wrapped("      " + more, 6) + "\n";
    } else {
        out += beside + "\n";
    }
}

bool nothing_to_buy(const Alternative& a) {
    return a.to_buy.empty() && a.lacks.empty();
}

/// The dishes of one group by their numbers in the answer, the first so many.
void group(const ask::ElseAnswer& answer, const Page& page, const Manner& manner, bool from_stock, std::string& out) {
    std::vector<std::size_t> members;
    for (std::size_t i = 0; i < answer.alternatives.size(); ++i) {
        if (nothing_to_buy(answer.alternatives[i]) == from_stock) members.push_back(i);
    }
    if (members.empty()) return;
    const std::size_t most = from_stock ? rows_from_stock : rows_with_a_trip;
    const std::size_t rows = manner.all ? members.size() : std::min(members.size(), most);
    std::size_t name_width = 0;
    for (std::size_t i = 0; i < rows; ++i)
        name_width = std::max(name_width, length(label(answer.alternatives[members[i]])));
    constexpr std::size_t widest = 48;
    name_width = std::min(name_width, widest);
    out += from_stock ? "With nothing to buy\n" : "With a trip\n";
    for (std::size_t i = 0; i < rows; ++i) {
        one_dish(page, answer, members[i], name_width, out);
        if (manner.why) in_full(page, answer.alternatives[members[i]], out);
    }
    if (rows < members.size()) out += fmt::format("      {} more: --all\n", members.size() - rows);
}

/// What was asked about, as it may be typed: "beef mince", "chicken", "soup".
std::string asked_about(const ask::ElseAnswer& answer, const Page& page) {
    if (answer.used.empty()) return answer.question.kind;
    const std::string& word = answer.question.word;
    return word.empty() ? page.kitchen.catalogue().name(answer.used.front()) : word;
}

std::string sentence(const ask::ElseAnswer& answer, const Page& page) {
    const std::string what = (answer.used.empty() ? "of the kind " : "from ") + asked_about(answer, page);
    const std::string when = answer.question.day == page.today ? "tonight" : on_day(answer.question.day, page.today);
    const auto replaced = answer.question.instead_of ? answer.question.instead_of : answer.planned;
    const std::string instead = replaced ? fmt::format(", instead of {}", page.dish(*replaced).name) : "";
    if (answer.alternatives.empty()) {
        return fmt::format("Nothing else in the cookbook can be made {} {} for those who are home.", what, when);
    }
    return fmt::format("{} {}, for {}{}:", capitalised(what), when, serves(answer.serves_thousandths), instead);
}

/// The question again as it was typed, for another command about it.
std::string question_words(const ask::ElseAnswer& answer, const Page& page) {
    const auto& question = answer.question;
    std::string words = question.lot ? fmt::format("lot {}", *question.lot) : shell(asked_about(answer, page));
    if (question.instead_of && !question.using_ && !question.lot) words = shell(page.dish(*question.instead_of).name);
    if (question.day != page.today) words += " --day " + basics::iso(question.day);
    if (question.serves) words += fmt::format(" --serves {}", *question.serves);
    if (question.left > 0) words += fmt::format(" --left {}", question.left);
    if (!question.from_stock) words += " --buy";
    return words;
}

void next_step(const ask::ElseAnswer& answer, const Page& page, std::string& out) {
    const auto first = std::find_if(answer.alternatives.begin(), answer.alternatives.end(), nothing_to_buy);
    const auto number =
        (first == answer.alternatives.end() ? answer.alternatives.begin() : first) - answer.alternatives.begin() + 1;
    out += wrapped(fmt::format("Plan number {}: samebase else {} --take {}. How to cook it: samebase recipe {}", number,
                               question_words(answer, page), number,
                               shell(page.dish(answer.alternatives[static_cast<std::size_t>(number - 1)].dish).name)),
                   2) +
           "\n";
}

}  // namespace

std::string text(const ask::ElseAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const Page page{kitchen, today};
    std::string out = wrapped(sentence(answer, page)) + "\n";
    group(answer, page, manner, true, out);
    group(answer, page, manner, false, out);
    if (answer.with_trip > 0) out += fmt::format("With a trip to the shop, {} more: --buy\n", answer.with_trip);
    if (!answer.alternatives.empty()) next_step(answer, page, out);
    return out;
}

std::vector<std::string> lines(const ask::Alternative& alternative, const kitchen::Kitchen& kitchen) {
    const auto plain = [](const std::string& text) {
        return text.ends_with('.') ? text.substr(0, text.size() - 1) : text;
    };
    std::vector<std::string> list;
    for (const ask::StandInUse& use : alternative.stand_ins)
        list.push_back(fmt::format("stand-in: {}", detail::stand_in_words(use, kitchen, true)));
    for (const ask::Purchase& buy : alternative.to_buy) {
        list.push_back(fmt::format("to buy: {} ({})", detail::purchase_words(buy, kitchen),
                                   money(buy.price, kitchen.household.currency)));
    }
    for (const auto& [id, amount] : alternative.lacks)
        list.push_back(fmt::format("not enough: {} more", named(amount, id, kitchen)));
    for (const std::string& caution : alternative.cautions) list.push_back(plain(caution));
    return list;
}

std::string text(const ask::WhyNot& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    const Page page{kitchen, today};
    const std::string& dish = page.dish(answer.dish).name;
    std::string out;
    if (!answer.reasons.empty()) {
        for (const std::string& reason : answer.reasons)
            out += wrapped(fmt::format("Not {}: {}.", dish, reason), 2) + "\n";
        return out;
    }
    if (!answer.alternative) return fmt::format("{} is not among the answers.\n", capitalised(dish));
    out += wrapped(fmt::format("{} is number {} of the answers, worth {}:", capitalised(dish), *answer.position + 1,
                               page.price(answer.alternative->worth))) +
           "\n";
    every_line(page, *answer.alternative, out);
    return out;
}

}  // namespace samebase::show
