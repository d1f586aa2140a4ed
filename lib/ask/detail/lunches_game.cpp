#include "ask/detail/lunches_game.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "ask/detail/lunches_seats.hpp"
#include "ask/detail/worth.hpp"
#include "basics/exact.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using catalogue::Keep;
using cookbook::DishId;
using kitchen::Meal;

constexpr std::int64_t thousandths = 1000;
constexpr std::int64_t one_serve = 1000;
/// Where the catalogue knows no keeping time of a leftover, and never more than three days: the stricter guess.
constexpr int days_unknown = 2;
constexpr int most_days = 3;
constexpr int days_thawed = 1;
/// Beyond so many days a balance of a full kitchen takes minutes to prove: two by the rule are compared.
constexpr int longest_exact = 14;

int time_of(flow::Slot slot) {
    return 2 * flow::day_of(slot) + (slot == flow::dinner_of(flow::day_of(slot)) ? 1 : 0);
}

/// The stock that what stands leaves.
class Stock {
  public:
    Stock(LunchGame& game, const LunchTable& table) : game_(game), kitchen_(*game.kitchen), table_(table) {}

    void take() {
        const flow::Balance& before = game_.before;
        game_.position.assign(kitchen_.catalogue().ingredients().size(), -1);
        for (const flow::Cooking& cooking : before.cookings) {
            for (const flow::Needed& make : cooking.makes)
                made_[make.ingredient].push_back({cooking.dish, cooking.day});
        }
        for (std::uint32_t i = 0; i < game_.position.size(); ++i) {
            const IngredientId id{i};
            if (kitchen_.taken_as_there(id)) continue;
            game_.position[i] = static_cast<int>(game_.things.size());
            game_.things.push_back(thing(id));
            if (const flow::Part* part = before.part(id)) fill(part->component, game_.things.back());
        }
        // Present in an amount that nobody counted: as good as always there.
        for (const stock::Lot& lot : kitchen_.lots) {
            if (lot.rough) game_.position[lot.ingredient.index()] = -1;
        }
    }

  private:
    struct Made {
        DishId dish;
        basics::Day day;
    };
    struct Left {
        const flow::Unit* unit;
        std::int64_t amount;
        LunchBatch batch;
        flow::Slot first;
    };

    [[nodiscard]] LunchThing thing(IngredientId id) const {
        const auto& ingredient = kitchen_.catalogue()[id];
        LunchThing result;
        result.ingredient = id;
        if (ingredient.pack && ingredient.kind != catalogue::Kind::cooked) {
            result.pack = ingredient.pack->amount.value();
            result.pack_price =
                thousandths * kitchen::price(kitchen_, id, result.pack).value_or(ingredient.pack->price).minor;
        }
        return result;
    }

    [[nodiscard]] flow::Slot dinner(basics::Day day) const {
        return flow::dinner_of(static_cast<int>((day - game_.today).count()));
    }

    /// The last slot of a leftover that is not frozen.
    [[nodiscard]] flow::Slot cap(const stock::Lot& lot) const {
        const bool thaws = lot.state != stock::State::fresh;
        auto last = lot.since + basics::days{thaws ? days_thawed : game_.keeps_days(lot.ingredient)};
        if (lot.state == stock::State::thawing && lot.thawed_on) last = std::max(last, *lot.thawed_on);
        return dinner(last);
    }

    Left left_of(const flow::Unit& unit, IngredientId id, std::size_t& made) {
        const auto& ingredient = kitchen_.catalogue()[id];
        Left left{&unit, unit.amount, {}, unit.first};
        left.batch.lot = unit.lot;
        left.batch.last = unit.last;
        if (const stock::Lot* lot = kitchen_.lot(unit.lot)) {
            left.batch.dish = lot->dish;
            if (ingredient.in_serves && lot->state != stock::State::frozen)
                left.batch.last = std::min(left.batch.last, cap(*lot));
        } else {
            const Made& by = made_[id][made++];
            left.batch.dish = by.dish;
            left.batch.made = by.day;
            if (ingredient.in_serves)
                left.batch.last = std::min(left.batch.last, dinner(by.day + basics::days{game_.keeps_days(id)}));
        }
        if (unit.thaw_days > 0) {
            const bool water = unit.cold_water && unit.thaw_days == 1;
            left.first = std::max(left.first, water ? flow::dinner_of(0) : flow::lunch_of(unit.thaw_days));
        }
        return left;
    }

    /// Every want eats, what ends first going first; what is left becomes batches and packs.
    void fill(const flow::Component& component, LunchThing& thing) {
        std::vector<Left> left;
        std::size_t made = 0;
        for (const flow::Unit& unit : component.units) left.push_back(left_of(unit, component.ingredient, made));
        std::stable_sort(left.begin(), left.end(), [](const Left& a, const Left& b) {
            return a.batch.last != b.batch.last ? a.batch.last < b.batch.last : a.batch.lot < b.batch.lot;
        });
        for (const flow::Want& want : component.wants) {
            auto open = want.amount;
            for (Left& from : left) {
                if (want.slot < from.first || want.slot > from.batch.last) continue;
                const auto bite = std::min(open, from.amount);
                from.amount -= bite;
                open -= bite;
            }
            if (time_of(want.slot) >= game_.buys_from) thing.plan_buys += open;
        }
        for (const Left& from : left) {
            if (from.amount > 0) add(from, thing);
        }
        for (const LunchBatch& batch : thing.batches) {
            (batch.danger ? thing.danger : thing.keeps) += batch.amount;
            (batch.danger ? thing.danger_price : thing.keeps_price) += batch.price;
        }
        const auto each = [](basics::Money price, std::int64_t amount) {
            return amount > 0 ? static_cast<double>(thousandths * price.minor) / static_cast<double>(amount) : 0;
        };
        thing.worth = each(thing.danger_price, thing.danger);
        thing.cost = each(thing.keeps_price, thing.keeps);
    }

    void add(const Left& from, LunchThing& thing) {
        const flow::Unit& unit = *from.unit;
        const stock::Lot* lot = kitchen_.lot(unit.lot);
        const auto& ingredient = kitchen_.catalogue()[thing.ingredient];
        if (unit.thaw_days > 0 && ingredient.in_serves && unit.amount > one_serve &&
            table_.is_lunch(thing.ingredient)) {
            if (from.amount == unit.amount) add_pack(from, thing.ingredient);
            return;
        }
        LunchBatch batch = from.batch;
        batch.amount = from.amount;
        batch.danger = batch.last <= dinner(game_.horizon);
        batch.price = lot != nullptr ? kitchen::price(kitchen_, *lot, from.amount)
                                     : basics::share_of(unit.price, from.amount, unit.amount);
        for (int time = 0; time < game_.times; ++time) {
            const flow::Slot slot = time % 2 == 0 ? flow::lunch_of(time / 2) : flow::dinner_of(time / 2);
            if (from.first <= slot && slot <= batch.last) batch.when |= LunchTimes{1} << static_cast<unsigned>(time);
        }
        // What of one lot goes together is one.
        if (!thing.batches.empty()) {
            LunchBatch& same = thing.batches.back();
            if (lot != nullptr && same.lot == batch.lot && same.when == batch.when && same.last == batch.last) {
                same.amount += batch.amount;
                same.price = kitchen::price(kitchen_, *lot, same.amount);
                return;
            }
        }
        thing.batches.push_back(batch);
    }

    void add_pack(const Left& from, IngredientId id) {
        const auto& dish = from.batch.dish;
        if (!dish || kitchen_.cookbook()[*dish].leaves != id) return;
        const auto same = std::find_if(game_.packs.begin(), game_.packs.end(), [&](const LunchPack& pack) {
            return pack.lot == from.unit->lot && pack.size == from.unit->amount;
        });
        if (same != game_.packs.end()) {
            ++same->count;
            return;
        }
        game_.packs.push_back({id, from.unit->lot, *dish, from.unit->amount, thousandths * from.unit->price.minor, 1,
                               time_of(from.first)});
    }

    LunchGame& game_;
    const kitchen::Kitchen& kitchen_;
    const LunchTable& table_;
    std::map<IngredientId, std::vector<Made>> made_;
};

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
            for (basics::Day day = game_.span.first; day <= game_.span.last; day += basics::days{1}) {
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
            for (basics::Day day = game_.span.first; day <= game_.span.last; day += basics::days{1}) {
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
            for (basics::Day day = game_.span.first; day <= game_.span.last; day += basics::days{1}) {
                const auto& had = had_on(day);
                if (std::find(had.begin(), had.end(), DishId{i}) != had.end()) continue;
                LunchSource source{.kind = LunchKind::cooked,
                                   .day = day,
                                   .dish = {i},
                                   .of = {},
                                   .time = game_.lunch_time(day),
                                   .needs = {},
                                   .minutes = dishes[i].minutes};
                if (open_[day_number(day)] > 0 && can_be_cooked(source)) add(std::move(source), day);
            }
        }
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
                                      .left = 0},
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
                                 ? table_.may_have_cooked(slot.person, source.dish)
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
        setting.using_ = IngredientId{0};
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
    std::map<std::pair<std::size_t, DishId>, std::int64_t> liking_;
    std::map<std::pair<basics::Day, DishId>, std::int64_t> had_lately_;
    /// Marks are on what the recipe says, whoever has a serve apart.
    flow::Holds no_holds_ = flow::Holds(kitchen_.catalogue().ingredients().size());
};

/// Those at home whom no planned lunch serves.
void open_slots(LunchGame& game) {
    for (basics::Day day = game.span.first; day <= game.span.last; day += basics::days{1}) {
        for (const std::size_t person : kitchen::eaters(*game.kitchen, day, Meal::lunch)) {
            const bool served = std::any_of(game.standing.begin(), game.standing.end(), [&](const LunchStanding& seat) {
                return seat.day == day && seat.person == person;
            });
            if (!served) game.slots.push_back({day, person, {}});
        }
    }
}

}  // namespace

std::int64_t LunchThing::there_at(int time) const {
    std::int64_t sum = 0;
    for (const LunchBatch& batch : batches)
        sum += (batch.when >> static_cast<unsigned>(time) & 1U) != 0 ? batch.amount : 0;
    return sum;
}

std::int64_t LunchThing::packs_for(std::int64_t lacks) const {
    return (plan_buys + lacks + pack - 1) / pack - (plan_buys + pack - 1) / pack;
}

int LunchGame::keeps_days(IngredientId id) const {
    const auto& keeping = kitchen->catalogue()[id].keeps[static_cast<std::size_t>(Keep::fridge)];
    return std::min(most_days, keeping.said == catalogue::Keeping::Said::time ? keeping.time.days : days_unknown);
}

std::int64_t LunchThing::bought_with(std::int64_t packs) const {
    return ((plan_buys + pack - 1) / pack + packs) * pack - plan_buys;
}

std::int64_t LunchGame::again_cost(const LunchOption& a, const LunchOption& b) const {
    if (a.source < 0 || b.source < 0) return 0;
    const DishId dish = sources[static_cast<std::size_t>(a.source)].dish;
    if (dish != sources[static_cast<std::size_t>(b.source)].dish) return 0;
    const std::int64_t gap = kitchen->cookbook()[dish].gap;
    const auto apart =
        std::abs((slots[static_cast<std::size_t>(a.slot)].day - slots[static_cast<std::size_t>(b.slot)].day).count());
    return apart < gap ? again * (gap - apart) / gap : 0;
}

std::unique_ptr<LunchGame> lunch_game(const kitchen::Kitchen& kitchen, basics::Day today, basics::Span span) {
    auto game = std::make_unique<LunchGame>();
    game->kitchen = &kitchen;
    game->today = today;
    game->span = span;
    game->horizon = std::max(flow::horizon(kitchen, today), span.last);
    game->times = 2 * span.length();
    if (const auto shopping = kitchen::shopping_day(kitchen.household, today))
        game->buys_from = game->lunch_time(*shopping) + 1;
    const auto& worths = kitchen.household.worths;
    game->bought = thousandths * worths.bought_lunch.minor;
    game->minute = thousandths * worths.minute.minor;
    game->again = thousandths * worths.had_lately.minor /
                  std::max<std::int64_t>(1, static_cast<std::int64_t>(kitchen.household.people.size()));
    const LunchTable table(kitchen);
    game->standing = table.standing(span);
    open_slots(*game);
    const auto effort = span.length() > longest_exact ? flow::Effort::quick : flow::Effort::exact;
    game->balancer = std::make_unique<flow::Balancer>(kitchen, basics::Span{today, game->horizon}, effort);
    game->before = game->balancer->balance(game->balancer->planned());
    Stock(*game, table).take();
    Sources(*game, table).find();
    return game;
}

}  // namespace samebase::ask::detail
