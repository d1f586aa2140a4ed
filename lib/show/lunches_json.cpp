#include "basics/ranges.hpp"
#include "show/detail/parts.hpp"
#include "show/lunches.hpp"
#include "show/tonight.hpp"

namespace samebase::show {

namespace {

Json lines(const std::vector<ask::LunchBecause>& all, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    for (const auto& line : all) list.push_back(detail::because_json(line, kitchen));
    return list;
}

Json text_or_null(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

Json lunch(const ask::Lunch& one, const kitchen::Kitchen& kitchen) {
    return {{"person", kitchen.household.people[one.person].id},
            {"lunch", one.dish ? Json(kitchen.cookbook()[*one.dish].id) : Json(nullptr)},
            {"label", one.dish ? Json(kitchen.cookbook()[*one.dish].name) : Json(nullptr)},
            {"kind", name(one.kind)},
            {"serves", 1},
            {"from_lot", one.from_lot > 0 ? Json(one.from_lot) : Json(nullptr)},
            {"made", json_day(one.made)},
            {"use_by", json_day(one.use_by)},
            {"because", lines(one.because, kitchen)},
            {"reason", text_or_null(one.reason)}};
}

Json standing(const ask::LunchStanding& seat, const kitchen::Kitchen& kitchen) {
    return {{"person", kitchen.household.people[seat.person].id},
            {"lunch", kitchen.cookbook()[seat.dish].id},
            {"label", kitchen.cookbook()[seat.dish].name},
            {"ready_meal", seat.ready_meal}};
}

Json cooked(const ask::LunchCooked& one, const kitchen::Kitchen& kitchen) {
    const auto& dish = kitchen.cookbook()[one.dish];
    Json people = Json::array();
    for (const std::size_t person : one.eaters) people.push_back(kitchen.household.people[person].id);
    Json saves = Json::array();
    for (const auto& [id, amount] : one.saves) {
        const auto& thing = kitchen.catalogue()[id];
        saves.push_back({{"ingredient", thing.id}, {"label", thing.name}, {"amount", json_amount(amount, thing)}});
    }
    return {{"dish", dish.id},
            {"label", dish.name},
            {"serves", json_serves(one.cooking.serves_thousandths)},
            {"minutes", dish.minutes},
            {"for", std::move(people)},
            {"saves", std::move(saves)},
            {"swaps", detail::swaps_json(one.swaps, kitchen)},
            {"cautions", one.cautions}};
}

Json days(const ask::LunchesAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    for (const basics::Day day : basics::days_of(answer.span)) {
        Json open = Json::array();
        Json planned = Json::array();
        Json cook = Json::array();
        for (const auto& one : answer.lunches) {
            if (one.day == day) open.push_back(lunch(one, kitchen));
        }
        for (const auto& seat : answer.standing) {
            if (seat.day == day) planned.push_back(standing(seat, kitchen));
        }
        for (const auto& one : answer.cooked) {
            if (one.day == day) cook.push_back(cooked(one, kitchen));
        }
        list.push_back({{"day", json_day(day)},
                        {"for", std::move(open)},
                        {"planned", std::move(planned)},
                        {"cook", std::move(cook)}});
    }
    return list;
}

}  // namespace

nlohmann::ordered_json json(const ask::LunchesAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json larger = Json::array();
    for (const auto& dinner : answer.larger) {
        const auto& dish = kitchen.cookbook()[dinner.dish];
        larger.push_back(
            {{"day", json_day(dinner.day)}, {"dish", dish.id}, {"label", dish.name}, {"more", dinner.more}});
    }
    Json moves = Json::array();
    for (const auto& move : answer.take_out) moves.push_back(json(move, kitchen));
    Json buys = Json::array();
    for (const auto& buy : answer.to_buy) buys.push_back(detail::purchase_json(buy, kitchen));
    Json result = detail::optimised_json(answer, kitchen);
    result.update({{"days", days(answer, kitchen)},
                   {"larger", std::move(larger)},
                   {"take_out", std::move(moves)},
                   {"to_buy", std::move(buys)},
                   {"because", lines(answer.because, kitchen)},
                   {"all_bought", json_money(answer.all_bought, kitchen)},
                   {"spent", json_money(answer.spent, kitchen)},
                   {"saved", json_money(answer.saved, kitchen)},
                   {"extra_bin", json_money(answer.extra_bin, kitchen)},
                   {"greedy", json_money(answer.greedy, kitchen)},
                   {"stopped", answer.stopped},
                   {"cautions", answer.cautions},
                   {"notes", answer.notes}});
    return result;
}

}  // namespace samebase::show
