#include "ask/detail/trips.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>
#include <utility>

#include "solver/programme.hpp"

namespace samebase::ask::detail {

namespace {

using Room = std::vector<std::int64_t>;  // by day

/// What one freezer's items take while they wait: needs by day, those of one day together.
struct Needs {
    std::vector<int> days;            ///< on which something is needed, in order
    std::vector<std::int64_t> rooms;  ///< of what is needed on each
};

Needs needs_of(const std::vector<TripItem>& items, int freezer) {
    Needs needs;
    std::vector<const TripItem*> list;
    for (const TripItem& item : items) {
        if (item.freezer == freezer) list.push_back(&item);
    }
    std::stable_sort(list.begin(), list.end(), [](const TripItem* a, const TripItem* b) { return a->need < b->need; });
    for (const TripItem* item : list) {
        if (needs.days.empty() || needs.days.back() != item->need) {
            needs.days.push_back(item->need);
            needs.rooms.push_back(0);
        }
        needs.rooms.back() += item->room;
    }
    return needs;
}

/// A walk on `day` for the needs from one position up to another: what it takes of the room on each day before they are
/// needed.
template <class Each>
void waiting(const Needs& needs, std::size_t begin, std::size_t end, int day, const Each& each) {
    for (std::size_t i = begin; i < end; ++i) {
        for (int d = day; d < needs.days[i]; ++d) each(static_cast<std::size_t>(d), needs.rooms[i]);
    }
}

/// The walks of one freezer: its needs are cut into runs, each brought by one walk.
struct Run {
    std::size_t begin = 0;
    std::size_t end = 0;
    int day = 0;  ///< of the walk
};
using Runs = std::vector<Run>;

void take(const Needs& needs, const Run& run, Room& room, int sign) {
    waiting(needs, run.begin, run.end, run.day,
            [&](std::size_t day, std::int64_t amount) { room[day] -= sign * amount; });
}

/// Walks as late as can be and as long as they fit: for one freezer alone, the fewest. Takes its room.
Runs longest_runs(const Needs& needs, Room& room) {
    Runs runs;
    for (std::size_t begin = 0; begin < needs.days.size();) {
        std::size_t end = begin + 1;
        for (; end < needs.days.size(); ++end) {
            bool fits = true;
            for (int d = needs.days[begin]; d < needs.days[end]; ++d)
                fits = fits && room[static_cast<std::size_t>(d)] >= needs.rooms[end];
            if (!fits) break;
            for (int d = needs.days[begin]; d < needs.days[end]; ++d)
                room[static_cast<std::size_t>(d)] -= needs.rooms[end];
        }
        runs.push_back({begin, end, needs.days[begin]});
        begin = end;
    }
    return runs;
}

/// The room that is there for what waits: less what lies there from its need on, however it comes.
Room room_for_waiting(const std::vector<TripItem>& items, const Room& free) {
    Room room = free;
    for (std::int64_t& day : room) day = std::max<std::int64_t>(0, day);
    for (const TripItem& item : items) {
        for (int d = item.need; d < item.until; ++d) room[static_cast<std::size_t>(d)] -= item.room;
    }
    return room;
}

class Walks {
  public:
    Walks(const std::vector<TripItem>& items, const Room& free) : room_(room_for_waiting(items, free)) {
        int freezers = 0;
        for (const TripItem& item : items) freezers = std::max(freezers, item.freezer + 1);
        for (int f = 0; f < freezers; ++f) {
            needs_.push_back(needs_of(items, f));
            Room alone = room_;
            bound_ += static_cast<int>(longest_runs(needs_.back(), alone).size());
        }
    }

    /// No plan has fewer: each freezer with all the room for itself.
    [[nodiscard]] int bound() const { return bound_; }

    /// The best of the rule with each freezer put first, those behind it in turn.
    [[nodiscard]] std::vector<Runs> by_rule() const {
        std::vector<Runs> best;
        for (std::size_t first = 0; first < std::max<std::size_t>(1, needs_.size()); ++first) {
            std::vector<Runs> plan(needs_.size());
            Room room = room_;
            for (std::size_t i = 0; i < needs_.size(); ++i) {
                const std::size_t f = (first + i) % needs_.size();
                plan[f] = longest_runs(needs_[f], room);
            }
            if (first == 0 || count(plan) < count(best)) best = std::move(plan);
        }
        return best;
    }

    static int count(const std::vector<Runs>& plan) {
        return static_cast<int>(std::accumulate(plan.begin(), plan.end(), std::size_t{0},
                                                [](std::size_t sum, const Runs& runs) { return sum + runs.size(); }));
    }

    /// A better plan than the one given, and what no plan goes below; the same plan where there is none, or none was
    /// found.
    [[nodiscard]] std::pair<std::vector<Runs>, int> by_programme(const std::vector<Runs>& known, int effort) const;

    /// Freezer by freezer: longest runs in the room that the others leave, then the first walk as early as can be.
    void settle(std::vector<Runs>& plan) const {
        Room room = room_;
        for (std::size_t f = 0; f < plan.size(); ++f) {
            for (const Run& run : plan[f]) take(needs_[f], run, room, 1);
        }
        for (std::size_t f = 0; f < plan.size(); ++f) {
            for (const Run& run : plan[f]) take(needs_[f], run, room, -1);
            plan[f] = longest_runs(needs_[f], room);
        }
        for (std::size_t f = 0; f < plan.size(); ++f) {
            if (plan[f].empty()) continue;
            Run& first = plan[f].front();
            std::int64_t all = 0;
            for (std::size_t i = first.begin; i < first.end; ++i) all += needs_[f].rooms[i];
            for (; first.day > 0 && room[static_cast<std::size_t>(first.day) - 1] >= all; --first.day)
                room[static_cast<std::size_t>(first.day) - 1] -= all;
        }
    }

  private:
    std::vector<Needs> needs_;
    Room room_;
    int bound_ = 0;
};

/// For each freezer a path through the positions of its needs; a step is one walk that brings the needs between two
/// positions, taken on the first day of them. What all that is chosen takes on a day is within the room.
std::pair<std::vector<Runs>, int> Walks::by_programme(const std::vector<Runs>& known, int effort) const {
    constexpr std::int64_t nodes_of_100 = 1'000;
    constexpr double litre = 1000;
    solver::Programme programme;
    solver::Terms cost;
    std::vector<std::pair<std::size_t, Run>> steps;  // by column: freezer and walk
    std::vector<double> start;
    std::vector<solver::Terms> taken(room_.size());
    for (std::size_t f = 0; f < needs_.size(); ++f) {
        const Needs& needs = needs_[f];
        std::vector<solver::Terms> at(needs.days.size() + 1);  // in less out
        for (std::size_t begin = 0; begin < needs.days.size(); ++begin) {
            Room load(room_.size(), 0);
            for (std::size_t end = begin + 1; end <= needs.days.size(); ++end) {
                bool fits = true;
                waiting(needs, end - 1, end, needs.days[begin], [&](std::size_t day, std::int64_t amount) {
                    load[day] += amount;
                    fits = fits && load[day] <= room_[day];
                });
                if (!fits) break;
                const int column = programme.add({0, 1, true});
                cost.emplace_back(column, 1);
                at[begin].emplace_back(column, -1);
                at[end].emplace_back(column, 1);
                for (std::size_t d = 0; d < load.size(); ++d) {
                    if (load[d] > 0) taken[d].emplace_back(column, static_cast<double>(load[d]) / litre);
                }
                const bool chosen = std::any_of(known[f].begin(), known[f].end(),
                                                [&](const Run& run) { return run.begin == begin && run.end == end; });
                start.push_back(chosen ? 1 : 0);
                steps.emplace_back(f, Run{begin, end, needs.days[begin]});
            }
        }
        for (std::size_t i = 0; i < at.size() && at.size() > 1; ++i) {
            const double sum = i == 0 ? -1 : i + 1 == at.size() ? 1 : 0;
            programme.add(solver::Row{std::move(at[i]), sum, sum});
        }
    }
    for (std::size_t d = 0; d < taken.size(); ++d) {
        if (!taken[d].empty())
            programme.add(solver::Row{std::move(taken[d]), -solver::unbounded, static_cast<double>(room_[d]) / litre});
    }
    const solver::Solution solved =
        solver::minimise(programme, cost, {.nodes = nodes_of_100 * effort / 100 + 1}, start);
    constexpr double rounding = 1e-6;
    const bool bounded = solved.status == solver::Status::proved || solved.status == solver::Status::limited;
    const int bound = bounded ? std::max(bound_, static_cast<int>(std::ceil(solved.bound - rounding))) : bound_;
    if (solved.values.empty()) return {known, std::min(bound, count(known))};
    std::vector<Runs> plan(needs_.size());
    Room room = room_;
    for (std::size_t c = 0; c < steps.size(); ++c) {
        if (solved.values[c] < 0.5) continue;
        plan[steps[c].first].push_back(steps[c].second);
        take(needs_[steps[c].first], steps[c].second, room, 1);
    }
    // The programme works within a tolerance; what is told is exact.
    const bool sound = std::all_of(room.begin(), room.end(), [](std::int64_t left) { return left >= 0; });
    if (!sound || count(plan) >= count(known)) return {known, std::min(bound, count(known))};
    return {std::move(plan), std::min(bound, count(plan))};
}

}  // namespace

bool fits_at_the_last(const std::vector<TripItem>& items, const std::vector<std::int64_t>& free) {
    const Room room = room_for_waiting(items, free);
    return std::all_of(room.begin(), room.end(), [](std::int64_t left) { return left >= 0; });
}

TripPlan fewest_trips(const std::vector<TripItem>& items, const std::vector<std::int64_t>& free, int effort) {
    const Walks walks(items, free);
    std::vector<Runs> plan = walks.by_rule();
    TripPlan result;
    result.by_rule = Walks::count(plan);
    result.bound = walks.bound();
    if (result.by_rule > result.bound && effort > 0) std::tie(plan, result.bound) = walks.by_programme(plan, effort);
    walks.settle(plan);
    for (std::size_t f = 0; f < plan.size(); ++f) {
        for (const Run& run : plan[f]) result.trips.push_back({static_cast<int>(f), run.day});
    }
    result.bound = std::min(result.bound, result.value());
    for (const TripItem& item : items) {
        int day = item.need;
        for (const Trip& trip : result.trips) {
            if (trip.freezer == item.freezer && trip.day <= item.need) day = trip.day;
        }
        result.item_days.push_back(day);
    }
    return result;
}

}  // namespace samebase::ask::detail
