#include "support/lot_sizing_oracle.hpp"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iostream>
#include <limits>
#include <vector>

namespace samebase::tests {

namespace {

using Terms = std::vector<std::pair<int, double>>;

/// Columns and rows count from 1.
class Model {
  public:
    explicit Model(const flow::LotSizing& problem) : problem_(problem), model_(glp_create_prob()) {
        glp_term_out(GLP_OFF);
        glp_set_obj_dir(model_, GLP_MIN);
        const int periods = static_cast<int>(problem.demand.size());
        met_.resize(problem.demand.size());
        for (int t = 0; t < periods; ++t) {
            if (problem.setup[at(t)]) bought(t, periods);
        }
        for (const auto& some : problem.stock) {
            Terms out;
            use(out, 0, std::min(some.last, periods - 1), 0);
            row(out, GLP_UP, static_cast<double>(some.amount));
        }
        for (int s = 0; s < periods; ++s) {
            met_[at(s)].emplace_back(column(GLP_CV, static_cast<double>(problem.shortage)), 1);
            row(met_[at(s)], GLP_FX, static_cast<double>(problem.demand[at(s)]));
        }
    }
    Model(const Model&) = delete;
    Model& operator=(const Model&) = delete;
    ~Model() { glp_delete_prob(model_); }

    std::int64_t solve() {
        glp_iocp parameters;
        glp_init_iocp(&parameters);
        parameters.presolve = GLP_ON;
        parameters.mip_gap = 0;
        if (glp_intopt(model_, &parameters) != 0 || glp_mip_status(model_) != GLP_OPT) {
            std::cerr << "GLPK did not prove a lot-sizing problem\n";
            std::abort();
        }
        double unused = 0;  // of what is there at the beginning, all is held to the end, less what is used
        for (const auto& some : problem_.stock)
            unused += static_cast<double>(some.amount * problem_.hold * (static_cast<std::int64_t>(met_.size()) - 1));
        return std::llround(glp_mip_obj_val(model_) + unused);
    }

  private:
    static std::size_t at(int period) { return static_cast<std::size_t>(period); }

    int column(int kind, double cost) {
        const int number = glp_add_cols(model_, 1);
        glp_set_col_bnds(model_, number, GLP_LO, 0, 0);
        glp_set_col_kind(model_, number, kind);
        glp_set_obj_coef(model_, number, cost);
        return number;
    }

    void row(const Terms& terms, int kind, double bound) {
        const int number = glp_add_rows(model_, 1);
        glp_set_row_bnds(model_, number, kind, bound, bound);
        std::vector<int> to{0};
        std::vector<double> by{0};
        for (const auto& [one, factor] : terms) {
            to.push_back(one);
            by.push_back(factor);
        }
        glp_set_mat_row(model_, number, static_cast<int>(terms.size()), to.data(), by.data());
    }

    /// Units from a source that begins to be held at `since`, used from `from` to `to`: each saves holding to the end.
    void use(Terms& out, int from, int to, int since) {
        const int end = static_cast<int>(met_.size()) - 1;
        for (int s = from; s <= to; ++s) {
            const double held = static_cast<double>(problem_.hold) * ((s - since) - (end - since));
            const int used = column(GLP_CV, held);
            out.emplace_back(used, 1);
            met_[at(s)].emplace_back(used, 1);
        }
    }

    void bought(int t, int periods) {
        const int last = problem_.keeps < 0 ? periods - 1 : std::min(periods - 1, t + problem_.keeps);
        double wanted = 0;
        for (int s = t; s <= last; ++s) wanted += static_cast<double>(problem_.demand[at(s)]);
        Terms out;
        use(out, t, last, t);
        const int any = column(GLP_BV, static_cast<double>(*problem_.setup[at(t)]));
        Terms opened{{any, -(wanted + 1)}};
        for (const auto& pack : problem_.packs) {
            const auto held = static_cast<double>(problem_.hold * pack.amount * (periods - 1 - t));
            const int packs = column(GLP_IV, static_cast<double>(pack.cost[at(t)]) + held);
            out.emplace_back(packs, -static_cast<double>(pack.amount));
            opened.emplace_back(packs, 1);
        }
        row(out, GLP_UP, 0);
        row(opened, GLP_UP, 0);
    }

    const flow::LotSizing& problem_;
    glp_prob* model_;
    std::vector<Terms> met_;
};

void try_all(const flow::LotSizing& problem, int most_packs, std::size_t t, std::vector<std::vector<int>>& packs,
             std::int64_t& best) {
    if (t == problem.demand.size()) {
        best = std::min(best, flow::carry_out(problem, packs).cost);
        return;
    }
    for (int n = 0; n <= (problem.setup[t] ? most_packs : 0); ++n) {
        packs[t] = {n};
        try_all(problem, most_packs, t + 1, packs, best);
    }
}

}  // namespace

std::int64_t least_cost_by_glpk(const flow::LotSizing& problem) {
    return Model(problem).solve();
}

std::int64_t least_cost_by_trying(const flow::LotSizing& problem, int most_packs) {
    std::vector<std::vector<int>> packs(problem.demand.size());
    std::int64_t best = std::numeric_limits<std::int64_t>::max();
    try_all(problem, most_packs, 0, packs, best);
    return best;
}

}  // namespace samebase::tests
