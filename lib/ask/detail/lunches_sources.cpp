#include "ask/detail/lunches_sources.hpp"

#include <algorithm>
#include <map>

#include "ask/detail/worth.hpp"
#include "basics/ranges.hpp"
#include "kitchen/cooking.hpp"
#include "kitchen/soaking.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using cookbook::DishId;
using kitchen::Meal;

constexpr std::int64_t thousandths = 1000;
constexpr std::int64_t one_serve = 1000;

/// What the open lunches may come from.
class Sources {
  public:
    Sources(LunchGame& game, const LunchTable& table) : game_(game), kitchen_(*game.kitchen), table_(table) {}

    void find() {
        by_day_.resize(static_cast<std::size_t>(game_.span.length()));
        open_.assign(by_day_.size(), 0);
        for (const LunchSlot& slot : game_.slots) ++open_[day_number(slot.day)];
        leftovers();
        packs();
        larger();
        cooked();
        for (std::size_t s = 0; s < game_.slots.size(); ++s) offer(s);
        for (LunchSource& source : game_.sources) know_needs(source);
    }

  private:
    struct Offered {
        int source = 0;
        DishId dish;
    };

    [[nodiscard]] std::size_t day_number(basics::Day day) const {
        return static_cast<std::size_t>((day - game_.span.first).count());
    }

    [[nodiscard]] bool is_planned(basics::Day day, DishId dish) const {
        return std::any_of(kitchen_.plan.begin(), kitchen_.plan.end(), [&](const kitchen::Planned& row) {
            return row.day == day && row.meal == Meal::lunch && row.dish == dish;
        });
    }

    /// Dishes that can be had as a leftover on a day, whether or not the plan has them then.
    std::vector<DishId>& had_on(basics::Day day) { return had_[day]; }

    void add(LunchSource source, basics::Day lunch) {
        if (source.kind != LunchKind::cooked) had_on(lunch).push_back(source.dish);
        if (is_planned(lunch, source.dish) || open_[day_number(lunch)] == 0) return;
        by_day_[day_number(lunch)].push_back(static_cast<int>(game_.sources.size()));
        game_.sources.push_back(std::move(source));
    }

    void leftovers() {
        for (const LunchThing& thing : game_.things) {
            if (!table_.is_lunch(thing.ingredient) || game_.position[thing.ingredient.index()] < 0) continue;
            for (const basics::Day day : basics::days_of(game_.span)) {
                const int time = game_.lunch_time(day);
                const auto first = std::find_if(thing.batches.begin(), thing.batches.end(), [&](const LunchBatch& b) {
                    return (b.when >> static_cast<unsigned>(time) & 1U) != 0;
                });
                if (first == thing.batches.end()) continue;
                const bool named = first->dish && kitchen_.cookbook()[*first->dish].leaves == thing.ingredient;
                add({.kind = LunchKind::leftover,
                     .day = day,
                     .dish = named ? *first->dish : *table_.left_by(thing.ingredient),
                     .of = thing.ingredient,
                     .time = time,
                     .needs = {}},
                    day);
            }
        }
    }

    void packs() {
        for (std::size_t p = 0; p < game_.packs.size(); ++p) {
            const LunchPack& pack = game_.packs[p];
            if (game_.position[pack.ingredient.index()] < 0) continue;
            for (const basics::Day day : basics::days_of(game_.span)) {
                const int time = game_.lunch_time(day);
                if (time < pack.first) continue;
                add({.kind = LunchKind::frozen_pack,
                     .day = day,
                     .dish = pack.dish,
                     .of = pack.ingredient,
                     .time = time,
                     .needs = {},
                     .minutes = 0,
                     .pack = static_cast<int>(p)},
                    day);
            }
        }
    }

    /// A dinner that can be larger is one source for several days.
    void larger() {
        for (std::size_t r = 0; r < kitchen_.plan.size(); ++r) {
            const kitchen::Planned& row = kitchen_.plan[r];
            const cookbook::Dish& dish = kitchen_.cookbook()[row.dish];
            if (row.meal != Meal::dinner || row.ready_meal || !game_.span.contains(row.day) || !dish.leaves ||
                !table_.is_lunch(*dish.leaves) ||
                flow::cook(kitchen_, row, {}, &table_.holds()).serves_thousandths == 0)
                continue;
            const int keeps = game_.keeps_days(*dish.leaves);
            const int source = static_cast<int>(game_.sources.size());
            bool used = false;
            for (basics::Day day = row.day + basics::days{1};
                 day <= row.day + basics::days{keeps} && day <= game_.span.last; day += basics::days{1}) {
                had_on(day).push_back(row.dish);
                if (is_planned(day, row.dish) || open_[day_number(day)] == 0) continue;
                by_day_[day_number(day)].push_back(source);
                used = true;
            }
            if (!used) continue;
            game_.sources.push_back({.kind = LunchKind::larger,
                                     .day = row.day,
                                     .dish = row.dish,
                                     .of = dish.leaves,
                                     .time = game_.lunch_time(row.day) + 1,
                                     .needs = {},
                                     .minutes = 0,
                                     .pack = -1,
                                     .row = r});
        }
    }

    void cooked() {
        const auto dishes = kitchen_.cookbook().dishes();
        for (std::uint32_t i = 0; i < dishes.size(); ++i) {
            if (!dishes[i].lunch) continue;
            for (const basics::Day day : basics::days_of(game_.span)) {
                const auto& had = had_on(day);
                if (std::find(had.begin(), had.end(), DishId{i}) != had.end()) continue;
                LunchSource source{.kind = LunchKind::cooked,
                                   .day = day,
                                   .dish = {i},
                                   .of = {},
                                   .time = game_.lunch_time(day),
                                   .needs = {},
                                   .minutes = dishes[i].minutes};
                if (open_[day_number(day)] == 0) continue;
                source.swaps = swaps_for(source);
                const bool soaks =
                    day == game_.today && !kitchen::soaked_overnight(kitchen_, source.dish, source.swaps).empty();
                if (!soaks && can_be_cooked(source)) add(std::move(source), day);
            }
        }
    }

    /// What is not there is replaced by what is there and as good as it: one kind of bread by another.
    std::vector<kitchen::LineSwap> swaps_for(const LunchSource& source) {
        const cookbook::Dish& dish = kitchen_.cookbook()[source.dish];
        std::vector<kitchen::LineSwap> swaps;
        for (const cookbook::DishIngredient& line : dish.ingredients) {
            const auto needed = kitchen::of_the_dish(dish, line.ingredient, one_serve);
            if (line.optional || is_there(line.ingredient, needed, source.time)) continue;
            for (const graph::StandIn& stand_in : near_ones({line.ingredient, line.role})) {
                auto swap = kitchen::swap_of(kitchen_.catalogue(), dish, line.ingredient, stand_in.use, one_serve);
                const auto& [id, amount] = swap.use.front();
                if (is_for_a_serve_apart(dish, id) || !is_there(id, amount, source.time)) continue;
                swaps.push_back(std::move(swap));
                break;
            }
        }
        return swaps;
    }

    /// What is kept for those who must avoid something is not for all.
    static bool is_for_a_serve_apart(const cookbook::Dish& dish, IngredientId id) {
        return std::any_of(dish.separate.begin(), dish.separate.end(), [&](const cookbook::SeparateServe& serve) {
            return std::any_of(serve.swaps.begin(), serve.swaps.end(), [&](const auto& s) { return s.second == id; });
        });
    }

    [[nodiscard]] bool is_there(IngredientId id, std::int64_t amount, int time) const {
        const int at = game_.position[id.index()];
        return at < 0 || game_.things[static_cast<std::size_t>(at)].there_at(time) >= amount;
    }

    /// Single things of its family that do its work nearly as well and take no longer, best first: margarine for
    /// butter, but not oil.
    const std::vector<graph::StandIn>& near_ones(graph::Node node) {
        constexpr double near = 0.85;
        const auto family = [&](IngredientId id) { return kitchen_.catalogue()[id].family; };
        const auto [place, is_new] = near_ones_.try_emplace(node);
        if (is_new) {
            place->second = kitchen_.graph().stand_ins(node, near, {});
            std::erase_if(place->second, [&](const graph::StandIn& s) {
                return s.use.size() != 1 || s.adds_minutes > 0 ||
                       family(s.use.front().first) != family(node.ingredient);
            });
        }
        return place->second;
    }

    [[nodiscard]] bool can_be_cooked(const LunchSource& source) const {
        const auto needs = needs_of(source, 1);
        return std::all_of(needs.begin(), needs.end(), [&](const LunchNeed& need) {
            const LunchThing& thing = game_.things[static_cast<std::size_t>(need.thing)];
            return thing.there_at(source.time) >= need.amount || (thing.pack > 0 && source.time >= game_.buys_from);
        });
    }

    [[nodiscard]] std::vector<LunchNeed> listed(const std::vector<flow::Needed>& needs) const {
        std::vector<LunchNeed> list;
        for (const flow::Needed& need : needs) {
            const int at = game_.position[need.ingredient.index()];
            if (at >= 0 && need.amount > 0) list.push_back({at, need.amount});
        }
        return list;
    }

    [[nodiscard]] std::vector<LunchNeed> needs_of(const LunchSource& source, int serves) const {
        if (source.kind == LunchKind::leftover)
            return {{game_.position[source.of->index()], one_serve * std::int64_t{serves}}};
        if (source.kind == LunchKind::frozen_pack) return {};
        if (source.kind == LunchKind::cooked) {
            return listed(flow::cook(kitchen_,
                                     {.day = source.day,
                                      .meal = Meal::lunch,
                                      .dish = source.dish,
                                      .ready_meal = false,
                                      .serves = serves,
                                      .left = 0,
                                      .swaps = source.swaps},
                                     {}, &table_.holds())
                              .needs);
        }
        kitchen::Planned row = kitchen_.plan[source.row];
        std::map<IngredientId, std::int64_t> more;
        for (const flow::Needed& need : flow::cook(kitchen_, row, {}, &table_.holds()).needs)
            more[need.ingredient] -= need.amount;
        row.left += serves;
        for (const flow::Needed& need : flow::cook(kitchen_, row, {}, &table_.holds()).needs)
            more[need.ingredient] += need.amount;
        std::vector<flow::Needed> needs;
        needs.reserve(more.size());
        for (const auto& [id, amount] : more) needs.push_back({id, amount});
        return listed(needs);
    }

    void know_needs(LunchSource& source) {
        const auto at = static_cast<std::size_t>(&source - game_.sources.data());
        const int most = at < served_.size() ? served_[at] : 0;
        for (int serves = 0; serves <= most; ++serves)
            source.needs.push_back(serves == 0 ? std::vector<LunchNeed>{} : needs_of(source, serves));
    }

    void offer(std::size_t s) {
        served_.resize(game_.sources.size(), 0);
        LunchSlot& slot = game_.slots[s];
        const auto option = [&](int source, std::int64_t fixed, std::int64_t lately) {
            slot.options.push_back(static_cast<int>(game_.options.size()));
            game_.options.push_back({static_cast<int>(s), source, fixed, lately});
        };
        option(-1, -game_.bought, 0);
        for (const int number : by_day_[day_number(slot.day)]) {
            const LunchSource& source = game_.sources[static_cast<std::size_t>(number)];
            const bool may = source.kind == LunchKind::cooked
                                 ? table_.may_have_cooked(slot.person, source.dish, source.swaps)
                                 : table_.may_have_left(slot.person, *source.of, source.dish);
            if (!may) {
                ++slot.refused;
                continue;
            }
            const std::int64_t lately = source.kind == LunchKind::cooked ? had_lately(slot.day, source.dish) : 0;
            std::int64_t fixed = liking(slot.person, source.dish) - lately;
            if (source.kind == LunchKind::larger) fixed -= minutes_a_larger_serve * game_.minute;
            option(number, fixed, lately);
            ++served_[static_cast<std::size_t>(number)];
        }
    }

    /// One line of what `else` would say of the dish; nothing is compared but the dish's own lines.
    [[nodiscard]] std::int64_t line(Line which, basics::Day day, std::vector<std::size_t> eaters, DishId dish) const {
        Setting setting;
        setting.kitchen = &kitchen_;
        setting.today = game_.today;
        setting.question.day = day;
        setting.meal = Meal::lunch;
        setting.eaters = std::move(eaters);
        setting.before = &game_.before;
        Candidate one;
        one.cooking = flow::cook(
            kitchen_, {.day = day, .meal = Meal::lunch, .dish = dish, .ready_meal = false, .serves = 1, .left = 0}, {},
            &no_holds_);
        Alternative told;
        told.dish = dish;
        weigh(setting, game_.before, one, told);
        std::int64_t sum = 0;
        for (const Because& because : told.because) sum += because.line == which ? because.money.minor : 0;
        return sum;
    }

    std::int64_t liking(std::size_t person, DishId dish) {
        const auto [at, fresh] = liking_.try_emplace({person, dish}, 0);
        if (fresh) at->second = thousandths * line(Line::liking, game_.today, {person}, dish);
        return at->second;
    }

    std::int64_t had_lately(basics::Day day, DishId dish) {
        const auto [at, fresh] = had_lately_.try_emplace({day, dish}, 0);
        if (fresh) {
            const auto heads = static_cast<std::int64_t>(kitchen_.household.people.size());
            at->second = -thousandths * line(Line::had_lately, day, {}, dish) / heads;
        }
        return at->second;
    }

    LunchGame& game_;
    const kitchen::Kitchen& kitchen_;
    const LunchTable& table_;
    std::vector<std::vector<int>> by_day_;
    std::vector<int> open_;    ///< slots by day
    std::vector<int> served_;  ///< by source: the slots that may have it
    std::map<basics::Day, std::vector<DishId>> had_;
    std::map<graph::Node, std::vector<graph::StandIn>> near_ones_;
    std::map<std::pair<std::size_t, DishId>, std::int64_t> liking_;
    std::map<std::pair<basics::Day, DishId>, std::int64_t> had_lately_;
    /// Marks are on what the recipe says, whoever has a serve apart.
    flow::Holds no_holds_ = flow::Holds(kitchen_.catalogue().ingredients().size());
};

}  // namespace

void find_sources(LunchGame& game, const LunchTable& table) {
    Sources(game, table).find();
}

}  // namespace samebase::ask::detail
