#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "show/detail/parts.hpp"
#include "show/else.hpp"

namespace samebase::show {

namespace {

using ask::Alternative;

constexpr std::size_t rows_on_a_screen = 8;
constexpr std::size_t name_width = 32;

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
    auto ordered = a.uses;
    std::stable_sort(ordered.begin(), ordered.end(),
                     [](const auto& x, const auto& y) { return x.use_first && !y.use_first; });
    std::vector<std::string> words;
    for (std::size_t i = 0; i < ordered.size(); ++i) {
        auto use = ordered[i];
        const auto words_for = state_words(page, use);
        while (i + 1 < ordered.size() && ordered[i + 1].ingredient == use.ingredient &&
               state_words(page, ordered[i + 1]) == words_for) {
            use.amount += ordered[++i].amount;
        }
        words.push_back(amount(use.amount, page.thing(use.ingredient)) + " " + page.thing(use.ingredient).name +
                        words_for);
    }
    return listed(words);
}

/// "2 bags of flour ($4.50)"; of what is sold singly "2 cucumber ($2.40)".
std::string purchase(const Page& page, const ask::Purchase& buy) {
    const auto& pack = page.thing(buy.ingredient).pack;
    std::string packs = fmt::format("{} ", buy.packs);
    if (pack && pack->name != "each") packs += fmt::format("{}{} of ", pack->name, buy.packs == 1 ? "" : "s");
    return fmt::format("{}{} ({})", packs, page.thing(buy.ingredient).name,
                       money(buy.price, page.kitchen.household.currency));
}

void paragraph(std::string& out, const std::string& head, const std::string& text) {
    if (text.empty()) return;
    out += wrapped(fmt::format("     {} {}", head, text), 7) + "\n";
}

std::string plain_name(ask::Line line) {
    switch (line) {
        case ask::Line::waste_avoided:
            return "kept from the bin";
        case ask::Line::to_buy:
            return "to buy";
        case ask::Line::kept:
            return "good stock kept";
        case ask::Line::unmet:
            return "later meals met";
        case ask::Line::stand_ins:
            return "stand-ins";
        case ask::Line::had_lately:
            return "had lately";
        case ask::Line::liking:
            return "liking";
        case ask::Line::effort:
            break;
    }
    return "effort";
}

/// Every line of the sum.
void every_line(const Page& page, const Alternative& a, std::string& out) {
    for (const ask::Because& because : a.because) {
        out += wrapped(fmt::format("     {:>9}  {:<17}  {}", page.price(because.money), plain_name(because.line),
                                   detail::line_words(because, page.kitchen)),
                       35) +
               "\n";
    }
    out += fmt::format("     {:>9}  worth, the sum of these\n", page.price(a.worth));
}

/// The sum by kind of line, in one sentence.
std::string summary(const Page& page, const Alternative& a) {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < ask::line_count; ++i) {
        const auto line = static_cast<ask::Line>(i);
        basics::Money sum;
        for (const ask::Because& because : a.because) {
            if (because.line == line) sum += because.money;
        }
        if (sum.minor != 0) words.push_back(fmt::format("{} {}", plain_name(line), page.price(sum)));
    }
    std::string result;
    for (const auto& word : words) result += (result.empty() ? "" : ", ") + word;
    return result;
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

void in_full(const Page& page, const Alternative& a, const Manner& manner, std::string& out) {
    paragraph(out, "Uses", uses(page, a));
    for (const ask::StandInUse& use : a.stand_ins) {
        paragraph(out, "Stand-in:",
                  fmt::format("{}, fit {:.2f}{}", detail::stand_in_words(use, page.kitchen, true), use.fit,
                              use.note.empty() ? "" : "; " + use.note));
    }
    if (!a.scaled.empty()) paragraph(out, "Takes", scaled(page, a) + " than the recipe says; it bears that.");
    std::vector<std::string> buys;
    for (const ask::Purchase& buy : a.to_buy) buys.push_back(purchase(page, buy));
    paragraph(out, "Buy", buys.empty() ? "nothing." : listed(buys) + ".");
    std::vector<std::string> lacks;
    for (const auto& [id, amount] : a.lacks) lacks.push_back(named(amount, id, page.kitchen));
    if (!lacks.empty()) paragraph(out, "Lacks", listed(lacks) + ": make that first, or cook for fewer (--serves).");
    for (const ask::Leaving& leaving : a.leaves) {
        paragraph(
            out, "Leaves",
            fmt::format("{} serves of {}{}.", serves(leaving.serves_thousandths), page.thing(leaving.ingredient).name,
                        leaving.use_by ? ", to eat by " + day(*leaving.use_by, page.today) : ""));
    }
    if (manner.why) {
        every_line(page, a, out);
    } else {
        paragraph(out, "Why:", summary(page, a) + ".");
    }
    for (const std::string& caution : a.cautions) paragraph(out, "!", caution);
}

/// What one line can say: what it saves, what must be bought, what stands in.
std::string remark(const Page& page, const Alternative& a) {
    std::vector<std::string> parts;
    if (!a.to_buy.empty()) {
        std::string buys;
        for (const auto& buy : a.to_buy) buys += (buys.empty() ? "" : ", ") + page.thing(buy.ingredient).name;
        parts.push_back("buy " + buys);
    }
    if (!a.lacks.empty()) {
        std::string lacks;
        for (const auto& [id, amount] : a.lacks) lacks += (lacks.empty() ? "" : ", ") + page.thing(id).name;
        parts.push_back("lacks " + lacks);
    }
    for (const ask::StandInUse& use : a.stand_ins) parts.push_back(detail::stand_in_words(use, page.kitchen, false));
    std::string saved;
    std::vector<catalogue::IngredientId> seen;
    for (const ask::LotUse& use : a.uses) {
        if (!use.use_first || std::find(seen.begin(), seen.end(), use.ingredient) != seen.end()) continue;
        seen.push_back(use.ingredient);
        saved += (saved.empty() ? "" : ", ") + page.thing(use.ingredient).name;
    }
    if (!saved.empty()) parts.push_back("saves " + saved);
    for (const ask::Leaving& leaving : a.leaves)
        parts.push_back(fmt::format("leaves {}", serves(leaving.serves_thousandths)));
    std::string result;
    for (const auto& part : parts) result += (result.empty() ? "" : "; ") + part;
    return result;
}

void one_line(const Page& page, const Alternative& a, std::size_t number, std::string& out) {
    const std::string head =
        fmt::format("{:>3}{}{} {:>8} {:>3} min", number, a.same_base ? " " : "~", fitted(label(a), name_width),
                    page.price(a.worth), a.ready_meal ? 0 : page.dish(a.dish).minutes);
    std::string line = head + "  " + remark(page, a);
    line = length(line) > screen_width ? fitted(line, screen_width) : line;
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + "\n";
}

/// "from beef mince"; "for the kind soup" where a kind of dish was asked for.
std::string subject(const ask::ElseAnswer& answer, const Page& page) {
    if (answer.used.empty()) return "of the kind " + answer.question.kind;
    const std::string& word = answer.question.word;
    return "from " + (word.empty() ? page.kitchen.catalogue().name(answer.used.front()) : word);
}

std::string sentence(const ask::ElseAnswer& answer, const Page& page) {
    const std::string what = subject(answer, page);
    const std::string when =
        answer.question.day == page.today ? "tonight" : "on " + basics::short_day(answer.question.day);
    const auto replaced = answer.question.instead_of ? answer.question.instead_of : answer.planned;
    const std::string instead = replaced ? fmt::format(", instead of {}", page.dish(*replaced).name) : "";
    if (answer.alternatives.empty()) {
        return fmt::format("Nothing else in the cookbook can be made {} {} for those who are home.", what, when);
    }
    if (answer.used.empty()) {
        return fmt::format("{} {}{}, for {} serves: {} ({} more).", capitalised(what), when, instead,
                           serves(answer.serves_thousandths), label(answer.alternatives.front()),
                           answer.alternatives.size() - 1);
    }
    const auto on_base = std::count_if(answer.alternatives.begin(), answer.alternatives.end(),
                                       [](const auto& a) { return a.same_base; });
    return fmt::format("{} {}{}, for {} serves: {} ({} more; {} on its base).", capitalised(what), when, instead,
                       serves(answer.serves_thousandths), label(answer.alternatives.front()),
                       answer.alternatives.size() - 1, on_base);
}

}  // namespace

std::string text(const ask::ElseAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const Page page{kitchen, today};
    std::string out = wrapped(sentence(answer, page)) + "\n";
    const std::size_t rows =
        manner.all ? answer.alternatives.size() : std::min(answer.alternatives.size(), rows_on_a_screen);
    for (std::size_t i = 0; i < rows; ++i) {
        one_line(page, answer.alternatives[i], i + 1, out);
        if (i == 0 || manner.why) in_full(page, answer.alternatives[i], manner, out);
    }
    if (rows < answer.alternatives.size())
        out += fmt::format("  ... {} more: --all\n", answer.alternatives.size() - rows);
    if (answer.with_trip > 0) out += fmt::format("  With a trip to the shop, {} more: --buy\n", answer.with_trip);
    const bool other =
        std::any_of(answer.alternatives.begin(), answer.alternatives.begin() + static_cast<std::ptrdiff_t>(rows),
                    [](const auto& a) { return !a.same_base; });
    if (other) out += "  ~ on another base\n";
    if (rows > 0) out += "Local food-safety advice and labels come first.\n";
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
        list.push_back(fmt::format("to buy: {} ({})", named(buy.amount, buy.ingredient, kitchen),
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
