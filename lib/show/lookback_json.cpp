#include "show/json.hpp"
#include "show/lookback.hpp"

namespace samebase::show {

namespace {

Json of(const ask::HadBy& what, const kitchen::Kitchen& kitchen) {
    if (const auto* dish = std::get_if<cookbook::DishId>(&what))
        return {{"kind", "dish"}, {"id", kitchen.cookbook()[*dish].id}, {"label", kitchen.cookbook()[*dish].name}};
    if (const auto* base = std::get_if<cookbook::BaseId>(&what))
        return {{"kind", "base"}, {"id", kitchen.cookbook()[*base].id}, {"label", kitchen.cookbook()[*base].name}};
    const auto& family = kitchen.catalogue()[std::get<catalogue::FamilyId>(what)];
    return {{"kind", "family"}, {"id", family.id}, {"label", family.name}};
}

Json list_of(const std::vector<ask::LastHad>& list, const kitchen::Kitchen& kitchen) {
    Json rows = Json::array();
    for (const ask::LastHad& one : list) {
        Json row = of(one.what, kitchen);
        row["last"] = basics::iso(one.last);
        row["times"] = one.times;
        rows.push_back(std::move(row));
    }
    return rows;
}

Json when_of(const ask::WhenOf& what, const kitchen::Kitchen& kitchen) {
    if (const auto* any = std::get_if<ask::AnyOf>(&what))
        return {{"kind", "ingredients"}, {"id", nullptr}, {"label", any->words}};
    if (const auto* family = std::get_if<catalogue::FamilyId>(&what)) return of(*family, kitchen);
    if (const auto* base = std::get_if<cookbook::BaseId>(&what)) return of(*base, kitchen);
    return of(std::get<cookbook::DishId>(what), kitchen);
}

}  // namespace

Json json(const ask::LookbackAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json months = Json::array();
    for (const auto& month : answer.months) {
        months.push_back({{"from", basics::iso(month.first)},
                          {"dinners", month.dinners},
                          {"spent", json_money(month.spent, kitchen)},
                          {"estimated", json_money(month.estimated, kitchen)},
                          {"tossed", json_money(month.tossed, kitchen)}});
    }
    Json tossed = Json::array();
    for (const ask::TossedFor& one : answer.tossed_for) {
        Json things = Json::array();
        for (const auto id : one.things) things.push_back(kitchen.catalogue()[id].id);
        tossed.push_back({{"reason", one.reason.empty() ? Json(nullptr) : Json(one.reason)},
                          {"price", json_money(one.money, kitchen)},
                          {"ingredients", std::move(things)}});
    }
    return {{"from", basics::iso(answer.span.first)},
            {"to", basics::iso(answer.span.last)},
            {"dinners", answer.dinners},
            {"spent", json_money(answer.spent, kitchen)},
            {"estimated", json_money(answer.estimated, kitchen)},
            {"tossed", json_money(answer.tossed, kitchen)},
            {"not_lately",
             {{"dishes", list_of(answer.dishes, kitchen)},
              {"bases", list_of(answer.bases, kitchen)},
              {"families", list_of(answer.families, kitchen)}}},
            {"most", list_of(answer.most, kitchen)},
            {"by", answer.by_year ? "year" : "month"},
            {"months", std::move(months)},
            {"tossed_for", std::move(tossed)},
            {"saved",
             {{"lunches", answer.saved.lunches},
              {"lunches_by", json_money(answer.saved.lunches_by, kitchen)},
              {"rescued", json_money(answer.saved.rescued, kitchen)}}}};
}

Json json(const ask::WhenAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json had = Json::array();
    for (const kitchen::Had& one : answer.had) {
        had.push_back({{"day", basics::iso(one.day)},
                       {"meal", kitchen::name(one.meal)},
                       {"dish", kitchen.cookbook()[one.dish].id},
                       {"label", kitchen.cookbook()[one.dish].name}});
    }
    Json planned = Json::array();
    for (const basics::Day day : answer.planned) planned.push_back(basics::iso(day));
    return {{"of", when_of(answer.of, kitchen)}, {"had", std::move(had)}, {"planned", std::move(planned)}};
}

}  // namespace samebase::show
