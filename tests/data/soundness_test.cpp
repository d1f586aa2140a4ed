// What must hold over all shipped data together: nothing that cannot be used, nothing that is unsafe to serve, nothing
// said twice.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "support/shipped.hpp"

using namespace samebase;
using catalogue::IngredientId;
using catalogue::Kind;
using catalogue::Role;
using cookbook::Dish;
using cookbook::DishIngredient;

namespace {

const catalogue::Catalogue& things() {
    return tests::shipped_catalogue();
}

std::vector<IngredientId> all_ingredients() {
    std::vector<IngredientId> ids;
    for (std::uint32_t i = 0; i < things().ingredients().size(); ++i) ids.push_back({i});
    return ids;
}

bool has(const Dish& dish, IngredientId id) {
    return std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                       [&](const DishIngredient& part) { return part.ingredient == id; });
}

template <class Holds>
long dishes_with(IngredientId id, Holds holds) {
    const auto dishes = tests::shipped().cookbook.dishes();
    return std::count_if(dishes.begin(), dishes.end(), [&](const Dish& dish) { return holds(dish) && has(dish, id); });
}

bool is_lunch(const Dish& dish) {
    return dish.lunch;
}

bool is_dinner(const Dish& dish) {
    return dish.dinner;
}

bool meatless(const Dish& dish) {
    return std::all_of(dish.ingredients.begin(), dish.ingredients.end(),
                       [](const DishIngredient& part) { return things().meatless(part.ingredient); });
}

/// A name without case, spaces, hyphens, apostrophes and plurals.
std::string bare(const std::string& name) {
    std::string result;
    for (const char c : name + " ") {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
        if (letter) {
            result += c;
        } else if (c >= 'A' && c <= 'Z') {
            result += static_cast<char>(c - 'A' + 'a');
        } else if (c == ' ' && result.size() > 3 && result.back() == 's' && result[result.size() - 2] != 's') {
            result.pop_back();
        }
    }
    return result;
}

}  // namespace

TEST_CASE("every ingredient is asked for by a dish, or said to be only a stand-in") {
    for (const IngredientId id : all_ingredients()) {
        const long uses = dishes_with(id, [](const Dish&) { return true; });
        INFO(things()[id].id << " is in " << uses << " dishes");
        CHECK((uses == 0) == things()[id].only_stand_in);
    }
}

TEST_CASE("allergens are known of every ingredient") {
    for (const IngredientId id : all_ingredients()) {
        INFO(things()[id].id);
        CHECK(things()[id].allergens);
    }
}

TEST_CASE("a name means one ingredient") {
    std::map<std::string, std::set<std::string>> owners;
    for (const auto& thing : things().ingredients()) {
        owners[bare(thing.name)].insert(thing.id);
        std::set<std::string> own{bare(thing.name)};
        for (const std::string& other : thing.also) {
            owners[bare(other)].insert(thing.id);
            own.insert(bare(other));
        }
    }
    for (const auto& [name, ids] : owners) {
        std::string all;
        for (const std::string& id : ids) all += " " + id;
        INFO(name << ":" << all);
        CHECK(ids.size() == 1);
    }
}

TEST_CASE("every base has at least three dishes, and each of its needs can be met by something else") {
    const auto& knowledge = tests::shipped();
    for (std::uint32_t b = 0; b < knowledge.cookbook.bases().size(); ++b) {
        const cookbook::Base& base = knowledge.cookbook.bases()[b];
        const auto on_it = knowledge.cookbook.on({b});
        INFO(base.id);
        CHECK(on_it.size() >= 3);
        for (const cookbook::BaseNeed& need : base.needs) {
            for (const cookbook::DishId id : on_it) {
                const Dish& dish = knowledge.cookbook[id];
                const auto met =
                    std::find_if(dish.ingredients.begin(), dish.ingredients.end(), [&](const DishIngredient& part) {
                        return part.role == need.role && things().is(part.ingredient, need.of);
                    });
                if (met == dish.ingredients.end()) continue;  // met by a stand-in, which is a swap already
                INFO(dish.id << ": " << things()[met->ingredient].id);
                CHECK(
                    !knowledge.graph.stand_ins({met->ingredient, need.role}, knowledge.graph.parameters().least_fit, {})
                         .empty());
            }
        }
    }
}

TEST_CASE("every leftover is eaten by at least two lunches") {
    long eaten = 0;
    for (const IngredientId id : all_ingredients()) {
        if (things()[id].kind != Kind::cooked) continue;
        const long lunches = dishes_with(id, is_lunch);
        INFO(things()[id].id << " is in " << lunches << " lunches");
        CHECK(lunches >= 2);
        if (lunches > 0) ++eaten;
    }
    CHECK(eaten >= 40);
    const auto dishes = tests::shipped().cookbook.dishes();
    const auto of_leftovers = std::count_if(dishes.begin(), dishes.end(), [](const Dish& dish) {
        return dish.lunch &&
               std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                           [](const DishIngredient& part) { return things()[part.ingredient].kind == Kind::cooked; });
    });
    CHECK(of_leftovers >= 60);
}

TEST_CASE("every fresh vegetable has eight dinners and four lunches") {
    long vegetables = 0;
    for (const IngredientId id : tests::shipped_members("vegetables")) {
        if (things()[id].kind != Kind::raw) continue;
        ++vegetables;
        INFO(things()[id].id << ": " << dishes_with(id, is_dinner) << " dinners, " << dishes_with(id, is_lunch)
                             << " lunches");
        CHECK(dishes_with(id, is_dinner) >= 8);
        CHECK(dishes_with(id, is_lunch) >= 4);
    }
    CHECK(vegetables >= 40);
}

TEST_CASE("no two dishes are the same but in name") {
    // The same ingredients in the same roles, each within a tenth of the other's amount for a serve.
    using Signature = std::vector<std::pair<IngredientId, Role>>;
    std::map<Signature, std::vector<const Dish*>> alike;
    for (const Dish& dish : tests::shipped().cookbook.dishes()) {
        if (dish.ingredients.empty()) continue;  // a night without cooking
        Signature signature;
        for (const DishIngredient& part : dish.ingredients) signature.emplace_back(part.ingredient, part.role);
        std::sort(signature.begin(), signature.end());
        alike[signature].push_back(&dish);
    }
    const auto per_serve = [](const Dish& dish, const std::pair<IngredientId, Role>& what) {
        double amount = 0;
        for (const DishIngredient& part : dish.ingredients) {
            if (part.ingredient == what.first && part.role == what.second)
                amount += static_cast<double>(part.amount.value());
        }
        return amount / dish.serves;
    };
    for (const auto& entry : alike) {
        const Signature& signature = entry.first;
        const std::vector<const Dish*>& dishes = entry.second;
        for (std::size_t i = 0; i < dishes.size(); ++i) {
            for (std::size_t k = i + 1; k < dishes.size(); ++k) {
                const bool same = std::all_of(signature.begin(), signature.end(), [&](const auto& what) {
                    const double a = per_serve(*dishes[i], what);
                    const double b = per_serve(*dishes[k], what);
                    return std::abs(a - b) <= 0.1 * std::max(a, b);
                });
                INFO(dishes[i]->id << " and " << dishes[k]->id);
                CHECK(!same);
            }
        }
    }
}

TEST_CASE("a serve made separately has nothing of what its eater avoids") {
    int swaps = 0;
    for (const Dish& dish : tests::shipped().cookbook.dishes()) {
        for (const cookbook::SeparateServe& serve : dish.separate) {
            for (const auto& [of, use] : serve.swaps) {
                INFO(dish.id << " has no " << things()[of].id << " to swap");
                CHECK(has(dish, of));
            }
            for (const DishIngredient& part : dish.ingredients) {
                const auto swap = std::find_if(serve.swaps.begin(), serve.swaps.end(),
                                               [&](const auto& pair) { return pair.first == part.ingredient; });
                const IngredientId eaten = swap == serve.swaps.end() ? part.ingredient : swap->second;
                INFO(dish.id << " without " << catalogue::name(serve.avoids) << ": " << things()[eaten].id);
                CHECK(!things()[eaten].counted_allergens().has(serve.avoids));
            }
            ++swaps;
        }
    }
    CHECK(swaps >= 20);
}

TEST_CASE("what a dish with meat leaves is not taken for meatless") {
    for (const Dish& dish : tests::shipped().cookbook.dishes()) {
        if (!dish.leaves || meatless(dish)) continue;
        INFO(dish.id << " leaves " << things()[*dish.leaves].id);
        CHECK(!things().meatless(*dish.leaves));
    }
}

TEST_CASE("leftovers say the allergens of the dishes that leave them") {
    // A lot of leftovers carries its dish's allergens itself, so that this is told and not required.
    int silent = 0;
    for (const Dish& dish : tests::shipped().cookbook.dishes()) {
        if (!dish.leaves) continue;
        catalogue::AllergenSet left;
        for (const DishIngredient& part : dish.ingredients) {
            if (part.role != Role::side && !part.optional) left.add(things()[part.ingredient].counted_allergens());
        }
        const auto said = things()[*dish.leaves].counted_allergens();
        if (!(left.shared_with(said) == left)) ++silent;
    }
    std::cout << "dishes with an allergen that their leftover does not list: " << silent << '\n';
    SUCCEED();
}

TEST_CASE("What is tinned is not told to be cooked, and what is raw meat, fish or egg is") {
    const auto tinned = things().family("tinned-fish");
    REQUIRE(tinned);
    int raw = 0;
    for (const IngredientId id : all_ingredients()) {
        const auto& thing = things()[id];
        INFO(thing.id);
        if (things().belongs(id, *tinned)) CHECK_FALSE(thing.cook_to);
        const bool animal = !things().meatless(id) || thing.id == "eggs";
        if (thing.kind != Kind::raw || !animal || things().belongs(id, *tinned)) continue;
        CHECK(thing.cook_to);
        ++raw;
    }
    CHECK(raw > 30);
}
