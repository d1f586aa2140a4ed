#include "show/tonight.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "catalogue/hand.hpp"
#include "kitchen/changes.hpp"
#include "show/balance.hpp"
#include "show/detail/parts.hpp"
#include "show/detail/thawing.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t most_rows = 3;
constexpr std::size_t most_in_a_line = 4;
constexpr std::size_t most_for_a_meal = 2;
constexpr std::size_t most_with_mends = 4;  // more things that are missing are told without what would do

struct Page {
    const ask::TonightAnswer& answer;
    const ask::ThawAnswer& thaw;
    const kitchen::Kitchen& kitchen;
    const Manner& manner;
    std::string& out;

    void line(const std::string& text, std::size_t indent = 2) const { out += wrapped(text, indent) + "\n"; }
    [[nodiscard]] const std::string& name(cookbook::DishId dish) const { return kitchen.cookbook()[dish].name; }
    [[nodiscard]] std::string named(const flow::Finding& finding) const {
        return show::named({kitchen.catalogue()[finding.ingredient].dimension, finding.amount}, finding.ingredient,
                           kitchen);
    }
};

/// " (tasty cheese for cheddar)", or nothing.
std::string with(std::span<const kitchen::LineSwap> swaps, const kitchen::Kitchen& kitchen) {
    return swaps.empty() ? std::string() : fmt::format(" ({})", kitchen::describe(kitchen, swaps));
}

std::string minutes(const ask::MealTonight& meal) {
    return meal.ready_meal ? "a ready meal" : fmt::format("{} minutes", meal.minutes);
}

/// "Alba, Bram and 2 guests"; "" for nobody.
std::string for_whom(const ask::TonightAnswer& answer) {
    auto words = answer.eaters;
    if (answer.guests > 0) words.push_back(counted(answer.guests, "guest"));
    return listed(words);
}

std::string tomorrow(const Page& page) {
    const auto& meal = page.answer.tomorrow;
    if (!meal) return "Nothing is planned for tomorrow.";
    return fmt::format("Tomorrow: {}, {}.", page.name(meal->dish), minutes(*meal));
}

void dinner(const Page& page) {
    const ask::TonightAnswer& answer = page.answer;
    const std::string head = basics::short_day(answer.day) + ". ";
    const std::string occasion = answer.occasion.empty() ? "" : capitalised(answer.occasion) + ". ";
    const std::string whom = for_whom(answer);
    if (answer.cooked) {
        page.line(fmt::format("{}{}Cooked: {}. {}", head, occasion, page.name(*answer.cooked), tomorrow(page)));
    } else if (answer.dinner) {
        page.line(fmt::format("{}{}Dinner: {}{}, {}, {}.", head, occasion, page.name(answer.dinner->dish),
                              with(answer.dinner->swaps, page.kitchen), minutes(*answer.dinner),
                              whom.empty() ? "but nobody is home" : "for " + whom));
    } else if (whom.empty()) {
        page.line(head + occasion + "Nobody is home for dinner, and nothing is planned.");
    } else {
        const std::string kind = answer.standing_kind ? fmt::format(" It is {} night.", *answer.standing_kind) : "";
        page.line(fmt::format("{}{}Nothing is planned for dinner, for {}.{}", head, occasion, whom, kind));
    }
    for (const std::string& apart : answer.apart) page.line("  " + apart, 4);
    for (const auto& lunch : answer.lunches)
        page.line(fmt::format("Lunch: {}{}.", page.name(lunch.dish), with(lunch.swaps, page.kitchen)));
}

/// What is due, in one line: "Eat today: 2 serves cooked rice, 3 capsicums."
void due(const Page& page, const std::string& head, const std::vector<flow::Finding>& findings, Colour colour) {
    if (findings.empty()) return;
    auto dearest = findings;
    std::stable_sort(dearest.begin(), dearest.end(),
                     [](const auto& a, const auto& b) { return a.price.minor > b.price.minor; });
    const std::size_t shown = page.manner.all ? dearest.size() : std::min(dearest.size(), most_in_a_line);
    std::string words;
    for (std::size_t i = 0; i < shown; ++i) words += (i == 0 ? "" : ", ") + page.named(dearest[i]);
    if (shown < dearest.size()) words += fmt::format(" and {} more", dearest.size() - shown);
    page.line(fmt::format("{}: {}.", in_colour(head, colour, page.manner), words));
}

/// At most so many rows, the rest counted.
template <class Row, class Words>
void section(const Page& page, const std::string& head, const std::vector<Row>& rows, const Words& words_of,
             const std::string& command, std::size_t most = most_rows) {
    if (rows.empty()) return;
    const std::size_t shown = page.manner.all ? rows.size() : std::min(rows.size(), most);
    page.line(shown < rows.size() ? fmt::format("{} ({} more: {})", head, rows.size() - shown, command) : head);
    for (std::size_t i = 0; i < shown; ++i) page.line("  " + words_of(rows[i]), 4);
}

void take_out(const Page& page) {
    const basics::Day today = page.answer.day;
    std::vector<std::string> rows;
    for (const ask::TakeOut& out : page.thaw.moves) {
        if (out.move.day != today) continue;
        rows.push_back(words(out.move, page.kitchen, today) +
                       (out.late ? fmt::format(" ({})", detail::about(out.minutes)) : ""));
    }
    const auto as_it_is = [](const std::string& row) { return row; };
    section(page, "Take out now (done: samebase tonight --done)", rows, as_it_is, "samebase thaw");
    std::vector<std::string> late;
    for (const ask::TooLate& one : page.thaw.late) {
        if (one.instead == ask::TooLate::Instead::cold_water) continue;
        const auto& thing = page.kitchen.catalogue()[one.ingredient];
        late.push_back(fmt::format("{} for {}: {}", thing.name,
                                   detail::meal_words(page.kitchen, one.dish, one.meal, one.day, today),
                                   detail::words(one, page.kitchen, today)));
    }
    section(page, "Still frozen, too late for the fridge", late, as_it_is, "samebase thaw");
}

void soak(const Page& page) {
    if (page.answer.soak.empty()) return;
    std::vector<std::string> names;
    for (const auto id : page.answer.soak) names.push_back(page.kitchen.catalogue()[id].name);
    page.line(fmt::format("Soak overnight, in plenty of cold water: {}, for tomorrow's {}.", listed(names),
                          page.name(page.answer.tomorrow->dish)));
}

/// In a few words what would do: "rocket would do", "buy 1 pack, $4.50".
std::string would_do(const flow::Mend& mend, const Page& page) {
    using Kind = flow::Mend::Kind;
    if (mend.kind == Kind::stand_in) {
        std::vector<std::string> used;
        for (const auto& [id, amount] : mend.use) used.push_back(page.kitchen.catalogue()[id].name);
        return fmt::format("{} would do", listed(used));
    }
    const std::string all = words(mend, page.kitchen, page.answer.day);
    const std::string how = ": " + command(mend, page.kitchen);
    return all.ends_with(how) ? all.substr(0, all.size() - how.size()) : all;
}

/// What one meal lacks; with what would do where few things are missing, and the command where it is the only one.
std::string lacking(const Page& page, const std::vector<const ask::Missing*>& things, std::size_t missing) {
    std::vector<std::string> words;
    const std::size_t shown = page.manner.all ? things.size() : std::min(things.size(), most_for_a_meal);
    for (std::size_t i = 0; i < shown; ++i) {
        const ask::Missing* thing = things[i];
        std::string what = page.named(thing->finding);
        if (thing->mend && missing <= most_with_mends) {
            const std::string how = missing == 1 ? ": " + command(*thing->mend, page.kitchen) : "";
            what += fmt::format(" ({}{})", would_do(*thing->mend, page), how);
        }
        words.push_back(what);
    }
    const std::string more = shown < things.size() ? fmt::format(" and {} more", things.size() - shown) : "";
    return fmt::format("{}{}", fmt::join(words, ", "), more);
}

void missing(const Page& page) {
    const basics::Day today = page.answer.day;
    std::vector<std::vector<const ask::Missing*>> meals;
    std::size_t count = 0;
    for (const ask::Missing& missing : page.answer.pressing.missing) {
        const flow::Finding& finding = missing.finding;
        if (finding.kind != flow::Finding::Kind::short_of) continue;
        ++count;
        const auto same = std::find_if(meals.begin(), meals.end(), [&](const auto& meal) {
            const flow::Finding& other = meal.front()->finding;
            return other.day == finding.day && other.meal == finding.meal && other.dish == finding.dish;
        });
        if (same == meals.end()) {
            meals.push_back({&missing});
        } else {
            same->push_back(&missing);
        }
    }
    const auto row = [&](const std::vector<const ask::Missing*>& meal) {
        const flow::Finding& finding = meal.front()->finding;
        return fmt::format(
            "{}: {}", capitalised(detail::meal_words(page.kitchen, finding.dish, finding.meal, finding.day, today)),
            lacking(page, meal, count));
    };
    const auto& trip = page.answer.shopping;
    const std::string head = trip ? fmt::format("Missing before {} trip", of_day(*trip, today)) : "Missing";
    section(page, head, meals, row, "samebase balance", count <= most_with_mends ? most_rows : most_rows - 1);
}

void next_step(const Page& page) {
    const ask::Pressing& pressing = page.answer.pressing;
    if (pressing.more > 0) {
        page.line(fmt::format("{} other {}, {} in all: samebase balance", pressing.more,
                              pressing.more == 1 ? "thing" : "things",
                              about_money(pressing.more_price, page.kitchen.household.currency)));
    }
    const auto& dinner = page.answer.dinner;
    if (dinner && !page.kitchen.cookbook()[dinner->dish].ingredients.empty())
        page.line(fmt::format("Cook it: samebase recipe. {}", advice));
    if (!page.answer.dinner && !page.answer.cooked && !page.answer.eaters.empty())
        page.line("What to cook: samebase clear");
}

bool nothing_to_do(const ask::TonightAnswer& answer, const ask::ThawAnswer& thaw) {
    const ask::Pressing& pressing = answer.pressing;
    const bool out = std::any_of(thaw.moves.begin(), thaw.moves.end(),
                                 [&](const ask::TakeOut& take) { return take.move.day == answer.day; });
    return !out && answer.soak.empty() && thaw.late.empty() && pressing.past.empty() && pressing.today.empty() &&
           pressing.tomorrow.empty() && pressing.missing.empty();
}

}  // namespace

std::string words(const flow::ThawMove& move, const kitchen::Kitchen& kitchen, basics::Day today) {
    const std::string how = move.method == stock::ThawMethod::fridge
                                ? "to the fridge"
                                : "into cold water, changed every 30 minutes, cook at once";
    const stock::Lot* lot = kitchen.lot(move.lot);
    return fmt::format("{}, {}, from the {} {}: for {}",
                       kitchen::label(kitchen, move.ingredient, lot != nullptr ? lot->dish : std::nullopt),
                       detail::packs_words(kitchen, move.ingredient, move.amount, move.packs),
                       kitchen.place(move.from).name, how,
                       detail::meal_words(kitchen, move.for_dish, move.for_meal, move.for_day, today));
}

std::string text(const ask::TonightAnswer& answer, const ask::ThawAnswer& thaw, const kitchen::Kitchen& kitchen,
                 const Manner& manner) {
    std::string out;
    const Page page{answer, thaw, kitchen, manner, out};
    dinner(page);
    due(page, "Throw out, past the use-by", answer.pressing.past, Colour::red);
    take_out(page);
    soak(page);
    due(page, "Eat today", answer.pressing.today, Colour::red);
    due(page, "Eat by tomorrow", answer.pressing.tomorrow, Colour::yellow);
    missing(page);
    if (nothing_to_do(answer, thaw)) page.line("Nothing to take out, nothing to use up, nothing missing.");
    next_step(page);
    return out;
}

Json json(const flow::ThawMove& move, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[move.ingredient];
    const auto fridge = kitchen::place_of(kitchen.household, {stock::PlaceKind::fridge});
    return {{"lot", move.lot},
            {"ingredient", thing.id},
            {"label", thing.name},
            {"amount", json_amount({thing.dimension, move.amount}, thing)},
            {"packs", move.packs},
            {"from", kitchen.place(move.from).id},
            {"to", fridge ? Json(kitchen.place(*fridge).id) : Json(nullptr)},
            {"day", basics::iso(move.day)},
            {"method", name(move.method)},
            {"for",
             {{"day", basics::iso(move.for_day)},
              {"meal", name(move.for_meal)},
              {"dish", move.for_dish ? Json(kitchen.cookbook()[*move.for_dish].id) : Json(nullptr)}}},
            {"cook_by", basics::iso(move.cook_by)},
            {"cautions", Json::array()}};
}

Json json(const ask::TonightAnswer& answer, const kitchen::Kitchen& kitchen) {
    const auto& catalogue = kitchen.catalogue();
    const auto meal = [&](const ask::MealTonight& m) {
        return Json{{"dish", kitchen.cookbook()[m.dish].id},
                    {"label", kitchen.cookbook()[m.dish].name},
                    {"ready_meal", m.ready_meal},
                    {"serves", json_serves(m.serves_thousandths)},
                    {"minutes", m.ready_meal ? Json(nullptr) : Json(m.minutes)},
                    {"swaps", detail::swaps_json(m.swaps, kitchen)}};
    };
    const auto danger = [&](const std::vector<ask::InDanger>& rows) {
        Json list = Json::array();
        for (const auto& d : rows) {
            const auto& thing = catalogue[d.ingredient];
            list.push_back({{"ingredient", thing.id},
                            {"label", thing.name},
                            {"lot", d.lot},
                            {"amount", json_amount(d.amount, thing)},
                            {"price", json_money(d.price, kitchen)},
                            {"by", basics::iso(d.by)},
                            {"limit", d.use_by ? "use-by" : "best-by"}});
        }
        return list;
    };
    Json lunches = Json::array();
    for (const auto& lunch : answer.lunches) lunches.push_back(meal(lunch));
    Json moves = Json::array();
    for (const auto& move : answer.take_out) moves.push_back(json(move, kitchen));
    Json lacking = Json::array();
    for (const auto& s : answer.short_of) {
        const auto& thing = catalogue[s.ingredient];
        lacking.push_back({{"ingredient", thing.id},
                           {"label", thing.name},
                           {"amount", json_amount(s.amount, thing)},
                           {"day", basics::iso(s.day)},
                           {"dish", s.dish ? Json(kitchen.cookbook()[*s.dish].id) : Json(nullptr)}});
    }
    Json soaked = Json::array();
    for (const auto id : answer.soak) soaked.push_back(kitchen.catalogue()[id].id);
    return {{"day", basics::iso(answer.day)},
            {"dinner", answer.dinner ? meal(*answer.dinner) : Json(nullptr)},
            {"cooked", answer.cooked ? Json(kitchen.cookbook()[*answer.cooked].id) : Json(nullptr)},
            {"tomorrow", answer.tomorrow ? meal(*answer.tomorrow) : Json(nullptr)},
            {"soak", std::move(soaked)},
            {"occasion", answer.occasion.empty() ? Json(nullptr) : Json(answer.occasion)},
            {"guests", answer.guests},
            {"standing_kind", answer.standing_kind ? Json(*answer.standing_kind) : Json(nullptr)},
            {"eaters", answer.eaters},
            {"lunches", std::move(lunches)},
            {"take_out", std::move(moves)},
            {"use_first", danger(answer.use_first)},
            {"short", std::move(lacking)},
            {"past_use_by", danger(answer.past)},
            {"shopping", json_day(answer.shopping)},
            {"cautions", answer.cautions}};
}

}  // namespace samebase::show
