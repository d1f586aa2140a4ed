#include "ask/detail/lunches_stock.hpp"

#include <algorithm>
#include <map>

#include "basics/exact.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using cookbook::DishId;

constexpr std::int64_t thousandths = 1000;
constexpr std::int64_t one_serve = 1000;
constexpr int days_thawed = 1;

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

}  // namespace

void take_stock(LunchGame& game, const LunchTable& table) {
    Stock(game, table).take();
}

}  // namespace samebase::ask::detail
