#include "support/clear_oracle.hpp"

#include <glpk.h>

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <map>
#include <optional>
#include <set>

namespace samebase::tests {

namespace {

using catalogue::IngredientId;

std::vector<std::vector<ChosenMeal>> all_choices(const ClearWorld& world, const Judge& judge) {
    std::vector<std::vector<ChosenMeal>> result;
    for (const auto& [day, meal] : judge.open()) result.push_back(choices(world.kitchen, judge, day, meal));
    return result;
}

void try_all(const Judge& judge, const std::vector<std::vector<ChosenMeal>>& meals, std::size_t next,
             std::vector<ChosenMeal>& chosen, std::optional<double>& best) {
    if (next == meals.size()) {
        const Judged judged = judge.judge(chosen);
        if (judged.faults.empty() && (!best || judged.value > *best)) best = judged.value;
        return;
    }
    try_all(judge, meals, next + 1, chosen, best);
    for (const ChosenMeal& choice : meals[next]) {
        chosen.push_back(choice);
        try_all(judge, meals, next + 1, chosen, best);
        chosen.pop_back();
    }
}

using Terms = std::vector<std::pair<int, double>>;

/// The programme in GLPK's own terms: columns and rows count from 1. Amounts are in steps of 50 g or half serves.
class Model {
  public:
    Model(const ClearWorld& world, const Judge& judge) : world_(world), judge_(judge), problem_(glp_create_prob()) {
        glp_term_out(GLP_OFF);
        glp_set_obj_dir(problem_, GLP_MAX);
        const auto meals = all_choices(world, judge);
        for (std::size_t i = 0; i < meals.size(); ++i) add_meal(judge.open()[i], meals[i]);
        keep_apart();
        for (const auto& [id, wants] : wants_) add_thing(id, wants);
    }
    Model(const Model&) = delete;
    Model& operator=(const Model&) = delete;
    ~Model() { glp_delete_prob(problem_); }

    double solve() {
        glp_iocp how;
        glp_init_iocp(&how);
        how.msg_lev = GLP_MSG_OFF;
        how.presolve = GLP_ON;
        const int failed = glp_intopt(problem_, &how);
        if (failed != 0 || glp_mip_status(problem_) != GLP_OPT) {
            std::cerr << "GLPK proves nothing: " << failed << '\n';
            std::abort();
        }
        return glp_mip_obj_val(problem_);
    }

  private:
    struct Want {
        int meal = 0;
        int column = 0;
        double amount = 0;
    };
    static double steps(std::int64_t amount) { return static_cast<double>(amount) / 50'000; }

    int column(int kind, double worth, double most = -1) {
        const int number = glp_add_cols(problem_, 1);
        glp_set_col_kind(problem_, number, kind);
        glp_set_col_bnds(problem_, number, most < 0 ? GLP_LO : most > 0 ? GLP_DB : GLP_FX, 0, most);
        glp_set_obj_coef(problem_, number, worth);
        return number;
    }

    void row(const Terms& terms, int kind, double bound) {
        const int number = glp_add_rows(problem_, 1);
        std::vector<int> columns{0};
        std::vector<double> factors{0};
        for (const auto& [of, factor] : terms) {
            columns.push_back(of);
            factors.push_back(factor);
        }
        glp_set_mat_row(problem_, number, static_cast<int>(terms.size()), columns.data(), factors.data());
        glp_set_row_bnds(problem_, number, kind, bound, bound);
    }

    void add_meal(const std::pair<basics::Day, kitchen::Meal>& at, const std::vector<ChosenMeal>& meals) {
        Terms one{{column(GLP_BV, -judge_.price_of_nothing(at.first, at.second)), 1}};
        for (const ChosenMeal& meal : meals) {
            const int x = column(GLP_BV, judge_.liking_and_variety(meal));
            one.emplace_back(x, 1);
            dishes_[meal.dish].emplace_back(meal.day, x);
            for (const auto& [id, amount] : meal.wants)
                wants_[id].push_back({judge_.meal_number(meal.day, meal.meal), x, steps(amount)});
        }
        row(one, GLP_FX, 1);
    }

    void keep_apart() {
        for (const auto& [dish, times] : dishes_) {
            const int gap = world_.kitchen.cookbook()[dish].gap;
            for (std::size_t i = 0; i < times.size(); ++i) {
                for (std::size_t j = 0; j < i; ++j) {
                    const auto apart = std::abs((times[i].first - times[j].first).count());
                    if (apart == 0 || apart < gap) row({{times[i].second, 1}, {times[j].second, 1}}, GLP_UP, 1);
                }
            }
        }
    }

    void add_thing(IngredientId id, const std::vector<Want>& wants) {
        std::set<int> meals;
        for (const Want& want : wants) meals.insert(want.meal);
        std::map<int, Terms> met;
        const auto worth = judge_.worth().find(id);
        for (const auto& batch : judge_.batches()) {
            if (batch.ingredient != id || batch.amount == 0) continue;
            const double each = judge_.in_danger(batch) ? worth->second * 50'000 : 0;
            Terms drawn;
            for (const int meal : meals) {
                if (meal < batch.first || meal > batch.last) continue;
                drawn.emplace_back(column(GLP_CV, each), 1);
                met[meal].push_back(drawn.back());
            }
            if (!drawn.empty()) row(drawn, GLP_UP, steps(batch.amount));
        }
        const auto& pack = world_.kitchen.catalogue()[id].pack;
        Terms bought;
        for (const int meal : meals) {
            if (pack) {
                bought.emplace_back(column(GLP_CV, 0), 1);
                met[meal].push_back(bought.back());
            }
            for (const Want& want : wants) {
                if (want.meal == meal) met[meal].emplace_back(want.column, -want.amount);
            }
            row(met[meal], GLP_FX, 0);
        }
        if (!pack) return;
        const auto price = kitchen::price(world_.kitchen, id, pack->amount.value()).value_or(pack->price);
        bought.emplace_back(column(GLP_IV, -static_cast<double>(price.minor)), -steps(pack->amount.value()));
        row(bought, GLP_UP, 0);
    }

    const ClearWorld& world_;
    const Judge& judge_;
    glp_prob* problem_;
    std::map<cookbook::DishId, std::vector<std::pair<basics::Day, int>>> dishes_;
    std::map<IngredientId, std::vector<Want>> wants_;
};

}  // namespace

double best_of_all_plans(const ClearWorld& world) {
    const Judge judge(world.kitchen, world.today, world.until);
    const auto meals = all_choices(world, judge);
    std::vector<ChosenMeal> chosen;
    std::optional<double> best;
    try_all(judge, meals, 0, chosen, best);
    return best.value_or(0);
}

double best_plan_by_glpk(const ClearWorld& world) {
    const Judge judge(world.kitchen, world.today, world.until);
    return Model(world, judge).solve();
}

}  // namespace samebase::tests
