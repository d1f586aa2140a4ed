#include "flow/lot_sizing.hpp"

#include <algorithm>
#include <cassert>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>

namespace samebase::flow {

namespace {

/// So many closed packs of one size that end together.
struct Closed {
    int last = 0;
    std::int64_t size = 0;
    std::int64_t count = 0;

    friend auto operator<=>(const Closed&, const Closed&) = default;
};

/// What is in stock. Two that compare equal have the same future.
struct Stock {
    std::vector<Closed> closed;  ///< by `last`, then size
    std::int64_t open = 0;       ///< of the pack that is open
    int open_last = 0;

    friend auto operator<=>(const Stock&, const Stock&) = default;

    [[nodiscard]] std::int64_t amount() const {
        std::int64_t sum = open;
        for (const Closed& some : closed) sum += some.size * some.count;
        return sum;
    }
};

/// The stock through one period.
class Period {
  public:
    Period(const LotSizing& problem, int now) : problem_(problem), now_(now) {}

    void arrive(Stock& stock, std::int64_t size, std::int64_t count) const {
        if (count == 0) return;
        const int end = static_cast<int>(problem_.demand.size()) - 1;
        const int last = problem_.keeps < 0 ? end : std::min(end, now_ + problem_.keeps);
        // Where opening changes nothing, it is only how much ends when.
        add(stock, problem_.opened < 0 ? Closed{last, 1, size * count} : Closed{last, size, count});
    }

    static void add(Stock& stock, const Closed& some) {
        const auto at =
            std::lower_bound(stock.closed.begin(), stock.closed.end(), some, [](const Closed& a, const Closed& b) {
                return std::tuple{a.last, a.size} < std::tuple{b.last, b.size};
            });
        if (at != stock.closed.end() && at->last == some.last && at->size == some.size) {
            at->count += some.count;
        } else {
            stock.closed.insert(at, some);
        }
    }

    /// Uses what the period wants; how much of it is not there.
    [[nodiscard]] std::int64_t use(Stock& stock) const {
        std::int64_t wanted = problem_.demand[static_cast<std::size_t>(now_)];
        while (wanted > 0) {
            if (stock.open == 0 && !open_one(stock)) break;
            const std::int64_t taken = std::min(wanted, stock.open);
            stock.open -= taken;
            wanted -= taken;
        }
        return wanted;
    }

    /// What ends with this period is gone.
    void end(Stock& stock) const {
        if (stock.open_last <= now_) stock.open = 0;
        if (problem_.opened < 0 && stock.open > 0) add(stock, {stock.open_last, 1, std::exchange(stock.open, 0)});
        if (stock.open == 0) stock.open_last = 0;
        std::erase_if(stock.closed, [&](const Closed& some) { return some.last <= now_; });
    }

  private:
    /// The next pack; where opening changes nothing, all that ends with it.
    bool open_one(Stock& stock) const {
        if (stock.closed.empty()) return false;
        Closed& first = stock.closed.front();
        const std::int64_t packs = problem_.opened < 0 ? first.count : 1;
        stock.open = first.size * packs;
        stock.open_last = problem_.opened < 0 ? first.last : std::min(first.last, now_ + problem_.opened);
        first.count -= packs;
        if (first.count == 0) stock.closed.erase(stock.closed.begin());
        return true;
    }

    const LotSizing& problem_;
    int now_;
};

Stock opening(const LotSizing& problem) {
    Stock stock;
    for (const OpeningStock& some : problem.stock) {
        if (some.amount > 0 && some.last >= 0)
            Period::add(stock,
                        problem.opened < 0 ? Closed{some.last, 1, some.amount} : Closed{some.last, some.amount, 1});
    }
    return stock;
}

/// Holding is counted as if everything stayed to the end, less what each unit that is used did not stay: then it is a
/// cost of buying.
std::int64_t holding_of(const LotSizing& problem, std::size_t period, std::int64_t amount) {
    return problem.hold * amount * static_cast<std::int64_t>(problem.demand.size() - 1 - period);
}

/// Of stock that is there at the beginning, less what is used at a period and did not stay to the end.
std::int64_t held_anyway(const LotSizing& problem) {
    std::int64_t sum = 0;
    for (const OpeningStock& some : problem.stock) sum -= holding_of(problem, 0, some.amount);
    for (std::size_t t = 0; t < problem.demand.size(); ++t) sum += holding_of(problem, t, problem.demand[t]);
    return -sum;
}

/// How the stock came to be as it is: the cheapest way, of equal ones that which bought later.
struct Reached {
    std::int64_t cost = 0;
    std::int64_t earliness = 0;  ///< packs by the periods that they were bought before the end
    std::int64_t short_of = 0;
    std::size_t from = 0;     ///< position in the period before
    std::vector<int> bought;  ///< by size

    [[nodiscard]] auto rank() const { return std::tie(cost, earliness); }
};

using States = std::map<Stock, Reached>;

/// One period after another.
class Search {
  public:
    Search(const LotSizing& problem, std::size_t most_states) : problem_(problem), most_states_(most_states) {
        ahead_.assign(problem.demand.size() + 1, 0);
        for (std::size_t t = problem.demand.size(); t-- > 0;) ahead_[t] = ahead_[t + 1] + problem.demand[t];
        for (const PackSize& pack : problem.packs) {
            for (std::size_t t = 1; t < pack.cost.size(); ++t) {
                later_is_no_dearer_ =
                    later_is_no_dearer_ && pack.cost[t] + holding_of(problem, t, pack.amount) <=
                                               pack.cost[t - 1] + holding_of(problem, t - 1, pack.amount);
            }
        }
    }

    LotPlan run() {
        std::vector<std::vector<std::pair<Stock, Reached>>> layers;
        layers.push_back({{opening(problem_), Reached{}}});
        for (std::size_t t = 0; t < problem_.demand.size(); ++t) {
            States next;
            for (std::size_t i = 0; i < layers.back().size(); ++i) leave(layers.back()[i], i, t, next);
            layers.push_back(kept(std::move(next)));
        }
        return traced(layers);
    }
    [[nodiscard]] bool complete() const { return complete_; }

  private:
    /// As many packs as may still be of use: those that hold what is wanted while they keep, or where a pack once
    /// opened does not last, one a period that wants anything.
    [[nodiscard]] std::int64_t most(std::size_t t, std::int64_t there, std::int64_t size) const {
        const std::size_t periods = problem_.demand.size();
        const std::size_t to =
            problem_.keeps < 0 ? periods : std::min(periods, t + 1 + static_cast<std::size_t>(problem_.keeps));
        const std::int64_t wanted = ahead_[t] - ahead_[to];
        // What is there ends sooner, and may not all be of use: then as many packs as if nothing were there.
        const std::int64_t lacking = problem_.keeps < 0 ? std::max<std::int64_t>(0, wanted - there) : wanted;
        if (problem_.opened < 0) return (lacking + size - 1) / size;
        std::int64_t packs = 0;
        for (std::size_t s = t; s < to; ++s) packs += (problem_.demand[s] + size - 1) / size;
        return packs;
    }

    /// How far the stock goes when no more is bought from now on: the first period that lacks something, and where
    /// nothing can be bought until then, how little it lacks.
    using Covered = std::pair<std::size_t, std::int64_t>;
    [[nodiscard]] Covered covered(Stock stock, std::size_t t, const std::vector<int>& bought) const {
        const Period now(problem_, static_cast<int>(t));
        for (std::size_t i = 0; i < bought.size(); ++i) now.arrive(stock, problem_.packs[i].amount, bought[i]);
        if (problem_.opened < 0) return covered_by(stock.closed, t);
        for (std::size_t s = t; s < problem_.demand.size(); ++s) {
            const Period period(problem_, static_cast<int>(s));
            const std::int64_t lacking = period.use(stock);
            if (lacking > 0) return {s, sold_between(t + 1, s) ? 0 : -lacking};
            period.end(stock);
        }
        return {problem_.demand.size(), 0};
    }

    /// The same where opening changes nothing: what ends first goes first.
    [[nodiscard]] Covered covered_by(std::vector<Closed>& closed, std::size_t t) const {
        auto first = closed.begin();
        for (std::size_t s = t; s < problem_.demand.size(); ++s) {
            std::int64_t wanted = problem_.demand[s];
            while (wanted > 0 && first != closed.end()) {
                const bool over = first->last < static_cast<int>(s) || first->count == 0;
                const std::int64_t taken = over ? 0 : std::min(wanted, first->count);
                first->count -= taken;
                wanted -= taken;
                if (over) ++first;
            }
            if (wanted > 0) return {s, sold_between(t + 1, s) ? 0 : -wanted};
        }
        return {problem_.demand.size(), 0};
    }

    [[nodiscard]] bool sold_between(std::size_t from, std::size_t to) const {
        for (std::size_t s = from; s <= to; ++s) {
            if (problem_.setup[s]) return true;
        }
        return false;
    }

    /// Whether something is there that lasts longer than what is bought now, which then saves it for later.
    [[nodiscard]] bool outlasts(const Stock& stock, std::size_t t) const {
        return problem_.keeps >= 0 && !stock.closed.empty() &&
               stock.closed.back().last > static_cast<int>(t) + problem_.keeps;
    }

    /// Where nothing becomes dearer, a pack that covers no further period can as well be bought with those that do.
    [[nodiscard]] bool each_covers_more(const Stock& stock, std::size_t t, std::vector<int>& bought) const {
        if (!later_is_no_dearer_ || outlasts(stock, t)) return true;
        const Covered all = covered(stock, t, bought);
        for (int& packs : bought) {
            if (packs == 0) continue;
            --packs;
            const bool idle = covered(stock, t, bought) >= all;
            ++packs;
            if (idle) return false;
        }
        return true;
    }

    /// Of one size, packs are added as long as each covers more, and no more than cover all.
    void leave_with_one_size(const std::pair<Stock, Reached>& from, std::size_t position, std::size_t t,
                             States& next) const {
        const std::int64_t limit = problem_.setup[t] ? most(t, from.first.amount(), problem_.packs.front().amount) : 0;
        const bool all_count = !later_is_no_dearer_ || outlasts(from.first, t);
        std::optional<Covered> before;
        for (std::int64_t n = 0; n <= limit; ++n) {
            const std::vector<int> bought{static_cast<int>(n)};
            const Covered now = limit > 0 ? covered(from.first, t, bought) : Covered{};
            if (all_count || !before || now > *before) land(from, position, t, bought, next);
            if (now.first == problem_.demand.size()) return;
            before = now;
        }
    }

    void leave(const std::pair<Stock, Reached>& from, std::size_t position, std::size_t t, States& next) const {
        if (problem_.packs.size() == 1) return leave_with_one_size(from, position, t, next);
        std::vector<int> bought(problem_.packs.size(), 0);
        choose(from, position, t, 0, bought, from.first.amount(), next);
    }

    /// Every number of packs of this size and those after it.
    void choose(const std::pair<Stock, Reached>& from, std::size_t position, std::size_t t, std::size_t size,
                std::vector<int>& bought, std::int64_t there, States& next) const {
        if (size == problem_.packs.size()) {
            if (each_covers_more(from.first, t, bought)) land(from, position, t, bought, next);
            return;
        }
        const std::int64_t amount = problem_.packs[size].amount;
        const std::int64_t limit = problem_.setup[t] ? most(t, there, amount) : 0;
        for (std::int64_t n = 0; n <= limit; ++n) {
            bought[size] = static_cast<int>(n);
            choose(from, position, t, size + 1, bought, there + n * amount, next);
        }
        bought[size] = 0;
    }

    void land(const std::pair<Stock, Reached>& from, std::size_t position, std::size_t t,
              const std::vector<int>& bought, States& next) const {
        Stock stock = from.first;
        Reached reached = from.second;
        const Period period(problem_, static_cast<int>(t));
        bool any = false;
        for (std::size_t i = 0; i < bought.size(); ++i) {
            const PackSize& pack = problem_.packs[i];
            period.arrive(stock, pack.amount, bought[i]);
            reached.cost += bought[i] * (pack.cost[t] + holding_of(problem_, t, pack.amount));
            reached.earliness += bought[i] * static_cast<std::int64_t>(problem_.demand.size() - t);
            any = any || bought[i] > 0;
        }
        if (any) reached.cost += *problem_.setup[t];
        const std::int64_t lacking = period.use(stock);
        reached.short_of += lacking;
        reached.cost += lacking * problem_.shortage + holding_of(problem_, t, lacking);
        period.end(stock);
        reached.from = position;
        reached.bought = bought;
        const auto [at, is_new] = next.try_emplace(std::move(stock), reached);
        if (!is_new && reached.rank() < at->second.rank()) at->second = std::move(reached);
    }

    /// All of them, or where there are too many the cheapest for what they hold.
    std::vector<std::pair<Stock, Reached>> kept(States&& states) {
        std::vector<std::pair<Stock, Reached>> list(std::make_move_iterator(states.begin()),
                                                    std::make_move_iterator(states.end()));
        if (list.size() <= most_states_) return list;
        complete_ = false;
        std::stable_sort(list.begin(), list.end(),
                         [](const auto& a, const auto& b) { return a.second.rank() < b.second.rank(); });
        list.resize(most_states_);
        return list;
    }

    [[nodiscard]] LotPlan traced(const std::vector<std::vector<std::pair<Stock, Reached>>>& layers) const {
        const auto& last = layers.back();
        const auto best = std::min_element(
            last.begin(), last.end(), [](const auto& a, const auto& b) { return a.second.rank() < b.second.rank(); });
        LotPlan plan;
        plan.cost = best->second.cost + held_anyway(problem_);
        plan.short_of = best->second.short_of;
        plan.packs.resize(problem_.demand.size());
        auto at = static_cast<std::size_t>(best - last.begin());
        for (std::size_t t = problem_.demand.size(); t > 0; --t) {
            const Reached& reached = layers[t][at].second;
            plan.packs[t - 1] = reached.bought;
            at = reached.from;
        }
        return plan;
    }

    const LotSizing& problem_;
    std::size_t most_states_;
    std::vector<std::int64_t> ahead_;  ///< what is wanted from a period on
    bool later_is_no_dearer_ = true;
    bool complete_ = true;
};

}  // namespace

std::optional<std::string> check(const LotSizing& problem) {
    const std::size_t periods = problem.demand.size();
    if (problem.setup.size() != periods) return "not a setup for each period";
    const auto negative = [](std::int64_t value) { return value < 0; };
    if (std::any_of(problem.demand.begin(), problem.demand.end(), negative)) return "a demand below 0";
    for (const PackSize& pack : problem.packs) {
        if (pack.amount <= 0) return "a pack of nothing";
        if (pack.cost.size() != periods) return "not a cost for each period";
        if (std::any_of(pack.cost.begin(), pack.cost.end(), negative)) return "a cost below 0";
    }
    if (std::any_of(problem.setup.begin(), problem.setup.end(), [](const auto& s) { return s && *s < 0; }))
        return "a setup below 0";
    if (problem.hold < 0 || problem.shortage < 0) return "a cost below 0";
    return std::nullopt;
}

LotPlan carry_out(const LotSizing& problem, std::vector<std::vector<int>> packs) {
    assert(!check(problem) && packs.size() == problem.demand.size());
    LotPlan plan;
    Stock stock = opening(problem);
    plan.cost = held_anyway(problem);
    for (std::size_t t = 0; t < packs.size(); ++t) {
        const Period period(problem, static_cast<int>(t));
        bool any = false;
        for (std::size_t i = 0; i < packs[t].size(); ++i) {
            const PackSize& pack = problem.packs[i];
            period.arrive(stock, pack.amount, packs[t][i]);
            plan.cost += packs[t][i] * (pack.cost[t] + holding_of(problem, t, pack.amount));
            any = any || packs[t][i] > 0;
        }
        if (any) plan.cost += problem.setup[t].value_or(0);
        const std::int64_t lacking = period.use(stock);
        plan.short_of += lacking;
        plan.cost += lacking * problem.shortage + holding_of(problem, t, lacking);
        period.end(stock);
    }
    plan.packs = std::move(packs);
    return plan;
}

LotPlan best_lots(const LotSizing& problem, std::size_t most_states) {
    assert(!check(problem));
    Search search(problem, most_states);
    LotPlan plan = search.run();
    plan.bound = plan.cost;
    if (search.complete()) return plan;
    // Goods that keep to the end cost no more, and their stock has one figure only.
    LotSizing keeping = problem;
    keeping.keeps = -1;
    keeping.opened = -1;
    for (OpeningStock& some : keeping.stock) some.last = static_cast<int>(problem.demand.size()) - 1;
    Search relaxed(keeping, most_states);
    const LotPlan least = relaxed.run();
    plan.bound = relaxed.complete() ? std::min(plan.cost, least.cost) : std::min<std::int64_t>(plan.cost, 0);
    return plan;
}

}  // namespace samebase::flow
