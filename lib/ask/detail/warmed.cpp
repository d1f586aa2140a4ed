#include <fmt/format.h>

#include <algorithm>

#include "ask/detail/candidate.hpp"
#include "ask/detail/veto.hpp"

namespace samebase::ask::detail {

namespace {

constexpr int veto = -3;

}  // namespace

bool will_not_eat(const kitchen::Person& person, cookbook::DishId dish) {
    return std::any_of(person.marks.begin(), person.marks.end(),
                       [&](const kitchen::Mark& mark) { return mark.dish == dish && mark.mark <= veto; });
}

bool will_not_eat(const kitchen::Kitchen& kitchen, const kitchen::Person& person, catalogue::IngredientId id) {
    return is_any(kitchen.catalogue(), id, person.dislikes) ||
           std::any_of(person.marks.begin(), person.marks.end(), [&](const kitchen::Mark& mark) {
               return !mark.dish && mark.mark <= veto && kitchen.catalogue().is(id, mark.of);
           });
}

bool has_ready_meal(const kitchen::Kitchen& kitchen, cookbook::DishId id) {
    const cookbook::Dish& dish = kitchen.cookbook()[id];
    return dish.leaves && std::any_of(kitchen.lots.begin(), kitchen.lots.end(), [&](const stock::Lot& lot) {
               return lot.dish == id && lot.ingredient == *dish.leaves && lot.usable_amount();
           });
}

Candidate warmed(const Setting& setting, cookbook::DishId id) {
    const kitchen::Kitchen& kitchen = *setting.kitchen;
    const cookbook::Dish& dish = kitchen.cookbook()[id];
    Candidate candidate;
    candidate.cooking = flow::cook(kitchen, {.day = setting.question.day,
                                             .meal = setting.meal,
                                             .dish = id,
                                             .ready_meal = true,
                                             .serves = setting.question.serves,
                                             .left = 0});
    const auto& needs = candidate.cooking.needs;
    if (!dish.leaves || needs.empty() || setting.available[dish.leaves->index()] < needs.front().amount) {
        candidate.ruled_out.push_back("there are not enough serves of it");
        return candidate;
    }
    auto holds = cookbook::allergens(dish, kitchen.catalogue());
    holds.add(setting.holds[dish.leaves->index()]);
    for (const std::size_t eater : setting.eaters) {
        const kitchen::Person& person = kitchen.household.people[eater];
        const catalogue::AllergenSet shared = holds.shared_with(person.avoids);
        if (!shared.empty())
            candidate.ruled_out.push_back(fmt::format("{} avoids {}", person.name, catalogue::in_words(shared)));
    }
    const catalogue::AllergenSet guests = holds.shared_with(setting.guests_avoid);
    if (!guests.empty()) candidate.ruled_out.push_back(fmt::format("a guest avoids {}", catalogue::in_words(guests)));
    for (const std::size_t eater : setting.eaters) {
        const kitchen::Person& person = kitchen.household.people[eater];
        if (will_not_eat(person, id)) candidate.vetoed.push_back(person.name + " will not eat it");
        for (const cookbook::DishIngredient& line : dish.ingredients) {
            if (!line.optional && will_not_eat(kitchen, person, line.ingredient))
                candidate.vetoed.push_back(
                    fmt::format("{} does not eat {}", person.name, kitchen.catalogue()[line.ingredient].name));
        }
    }
    return candidate;
}

}  // namespace samebase::ask::detail
