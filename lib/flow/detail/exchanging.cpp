#include <algorithm>
#include <utility>

#include "flow/detail/search.hpp"

namespace samebase::flow::detail {

namespace {

/// Outcomes times what each of them walks through: units and wants.
constexpr std::int64_t most_work = 20'000'000;

class Exchanges {
  public:
    Exchanges(const Component& component, Decisions decisions)
        : component_(component), best_(carry_out(component, decisions)), value_(best_.value(component)) {
        for (const Unit& unit : component.units) choices_.push_back(choices_of(component, unit));
        const auto each = static_cast<std::int64_t>((component.units.size() + 1) * (component.wants.size() + 1));
        outcomes_left_ = most_work / each + 1;
    }

    Outcome bettered() {
        constexpr int most_rounds = 20;
        for (int round = 0; round < most_rounds && (one_otherwise() | two_exchanged()); ++round) {
        }
        return std::move(best_);
    }

  private:
    /// What is decided of a unit.
    static int& decided(const Component& component, Decisions& decisions, std::size_t unit) {
        return component.units[unit].thaw_days > 0 ? decisions.ready_day[unit] : decisions.opened_day[unit];
    }
    [[nodiscard]] bool may(std::size_t unit, int value) const {
        return std::find(choices_[unit].begin(), choices_[unit].end(), value) != choices_[unit].end();
    }

    bool better(Decisions decisions) {
        if (outcomes_left_ == 0) return false;
        --outcomes_left_;
        Outcome outcome = carry_out(component_, decisions);
        Value value = outcome.value(component_);
        if (value >= value_) return false;
        best_ = std::move(outcome);
        value_ = std::move(value);
        return true;
    }

    bool one_otherwise() {
        bool any = false;
        for (std::size_t u = 0; u < choices_.size(); ++u) {
            for (const int value : choices_[u]) {
                Decisions decisions = best_.decisions;
                int& now = decided(component_, decisions, u);
                if (now == value) continue;
                now = value;
                any |= better(std::move(decisions));
            }
        }
        return any;
    }

    bool two_exchanged() {
        bool any = false;
        for (std::size_t u = 0; u < choices_.size(); ++u) {
            for (std::size_t v = u + 1; v < choices_.size(); ++v) {
                if (choices_[u].empty() || choices_[v].empty()) continue;
                Decisions decisions = best_.decisions;
                int& one = decided(component_, decisions, u);
                int& other = decided(component_, decisions, v);
                if (one == other || !may(u, other) || !may(v, one)) continue;
                std::swap(one, other);
                any |= better(std::move(decisions));
            }
        }
        return any;
    }

    const Component& component_;
    Outcome best_;
    Value value_;
    std::vector<std::vector<int>> choices_;
    std::int64_t outcomes_left_ = 0;
};

}  // namespace

Outcome by_exchanging(const Component& component, Decisions decisions) {
    return Exchanges(component, std::move(decisions)).bettered();
}

}  // namespace samebase::flow::detail
