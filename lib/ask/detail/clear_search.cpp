#include "ask/detail/clear_search.hpp"

#include "menu/moves.hpp"

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

ClearPlan annealed(const ClearGame& game, const ClearPlan& start, const menu::Ranked& options,
                   const menu::Cooling& cooling, const menu::Look& look) {
    if (game.meals.empty()) return start;
    constexpr int changing_one = 80;  // of a hundred moves
    return Search(ClearValue(game), options, start).run(cooling, look, [&](Search& search) {
        if (search.dice().below(100) < changing_one) {
            menu::change_one(search);
        } else {
            menu::exchange_two(search, [&](int option, std::size_t meal) { return same_dish_at(game, option, meal); });
        }
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
