#include "ask/list.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace samebase::ask {

namespace {

using catalogue::IngredientId;

/// Shelves in the order of a walk through a shop, each with the outermost families that stand there (common practice).
struct Shelf {
    std::string_view name;
    std::array<std::string_view, 5> families;
};
constexpr std::array<Shelf, 6> walk{
    {{"vegetables", {"vegetables"}},
     {"fruit", {"fruit"}},
     {"meat", {"meat"}},
     {"fish", {"seafood"}},
     {"dairy and eggs", {"dairy", "all-eggs", "fats", "plant-milks", "tofu-and-tempeh"}},
     {"frozen", {"frozen-savouries", "frozen-desserts", "garlic-breads"}}}};
constexpr std::string_view bread = "bread";
constexpr std::string_view everything_else = "dry, tins and jars";

/// The position of its shelf in the walk; bread and the rest come after.
std::size_t shelf_of(const catalogue::Catalogue& catalogue, IngredientId id) {
    const catalogue::Ingredient& thing = catalogue[id];
    for (const catalogue::FamilyId family : catalogue.ancestors(id)) {
        if (catalogue[family].id == "bread" || catalogue[family].id == "breads") return walk.size();
    }
    const std::string& outermost = catalogue[catalogue.ancestors(id).back()].id;
    for (std::size_t i = 0; i < walk.size(); ++i) {
        const auto& families = walk[i].families;
        if (std::find(families.begin(), families.end(), outermost) != families.end()) return i;
    }
    // Fresh herbs lie with the vegetables.
    const auto& crisper = thing.keeps[static_cast<std::size_t>(catalogue::Keep::crisper)];
    return crisper.said == catalogue::Keeping::Said::time ? 0 : walk.size() + 1;
}

std::pair<std::size_t, std::string_view> place_in_shop(const catalogue::Catalogue& catalogue, IngredientId id) {
    return {shelf_of(catalogue, id), catalogue[id].name};
}

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

}  // namespace

std::string_view shelf(const catalogue::Catalogue& catalogue, IngredientId id) {
    const std::size_t at = shelf_of(catalogue, id);
    if (at < walk.size()) return walk[at].name;
    return at == walk.size() ? bread : everything_else;
}

ListAnswer ask_list(const kitchen::Kitchen& kitchen, basics::Day today) {
    ListAnswer answer;
    for (std::uint32_t i = 0; i < kitchen.household.staples_out.size(); ++i) {
        if (kitchen.household.staples_out[i]) answer.ran_out.push_back(IngredientId{i});
    }
    answer.trip = kitchen::shopping_day(kitchen.household, today);
    if (!answer.trip) return answer;
    answer.next = kitchen::shopping_day(kitchen.household, *answer.trip + basics::days{1});
    constexpr basics::days furthest{28};
    const basics::Day last = std::min(answer.next.value_or(*answer.trip + basics::days{7}), *answer.trip + furthest);
    const flow::Balancer balancer(kitchen, {today, last});
    const flow::Balance balance = balancer.balance(balancer.planned());
    const int trip_day = static_cast<int>((*answer.trip - today).count());
    for (const auto& part : balance.parts) {
        const int packs = packs_on(*part, trip_day);
        if (packs == 0) continue;
        const IngredientId id = part->component.ingredient;
        const auto& thing = kitchen.catalogue()[id];
        const flow::Offer& offer = *part->component.offer;
        ListItem item{id,
                      packs,
                      {thing.dimension, offer.pack * packs},
                      basics::Money{offer.price.minor * packs},
                      uses_of(*part, today, trip_day),
                      false};
        item.to_freeze = freeze_it(thing, item.for_what, *answer.trip);
        answer.total += item.price;
        answer.items.push_back(std::move(item));
    }
    std::stable_sort(answer.items.begin(), answer.items.end(), [&](const ListItem& a, const ListItem& b) {
        return place_in_shop(kitchen.catalogue(), a.ingredient) < place_in_shop(kitchen.catalogue(), b.ingredient);
    });
    return answer;
}

}  // namespace samebase::ask
