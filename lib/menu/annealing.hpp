// Simulated annealing (Kirkpatrick, Gelatt and Vecchi, 1983) over plans that give each place one of its options, with a
// budget of moves. The same start and the same moves give the same plan.
//
// `Value` keeps the exact value of a plan while it changes: value(), plan(), set(place, option), set(plan), and
// with(place, option), which changes nothing.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <span>
#include <utility>
#include <vector>

#include "menu/dice.hpp"

namespace samebase::menu {

/// Called now and then with the best value so far; false ends the search.
using Look = std::function<bool(std::int64_t best)>;

/// Temperatures are in thousandths of money, and fall geometrically in each round; a round starts from the best.
struct Cooling {
    int rounds = 1;
    std::int64_t moves = 1;  ///< in all
    std::int64_t between_looks = 1;
    double hottest = 1;
    double coolest = 1;
};

/// By place its options, what looks good first.
using Ranked = std::vector<std::vector<int>>;

/// The options of each place by what they are worth alone, beside the plan that `value` holds.
template <class Value>
Ranked ranked_alone(Value value, const std::vector<const std::vector<int>*>& options) {
    Ranked ranked;
    for (std::size_t place = 0; place < options.size(); ++place) {
        std::vector<std::pair<std::int64_t, int>> alone;
        alone.reserve(options[place]->size());
        for (const int option : *options[place])
            alone.emplace_back(-value.with(static_cast<int>(place), option), option);
        std::sort(alone.begin(), alone.end());
        auto& here = ranked.emplace_back();
        here.reserve(alone.size());
        for (const auto& [minus, option] : alone) here.push_back(option);
    }
    return ranked;
}

template <class Value>
class Annealing {
  public:
    using Plan = std::vector<int>;
    using Change = std::pair<int, int>;  ///< a place and its new option

    Annealing(Value value, Ranked ranked, const Plan& start)
        : value_(std::move(value)), best_(start), ranked_(std::move(ranked)) {
        value_.set(start);
        best_value_ = value_.value();
    }

    /// `move` is called with this, and makes at most one try_to().
    template <class Move>
    Plan run(const Cooling& cooling, const Look& look, const Move& move) {
        const std::int64_t moves = std::max<std::int64_t>(1, cooling.moves / cooling.rounds);
        for (int round = 0; round < cooling.rounds; ++round) {
            value_.set(best_);
            for (std::int64_t i = 0; i < moves; ++i) {
                temperature_ = cooling.hottest * std::pow(cooling.coolest / cooling.hottest,
                                                          static_cast<double>(i) / static_cast<double>(moves));
                move(*this);
                if (i % cooling.between_looks == 0 && look && !look(best_value_)) return best_;
            }
        }
        return best_;
    }

    [[nodiscard]] const Value& value() const { return value_; }
    [[nodiscard]] int now(std::size_t place) const { return value_.plan()[place]; }
    [[nodiscard]] Dice& dice() { return dice_; }
    std::size_t any_place() { return dice_.below(ranked_.size()); }

    /// Those that look good are tried more often; below 0 where the place has none.
    int any_option(std::size_t place) {
        const auto& options = ranked_[place];
        if (options.empty()) return -1;
        // Skewed to the front: the square of an even number.
        const double skewed = dice_.unit();
        const auto at = static_cast<std::size_t>(skewed * skewed * static_cast<double>(options.size()));
        return options[std::min(at, options.size() - 1)];
    }

    /// Does the changes, and takes them back where they are not taken.
    void try_to(std::span<const Change> changes) {
        const std::int64_t old = value_.value();
        back_.clear();
        for (const auto& [place, option] : changes) {
            back_.emplace_back(place, now(static_cast<std::size_t>(place)));
            value_.set(place, option);
        }
        if (taken(old, value_.value())) {
            if (value_.value() <= best_value_) return;
            best_value_ = value_.value();
            best_ = value_.plan();
            return;
        }
        for (auto change = back_.rbegin(); change != back_.rend(); ++change) value_.set(change->first, change->second);
    }

  private:
    bool taken(std::int64_t before, std::int64_t after) {
        if (after >= before) return true;
        return dice_.unit() < std::exp(static_cast<double>(after - before) / temperature_);
    }

    Value value_;
    Plan best_;
    std::int64_t best_value_ = 0;
    Ranked ranked_;
    std::vector<Change> back_;
    double temperature_ = 0;
    Dice dice_{4};
};

}  // namespace samebase::menu
