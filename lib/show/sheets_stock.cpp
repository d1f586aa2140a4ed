#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "catalogue/hand.hpp"
#include "kitchen/changes.hpp"
#include "show/detail/sheet_words.hpp"
#include "show/sheets.hpp"
#include "stock/packs.hpp"

namespace samebase::show {

namespace {

/// Lots of one place that a cook does not tell apart.
struct Alike {
    catalogue::IngredientId ingredient;
    std::vector<const stock::Lot*> lots;
    bool first = false;
    bool past = false;
    std::optional<basics::Day> by;
    bool use_by = false;
};

constexpr int most_boxes = 40;

std::vector<std::pair<std::string, Alike>> alike(const StockAnswer& answer, const kitchen::Kitchen& kitchen,
                                                 stock::PlaceId place) {
    std::map<std::string, Alike> found;
    for (const stock::Lot* lot : answer.lots) {
        if (lot->place != place) continue;
        Alike& one = found[kitchen::label(kitchen, lot->ingredient, lot->dish) + state_words(*lot, kitchen)];
        one.ingredient = lot->ingredient;
        one.lots.push_back(lot);
        one.first = one.first || answer.use_first.contains(lot->number);
        one.past = one.past || past(*lot, answer.day);
        const auto by = lot->eat_by();
        if (by && (!one.by || *by < *one.by)) {
            one.by = by;
            one.use_by = lot->use_by == by;
        }
    }
    return {found.begin(), found.end()};
}

std::int64_t pack_thousandths(const Alike& one) {
    std::int64_t packs = 0;
    for (const stock::Lot* lot : one.lots) packs += stock::pack_count(*lot);
    return packs;
}

/// "13 packs (6.8 kg)", "3 serves", "some".
std::string quantity(const Alike& one, const kitchen::Kitchen& kitchen) {
    const auto rough = std::find_if(one.lots.begin(), one.lots.end(), [](const auto* lot) { return lot->rough; });
    if (one.lots.size() == 1 || rough != one.lots.end())
        return kitchen::describe(kitchen, rough != one.lots.end() ? **rough : *one.lots.front());
    const auto& thing = kitchen.catalogue()[one.ingredient];
    std::int64_t sum = 0;
    for (const stock::Lot* lot : one.lots) sum += lot->amount.value();
    const std::string amount = catalogue::weighed({thing.dimension, sum}, thing);
    const bool packed = !thing.in_serves && std::all_of(one.lots.begin(), one.lots.end(),
                                                        [](const auto* lot) { return !lot->packs.empty(); });
    if (!packed) return amount;
    return fmt::format("{} ({})", catalogue::packs_in_hand(pack_thousandths(one)), amount);
}

/// A box for each pack, a part pack too; leftovers are told in serves, and have one for each tub.
int boxes(const Alike& one) {
    std::size_t packs = 0;
    for (const stock::Lot* lot : one.lots) packs += lot->packs.size();
    return packs > most_boxes ? 0 : static_cast<int>(packs);
}

std::vector<std::string> until(const Alike& one, basics::Day today) {
    if (one.past) return {fmt::format("past {}: throw out", detail::date_words(*one.by, today))};
    if (!one.by) return {};
    return {fmt::format("{} {}", one.use_by ? "use by" : "best by", detail::date_words(*one.by, today))};
}

SheetTable place_table(const StockAnswer& answer, const kitchen::Kitchen& kitchen, stock::PlaceId place) {
    const stock::Place& where = kitchen.place(place);
    SheetTable table{capitalised(where.name), {"What", "There", "Count"}, {}};
    std::vector<std::string> example;
    for (const auto& [label, one] : alike(answer, kitchen, place)) {
        const int ticks = boxes(one);
        table.rows.push_back(
            {label,
             {SheetCell{quantity(one, kitchen), until(one, answer.day)}, SheetCell{"", {}, ticks, ticks == 0}},
             one.first || one.past});
        if (ticks > 0 && example.size() < 2 && !kitchen.catalogue()[one.ingredient].in_serves)
            example.push_back(fmt::format("{} {}", ticks, kitchen.catalogue()[one.ingredient].name));
    }
    if (!example.empty() && stock::freezes(where.kind))
        table.foot =
            fmt::format("Type the count in one line: samebase count {}: {}, ...", where.name, fmt::join(example, ", "));
    return table;
}

/// What is one thing to a cook, whatever its lots.
SheetTable danger_table(std::string heading, const std::vector<const ask::InDanger*>& list,
                        const kitchen::Kitchen& kitchen, basics::Day today, bool urgent) {
    SheetTable table{std::move(heading), {"What", "How much", "Where", "Until"}, {}};
    using Key = std::tuple<basics::Day, std::string, std::string, std::string>;
    std::map<Key, std::pair<catalogue::IngredientId, std::int64_t>> rows;
    for (const ask::InDanger* danger : list) {
        const stock::Lot* lot = kitchen.lot(danger->lot);
        const Key key{
            danger->by, kitchen::label(kitchen, danger->ingredient, lot != nullptr ? lot->dish : std::nullopt),
            lot != nullptr ? kitchen.place(lot->place).name : "",
            fmt::format("{} {}", danger->use_by ? "use by" : "best by", detail::date_words(danger->by, today))};
        auto& row = rows[key];
        row.first = danger->ingredient;
        row.second += danger->amount.value();
    }
    for (const auto& [key, row] : rows) {
        const auto& thing = kitchen.catalogue()[row.first];
        table.rows.push_back({std::get<1>(key),
                              {SheetCell{amount({thing.dimension, row.second}, thing)}, SheetCell{std::get<2>(key)},
                               SheetCell{std::get<3>(key)}},
                              urgent});
    }
    return table;
}

}  // namespace

Sheet stock_sheet(const StockAnswer& answer, const kitchen::Kitchen& kitchen) {
    const std::string where = answer.place ? "In the " + kitchen.place(*answer.place).name : "In stock";
    Sheet sheet{"stock", fmt::format("{} on {}", where, basics::short_day(answer.day)), "", {}, ""};
    bool signs = false;
    for (const stock::PlaceId place : nearest_first(kitchen)) {
        SheetTable table = place_table(answer, kitchen, place);
        if (table.rows.empty()) continue;
        signs = signs || std::any_of(table.rows.begin(), table.rows.end(), [](const auto& row) { return row.urgent; });
        sheet.parts.emplace_back(std::move(table));
    }
    if (sheet.parts.empty()) sheet.lead = "There is nothing.";
    if (signs) sheet.foot = "! Use first: nothing planned eats it in time.";
    sheet.dense = true;
    return sheet;
}

Sheet first_sheet(const ask::TonightAnswer& answer, const kitchen::Kitchen& kitchen) {
    std::vector<const ask::InDanger*> past;
    std::vector<const ask::InDanger*> soon;
    std::vector<const ask::InDanger*> later;
    const basics::Day tomorrow = answer.day + basics::days{1};
    for (const ask::InDanger& danger : answer.past) past.push_back(&danger);
    for (const ask::InDanger& danger : answer.use_first) {
        if (ask::in_danger_now(danger, kitchen)) (danger.by <= tomorrow ? soon : later).push_back(&danger);
    }
    Sheet sheet{"first", fmt::format("Use first, from {}", basics::short_day(answer.day)), "", {}, ""};
    const auto add = [&](const std::string& heading, const auto& list, bool urgent) {
        if (!list.empty()) sheet.parts.emplace_back(danger_table(heading, list, kitchen, answer.day, urgent));
    };
    add("Past its use-by: throw it out", past, true);
    add(fmt::format("Eat by {}", basics::short_day(tomorrow)), soon, true);
    add("After that", later, false);
    sheet.lead = sheet.parts.empty() ? "Everything is eaten in time as planned."
                                     : "Nothing planned eats these in time. What would: samebase clear, samebase else.";
    return sheet;
}

}  // namespace samebase::show
