#include "ask/list.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include "kitchen/shelf.hpp"

namespace samebase::ask {

namespace {

using catalogue::IngredientId;

/// The packs of one component that are bought on that day of the balance.
int packs_on(const flow::Part& part, int day) {
    int packs = 0;
    if (!part.component.offer) return packs;
    const auto& slots = part.component.offer->slots;
    for (std::size_t i = 0; i < slots.size() && i < part.outcome.decisions.packs.size(); ++i) {
        if (flow::day_of(slots[i]) == day) packs += part.outcome.decisions.packs[i];
    }
    return packs;
}

std::vector<BoughtFor> uses_of(const flow::Part& part, basics::Day first, int from_day) {
    std::vector<BoughtFor> list;
    for (const flow::Use& use : part.outcome.uses) {
        const flow::Fate& fate = part.outcome.fates[static_cast<std::size_t>(use.unit)];
        if (!fate.bought || flow::day_of(fate.unit.first) != from_day) continue;
        const auto want = static_cast<std::size_t>(use.want);
        const BoughtFor one{part.reasons[want].dish,
                            first + basics::days{flow::day_of(part.component.wants[want].slot)}};
        const bool there =
            std::any_of(list.begin(), list.end(), [&](const BoughtFor& b) { return b.dish == one.dish; });
        if (!there) list.push_back(one);
    }
    std::stable_sort(list.begin(), list.end(), [](const BoughtFor& a, const BoughtFor& b) { return a.day < b.day; });
    return list;
}

/// Whether its first meal comes when it no longer keeps in the fridge.
bool freeze_it(const catalogue::Ingredient& thing, const std::vector<BoughtFor>& for_what, basics::Day trip) {
    const auto& fridge = thing.keeps[static_cast<std::size_t>(catalogue::Keep::fridge)];
    if (for_what.empty() || fridge.said != catalogue::Keeping::Said::time) return false;
    return fridge.time.limit == catalogue::Limit::use_by &&
           for_what.front().day > trip + basics::days{fridge.time.days};
}

/// A little on top of the dish: at most this much a serve, in milligrams or microlitres.
constexpr std::int64_t a_little = 5000;

/// Whether the dish needs it for no more than a little on top.
bool only_on_top(const cookbook::Dish& dish, IngredientId id, measure::Dimension dimension) {
    std::int64_t amount = 0;
    for (const cookbook::DishIngredient& line : dish.ingredients) {
        if (line.ingredient != id) continue;
        if (line.role != catalogue::Role::topping || dimension == measure::Dimension::pieces) return false;
        amount += line.amount.value();
    }
    return amount > 0 && amount <= a_little * dish.serves;
}

bool a_garnish(const kitchen::Kitchen& kitchen, const ListItem& item) {
    return !item.for_what.empty() && std::all_of(item.for_what.begin(), item.for_what.end(), [&](const BoughtFor& b) {
        return b.dish && only_on_top(kitchen.cookbook()[*b.dish], item.ingredient, item.amount.dimension());
    });
}

/// So many packs as they are sold; without packs where that is not known.
ListItem whole_packs(const kitchen::Kitchen& kitchen, IngredientId id, int packs) {
    const auto& thing = kitchen.catalogue()[id];
    ListItem item;
    item.ingredient = id;
    item.amount = {thing.dimension, 0};
    if (!thing.pack) return item;
    item.packs = packs;
    item.amount = {thing.dimension, thing.pack->amount.value() * packs};
    item.price =
        kitchen::price(kitchen, id, item.amount.value()).value_or(basics::Money{thing.pack->price.minor * packs});
    return item;
}

/// What the planned meals and the standing uses lack, that is bought on the trip.
std::vector<ListItem> for_the_plan(const kitchen::Kitchen& kitchen, basics::Day today, basics::Day trip,
                                   std::optional<basics::Day> next) {
    constexpr basics::days furthest{28};
    const basics::Day last = std::min(next.value_or(trip + basics::days{7}), trip + furthest);
    const flow::Balancer balancer(kitchen, {today, last});
    const flow::Balance balance = balancer.balance(balancer.planned());
    const int trip_day = static_cast<int>((trip - today).count());
    std::vector<ListItem> items;
    for (const auto& part : balance.parts) {
        const int packs = packs_on(*part, trip_day);
        if (packs == 0) continue;
        const IngredientId id = part->component.ingredient;
        const flow::Offer& offer = *part->component.offer;
        ListItem item = whole_packs(kitchen, id, packs);
        item.amount = {kitchen.catalogue()[id].dimension, offer.pack * packs};
        item.price = basics::Money{offer.price.minor * packs};
        item.for_what = uses_of(*part, today, trip_day);
        item.to_freeze = freeze_it(kitchen.catalogue()[id], item.for_what, trip);
        item.garnish = a_garnish(kitchen, item);
        items.push_back(std::move(item));
    }
    return items;
}

ListItem& item_of(std::vector<ListItem>& items, ListItem other) {
    const auto known = std::find_if(items.begin(), items.end(),
                                    [&](const ListItem& item) { return item.ingredient == other.ingredient; });
    if (known == items.end()) return items.emplace_back(std::move(other));
    if (other.packs > known->packs) {
        known->packs = other.packs;
        known->amount = other.amount;
        known->price = other.price;
    }
    return *known;
}

/// What ran out and what was put on the list by hand comes to what the plan lacks.
void add_the_rest(const kitchen::Kitchen& kitchen, ListAnswer& answer) {
    const kitchen::Household& house = kitchen.household;
    for (std::uint32_t i = 0; i < house.staples_out.size(); ++i) {
        if (!house.staples_out[i]) continue;
        item_of(answer.items, whole_packs(kitchen, IngredientId{i}, 1)).ran_out = true;
    }
    for (const kitchen::Listed& row : house.listed) {
        if (!row.ingredient) {
            answer.others.push_back(row);
        } else if (answer.trip && !kitchen::sold_on(house, *answer.trip, kitchen.catalogue()[*row.ingredient])) {
            answer.later.push_back(row);
        } else {
            auto& item = item_of(answer.items, whole_packs(kitchen, *row.ingredient, std::max(1, row.count)));
            item.by_hand = true;
            item.garnish = false;
        }
    }
}

}  // namespace

ListAnswer ask_list(const kitchen::Kitchen& kitchen, basics::Day today) {
    ListAnswer answer;
    answer.trip = kitchen::shopping_day(kitchen.household, today);
    if (answer.trip) {
        answer.next = kitchen::shopping_day(kitchen.household, *answer.trip + basics::days{1});
        answer.items = for_the_plan(kitchen, today, *answer.trip, answer.next);
    }
    add_the_rest(kitchen, answer);
    for (const ListItem& item : answer.items) answer.total += item.price;
    const auto walk = kitchen::walk(kitchen.household);
    const auto place = [&](const ListItem& item) {
        const auto at = std::find(walk.begin(), walk.end(), kitchen::shelf(kitchen.catalogue(), item.ingredient));
        return std::pair{at - walk.begin(), std::string_view{kitchen.catalogue()[item.ingredient].name}};
    };
    std::stable_sort(answer.items.begin(), answer.items.end(),
                     [&](const ListItem& a, const ListItem& b) { return place(a) < place(b); });
    return answer;
}

}  // namespace samebase::ask
