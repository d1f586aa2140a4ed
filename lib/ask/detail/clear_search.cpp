#include "ask/detail/clear_search.hpp"

#include <algorithm>
#include <cmath>

#include "ask/detail/dice.hpp"

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

class Annealing {
  public:
    Annealing(const ClearGame& game, const ClearPlan& start, std::int64_t moves)
        : game_(game), value_(game), moves_(moves), best_(start) {
        rank();
        value_.set(start);
        best_value_ = value_.value();
    }

    ClearPlan run(const ClearLook& look) {
        constexpr int rounds = 4;
        constexpr std::int64_t between_looks = 5000;
        for (int round = 0; round < rounds; ++round) {
            value_.set(best_);
            const std::int64_t moves = moves_ / rounds;
            for (std::int64_t move = 0; move < moves; ++move) {
                temperature_ =
                    hottest * std::pow(coolest / hottest, static_cast<double>(move) / static_cast<double>(moves));
                dice_.below(100) < 80 ? change_one() : exchange_two();
                if (move % between_looks == 0 && look && !look(best_value_)) return best_;
            }
        }
        return best_;
    }

  private:
    static constexpr double hottest = 300'000;  ///< in thousandths of money
    static constexpr double coolest = 3'000;

    /// Options by what they are worth alone: those that look good are tried more often.
    void rank() {
        for (const OpenMeal& meal : game_.meals) {
            std::vector<std::pair<std::int64_t, int>> alone;
            for (const int option : meal.options)
                alone.emplace_back(-value_.with(game_.options[static_cast<std::size_t>(option)].meal, option), option);
            std::sort(alone.begin(), alone.end());
            ranked_.emplace_back();
            for (const auto& [minus, option] : alone) ranked_.back().push_back(option);
        }
    }

    bool taken(std::int64_t before, std::int64_t after) {
        if (after >= before) return true;
        return dice_.unit() < std::exp(static_cast<double>(after - before) / temperature_);
    }

    void keep_best() {
        if (value_.value() <= best_value_) return;
        best_value_ = value_.value();
        best_ = value_.plan();
    }

    void change_one() {
        const std::size_t meal = dice_.below(ranked_.size());
        const auto& options = ranked_[meal];
        if (options.empty()) return;
        // Skewed to the front: the square of an even number.
        const double skewed = dice_.unit();
        const auto at = static_cast<std::size_t>(skewed * skewed * static_cast<double>(options.size()));
        const int option = options[std::min(at, options.size() - 1)];
        if (value_.clashes(option)) return;
        const int before = value_.plan()[meal];
        const std::int64_t old = value_.value();
        value_.set(static_cast<int>(meal), option);
        if (taken(old, value_.value())) {
            keep_best();
        } else {
            value_.set(static_cast<int>(meal), before);
        }
    }

    void exchange_two() {
        const std::size_t a = dice_.below(ranked_.size());
        const std::size_t b = dice_.below(ranked_.size());
        if (a == b) return;
        const int at_a = value_.plan()[a];
        const int at_b = value_.plan()[b];
        if (at_a < 0 || at_b < 0) return;
        const int to_a = same_dish_at(game_, at_b, a);
        const int to_b = same_dish_at(game_, at_a, b);
        if (to_a < 0 || to_b < 0) return;
        if (value_.clashes(to_a, static_cast<int>(b)) || value_.clashes(to_b, static_cast<int>(a))) return;
        const std::int64_t old = value_.value();
        value_.set(static_cast<int>(a), to_a);
        value_.set(static_cast<int>(b), to_b);
        if (taken(old, value_.value())) {
            keep_best();
        } else {
            value_.set(static_cast<int>(a), at_a);
            value_.set(static_cast<int>(b), at_b);
        }
    }

    const ClearGame& game_;
    ClearValue value_;
    std::int64_t moves_;
    ClearPlan best_;
    std::int64_t best_value_ = 0;
    std::vector<std::vector<int>> ranked_;
    double temperature_ = 0;
    Dice dice_{4};
};

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

ClearPlan clear_by_annealing(const ClearGame& game, const ClearPlan& start, std::int64_t moves, const ClearLook& look) {
    if (game.meals.empty()) return start;
    return Annealing(game, start, moves).run(look);
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
