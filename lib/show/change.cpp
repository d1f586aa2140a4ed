#include "show/change.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "catalogue/hand.hpp"
#include "show/detail/parts.hpp"
#include "show/json.hpp"
#include "show/stock.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t iso_length = 10;

Json number_or_null(std::int64_t number) {
    return number > 0 ? Json(number) : Json(nullptr);
}

Json entry_json(const stock::Entry& entry, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[entry.after.ingredient];
    return {{"number", number_or_null(entry.number)},
            {"command", number_or_null(entry.command)},
            {"kind", name(entry.kind)},
            {"column", entry.column == stock::Column::none ? Json(nullptr) : Json(name(entry.column))},
            {"day", basics::iso(entry.day)},
            {"place", kitchen.place(entry.place).id},
            {"change", json_amount({thing.dimension, entry.delta}, thing)},
            {"reason", entry.reason.empty() ? Json(nullptr) : Json(entry.reason)},
            {"undoes", entry.undoes ? Json(*entry.undoes) : Json(nullptr)},
            {"after", json(entry.after, kitchen)}};
}

Json fact_json(const kitchen::FactEdit& edit, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[edit.fact.ingredient];
    using Kind = kitchen::Fact::Kind;
    const char* kind = "out";
    if (edit.fact.kind == Kind::pack) kind = "pack";
    if (edit.fact.kind == Kind::price) kind = "price";
    const bool amount = edit.fact.kind != Kind::out && edit.holds;
    return {{"holds", edit.holds},
            {"kind", kind},
            {"ingredient", thing.id},
            {"label", thing.name},
            {"amount", amount ? json_amount({thing.dimension, edit.fact.amount}, thing) : Json(nullptr)},
            {"paid", amount && edit.fact.kind == Kind::price ? json_money(edit.fact.money, kitchen) : Json(nullptr)}};
}

/// "counted fridge": the line without what was counted. The name of a place may have a colon of its own.
std::string count_head(const Changed& changed) {
    for (const auto& place : changed.before.household.places) {
        std::string head = fmt::format("counted {}", place.name);
        if (changed.change.line.starts_with(head + ": ")) return head;
    }
    return changed.change.line;
}

std::string count_text(const Changed& changed) {
    const auto& counted = changed.change.counted;
    const auto agree = std::count_if(counted.begin(), counted.end(), [](const auto& c) { return c.was == c.is; });
    const auto differ = static_cast<std::ptrdiff_t>(counted.size()) - agree;
    const std::string head = capitalised(count_head(changed));
    if (differ == 0 && !changed.change.entries.empty())
        return wrapped(fmt::format("{}: all {} as known, to what a scale tells.", head, agree)) + "\n";
    if (differ == 0) return wrapped(fmt::format("{}: all {} as known; nothing to write.", head, agree)) + "\n";
    const std::string known = agree == 0 ? "" : fmt::format("{} as known, ", agree);
    return wrapped(fmt::format("{}: {}{} changed (was -> is):", head, known, differ)) + "\n" +
           differences(changed.before, changed.change);
}

/// What came or went to the bin, a line each: what, how much, where, until when.
struct Row {
    std::string name;
    std::string amount;
    std::string place;
    std::string until;
};

std::vector<Row> rows_of(const Changed& changed, stock::Column column) {
    const auto& kitchen = changed.before;
    std::vector<Row> rows;
    for (const auto& entry : changed.change.entries) {
        if (entry.column != column) continue;
        const stock::Lot& lot = entry.after;
        const auto& thing = kitchen.catalogue()[lot.ingredient];
        const bool came = column == stock::Column::in;
        Row row{kitchen::label(kitchen, lot.ingredient, lot.dish),
                came ? kitchen::describe(kitchen, lot) : amount({thing.dimension, -entry.delta}, thing),
                kitchen.place(lot.place).name,
                {}};
        if (lot.use_by) {
            row.until = "use by " + day(*lot.use_by, changed.change.day);
        } else if (lot.best_by) {
            row.until = "best by " + day(*lot.best_by, changed.change.day);
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::string table(const std::vector<Row>& rows) {
    constexpr std::size_t widest = 34;
    std::size_t name = 0;
    std::size_t much = 0;
    std::size_t place = 0;
    std::size_t until = 0;
    for (const Row& row : rows) {
        name = std::min(std::max(name, length(row.name)), widest);
        much = std::max(much, length(row.amount));
        until = std::max(until, length(row.until));
    }
    // The place gives way where a line would not fit: "left crisper" for "left crisper: leaves and soft vegetables".
    constexpr std::size_t gaps = 8;
    constexpr std::size_t least = 8;
    const std::size_t rest = name + much + until + gaps;
    const std::size_t room = rest < screen_width() ? screen_width() - rest : 0;
    const auto short_place = [&](const Row& row) {
        return length(row.place) <= room ? row.place : row.place.substr(0, row.place.find(':'));
    };
    place = 0;
    for (const Row& row : rows) place = std::max(place, length(short_place(row)));
    const bool told = room >= std::min(place, least);
    place = std::min(place, room);
    std::string out;
    for (const Row& row : rows) {
        std::string line = fmt::format("  {}  {}  ", fitted(row.name, name), fitted(row.amount, much));
        if (told) line += fitted(short_place(row), place) + "  ";
        line += row.until;
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + "\n";
    }
    return out;
}

/// A receipt, or a cleared fridge: too many things for a sentence. Empty where they are few.
std::string many_text(const Changed& changed) {
    constexpr std::size_t most_in_a_sentence = 2;
    const bool came = changed.change.command == "got" || changed.change.command == "list";
    if (!came && changed.change.command != "tossed") return {};
    const auto rows = rows_of(changed, came ? stock::Column::in : stock::Column::tossed);
    if (rows.size() <= most_in_a_sentence) return {};
    return fmt::format("{} {} things:\n", came ? "Got" : "Tossed", rows.size()) + table(rows);
}

}  // namespace

std::string with_days(const std::string& text, basics::Day today) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const bool starts = at == 0 || text[at - 1] == ' ';
        const auto found =
            starts && at + iso_length <= text.size() ? basics::read_iso_day(text.substr(at, iso_length)) : std::nullopt;
        if (found) {
            result += day(*found, today);
            at += iso_length;
        } else {
            result += text[at++];
        }
    }
    return result;
}

std::string differences(const kitchen::Kitchen& kitchen, const kitchen::Change& change) {
    const std::size_t widest = screen_width() / 2;
    const auto label = [&](const kitchen::Counted& counted) {
        std::string full = kitchen::label(kitchen, counted.ingredient, counted.dish);
        return length(full) <= widest ? full : kitchen.catalogue()[counted.ingredient].name;
    };
    std::size_t width = 0;
    for (const auto& counted : change.counted) {
        if (counted.was != counted.is) width = std::max(width, length(label(counted)));
    }
    width = std::min(width, widest);
    std::string out;
    for (const auto& counted : change.counted) {
        if (counted.was == counted.is) continue;
        out += fmt::format("  {}  {} -> {}\n", fitted(label(counted), width), counted.was, counted.is);
    }
    return out;
}

namespace {

/// "From stock: 500 g beef mince (the last), 280 g spaghetti and 90 g gluten-free pasta."
std::string took_text(const Changed& changed) {
    const kitchen::Kitchen& kitchen = changed.before;
    std::vector<std::string> words;
    for (const kitchen::Took& took : changed.change.took) {
        const auto& thing = kitchen.catalogue()[took.ingredient];
        const measure::Amount taken{thing.dimension, took.amount};
        const std::string name = kitchen::label(kitchen, took.ingredient, took.dish);
        words.push_back((name == thing.name ? catalogue::in_hand_named(taken, thing)
                                            : fmt::format("{} {}", amount(taken, thing), name)) +
                        (took.last ? " (the last)" : ""));
    }
    return words.empty() ? "" : wrapped(fmt::format("From stock: {}.", listed(words)), 2) + "\n";
}

/// "Tomorrow: baked fish."
std::string next_dinner(const Changed& changed) {
    const basics::Day next = changed.change.day + basics::days{1};
    const auto* planned = kitchen::planned(changed.before.plan, next, kitchen::Meal::dinner);
    if (planned == nullptr) return "";
    return fmt::format("{}: {}.\n", capitalised(basics::short_day(next)),
                       changed.before.cookbook()[planned->dish].name);
}

}  // namespace

std::string text(const Changed& changed) {
    const kitchen::Change& change = changed.change;
    std::string out;
    if (changed.dry_run) out += "Nothing is written; it would be:\n";
    if (change.command == "count") {
        out += count_text(changed);
    } else if (const std::string many = many_text(changed); !many.empty()) {
        out += many;
    } else {
        out +=
            wrapped(capitalised(with_days(change.line, change.day)) + (change.line.ends_with('.') ? "" : ".")) + "\n";
        if (change.empty()) out += "That was so already: nothing is written.\n";
    }
    out += took_text(changed);
    for (const std::string& note : change.notes)
        out += wrapped("! " + capitalised(with_days(note, change.day)) + ".", 2) + "\n";
    if (change.command == "cooked" && !changed.dry_run) out += next_dinner(changed);
    return out;
}

Json json(const Changed& changed) {
    const kitchen::Kitchen& kitchen = changed.before;
    const kitchen::Change& change = changed.change;
    const auto dish = [&](cookbook::DishId id) { return kitchen.cookbook()[id].id; };
    Json entries = Json::array();
    for (const auto& entry : changed.entries) entries.push_back(entry_json(entry, kitchen));
    Json plan = Json::array();
    for (const auto& edit : change.plan) {
        plan.push_back({{"adds", edit.adds},
                        {"day", basics::iso(edit.row.day)},
                        {"meal", name(edit.row.meal)},
                        {"dish", dish(edit.row.dish)},
                        {"ready_meal", edit.row.ready_meal},
                        {"serves", edit.row.serves ? Json(*edit.row.serves) : Json(nullptr)},
                        {"left", edit.row.left},
                        {"swaps", detail::swaps_json(edit.row.swaps, kitchen)}});
    }
    Json history = Json::array();
    for (const auto& edit : change.history) {
        history.push_back({{"adds", edit.adds},
                           {"day", basics::iso(edit.row.day)},
                           {"meal", name(edit.row.meal)},
                           {"dish", dish(edit.row.dish)}});
    }
    Json facts = Json::array();
    for (const auto& edit : change.facts) facts.push_back(fact_json(edit, kitchen));
    Json list = Json::array();
    for (const auto& [adds, row] : change.list) {
        list.push_back({{"adds", adds},
                        {"words", row.words},
                        {"ingredient", row.ingredient ? Json(kitchen.catalogue()[*row.ingredient].id) : Json(nullptr)},
                        {"count", row.count > 0 ? Json(row.count) : Json(nullptr)}});
    }
    Json counted = Json::array();
    for (const auto& c : change.counted) {
        counted.push_back({{"ingredient", kitchen.catalogue()[c.ingredient].id},
                           {"dish", c.dish ? Json(dish(*c.dish)) : Json(nullptr)},
                           {"label", kitchen::label(kitchen, c.ingredient, c.dish)},
                           {"was", c.was},
                           {"is", c.is}});
    }
    Json documents = Json::array();
    for (const auto& edit : change.documents) documents.push_back(edit.path);
    return {{"command", change.command},
            {"day", basics::iso(change.day)},
            {"dry_run", changed.dry_run},
            {"line", change.line},
            {"notes", change.notes},
            {"entries", std::move(entries)},
            {"plan", std::move(plan)},
            {"history", std::move(history)},
            {"facts", std::move(facts)},
            {"list", std::move(list)},
            {"documents", std::move(documents)},
            {"counted", std::move(counted)}};
}

}  // namespace samebase::show
