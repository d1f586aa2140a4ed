#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <set>
#include <tuple>

#include "catalogue/hand.hpp"
#include "measure/written.hpp"
#include "show/balance.hpp"
#include "show/detail/thawing.hpp"
#include "show/tonight.hpp"

namespace samebase::show {

namespace {

using flow::Finding;
using Kind = Finding::Kind;

constexpr std::size_t most_of_a_kind = 5;

/// A meal by its day and dish: "Friday's fish cakes".
std::string for_what(const kitchen::Kitchen& kitchen, const Finding& finding, basics::Day today) {
    return detail::meal_words(kitchen, finding.dish, finding.meal, finding.day, today);
}

std::string litres(std::int64_t ml) {
    constexpr std::int64_t litre = 1000;
    return fmt::format("{} L", std::max<std::int64_t>(1, (ml + litre / 2) / litre));
}

std::string what_of(const kitchen::Kitchen& kitchen, const Finding& finding) {
    return named({kitchen.catalogue()[finding.ingredient].dimension, finding.amount}, finding.ingredient, kitchen);
}

/// In the order of the kinds: the head of a list, and what a swap calls one.
struct KindWords {
    std::string_view head;
    std::string_view one;
};
constexpr std::array<KindWords, 5> kind_words{{{"Past the use-by: throw it out", "past the use-by"},
                                               {"Still frozen, with too little time to thaw", "not thawed in time"},
                                               {"Short", "short"},
                                               {"Has no plan", "for the bin"},
                                               {"No room", "without room"}}};

const KindWords& words_of(Kind kind) {
    return kind_words[static_cast<std::size_t>(kind)];
}

constexpr std::array<Kind, 5> kinds{Kind::past_use_by, Kind::not_thawed, Kind::short_of, Kind::tossed, Kind::no_room};

/// How many meals cannot be cooked as planned.
std::size_t stopped_meals(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen) {
    std::set<std::tuple<basics::Day, kitchen::Meal, cookbook::DishId>> meals;
    for (const flow::Told& told : answer.telling.told) {
        if (told.finding.dish && flow::stops_a_meal(kitchen, told.finding))
            meals.insert({told.finding.day, told.finding.meal, *told.finding.dish});
    }
    return meals.size();
}

std::string sentence(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string span =
        answer.span.first == today ? fmt::format("Up to {}", day(answer.span.last, today))
        : answer.span.first == answer.span.last
            ? capitalised(on_day(answer.span.first, today))
            : fmt::format("From {} to {}", day(answer.span.first, today), day(answer.span.last, today));
    if (answer.findings.empty()) return span + " everything balances.";
    const std::size_t stopped = stopped_meals(answer, kitchen);
    const std::string meals =
        stopped == 0 ? "every meal can be cooked" : fmt::format("all meals but {} can be cooked", stopped);
    basics::Money bin;
    for (const Finding& finding : answer.findings) {
        if (finding.kind == Kind::tossed) bin += finding.price;
    }
    const std::string waste =
        bin.minor == 0 ? "and all food has a plan"
                       : fmt::format("and {} of food has no plan", about_money(bin, kitchen.household.currency));
    return fmt::format("{} {} as planned, {}.", span, meals, waste);
}

/// What to do about it, where that was looked for.
std::string mend_words(const ask::BalanceAnswer& answer, std::size_t position, const kitchen::Kitchen& kitchen,
                       basics::Day today) {
    if (!answer.looked[position]) return "";
    const auto& mend = answer.mends[position];
    return mend ? ": " + words(*mend, kitchen, today) : ": nothing mends it";
}

std::string coloured(const Finding& finding, const std::string& text, basics::Day today, const Manner& manner) {
    if (finding.kind == Kind::past_use_by || (finding.use_by && finding.day <= today))
        return in_colour(text, Colour::red, manner);
    return finding.kind == Kind::tossed && finding.day <= today + basics::days{1}
               ? in_colour(text, Colour::yellow, manner)
               : text;
}

void add_finding(const ask::BalanceAnswer& answer, const Finding& finding, std::size_t position,
                 const kitchen::Kitchen& kitchen, basics::Day today, const Manner& manner, std::string& out) {
    const std::string what = coloured(finding, words(finding, kitchen, today), today, manner);
    out += wrapped(fmt::format("  {}{}", what, mend_words(answer, position, kitchen, today)), 4) + "\n";
}

void add_told(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
              const Manner& manner, std::string& out) {
    for (const Kind kind : kinds) {
        bool head = false;
        for (const flow::Told& told : answer.telling.told) {
            if (told.finding.kind != kind) continue;
            if (!head) out += fmt::format("{}\n", words_of(kind).head);
            head = true;
            add_finding(answer, told.finding, told.of.front(), kitchen, today, manner, out);
        }
    }
    const flow::Telling& telling = answer.telling;
    if (telling.small == 0) return;
    out += fmt::format("{} other {}, {} in all: --all\n", telling.small, telling.small == 1 ? "thing" : "things",
                       about_money(telling.small_price, kitchen.household.currency));
}

void add_all(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today, const Manner& manner,
             std::string& out) {
    for (const Kind kind : kinds) {
        bool head = false;
        for (std::size_t i = 0; i < answer.findings.size(); ++i) {
            if (answer.findings[i].kind != kind) continue;
            if (!head) out += fmt::format("{}\n", words_of(kind).head);
            head = true;
            add_finding(answer, answer.findings[i], i, kitchen, today, manner, out);
        }
    }
}

void add_rows(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, std::string& out) {
    constexpr std::size_t all_columns = 61;  // but the name
    constexpr std::size_t column = 9;
    constexpr std::size_t narrowest = 8;
    // Where they do not fit, the opening is left out: it is the closing of the row before.
    const bool opens = screen_width() >= all_columns + 2 * narrowest;
    const std::size_t others = opens ? all_columns : all_columns - column;
    const std::size_t name_width = std::max(narrowest, screen_width() - std::min(screen_width(), others));
    const auto line = [&](const std::string& name, const std::string& on, const std::array<std::string, 6>& cells) {
        out += fmt::format("{} {:<6}", fitted(name, name_width), on);
        for (std::size_t i = opens ? 0 : 1; i < cells.size(); ++i) out += fmt::format(" {:>8}", cells[i]);
        out += "\n";
    };
    line("Ingredient", "Day", {"Opening", "Bought", "Made", "Used", "Tossed", "Closing"});
    for (const flow::LedgerRow& row : answer.rows) {
        if (row.bought == 0 && row.made == 0 && row.used == 0 && row.tossed == 0) continue;
        const auto& thing = kitchen.catalogue()[row.ingredient];
        const auto cell = [&](std::int64_t value) {
            if (value == 0) return std::string("-");
            std::string words = catalogue::weighed({thing.dimension, value}, thing);
            return thing.in_serves ? words.substr(0, words.find(" serve")) : words;  // the column is narrow
        };
        line(
            thing.name, basics::short_day(row.day).substr(4),
            {cell(row.opening), cell(row.bought), cell(row.made), cell(row.used), cell(row.tossed), cell(row.closing)});
    }
}

/// What cannot be met, and no room: a line each, the first few.
void add_unmet(std::string_view head, const std::vector<Finding>& findings, const kitchen::Kitchen& kitchen,
               basics::Day today, std::vector<std::string>& list) {
    std::size_t more = 0;
    std::size_t shown = 0;
    for (const Finding& finding : findings) {
        if (finding.kind == Kind::tossed) continue;
        const bool small = finding.price < kitchen.household.tell_from && !flow::stops_a_meal(kitchen, finding);
        if (small || shown == most_of_a_kind) {
            ++more;
            continue;
        }
        ++shown;
        list.push_back(fmt::format("{} {}: {}", head, words_of(finding.kind).one, words(finding, kitchen, today)));
    }
    if (more > 0) list.push_back(fmt::format("{} {} other {} short", head, more, more == 1 ? "thing" : "things"));
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
            if (names.size() == most_of_a_kind || basics::Money{-minor} < kitchen.household.tell_from) break;
            names.push_back(fmt::format("{} ({})", kitchen.catalogue()[id].name,
                                        about_money(basics::Money{-minor}, kitchen.household.currency)));
        }
        if (!names.empty())
            list.push_back(fmt::format("{} bin: {}", to_the_bin ? "now for the" : "kept from the", listed(names)));
    }
}

}  // namespace

std::string words(const Finding& finding, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string what = what_of(kitchen, finding);
    const std::string price = about_money(finding.price, kitchen.household.currency);
    switch (finding.kind) {
        case Kind::past_use_by:
            return fmt::format("{}, use-by {}", what, day(finding.day, today));
        case Kind::not_thawed:
        case Kind::short_of:
            return fmt::format("{} for {}", what, for_what(kitchen, finding, today));
        case Kind::tossed:
            return fmt::format("{}, {} {}, {}", what, finding.use_by ? "use by" : "best by", day(finding.day, today),
                               price);
        case Kind::no_room:
            break;
    }
    return fmt::format("{}: {} too little in the {}, most of it {}", day(finding.day, today), litres(finding.over_ml),
                       finding.place ? kitchen.place(*finding.place).name : "",
                       kitchen.catalogue()[finding.ingredient].name);
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
                : mend.amount && lot != nullptr ? fmt::format("{} of ", measure::write(*mend.amount))
                                                : "";
            return fmt::format("samebase moved {}lot {} --to {}", some, mend.lot,
                               shell(kitchen.place(*mend.place).name));
        }
        case MendKind::buy:
            break;
    }
    return fmt::format("samebase got {}", shell(measure::write(*mend.amount) + " " + name_of(*mend.of)));
}

namespace {

/// ", saves $3.20 in all; then for the bin: lettuce ($1.20)": what it costs, and what it sends to the bin.
std::string cost_words(const ask::Mend& mend, const kitchen::Kitchen& kitchen) {
    constexpr std::size_t most_named = 3;
    const std::string& currency = kitchen.household.currency;
    std::string text;
    const basics::Money least = kitchen.household.tell_from;
    if (-mend.net >= least) text = fmt::format(", saves {} in all", about_money(-mend.net, currency));
    if (mend.net >= least) text = fmt::format(", costs {} in all", about_money(mend.net, currency));
    std::vector<std::string> tossed;
    for (const auto& [id, price] : mend.then_tossed) {
        if (tossed.size() == most_named) break;
        if (price < least) continue;
        tossed.push_back(fmt::format("{} ({})", kitchen.catalogue()[id].name, about_money(price, currency)));
    }
    if (!tossed.empty()) text += "; then for the bin: " + listed(tossed);
    return text;
}

}  // namespace

std::string words(const ask::Mend& mend, const kitchen::Kitchen& kitchen, basics::Day today) {
    using MendKind = ask::Mend::Kind;
    const std::string cost = cost_words(mend, kitchen);
    const std::string how = command(mend, kitchen);
    switch (mend.kind) {
        case MendKind::discard:
            return fmt::format("throw it out: {}", how);
        case MendKind::stand_in: {
            std::vector<std::string> used;
            for (const auto& [id, amount] : mend.use) used.push_back(named(amount, id, kitchen));
            return fmt::format("use {}{}: {}", listed(used), cost, how);
        }
        case MendKind::exchange_days:
            return fmt::format("exchange {} and {}{}: {}", day(mend.day, today), day(*mend.other, today), cost, how);
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
    std::string much = counted(mend.packs, pack ? pack->name : "pack");
    if (pack && pack->name == "each") much = fmt::format("{}", mend.packs);
    if (pack && pack->name == "loose") much = measure::write_rounded(*mend.amount);
    return fmt::format("buy {}, {}: {}", much, money(mend.price, kitchen.household.currency), how);
}

std::string text(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const std::string& currency = kitchen.household.currency;
    std::string out = wrapped(sentence(answer, kitchen, today)) + "\n";
    if (!manner.all) {
        add_told(answer, kitchen, today, manner, out);
        if (answer.totals.spent.minor > 0)
            out += fmt::format("To buy until then: {}.\n", about_money(answer.totals.spent, currency));
        for (const ask::ToFreeze& one : answer.to_freeze) {
            out += wrapped(fmt::format("Freeze what you buy {}: {}{}.", on_day(one.day, today),
                                       named(one.amount, one.ingredient, kitchen),
                                       one.eaten_on ? ", for " + day(*one.eaten_on, today) : ""),
                           2) +
                   "\n";
        }
        return out;
    }
    add_all(answer, kitchen, today, manner, out);
    out += wrapped(fmt::format("Until {}: to buy {}, for the bin {}, cannot be met {}, good stock left {}.",
                               day(answer.span.last, today), money(answer.totals.spent, currency),
                               money(answer.totals.tossed, currency), money(answer.totals.unmet, currency),
                               money(answer.totals.kept, currency))) +
           "\n";
    add_rows(answer, kitchen, out);
    return out;
}

namespace {

/// "$24 more to buy, $5 less for the bin": what changes, in money that decides something.
std::string cost(const ask::SwapAnswer& answer, const kitchen::Kitchen& kitchen) {
    const std::string& currency = kitchen.household.currency;
    std::vector<std::string> words;
    const auto add = [&](basics::Money before, basics::Money after, std::string_view what) {
        const basics::Money more{after.minor - before.minor};
        if (more.minor == 0) return;
        words.push_back(fmt::format("{} {} {}", about_money(basics::Money{std::abs(more.minor)}, currency),
                                    more.minor > 0 ? "more" : "less", what));
    };
    add(answer.before.spent, answer.after.spent, "to buy");
    add(answer.before.tossed, answer.after.tossed, "for the bin");
    return words.empty() ? "costs nothing more" : listed(words);
}

}  // namespace

std::vector<std::string> lines(const ask::SwapAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    std::vector<std::string> list{cost(answer, kitchen)};
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
