#include "solver/programme.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "basics/exact.hpp"
#include "flow/detail/search.hpp"

namespace samebase::flow::detail {

namespace {

/// Columns times rows times costs: more may take seconds, and a plan of months has many such programmes.
constexpr std::int64_t most_work = 150'000;
/// Nodes of the search trees of all costs together. What repeats is this limit; the guard is for a solver that hangs.
constexpr std::int64_t most_nodes = 1'000;
constexpr double guard_seconds = 10;

using solver::Column;
using solver::Programme;
using solver::Row;
using solver::Terms;

/// A unit as the programme sees it: `starts` are binary columns, by the day on which it is thawed or opened (none where
/// it can be used as it is). Or packs that are bought at one slot and opened on one day, `packs` a column for how many.
struct Modelled {
    Unit unit;
    int packs = -1;
    int offer_slot = -1;
    int opened_day = -1;
    std::map<int, int> starts;
};

/// The shortened time of a unit whose thawing or opening falls on a day.
std::pair<Slot, Slot> time_of(const Unit& unit, int day) {
    if (unit.thaw_days > 0) {
        const bool late = day == 0;
        return {std::max(unit.first, late ? dinner_of(0) : lunch_of(day)),
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
        for (const Unit& unit : component.units) add_unit(unit);
        if (component.offer) add_offer(*component.offer);
        add_wants();
    }

    std::optional<Programmed> solve(const std::vector<std::int64_t>& least_unmet) {
        std::vector<Terms> costs;
        for (const int day : want_days_) {
            if (least_unmet.empty()) {
                costs.push_back(unmet_of(day));
            } else {
                hold_unmet(day, least_unmet[static_cast<std::size_t>(day)]);
            }
        }
        costs.push_back(cost_);
        costs.push_back(order_);
        const auto count = static_cast<std::int64_t>(costs.size());
        const auto size = static_cast<std::int64_t>(programme_.columns.size() * programme_.rows.size());
        if (size * count > most_work) return std::nullopt;
        const auto each = std::max<std::int64_t>(1, most_nodes / count);
        const auto solution =
            solver::minimise_in_order(programme_, costs, {.nodes = each, .guard_seconds = guard_seconds});
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

    void add_unit(const Unit& unit) {
        Modelled modelled{.unit = unit, .starts = {}};
        if (unit.thaw_days > 0 || unit.opened_days >= 0) add_starts(modelled);
        if (!units_.empty()) start_in_order(units_.back(), modelled);
        units_.push_back(std::move(modelled));
    }

    /// Of units that are alike but for their lots, one does not start before the one before it: nothing is lost, and
    /// the solver need not look at every order.
    void start_in_order(const Modelled& before, const Modelled& after) {
        Unit alike = after.unit;
        alike.lot = before.unit.lot;
        if (alike != before.unit) return;
        Terms until;
        for (const auto& [day, column] : after.starts) {
            until.emplace_back(column, 1.0);
            until.emplace_back(before.starts.at(day), -1.0);
            programme_.add(Row{until, -solver::unbounded, 0});
        }
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
        if (!at_most_once.terms.empty()) programme_.add(std::move(at_most_once));
    }

    void add_offer(const Offer& offer) {
        for (int i = 0; i < static_cast<int>(offer.slots.size()); ++i) {
            const Slot from = offer.slots[static_cast<std::size_t>(i)];
            Unit unit{.amount = offer.pack, .price = offer.price, .first = from, .opened_days = offer.opened_days};
            if (offer.keeps_days >= 0) unit.last = dinner_of(day_of(from) + offer.keeps_days);
            if (offer.opened_days < 0) {
                add_packs(unit, i, -1);
                continue;
            }
            for (const int day : want_days_) {
                // Of packs opened on one day, those bought last that are there at its lunch last at least as long as
                // any.
                const bool later = i + 1 < static_cast<int>(offer.slots.size()) &&
                                   offer.slots[static_cast<std::size_t>(i) + 1] <= lunch_of(day);
                if (later) continue;
                Unit opened = unit;
                std::tie(opened.first, opened.last) = time_of(unit, day);
                add_packs(opened, i, day);
            }
        }
    }

    /// As many packs as all that is wanted in their time could need.
    void add_packs(const Unit& unit, int offer_slot, int opened_day) {
        std::int64_t wanted = 0;
        for (const Want& want : component_.wants) {
            if (unit.first <= want.slot && want.slot <= unit.last) wanted += want.amount;
        }
        if (wanted == 0) return;
        const auto most = static_cast<double>(basics::scale_up(wanted, 1, unit.amount));
        const int packs = programme_.add(Column{0, most, true});
        cost_.emplace_back(packs, static_cast<double>(unit.price.minor));
        order_.emplace_back(packs, static_cast<double>(units_.size() + 1));
        units_.push_back(
            {.unit = unit, .packs = packs, .offer_slot = offer_slot, .opened_day = opened_day, .starts = {}});
    }

    void add_wants() {
        std::vector<Row> within(units_.size(), Row{{}, -solver::unbounded, 0});
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
                const auto most = modelled.packs >= 0 ? want.amount : std::min(want.amount, modelled.unit.amount);
                const int use = programme_.add(Column{0, scaled(most), false});
                met.terms.emplace_back(use, 1.0);
                within[u].terms.emplace_back(use, 1.0);
                if (started.terms.empty()) continue;
                for (auto& [column, factor] : started.terms)
                    factor = -scaled(std::min(want.amount, modelled.unit.amount));
                started.terms.emplace_back(use, 1.0);
                programme_.add(std::move(started));
            }
            programme_.add(std::move(met));
        }
        for (std::size_t u = 0; u < units_.size(); ++u) finish_unit(units_[u], within[u]);
    }

    /// The binary columns of which one must be 1 for the unit to be used at the slot; false where it never can be.
    static bool add_condition(const Modelled& modelled, Slot slot, Row& started) {
        if (modelled.packs >= 0) {
            started.terms.emplace_back(modelled.packs, 0.0);
            return true;
        }
        if (modelled.unit.thaw_days <= 0 && modelled.unit.opened_days < 0) return true;
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
        // tossed >= amount x (whether, or how many times, its end falls within the balance) - used
        Row tossed{within.terms, 0, solver::unbounded};
        bool may_end = modelled.unit.last <= end_;
        if (modelled.packs >= 0) {
            within.terms.emplace_back(modelled.packs, -amount);
            tossed.terms.emplace_back(modelled.packs, -amount);
        } else {
            within.upper = amount;
            if (may_end) tossed.lower = amount;
        }
        if (!may_end) {
            for (const auto& [day, column] : modelled.starts) {
                if (time_of(modelled.unit, day).second > end_) continue;
                tossed.terms.emplace_back(column, -amount);
                may_end = true;
            }
        }
        if (may_end && price > 0) {
            const int column = programme_.add(Column{});
            tossed.terms.emplace_back(column, 1.0);
            cost_.emplace_back(column, price);
            programme_.add(std::move(tossed));
        }
        if (!within.terms.empty()) programme_.add(std::move(within));
    }

    void hold_unmet(int day, std::int64_t least) {
        Terms terms = unmet_of(day);
        if (least == 0) {
            for (const auto& [column, factor] : terms) programme_.columns[static_cast<std::size_t>(column)].upper = 0;
        } else {
            programme_.add(Row{std::move(terms), -solver::unbounded, scaled(least) * (1 + 1e-9)});
        }
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
            if (modelled.packs >= 0) {
                const auto packs = static_cast<int>(std::lround(values[static_cast<std::size_t>(modelled.packs)]));
                result.packs[static_cast<std::size_t>(modelled.offer_slot)] += packs;
                if (modelled.opened_day < 0) continue;
                result.bought_opened_day.insert(result.bought_opened_day.end(), static_cast<std::size_t>(packs),
                                                modelled.opened_day);
            } else {
                if (modelled.unit.thaw_days > 0) result.ready_day[u] = start;
                if (modelled.unit.thaw_days <= 0 && modelled.unit.opened_days >= 0) result.opened_day[u] = start;
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

std::optional<Programmed> by_programme(const Component& component, const std::vector<std::int64_t>& least_unmet) {
    return Model(component).solve(least_unmet);
}

}  // namespace samebase::flow::detail
