#include "ask/detail/plan_problem.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <tuple>

#include "ask/detail/plan_groups.hpp"
#include "ask/detail/there.hpp"
#include "ask/detail/worth.hpp"
#include "basics/exact.hpp"
#include "basics/ranges.hpp"
#include "kitchen/night.hpp"
#include "menu/supply.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using cookbook::DishId;
using kitchen::Meal;
using menu::thousandths;

/// What is good at the end of the span is worth half its price: it will be eaten, but what is in the house is eaten
/// first, and cash is short.
constexpr int kept_counts = 500;
/// As for `clear`: a dinner for nobody costs five bought lunches a head.
constexpr std::int64_t bought_lunches_for_nothing = 5;
/// For every while that it was not had a mark more is given, up to so many.
constexpr int most_whiles = 3;
/// Common practice: out of season fresh food costs half as much again.
constexpr int dearer_thousandths = 500;

const kitchen::Occasion* wish_for(const kitchen::Kitchen& kitchen, basics::Day day) {
    const auto& occasions = kitchen.household.occasions;
    const auto found = std::find_if(occasions.begin(), occasions.end(),
                                    [&](const kitchen::Occasion& o) { return o.day == day && o.dish; });
    return found == occasions.end() ? nullptr : &*found;
}

bool dinner_had(const kitchen::Kitchen& kitchen, basics::Day day) {
    const auto had = kitchen::had(kitchen.history, day);
    return std::any_of(had.begin(), had.end(), [](const kitchen::Had& one) { return one.meal == Meal::dinner; });
}

/// What the household buys without being asked; see ask/plan.hpp.
std::vector<bool> usually_bought(const kitchen::Kitchen& kitchen) {
    std::vector<bool> usual;
    for (const catalogue::Ingredient& ingredient : kitchen.catalogue().ingredients())
        usual.push_back(ingredient.everyday || ingredient.staple);
    for (const kitchen::Price& price : kitchen.household.prices) usual[price.ingredient.index()] = true;
    for (const kitchen::StandingUse& use : kitchen.household.standing_uses) usual[use.ingredient.index()] = true;
    for (const stock::Lot& lot : kitchen.lots) usual[lot.ingredient.index()] = true;
    for (const kitchen::Had& had : kitchen.history) {
        for (const cookbook::DishIngredient& line : kitchen.cookbook()[had.dish].ingredients)
            usual[line.ingredient.index()] = true;
    }
    for (const cookbook::Dish& dish : kitchen.cookbook().dishes()) {
        for (const cookbook::SeparateServe& serve : dish.separate) {
            const bool someone = std::any_of(kitchen.household.people.begin(), kitchen.household.people.end(),
                                             [&](const kitchen::Person& p) { return p.avoids.has(serve.avoids); });
            if (!someone) continue;
            for (const auto& [of, use] : serve.swaps) usual[use.index()] = true;
        }
    }
    return usual;
}

class Builder {
  public:
    Builder(const kitchen::Kitchen& kitchen, basics::Day today, const PlanQuestion& question, int cash_thousandths)
        : kitchen_(kitchen),
          today_(today),
          question_(question),
          cash_thousandths_(cash_thousandths),
          result_(std::make_unique<PlanProblem>()) {
        result_->span = {std::max(today, question.span.first), question.span.last};
        usual_ = usually_bought(kitchen);
    }

    std::unique_ptr<PlanProblem> build() {
        strip();
        result_->balancer = std::make_unique<flow::Balancer>(result_->bare, basics::Span{today_, result_->span.last},
                                                             flow::Effort::quick);
        result_->standing = result_->balancer->planned();
        before_ = result_->balancer->balance(result_->standing);
        holds_ = flow::held_allergens(result_->bare);
        result_->problem.days = static_cast<int>((result_->span.last - today_).count()) + 1;
        last_had();
        groups_.emplace(result_->bare, today_, result_->problem);
        for (const basics::Day day : open_) fill(day);
        groups_->count_standing();
        return std::move(result_);
    }

  private:
    // What stands.

    void strip() {
        result_->bare = kitchen_;
        kitchen::Plan& plan = result_->bare.plan;
        for (const basics::Day day : basics::days_of(result_->span)) {
            if (dinner_had(kitchen_, day)) continue;
            const kitchen::Occasion* wish = wish_for(kitchen_, day);
            if (question_.again && wish == nullptr)
                std::erase_if(plan, [&](const auto& row) { return row.day == day && row.meal == Meal::dinner; });
            if (kitchen::planned(plan, day, Meal::dinner) != nullptr) continue;
            if (kitchen::serves_wanted(kitchen_, day, Meal::dinner) == 0) continue;
            if (wish == nullptr) {
                open_.push_back(day);
                continue;
            }
            const auto after = std::find_if(plan.begin(), plan.end(), [&](const auto& row) {
                return std::tuple(row.day, row.meal, row.dish) > std::tuple(day, Meal::dinner, *wish->dish);
            });
            plan.insert(after, {.day = day, .meal = Meal::dinner, .dish = *wish->dish, .serves = {}});
            result_->wished.push_back(day);
        }
    }

    void last_had() {
        last_had_.assign(kitchen_.cookbook().dishes().size(), std::nullopt);
        for (const kitchen::Had& had : kitchen_.history) last_had_[had.dish.index()] = had.day;
    }

    [[nodiscard]] flow::Slot time_of(basics::Day day) const {
        return flow::dinner_of(static_cast<int>((day - today_).count()));
    }

    [[nodiscard]] const flow::Component& component(IngredientId id) const {
        const flow::Part* part = before_.part(id);
        return part != nullptr ? part->component : result_->balancer->stock(id);
    }

    /// Whether it can be bought on a trip by that day, and keeps until then.
    [[nodiscard]] bool comes_by(IngredientId id, basics::Day day, bool unusual) const {
        if (!usual_[id.index()] && !unusual) return false;
        const auto& offer = result_->balancer->stock(id).offer;
        if (!offer) return false;
        const auto after = std::upper_bound(offer->slots.begin(), offer->slots.end(), time_of(day));
        if (after == offer->slots.begin()) return false;
        const int days = flow::day_of(time_of(day)) - flow::day_of(*std::prev(after));
        return offer->frozen || offer->keeps_days < 0 || days <= offer->keeps_days;
    }

    // What may be had.

    /// Candidates are the same on all days with the same table, minutes and things that can be bought by then.
    struct Table {
        std::vector<std::size_t> eaters;
        std::int64_t serves = 0;
        std::vector<catalogue::Allergen> guests_avoid;
        int minutes = 0;
        bool is_today = false;                    ///< what soaks overnight is not for today
        std::vector<bool> comes;                  ///< by ingredient handle: can be bought by then
        std::optional<basics::Day> before_trips;  ///< nothing can: what there is differs by day

        friend auto operator<=>(const Table&, const Table&) = default;
    };
    struct Known {
        Setting setting;
        std::map<DishId, Candidate> candidates;
    };

    Known& known(basics::Day day) {
        const auto avoided = kitchen::guests_avoid(kitchen_, day).members();
        Table table{kitchen::eaters(kitchen_, day, Meal::dinner),
                    kitchen::serves_wanted(kitchen_, day, Meal::dinner),
                    {avoided.begin(), avoided.end()},
                    kitchen::minutes_of(kitchen_.household, day),
                    day == today_,
                    {},
                    {}};
        for (std::uint32_t i = 0; i < usual_.size(); ++i)
            table.comes.push_back(comes_by(IngredientId{i}, day, question_.unusual));
        if (std::find(table.comes.begin(), table.comes.end(), true) == table.comes.end()) table.before_trips = day;
        const auto [place, is_new] = known_.try_emplace(std::move(table));
        if (is_new) place->second.setting = setting_for(day, question_.unusual);
        return place->second;
    }

    [[nodiscard]] Setting setting_for(basics::Day day, bool unusual) const {
        Setting setting;
        setting.kitchen = &result_->bare;
        setting.today = today_;
        setting.question.day = day;
        setting.question.from_stock = true;
        setting.eaters = kitchen::eaters(kitchen_, day, Meal::dinner);
        setting.guests_avoid = kitchen::guests_avoid(kitchen_, day);
        setting.balancer = result_->balancer.get();
        setting.before = &before_;
        setting.holds = holds_;
        const std::size_t count = kitchen_.catalogue().ingredients().size();
        setting.available.assign(count, 0);
        setting.can_be_bought_before.assign(count, false);
        for (std::uint32_t i = 0; i < count; ++i) {
            const IngredientId id{i};
            setting.available[i] = result_->balancer->counted(id) ? available_at(component(id), time_of(day))
                                                                  : std::numeric_limits<std::int64_t>::max();
            setting.can_be_bought_before[i] = comes_by(id, day, unusual);
        }
        return setting;
    }

    void fill(basics::Day day) {
        menu::Problem& problem = result_->problem;
        menu::MealSlot slot{day, time_of(day), static_cast<int>((day - today_).count()), groups_->week_of(day), 0, {}};
        slot.empty = thousandths * bought_lunches_for_nothing * kitchen::heads(kitchen_, day, Meal::dinner) *
                     kitchen_.household.worths.bought_lunch.minor;
        problem.slots.push_back(std::move(slot));
        Known& here = known(day);
        for (const DishId id : basics::handles<DishId>(kitchen_.cookbook().dishes().size())) {
            if (kitchen::within_gap(result_->bare, day, Meal::dinner, id)) continue;
            if (!kitchen::not_for(kitchen_, day, Meal::dinner, id)) cook(day, here, id);
            if (has_ready_meal(kitchen_, id) && !kitchen::not_for(kitchen_, day, Meal::dinner, id, true))
                offer(day, here.setting, warmed(setting_on(day, here.setting), id));
        }
        if (problem.slots.back().options.empty()) result_->empty.push_back(why_empty(day));
    }

    static Setting setting_on(basics::Day day, const Setting& setting) {
        Setting on = setting;
        on.question.day = day;
        return on;
    }

    void cook(basics::Day day, Known& here, DishId id) {
        const auto [place, is_new] = here.candidates.try_emplace(id);
        if (is_new) place->second = made(here.setting, id);
        if (!place->second.ruled_out.empty()) return;
        Candidate meal = place->second;
        meal.cooking.day = day;
        offer(day, here.setting, meal);
    }

    /// The dish for that table; ruled out too where it is not quite itself, or something cannot be had by then.
    Candidate made(const Setting& setting, DishId id) const {
        const cookbook::Dish& dish = kitchen_.cookbook()[id];
        Candidate none;
        none.ruled_out.emplace_back("it is not proposed");
        if (std::all_of(dish.ingredients.begin(), dish.ingredients.end(), [](const auto& l) { return l.optional; }))
            return none;
        Candidate meal = candidate(setting, id);
        if (!meal.vetoed.empty() || !meal.bought_at_once.empty() || meal.cooking.serves_thousandths == 0) return none;
        const bool as_it_is = std::all_of(meal.stand_ins.begin(), meal.stand_ins.end(), [&](const auto& use) {
            return usual_[use.replaced.index()] || avoided(setting, use.replaced);
        });
        return as_it_is ? meal : none;
    }

    [[nodiscard]] bool avoided(const Setting& setting, IngredientId id) const {
        catalogue::AllergenSet avoid = setting.guests_avoid;
        for (const std::size_t eater : setting.eaters) avoid.add(kitchen_.household.people[eater].avoids);
        return !holds_[id.index()].shared_with(avoid).empty();
    }

    void offer(basics::Day day, const Setting& setting, const Candidate& meal) {
        if (!meal.ruled_out.empty() || !meal.vetoed.empty()) return;
        if (!can_be_had(day, meal.cooking)) return;
        PlanDetail detail;
        detail.cooking = meal.cooking;
        detail.stand_ins = meal.stand_ins;
        menu::Option option;
        option.slot = static_cast<int>(result_->problem.slots.size()) - 1;
        option.dish = meal.cooking.dish;
        option.detail = static_cast<int>(result_->details.size());
        option.groups = groups_->of(option.dish);
        weigh_alone(day, setting, meal, option, detail);
        for (const PlanBecause& because : detail.because) option.worth += thousandths * because.money.minor;
        for (const flow::Needed& need : meal.cooking.needs) {
            if (result_->balancer->counted(need.ingredient) && need.amount > 0)
                option.needs.push_back({item(need.ingredient), need.amount});
        }
        std::sort(option.needs.begin(), option.needs.end(),
                  [](const auto& a, const auto& b) { return a.item < b.item; });
        result_->problem.slots.back().options.push_back(static_cast<int>(result_->problem.options.size()));
        result_->problem.options.push_back(std::move(option));
        result_->details.push_back(std::move(detail));
    }

    [[nodiscard]] bool can_be_had(basics::Day day, const flow::Cooking& cooking) const {
        return std::all_of(cooking.needs.begin(), cooking.needs.end(), [&](const flow::Needed& need) {
            return !result_->balancer->counted(need.ingredient) || comes_by(need.ingredient, day, question_.unusual) ||
                   available_at(component(need.ingredient), time_of(day)) >= need.amount;
        });
    }

    /// What it is worth whatever else is chosen: the household's lines, how long ago it was had, the season, and what
    /// stands too near.
    void weigh_alone(basics::Day day, const Setting& setting, const Candidate& meal, menu::Option& option,
                     PlanDetail& detail) const {
        Alternative lines;
        lines.dish = option.dish;
        weigh(setting_on(day, setting), before_, meal, lines);
        for (const Because& because : lines.because)
            detail.because.push_back({because.line, because.money, because.of, because.note});
        not_for_a_while(day, option.dish, detail);
        out_of_season(day, meal.cooking, detail);
        groups_->beside_what_stands(day, option.groups, detail.because);
    }

    void not_for_a_while(basics::Day day, DishId dish, PlanDetail& detail) const {
        const auto last = last_had_[dish.index()];
        const int whiles = last ? std::min(most_whiles, static_cast<int>((day - *last).count()) / a_while) : 0;
        if (whiles == 0) return;
        detail.because.push_back({menu::Line::had_lately,
                                  basics::Money{whiles * kitchen_.household.worths.mark.minor},
                                  {},
                                  fmt::format("last had on {}", basics::short_day(*last))});
    }

    void out_of_season(basics::Day day, const flow::Cooking& cooking, PlanDetail& detail) const {
        const auto month = static_cast<unsigned>(std::chrono::year_month_day{day}.month()) - 1;
        for (const flow::Needed& need : cooking.needs) {
            const catalogue::Ingredient& thing = kitchen_.catalogue()[need.ingredient];
            const auto season = kitchen_.household.southern ? thing.season_south : thing.season_north;
            if ((season >> month & 1U) != 0 || !comes_by(need.ingredient, day, question_.unusual)) continue;
            if (available_at(component(need.ingredient), time_of(day)) >= need.amount) continue;
            const auto price = kitchen::price(kitchen_, need.ingredient, need.amount);
            if (!price || price->minor == 0) continue;
            detail.because.push_back({menu::Line::to_buy, -basics::share_of(*price, dearer_thousandths, 1000),
                                      need.ingredient, "out of season"});
        }
    }

    int item(IngredientId id) {
        const auto [place, is_new] = items_.try_emplace(id, static_cast<int>(result_->problem.items.size()));
        if (is_new) {
            menu::Item item = menu::left_by_wants(component(id), kept_counts);
            if (!usual_[id.index()] && !question_.unusual) item.offer.reset();
            if (item.offer) item.offer->price = basics::share_of(item.offer->price, cash_thousandths_, 1000);
            result_->problem.items.push_back(std::move(item));
        }
        return place->second;
    }

    // Where there is nothing.

    /// The smallest change that gives the night a dish.
    PlanEmpty why_empty(basics::Day day) {
        PlanEmpty empty{.day = day, .kind = kitchen::standing_kind(kitchen_.household, day)};
        const auto better = [&](PlanEmpty::Way way, int minutes) {
            if (empty.way == way) {
                ++empty.dishes;
                empty.minutes = std::min(empty.minutes, minutes);
            } else if (empty.way == PlanEmpty::Way::none || way < empty.way) {
                empty.way = way;
                empty.minutes = minutes;
                empty.dishes = 1;
            }
        };
        Setting setting = setting_for(day, question_.unusual);
        const std::vector<bool> comes = setting.can_be_bought_before;
        for (std::uint32_t i = 0; i < comes.size(); ++i) {
            const auto& ingredient = kitchen_.catalogue()[IngredientId{i}];
            setting.can_be_bought_before[i] =
                comes[i] || (ingredient.pack && ingredient.kind != catalogue::Kind::cooked);
        }
        for (const DishId id : basics::handles<DishId>(kitchen_.cookbook().dishes().size())) {
            const auto not_for = kitchen::not_for(kitchen_, day, Meal::dinner, id);
            if (not_for == kitchen::NotFor::meal || not_for == kitchen::NotFor::kind) continue;
            const Candidate meal = candidate(setting, id);
            const bool for_all = meal.ruled_out.empty() && meal.vetoed.empty();
            if (!for_all || !meal.bought_at_once.empty()) {
                if (!for_all) better(PlanEmpty::Way::eaters, 0);
            } else if (not_for) {
                better(PlanEmpty::Way::minutes, kitchen_.cookbook()[id].minutes);
            } else {
                const bool gap = kitchen::within_gap(result_->bare, day, Meal::dinner, id);
                const bool unusual =
                    std::any_of(meal.cooking.needs.begin(), meal.cooking.needs.end(), [&](const auto& need) {
                        return !usual_[need.ingredient.index()] &&
                               available_at(component(need.ingredient), time_of(day)) < need.amount;
                    });
                better(gap ? PlanEmpty::Way::gap : unusual ? PlanEmpty::Way::unusual : PlanEmpty::Way::trip, 0);
            }
        }
        return empty;
    }

    const kitchen::Kitchen& kitchen_;
    basics::Day today_;
    const PlanQuestion& question_;
    int cash_thousandths_;
    std::unique_ptr<PlanProblem> result_;
    flow::Balance before_;
    flow::Holds holds_;
    std::vector<basics::Day> open_;
    std::vector<bool> usual_;                           ///< by ingredient handle
    std::vector<std::optional<basics::Day>> last_had_;  ///< by dish handle
    std::map<Table, Known> known_;
    std::map<IngredientId, int> items_;
    std::optional<PlanGroups> groups_;
};

}  // namespace

std::unique_ptr<PlanProblem> plan_problem(const kitchen::Kitchen& kitchen, basics::Day today,
                                          const PlanQuestion& question, int cash_thousandths) {
    return Builder(kitchen, today, question, cash_thousandths).build();
}

}  // namespace samebase::ask::detail
