#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>

#include "show/balance.hpp"
#include "show/tonight.hpp"

namespace samebase::show {

namespace {

using flow::Finding;
using Kind = Finding::Kind;

constexpr std::size_t most_of_a_kind = 5;

std::string for_whom(const kitchen::Kitchen& kitchen, const Finding& finding) {
    return finding.dish ? kitchen.cookbook()[*finding.dish].name : "everyday use";
}

std::string litres(std::int64_t ml) {
    return fmt::format("{}.{} L", ml / 1000, ml % 1000 / 100);
}

std::size_t count_of(const ask::BalanceAnswer& answer, Kind kind) {
    return static_cast<std::size_t>(std::count_if(answer.findings.begin(), answer.findings.end(),
                                                  [&](const Finding& finding) { return finding.kind == kind; }));
}

/// In the order of the kinds: the head of a list, and what a single one is.
struct KindWords {
    std::string_view head;
    std::string_view one;
};
constexpr std::array<KindWords, 5> kind_words{{{"Past its use-by, throw it out:", "past the use-by"},
                                               {"Frozen, with too little time to thaw:", "not thawed in time"},
                                               {"Short:", "short"},
                                               {"For the bin, if nothing else eats it:", "for the bin"},
                                               {"No room:", "without room"}}};

const KindWords& words_of(Kind kind) {
    return kind_words[static_cast<std::size_t>(kind)];
}

constexpr std::array<Kind, 5> kinds{Kind::past_use_by, Kind::not_thawed, Kind::short_of, Kind::tossed, Kind::no_room};

std::string sentence(const ask::BalanceAnswer& answer, basics::Day today) {
    const std::string span =
        answer.span.first == today ? fmt::format("up to {}", day(answer.span.last, today))
        : answer.span.first == answer.span.last
            ? on_day(answer.span.first, today)
            : fmt::format("from {} to {}", day(answer.span.first, today), day(answer.span.last, today));
    if (answer.findings.empty()) return fmt::format("It balances, {}.", span);
    std::vector<std::string> counts;
    for (const Kind kind : kinds) {
        const auto count = count_of(answer, kind);
        if (count > 0) counts.push_back(fmt::format("{} {}", count, words_of(kind).one));
    }
    const std::size_t all = answer.findings.size();
    return fmt::format("{} thing{} need{} you, {}: {}.", all, all == 1 ? "" : "s", all == 1 ? "s" : "", span,
                       listed(counts));
}

void add_findings(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                  const Manner& manner, std::string& out) {
    for (const Kind kind : kinds) {
        const std::size_t count = count_of(answer, kind);
        if (count == 0) continue;
        out += fmt::format("{}\n", words_of(kind).head);
        std::size_t shown = 0;
        for (std::size_t i = 0; i < answer.findings.size(); ++i) {
            if (answer.findings[i].kind != kind) continue;
            if (!manner.all && shown == most_of_a_kind) break;
            ++shown;
            out += wrapped(fmt::format("  {}", words(answer.findings[i], kitchen, today)), 4) + "\n";
            if (answer.mends[i]) {
                out += wrapped(fmt::format("    - {}", words(*answer.mends[i], kitchen, today)), 6) + "\n";
            } else if (i < answer.mended) {
                out += "    - nothing that was tried mends it\n";
            }
        }
        if (shown < count) out += fmt::format("  ... {} more: --all\n", count - shown);
    }
}

void add_rows(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, std::string& out) {
    constexpr std::size_t name_width = 20;
    out += fmt::format("{:<{}} {:<6} {:>8} {:>8} {:>7} {:>8} {:>7} {:>8}\n", "Ingredient", name_width, "Day", "Opening",
                       "Bought", "Made", "Used", "Tossed", "Closing");
    for (const flow::LedgerRow& row : answer.rows) {
        if (row.bought == 0 && row.made == 0 && row.used == 0 && row.tossed == 0) continue;
        const auto& thing = kitchen.catalogue()[row.ingredient];
        const auto cell = [&](std::int64_t value) {
            return value == 0 ? std::string("-") : amount({thing.dimension, value}, thing);
        };
        out += fmt::format("{} {:<6} {:>8} {:>8} {:>7} {:>8} {:>7} {:>8}\n", fitted(thing.name, name_width),
                           basics::short_day(row.day).substr(4), cell(row.opening), cell(row.bought), cell(row.made),
                           cell(row.used), cell(row.tossed), cell(row.closing));
    }
}

/// What cannot be met, and no room: a line each, the first few.
void add_unmet(std::string_view head, const std::vector<Finding>& findings, const kitchen::Kitchen& kitchen,
               basics::Day today, std::vector<std::string>& list) {
    std::size_t more = 0;
    std::size_t shown = 0;
    for (const Finding& finding : findings) {
        if (finding.kind == Kind::tossed) continue;
        if (shown == most_of_a_kind) {
            ++more;
            continue;
        }
        ++shown;
        list.push_back(fmt::format("{} {}: {}", head, words_of(finding.kind).one, words(finding, kitchen, today)));
    }
    if (more > 0) list.push_back(fmt::format("{} {} more: balance shows them", head, more));
}

/// What more or less of each thing goes to the bin: those that differ most.
void add_bin(const ask::SwapAnswer& answer, const kitchen::Kitchen& kitchen, std::vector<std::string>& list) {
    std::map<catalogue::IngredientId, basics::Money> by_ingredient;
    for (const Finding& finding : answer.fresh) {
        if (finding.kind == Kind::tossed) by_ingredient[finding.ingredient] += finding.price;
    }
    for (const Finding& finding : answer.gone) {
        if (finding.kind == Kind::tossed) by_ingredient[finding.ingredient] -= finding.price;
    }
    for (const bool to_the_bin : {true, false}) {
        std::vector<std::pair<std::int64_t, catalogue::IngredientId>> rows;
        for (const auto& [id, price] : by_ingredient) {
            if (price.minor != 0 && (price.minor > 0) == to_the_bin) rows.emplace_back(-std::abs(price.minor), id);
        }
        std::sort(rows.begin(), rows.end());
        std::vector<std::string> names;
        for (const auto& [minor, id] : rows) {
            if (names.size() == most_of_a_kind) break;
            names.push_back(fmt::format("{} ({})", kitchen.catalogue()[id].name,
                                        money(basics::Money{-minor}, kitchen.household.currency)));
        }
        if (!names.empty())
            list.push_back(fmt::format("{} bin: {}", to_the_bin ? "now for the" : "kept from the", listed(names)));
    }
}

}  // namespace

std::string words(const Finding& finding, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string what =
        named({kitchen.catalogue()[finding.ingredient].dimension, finding.amount}, finding.ingredient, kitchen);
    const std::string price = money(finding.price, kitchen.household.currency);
    switch (finding.kind) {
        case Kind::past_use_by:
            return fmt::format("{} ({}), lot {}: its use-by was {}", what, price, finding.lot, day(finding.day, today));
        case Kind::not_thawed:
        case Kind::short_of:
            return fmt::format("{}: {} for {} ({})", day(finding.day, today), what, for_whom(kitchen, finding), price);
        case Kind::tossed:
            return fmt::format("{}: {} ({}){}", day(finding.day, today), what, price,
                               finding.lot == 0 ? ", of what is yet to come"
                               : finding.use_by ? ", its last day"
                                                : ", past its best from then on");
        case Kind::no_room:
            break;
    }
    const std::string place = finding.place ? kitchen.place(*finding.place).name : "";
    return fmt::format("{}: {} has {} too little, most of it {}", day(finding.day, today), place,
                       litres(finding.over_ml), what);
}

std::string command(const ask::Mend& mend, const kitchen::Kitchen& kitchen) {
    using MendKind = ask::Mend::Kind;
    const std::string lunch = mend.meal == kitchen::Meal::lunch ? " --lunch" : "";
    const auto name_of = [&](catalogue::IngredientId id) { return kitchen.catalogue()[id].name; };
    switch (mend.kind) {
        case MendKind::discard:
            return fmt::format("samebase tossed lot {} --because past its use-by", mend.lot);
        case MendKind::stand_in: {
            std::vector<std::string> used;
            for (const auto& [id, amount] : mend.use) used.push_back(name_of(id));
            return fmt::format("samebase swap {} {} --with \"{} for {}\"{}", basics::iso(mend.day),
                               shell(kitchen.cookbook()[*mend.dish].name), fmt::join(used, " + "), name_of(*mend.of),
                               lunch);
        }
        case MendKind::exchange_days:
            return fmt::format("samebase swap {} {}{}", basics::iso(mend.day), basics::iso(*mend.other), lunch);
        case MendKind::other_dish:
            return fmt::format("samebase swap {} {}{}", basics::iso(mend.day),
                               shell(kitchen.cookbook()[*mend.dish].name), lunch);
        case MendKind::freeze:
        case MendKind::move: {
            const stock::Lot* lot = kitchen.lot(mend.lot);
            const std::string some =
                mend.lot_packs > 0 ? fmt::format("{} pack{} of ", mend.lot_packs, mend.lot_packs == 1 ? "" : "s")
                : mend.amount && lot != nullptr
                    ? fmt::format("{} of ", amount(*mend.amount, kitchen.catalogue()[lot->ingredient]))
                    : "";
            return fmt::format("samebase moved {}lot {} --to {}", some, mend.lot,
                               shell(kitchen.place(*mend.place).name));
        }
        case MendKind::buy:
            break;
    }
    return fmt::format("samebase got {}", shell(named(*mend.amount, *mend.of, kitchen)));
}

namespace {

/// ", saves $3.20 in all; then for the bin: lettuce ($1.20)": what it costs, and what it sends to the bin.
std::string cost_words(const ask::Mend& mend, const kitchen::Kitchen& kitchen) {
    constexpr std::size_t most_named = 3;
    const std::string& currency = kitchen.household.currency;
    std::string text;
    if (mend.net.minor < 0) text = fmt::format(", saves {} in all", money(-mend.net, currency));
    if (mend.net.minor > 0) text = fmt::format(", costs {} in all", money(mend.net, currency));
    std::vector<std::string> tossed;
    for (const auto& [id, price] : mend.then_tossed) {
        if (tossed.size() == most_named) break;
        tossed.push_back(fmt::format("{} ({})", kitchen.catalogue()[id].name, money(price, currency)));
    }
    if (!tossed.empty()) text += "; then for the bin: " + listed(tossed);
    return text;
}

}  // namespace

std::string words(const ask::Mend& mend, const kitchen::Kitchen& kitchen, basics::Day today) {
    using MendKind = ask::Mend::Kind;
    const std::string cost = cost_words(mend, kitchen);
    const std::string how = command(mend, kitchen);
    const auto name_of = [&](catalogue::IngredientId id) { return kitchen.catalogue()[id].name; };
    switch (mend.kind) {
        case MendKind::discard:
            return fmt::format("throw it out: {}", how);
        case MendKind::stand_in: {
            std::vector<std::string> used;
            for (const auto& [id, amount] : mend.use) used.push_back(named(amount, id, kitchen));
            return fmt::format("use {} in its place (fit {:.2f}){}: {}", listed(used), mend.fit, cost, how);
        }
        case MendKind::exchange_days:
            return fmt::format("let {} and {} change places{}: {}", day(mend.day, today), day(*mend.other, today), cost,
                               how);
        case MendKind::other_dish: {
            const std::string instead =
                mend.displaces ? " in place of " + kitchen.cookbook()[*mend.displaces].name : "";
            return fmt::format("cook {} {}{}{}: {}", kitchen.cookbook()[*mend.dish].name, on_day(mend.day, today),
                               instead, cost, how);
        }
        case MendKind::freeze:
            return fmt::format("freeze it today{}: {}", cost, how);
        case MendKind::move:
            return fmt::format("move it: {}", how);
        case MendKind::buy:
            break;
    }
    const auto& pack = kitchen.catalogue()[*mend.of].pack;
    return fmt::format("buy {} {} of {} before then, {}: {}", mend.packs, pack ? pack->name : "pack", name_of(*mend.of),
                       money(mend.price, kitchen.household.currency), how);
}

std::string text(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const std::string& currency = kitchen.household.currency;
    std::string out = wrapped(sentence(answer, today)) + "\n";
    add_findings(answer, kitchen, today, manner, out);
    for (const ask::ToFreeze& one : answer.to_freeze) {
        out += wrapped(fmt::format("Freeze what you buy {}: {}{}.", on_day(one.day, today),
                                   named(one.amount, one.ingredient, kitchen),
                                   one.eaten_on ? ", for " + day(*one.eaten_on, today) : ""),
                       2) +
               "\n";
    }
    out += wrapped(fmt::format("Until {}: to buy {}, for the bin {}, cannot be met {}, good stock left {}.",
                               day(answer.span.last, today), money(answer.totals.spent, currency),
                               money(answer.totals.tossed, currency), money(answer.totals.unmet, currency),
                               money(answer.totals.kept, currency))) +
           "\n";
    if (manner.all) add_rows(answer, kitchen, out);
    out += "Local food-safety advice and labels come first.\n";
    return out;
}

std::vector<std::string> lines(const ask::SwapAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string& currency = kitchen.household.currency;
    const auto change = [&](basics::Money before, basics::Money after) {
        return before == after ? fmt::format("{} as before", money(after, currency))
                               : fmt::format("{} -> {}", money(before, currency), money(after, currency));
    };
    std::vector<std::string> list;
    list.push_back(
        fmt::format("to buy {}; for the bin {}; cannot be met {}; good stock left {}",
                    change(answer.before.spent, answer.after.spent), change(answer.before.tossed, answer.after.tossed),
                    change(answer.before.unmet, answer.after.unmet), change(answer.before.kept, answer.after.kept)));
    add_unmet("no longer", answer.gone, kitchen, today, list);
    add_unmet("now", answer.fresh, kitchen, today, list);
    add_bin(answer, kitchen, list);
    for (const flow::ThawMove& move : answer.thaw)
        list.push_back(fmt::format("take out {}: {}", day(move.day, today), words(move, kitchen, today)));
    for (const flow::ThawMove& move : answer.unthaw)
        list.push_back(fmt::format("leave frozen: {}", words(move, kitchen, today)));
    for (const std::string& caution : answer.cautions)
        list.push_back(caution.ends_with('.') ? caution.substr(0, caution.size() - 1) : caution);
    return list;
}

}  // namespace samebase::show
