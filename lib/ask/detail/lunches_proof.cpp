#include "ask/detail/lunches_proof.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "ask/detail/lunches_search.hpp"

namespace samebase::ask::detail {

namespace {

using solver::Terms;

/// Money in the programme is in the smallest unit.
constexpr double thousandths = 1000;
constexpr double one_serve = 1000;

/// Whether so many serves ask for so many times what one asks for, but for the rounding of each amount.
bool is_linear(const LunchSource& source) {
    for (std::size_t n = 2; n < source.needs.size(); ++n) {
        const auto& one = source.needs[1];
        const auto& many = source.needs[n];
        if (one.size() != many.size()) return false;
        const auto count = static_cast<std::int64_t>(n);
        for (std::size_t i = 0; i < one.size(); ++i) {
            if (one[i].thing != many[i].thing || std::abs(many[i].amount - count * one[i].amount) > count) return false;
        }
    }
    return true;
}

/// The least that a serve asks for: what is rounded down is no reason to forbid.
double each_of(const LunchSource& source, std::size_t need) {
    double least = static_cast<double>(source.needs[1][need].amount);
    for (std::size_t n = 2; n < source.needs.size(); ++n)
        least = std::min(least, static_cast<double>(source.needs[n][need].amount) / static_cast<double>(n));
    return least;
}

/// The question as a programme: minimised, so that what is worth something costs less than nothing.
class Model {
  public:
    explicit Model(const LunchGame& game) : game_(game), column_of_(game.options.size(), -1) {
        for (std::size_t o = 0; o < game.options.size(); ++o) {
            const LunchOption& option = game.options[o];
            column_of_[o] = add(-static_cast<double>(option.fixed + game_.bought) / thousandths, 1, true);
            if (option.source >= 0) by_source_[option.source].push_back(static_cast<int>(o));
        }
        one_a_slot();
        for (const auto& [number, all] : by_source_) source(number, all);
        minutes();
        packs();
        for (auto& [thing, wants] : wants_) stock(thing, wants);
        cuts();
        again();
    }

    [[nodiscard]] const solver::Programme& programme() const { return programme_; }
    [[nodiscard]] const Terms& cost() const { return cost_; }
    [[nodiscard]] const solver::OnDemand& on_demand() const { return on_demand_; }
    [[nodiscard]] int column_of(int o) const { return column_of_[static_cast<std::size_t>(o)]; }

    /// For each slot the option with the greatest part in the values.
    [[nodiscard]] LunchPlan plan(const solver::Values& values) const {
        LunchPlan plan = all_bought(game_);
        for (std::size_t s = 0; s < plan.size(); ++s) {
            const auto part = [&](int o) { return values[static_cast<std::size_t>(column_of(o))]; };
            for (const int o : game_.slots[s].options) {
                if (part(o) > part(plan[s])) plan[s] = o;
            }
        }
        return plan;
    }

    /// All columns' values for a plan: eaten as LunchValue eats.
    [[nodiscard]] solver::Values values(const LunchPlan& plan) const {
        solver::Values values(programme_.columns.size(), 0);
        const auto at = [&](int column) -> double& { return values[static_cast<std::size_t>(column)]; };
        LunchValue value(game_);
        value.set(plan);
        for (const int o : plan) at(x(o)) = 1;
        for (const auto& [number, terms] : used_) {
            const int serves = value.serves(number);
            if (is_linear(source_of(number))) {
                at(terms.front().first) = serves > 0 ? 1 : 0;
            } else if (serves > 0) {
                at(level_.at({number, serves})) = 1;
            }
        }
        for (const auto& [number, column] : thawed_) at(column) = value.thawed(number);
        for (const auto& [day, column] : over_)
            at(column) =
                game_.minute > 0 ? static_cast<double>(value.effort(day)) / static_cast<double>(game_.minute) : 0;
        for (const auto& [thing, column] : bought_) at(column) = static_cast<double>(value.tally(thing).packs);
        for (const auto& [column, number, serves] : many_) at(column) = value.serves(number) >= serves ? 1 : 0;
        const auto any = [&](const std::vector<int>& options) {
            return std::any_of(options.begin(), options.end(), [&](int o) { return at(x(o)) > 0; });
        };
        for (const auto& [column, a, b] : both_) at(column) = any(a) && any(b) ? 1 : 0;
        std::map<int, std::vector<std::vector<std::int64_t>>> eaten;
        for (const Flow& flow : flows_) {
            auto [found, fresh] = eaten.try_emplace(flow.thing);
            if (fresh) found->second = value.eaten(flow.thing);
            std::vector<int> times = flow.times;
            std::sort(times.begin(), times.end());
            times.erase(std::unique(times.begin(), times.end()), times.end());
            std::int64_t amount = 0;
            for (const int time : times) {
                const auto& here = found->second[static_cast<std::size_t>(time)];
                amount += flow.batch < 0 ? here.back() : here[static_cast<std::size_t>(flow.batch)];
            }
            at(flow.column) = static_cast<double>(amount) / flow.unit;
        }
        return values;
    }

  private:
    struct Want {
        int time = 0;
        int column = 0;
        double amount = 0;  ///< for each unit of the column
    };

    [[nodiscard]] const LunchOption& option(int o) const { return game_.options[static_cast<std::size_t>(o)]; }
    [[nodiscard]] const LunchSource& source_of(int s) const { return game_.sources[static_cast<std::size_t>(s)]; }
    [[nodiscard]] int x(int o) const { return column_of(o); }

    int add(double cost, double most, bool whole) {
        const int column = programme_.add({0, most, whole});
        if (cost != 0) cost_.emplace_back(column, cost);
        return column;
    }
    void at_most(Terms terms, double most) { programme_.add(solver::Row{std::move(terms), -solver::unbounded, most}); }

    void one_a_slot() {
        std::vector<Terms> slots(game_.slots.size());
        for (std::size_t s = 0; s < slots.size(); ++s) {
            for (const int o : game_.slots[s].options) slots[s].emplace_back(x(o), 1.0);
        }
        for (Terms& terms : slots) programme_.add(solver::Row{std::move(terms), 1, 1});
    }

    void source(int number, const std::vector<int>& all) {
        const LunchSource& of = source_of(number);
        if (of.kind == LunchKind::frozen_pack) {
            thaw(number, all);
            return;
        }
        if (!is_linear(of)) {
            levels(number, all);
            return;
        }
        int used = -1;
        if (of.kind == LunchKind::cooked) {
            used = add(0, 1, false);
            used_[number] = {{used, 1.0}};
            for (const int o : all) at_most({{x(o), 1.0}, {used, -1.0}}, 0);
        }
        for (std::size_t i = 0; i < of.needs[1].size(); ++i) {
            for (const int o : all) wants_[of.needs[1][i].thing].push_back({of.time, x(o), each_of(of, i)});
            alone(of.needs[1][i], of.time, used, all);
        }
    }

    /// What a source asks for where it is the only one is bought at least: this cuts off parts of packs.
    void alone(const LunchNeed& need, int time, int used, const std::vector<int>& all) {
        const double packs = packs_alone(need, time);
        if (packs == 0) return;
        if (used >= 0) {
            alone_[need.thing].push_back({{used, packs}});
        } else {
            for (const int o : all) alone_[need.thing].push_back({{x(o), packs}});
        }
    }

    [[nodiscard]] double packs_alone(const LunchNeed& need, int time) const {
        const LunchThing& thing = game_.things[static_cast<std::size_t>(need.thing)];
        // Amounts of several serves are rounded: a thousandth less is no reason for a pack more.
        const std::int64_t lacks = need.amount - 2 - thing.there_at(time);
        return thing.pack > 0 && time >= game_.buys_from && lacks > 0 ? static_cast<double>(thing.packs_for(lacks)) : 0;
    }

    /// A column for each number of serves.
    void levels(int number, const std::vector<int>& all) {
        const LunchSource& of = source_of(number);
        Terms one;
        Terms count;
        std::map<int, Terms> packs;
        for (std::size_t n = 1; n < of.needs.size(); ++n) {
            const int level = add(0, 1, true);
            level_[{number, static_cast<int>(n)}] = level;
            one.emplace_back(level, 1.0);
            count.emplace_back(level, static_cast<double>(n));
            for (const LunchNeed& need : of.needs[n]) {
                wants_[need.thing].push_back({of.time, level, static_cast<double>(need.amount)});
                const double least = packs_alone(need, of.time);
                if (least > 0) packs[need.thing].emplace_back(level, least);
            }
        }
        for (auto& [thing, terms] : packs) alone_[thing].push_back(std::move(terms));
        used_[number] = one;
        for (const int o : all) {
            Terms terms{{x(o), 1.0}};
            for (const auto& [level, factor] : one) terms.emplace_back(level, -1.0);
            at_most(std::move(terms), 0);
            count.emplace_back(x(o), -1.0);
        }
        at_most(std::move(one), 1);
        programme_.add(solver::Row{std::move(count), 0, 0});
    }

    void thaw(int number, const std::vector<int>& all) {
        const LunchPack& pack = game_.packs[static_cast<std::size_t>(source_of(number).pack)];
        const int thawed = add(static_cast<double>(pack.price) / thousandths, pack.count, true);
        thawed_[number] = thawed;
        Terms shared{{thawed, -static_cast<double>(pack.size) / one_serve}};
        for (const int o : all) {
            shared.emplace_back(x(o), 1.0);
            at_most({{x(o), 1.0}, {thawed, -1.0}}, 0);
        }
        at_most(std::move(shared), 0);
        of_pack_[source_of(number).pack].emplace_back(thawed, 1.0);
    }

    void packs() {
        for (auto& [pack, terms] : of_pack_)
            at_most(terms, static_cast<double>(game_.packs[static_cast<std::size_t>(pack)].count));
    }

    void minutes() {
        std::map<basics::Day, Terms> days;
        for (const auto& [number, used] : used_) {
            if (source_of(number).kind != LunchKind::cooked) continue;
            for (const auto& [column, factor] : used)
                days[source_of(number).day].emplace_back(column, source_of(number).minutes);
        }
        for (auto& [day, terms] : days) {
            const int over = add(static_cast<double>(game_.minute) / thousandths, solver::unbounded, false);
            over_[day] = over;
            terms.emplace_back(over, -1.0);
            at_most(std::move(terms), lunch_minutes);
        }
    }

    struct Flow {
        int thing;
        int batch;  ///< below 0: bought
        std::vector<int> times;
        int column;
        double unit;
    };

    /// Times at which the same batches can be eaten, or bought, are one. Amounts are divided by the pack, or by what
    /// there is: so that they are near 1.
    void stock(int number, const std::vector<Want>& wants) {
        const LunchThing& of = game_.things[static_cast<std::size_t>(number)];
        const double unit =
            static_cast<double>(of.pack > 0 ? of.pack : std::max<std::int64_t>(1, of.danger + of.keeps));
        std::map<std::pair<std::vector<bool>, bool>, std::vector<const Want*>> groups;
        for (const Want& want : wants) {
            std::vector<bool> there;
            for (const LunchBatch& batch : of.batches)
                there.push_back((batch.when >> static_cast<unsigned>(want.time) & 1U) != 0);
            groups[{there, of.pack > 0 && want.time >= game_.buys_from}].push_back(&want);
        }
        std::vector<Terms> drawn(of.batches.size());
        Terms bought;
        for (const auto& [key, here] : groups) {
            const auto& [there, can_be_bought] = key;
            std::vector<int> times;
            for (const Want* want : here) times.push_back(want->time);
            Terms met;
            Terms saved;
            double danger = 0;
            for (std::size_t b = 0; b < of.batches.size(); ++b) {
                if (!there[b]) continue;
                const LunchBatch& batch = of.batches[b];
                const int use =
                    add((batch.danger ? -of.worth : of.cost) * unit / thousandths, solver::unbounded, false);
                flows_.push_back({number, static_cast<int>(b), times, use, unit});
                drawn[b].emplace_back(use, 1.0);
                met.emplace_back(use, 1.0);
                if (!batch.danger) continue;
                saved.emplace_back(use, 1.0);
                danger += static_cast<double>(batch.amount);
            }
            if (can_be_bought) {
                const int buy = add(0, solver::unbounded, false);
                flows_.push_back({number, -1, times, buy, unit});
                met.emplace_back(buy, 1.0);
                bought.emplace_back(buy, 1.0);
            }
            bool larger = false;
            for (const Want* want : here) {
                met.emplace_back(want->column, -want->amount / unit);
                saved.emplace_back(want->column, -std::min(want->amount, danger) / unit);
                larger = larger || want->amount > danger;
            }
            programme_.add(solver::Row{std::move(met), 0, 0});
            if (danger > 0 && larger) at_most(std::move(saved), 0);
        }
        for (std::size_t b = 0; b < drawn.size(); ++b) {
            if (!drawn[b].empty()) at_most(std::move(drawn[b]), static_cast<double>(of.batches[b].amount) / unit);
        }
        if (!bought.empty()) buy(number, of, unit, std::move(bought));
    }

    void buy(int number, const LunchThing& of, double unit, Terms bought) {
        const int packs = add(static_cast<double>(of.pack_price) / thousandths, solver::unbounded, true);
        bought_[number] = packs;
        const auto whole = of.pack > 0 ? (of.plan_buys + of.pack - 1) / of.pack * of.pack : 0;
        bought.emplace_back(packs, -static_cast<double>(of.pack) / unit);
        at_most(std::move(bought), static_cast<double>(whole - of.plan_buys) / unit);
        for (Terms& terms : alone_[number]) {
            terms.emplace_back(packs, -1.0);
            at_most(std::move(terms), 0);
        }
    }

    /// Of the parts of a cut at least one has fewer serves. `many` is 1 where a part has as many.
    void cuts() {
        for (const LunchCut& cut : game_.cuts) {
            Terms all;
            for (const auto& [number, serves] : cut) {
                const auto found = by_source_.find(number);
                if (found == by_source_.end() || static_cast<int>(found->second.size()) < serves) continue;
                const int many = add(0, 1, true);
                many_.push_back({many, number, serves});
                all.emplace_back(many, 1.0);
                Terms terms{{many, -static_cast<double>(static_cast<int>(found->second.size()) - serves + 1)}};
                for (const int o : found->second) terms.emplace_back(x(o), 1.0);
                at_most(std::move(terms), serves - 1);
            }
            if (all.size() == cut.size()) at_most(std::move(all), static_cast<double>(cut.size()) - 1);
        }
    }

    /// One dish twice for one person, too soon: the rows matter only where both are likely.
    void again() {
        std::map<std::pair<std::size_t, cookbook::DishId>, std::map<int, std::vector<int>>> had;  // by slot
        for (std::size_t o = 0; o < game_.options.size(); ++o) {
            const LunchOption& option = game_.options[o];
            if (option.source < 0) continue;
            const std::size_t person = game_.slots[static_cast<std::size_t>(option.slot)].person;
            had[{person, source_of(option.source).dish}][option.slot].push_back(static_cast<int>(o));
        }
        for (const auto& [who, slots] : had) {
            for (auto a = slots.begin(); a != slots.end(); ++a) {
                for (auto b = slots.begin(); b != a; ++b) again(a->second, b->second);
            }
        }
    }

    void again(const std::vector<int>& a, const std::vector<int>& b) {
        const std::int64_t cost = game_.again_cost(option(a.front()), option(b.front()));
        if (cost == 0) return;
        const int both = add(static_cast<double>(cost) / thousandths, 1, false);
        Terms terms{{both, -1.0}};
        for (const auto* options : {&a, &b}) {
            for (const int o : *options) terms.emplace_back(x(o), 1.0);
        }
        on_demand_.needed.push_back(solver::Row{std::move(terms), -solver::unbounded, 1});
        both_.push_back({both, a, b});
    }

    const LunchGame& game_;
    solver::Programme programme_;
    Terms cost_;
    solver::OnDemand on_demand_;
    std::vector<int> column_of_;
    std::map<int, std::vector<int>> by_source_;
    std::map<int, std::vector<Want>> wants_;   ///< by thing
    std::map<int, std::vector<Terms>> alone_;  ///< by thing
    std::map<int, Terms> used_;                ///< by source: the columns that say that it is cooked
    std::map<std::pair<int, int>, int> level_;
    std::map<int, int> thawed_;
    std::map<int, Terms> of_pack_;
    std::map<basics::Day, int> over_;
    std::map<int, int> bought_;
    std::vector<Flow> flows_;
    struct Many {
        int column;
        int source;
        int serves;
    };
    std::vector<Many> many_;
    struct Both {
        int column;
        std::vector<int> a;
        std::vector<int> b;
    };
    std::vector<Both> both_;
};

/// Moves of the annealing among the options of the relaxation, for each unit of effort.
constexpr std::int64_t moves_for_each = 1'000;
/// Nodes times the programme's size, for each unit of effort.
constexpr std::int64_t work = 500'000;

/// What no plan is worth more than where the solver says nothing: all in danger saved, each lunch at its best.
std::int64_t easy_bound(const LunchGame& game) {
    std::int64_t bound = 0;
    for (const LunchThing& thing : game.things) bound += 1000 * thing.danger_price.minor + 1;
    for (const LunchSlot& slot : game.slots) {
        std::int64_t best = 0;
        for (const int o : slot.options)
            best = std::max(best, game.options[static_cast<std::size_t>(o)].fixed + game.bought);
        bound += best;
    }
    return bound;
}

}  // namespace

menu::Proof lunches_proved(const LunchGame& game, const LunchPlan& known, int effort, const menu::Look& look) {
    if (game.slots.empty()) return {known, 0, true};
    menu::Proving how;
    how.lines = game.things.size();
    how.effort = effort;
    how.work = work;
    how.own_rules = true;
    for (const LunchSlot& slot : game.slots) how.options.push_back(&slot.options);
    how.value = [&](const menu::Choice& plan) { return value_of(game, plan); };
    how.easy_bound = [&] { return easy_bound(game); };
    how.mended = [&](const menu::Choice& plan) { return lunches_polished(game, lunches_that_can_be_had(game, plan)); };
    how.may_stand = [&](const menu::Choice& plan) {
        LunchValue value(game);
        value.set(plan);
        return value.sound();
    };
    how.annealed = [&](const menu::Choice& plan, const menu::Ranked& options) {
        return lunches_by_annealing(game, plan, options, moves_for_each * effort, look);
    };
    how.look = look;
    const Model model(game);
    return menu::Prover(model, std::move(how), known).prove();
}

}  // namespace samebase::ask::detail
