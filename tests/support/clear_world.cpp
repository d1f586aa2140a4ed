#include "support/clear_world.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "support/made_things.hpp"
#include "support/random_component.hpp"

namespace samebase::tests {

namespace {

using basics::days;
using catalogue::IngredientId;
using catalogue::Keep;
using catalogue::Keeping;

class World {
  public:
    World(std::uint64_t number, const ClearSize& size) : random_(number), size_(size) {}

    ClearWorld made() {
        std::vector<catalogue::Family> families(1);
        families[0].id = families[0].name = "food";
        std::vector<catalogue::Ingredient> things;
        for (int i = 0; i < size_.perishables; ++i) things.push_back(perishable(i));
        for (int i = 0; i < size_.keepers; ++i) things.push_back(keeper(i));
        std::vector<cookbook::Dish> dishes;
        for (int i = 0; i < size_.dishes + size_.lunch_dishes; ++i)
            dishes.push_back(dish(i, i >= size_.dishes, things));
        std::vector<cookbook::Base> bases{{.id = "base", .name = "base", .note = "", .needs = {}}};
        world_.today = wednesday;
        world_.until = wednesday + days{size_.days - 1};
        world_.kitchen.knowledge = std::make_shared<const kitchen::Knowledge>(
            catalogue::Catalogue{std::move(families), std::move(things)},
            cookbook::Cookbook{std::move(bases), std::move(dishes)}, std::vector<graph::Statement>{});
        household();
        lots();
        plan_and_history();
        return std::move(world_);
    }

  private:
    catalogue::Ingredient perishable(int i) {
        catalogue::Ingredient thing;
        thing.id = fmt::format("a-perishable-{:02}", i);
        thing.name = thing.id;
        thing.allergens = catalogue::AllergenSet{};
        if (random_.percent(20)) {
            thing.kind = catalogue::Kind::cooked;
            thing.dimension = measure::Dimension::pieces;
            thing.in_serves = true;
        } else {
            thing.pack = catalogue::Pack{
                {measure::Dimension::mass, step * random_.within(2, 20)}, "bag", {random_.within(80, 900)}};
        }
        keeps(thing, Keep::crisper, 7, catalogue::Limit::best_by);
        keeps(thing, Keep::fridge, 4, catalogue::Limit::use_by);
        if (random_.percent(50)) keeps(thing, Keep::freezer, 90, catalogue::Limit::best_by);
        return thing;
    }

    catalogue::Ingredient keeper(int i) {
        catalogue::Ingredient thing;
        thing.id = fmt::format("b-keeper-{:02}", i);
        thing.name = thing.id;
        thing.allergens = catalogue::AllergenSet{};
        thing.pack = catalogue::Pack{
            {measure::Dimension::mass, step * random_.within(4, 40)}, "bag", {random_.within(80, 1500)}};
        thing.thaw = catalogue::Thaw::flat;
        keeps(thing, Keep::pantry, 300, catalogue::Limit::best_by);
        keeps(thing, Keep::freezer, 200, catalogue::Limit::best_by);
        keeps(thing, Keep::thawed, 2, catalogue::Limit::use_by);
        return thing;
    }

    cookbook::Dish dish(int i, bool lunch, const std::vector<catalogue::Ingredient>& things) {
        cookbook::Dish dish;
        dish.id = fmt::format("dish-{:02}", i);
        dish.name = dish.id;
        if (random_.percent(40)) dish.base = cookbook::BaseId{0};
        dish.dinner = !lunch;
        dish.lunch = lunch || random_.percent(20);
        if (random_.percent(50)) dish.kinds.emplace_back("soup");
        dish.serves = random_.within(2, 4);
        dish.minutes = random_.within(20, 65);
        dish.gap = random_.one_of(std::vector<int>{1, 2, 3, 5, 21});
        const int lines = random_.within(1, std::min<int>(5, static_cast<int>(things.size())));
        for (int n = 0; n < lines; ++n) {
            const auto at = static_cast<std::uint32_t>(random_.within(0, static_cast<int>(things.size()) - 1));
            const bool again = std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                                           [&](const auto& line) { return line.ingredient.value == at; });
            if (again) continue;
            const bool serves = things[at].in_serves;
            cookbook::DishIngredient line;
            line.ingredient = {at};
            line.amount = {things[at].dimension, serves ? 1000 * random_.within(1, 4) : step * random_.within(1, 16)};
            if (random_.percent(40)) line.most_thousandths = random_.one_of(std::vector<int>{1250, 1500, 2000});
            line.optional = n > 0 && random_.percent(10);
            dish.ingredients.push_back(line);
        }
        return dish;
    }

    void household() {
        kitchen::Household& house = world_.kitchen.household;
        house.places = {{"a-freezer", "freezer", stock::PlaceKind::near_freezer, {}},
                        {"b-fridge", "fridge", stock::PlaceKind::fridge, {}},
                        {"c-crisper", "crisper", stock::PlaceKind::crisper, {}},
                        {"d-pantry", "pantry", stock::PlaceKind::pantry, {}}};
        house.staples.assign(world_.kitchen.catalogue().ingredients().size(), false);
        house.staples_out = house.staples;
        house.trips = kitchen::weekly_trips(1U << 6U);
        const int people = random_.within(1, 3);
        for (int i = 0; i < people; ++i) house.people.push_back(person(i));
        if (random_.percent(40)) {
            house.standing_nights.push_back(
                {std::chrono::weekday{wednesday + days{random_.within(0, size_.days - 1)}}, {"soup"}, wednesday});
        }
        if (random_.percent(30)) {
            const auto at = static_cast<std::uint32_t>(random_.within(0, size_.perishables - 1));
            const auto& thing = world_.kitchen.catalogue()[IngredientId{at}];
            house.standing_uses.push_back({{at}, {thing.dimension, thing.in_serves ? 500 : step}, 0x7F});
        }
    }

    kitchen::Person person(int i) {
        kitchen::Person person;
        person.id = fmt::format("p{}", i);
        person.name = fmt::format("P{}", i);
        person.serve_thousandths = random_.one_of(std::vector<std::int64_t>{1000, 1000, 850, 1250});
        kitchen::Week week{};
        for (auto& meals : week) {
            if (random_.percent(85)) meals |= kitchen::only(kitchen::Meal::dinner);
            if (random_.percent(size_.lunch_dishes > 0 ? 35 : 0)) meals |= kitchen::only(kitchen::Meal::lunch);
        }
        person.roster = {week};
        person.roster_from = wednesday;
        const auto dishes = static_cast<int>(world_.kitchen.cookbook().dishes().size());
        const cookbook::DishId marked{static_cast<std::uint32_t>(random_.within(0, dishes - 1))};
        person.marks.push_back({marked, {}, random_.within(-3, 3)});
        return person;
    }

    void lots() {
        const auto things = world_.kitchen.catalogue().ingredients();
        for (std::uint32_t i = 0; i < things.size(); ++i) {
            const bool keeper = static_cast<int>(i) >= size_.perishables;
            const int count = keeper ? random_.within(0, 1) : random_.within(1, 3);
            for (int n = 0; n < count; ++n) lot({i}, keeper);
        }
    }

    void lot(IngredientId id, bool keeper) {
        const catalogue::Ingredient& thing = world_.kitchen.catalogue()[id];
        stock::Lot lot;
        lot.number = next_++;
        lot.ingredient = id;
        lot.place = {keeper ? (random_.percent(50) ? 0U : 3U) : (random_.percent(60) ? 2U : 1U)};
        lot.amount = {thing.dimension,
                      thing.in_serves ? 1000 * random_.within(1, 4) : step * random_.within(2, keeper ? 60 : 24)};
        const bool frozen = keeper && lot.place.value == 0;
        lot.state = frozen ? stock::State::frozen : stock::State::fresh;
        lot.arrived = lot.since = wednesday - days{random_.within(0, keeper ? 9 : 5)};
        if (random_.percent(70)) {
            lot.paid = basics::Money{random_.within(50, 900)};
            lot.paid_for = lot.amount.value();
        }
        stock::set_dates(lot, thing, world_.kitchen.place(lot.place).kind);
        world_.kitchen.lots.push_back(std::move(lot));
    }

    void plan_and_history() {
        const auto dishes = world_.kitchen.cookbook().dishes();
        const auto any = [&] {
            return cookbook::DishId{static_cast<std::uint32_t>(random_.within(0, static_cast<int>(dishes.size()) - 1))};
        };
        for (int day = -6; day < 0; ++day) {
            if (random_.percent(30))
                world_.kitchen.history.push_back({wednesday + days{day}, kitchen::Meal::dinner, any()});
        }
        for (int day = 0; day < size_.days + 4; ++day) {
            if (!random_.percent(35)) continue;
            world_.kitchen.plan.push_back({.day = wednesday + days{day},
                                           .meal = kitchen::Meal::dinner,
                                           .dish = any(),
                                           .ready_meal = false,
                                           .serves = {},
                                           .left = 0});
        }
    }

    Random random_;
    ClearSize size_;
    ClearWorld world_;
    stock::LotNumber next_ = 1;
};

/// What a household brings home for the crisper and the fridge, as it is sold.
bool is_fresh(const kitchen::Kitchen& kitchen, const catalogue::Ingredient& thing) {
    const auto& crisper = thing.keeps[static_cast<std::size_t>(Keep::crisper)];
    const auto& fridge = thing.keeps[static_cast<std::size_t>(Keep::fridge)];
    const auto id = kitchen.catalogue().ingredient(thing.id);
    if (!thing.pack || thing.only_stand_in || kitchen.household.staples[id->index()]) return false;
    const bool keeps_short = (crisper.said == Keeping::Said::time && crisper.time.days <= 14) ||
                             (fridge.said == Keeping::Said::time && fridge.time.days <= 7);
    const auto uses =
        std::count_if(kitchen.cookbook().dishes().begin(), kitchen.cookbook().dishes().end(), [&](const auto& dish) {
            return std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                               [&](const auto& line) { return line.ingredient == *id; });
        });
    return keeps_short && uses >= 4 && thing.pack->price.minor < 1500;
}

/// A household that buys in bulk has most of what keeps: each thing that dishes use, with a likelihood of 85 in 100.
void stock_the_pantry(Random& random, kitchen::Kitchen& kitchen) {
    std::uint32_t pantry = 0;
    while (kitchen.household.places[pantry].kind != stock::PlaceKind::pantry) ++pantry;
    std::uint32_t freezer = 0;
    while (kitchen.household.places[freezer].kind != stock::PlaceKind::near_freezer) ++freezer;
    stock::LotNumber next = 1000;
    for (std::uint32_t i = 0; i < kitchen.catalogue().ingredients().size(); ++i) {
        const auto& thing = kitchen.catalogue()[IngredientId{i}];
        const auto& dry = thing.keeps[static_cast<std::size_t>(Keep::pantry)];
        const auto& frozen = thing.keeps[static_cast<std::size_t>(Keep::freezer)];
        const bool keeps_dry = dry.said == Keeping::Said::time && dry.time.days >= 60;
        const bool meat = frozen.said == Keeping::Said::time && thing.cook_to && thing.kind == catalogue::Kind::raw;
        if (!thing.pack || thing.only_stand_in || !(keeps_dry || meat) || !random.percent(85)) continue;
        stock::Lot lot;
        lot.number = next++;
        lot.ingredient = {i};
        lot.place = {keeps_dry ? pantry : freezer};
        lot.state = keeps_dry ? stock::State::fresh : stock::State::frozen;
        const int packs = random.within(1, 3);
        lot.packs.assign(static_cast<std::size_t>(packs), thing.pack->amount.value());
        lot.amount = {thing.dimension, thing.pack->amount.value() * packs};
        lot.arrived = lot.since = wednesday - days{random.within(3, 20)};
        stock::set_dates(lot, thing, kitchen.place(lot.place).kind);
        kitchen.lots.push_back(std::move(lot));
    }
}

}  // namespace

ClearWorld random_clear_world(std::uint64_t number, const ClearSize& size) {
    return World(number, size).made();
}

ClearWorld full_clear_world(std::uint64_t number, const kitchen::Kitchen& household) {
    Random random(number);
    ClearWorld world{household, wednesday, wednesday + days{9}};
    kitchen::Kitchen& kitchen = world.kitchen;
    kitchen.plan.clear();
    std::erase_if(kitchen.lots, [&](const stock::Lot& lot) {
        const auto kind = kitchen.place(lot.place).kind;
        return kind == stock::PlaceKind::crisper || (kind == stock::PlaceKind::fridge && random.percent(50));
    });
    std::vector<IngredientId> fresh;
    for (std::uint32_t i = 0; i < kitchen.catalogue().ingredients().size(); ++i) {
        if (is_fresh(kitchen, kitchen.catalogue()[IngredientId{i}])) fresh.push_back({i});
    }
    const auto crisper = std::find_if(kitchen.household.places.begin(), kitchen.household.places.end(),
                                      [](const auto& p) { return p.kind == stock::PlaceKind::crisper; });
    const auto fridge = std::find_if(kitchen.household.places.begin(), kitchen.household.places.end(),
                                     [](const auto& p) { return p.kind == stock::PlaceKind::fridge; });
    stock_the_pantry(random, kitchen);
    const int count = random.within(10, 22);
    for (int i = 0; i < count; ++i) {
        stock::Lot lot;
        lot.number = 2000 + i;
        lot.ingredient = random.one_of(fresh);
        const auto& thing = kitchen.catalogue()[lot.ingredient];
        const bool in_crisper = thing.keeps[static_cast<std::size_t>(Keep::crisper)].said == Keeping::Said::time;
        const auto place = in_crisper ? crisper : fridge;
        lot.place = {static_cast<std::uint32_t>(place - kitchen.household.places.begin())};
        lot.amount = {thing.dimension, thing.pack->amount.value() * random.within(2, 8) / 4};
        if (lot.amount.value() == 0) continue;
        lot.arrived = lot.since = wednesday - days{random.within(0, 3)};
        stock::set_dates(lot, thing, place->kind);
        kitchen.lots.push_back(std::move(lot));
    }
    return world;
}

}  // namespace samebase::tests
