#include "ask/detail/lunches_seats.hpp"

#include <algorithm>

#include "basics/ranges.hpp"
#include "flow/hand_out.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using cookbook::DishId;
using kitchen::Meal;

}  // namespace

LunchTable::LunchTable(const kitchen::Kitchen& kitchen)
    : kitchen_(kitchen),
      holds_(flow::held_allergens(kitchen)),
      is_lunch_(holds_.size(), false),
      left_by_(holds_.size()),
      cooked_as_(holds_.size()) {
    const auto dishes = kitchen.cookbook().dishes();
    for (std::uint32_t i = 0; i < dishes.size(); ++i) {
        if (!dishes[i].leaves || left_by_[dishes[i].leaves->index()]) continue;
        left_by_[dishes[i].leaves->index()] = DishId{i};
        is_lunch_[dishes[i].leaves->index()] = true;
    }
    for (const cookbook::Dish& dish : dishes) {
        for (const cookbook::ByProduct& by_product : dish.gives) is_lunch_[by_product.ingredient.index()] = false;
    }
    for (const stock::Lot& lot : kitchen.lots) {
        if (lot.dish) cooked_as_[lot.ingredient.index()].push_back(*lot.dish);
    }
    for (const kitchen::Planned& row : kitchen.plan) {
        const auto& leaves = kitchen.cookbook()[row.dish].leaves;
        if (leaves) cooked_as_[leaves->index()].push_back(row.dish);
    }
    for (auto& list : cooked_as_) {
        std::sort(list.begin(), list.end());
        list.erase(std::unique(list.begin(), list.end()), list.end());
    }
}

bool LunchTable::dislikes(const kitchen::Person& person, IngredientId of) const {
    return std::any_of(person.dislikes.begin(), person.dislikes.end(),
                       [&](const catalogue::Of& disliked) { return kitchen_.catalogue().is(of, disliked); });
}

bool LunchTable::dislikes_dish(const kitchen::Person& person, const cookbook::Dish& dish, const flow::Serve& serve,
                               std::span<const kitchen::LineSwap> with) const {
    if (person.dislikes.empty()) return false;
    const auto swaps = serve.swaps();
    return std::any_of(dish.ingredients.begin(), dish.ingredients.end(), [&](const cookbook::DishIngredient& line) {
        if (line.optional) return false;
        const auto apart =
            std::find_if(swaps.begin(), swaps.end(), [&](const auto& s) { return s.first == line.ingredient; });
        if (apart != swaps.end()) return dislikes(person, apart->second);
        const auto swap =
            std::find_if(with.begin(), with.end(), [&](const auto& s) { return s.of == line.ingredient; });
        if (swap == with.end()) return dislikes(person, line.ingredient);
        return std::any_of(swap->use.begin(), swap->use.end(),
                           [&](const auto& use) { return dislikes(person, use.first); });
    });
}

bool LunchTable::may_have_cooked(std::size_t who, DishId id, std::span<const kitchen::LineSwap> with) const {
    const kitchen::Person& person = kitchen_.household.people[who];
    const cookbook::Dish& dish = kitchen_.cookbook()[id];
    const flow::Serve serve = flow::serve_for(dish, person.avoids, with, holds_);
    return serve.holds.shared_with(person.avoids).empty() && !dislikes_dish(person, dish, serve, with);
}

bool LunchTable::common_serve_suits(const kitchen::Person& person, DishId id) const {
    const cookbook::Dish& dish = kitchen_.cookbook()[id];
    return cookbook::allergens(dish, kitchen_.catalogue()).shared_with(person.avoids).empty() &&
           !dislikes_dish(person, dish, flow::serve_for(dish, {}, {}, holds_), {});
}

bool LunchTable::may_have_left(std::size_t who, IngredientId of, DishId dish) const {
    const kitchen::Person& person = kitchen_.household.people[who];
    if (!holds_[of.index()].shared_with(person.avoids).empty() || dislikes(person, of)) return false;
    const auto& others = cooked_as_[of.index()];
    return common_serve_suits(person, dish) &&
           std::all_of(others.begin(), others.end(), [&](DishId other) { return common_serve_suits(person, other); });
}

void LunchTable::seat(basics::Day day, std::vector<LunchStanding>& seats) const {
    const auto home = kitchen::eaters(kitchen_, day, Meal::lunch);
    std::vector<const kitchen::Planned*> rows;
    std::vector<int> serves;
    std::vector<flow::Suits> suits;
    for (const kitchen::Planned& row : kitchen_.plan) {
        if (row.day != day || row.meal != Meal::lunch) continue;
        const auto& leaves = kitchen_.cookbook()[row.dish].leaves;
        for (std::size_t i = 0; i < home.size(); ++i) {
            const bool may = row.ready_meal ? leaves && may_have_left(home[i], *leaves, row.dish)
                                            : may_have_cooked(home[i], row.dish, row.swaps);
            // Those who come first are the cheapest to serve.
            if (may) suits.push_back({static_cast<int>(rows.size()), static_cast<int>(i), static_cast<int>(i)});
        }
        rows.push_back(&row);
        serves.push_back(row.serves.value_or(static_cast<int>(home.size())));
    }
    if (rows.empty()) return;
    const auto given = flow::hand_out(serves, home.size(), suits);
    for (std::size_t i = 0; i < home.size(); ++i) {
        if (given[i] < 0) continue;
        const kitchen::Planned& row = *rows[static_cast<std::size_t>(given[i])];
        seats.push_back({day, home[i], row.dish, row.ready_meal});
    }
}

std::vector<LunchStanding> LunchTable::standing(basics::Span span) const {
    std::vector<LunchStanding> seats;
    for (const basics::Day day : basics::days_of(span)) seat(day, seats);
    return seats;
}

}  // namespace samebase::ask::detail
