#include "support/random_commands.hpp"

#include <vector>

namespace samebase::tests {

namespace {

using kitchen::At;
using kitchen::Change;

class Commands {
  public:
    Commands(const At& at, std::uint64_t seed) : at_(at), dice_(seed) {}

    basics::Result<Change> any() {
        switch (dice_.roll(20)) {
            case 0:
            case 1:
            case 2:
            case 3:
                return got();
            case 4:
            case 5:
                return moved();
            case 6: {
                const auto things = items();
                return kitchen::opened(at_, things);
            }
            case 7:
            case 8: {
                const auto things = items();
                return kitchen::ate(at_, things);
            }
            case 9: {
                const auto things = items();
                return kitchen::tossed(at_, things, dice_.one_in(2) ? "smelt off" : "");
            }
            case 10:
            case 11:
                return counted();
            case 12:
            case 13:
                return cooked();
            case 14:
            case 15:
            case 16:
                return planned();
            case 17:
            case 18:
                return listed();
            default:
                return kitchen::out(at_, dice_.one_in(2) ? ingredient("oil") : ingredient("flour"), dice_.one_in(2));
        }
    }

  private:
    basics::Result<Change> listed() {
        const auto& rows = at_.kitchen.household.listed;
        if (!rows.empty() && dice_.one_in(2)) {
            const std::vector<std::string> words{
                rows[static_cast<std::size_t>(dice_.roll(static_cast<std::int64_t>(rows.size())))].words};
            return kitchen::list_drop(at_, words);
        }
        kitchen::Listed row{"candles", std::nullopt, static_cast<int>(dice_.roll(3))};
        if (dice_.one_in(2)) {
            row.ingredient = any_ingredient();
            row.words = at_.kitchen.catalogue()[*row.ingredient].name;
        }
        const std::vector<kitchen::Listed> rows_to_add{row};
        return kitchen::list_add(at_, rows_to_add);
    }
    catalogue::IngredientId ingredient(std::string_view id) const {
        return at_.kitchen.catalogue().ingredient(id).value();
    }
    catalogue::IngredientId any_ingredient() {
        return {static_cast<std::uint32_t>(
            dice_.roll(static_cast<std::int64_t>(at_.kitchen.catalogue().ingredients().size())))};
    }
    stock::PlaceId any_place() {
        return {static_cast<std::uint32_t>(dice_.roll(static_cast<std::int64_t>(at_.kitchen.household.places.size())))};
    }
    cookbook::DishId any_dish() {
        return {
            static_cast<std::uint32_t>(dice_.roll(static_cast<std::int64_t>(at_.kitchen.cookbook().dishes().size())))};
    }

    kitchen::Quantity quantity(catalogue::IngredientId id, bool may_be_rough) {
        const auto dimension = at_.kitchen.catalogue()[id].dimension;
        const std::int64_t unit = dimension == measure::Dimension::pieces ? 500 : 1'000;
        const std::int64_t large = dimension == measure::Dimension::pieces ? 20 : 3'000;
        kitchen::Quantity q;
        switch (dice_.roll(may_be_rough ? 8 : 6)) {
            case 0:
                q.amount = {dimension, dice_.roll(large * unit) + 1};  // to the milligram
                break;
            case 1:
            case 2:
                q.amount = {dimension, (dice_.roll(large) + 1) * unit};
                break;
            case 3:
                q.amount = {dimension, (dice_.roll(large) + 20) * unit};
                q.packs = (dice_.roll(12) + 1) * 1000;
                break;
            case 4:
            case 5:
                q.packs = dice_.one_in(3) ? dice_.roll(6000) + 1 : (dice_.roll(8) + 1) * 1000;
                break;
            default:
                q.rough = static_cast<measure::Rough>(dice_.roll(3));
        }
        return q;
    }

    basics::Result<Change> got() {
        std::vector<kitchen::Got> things;
        for (std::int64_t n = dice_.roll(3); n >= 0; --n) {
            const auto id = any_ingredient();
            kitchen::Got thing{id, quantity(id, true), any_place(), {}, {}, {}, {}, ""};
            if (dice_.one_in(3)) thing.pack = {at_.kitchen.catalogue()[id].dimension, (dice_.roll(20) + 1) * 50'000};
            if (dice_.one_in(3)) thing.use_by = at_.day + basics::days{dice_.roll(12)};
            if (dice_.one_in(2)) thing.paid = basics::Money{dice_.roll(3000)};
            if (dice_.one_in(5)) thing.note = "it's \"special\", größer";
            things.push_back(thing);
        }
        return kitchen::got(at_, things);
    }

    kitchen::Item item() {
        kitchen::Item it;
        if (!at_.kitchen.lots.empty() && !dice_.one_in(4)) {
            const auto& lot =
                at_.kitchen
                    .lots[static_cast<std::size_t>(dice_.roll(static_cast<std::int64_t>(at_.kitchen.lots.size())))];
            it.what.ingredient = lot.ingredient;
            if (dice_.one_in(3)) it.what.lot = lot.number;
            if (dice_.one_in(2)) it.what.from = lot.place;
        } else {
            it.what.ingredient = any_ingredient();
        }
        if (!dice_.one_in(4)) it.quantity = quantity(*it.what.ingredient, false);
        return it;
    }

    std::vector<kitchen::Item> items() {
        std::vector<kitchen::Item> list{item()};
        if (dice_.one_in(3)) list.push_back(item());
        return list;
    }

    basics::Result<Change> moved() {
        const auto things = items();
        std::optional<stock::ThawMethod> thaw;
        if (!dice_.one_in(3)) thaw = static_cast<stock::ThawMethod>(dice_.roll(3));
        return kitchen::moved(at_, things, any_place(), thaw);
    }

    basics::Result<Change> counted() {
        std::vector<kitchen::CountedItem> things;
        for (std::int64_t n = dice_.roll(4); n > 0; --n) {
            const auto id = any_ingredient();
            things.push_back({id, {}, quantity(id, true), {}});
            if (dice_.one_in(6))
                things.back().quantity = {measure::Amount{at_.kitchen.catalogue()[id].dimension, 0}, {}, {}};
        }
        return kitchen::count(at_, any_place(), things, dice_.one_in(4));
    }

    basics::Result<Change> cooked() {
        kitchen::Cooked what;
        what.dish = any_dish();
        what.meal = dice_.one_in(4) ? kitchen::Meal::lunch : kitchen::Meal::dinner;
        what.serves = (dice_.roll(9) + 1) * 1000;
        what.eaten = dice_.roll(what.serves + 1);
        what.leftovers = {2};  // fridge
        what.freezer = stock::PlaceId{3};
        if (dice_.one_in(3)) what.freeze = dice_.roll(what.serves - what.eaten + 1);
        if (dice_.one_in(5))
            what.swaps.push_back(
                {ingredient("beef-mince"), {{ingredient(dice_.one_in(2) ? "peas" : "milk"), 250'000}}, what.serves});
        return kitchen::cooked(at_, what);
    }

    basics::Result<Change> planned() {
        const basics::Day day = at_.day + basics::days{dice_.roll(14)};
        const auto meal = dice_.one_in(3) ? kitchen::Meal::lunch : kitchen::Meal::dinner;
        switch (dice_.roll(8)) {
            case 0:
                return kitchen::swap_days(at_, day, at_.day + basics::days{dice_.roll(14)}, meal);
            case 1:
                return kitchen::set_plan(at_, {day, day + basics::days{dice_.roll(4)}}, meal, {}, "clear");
            case 2: {
                const std::vector<kitchen::Had> had{{at_.day - basics::days{dice_.roll(300)}, meal, any_dish()}};
                return kitchen::remember(at_, had);
            }
            default: {
                std::optional<int> serves;
                if (dice_.one_in(3)) serves = static_cast<int>(dice_.roll(8)) + 1;
                return kitchen::set_meal(
                    at_, {day, meal, any_dish(), dice_.one_in(6), serves, static_cast<int>(dice_.roll(3)), swaps()});
            }
        }
    }

    std::vector<kitchen::LineSwap> swaps() {
        std::vector<kitchen::LineSwap> list;
        for (const char* const of : {"beef-mince", "eggs", "onion"}) {
            if (!dice_.one_in(3)) continue;
            auto& swap = list.emplace_back(kitchen::LineSwap{ingredient(of), {}, (dice_.roll(9) + 1) * 500});
            for (const char* const use : {"peas", of, "rice"}) {
                if (dice_.one_in(3)) swap.use.emplace_back(ingredient(use), dice_.roll(400'000));
            }
        }
        return list;
    }

    const At& at_;
    Dice dice_;
};

}  // namespace

std::uint64_t Dice::next() {
    state_ += 0x9E3779B97F4A7C15ULL;  // the splitmix64 generator
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31U);
}

basics::Result<Change> random_command(const At& at, std::uint64_t seed) {
    return Commands(at, seed).any();
}

}  // namespace samebase::tests
