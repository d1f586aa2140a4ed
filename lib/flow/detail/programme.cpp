#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "basics/exact.hpp"
#include "flow/detail/search.hpp"
#include "solver/programme.hpp"

namespace samebase::flow::detail {

namespace {

using solver::Column;
using solver::Programme;
using solver::Row;
using solver::Terms;

/// A unit as the programme sees it: `starts` are binary columns, by the day on which it is thawed or opened (none where it can be
/// used as it is), `bought` a binary column for a pack that must be bought first (-1 where it is there).
struct Modelled {
    Unit unit;
    int bought = -1;
    int offer_slot = -1;
    std::map<int, int> starts;
};

/// The shortened time of a unit whose thawing or opening falls on a day.
std::pair<Slot, Slot> time_of(const Unit& unit, int day) {
    if (unit.thaw_days > 0) {
        const bool late = day == 0;
        return {late ? dinner_of(0) : std::max(unit.first, lunch_of(day)),
                std::min(unit.last, dinner_of(late ? 0 : day + unit.thawed_days))};
    }
    return {std::max(unit.first, lunch_of(day)), std::min(unit.last, dinner_of(day + unit.opened_days))};
}

class Model {
  public:
    explicit Model(const Component& component) : component_(component), end_(dinner_of(component.days - 1)) {
        for (const Want& want : component.wants) {
            largest_ = std::max(largest_, want.amount);
            want_days_.insert(day_of(want.slot));
        }
        for (const Unit& unit : component.units) largest_ = std::max(largest_, unit.amount);
        for (const Unit& unit : component.units) add_unit(unit, -1);
        if (component.offer) add_offer(*component.offer);
        add_wants();
    }

    std::optional<Programmed> solve() {
        std::vector<Terms> costs;
        for (const int day : want_days_) costs.push_back(unmet_of(day));
        costs.push_back(cost_);
        costs.push_back(order_);
        const auto solution = solver::minimise_in_order(programme_, costs);
        if (solution.values.empty()) return std::nullopt;
        return Programmed{decisions(solution.values), solution.status == solver::Status::proved};
    }

  private:
    /// Amounts are scaled so that the largest is 1,000: the solver's tolerances are absolute.
    [[nodiscard]] double scaled(std::int64_t amount) const {
        return static_cast<double>(amount) * 1000.0 / static_cast<double>(largest_);
    }
    [[nodiscard]] double price_per_scaled(basics::Money price, std::int64_t amount) const {
        return static_cast<double>(price.minor) / scaled(amount);
    }

    void add_unit(const Unit& unit, int offer_slot) {
        Modelled modelled{.unit = unit, .offer_slot = offer_slot, .starts = {}};
        if (offer_slot >= 0) {
            modelled.bought = programme_.add(Column{0, 1, true});
            cost_.emplace_back(modelled.bought, static_cast<double>(unit.price.minor));
        }
        if (unit.thaw_days > 0 || unit.opened_days >= 0) add_starts(modelled);
        units_.push_back(std::move(modelled));
    }

    void add_starts(Modelled& modelled) {
        Row at_most_once{{}, -solver::unbounded, 1};
        for (const int day : want_days_) {
            const Unit& unit = modelled.unit;
            if (unit.thaw_days > 0 && day < unit.thaw_days && !(day == 0 && unit.cold_water)) continue;
            const auto [from, to] = time_of(unit, day);
            if (from > to || dinner_of(day) < unit.first || lunch_of(day) > unit.last) continue;
            const int column = programme_.add(Column{0, 1, true});
            modelled.starts[day] = column;
            at_most_once.terms.emplace_back(column, 1.0);
            order_.emplace_back(column, static_cast<double>(units_.size() + 1));
        }
        if (at_most_once.terms.empty()) return;
        if (modelled.bought >= 0) {
            at_most_once.terms.emplace_back(modelled.bought, -1.0);
            at_most_once.upper = 0;
        }
        programme_.add(std::move(at_most_once));
    }

    /// As many packs at each slot as all that is wanted later could need, one by one.
    void add_offer(const Offer& offer) {
        for (int i = 0; i < static_cast<int>(offer.slots.size()); ++i) {
            const Slot from = offer.slots[static_cast<std::size_t>(i)];
            Unit unit{.amount = offer.pack, .price = offer.price, .first = from, .opened_days = offer.opened_days};
            if (offer.keeps_days >= 0) unit.last = dinner_of(day_of(from) + offer.keeps_days);
            std::int64_t later = 0;
            std::int64_t separate = 0;
            for (const Want& want : component_.wants) {
                if (want.slot < from || want.slot > unit.last) continue;
                later += want.amount;
                separate += basics::scale_up(want.amount, 1, offer.pack);
            }
            const auto most = offer.opened_days >= 0 ? separate : basics::scale_up(later, 1, offer.pack);
            for (std::int64_t n = 0; n < most; ++n) {
                const int before = n > 0 ? units_.back().bought : -1;
                add_unit(unit, i);
                // Packs of one slot are alike: they are taken in order.
                if (before >= 0) programme_.add(Row{{{units_.back().bought, 1.0}, {before, -1.0}}, -solver::unbounded, 0});
            }
        }
    }

    void add_wants() {
        std::vector<Row> within(units_.size());
        for (std::size_t w = 0; w < component_.wants.size(); ++w) {
            const Want& want = component_.wants[w];
            const int unmet = programme_.add(Column{0, scaled(want.amount), false});
            unmet_.push_back(unmet);
            Row met{{{unmet, 1.0}}, scaled(want.amount), scaled(want.amount)};
            for (std::size_t u = 0; u < units_.size(); ++u) {
                const Modelled& modelled = units_[u];
                if (want.slot < modelled.unit.first || want.slot > modelled.unit.last) continue;
                Row started{{}, -solver::unbounded, 0};
                if (!add_condition(modelled, want.slot, started)) continue;
                const int use = programme_.add(Column{0, scaled(std::min(want.amount, modelled.unit.amount)), false});
                met.terms.emplace_back(use, 1.0);
                within[u].terms.emplace_back(use, 1.0);
                if (started.terms.empty()) continue;
                for (auto& [column, factor] : started.terms) factor = -scaled(std::min(want.amount, modelled.unit.amount));
                started.terms.emplace_back(use, 1.0);
                programme_.add(std::move(started));
            }
            programme_.add(std::move(met));
        }
        for (std::size_t u = 0; u < units_.size(); ++u) finish_unit(units_[u], within[u]);
    }

    /// The binary columns of which one must be 1 for the unit to be used at the slot; false where it never can be.
    static bool add_condition(const Modelled& modelled, Slot slot, Row& started) {
        const bool shortened = modelled.unit.thaw_days > 0 || modelled.unit.opened_days >= 0;
        if (!shortened) {
            if (modelled.bought >= 0) started.terms.emplace_back(modelled.bought, 0.0);
            return true;
        }
        for (const auto& [day, column] : modelled.starts) {
            const auto [from, to] = time_of(modelled.unit, day);
            if (from <= slot && slot <= to) started.terms.emplace_back(column, 0.0);
        }
        return !started.terms.empty();
    }

    /// Not more than there is, and the price of what is tossed.
    void finish_unit(const Modelled& modelled, Row& within) {
        const double amount = scaled(modelled.unit.amount);
        const double price = price_per_scaled(modelled.unit.price, modelled.unit.amount);
        // tossed >= amount x (whether its end falls within the balance) - used
        Row tossed{within.terms, 0, solver::unbounded};
        const bool always = modelled.unit.last <= end_ && modelled.bought < 0;
        if (always) tossed.lower = amount;
        if (modelled.unit.last <= end_ && modelled.bought >= 0) tossed.terms.emplace_back(modelled.bought, -amount);
        bool may_end = modelled.unit.last <= end_;
        if (modelled.unit.last > end_) {
            for (const auto& [day, column] : modelled.starts) {
                if (time_of(modelled.unit, day).second > end_) continue;
                tossed.terms.emplace_back(column, -amount);
                may_end = true;
            }
        }
        if (may_end && price > 0) {
            const int column = programme_.add(Column{0, amount, false});
            tossed.terms.emplace_back(column, 1.0);
            cost_.emplace_back(column, price);
            programme_.add(std::move(tossed));
        }
        within.upper = amount;
        if (!within.terms.empty()) programme_.add(std::move(within));
    }

    [[nodiscard]] Terms unmet_of(int day) const {
        Terms terms;
        for (std::size_t w = 0; w < component_.wants.size(); ++w) {
            if (day_of(component_.wants[w].slot) == day) terms.emplace_back(unmet_[w], 1.0);
        }
        return terms;
    }

    [[nodiscard]] Decisions decisions(const std::vector<double>& values) const {
        const auto on = [&](int column) { return column >= 0 && values[static_cast<std::size_t>(column)] > 0.5; };
        Decisions result;
        result.ready_day.assign(component_.units.size(), -1);
        result.opened_day.assign(component_.units.size(), -1);
        if (component_.offer) result.packs.assign(component_.offer->slots.size(), 0);
        for (std::size_t u = 0; u < units_.size(); ++u) {
            const Modelled& modelled = units_[u];
            int start = -1;
            for (const auto& [day, column] : modelled.starts) start = on(column) ? day : start;
            if (u >= component_.units.size()) {
                if (!on(modelled.bought)) continue;
                ++result.packs[static_cast<std::size_t>(modelled.offer_slot)];
                if (component_.offer->opened_days >= 0) result.bought_opened_day.push_back(start);
            } else {
                if (modelled.unit.thaw_days > 0) result.ready_day[u] = start;
                if (modelled.unit.opened_days >= 0) result.opened_day[u] = start;
            }
        }
        return result;
    }

    const Component& component_;
    Slot end_;
    std::int64_t largest_ = 1;
    std::set<int> want_days_;
    Programme programme_;
    std::vector<Modelled> units_;
    std::vector<int> unmet_;
    Terms cost_;
    Terms order_;
};

}  // namespace

std::optional<Programmed> by_programme(const Component& component) {
    return Model(component).solve();
}

}  // namespace samebase::flow::detail
