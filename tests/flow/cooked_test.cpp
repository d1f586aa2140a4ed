// What the ledger enters for a cooked meal is what the balance of that meal uses, and a meal that was had is done.
#include <algorithm>
#include <map>
#include <set>

#include "flow/balance.hpp"
#include "kitchen/changes.hpp"
#include "support/demo.hpp"

using namespace samebase;
using kitchen::Meal;
using tests::demo;
using tests::demo_day;
using tests::thing;

namespace {

using Sums = std::map<catalogue::IngredientId, std::int64_t>;

kitchen::Change cooked(const kitchen::Kitchen& kitchen, const kitchen::Planned& row) {
    kitchen::Cooked what;
    what.dish = row.dish;
    what.meal = row.meal;
    what.serves = kitchen::serves_wanted(kitchen, row.day, row.meal);
    what.eaten = what.serves;
    what.swaps = row.swaps;
    what.leftovers = *kitchen::place_of(kitchen.household, {stock::PlaceKind::fridge});
    const auto change = kitchen::cooked({kitchen, row.day, 1000}, what);
    REQUIRE(change);
    return *change;
}

Sums used(const kitchen::Change& change) {
    Sums sums;
    for (const stock::Entry& entry : change.entries) {
        if (entry.column == stock::Column::used) sums[entry.after.ingredient] -= entry.delta;
    }
    return sums;
}

/// What a cook may also take: it is in no balance.
std::set<catalogue::IngredientId> optional(const cookbook::Dish& dish) {
    std::set<catalogue::IngredientId> list;
    for (const auto& line : dish.ingredients) {
        if (!line.optional) continue;
        list.insert(line.ingredient);
        for (const auto& serve : dish.separate) {
            for (const auto& [of, use] : serve.swaps) {
                if (of == line.ingredient) list.insert(use);
            }
        }
    }
    return list;
}

/// A staple, or there as "some": no balance counts it.
bool uncounted(const kitchen::Kitchen& kitchen, catalogue::IngredientId id) {
    const bool rough = std::any_of(kitchen.lots.begin(), kitchen.lots.end(),
                                   [&](const stock::Lot& lot) { return lot.ingredient == id && lot.rough; });
    return rough || kitchen.household.staples[id.index()];
}

}  // namespace

TEST_CASE("the entries of every cooked dinner are what its balance uses, serves apart among them") {
    const kitchen::Kitchen kitchen = demo();
    std::size_t compared = 0;
    std::size_t apart = 0;
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size(); ++i) {
        const cookbook::Dish& dish = kitchen.cookbook().dishes()[i];
        if (!dish.dinner) continue;
        const kitchen::Planned row{demo_day, Meal::dinner, cookbook::DishId{i}, false, {}, 0, {}};
        const kitchen::Cooking cooking = kitchen::cook(kitchen, row);
        const Sums entered = used(cooked(kitchen, row));
        const auto extra = optional(dish);
        INFO(dish.id);
        for (const kitchen::Needed& need : cooking.needs) {
            if (extra.contains(need.ingredient) || uncounted(kitchen, need.ingredient)) continue;
            INFO(kitchen.catalogue()[need.ingredient].id);
            CHECK((entered.contains(need.ingredient) ? entered.at(need.ingredient) : 0) == need.amount);
            ++compared;
        }
        for (const auto& [id, amount] : entered) {
            const bool needed =
                std::any_of(cooking.needs.begin(), cooking.needs.end(),
                            [&, of = id](const kitchen::Needed& need) { return need.ingredient == of; });
            INFO(kitchen.catalogue()[id].id);
            CHECK((needed || extra.contains(id) || uncounted(kitchen, id)));
        }
        if (entered.contains(thing("gluten-free-pasta"))) ++apart;
    }
    CHECK(compared > 1000);
    CHECK(apart > 0);
}

TEST_CASE("a dinner that was cooked is done: nothing asks for it again, and an undo of the history brings it back") {
    kitchen::Kitchen kitchen = demo();
    const auto planned = *kitchen::planned(kitchen.plan, demo_day, Meal::dinner);
    const kitchen::Change change = cooked(kitchen, planned);
    kitchen::apply(kitchen, change);
    CHECK(kitchen::planned(kitchen.plan, demo_day, Meal::dinner) == nullptr);
    REQUIRE(kitchen::planned(kitchen.done, demo_day, Meal::dinner) != nullptr);
    CHECK(*kitchen::planned(kitchen.done, demo_day, Meal::dinner) == planned);
    REQUIRE(kitchen.check() == std::nullopt);
    const flow::Balancer balancer(kitchen, {demo_day, demo_day + basics::days{7}});
    for (const flow::Cooking& cooking : balancer.planned())
        CHECK((cooking.day != demo_day || cooking.meal != Meal::dinner));
    kitchen::Change back;
    for (const kitchen::HistoryEdit& edit : change.history) back.history.push_back({!edit.adds, edit.row});
    kitchen::apply(kitchen, back);
    CHECK(kitchen::planned(kitchen.plan, demo_day, Meal::dinner) != nullptr);
    CHECK(kitchen.done.empty());
}

TEST_CASE(
    "another dinner in the place of the planned one is a dinner had, and a lunch leaves the day's other lunches") {
    kitchen::Kitchen kitchen = demo();
    const basics::Day day = demo_day + basics::days{40};
    const auto toast = tests::dish("cheese-and-celery-sandwich");
    const auto loaf = tests::dish("meat-loaf");
    kitchen.plan = {{day, Meal::lunch, toast, false, 1, 0, {}},
                    {day, Meal::lunch, loaf, true, 1, 0, {}},
                    {day, Meal::dinner, loaf, false, {}, 0, {}}};
    std::sort(kitchen.plan.begin(), kitchen.plan.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
    });
    kitchen::Change change;
    change.history = {{true, {day, Meal::dinner, tests::dish("rissoles")}}, {true, {day, Meal::lunch, toast}}};
    kitchen::apply(kitchen, change);
    CHECK(kitchen.plan.size() == 1);
    CHECK(kitchen.plan.front().dish == loaf);
    CHECK(kitchen.plan.front().meal == Meal::lunch);
    CHECK(kitchen.done.size() == 2);
}
