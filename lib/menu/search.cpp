#include "menu/search.hpp"

#include <algorithm>
#include <numeric>

#include "menu/moves.hpp"

namespace samebase::menu {

namespace {

using Search = Annealing<Evaluator>;

/// An option of the same dish at another slot; below 0 where there is none. Of several the first.
int same_dish_at(const Problem& problem, int option, std::size_t slot) {
    const auto dish = problem.options[static_cast<std::size_t>(option)].dish;
    const auto& options = problem.slots[slot].options;
    const auto found = std::find_if(options.begin(), options.end(), [&](int other) {
        return problem.options[static_cast<std::size_t>(other)].dish == dish;
    });
    return found == options.end() ? -1 : *found;
}

}  // namespace

Choice greedy(const Problem& problem) {
    std::vector<std::size_t> order(problem.slots.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return problem.slots[a].options.size() < problem.slots[b].options.size();
    });
    Evaluator evaluator(problem);
    for (const std::size_t slot : order) {
        Worth best = evaluator.value();
        int chosen = -1;
        for (const int option : problem.slots[slot].options) {
            if (evaluator.clashes(option)) continue;
            const Worth with = evaluator.with(static_cast<int>(slot), option);
            if (with <= best) continue;
            best = with;
            chosen = option;
        }
        evaluator.set(static_cast<int>(slot), chosen);
    }
    return evaluator.plan();
}

Choice annealed(const Problem& problem, const Choice& start, const Ranked& ranked, std::int64_t moves,
                const Look& look) {
    if (problem.slots.empty()) return start;
    constexpr std::size_t changing_one = 80;  // of a hundred moves
    constexpr std::size_t emptying = 2;       // of a hundred of these
    const Cooling cooling{.rounds = 2, .moves = moves, .between_looks = 1000, .hottest = 400'000, .coolest = 5'000};
    return Search(Evaluator(problem), ranked, start).run(cooling, look, [&](Search& search) {
        if (search.dice().below(100) < changing_one) {
            change_one(search, emptying);
        } else {
            exchange_two(search, [&](int option, std::size_t slot) { return same_dish_at(problem, option, slot); });
        }
    });
}

Choice polished(const Problem& problem, const Choice& start, const Look& look) {
    Evaluator evaluator(problem);
    evaluator.set(start);
    for (bool better = true; better;) {
        better = false;
        for (std::size_t slot = 0; slot < problem.slots.size(); ++slot) {
            if (look && !look(evaluator.value())) return evaluator.plan();
            const auto take = [&](int option) {
                if (evaluator.clashes(option) || evaluator.with(static_cast<int>(slot), option) <= evaluator.value())
                    return;
                evaluator.set(static_cast<int>(slot), option);
                better = true;
            };
            for (const int option : problem.slots[slot].options) take(option);
            take(-1);
        }
    }
    return evaluator.plan();
}

}  // namespace samebase::menu
