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

#include "ask/detail/dice.hpp"

namespace samebase::ask::detail {

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

template <class Value>
class Annealing {
  public:
    using Plan = std::vector<int>;
    using Change = std::pair<int, int>;  ///< a place and its new option

    /// `value` holds the plan in which options are ranked by what they are worth alone; `options` by place.
    Annealing(Value value, const std::vector<std::vector<int>>& options, const Plan& start)
        : value_(std::move(value)), best_(start) {
        for (std::size_t place = 0; place < options.size(); ++place) rank(static_cast<int>(place), options[place]);
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
    void rank(int place, const std::vector<int>& options) {
        std::vector<std::pair<std::int64_t, int>> alone;
        alone.reserve(options.size());
        for (const int option : options) alone.emplace_back(-value_.with(place, option), option);
        std::sort(alone.begin(), alone.end());
        auto& ranked = ranked_.emplace_back();
        ranked.reserve(alone.size());
        for (const auto& [minus, option] : alone) ranked.push_back(option);
    }

    bool taken(std::int64_t before, std::int64_t after) {
        if (after >= before) return true;
        return dice_.unit() < std::exp(static_cast<double>(after - before) / temperature_);
    }

    Value value_;
    Plan best_;
    std::int64_t best_value_ = 0;
    std::vector<std::vector<int>> ranked_;
    std::vector<Change> back_;
    double temperature_ = 0;
    Dice dice_{4};
};

}  // namespace samebase::ask::detail
