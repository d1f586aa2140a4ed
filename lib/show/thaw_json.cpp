#include <array>

#include "show/detail/thawing.hpp"
#include "show/json.hpp"
#include "show/thaw.hpp"
#include "show/tonight.hpp"

namespace samebase::show {

namespace {

Json meal(basics::Day day, kitchen::Meal meal, std::optional<cookbook::DishId> dish, const kitchen::Kitchen& kitchen) {
    return {{"day", json_day(day)},
            {"meal", name(meal)},
            {"dish", dish ? Json(kitchen.cookbook()[*dish].id) : Json(nullptr)}};
}

Json row(const ask::TakeOut& out, const kitchen::Kitchen& kitchen) {
    Json row = json(out.move, kitchen);
    row["minutes"] = out.minutes > 0 ? Json(out.minutes) : Json(nullptr);
    row["late"] = out.late;
    row["cautions"] = out.cautions;
    return row;
}

Json late_row(const ask::TooLate& late, const kitchen::Kitchen& kitchen, basics::Day today) {
    constexpr std::array<const char*, 4> ways{"cold-water", "microwave", "mend", "other-dish"};
    const auto& thing = kitchen.catalogue()[late.ingredient];
    return {{"ingredient", thing.id},
            {"label", thing.name},
            {"amount", json_amount({thing.dimension, late.amount}, thing)},
            {"lot", late.lot > 0 ? Json(late.lot) : Json(nullptr)},
            {"for", meal(late.day, late.meal, late.dish, kitchen)},
            {"instead", ways[static_cast<std::size_t>(late.instead)]},
            {"text", detail::words(late, kitchen, today)},
            {"command", detail::command(late, kitchen)}};
}

}  // namespace

nlohmann::ordered_json json(const ask::ThawAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    Json moves = Json::array();
    for (const auto& out : answer.moves) moves.push_back(row(out, kitchen));
    Json late = Json::array();
    for (const auto& one : answer.late) late.push_back(late_row(one, kitchen, today));
    Json frozen = Json::array();
    for (const auto& use : answer.from_frozen) {
        const auto& thing = kitchen.catalogue()[use.ingredient];
        frozen.push_back({{"lot", use.lot},
                          {"ingredient", thing.id},
                          {"label", thing.name},
                          {"amount", json_amount({thing.dimension, use.amount}, thing)},
                          {"from", kitchen.place(use.from).id},
                          {"for", meal(use.day, use.meal, use.dish, kitchen)}});
    }
    return {{"from", json_day(answer.span.first)}, {"to", json_day(answer.span.last)},
            {"moves", std::move(moves)},           {"late", std::move(late)},
            {"from_frozen", std::move(frozen)},    {"cautions", answer.cautions}};
}

}  // namespace samebase::show
