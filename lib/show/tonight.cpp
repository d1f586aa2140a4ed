#include "show/tonight.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "kitchen/changes.hpp"
#include "show/detail/parts.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t most_rows = 7;

/// " with tasty cheese for cheddar", or nothing.
std::string with(std::span<const kitchen::LineSwap> swaps, const kitchen::Kitchen& kitchen) {
    return swaps.empty() ? std::string() : " with " + kitchen::describe(kitchen, swaps);
}

std::string dinner_sentence(const ask::TonightAnswer& answer, const kitchen::Kitchen& kitchen) {
    if (answer.dinner) {
        const auto& dish = kitchen.cookbook()[answer.dinner->dish];
        const std::string time =
            answer.dinner->ready_meal ? "a ready meal" : fmt::format("{} minutes", answer.dinner->minutes);
        return fmt::format("Tonight: {}{}, {}, for {}.", dish.name, with(answer.dinner->swaps, kitchen), time,
                           answer.eaters.empty() ? "nobody home" : listed(answer.eaters));
    }
    if (answer.eaters.empty()) return "Nobody is home for dinner tonight, and nothing is planned.";
    const std::string kind = answer.standing_kind ? fmt::format(" It is {} night.", *answer.standing_kind) : "";
    return fmt::format("Nothing is planned for tonight, for {}.{}", listed(answer.eaters), kind);
}

template <class Row, class Words>
void section(std::string& out, const std::string& head, const std::vector<Row>& rows, const Words& words_of,
             const Manner& manner) {
    if (rows.empty()) return;
    out += head + "\n";
    const std::size_t shown = manner.all ? rows.size() : std::min(rows.size(), most_rows);
    for (std::size_t i = 0; i < shown; ++i) out += wrapped("  " + words_of(rows[i]), 4) + "\n";
    if (shown < rows.size()) out += fmt::format("  ... {} more: --all\n", rows.size() - shown);
}

}  // namespace

std::string words(const flow::ThawMove& move, const kitchen::Kitchen& kitchen, basics::Day today) {
    const auto& thing = kitchen.catalogue()[move.ingredient];
    const std::string quantity = amount({thing.dimension, move.amount}, thing);
    const std::string packs = thing.in_serves ? "" : fmt::format("{} pack{}, ", move.packs, move.packs == 1 ? "" : "s");
    const std::string dish = move.for_dish ? kitchen.cookbook()[*move.for_dish].name : "its use";
    const std::string how = move.method == stock::ThawMethod::fridge
                                ? "to the fridge"
                                : "into cold water now (changed every 30 minutes), to be cooked at once";
    return fmt::format("{} ({}{}) from the {} {}, for {} {}; cook by {}", thing.name, packs, quantity,
                       kitchen.place(move.from).name, how, dish, day(move.for_day, today), day(move.cook_by, today));
}

std::string text(const ask::TonightAnswer& answer, const kitchen::Kitchen& kitchen, const Manner& manner) {
    const basics::Day today = answer.day;
    const auto& catalogue = kitchen.catalogue();
    std::string out = wrapped(dinner_sentence(answer, kitchen)) + "\n";
    for (const auto& lunch : answer.lunches) {
        out +=
            wrapped(fmt::format("Lunch: {}{}.", kitchen.cookbook()[lunch.dish].name, with(lunch.swaps, kitchen)), 2) +
            "\n";
    }
    section(
        out, "Throw out, past its use-by:", answer.past,
        [&](const ask::InDanger& d) {
            return fmt::format("{} {} (use-by {})", amount(d.amount, catalogue[d.ingredient]),
                               catalogue[d.ingredient].name, day(d.by, today));
        },
        manner);
    section(
        out, "Take out now:", answer.take_out, [&](const flow::ThawMove& move) { return words(move, kitchen, today); },
        manner);
    section(
        out, "Use first, nothing planned eats it in time:", answer.use_first,
        [&](const ask::InDanger& d) {
            return fmt::format("{} {}, {} {} ({})", amount(d.amount, catalogue[d.ingredient]),
                               catalogue[d.ingredient].name, d.use_by ? "use by" : "best by", day(d.by, today),
                               money(d.price, kitchen.household.currency));
        },
        manner);
    const std::string before =
        answer.shopping ? fmt::format("Short, before shopping {}:", on_day(*answer.shopping, today)) : "Short:";
    section(
        out, before, answer.short_of,
        [&](const ask::Short& s) {
            return fmt::format("{} {} for {} {}", amount(s.amount, catalogue[s.ingredient]),
                               catalogue[s.ingredient].name, s.dish ? kitchen.cookbook()[*s.dish].name : "standing use",
                               day(s.day, today));
        },
        manner);
    for (const std::string& caution : answer.cautions) out += wrapped("! " + caution, 2) + "\n";
    if (answer.take_out.empty() && answer.use_first.empty() && answer.short_of.empty() && answer.past.empty()) {
        out += "Nothing to take out, nothing in danger, nothing short.\n";
    }
    out += "Local food-safety advice and labels come first.\n";
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
    return {{"day", basics::iso(answer.day)},
            {"dinner", answer.dinner ? meal(*answer.dinner) : Json(nullptr)},
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
