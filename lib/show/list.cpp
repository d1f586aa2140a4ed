#include "show/list.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "kitchen/shelf.hpp"
#include "show/detail/packs_words.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

/// "beef mince 2 trays (freezer)".
std::string item_words(const ask::ListItem& item, const kitchen::Kitchen& kitchen) {
    const std::string mark = item.to_freeze ? " (freezer)" : item.garnish ? " (garnish)" : "";
    return detail::packs_words(item.ingredient, item.packs, item.amount, kitchen) + mark;
}

std::string reasons(const ask::ListItem& item, const kitchen::Kitchen& kitchen, basics::Day today) {
    std::vector<std::string> words;
    for (const ask::BoughtFor& one : item.for_what)
        words.push_back(one.dish ? fmt::format("for {} {}", kitchen.cookbook()[*one.dish].name, day(one.day, today))
                                 : "for every day");
    if (item.ran_out) words.emplace_back("it is out");
    if (item.by_hand) words.emplace_back("on your list");
    return listed(words);
}

std::string row(const std::string& head, const std::vector<std::string>& words) {
    return words.empty() ? "" : wrapped(fmt::format("{}: {}", head, fmt::join(words, ", ")), 2) + "\n";
}

/// A row a shelf; with `why`, a row a thing under it.
std::string shelves(const ask::ListAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today, bool why) {
    std::string out;
    for (const std::string& shelf : kitchen::walk(kitchen.household)) {
        if (shelf == kitchen::not_food) {
            out += row("Not food", detail::by_hand_words(answer.others));
            continue;
        }
        std::vector<std::string> words;
        std::string lines;
        for (const ask::ListItem& item : answer.items) {
            if (kitchen::shelf(kitchen.catalogue(), item.ingredient) != shelf) continue;
            words.push_back(item_words(item, kitchen));
            lines += wrapped(fmt::format("  {}: {}, {}", words.back(), money(item.price, kitchen.household.currency),
                                         reasons(item, kitchen, today)),
                             4) +
                     "\n";
        }
        if (words.empty()) continue;
        out += why ? capitalised(shelf) + "\n" + lines : row(capitalised(shelf), words);
    }
    return out;
}

std::string head(const ask::ListAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string total = about_money(answer.total, kitchen.household.currency);
    if (!answer.trip)
        return answer.items.empty() ? "" : fmt::format("About {}; no shopping days: household trip sat\n", total);
    if (answer.items.empty() && answer.others.empty())
        return fmt::format("Nothing to buy {}.\n", on_day(*answer.trip, today));
    const std::string up_to = answer.next ? ", up to " + day(*answer.next, today) : "";
    return fmt::format("For {}, about {}{}\n", day(*answer.trip, today), total, up_to);
}

}  // namespace

std::string text(const ask::ListAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    if (!answer.trip && answer.items.empty() && answer.others.empty())
        return "The household has no shopping days: samebase household trip sat\n";
    std::string out = head(answer, kitchen, today) + shelves(answer, kitchen, today, manner.why);
    out += row("Not sold on that trip", detail::by_hand_words(answer.later));
    if ((!answer.items.empty() || !answer.others.empty()) && !manner.why)
        out += wrapped(
                   fmt::format("What for: --why. Bought it all: samebase list --got. All but some: samebase list --got "
                               "--not {}",
                               shell(answer.items.empty() ? answer.others.front().words
                                                          : kitchen.catalogue()[answer.items.front().ingredient].name)),
                   2) +
               "\n";
    return out;
}

namespace {

Json by_hand_json(const std::vector<kitchen::Listed>& rows, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    for (const kitchen::Listed& row : rows) {
        list.push_back({{"words", row.words},
                        {"ingredient", row.ingredient ? Json(kitchen.catalogue()[*row.ingredient].id) : Json(nullptr)},
                        {"count", row.count > 0 ? Json(row.count) : Json(nullptr)}});
    }
    return list;
}

}  // namespace

Json json(const ask::ListAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json items = Json::array();
    for (const ask::ListItem& item : answer.items) {
        const auto& thing = kitchen.catalogue()[item.ingredient];
        Json for_what = Json::array();
        for (const ask::BoughtFor& one : item.for_what) {
            for_what.push_back({{"dish", one.dish ? Json(kitchen.cookbook()[*one.dish].id) : Json(nullptr)},
                                {"day", json_day(one.day)}});
        }
        items.push_back({{"ingredient", thing.id},
                         {"label", thing.name},
                         {"shelf", kitchen::shelf(kitchen.catalogue(), item.ingredient)},
                         {"packs", item.packs > 0 ? Json(item.packs) : Json(nullptr)},
                         {"amount", json_amount(item.amount, thing)},
                         {"price", json_money(item.price, kitchen)},
                         {"for", std::move(for_what)},
                         {"to_freeze", item.to_freeze},
                         {"garnish", item.garnish},
                         {"by_hand", item.by_hand},
                         {"ran_out", item.ran_out}});
    }
    return {{"trip", json_day(answer.trip)},
            {"next", json_day(answer.next)},
            {"items", std::move(items)},
            {"not_food", by_hand_json(answer.others, kitchen)},
            {"later", by_hand_json(answer.later, kitchen)},
            {"total", json_money(answer.total, kitchen)}};
}

}  // namespace samebase::show
