#include "show/detail/parts.hpp"
#include "show/else.hpp"

namespace samebase::show {

namespace {

Json use(const ask::LotUse& used, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[used.ingredient];
    return {{"ingredient", thing.id},
            {"label", thing.name},
            {"lot", used.lot},
            {"amount", json_amount(used.amount, thing)},
            {"state", name(used.state)},
            {"use_by", json_day(used.use_by)},
            {"best_by", json_day(used.best_by)},
            {"use_first", used.use_first}};
}

Json alternative(const ask::Alternative& a, const kitchen::Kitchen& kitchen) {
    Json lines = Json::array();
    for (const auto& line : a.because) lines.push_back(detail::because_json(line, kitchen));
    Json uses = Json::array();
    for (const auto& used : a.uses) uses.push_back(use(used, kitchen));
    Json stand_ins = Json::array();
    for (const auto& used : a.stand_ins) stand_ins.push_back(detail::stand_in_json(used, kitchen));
    Json to_buy = Json::array();
    for (const auto& buy : a.to_buy) to_buy.push_back(detail::purchase_json(buy, kitchen));
    Json lacks = Json::array();
    for (const auto& [id, amount] : a.lacks) {
        const auto& thing = kitchen.catalogue()[id];
        lacks.push_back({{"ingredient", thing.id}, {"label", thing.name}, {"amount", json_amount(amount, thing)}});
    }
    Json leaves = Json::array();
    for (const auto& leaving : a.leaves) {
        const auto& thing = kitchen.catalogue()[leaving.ingredient];
        leaves.push_back({{"ingredient", thing.id},
                          {"label", thing.name},
                          {"serves", json_serves(leaving.serves_thousandths)},
                          {"use_by", json_day(leaving.use_by)}});
    }
    const auto& dish = kitchen.cookbook()[a.dish];
    const auto thousandths = a.likeness / 1000;
    return {{"dish", dish.id},
            {"label", a.label},
            {"ready_meal", a.ready_meal},
            {"needs_trip", a.needs_trip},
            {"same_base", a.same_base},
            {"likeness", static_cast<double>(thousandths) / 1000},
            {"minutes", a.ready_meal ? Json(nullptr) : Json(dish.minutes)},
            {"worth", json_money(a.worth, kitchen)},
            {"because", std::move(lines)},
            {"uses", std::move(uses)},
            {"stand_ins", std::move(stand_ins)},
            {"scaled", detail::scaled_json(a.scaled, kitchen)},
            {"to_buy", std::move(to_buy)},
            {"lacks", std::move(lacks)},
            {"leaves", std::move(leaves)},
            {"cautions", a.cautions}};
}

}  // namespace

Json json(const ask::ElseAnswer& answer, const kitchen::Kitchen& kitchen) {
    const auto dish = [&](const std::optional<cookbook::DishId>& id) {
        return id ? Json(kitchen.cookbook()[*id].id) : Json(nullptr);
    };
    Json alternatives = Json::array();
    for (const auto& a : answer.alternatives) alternatives.push_back(alternative(a, kitchen));
    Json used = Json::array();
    for (const auto& of : answer.used) used.push_back(kitchen.catalogue().slug(of));
    return {{"question",
             {{"day", basics::iso(answer.question.day)},
              {"using", std::move(used)},
              {"kind", answer.question.kind.empty() ? Json(nullptr) : Json(answer.question.kind)},
              {"lot", answer.question.lot ? Json(*answer.question.lot) : Json(nullptr)},
              {"instead_of", dish(answer.question.instead_of)},
              {"planned", dish(answer.planned)},
              {"serves", json_serves(answer.serves_thousandths)},
              {"left", answer.question.left},
              {"horizon", basics::iso(answer.horizon)}}},
            {"with_trip", answer.with_trip},
            {"alternatives", std::move(alternatives)}};
}

Json json(const ask::WhyNot& answer, const kitchen::Kitchen& kitchen) {
    return {{"dish", kitchen.cookbook()[answer.dish].id},
            {"label", kitchen.cookbook()[answer.dish].name},
            {"ruled_out_by", answer.reasons},
            {"position", answer.position ? Json(*answer.position + 1) : Json(nullptr)},
            {"alternative", answer.alternative ? alternative(*answer.alternative, kitchen) : Json(nullptr)}};
}

}  // namespace samebase::show
