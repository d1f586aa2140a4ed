#include "show/stock.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <tuple>

#include "kitchen/changes.hpp"
#include "show/json.hpp"
#include "stock/packs.hpp"

namespace samebase::show {

namespace {

std::string date(const stock::Lot& lot, basics::Day today) {
    const auto by = lot.eat_by();
    if (!by) return "";
    const bool use_by = lot.use_by && *lot.use_by == *by;
    if (use_by && *by < today) return fmt::format("PAST {}", day(*by, today));
    return fmt::format("{} {}", use_by ? "use by" : "best by", day(*by, today));
}

/// "!" for what is to be used first or thrown out, "?" for what is to be looked at.
char mark(const stock::Lot& lot, const StockAnswer& answer) {
    if (past(lot, answer.day)) return '!';
    if (lot.best_by && *lot.best_by < answer.day) return '?';
    return answer.use_first.contains(lot.number) ? '!' : ' ';
}

/// What stands in one row.
struct Row {
    char sign = ' ';
    std::string quantity;
    std::string label;
    std::string shorter;  ///< without what it was cooked as
    std::string date;
    stock::LotNumber lot = 0;
    basics::Day by;
    bool use_by = false;
};

/// So wide that nothing is cut.
struct Widths {
    std::size_t quantity = 0;
    std::size_t label = 0;
    std::size_t date = 0;
    bool stacked = false;  ///< the screen is too narrow for a table: two lines a lot
};

Row row_of(const stock::Lot& lot, const StockAnswer& answer, const kitchen::Kitchen& kitchen) {
    Row row;
    row.sign = mark(lot, answer);
    row.quantity = kitchen::describe(kitchen, lot);
    row.label = kitchen::label(kitchen, lot.ingredient, lot.dish) + state_words(lot, kitchen);
    row.shorter = kitchen.catalogue()[lot.ingredient].name + state_words(lot, kitchen);
    row.date = date(lot, answer.day);
    row.lot = lot.number;
    row.by = lot.eat_by().value_or(answer.day);
    row.use_by = lot.use_by && lot.eat_by() == lot.use_by;
    return row;
}

Widths widths(const std::vector<Row>& rows) {
    Widths widths;
    for (const Row& row : rows) {
        widths.quantity = std::max(widths.quantity, length(row.quantity));
        widths.label = std::max(widths.label, length(row.label));
        widths.date = std::max(widths.date, length(row.date));
    }
    // Sign, spaces and the lot's number.
    constexpr std::size_t rest = 2 + 2 + 2 + 2 + 7;
    const std::size_t others = widths.quantity + widths.date + rest;
    constexpr std::size_t narrowest = 16;
    widths.stacked = screen_width() < others + narrowest;
    const std::size_t room = widths.stacked ? narrowest : screen_width() - others;
    widths.label = std::min(widths.label, room);
    return widths;
}

std::string words(const Row& row, const Widths& widths, const StockAnswer& answer, const Manner& manner) {
    const std::string& label = length(row.label) <= widths.label ? row.label : row.shorter;
    std::string line;
    if (widths.stacked) {
        line = wrapped(fmt::format("{} {} {}", row.sign, row.quantity, row.label), 4) +
               fmt::format("\n    {}{}lot {}", row.date, row.date.empty() ? "" : ", ", row.lot);
    } else {
        line = fmt::format("{} {}  {}  {}  lot {}", row.sign, fitted(row.quantity, widths.quantity),
                           fitted(label, widths.label), fitted(row.date, widths.date), row.lot);
    }
    if (row.sign != '!') return line + "\n";
    const bool urgent = row.use_by && row.by <= answer.day + basics::days{1};
    return in_colour(line, urgent ? Colour::red : Colour::yellow, manner) + "\n";
}

std::string head(const StockAnswer& answer, const kitchen::Kitchen& kitchen) {
    basics::Money worth;
    for (const auto* lot : answer.lots) worth += kitchen::price(kitchen, *lot, lot->amount.value());
    const std::string where = answer.place ? fmt::format("In the {}", kitchen.place(*answer.place).name) : "In stock";
    if (answer.lots.empty()) return fmt::format("{}: nothing.", where);
    const auto count = [&](const auto& which) { return std::count_if(answer.lots.begin(), answer.lots.end(), which); };
    const auto gone = count([&](const auto* lot) { return past(*lot, answer.day); });
    const auto first =
        count([&](const auto* lot) { return answer.use_first.contains(lot->number) && !past(*lot, answer.day); });
    const std::string hurry = (gone == 0 ? "" : fmt::format(", {} past the use-by", gone)) +
                              (first == 0 ? "" : fmt::format(", {} to use first", first));
    return fmt::format("{} on {}: {} worth about {}{}.", where, basics::short_day(answer.day),
                       counted(static_cast<std::int64_t>(answer.lots.size()), "lot"),
                       about_money(worth, kitchen.household.currency), hurry);
}

}  // namespace

std::string state_words(const stock::Lot& lot, const kitchen::Kitchen& kitchen) {
    const bool freezer = stock::freezes(kitchen.place(lot.place).kind);
    if (lot.state == stock::State::thawing || lot.state == stock::State::thawed)
        return fmt::format(", {}", name(lot.state));
    if (lot.state == stock::State::frozen && !freezer) return ", frozen";
    return lot.opened_on ? ", opened" : "";
}

bool past(const stock::Lot& lot, basics::Day today) {
    return lot.use_by && *lot.use_by < today && lot.state != stock::State::frozen;
}

std::vector<stock::PlaceId> nearest_first(const kitchen::Kitchen& kitchen) {
    using stock::PlaceKind;
    constexpr std::array order{PlaceKind::fridge, PlaceKind::crisper, PlaceKind::near_freezer, PlaceKind::pantry,
                               PlaceKind::far_freezer};
    std::vector<stock::PlaceId> places;
    for (const PlaceKind kind : order) {
        for (std::uint32_t p = 0; p < kitchen.household.places.size(); ++p) {
            if (kitchen.household.places[p].kind == kind) places.push_back(stock::PlaceId{p});
        }
    }
    return places;
}

std::string text(const StockAnswer& answer, const kitchen::Kitchen& kitchen, const Manner& manner) {
    std::string out = wrapped(head(answer, kitchen)) + "\n";
    std::vector<Row> all;
    for (const auto* lot : answer.lots) all.push_back(row_of(*lot, answer, kitchen));
    const Widths wide = widths(all);
    std::string marks;
    for (const Row& row : all) marks += row.sign;
    for (const stock::PlaceId place : nearest_first(kitchen)) {
        std::vector<std::tuple<bool, basics::Day, std::string, stock::LotNumber, const Row*>> rows;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (answer.lots[i]->place != place) continue;
            const bool first = all[i].sign != ' ';
            rows.emplace_back(!first, first ? all[i].by : basics::Day{}, all[i].label, all[i].lot, &all[i]);
        }
        if (rows.empty()) continue;
        std::sort(rows.begin(), rows.end());
        out += fmt::format("\n{}\n", capitalised(kitchen.place(place).name));
        for (const auto& [later, by, label, number, row] : rows) out += words(*row, wide, answer, manner);
    }
    if (marks.find_first_of("!?") != std::string::npos) out += "\n";
    if (marks.find('!') != std::string::npos)
        out += wrapped("! Use first: nothing planned eats it in time. PAST: throw it out.", 2) + "\n";
    if (marks.find('?') != std::string::npos) out += "? Past its best-by: look, smell and decide.\n";
    return out;
}

Json json(const stock::Lot& lot, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[lot.ingredient];
    const std::int64_t packs = stock::pack_count(lot);
    Json weights = Json::array();
    for (const std::int64_t pack : lot.packs) weights.push_back(json_amount({thing.dimension, pack}, thing));
    return {{"lot", lot.number},
            {"ingredient", thing.id},
            {"label", kitchen::label(kitchen, lot.ingredient, lot.dish)},
            {"dish", lot.dish ? Json(kitchen.cookbook()[*lot.dish].id) : Json(nullptr)},
            {"place", kitchen.place(lot.place).id},
            {"amount", lot.rough ? Json(nullptr) : json_amount(lot.amount, thing)},
            {"rough", lot.rough ? Json(measure::name(*lot.rough)) : Json(nullptr)},
            {"packs", lot.packs.empty() ? Json(nullptr) : json_serves(packs)},
            {"pack_amounts", std::move(weights)},
            {"state", name(lot.state)},
            {"arrived", basics::iso(lot.arrived)},
            {"opened_on", json_day(lot.opened_on)},
            {"thaw", lot.thaw ? Json(name(*lot.thaw)) : Json(nullptr)},
            {"ready_on", json_day(lot.thawed_on)},
            {"use_by", json_day(lot.use_by)},
            {"best_by", json_day(lot.best_by)},
            {"paid", lot.paid ? json_money(*lot.paid, kitchen) : Json(nullptr)},
            {"note", lot.note.empty() ? Json(nullptr) : Json(lot.note)}};
}

Json json(const StockAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json lots = Json::array();
    for (const auto* lot : answer.lots) {
        Json one = json(*lot, kitchen);
        one["worth"] = json_money(kitchen::price(kitchen, *lot, lot->amount.value()), kitchen);
        one["use_first"] = answer.use_first.contains(lot->number);
        lots.push_back(std::move(one));
    }
    return {{"day", basics::iso(answer.day)},
            {"place", answer.place ? Json(kitchen.place(*answer.place).id) : Json(nullptr)},
            {"lots", std::move(lots)}};
}

}  // namespace samebase::show
