#include "ask/detail/clear_game.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "basics/exact.hpp"
#include "basics/ranges.hpp"
#include "kitchen/night.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using kitchen::Meal;

constexpr std::int64_t thousandths = 1000;
constexpr double crisper_counts = 1.5;
constexpr std::int64_t bought_lunches_for_nothing = 5;

bool occasion_takes(const kitchen::Kitchen& kitchen, basics::Day day, Meal meal) {
    return meal == Meal::dinner && std::any_of(kitchen.household.occasions.begin(), kitchen.household.occasions.end(),
                                               [&](const auto& o) { return o.day == day && o.dish; });
}

/// A unit's time in slots. What thaws in a day may be thawed in cold water instead, for today's dinner.
std::pair<flow::Slot, flow::Slot> time_of(const flow::Unit& unit) {
    flow::Slot first = unit.first;
    if (unit.thaw_days > 0) {
        const bool water = unit.cold_water && unit.thaw_days == 1;
        first = std::max(first, water ? flow::dinner_of(0) : flow::lunch_of(unit.thaw_days));
    }
    return {first, unit.last};
}

class Builder {
  public:
    Builder(const kitchen::Kitchen& kitchen, basics::Day today, basics::Span span)
        : kitchen_(kitchen), today_(today), game_(std::make_unique<ClearGame>()) {
        game_->span = span;
        game_->horizon = std::max(flow::horizon(kitchen, today), span.last);
    }

    std::unique_ptr<ClearGame> build() {
        open_meals();
        strip();
        const flow::Balancer balancer(game_->bare, {today_, game_->horizon}, flow::Effort::quick);
        game_->standing = balancer.planned();
        const flow::Balance before = balancer.balance(game_->standing);
        stock(before);
        options(balancer, before);
        for (const ClearThing& thing : game_->things)
            game_->at_stake += std::llround(thing.worth * static_cast<double>(thing.danger));
        return std::move(game_);
    }

  private:
    void open_meals() {
        for (const basics::Day day : basics::days_of(game_->span)) {
            for (const Meal meal : {Meal::lunch, Meal::dinner}) {
                if (occasion_takes(kitchen_, day, meal) || kitchen::serves_wanted(kitchen_, day, meal) == 0) continue;
                const int at = static_cast<int>((day - today_).count());
                game_->meals.push_back({day,
                                        meal,
                                        meal == Meal::lunch ? flow::lunch_of(at) : flow::dinner_of(at),
                                        thousandths * bought_lunches_for_nothing * kitchen::heads(kitchen_, day, meal) *
                                            kitchen_.household.worths.bought_lunch.minor,
                                        {}});
            }
        }
    }

    void strip() {
        game_->bare = kitchen_;
        std::erase_if(game_->bare.plan, [&](const kitchen::Planned& row) {
            return std::any_of(game_->meals.begin(), game_->meals.end(),
                               [&](const OpenMeal& open) { return open.day == row.day && open.meal == row.meal; });
        });
    }

    void stock(const flow::Balance& before) {
        position_.assign(kitchen_.catalogue().ingredients().size(), -1);
        for (std::uint32_t i = 0; i < position_.size(); ++i) {
            const IngredientId id{i};
            if (kitchen_.taken_as_there(id)) continue;
            position_[i] = static_cast<int>(game_->things.size());
            ClearThing thing;
            thing.ingredient = id;
            const auto& ingredient = kitchen_.catalogue()[id];
            if (ingredient.pack && ingredient.kind != catalogue::Kind::cooked) {
                thing.pack = ingredient.pack->amount.value();
                thing.pack_price =
                    thousandths * kitchen::price(kitchen_, id, thing.pack).value_or(ingredient.pack->price).minor;
            }
            if (const flow::Part* part = before.part(id)) fill(part->component, thing);
            game_->things.push_back(std::move(thing));
        }
        // Present in an amount that nobody counted: as good as always there.
        for (const stock::Lot& lot : kitchen_.lots) {
            if (lot.rough) position_[lot.ingredient.index()] = -1;
        }
    }

    /// What is left once every want has eaten, what ends first going first.
    void fill(const flow::Component& component, ClearThing& thing) {
        struct Left {
            const flow::Unit* unit;
            std::int64_t amount;
        };
        std::vector<Left> left;
        for (const flow::Unit& unit : component.units) left.push_back({&unit, unit.amount});
        std::stable_sort(left.begin(), left.end(), [](const Left& a, const Left& b) {
            return a.unit->last != b.unit->last ? a.unit->last < b.unit->last : a.unit->lot < b.unit->lot;
        });
        for (const flow::Want& want : component.wants) {
            auto open = want.amount;
            for (Left& from : left) {
                const auto [first, last] = time_of(*from.unit);
                if (want.slot < first || want.slot > last) continue;
                const auto bite = std::min(open, from.amount);
                from.amount -= bite;
                open -= bite;
            }
        }
        for (const Left& from : left) {
            if (from.amount > 0) add(*from.unit, from.amount, thing);
        }
        settle(thing);
    }

    void add(const flow::Unit& unit, std::int64_t amount, ClearThing& thing) {
        const flow::Slot end = flow::dinner_of(static_cast<int>((game_->horizon - today_).count()));
        const stock::Lot* lot = kitchen_.lot(unit.lot);
        ClearBatch batch{
            .amount = amount, .when = 0, .last = unit.last, .lot = unit.lot, .danger = unit.last <= end, .price = {}};
        const auto [first, last] = time_of(unit);
        for (std::size_t m = 0; m < game_->meals.size(); ++m) {
            const flow::Slot slot = game_->meals[m].slot;
            if (first <= slot && slot <= last) batch.when |= OpenBits{1} << m;
        }
        batch.price =
            lot != nullptr ? kitchen::price(kitchen_, *lot, amount) : basics::share_of(unit.price, amount, unit.amount);
        const bool crisper = lot != nullptr && kitchen_.place(lot->place).kind == stock::PlaceKind::crisper;
        thing.crisper = thing.crisper || (batch.danger && crisper);
        // Packs of one lot that go together are one.
        if (!thing.batches.empty()) {
            ClearBatch& same = thing.batches.back();
            if (same.lot == batch.lot && same.when == batch.when && same.last == batch.last && lot != nullptr) {
                same.amount += batch.amount;
                same.price = kitchen::price(kitchen_, *lot, same.amount);
                return;
            }
        }
        thing.batches.push_back(batch);
    }

    void settle(ClearThing& thing) const {
        const OpenBits all = game_->meals.empty() ? 0 : ~OpenBits{0} >> (64U - game_->meals.size());
        for (const ClearBatch& batch : thing.batches) {
            thing.there += batch.amount;
            thing.always = thing.always && batch.when == all;
            if (!batch.danger) continue;
            thing.danger += batch.amount;
            thing.danger_price += batch.price;
        }
        if (thing.danger == 0) return;
        thing.worth = (thing.crisper ? crisper_counts : 1.0) * static_cast<double>(thousandths) *
                      static_cast<double>(thing.danger_price.minor) / static_cast<double>(thing.danger);
    }

    // What may be had.

    void options(const flow::Balancer& balancer, const flow::Balance& before) {
        holds_ = flow::held_allergens(game_->bare);
        find_stand_ins();
        for (std::size_t m = 0; m < game_->meals.size(); ++m) {
            const Setting setting = setting_for(m, balancer, before);
            for (const cookbook::DishId id : basics::handles<cookbook::DishId>(kitchen_.cookbook().dishes().size())) {
                const OpenMeal& open = game_->meals[m];
                if (kitchen::within_gap(game_->bare, open.day, open.meal, id)) continue;
                if (!kitchen::not_for(kitchen_, open.day, open.meal, id)) cook(m, setting, id);
                if (!kitchen::not_for(kitchen_, open.day, open.meal, id, true)) warm(m, setting, id);
            }
        }
    }

    Setting setting_for(std::size_t m, const flow::Balancer& balancer, const flow::Balance& before) const {
        const OpenMeal& open = game_->meals[m];
        Setting setting;
        setting.kitchen = &game_->bare;
        setting.today = today_;
        setting.question.day = open.day;
        setting.meal = open.meal;
        setting.eaters = kitchen::eaters(kitchen_, open.day, open.meal);
        if (open.meal == Meal::dinner) setting.guests_avoid = kitchen::guests_avoid(kitchen_, open.day);
        setting.balancer = &balancer;
        setting.before = &before;
        setting.holds = holds_;
        setting.available.assign(position_.size(), 0);
        setting.can_be_bought_before.assign(position_.size(), false);
        for (std::size_t i = 0; i < position_.size(); ++i) {
            setting.available[i] = position_[i] < 0 ? std::numeric_limits<std::int64_t>::max()
                                                    : there_at(thing_of(i), static_cast<int>(m));
        }
        return setting;
    }

    [[nodiscard]] const ClearThing& thing_of(std::size_t ingredient) const {
        return game_->things[static_cast<std::size_t>(position_[ingredient])];
    }

    /// For every dish the things in danger that can take a place in it, and that it does not have itself.
    void find_stand_ins() {
        const auto& graph = kitchen_.graph();
        const auto most = graph::cost_of(graph.parameters().least_fit_of_named);
        for (const ClearThing& thing : game_->things) {
            if (thing.danger == 0) continue;
            for (std::uint32_t i = 0; i < kitchen_.cookbook().dishes().size(); ++i) {
                const auto& lines = kitchen_.cookbook()[cookbook::DishId{i}].ingredients;
                bool has = false;
                bool could = false;
                for (const auto& line : lines) {
                    has = has || line.ingredient == thing.ingredient;
                    if (line.optional || line.role == catalogue::Role::seasoning) continue;
                    const auto cost = graph.costs_to(
                        {thing.ingredient, line.role})[graph::BaseGraph::position({line.ingredient, line.role})];
                    could = could || cost <= most;
                }
                if (could && !has) stand_ins_[i].push_back(thing.ingredient);
            }
        }
    }

    /// A line that needs nothing in its place: it is there, and nobody avoids it.
    [[nodiscard]] catalogue::Of kept(const Setting& setting, const cookbook::Dish& dish) const {
        catalogue::AllergenSet avoid = setting.guests_avoid;
        for (const std::size_t eater : setting.eaters) avoid.add(kitchen_.household.people[eater].avoids);
        const cookbook::DishIngredient* best = nullptr;
        std::int64_t most = -2;
        for (const auto& line : dish.ingredients) {
            if (line.optional) continue;
            const bool avoided = !holds_[line.ingredient.index()].shared_with(avoid).empty();
            const bool staple = kitchen_.taken_as_there(line.ingredient);
            const auto there = avoided  ? -1
                               : staple ? std::numeric_limits<std::int64_t>::max()
                                        : setting.available[line.ingredient.index()];
            if (there > most) {
                most = there;
                best = &line;
            }
        }
        return best->ingredient;
    }

    void cook(std::size_t m, Setting setting, cookbook::DishId id) {
        const cookbook::Dish& dish = kitchen_.cookbook()[id];
        if (std::all_of(dish.ingredients.begin(), dish.ingredients.end(), [](const auto& l) { return l.optional; }))
            return;
        setting.using_ = {kept(setting, dish)};
        offer(m, setting, id, candidate(setting, id), true);
        const auto others = stand_ins_.find(id.value);
        if (others == stand_ins_.end()) return;
        for (const IngredientId other : others->second) {
            if (danger_at(thing_of(other.index()), static_cast<int>(m)) == 0) continue;
            setting.using_ = {other};
            Candidate with = candidate(setting, id);
            if (with.ruled_out.empty() && eats_only_what_is_there(m, with, other))
                offer(m, setting, id, std::move(with), false);
        }
    }

    [[nodiscard]] bool eats_only_what_is_there(std::size_t m, const Candidate& with, IngredientId other) const {
        return std::any_of(with.cooking.needs.begin(), with.cooking.needs.end(), [&](const flow::Needed& need) {
            return need.ingredient == other && need.amount <= danger_at(thing_of(other.index()), static_cast<int>(m));
        });
    }

    void warm(std::size_t m, const Setting& setting, cookbook::DishId id) {
        if (!has_ready_meal(kitchen_, id)) return;
        offer(m, setting, id, warmed(setting, id), false);
    }

    /// Adds an option, and the same with as much of what is in danger as its lines bear.
    void offer(std::size_t m, const Setting& setting, cookbook::DishId id, Candidate meal, bool may_scale) {
        if (!meal.ruled_out.empty() || !meal.vetoed.empty() || meal.cooking.serves_thousandths == 0) return;
        ClearDetail detail;
        detail.ready_meal = meal.cooking.ready_meal;
        detail.cautions = std::move(meal.cautions);
        detail.stand_ins = meal.stand_ins;
        Alternative lines;
        lines.dish = id;
        weigh(setting, *setting.before, meal, lines);
        std::int64_t fixed = 0;
        for (const Because& because : lines.because) {
            const auto line = line_of(because.line);
            if (!line) continue;
            fixed += thousandths * because.money.minor;
            detail.because.push_back({*line, because.money, because.of, {}, because.note});
        }
        detail.cooking = meal.cooking;
        push(m, id, fixed, detail);
        if (!may_scale) return;
        for (flow::Needed& need : detail.cooking.needs) scale(m, id, meal, need, detail.scaled);
        if (!detail.scaled.empty()) push(m, id, fixed, detail);
    }

    static std::optional<ClearLine> line_of(Line line) {
        if (line == Line::stand_ins) return ClearLine::stand_ins;
        if (line == Line::had_lately) return ClearLine::had_lately;
        if (line == Line::liking) return ClearLine::liking;
        return std::nullopt;
    }

    void scale(std::size_t m, cookbook::DishId id, const Candidate& meal, flow::Needed& need,
               std::vector<flow::Scaled>& scaled) const {
        if (position_[need.ingredient.index()] < 0) return;
        const cookbook::DishIngredient* line = nullptr;
        for (const auto& other : kitchen_.cookbook()[id].ingredients) {
            if (other.optional || other.ingredient != need.ingredient) continue;
            if (line != nullptr) return;
            line = &other;
        }
        const bool swapped_in = std::any_of(meal.swaps.begin(), meal.swaps.end(), [&](const flow::LineSwap& swap) {
            return std::any_of(swap.use.begin(), swap.use.end(),
                               [&](const auto& part) { return part.first == need.ingredient; });
        });
        if (line == nullptr || swapped_in) return;
        const auto most = need.amount * line->most_thousandths / 1000;
        const auto wanted = std::min(most, danger_at(thing_of(need.ingredient.index()), static_cast<int>(m)));
        if (wanted <= need.amount) return;
        scaled.push_back({need.ingredient,
                          static_cast<int>(wanted * 1000 / need.amount),
                          {kitchen_.catalogue()[need.ingredient].dimension, wanted}});
        need.amount = wanted;
    }

    void push(std::size_t m, cookbook::DishId id, std::int64_t fixed, const ClearDetail& detail) {
        ClearOption option;
        option.meal = static_cast<int>(m);
        option.dish = id;
        option.fixed = fixed;
        option.detail = static_cast<int>(game_->details.size());
        for (const flow::Needed& need : detail.cooking.needs) {
            const int at = position_[need.ingredient.index()];
            if (at >= 0) option.needs.push_back({at, need.amount});
        }
        game_->meals[m].options.push_back(static_cast<int>(game_->options.size()));
        game_->options.push_back(std::move(option));
        game_->details.push_back(detail);
    }

    const kitchen::Kitchen& kitchen_;
    basics::Day today_;
    std::unique_ptr<ClearGame> game_;
    std::vector<int> position_;  ///< by ingredient handle: in game.things; below 0: not counted
    flow::Holds holds_;
    std::map<std::uint32_t, std::vector<IngredientId>> stand_ins_;  ///< by dish
};

}  // namespace

bool ClearGame::clash(const ClearOption& a, const ClearOption& b) const {
    if (a.dish != b.dish) return false;
    const auto apart =
        std::abs((meals[static_cast<std::size_t>(a.meal)].day - meals[static_cast<std::size_t>(b.meal)].day).count());
    return apart == 0 || apart < gap(a.dish);
}

std::int64_t danger_at(const ClearThing& thing, int meal) {
    return std::accumulate(thing.batches.begin(), thing.batches.end(), std::int64_t{0},
                           [&](std::int64_t sum, const ClearBatch& batch) {
                               return batch.danger && (batch.when >> meal & 1U) != 0 ? sum + batch.amount : sum;
                           });
}

std::int64_t there_at(const ClearThing& thing, int meal) {
    return std::accumulate(thing.batches.begin(), thing.batches.end(), std::int64_t{0},
                           [&](std::int64_t sum, const ClearBatch& batch) {
                               return (batch.when >> meal & 1U) != 0 ? sum + batch.amount : sum;
                           });
}

std::unique_ptr<ClearGame> clear_game(const kitchen::Kitchen& kitchen, basics::Day today, basics::Span span) {
    return Builder(kitchen, today, span).build();
}

}  // namespace samebase::ask::detail
