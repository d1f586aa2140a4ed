#include "show/balance.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

Json row_json(const flow::LedgerRow& row, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[row.ingredient];
    const auto cell = [&](std::int64_t value) { return json_amount({thing.dimension, value}, thing); };
    return {{"ingredient", thing.id},      {"place", nullptr},
            {"day", basics::iso(row.day)}, {"opening", cell(row.opening)},
            {"bought", cell(row.bought)},  {"made", cell(row.made)},
            {"moved_in", cell(0)},         {"used", cell(row.used)},
            {"tossed", cell(row.tossed)},  {"moved_out", cell(0)},
            {"closing", cell(row.closing)}};
}

Json finding_json(const flow::Finding& finding, const std::optional<ask::Mend>& mend, const kitchen::Kitchen& kitchen,
                  basics::Day today) {
    const auto& thing = kitchen.catalogue()[finding.ingredient];
    Json mended = nullptr;
    if (mend) {
        Json tossed = Json::array();
        for (const auto& [id, price] : mend->then_tossed)
            tossed.push_back({{"ingredient", kitchen.catalogue()[id].id}, {"price", json_money(price, kitchen)}});
        Json use = Json::array();
        for (const auto& [id, amount] : mend->use) {
            const auto& used = kitchen.catalogue()[id];
            use.push_back({{"ingredient", used.id}, {"amount", json_amount(amount, used)}});
        }
        mended = {{"text", words(*mend, kitchen, today)},
                  {"command", command(*mend, kitchen)},
                  {"net", json_money(mend->net, kitchen)},
                  {"displaces", mend->displaces ? Json(kitchen.cookbook()[*mend->displaces].id) : Json(nullptr)},
                  {"then_tossed", std::move(tossed)},
                  {"use", std::move(use)},
                  {"checked", true}};
    }
    return {{"kind", flow::name(finding.kind)},
            {"day", basics::iso(finding.day)},
            {"ingredient", thing.id},
            {"label", thing.name},
            {"lot", finding.lot == 0 ? Json(nullptr) : Json(finding.lot)},
            {"amount", json_amount({thing.dimension, finding.amount}, thing)},
            {"price", json_money(finding.price, kitchen)},
            {"dish", finding.dish ? Json(kitchen.cookbook()[*finding.dish].id) : Json(nullptr)},
            {"place", finding.place ? Json(kitchen.place(*finding.place).id) : Json(nullptr)},
            {"over_millilitres", finding.place ? Json(finding.over_ml) : Json(nullptr)},
            {"mend", std::move(mended)}};
}

}  // namespace

Json json(const ask::BalanceAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    Json ledger = Json::array();
    for (const auto& row : answer.rows) ledger.push_back(row_json(row, kitchen));
    Json findings = Json::array();
    for (std::size_t i = 0; i < answer.findings.size(); ++i)
        findings.push_back(finding_json(answer.findings[i], answer.mends[i], kitchen, today));
    Json to_freeze = Json::array();
    for (const ask::ToFreeze& one : answer.to_freeze) {
        const auto& thing = kitchen.catalogue()[one.ingredient];
        to_freeze.push_back({{"day", basics::iso(one.day)},
                             {"ingredient", thing.id},
                             {"amount", json_amount(one.amount, thing)},
                             {"eaten_on", json_day(one.eaten_on)}});
    }
    return {{"from", basics::iso(answer.span.first)},
            {"to", basics::iso(answer.span.last)},
            {"balanced", answer.findings.empty()},
            {"to_buy", json_money(answer.totals.spent, kitchen)},
            {"for_the_bin", json_money(answer.totals.tossed, kitchen)},
            {"unmet", json_money(answer.totals.unmet, kitchen)},
            {"kept", json_money(answer.totals.kept, kitchen)},
            {"to_freeze", std::move(to_freeze)},
            {"ledger", std::move(ledger)},
            {"findings", std::move(findings)}};
}

}  // namespace samebase::show
