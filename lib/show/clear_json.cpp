#include "basics/ranges.hpp"
#include "show/clear.hpp"
#include "show/detail/parts.hpp"

namespace samebase::show {

namespace {

Json lines(const std::vector<ask::ClearBecause>& all, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    for (const auto& line : all) list.push_back(detail::because_json(line, kitchen));
    return list;
}

Json meal(const ask::ClearMeal& chosen, const kitchen::Kitchen& kitchen) {
    const auto& dish = kitchen.cookbook()[chosen.dish];
    Json stand_ins = Json::array();
    for (const auto& use : chosen.stand_ins) stand_ins.push_back(detail::stand_in_json(use, kitchen));
    Json saves = Json::array();
    for (const auto& [id, amount] : chosen.saves) {
        const auto& thing = kitchen.catalogue()[id];
        saves.push_back({{"ingredient", thing.id}, {"label", thing.name}, {"amount", json_amount(amount, thing)}});
    }
    return {{"dish", dish.id},
            {"label", dish.name},
            {"ready_meal", chosen.ready_meal},
            {"serves", json_serves(chosen.cooking.serves_thousandths)},
            {"saves", std::move(saves)},
            {"stand_ins", std::move(stand_ins)},
            {"scaled", detail::scaled_json(chosen.scaled, kitchen)},
            {"because", lines(chosen.because, kitchen)},
            {"instead_of", chosen.instead_of ? Json(kitchen.cookbook()[*chosen.instead_of].id) : Json(nullptr)},
            {"cautions", chosen.cautions}};
}

/// A row for each day: the dinner and the lunches by their dish, and each in full beside.
Json days(const ask::ClearAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    for (const basics::Day day : basics::days_of(answer.span)) {
        Json dinner = nullptr;
        Json lunches = Json::array();
        Json all = Json::array();
        Json meals = Json::array();
        for (const auto& chosen : answer.meals) {
            if (chosen.day != day) continue;
            const auto& id = kitchen.cookbook()[chosen.dish].id;
            if (chosen.meal == kitchen::Meal::dinner) {
                dinner = id;
            } else {
                lunches.push_back(id);
            }
            Json row = meal(chosen, kitchen);
            row["meal"] = name(chosen.meal);
            for (const auto& line : chosen.because) all.push_back(detail::because_json(line, kitchen));
            meals.push_back(std::move(row));
        }
        list.push_back({{"day", json_day(day)},
                        {"dinner", std::move(dinner)},
                        {"lunches", std::move(lunches)},
                        {"because", std::move(all)},
                        {"meals", std::move(meals)}});
    }
    return list;
}

Json bin(const ask::ClearBin& row, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[row.ingredient];
    Json way = nullptr;
    if (row.way == ask::LastWay::freeze) way = "freeze";
    if (row.way == ask::LastWay::pickle) way = "pickle";
    return {{"ingredient", thing.id},
            {"label", thing.name},
            {"amount", json_amount(row.amount, thing)},
            {"price", json_money(row.price, kitchen)},
            {"by", json_day(row.by)},
            {"use_by", row.use_by},
            {"rest", row.part_of},
            {"reason", row.reason},
            {"costs_more", row.costs_more ? json_money(*row.costs_more, kitchen) : Json(nullptr)},
            {"last_way", std::move(way)},
            {"freezer_days", row.way == ask::LastWay::freeze ? Json(row.freezer_days) : Json(nullptr)}};
}

}  // namespace

nlohmann::ordered_json json(const ask::ClearAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json buys = Json::array();
    for (const auto& buy : answer.to_buy) buys.push_back(detail::purchase_json(buy, kitchen));
    Json bins = Json::array();
    for (const auto& row : answer.bin) bins.push_back(bin(row, kitchen));
    Json empty = Json::array();
    for (const auto& row : answer.empty) {
        empty.push_back({{"day", json_day(row.day)}, {"meal", name(row.meal)}, {"reason", row.reason}});
    }
    Json result = detail::optimised_json(answer, kitchen);
    result.update({{"days", days(answer, kitchen)},
                   {"empty", std::move(empty)},
                   {"because", lines(answer.because, kitchen)},
                   {"to_buy", std::move(buys)},
                   {"in_danger", json_money(answer.danger, kitchen)},
                   {"saved", json_money(answer.saved, kitchen)},
                   {"bin", std::move(bins)},
                   {"extra_bin", json_money(answer.extra_bin, kitchen)},
                   {"greedy", json_money(answer.greedy, kitchen)},
                   {"stopped", answer.stopped},
                   {"notes", answer.notes}});
    return result;
}

}  // namespace samebase::show
