#include <algorithm>
#include <cmath>

#include "show/carry.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

Json litres(std::int64_t ml) {
    return {{"value", ml}, {"unit", "mL"}};
}

Json walks(int count) {
    return {{"value", count}, {"unit", "1"}};
}

Json row(const ask::Carried& carried, const ask::CarryAnswer& answer, const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[carried.ingredient];
    const bool thaws_now = carried.straight && carried.thaws;
    Json to = nullptr;
    if (thaws_now && answer.fridge) to = kitchen.place(*answer.fridge).id;
    if (!carried.straight && answer.near) to = kitchen.place(*answer.near).id;
    return {{"lot", carried.lot},
            {"ingredient", thing.id},
            {"label", kitchen::label(kitchen, carried.ingredient, carried.cooked_as)},
            {"amount", json_amount({thing.dimension, carried.amount}, thing)},
            {"packs", carried.packs},
            {"room", litres(carried.room_ml)},
            {"from", kitchen.place(carried.from).id},
            {"to", std::move(to)},
            {"day", json_day(carried.day)},
            {"need", json_day(carried.need)},
            {"method", thaws_now ? Json(name(carried.method)) : Json(nullptr)},
            {"for",
             {{"day", json_day(carried.for_day)},
              {"meal", name(carried.for_meal)},
              {"dish", carried.for_dish ? Json(kitchen.cookbook()[*carried.for_dish].id) : Json(nullptr)}}},
            {"cook_by", thaws_now ? json_day(carried.cook_by) : Json(nullptr)},
            {"cautions", carried.cautions}};
}

}  // namespace

nlohmann::ordered_json json(const ask::CarryAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json trips = Json::array();
    Json moves = Json::array();
    for (const auto& walk : answer.walks) {
        int packs = 0;
        for (const auto& carried : walk.brings) {
            packs += std::max(1, carried.packs);
            moves.push_back(row(carried, answer, kitchen));
        }
        trips.push_back({{"day", json_day(walk.day)},
                         {"from", kitchen.place(walk.from).id},
                         {"packs", packs},
                         {"room", litres(walk.room_ml())}});
    }
    const bool fills = answer.room_ml && !answer.walks.empty();
    return {{"value", walks(static_cast<int>(answer.walks.size()))},
            {"bound", walks(answer.bound)},
            {"proved_best", answer.proved_best()},
            {"gap", std::round(answer.gap() * 1e6) / 1e6},
            {"from", json_day(answer.span.first)},
            {"to", json_day(answer.span.last)},
            {"near", answer.near ? Json(kitchen.place(*answer.near).id) : Json(nullptr)},
            {"near_room", answer.room_ml ? litres(*answer.room_ml) : Json(nullptr)},
            {"fullest",
             fills ? Json{{"day", json_day(answer.fullest)}, {"room", litres(answer.fullest_ml)}} : Json(nullptr)},
            {"walks", std::move(trips)},
            {"moves", std::move(moves)},
            {"notes", answer.notes}};
}

}  // namespace samebase::show
