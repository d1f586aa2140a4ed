#include "ask/detail/clear_search.hpp"

#include <array>

namespace samebase::ask::detail {

namespace {

/// An option of the same dish at another open meal; below 0 where there is none. Of several the first.
int same_dish_at(const ClearGame& game, int option, std::size_t meal) {
    const auto dish = game.options[static_cast<std::size_t>(option)].dish;
    for (const int other : game.meals[meal].options) {
        if (game.options[static_cast<std::size_t>(other)].dish == dish) return other;
    }
    return -1;
}

using Search = menu::Annealing<ClearValue>;

void change_one(Search& search) {
    const std::size_t meal = search.any_place();
    const int option = search.any_option(meal);
    if (option < 0 || search.value().clashes(option)) return;
    const std::array<Search::Change, 1> change{{{static_cast<int>(meal), option}}};
    search.try_to(change);
}

void exchange_two(const ClearGame& game, Search& search) {
    const std::size_t a = search.any_place();
    const std::size_t b = search.any_place();
    if (a == b || search.now(a) < 0 || search.now(b) < 0) return;
    const int to_a = same_dish_at(game, search.now(b), a);
    const int to_b = same_dish_at(game, search.now(a), b);
    if (to_a < 0 || to_b < 0) return;
    const auto at_a = static_cast<int>(a);
    const auto at_b = static_cast<int>(b);
    if (search.value().clashes(to_a, at_b) || search.value().clashes(to_b, at_a)) return;
    const std::array<Search::Change, 2> changes{{{at_a, to_a}, {at_b, to_b}}};
    search.try_to(changes);
}

ClearPlan annealed(const ClearGame& game, const ClearPlan& start, const menu::Ranked& options,
                   const menu::Cooling& cooling, const menu::Look& look) {
    if (game.meals.empty()) return start;
    constexpr int changing_one = 80;  // of a hundred moves
    return Search(ClearValue(game), options, start).run(cooling, look, [&](Search& search) {
        search.dice().below(100) < changing_one ? change_one(search) : exchange_two(game, search);
    });
}

}  // namespace

ClearPlan clear_greedily(const ClearGame& game) {
    ClearValue value(game);
    while (true) {
        std::int64_t best = value.value();
        int chosen = -1;
        for (std::size_t meal = 0; meal < game.meals.size(); ++meal) {
            if (value.plan()[meal] >= 0) continue;
            for (const int option : game.meals[meal].options) {
                if (value.clashes(option)) continue;
                const std::int64_t with = value.with(static_cast<int>(meal), option);
                if (with <= best) continue;
                best = with;
                chosen = option;
            }
        }
        if (chosen < 0) return value.plan();
        value.set(game.options[static_cast<std::size_t>(chosen)].meal, chosen);
    }
}

menu::Ranked clear_options_alone(const ClearGame& game) {
    std::vector<const std::vector<int>*> options;
    options.reserve(game.meals.size());
    for (const OpenMeal& meal : game.meals) options.push_back(&meal.options);
    return menu::ranked_alone(ClearValue(game), options);
}

ClearPlan clear_by_annealing(const ClearGame& game, const ClearPlan& start, const menu::Ranked& options,
                             std::int64_t moves, const menu::Look& look) {
    return annealed(game, start, options,
                    {.rounds = 4, .moves = moves, .between_looks = 5000, .hottest = 300'000, .coolest = 3'000}, look);
}

ClearPlan clear_annealed_near(const ClearGame& game, const ClearPlan& start, const menu::Ranked& options,
                              std::int64_t moves) {
    return annealed(game, start, options,
                    {.rounds = 1, .moves = moves, .between_looks = moves, .hottest = 60'000, .coolest = 3'000}, {});
}

ClearPlan clear_polished(const ClearGame& game, const ClearPlan& start) {
    ClearValue value(game);
    value.set(start);
    for (bool better = true; better;) {
        better = false;
        for (std::size_t meal = 0; meal < game.meals.size(); ++meal) {
            for (const int option : game.meals[meal].options) {
                if (value.clashes(option) || value.with(static_cast<int>(meal), option) <= value.value()) continue;
                value.set(static_cast<int>(meal), option);
                better = true;
            }
        }
    }
    return value.plan();
}

}  // namespace samebase::ask::detail
