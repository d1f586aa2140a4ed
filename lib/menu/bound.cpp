#include "menu/bound.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "menu/supply.hpp"

namespace samebase::menu {

namespace {

/// Money in thousandths, as doubles: prices are not whole.
struct Segment {
    double amount = 0;
    double worth = 0;  ///< of taking a unit of it
};

/// What options take of an item, at most and, where they take any, at least.
struct Takes {
    double most = 0;
    double least = std::numeric_limits<double>::max();
    std::vector<double> by_slot;  ///< the most at each
};

std::vector<Takes> takes_of(const Problem& problem) {
    std::vector<Takes> all(problem.items.size());
    for (Takes& takes : all) takes.by_slot.assign(problem.slots.size(), 0);
    for (const Option& option : problem.options) {
        for (const Need& need : option.needs) {
            Takes& takes = all[static_cast<std::size_t>(need.item)];
            const auto amount = static_cast<double>(need.amount);
            double& most = takes.by_slot[static_cast<std::size_t>(option.slot)];
            takes.most += std::max(0.0, amount - most);
            most = std::max(most, amount);
            takes.least = std::min(takes.least, amount);
        }
    }
    return all;
}

/// How often something can come in so many days that is never had less than so many apart.
int times_within(int days, int apart) {
    return (days + apart - 1) / apart;
}

/// What an item is worth at most where options take so much of it: exact where they take nothing. Else they eat first
/// what pays best, each batch as far as there is anything in its time to eat it, and then buy whole packs.
class Envelope {
  public:
    Envelope(const Problem& problem, const Item& item, const Takes& takes) : most_(takes.most), least_(takes.least) {
        nothing_ = static_cast<double>(Supply().run(item, {}).worth(item));
        const double keeps = item.kept_thousandths / 1000.0;
        if (item.offer) {
            pack_ = static_cast<double>(item.offer->pack);
            price_ = static_cast<double>(thousandths * item.offer->price.minor);
            kept_ = keeps * price_ / pack_;
        }
        there(problem, item, takes, keeps);
    }

    struct Best {
        double worth = 0;
        double amount = 0;
    };

    /// The most that any amount is worth where each unit of it is paid for with `price`, and that amount.
    [[nodiscard]] Best best(double price) const {
        Best best{nothing_, 0};
        const auto consider = [&](double amount) {
            if (amount < least_ || amount > most_) return;
            const double worth = with(amount) + price * amount;
            if (worth > best.worth) best = {worth, amount};
        };
        consider(least_);
        consider(most_);
        double full = 0;
        for (const Segment& segment : segments_) consider(full += segment.amount);
        if (pack_ == 0) return best;
        while (full <= most_) consider(full += pack_);
        return best;
    }

  private:
    void there(const Problem& problem, const Item& item, const Takes& takes, double keeps) {
        const double bought_at = pack_ > 0 ? price_ / pack_ : std::numeric_limits<double>::max();
        const flow::Slot end = flow::dinner_of(item.days - 1);
        for (const Batch& batch : item.there) {
            const auto amount = static_cast<double>(batch.amount);
            const double each = static_cast<double>(batch.price) / static_cast<double>(batch.whole);
            const bool ends = batch.last <= end;
            start_ += (ends ? -each : keeps * each) * amount;
            const double eaten = std::min(amount, in_time(problem, takes, batch));
            if (eaten > 0) segments_.push_back({eaten, ends ? each : -std::min(keeps * each, bought_at)});
        }
        std::stable_sort(segments_.begin(), segments_.end(),
                         [](const Segment& a, const Segment& b) { return a.worth > b.worth; });
    }

    /// All that could eat of a batch while it is good.
    static double in_time(const Problem& problem, const Takes& takes, const Batch& batch) {
        double sum = 0;
        for (std::size_t s = 0; s < problem.slots.size(); ++s)
            sum += batch.first <= problem.slots[s].time && problem.slots[s].time <= batch.last ? takes.by_slot[s] : 0;
        return sum;
    }

    [[nodiscard]] double with(double amount) const {
        double worth = start_;
        double open = amount;
        for (const Segment& segment : segments_) {
            const double taken = std::min(segment.amount, open);
            worth += taken * segment.worth;
            open -= taken;
        }
        if (open <= 0 || pack_ == 0) return worth;
        // Amounts are whole: what is a hair above a whole pack is that pack.
        const double packs = std::ceil(open / pack_ - 1e-9);
        return worth - packs * price_ + kept_ * (packs * pack_ - open);
    }

    double most_;
    double least_;
    double nothing_ = 0;
    double start_ = 0;
    double pack_ = 0;  ///< 0: cannot be bought
    double price_ = 0;
    double kept_ = 0;  ///< of a unit that was bought and is left
    std::vector<Segment> segments_;
};

class Relaxation {
  public:
    explicit Relaxation(const Problem& problem) : problem_(problem), prices_(problem.items.size(), 0) {
        const std::vector<Takes> takes = takes_of(problem);
        for (std::size_t i = 0; i < takes.size(); ++i) {
            envelopes_.emplace_back(problem, problem.items[i], takes[i]);
            most_.push_back(takes[i].most);
        }
        caps_.assign(problem.groups.size(), -1);
        tolls_.assign(problem.groups.size(), 0);
        for (std::size_t g = 0; g < problem.groups.size(); ++g) {
            const Group& group = problem.groups[g];
            if (group.never && group.within > 0) caps_[g] = times_within(problem.days, group.within);
        }
    }

    /// The bound at the prices, and the subgradient there.
    double bound() {
        taken_.assign(prices_.size(), 0);
        times_.assign(tolls_.size(), 0);
        double total = 0;
        for (const MealSlot& slot : problem_.slots) total += fill(slot);
        for (std::size_t i = 0; i < prices_.size(); ++i) {
            const auto [worth, amount] = envelopes_[i].best(prices_[i]);
            total += worth;
            taken_[i] = amount - taken_[i];
        }
        for (std::size_t g = 0; g < tolls_.size(); ++g) {
            if (caps_[g] < 0) continue;
            total += tolls_[g] * caps_[g];
            times_[g] = caps_[g] - times_[g];
        }
        return total;
    }

    /// Against the subgradient, each item in units of what is taken of it at most.
    void move(double gap, double step) {
        double norm = 0;
        for (std::size_t i = 0; i < prices_.size(); ++i) {
            if (most_[i] > 0) norm += (taken_[i] / most_[i]) * (taken_[i] / most_[i]);
        }
        for (std::size_t g = 0; g < tolls_.size(); ++g) {
            if (caps_[g] >= 0 && (tolls_[g] > 0 || times_[g] < 0)) norm += times_[g] * times_[g];
        }
        if (norm == 0) return;
        const double scale = step * std::max(1.0, gap) / norm;
        for (std::size_t i = 0; i < prices_.size(); ++i) {
            if (most_[i] > 0) prices_[i] -= scale * taken_[i] / (most_[i] * most_[i]);
        }
        for (std::size_t g = 0; g < tolls_.size(); ++g) {
            if (caps_[g] >= 0) tolls_[g] = std::max(0.0, tolls_[g] - scale * times_[g]);
        }
    }

    [[nodiscard]] double profit(const Option& option) const {
        auto worth = static_cast<double>(option.worth);
        for (const Need& need : option.needs)
            worth -= prices_[static_cast<std::size_t>(need.item)] * static_cast<double>(need.amount);
        for (const int g : option.groups) worth -= tolls_[static_cast<std::size_t>(g)];
        return worth;
    }

    [[nodiscard]] Ranked ranked() const {
        Ranked ranked;
        for (const MealSlot& slot : problem_.slots) {
            std::vector<std::pair<double, int>> options;
            for (const int o : slot.options)
                options.emplace_back(-profit(problem_.options[static_cast<std::size_t>(o)]), o);
            std::sort(options.begin(), options.end());
            auto& here = ranked.emplace_back();
            for (const auto& [minus, option] : options) here.push_back(option);
        }
        return ranked;
    }

  private:
    double fill(const MealSlot& slot) {
        auto best = -static_cast<double>(slot.empty);
        const Option* chosen = nullptr;
        for (const int o : slot.options) {
            const Option& option = problem_.options[static_cast<std::size_t>(o)];
            const double worth = profit(option);
            if (worth <= best) continue;
            best = worth;
            chosen = &option;
        }
        if (chosen == nullptr) return best;
        for (const Need& need : chosen->needs)
            taken_[static_cast<std::size_t>(need.item)] += static_cast<double>(need.amount);
        for (const int g : chosen->groups) times_[static_cast<std::size_t>(g)] += 1;
        return best;
    }

    const Problem& problem_;
    std::vector<Envelope> envelopes_;
    std::vector<double> prices_;  ///< by item: of a unit of its amount
    std::vector<double> tolls_;   ///< by group: of an option in it
    std::vector<double> most_;    ///< by item: what all slots can take at most
    std::vector<double> taken_;   ///< by item: the subgradient
    std::vector<double> times_;   ///< by group: the subgradient
    std::vector<double> caps_;    ///< by group: how often it can come in all; below 0: any number of times
};

/// Of each item every line is rounded to a thousandth.
Worth roundings(const Problem& problem) {
    Worth lines = 0;
    for (const Item& item : problem.items) lines += static_cast<Worth>(item.there.size() + problem.slots.size());
    return lines;
}

}  // namespace

Bound bound(const Problem& problem, Worth known, int rounds) {
    constexpr int patience = 20;
    Relaxation relaxation(problem);
    double least = std::numeric_limits<double>::max();
    Bound result;
    double step = 1;
    int since = 0;
    for (int round = 0; round < rounds; ++round) {
        const double here = relaxation.bound();
        if (here < least) {
            least = here;
            since = 0;
            if (round * 2 > rounds || round + 1 == rounds) result.options = relaxation.ranked();
        } else if (++since == patience) {
            step /= 2;
            since = 0;
        }
        relaxation.move(here - static_cast<double>(known), step);
    }
    if (result.options.empty()) result.options = relaxation.ranked();
    result.value = std::max(known, static_cast<Worth>(std::ceil(least)) + roundings(problem));
    return result;
}

}  // namespace samebase::menu
