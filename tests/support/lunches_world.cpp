#include "support/lunches_world.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <tuple>

#include "support/made_things.hpp"
#include "support/random_component.hpp"

namespace samebase::tests {

namespace {

using basics::days;
using catalogue::IngredientId;
using catalogue::Keep;
using catalogue::Limit;

constexpr int leftovers = 2;    // the first ingredients
constexpr int perishables = 2;  // the next
constexpr int keepers = 2;      // the last

class World {
  public:
    explicit World(std::uint64_t number) : random_(number) {}

    LunchWorld made() {
        std::vector<catalogue::Family> families(1);
        families[0].id = families[0].name = "food";
        for (int i = 0; i < leftovers; ++i) things_.push_back(leftover(i));
        for (int i = 0; i < perishables; ++i) things_.push_back(perishable(i));
        for (int i = 0; i < keepers; ++i) things_.push_back(keeper(i));
        std::vector<cookbook::Dish> dishes;
        for (std::uint32_t i = 0; i < leftovers; ++i) dishes.push_back(dinner(i));
        const int lunches = random_.within(1, 3);
        for (int i = 0; i < lunches; ++i) dishes.push_back(lunch(i));
        std::vector<cookbook::Base> bases{{.id = "base", .name = "base", .note = "", .needs = {}}};
        world_.today = wednesday;
        world_.days = random_.within(2, 3);
        world_.kitchen.knowledge = std::make_shared<const kitchen::Knowledge>(
            catalogue::Catalogue{std::move(families), things_}, cookbook::Cookbook{std::move(bases), std::move(dishes)},
            std::vector<graph::Statement>{});
        household();
        lots();
        plan_and_history();
        return std::move(world_);
    }

  private:
    catalogue::Ingredient thing(std::string id) {
        catalogue::Ingredient thing;
        thing.id = thing.name = std::move(id);
        thing.allergens = catalogue::AllergenSet{};
        if (random_.percent(15)) {
            catalogue::AllergenSet milk;
            milk.add(catalogue::Allergen::milk);
            thing.allergens = milk;
        }
        return thing;
    }

    catalogue::Ingredient leftover(int i) {
        auto result = thing(fmt::format("a-leftover-{}", i));
        result.kind = catalogue::Kind::cooked;
        result.dimension = measure::Dimension::pieces;
        result.in_serves = true;
        keeps(result, Keep::fridge, i == 0 ? 3 : 2, Limit::use_by);
        keeps(result, Keep::freezer, 60, Limit::best_by);
        keeps(result, Keep::thawed, 1, Limit::use_by);
        return result;
    }

    catalogue::Ingredient perishable(int i) {
        auto result = thing(fmt::format("b-perishable-{}", i));
        result.pack =
            catalogue::Pack{{measure::Dimension::mass, step * random_.within(2, 12)}, "bag", {random_.within(80, 700)}};
        keeps(result, Keep::crisper, 6, Limit::best_by);
        keeps(result, Keep::fridge, 4, Limit::use_by);
        return result;
    }

    catalogue::Ingredient keeper(int i) {
        auto result = thing(fmt::format("c-keeper-{}", i));
        result.pack = catalogue::Pack{
            {measure::Dimension::mass, step * random_.within(4, 30)}, "bag", {random_.within(80, 1500)}};
        keeps(result, Keep::pantry, 300, Limit::best_by);
        return result;
    }

    cookbook::Dish dish(std::string id) {
        cookbook::Dish dish;
        dish.id = dish.name = std::move(id);
        if (random_.percent(30)) dish.base = cookbook::BaseId{0};
        dish.minutes = random_.within(5, 45);
        dish.gap = random_.one_of(std::vector<int>{1, 3, 5, 21});
        return dish;
    }

    /// Dinners leave one leftover each; now and then they are for lunch as well.
    cookbook::Dish dinner(std::uint32_t leaves) {
        auto result = dish(fmt::format("d-dinner-{}", leaves));
        result.dinner = true;
        result.lunch = random_.percent(25);
        result.serves = 2;
        result.leaves = IngredientId{leaves};
        lines(result, 1, 3, leftovers);
        return result;
    }

    cookbook::Dish lunch(int i) {
        auto result = dish(fmt::format("e-lunch-{}", i));
        result.lunch = true;
        result.serves = random_.within(1, 2);
        lines(result, 1, 3, random_.percent(30) ? 0 : leftovers);
        return result;
    }

    void lines(cookbook::Dish& dish, int least, int most, int from) {
        const int count = random_.within(least, most);
        while (static_cast<int>(dish.ingredients.size()) < count) {
            const auto at = static_cast<std::uint32_t>(random_.within(from, static_cast<int>(things_.size()) - 1));
            const bool again = std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                                           [&](const auto& line) { return line.ingredient.value == at; });
            if (again) continue;
            cookbook::DishIngredient line;
            line.ingredient = {at};
            line.amount = {things_[at].dimension, things_[at].in_serves ? std::int64_t{500} * random_.within(1, 4)
                                                                        : step * 2 * random_.within(1, 5)};
            line.optional = !dish.ingredients.empty() && random_.percent(10);
            dish.ingredients.push_back(line);
        }
    }

    void household() {
        kitchen::Household& house = world_.kitchen.household;
        house.places = {{"a-freezer", "freezer", stock::PlaceKind::near_freezer, {}},
                        {"b-fridge", "fridge", stock::PlaceKind::fridge, {}},
                        {"c-crisper", "crisper", stock::PlaceKind::crisper, {}},
                        {"d-pantry", "pantry", stock::PlaceKind::pantry, {}}};
        house.staples.assign(things_.size(), false);
        house.staples_out = house.staples;
        house.trips =
            kitchen::weekly_trips(static_cast<std::uint8_t>(1U << static_cast<unsigned>(random_.within(3, 6))));
        house.worths.bought_lunch = {random_.one_of(std::vector<std::int64_t>{300, 700, 1400})};
        const int people = random_.within(2, 3);
        for (int i = 0; i < people; ++i) house.people.push_back(person(i));
        if (random_.percent(30)) house.standing_uses.push_back({{leftovers}, {measure::Dimension::mass, step}, 0x7F});
    }

    kitchen::Person person(int i) {
        kitchen::Person person;
        person.id = fmt::format("p{}", i);
        person.name = fmt::format("P{}", i);
        person.serve_thousandths = random_.one_of(std::vector<std::int64_t>{1000, 1000, 850, 1250});
        kitchen::Week week{};
        for (auto& meals : week) {
            if (random_.percent(80)) meals |= kitchen::only(kitchen::Meal::dinner);
            if (random_.percent(65)) meals |= kitchen::only(kitchen::Meal::lunch);
        }
        person.roster = {week};
        person.roster_from = wednesday;
        if (random_.percent(25)) person.avoids.add(catalogue::Allergen::milk);
        const auto any = [&] {
            return IngredientId{static_cast<std::uint32_t>(random_.within(0, static_cast<int>(things_.size()) - 1))};
        };
        if (random_.percent(20)) person.dislikes.emplace_back(any());
        const auto dishes = static_cast<int>(world_.kitchen.cookbook().dishes().size());
        const cookbook::DishId marked{static_cast<std::uint32_t>(random_.within(0, dishes - 1))};
        person.marks.push_back({marked, {}, random_.within(-3, 3)});
        person.marks.push_back({{}, any(), random_.within(-3, 3)});
        return person;
    }

    void lots() {
        for (std::uint32_t i = 0; i < things_.size(); ++i) {
            const bool keeper = i >= leftovers + perishables;
            const int count = i < leftovers ? random_.one_of(std::vector<int>{0, 0, 1, 1, 2})
                              : keeper      ? random_.within(0, 1)
                                            : random_.within(0, 2);
            for (int n = 0; n < count; ++n) lot({i}, keeper);
        }
    }

    void lot(IngredientId id, bool keeper) {
        const catalogue::Ingredient& thing = things_[id.index()];
        stock::Lot lot;
        lot.number = next_++;
        lot.ingredient = id;
        lot.place = {keeper ? 3U : (thing.in_serves ? (random_.percent(40) ? 0U : 1U) : 2U)};
        lot.state = lot.place.value == 0 ? stock::State::frozen : stock::State::fresh;
        lot.arrived = lot.since = wednesday - days{random_.within(0, thing.in_serves ? 2 : 5)};
        lot.amount = {thing.dimension, thing.in_serves ? std::int64_t{1000} * random_.within(1, 3)
                                                       : step * random_.within(2, keeper ? 40 : 16)};
        if (thing.in_serves) {
            lot.dish = cookbook::DishId{id.value};
            if (lot.state == stock::State::frozen && random_.percent(50)) {
                lot.packs = {lot.amount.value()};
            }
        }
        // A price of so much a step: no part of it is rounded.
        if (random_.percent(60)) {
            lot.paid = basics::Money{random_.within(2, 60) * lot.amount.value() / (thing.in_serves ? 100 : step)};
            lot.paid_for = lot.amount.value();
        }
        stock::set_dates(lot, thing, world_.kitchen.place(lot.place).kind);
        world_.kitchen.lots.push_back(std::move(lot));
    }

    void plan_and_history() {
        const auto dishes = world_.kitchen.cookbook().dishes();
        const auto any = [&](bool dinner) {
            while (true) {
                const auto at = static_cast<std::uint32_t>(random_.within(0, static_cast<int>(dishes.size()) - 1));
                if (dinner ? dishes[at].dinner : true) return cookbook::DishId{at};
            }
        };
        for (int day = -6; day < 0; ++day) {
            if (random_.percent(25))
                world_.kitchen.history.push_back({wednesday + days{day}, kitchen::Meal::dinner, any(false)});
        }
        for (int day = 0; day < world_.days + 3; ++day) {
            if (random_.percent(12)) row(day, kitchen::Meal::lunch, any(false), random_.within(0, 1));
            if (random_.percent(70)) row(day, kitchen::Meal::dinner, any(true), 0);
        }
    }

    void row(int day, kitchen::Meal meal, cookbook::DishId dish, int serves) {
        kitchen::Planned row{.day = wednesday + days{day},
                             .meal = meal,
                             .dish = dish,
                             .ready_meal = false,
                             .serves = {},
                             .left = meal == kitchen::Meal::dinner ? random_.within(0, 2) : 0};
        if (serves > 0) row.serves = serves;
        row.ready_meal = world_.kitchen.cookbook()[dish].leaves && random_.percent(20);
        if (row.ready_meal) row.left = 0;
        world_.kitchen.plan.push_back(row);
    }

    Random random_;
    LunchWorld world_;
    std::vector<catalogue::Ingredient> things_;
    stock::LotNumber next_ = 1;
};

}  // namespace

LunchWorld random_lunch_world(std::uint64_t number) {
    return World(number).made();
}

}  // namespace samebase::tests
