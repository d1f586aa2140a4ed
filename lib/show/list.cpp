#include "show/list.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "show/json.hpp"

namespace samebase::show {

namespace {

std::string many(const std::string& pack, int count) {
    if (count == 1) return pack;
    if (pack.ends_with("ch") || pack.ends_with('x') || pack.ends_with('s')) return pack + "es";
    if (pack.ends_with("loaf")) return pack.substr(0, pack.size() - 1) + "ves";
    return pack.find(' ') == std::string::npos ? pack + "s" : pack;
}

/// "beef mince 2 trays (freezer)".
std::string item_words(const ask::ListItem& item, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[item.ingredient];
    const std::string frozen = item.to_freeze ? " (freezer)" : "";
    if (thing.pack && thing.pack->name == "loose")
        return fmt::format("{} {}{}", thing.name, amount(item.amount, thing), frozen);
    const std::string pack = thing.pack && thing.pack->name != "each" ? " " + many(thing.pack->name, item.packs) : "";
    return fmt::format("{} {}{}{}", thing.name, item.packs, pack, frozen);
}

std::string reasons(const ask::ListItem& item, const kitchen::Kitchen& kitchen, basics::Day today) {
    std::vector<std::string> words;
    for (const ask::BoughtFor& one : item.for_what)
        words.push_back(one.dish ? fmt::format("{} {}", kitchen.cookbook()[*one.dish].name, day(one.day, today))
                                 : "every day");
    return listed(words);
}

}  // namespace

std::string text(const ask::ListAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    if (!answer.trip) return "The household has no shopping days: samebase household trip sat\n";
    std::string out = answer.items.empty() ? fmt::format("Nothing to buy {}.\n", on_day(*answer.trip, today))
                                           : fmt::format("For {}, about {}{}\n", day(*answer.trip, today),
                                                         money(answer.total, kitchen.household.currency),
                                                         answer.next ? ", up to " + day(*answer.next, today) : "");
    std::string shelf;
    std::vector<std::string> row;
    const auto flush = [&] {
        if (!row.empty()) out += wrapped(fmt::format("{}: {}", capitalised(shelf), fmt::join(row, ", ")), 2) + "\n";
        row.clear();
    };
    for (const ask::ListItem& item : answer.items) {
        const std::string here{ask::shelf(kitchen.catalogue(), item.ingredient)};
        if (here != shelf && manner.why) out += capitalised(here) + "\n";
        if (here != shelf) flush();
        shelf = here;
        if (manner.why) {
            out += wrapped(fmt::format("  {}: {}, for {}", item_words(item, kitchen),
                                       money(item.price, kitchen.household.currency), reasons(item, kitchen, today)),
                           4) +
                   "\n";
        } else {
            row.push_back(item_words(item, kitchen));
        }
    }
    flush();
    std::vector<std::string> out_of;
    for (const auto id : answer.ran_out) out_of.push_back(kitchen.catalogue()[id].name);
    if (!out_of.empty()) out += wrapped(fmt::format("Ran out: {}", fmt::join(out_of, ", ")), 2) + "\n";
    if (!answer.items.empty() && !manner.why)
        out += "What for: --why. Bought it all: samebase list --got. All but some: --got --not\n  \"carrot, milk\"\n";
    return out;
}

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
                         {"shelf", ask::shelf(kitchen.catalogue(), item.ingredient)},
                         {"packs", item.packs},
                         {"amount", json_amount(item.amount, thing)},
                         {"price", json_money(item.price, kitchen)},
                         {"for", std::move(for_what)},
                         {"to_freeze", item.to_freeze}});
    }
    Json out = Json::array();
    for (const auto id : answer.ran_out) out.push_back(kitchen.catalogue()[id].id);
    return {{"trip", json_day(answer.trip)},
            {"next", json_day(answer.next)},
            {"items", std::move(items)},
            {"ran_out", std::move(out)},
            {"total", json_money(answer.total, kitchen)}};
}

}  // namespace samebase::show
