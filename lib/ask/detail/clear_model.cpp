#include "ask/detail/clear_model.hpp"

#include <algorithm>
#include <bit>
#include <set>

#include "basics/exact.hpp"
#include "basics/ranges.hpp"

namespace samebase::ask::detail {

namespace {

using solver::Row;
using solver::Terms;
using solver::unbounded;

constexpr double thousandths = 1000;

Row at_most(Terms terms, double upper) {
    return Row{std::move(terms), -unbounded, upper};
}

/// Amounts are divided by the pack, or by what there is: so that they are near 1.
double unit_of(const ClearThing& of) {
    return static_cast<double>(of.pack > 0 ? of.pack : std::max<std::int64_t>(1, of.there));
}

/// The batches that some meal reaches; those that more meals reach first.
std::vector<const ClearBatch*> widest_first(const ClearThing& of) {
    std::vector<const ClearBatch*> batches;
    for (const ClearBatch& batch : of.batches) {
        if (batch.when != 0) batches.push_back(&batch);
    }
    std::stable_sort(batches.begin(), batches.end(), [](const ClearBatch* a, const ClearBatch* b) {
        return std::popcount(a->when) > std::popcount(b->when);
    });
    return batches;
}

bool within_one_another(const std::vector<const ClearBatch*>& widest_first) {
    for (std::size_t i = 1; i < widest_first.size(); ++i) {
        if ((widest_first[i]->when & ~widest_first[i - 1]->when) != 0) return false;
    }
    return true;
}

bool has(OpenBits meals, std::size_t meal) {
    return (meals >> meal & 1U) != 0;
}

}  // namespace

ClearModel::ClearModel(const ClearGame& game) : game_(&game), column_of_(game.options.size(), -1) {
    for (std::size_t o = 0; o < game.options.size(); ++o)
        column_of_[o] = add(-static_cast<double>(game.options[o].fixed) / thousandths, 1, true);
    for (const OpenMeal& meal : game.meals)
        empty_.push_back(add(static_cast<double>(meal.empty) / thousandths, 1, true));
    one_at_a_meal();
    dishes();
    things();
    on_demand_.cuts = [rows = pack_rows_](const solver::Values& values) { return solver::covers(rows, values); };
}

int ClearModel::add(double cost, double most, bool whole) {
    const int column = programme_.add({0, most, whole});
    if (cost != 0) cost_.emplace_back(column, cost);
    return column;
}

void ClearModel::one_at_a_meal() {
    for (std::size_t m = 0; m < game_->meals.size(); ++m) {
        Terms terms{{empty_[m], 1.0}};
        for (const int o : game_->meals[m].options) terms.emplace_back(column_of(o), 1.0);
        programme_.add(Row{std::move(terms), 1, 1});
    }
}

/// Of the options of one dish, for every stretch of days within its gap those that fall into it: at most one of them is
/// chosen. Only stretches with more than one meal, and none that is part of another.
std::vector<Terms> ClearModel::stretches(cookbook::DishId dish, const Factors& options) const {
    std::vector<Terms> result;
    std::vector<int> before;
    const basics::days gap{std::max(1, game_->gap(dish))};
    for (const basics::Day day : basics::days_of(game_->span)) {
        Terms terms;
        std::vector<int> here;
        std::set<int> meals;
        for (const auto& [o, factor] : options) {
            const basics::Day on = game_->meals[static_cast<std::size_t>(option(o).meal)].day;
            if (on < day || on >= day + gap) continue;
            terms.emplace_back(column_of(o), factor);
            here.push_back(o);
            meals.insert(option(o).meal);
        }
        if (meals.size() > 1 && !std::includes(before.begin(), before.end(), here.begin(), here.end())) {
            result.push_back(std::move(terms));
            before = std::move(here);
        }
        if (day + gap > game_->span.last) break;
    }
    return result;
}

void ClearModel::dishes() {
    std::map<cookbook::DishId, Factors> by_dish;
    for (std::size_t o = 0; o < game_->options.size(); ++o)
        by_dish[game_->options[o].dish].emplace_back(static_cast<int>(o), 1.0);
    const auto days = (game_->span.last - game_->span.first).count() + 1;
    for (const auto& [dish, options] : by_dish) {
        std::vector<Terms> apart = stretches(dish, options);
        if (apart.empty()) continue;
        const auto most = basics::scale_up(days, 1, std::max(1, game_->gap(dish)));
        if (most > 1) {
            for (Terms& terms : apart) on_demand_.needed.push_back(at_most(std::move(terms), 1));
        }
        const int had = had_[dish] = add(0, static_cast<double>(most), true);
        Terms terms{{had, -1.0}};
        for (const auto& [o, one] : options) terms.emplace_back(column_of(o), one);
        programme_.add(Row{std::move(terms), 0, 0});
    }
}

void ClearModel::things() {
    std::vector<Wants> wants(game_->things.size());
    for (std::size_t o = 0; o < game_->options.size(); ++o) {
        for (const ClearNeed& need : game_->options[o].needs) {
            auto& of = wants[static_cast<std::size_t>(need.thing)];
            of.resize(game_->meals.size());
            of[static_cast<std::size_t>(game_->options[o].meal)].push_back({static_cast<int>(o), need.amount});
        }
    }
    for (std::size_t t = 0; t < wants.size(); ++t) {
        if (!wants[t].empty()) thing(static_cast<int>(t), wants[t]);
    }
}

void ClearModel::thing(int number, const Wants& wants) {
    const auto batches = widest_first(game_->things[static_cast<std::size_t>(number)]);
    if (within_one_another(batches)) {
        by_sets_of_meals(number, wants, batches);
        saved_by_sets_of_meals(number, wants, batches);
    } else {
        by_each_meal(number, wants);
    }
    const auto packs = packs_.find(number);
    if (packs != packs_.end()) packs_alone(number, wants, packs->second);
}

/// The column of the packs of a thing; below 0 where it cannot be bought.
int ClearModel::packs_of(int number, std::int64_t most_lacking) {
    const ClearThing& of = game_->things[static_cast<std::size_t>(number)];
    if (of.pack == 0) return -1;
    const auto most = static_cast<double>(basics::scale_up(most_lacking, 1, of.pack));
    const auto [at, fresh] = packs_.try_emplace(number, -1);
    if (fresh) at->second = add(static_cast<double>(of.pack_price) / thousandths, most, true);
    double& upper = programme_.columns[static_cast<std::size_t>(at->second)].upper;
    upper = std::max(upper, most);
    return at->second;
}

/// The meals that reach only the widest k batches eat no more than these and what is bought.
void ClearModel::by_sets_of_meals(int number, const Wants& wants, const std::vector<const ClearBatch*>& widest_first) {
    const ClearThing& of = game_->things[static_cast<std::size_t>(number)];
    const double unit = unit_of(of);
    std::int64_t there = 0;
    for (std::size_t k = 0; k <= widest_first.size(); ++k) {
        if (k > 0) there += widest_first[k - 1]->amount;
        const OpenBits others = k < widest_first.size() ? widest_first[k]->when : 0;
        if (k > 0 && others == widest_first[k - 1]->when) continue;
        solver::RoomInUnits row{{}, there, std::max<std::int64_t>(1, of.pack), -1};
        Terms terms;
        std::int64_t most = 0;
        for (std::size_t m = 0; m < wants.size(); ++m) {
            if (has(others, m) || wants[m].empty()) continue;
            auto& group = row.groups.emplace_back();
            std::int64_t most_here = 0;
            for (const Want& want : wants[m]) {
                group.push_back({column_of(want.option), want.amount});
                terms.emplace_back(column_of(want.option), static_cast<double>(want.amount) / unit);
                most_here = std::max(most_here, want.amount);
            }
            most += most_here;
        }
        if (most <= there) continue;
        row.units = packs_of(number, most - there);
        if (row.units >= 0) terms.emplace_back(row.units, -static_cast<double>(of.pack) / unit);
        programme_.add(at_most(std::move(terms), static_cast<double>(there) / unit));
        if (row.units >= 0) pack_rows_.push_back(std::move(row));
    }
}

/// What is saved is no more than what the meals want that reach the narrower batches, and what the wider ones hold.
void ClearModel::saved_by_sets_of_meals(int number, const Wants& wants,
                                        const std::vector<const ClearBatch*>& widest_first) {
    const ClearThing& of = game_->things[static_cast<std::size_t>(number)];
    if (std::none_of(widest_first.begin(), widest_first.end(), [](const ClearBatch* batch) { return batch->danger; }))
        return;
    const double unit = unit_of(of);
    const int saved = add(-of.worth * unit / thousandths, static_cast<double>(of.danger) / unit, false);
    saved_.push_back({number, -1, -1, saved, unit});
    std::int64_t wider = 0;
    OpenBits before = 0;
    for (const ClearBatch* batch : widest_first) {
        if (!batch->danger) continue;
        if (batch->when != before) {
            Terms terms{{saved, 1.0}};
            for (std::size_t m = 0; m < wants.size(); ++m) {
                if (!has(batch->when, m)) continue;
                const std::int64_t here = danger_at(of, static_cast<int>(m));
                for (const Want& want : wants[m])
                    terms.emplace_back(column_of(want.option),
                                       -static_cast<double>(std::min(want.amount, here)) / unit);
            }
            programme_.add(at_most(std::move(terms), static_cast<double>(wider) / unit));
            before = batch->when;
        }
        wider += batch->amount;
    }
}

void ClearModel::by_each_meal(int number, const Wants& wants) {
    const ClearThing& of = game_->things[static_cast<std::size_t>(number)];
    const double unit = unit_of(of);
    std::vector<std::int64_t> most(wants.size(), 0);
    std::int64_t all = 0;
    for (std::size_t m = 0; m < wants.size(); ++m) {
        for (const Want& want : wants[m]) most[m] = std::max(most[m], want.amount);
        all += most[m];
    }
    const int packs = packs_of(number, all);
    std::vector<Terms> drawn(of.batches.size());
    Terms bought;
    for (std::size_t m = 0; m < wants.size(); ++m) {
        if (wants[m].empty()) continue;
        const auto eaten = [&](int batch, double cost, std::int64_t amount) {
            const int column = add(cost, static_cast<double>(std::min(most[m], amount)) / unit, false);
            saved_.push_back({number, static_cast<int>(m), batch, column, unit});
            return column;
        };
        Terms met;
        Terms saved;
        for (std::size_t b = 0; b < of.batches.size(); ++b) {
            const ClearBatch& batch = of.batches[b];
            if (!has(batch.when, m)) continue;
            const int use = eaten(static_cast<int>(b), batch.danger ? -of.worth * unit / thousandths : 0, batch.amount);
            drawn[b].emplace_back(use, 1.0);
            met.emplace_back(use, 1.0);
            if (batch.danger) saved.emplace_back(use, 1.0);
        }
        if (packs >= 0) {
            const int buy = eaten(-1, 0, most[m]);
            met.emplace_back(buy, 1.0);
            bought.emplace_back(buy, 1.0);
        }
        const std::int64_t here = danger_at(of, static_cast<int>(m));
        for (const Want& want : wants[m]) {
            met.emplace_back(column_of(want.option), -static_cast<double>(want.amount) / unit);
            if (!saved.empty())
                saved.emplace_back(column_of(want.option), -static_cast<double>(std::min(want.amount, here)) / unit);
        }
        programme_.add(Row{std::move(met), 0, 0});
        if (!saved.empty()) programme_.add(at_most(std::move(saved), 0));
    }
    for (std::size_t b = 0; b < drawn.size(); ++b) {
        if (!drawn[b].empty())
            programme_.add(at_most(std::move(drawn[b]), static_cast<double>(of.batches[b].amount) / unit));
    }
    if (packs < 0) return;
    bought.emplace_back(packs, -static_cast<double>(of.pack) / unit);
    programme_.add(at_most(std::move(bought), 0));
}

/// What a meal would have to buy if it were the only one is bought at least, and what a dish would, at whichever meal
/// it is had: this cuts off parts of packs.
void ClearModel::packs_alone(int number, const Wants& wants, int packs) {
    const ClearThing& of = game_->things[static_cast<std::size_t>(number)];
    std::map<cookbook::DishId, Factors> by_dish;
    for (std::size_t m = 0; m < wants.size(); ++m) {
        Terms terms;
        for (const Want& want : wants[m]) {
            const std::int64_t lacks = want.amount - there_at(of, static_cast<int>(m));
            if (lacks <= 0) continue;
            const auto alone = static_cast<double>(basics::scale_up(lacks, 1, of.pack));
            terms.emplace_back(column_of(want.option), alone);
            by_dish[option(want.option).dish].emplace_back(want.option, alone);
        }
        if (terms.empty()) continue;
        terms.emplace_back(packs, -1.0);
        on_demand_.helpful.push_back(at_most(std::move(terms), 0));
    }
    for (const auto& [dish, options] : by_dish) {
        for (Terms& terms : stretches(dish, options)) {
            terms.emplace_back(packs, -1.0);
            on_demand_.helpful.push_back(at_most(std::move(terms), 0));
        }
    }
}

solver::Values ClearModel::values(const ClearPlan& plan) const {
    solver::Values values(programme_.columns.size(), 0);
    const auto of = [&](int column) -> double& { return values[static_cast<std::size_t>(column)]; };
    ClearValue value(*game_);
    value.set(plan);
    for (std::size_t m = 0; m < plan.size(); ++m) {
        of(plan[m] < 0 ? empty_[m] : column_of(plan[m])) = 1;
        if (plan[m] < 0) continue;
        const auto had = had_.find(option(plan[m]).dish);
        if (had != had_.end()) of(had->second) += 1;
    }
    for (const auto& [thing, column] : packs_) of(column) = static_cast<double>(value.tally(thing).packs);
    std::map<int, std::vector<std::vector<std::int64_t>>> eaten;
    for (const Saved& saved : saved_) {
        if (saved.meal < 0) {
            of(saved.column) = static_cast<double>(value.tally(saved.thing).saved) / saved.unit;
            continue;
        }
        const auto [at, fresh] = eaten.try_emplace(saved.thing);
        if (fresh) at->second = value.eaten_by_meal(saved.thing);
        const auto& here = at->second[static_cast<std::size_t>(saved.meal)];
        const auto amount = saved.batch < 0 ? here.back() : here[static_cast<std::size_t>(saved.batch)];
        of(saved.column) = static_cast<double>(amount) / saved.unit;
    }
    return values;
}

ClearPlan ClearModel::plan(const solver::Values& values) const {
    constexpr double part = 1e-6;
    std::vector<std::pair<double, int>> parts;
    for (std::size_t o = 0; o < column_of_.size(); ++o) {
        const double value = values[static_cast<std::size_t>(column_of_[o])];
        if (value > part) parts.emplace_back(-value, static_cast<int>(o));
    }
    std::sort(parts.begin(), parts.end());
    ClearValue chosen(*game_);
    for (const auto& [minus, o] : parts) {
        const int meal = option(o).meal;
        if (chosen.plan()[static_cast<std::size_t>(meal)] < 0 && !chosen.clashes(o)) chosen.set(meal, o);
    }
    return chosen.plan();
}

}  // namespace samebase::ask::detail
