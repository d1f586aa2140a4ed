#include "support/glpk_oracle.hpp"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iostream>
#include <map>
#include <numeric>

namespace samebase::tests {

namespace {

using flow::Component;
using flow::Slot;

/// From when to when a unit can be drawn from (never, where `from` is after `to`), and when its rest is past its time.
struct Way {
    Slot from = 0;
    Slot to = flow::never;
    Slot rest_until = flow::never;
};

Way drawn(Slot from, Slot to) {
    return {from, to, to};
}

Way left_alone(Slot last) {
    return {flow::never, -1, last};
}

std::vector<Way> ways_of_frozen(const flow::Unit& unit, int days) {
    std::vector<Way> ways{left_alone(unit.last)};
    if (unit.cold_water) ways.push_back(drawn(std::max(unit.first, Slot{2}), std::min(unit.last, Slot{2})));
    for (int day = unit.thaw_days; day < days; ++day) {
        ways.push_back(drawn(std::max(unit.first, 3 * day), std::min(unit.last, 3 * (day + unit.thawed_days) + 2)));
    }
    return ways;
}

std::vector<Way> ways_of_closed(Slot first, Slot last, int opened_days, int days) {
    std::vector<Way> ways{left_alone(last)};
    for (int day = 0; day < days; ++day) {
        ways.push_back(drawn(std::max(first, 3 * day), std::min(last, 3 * (day + opened_days) + 2)));
    }
    return ways;
}

/// The programme in GLPK's own terms: columns and rows count from 1.
class Model {
  public:
    explicit Model(const Component& component)
        : component_(component), problem_(glp_create_prob()), end_(3 * component.days - 1) {
        glp_term_out(GLP_OFF);
        glp_set_obj_dir(problem_, GLP_MIN);
        for (const auto& want : component.wants) {
            step_ = std::gcd(step_, want.amount);
            wanted_[want.slot] += want.amount;
        }
        for (const auto& unit : component.units) step_ = std::gcd(step_, unit.amount);
        if (component.offer) step_ = std::gcd(step_, component.offer->pack);
        for (const auto& [slot, amount] : wanted_) met_[slot] = row(GLP_DB, 0, steps(amount));
        for (const auto& unit : component.units) add(unit);
        if (component.offer) add(*component.offer);
        add_days();
    }
    Model(const Model&) = delete;
    Model& operator=(const Model&) = delete;
    ~Model() { glp_delete_prob(problem_); }

    OracleValue solve() {
        OracleValue value{std::vector<std::int64_t>(static_cast<std::size_t>(component_.days), 0), 0};
        for (const auto& [day, row_of_day] : day_rows_) aim(row_of_day);
        run();
        for (const auto& [day, row_of_day] : day_rows_) {
            if (glp_mip_row_val(problem_, row_of_day) < wanted_on(day) - 0.5) {
                clear_aim();
                aim(row_of_day);
                run();
            }
            const double met = std::round(glp_mip_row_val(problem_, row_of_day));
            glp_set_row_bnds(problem_, row_of_day, GLP_LO, met - 1e-5, 0);
            value.unmet[static_cast<std::size_t>(day)] = static_cast<std::int64_t>(wanted_on(day) - met) * step_;
        }
        clear_aim();
        for (const auto& [column, price] : costs_) glp_set_obj_coef(problem_, column, price);
        run();
        value.cost = glp_mip_obj_val(problem_);
        return value;
    }

  private:
    using Terms = std::vector<std::pair<int, double>>;

    [[nodiscard]] double steps(std::int64_t amount) const { return static_cast<double>(amount / step_); }

    [[nodiscard]] double wanted_on(int day) const {
        double sum = 0;
        for (const auto& [slot, amount] : wanted_) sum += slot / 3 == day ? steps(amount) : 0;
        return sum;
    }

    [[nodiscard]] double all_wanted() const {
        double sum = 0;
        for (const auto& [slot, amount] : wanted_) sum += steps(amount);
        return sum;
    }

    int row(int kind, double lower, double upper) {
        const int number = glp_add_rows(problem_, 1);
        glp_set_row_bnds(problem_, number, kind, lower, upper);
        return number;
    }

    int column(int kind) {
        const int number = glp_add_cols(problem_, 1);
        glp_set_col_bnds(problem_, number, GLP_LO, 0, 0);
        glp_set_col_kind(problem_, number, kind);
        return number;
    }

    void set(int number, const Terms& terms) {
        std::vector<int> at{0};
        std::vector<double> factor{0};
        for (const auto& [to, by] : terms) {
            at.push_back(to);
            factor.push_back(by);
        }
        glp_set_mat_row(problem_, number, static_cast<int>(terms.size()), at.data(), factor.data());
    }

    void add(const flow::Unit& unit) {
        std::vector<Way> ways{drawn(unit.first, unit.last)};
        if (unit.thaw_days > 0) {
            ways = ways_of_frozen(unit, component_.days);
        } else if (unit.opened_days >= 0) {
            ways = ways_of_closed(unit.first, unit.last, unit.opened_days, component_.days);
        }
        Terms goes;
        for (const Way& way : ways)
            goes.emplace_back(go(way, unit.amount, static_cast<double>(unit.price.minor), 0), 1.0);
        set(row(GLP_FX, 1, 1), goes);
    }

    void add(const flow::Offer& offer) {
        const auto price = static_cast<double>(offer.price.minor);
        for (const Slot slot : offer.slots) {
            const Slot last = offer.keeps_days < 0 ? flow::never : 3 * (slot / 3 + offer.keeps_days) + 2;
            if (offer.opened_days < 0) {
                go(drawn(slot, last), offer.pack, price, price);
            } else {
                for (const Way& way : ways_of_closed(slot, last, offer.opened_days, component_.days))
                    go(way, offer.pack, price, price);
            }
        }
    }

    /// A column of how many units go that way, the stock that they make, and what is drawn from it.
    int go(const Way& way, std::int64_t amount, double price, double to_pay) {
        const int going = column(GLP_IV);
        glp_set_col_bnds(problem_, going, GLP_DB, 0, std::max(1.0, std::ceil(all_wanted() / steps(amount))));
        Terms stock{{going, steps(amount)}};
        for (const auto& [slot, wanted] : wanted_) {
            if (slot < way.from || slot > way.to) continue;
            const int draw = column(GLP_CV);
            const int after = column(GLP_CV);
            draws_[slot].push_back(draw);
            stock.emplace_back(draw, -1.0);
            stock.emplace_back(after, -1.0);
            set(row(GLP_FX, 0, 0), stock);
            stock = {{after, 1.0}};
        }
        if (way.rest_until <= end_) {
            for (const auto& [of, factor] : stock) costs_[of] += factor * price / steps(amount);
        }
        costs_[going] += to_pay;
        return going;
    }

    void add_days() {
        std::map<int, Terms> by_day;
        for (const auto& [slot, number] : met_) {
            Terms terms;
            for (const int draw : draws_[slot]) terms.emplace_back(draw, 1.0);
            set(number, terms);
            auto& day = by_day[slot / 3];
            day.insert(day.end(), terms.begin(), terms.end());
        }
        for (const auto& [day, terms] : by_day) {
            day_rows_[day] = row(GLP_FR, 0, 0);
            day_terms_[day_rows_[day]] = terms;
            set(day_rows_[day], terms);
        }
    }

    void clear_aim() {
        for (int i = 1; i <= glp_get_num_cols(problem_); ++i) glp_set_obj_coef(problem_, i, 0);
    }

    /// As much as can be is met of that day.
    void aim(int row_of_day) {
        for (const auto& [draw, factor] : day_terms_[row_of_day]) glp_set_obj_coef(problem_, draw, -1);
    }

    void run() {
        if (glp_get_num_cols(problem_) == 0) return;
        glp_iocp how;
        glp_init_iocp(&how);
        how.presolve = GLP_ON;
        how.tol_int = 1e-7;
        how.mir_cuts = GLP_ON;
        how.gmi_cuts = GLP_ON;
        const int failed = glp_intopt(problem_, &how);
        if (failed == 0 && glp_mip_status(problem_) == GLP_OPT) return;
        std::cerr << "GLPK proves nothing: " << failed << ", status " << glp_mip_status(problem_) << '\n';
        std::abort();
    }

    const Component& component_;
    glp_prob* problem_;
    Slot end_;
    std::int64_t step_ = 0;
    std::map<Slot, std::int64_t> wanted_;
    std::map<Slot, int> met_;
    std::map<Slot, std::vector<int>> draws_;
    std::map<int, int> day_rows_;
    std::map<int, Terms> day_terms_;
    std::map<int, double> costs_;
};

}  // namespace

OracleValue best_by_glpk(const Component& component) {
    return Model(component).solve();
}

}  // namespace samebase::tests
