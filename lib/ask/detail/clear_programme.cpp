#include "ask/detail/clear_programme.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "ask/detail/clear_search.hpp"
#include "solver/programme.hpp"

namespace samebase::ask::detail {

namespace {

using solver::Terms;

/// Money in the programme is in the smallest unit.
constexpr double thousandths = 1000;

/// The programme of some of the options. It is minimised, so that what is worth something costs less than nothing.
class Model {
  public:
    Model(const ClearGame& game, std::vector<int> options, bool whole)
        : game_(game), options_(std::move(options)), whole_(whole), column_of_(game.options.size(), -1) {
        for (std::size_t i = 0; i < options_.size(); ++i) {
            const int x = choice(-static_cast<double>(option(options_[i]).fixed) / thousandths);
            column_of_[static_cast<std::size_t>(options_[i])] = x;
        }
        for (const OpenMeal& meal : game.meals) empty_.push_back(choice(static_cast<double>(meal.empty) / thousandths));
        one_at_a_meal();
        keep_apart();
        things();
    }

    [[nodiscard]] solver::Solution solve(const solver::Effort& effort, const ClearPlan& known) const {
        return solver::minimise(programme_, cost_, effort, whole_ ? start(known) : std::vector<double>{});
    }

    [[nodiscard]] ClearPlan plan(const std::vector<double>& values) const {
        ClearPlan plan(game_.meals.size(), -1);
        for (const int o : options_) {
            if (values[static_cast<std::size_t>(column_of_[static_cast<std::size_t>(o)])] > 0.5)
                plan[static_cast<std::size_t>(option(o).meal)] = o;
        }
        return plan;
    }

    [[nodiscard]] double reduced(const solver::Solution& solution, int o) const {
        return solution.reduced[static_cast<std::size_t>(column_of_[static_cast<std::size_t>(o)])];
    }

  private:
    [[nodiscard]] const ClearOption& option(int o) const { return game_.options[static_cast<std::size_t>(o)]; }

    int add(double worth, double most, bool whole) {
        const int column = programme_.add({0, most, whole && whole_});
        if (worth != 0) cost_.emplace_back(column, worth);
        return column;
    }
    int choice(double costs) { return add(costs, 1, true); }

    void one_at_a_meal() {
        std::vector<Terms> meals(game_.meals.size());
        for (std::size_t m = 0; m < meals.size(); ++m) meals[m].emplace_back(empty_[m], 1.0);
        for (const int o : options_)
            meals[static_cast<std::size_t>(option(o).meal)].emplace_back(column_of_[static_cast<std::size_t>(o)], 1.0);
        for (Terms& terms : meals) programme_.add(solver::Row{std::move(terms), 1, 1});
    }

    /// Of one dish no two within its gap: in every stretch of so many days at most one.
    void keep_apart() {
        std::map<cookbook::DishId, std::vector<int>> by_dish;
        for (const int o : options_) by_dish[option(o).dish].push_back(o);
        for (const auto& [dish, all] : by_dish) {
            const int gap = std::max(1, game_.gap(dish));
            for (basics::Day day = game_.span.first; day <= game_.span.last; day += basics::days{1}) {
                Terms terms;
                std::vector<int> meals;
                for (const int o : all) {
                    const auto& meal = game_.meals[static_cast<std::size_t>(option(o).meal)];
                    if (meal.day < day || meal.day >= day + basics::days{gap}) continue;
                    terms.emplace_back(column_of_[static_cast<std::size_t>(o)], 1.0);
                    meals.push_back(option(o).meal);
                }
                std::sort(meals.begin(), meals.end());
                meals.erase(std::unique(meals.begin(), meals.end()), meals.end());
                if (meals.size() > 1) programme_.add(solver::Row{std::move(terms), -solver::unbounded, 1});
                if (day + basics::days{gap} > game_.span.last) break;
            }
        }
    }

    struct Want {
        int option = 0;
        std::int64_t amount = 0;
    };

    void things() {
        std::vector<std::vector<Want>> wants(game_.things.size());
        for (const int o : options_) {
            for (const ClearNeed& need : option(o).needs)
                wants[static_cast<std::size_t>(need.thing)].push_back({o, need.amount});
        }
        for (std::size_t t = 0; t < wants.size(); ++t) {
            if (!wants[t].empty()) thing(game_.things[t], static_cast<int>(t), wants[t]);
        }
    }

    /// Amounts are divided by the pack, or by what there is: so that they are near 1.
    void thing(const ClearThing& of, int number, const std::vector<Want>& wants) {
        const double unit = static_cast<double>(of.pack > 0 ? of.pack : std::max<std::int64_t>(1, of.there));
        const int packs = of.pack > 0 && most_wanted(of, wants)
                              ? add(static_cast<double>(of.pack_price) / thousandths, solver::unbounded, true)
                              : -1;
        if (packs >= 0) bought_.push_back({number, packs});
        if (of.always) {
            all_at_once(of, number, wants, unit, packs);
        } else {
            meal_by_meal(of, number, wants, unit, packs);
        }
        if (packs >= 0) at_least_alone(of, wants, packs);
    }

    /// Whether the meals can want more than there is.
    [[nodiscard]] bool most_wanted(const ClearThing& of, const std::vector<Want>& wants) const {
        if (!of.always) return true;
        std::vector<std::int64_t> most(game_.meals.size(), 0);
        for (const Want& want : wants) {
            auto& here = most[static_cast<std::size_t>(option(want.option).meal)];
            here = std::max(here, want.amount);
        }
        std::int64_t sum = 0;
        for (const auto amount : most) sum += amount;
        return sum > of.there;
    }

    [[nodiscard]] int x(const Want& want) const { return column_of_[static_cast<std::size_t>(want.option)]; }

    /// All of it can be eaten at any meal.
    void all_at_once(const ClearThing& of, int number, const std::vector<Want>& wants, double unit, int packs) {
        Terms wanted;
        for (const Want& want : wants) wanted.emplace_back(x(want), static_cast<double>(want.amount) / unit);
        if (packs >= 0) wanted.emplace_back(packs, -static_cast<double>(of.pack) / unit);
        if (packs >= 0 || of.pack == 0)
            programme_.add(solver::Row{wanted, -solver::unbounded, static_cast<double>(of.there) / unit});
        if (of.danger == 0) return;
        const int saved = add(-of.worth * unit / thousandths, static_cast<double>(of.danger) / unit, false);
        saved_.push_back({number, -1, -1, saved, unit});
        Terms terms{{saved, 1.0}};
        for (const Want& want : wants)
            terms.emplace_back(x(want), -static_cast<double>(std::min(want.amount, of.danger)) / unit);
        programme_.add(solver::Row{std::move(terms), -solver::unbounded, 0});
    }

    void meal_by_meal(const ClearThing& of, int number, const std::vector<Want>& wants, double unit, int packs) {
        std::vector<std::vector<Want>> by_meal(game_.meals.size());
        for (const Want& want : wants) by_meal[static_cast<std::size_t>(option(want.option).meal)].push_back(want);
        std::vector<Terms> drawn(of.batches.size());
        Terms bought;
        for (std::size_t m = 0; m < by_meal.size(); ++m) {
            if (by_meal[m].empty()) continue;
            Terms met;
            Terms saved;
            for (std::size_t b = 0; b < of.batches.size(); ++b) {
                if ((of.batches[b].when >> m & 1U) == 0) continue;
                const int use =
                    add(of.batches[b].danger ? -of.worth * unit / thousandths : 0, solver::unbounded, false);
                saved_.push_back({number, static_cast<int>(m), static_cast<int>(b), use, unit});
                drawn[b].emplace_back(use, 1.0);
                met.emplace_back(use, 1.0);
                if (of.batches[b].danger) saved.emplace_back(use, 1.0);
            }
            if (packs >= 0) {
                const int buy = add(0, solver::unbounded, false);
                saved_.push_back({number, static_cast<int>(m), -1, buy, unit});
                met.emplace_back(buy, 1.0);
                bought.emplace_back(buy, 1.0);
            }
            for (const Want& want : by_meal[m]) met.emplace_back(x(want), -static_cast<double>(want.amount) / unit);
            programme_.add(solver::Row{std::move(met), 0, 0});
            if (saved.empty()) continue;
            const std::int64_t here = danger_at(of, static_cast<int>(m));
            for (const Want& want : by_meal[m])
                saved.emplace_back(x(want), -static_cast<double>(std::min(want.amount, here)) / unit);
            programme_.add(solver::Row{std::move(saved), -solver::unbounded, 0});
        }
        for (std::size_t b = 0; b < drawn.size(); ++b) {
            if (!drawn[b].empty())
                programme_.add(solver::Row{std::move(drawn[b]), -solver::unbounded,
                                           static_cast<double>(of.batches[b].amount) / unit});
        }
        if (packs < 0 || bought.empty()) return;
        bought.emplace_back(packs, -static_cast<double>(of.pack) / unit);
        programme_.add(solver::Row{std::move(bought), -solver::unbounded, 0});
    }

    /// What a meal would have to buy if it were the only one is bought at least: this cuts off parts of packs.
    void at_least_alone(const ClearThing& of, const std::vector<Want>& wants, int packs) {
        std::vector<Terms> alone(game_.meals.size());
        for (const Want& want : wants) {
            const int meal = option(want.option).meal;
            const std::int64_t lacks = want.amount - there_at(of, meal);
            if (lacks > 0)
                alone[static_cast<std::size_t>(meal)].emplace_back(
                    x(want), static_cast<double>((lacks + of.pack - 1) / of.pack));
        }
        for (Terms& terms : alone) {
            if (terms.empty()) continue;
            terms.emplace_back(packs, -1.0);
            programme_.add(solver::Row{std::move(terms), -solver::unbounded, 0});
        }
    }

    struct Flow {
        int thing;
        int meal;   ///< below 0: all meals together
        int batch;  ///< below 0: bought
        int column;
        double unit;
    };

    /// All columns' values for a plan: eaten as ClearValue eats.
    [[nodiscard]] std::vector<double> start(const ClearPlan& plan) const {
        std::vector<double> values(programme_.columns.size(), 0);
        ClearValue value(game_);
        value.set(plan);
        for (std::size_t m = 0; m < plan.size(); ++m) {
            const int column = plan[m] < 0 ? empty_[m] : column_of_[static_cast<std::size_t>(plan[m])];
            if (column >= 0) values[static_cast<std::size_t>(column)] = 1;
        }
        for (const auto& [thing, column] : bought_)
            values[static_cast<std::size_t>(column)] = static_cast<double>(value.tally(thing).packs);
        std::map<int, std::vector<std::vector<std::int64_t>>> eaten;
        for (const Flow& flow : saved_) {
            auto& amount = values[static_cast<std::size_t>(flow.column)];
            if (flow.meal < 0) {
                amount = static_cast<double>(value.tally(flow.thing).saved) / flow.unit;
                continue;
            }
            auto [at, fresh] = eaten.try_emplace(flow.thing);
            if (fresh) at->second = value.eaten_by_meal(flow.thing);
            const auto& here = at->second[static_cast<std::size_t>(flow.meal)];
            amount = static_cast<double>(flow.batch < 0 ? here.back() : here[static_cast<std::size_t>(flow.batch)]) /
                     flow.unit;
        }
        return values;
    }

    const ClearGame& game_;
    std::vector<int> options_;
    bool whole_;
    solver::Programme programme_;
    Terms cost_;
    std::vector<int> column_of_;
    std::vector<int> empty_;
    std::vector<std::pair<int, int>> bought_;
    std::vector<Flow> saved_;
};

/// Nodes of the search tree times the square of the options, for each unit of effort: what a node costs grows like
/// that.
constexpr std::int64_t work = 12'000'000;
/// With fewer nodes than this the programme's first node alone costs more than the search gains: the relaxation's bound
/// stands.
constexpr std::int64_t fewest_nodes = 10;

std::int64_t value_of(const ClearGame& game, const ClearPlan& plan) {
    ClearValue value(game);
    value.set(plan);
    return value.value();
}

bool may_stand(const ClearGame& game, const ClearPlan& plan) {
    ClearValue value(game);
    value.set(plan);
    return value.sound() && std::none_of(plan.begin(), plan.end(), [&](int option) { return value.clashes(option); });
}

/// Everything in danger saved, and each meal at its best.
std::int64_t easy_bound(const ClearGame& game) {
    std::int64_t bound = game.at_stake;
    for (const OpenMeal& meal : game.meals) {
        std::int64_t best = -meal.empty;
        for (const int o : meal.options) best = std::max(best, game.options[static_cast<std::size_t>(o)].fixed);
        bound += best;
    }
    return bound;
}

}  // namespace

Proof clear_proved(const ClearGame& game, const ClearPlan& known, int effort, const std::function<bool()>& go_on) {
    Proving how;
    how.known = known;
    how.options = game.options.size();
    how.lines = game.things.size();
    how.stays = [&](int o) {
        return known[static_cast<std::size_t>(game.options[static_cast<std::size_t>(o)].meal)] == o;
    };
    how.easy_bound = [&] { return easy_bound(game); };
    how.nodes = [&](std::size_t few) {
        const std::int64_t nodes = work * effort / static_cast<std::int64_t>(few * few);
        return nodes < fewest_nodes ? 0 : nodes;
    };
    how.polished = [&](const ClearPlan& plan) {
        ClearPlan polished = clear_polished(game, plan);
        return may_stand(game, polished) ? polished : known;
    };
    how.value = [&](const ClearPlan& plan) { return value_of(game, plan); };
    how.go_on = go_on;
    return prove<Model>(game, how);
}

}  // namespace samebase::ask::detail
