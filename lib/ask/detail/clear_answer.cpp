#include "ask/detail/clear_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "basics/exact.hpp"

namespace samebase::ask::detail {

namespace {

using basics::Money;
using catalogue::Keep;
using catalogue::Keeping;

constexpr std::int64_t thousandths = 1000;

Money rounded(std::int64_t fine) {
    return {std::llround(static_cast<double>(fine) / static_cast<double>(thousandths))};
}

class Teller {
  public:
    Teller(const ClearGame& game, const ClearPlan& plan, basics::Day today)
        : game_(game), kitchen_(game.bare), value_(game), today_(today) {
        value_.set(plan);
    }

    ClearAnswer tell() {
        answer_.span = game_.span;
        answer_.horizon = game_.horizon;
        answer_.at_stake = std::max(Money{1}, rounded(game_.at_stake));
        meals();
        for (std::size_t t = 0; t < game_.things.size(); ++t) thing(static_cast<int>(t));
        for (const ClearMeal& meal : answer_.meals) own_lines(meal);
        for (const ClearEmpty& empty : answer_.empty) nothing(empty);
        std::stable_sort(answer_.because.begin(), answer_.because.end(),
                         [](const auto& a, const auto& b) { return a.line < b.line; });
        for (const ClearBecause& because : answer_.because) answer_.value += because.money;
        std::stable_sort(answer_.bin.begin(), answer_.bin.end(), [](const ClearBin& a, const ClearBin& b) {
            return a.by != b.by ? a.by < b.by : a.price > b.price;
        });
        return std::move(answer_);
    }

  private:
    [[nodiscard]] const catalogue::Ingredient& ingredient(const ClearThing& of) const {
        return kitchen_.catalogue()[of.ingredient];
    }
    [[nodiscard]] measure::Amount amount(const ClearThing& of, std::int64_t value) const {
        return {ingredient(of).dimension, value};
    }
    [[nodiscard]] static Money price(const ClearThing& of, std::int64_t part) {
        return of.danger > 0 ? basics::share_of(of.danger_price, part, of.danger) : Money{};
    }

    void meals() {
        std::vector<std::vector<std::int64_t>> saved;
        for (std::size_t t = 0; t < game_.things.size(); ++t) {
            saved.push_back(game_.things[t].danger > 0 ? value_.saved_by_meal(static_cast<int>(t))
                                                       : std::vector<std::int64_t>{});
        }
        for (std::size_t m = 0; m < game_.meals.size(); ++m) {
            const OpenMeal& open = game_.meals[m];
            const int chosen = value_.plan()[m];
            if (chosen < 0) {
                answer_.empty.push_back({open.day, open.meal, why_empty(open)});
                continue;
            }
            const ClearOption& option = game_.options[static_cast<std::size_t>(chosen)];
            const ClearDetail& detail = game_.details[static_cast<std::size_t>(option.detail)];
            ClearMeal meal{.day = open.day,
                           .meal = open.meal,
                           .dish = option.dish,
                           .ready_meal = detail.ready_meal,
                           .instead_of = {},
                           .stand_ins = detail.stand_ins,
                           .scaled = detail.scaled,
                           .saves = {},
                           .because = {},
                           .cautions = detail.cautions,
                           .cooking = detail.cooking};
            for (std::size_t t = 0; t < saved.size(); ++t) {
                if (saved[t].empty() || saved[t][m] == 0) continue;
                const ClearThing& of = game_.things[t];
                meal.saves.emplace_back(of.ingredient, amount(of, saved[t][m]));
                meal.because.push_back(
                    {ClearLine::waste_avoided, price(of, saved[t][m]), of.ingredient, amount(of, saved[t][m]), ""});
            }
            std::stable_sort(meal.because.begin(), meal.because.end(),
                             [](const auto& a, const auto& b) { return a.money > b.money; });
            meal.because.insert(meal.because.end(), detail.because.begin(), detail.because.end());
            cautions(meal);
            answer_.meals.push_back(std::move(meal));
        }
    }

    [[nodiscard]] std::string why_empty(const OpenMeal& open) const {
        if (!open.options.empty()) return "no dish that may be had then is worth what it would cost";
        const auto kind = kitchen::standing_kind(kitchen_.household, open.day);
        if (open.meal == kitchen::Meal::dinner && kind)
            return fmt::format("no dish of the night's kind, {}, may be had then", *kind);
        return "no dish in the cookbook may be had then";
    }

    void cautions(ClearMeal& meal) const {
        const auto usual = safety_cautions(kitchen_, meal.cooking, frozen(meal.cooking), today_);
        meal.cautions.insert(meal.cautions.end(), usual.begin(), usual.end());
    }

    /// Frozen stock that the meal may need, for the cautions on thawing.
    [[nodiscard]] std::vector<LotUse> frozen(const flow::Cooking& cooking) const {
        std::vector<LotUse> uses;
        for (const flow::Needed& need : cooking.needs) {
            std::int64_t thawed = 0;
            const stock::Lot* ice = nullptr;
            for (const stock::Lot& lot : kitchen_.lots) {
                if (lot.ingredient != need.ingredient || lot.rough) continue;
                if (lot.state != stock::State::frozen) {
                    thawed += lot.amount.value();
                } else if (ice == nullptr) {
                    ice = &lot;
                }
            }
            if (ice == nullptr || thawed >= need.amount) continue;
            uses.push_back({need.ingredient,
                            ice->number,
                            {kitchen_.catalogue()[need.ingredient].dimension, need.amount},
                            ice->state,
                            {},
                            {},
                            false});
        }
        return uses;
    }

    void thing(int number) {
        const ClearThing& of = game_.things[static_cast<std::size_t>(number)];
        const ClearTally tally = value_.tally(number);
        answer_.danger += of.danger_price;
        if (tally.saved > 0) {
            const std::int64_t fine = std::llround(of.worth * static_cast<double>(tally.saved));
            const Money plain = price(of, tally.saved);
            answer_.saved += plain;
            answer_.because.push_back({ClearLine::waste_avoided, plain, of.ingredient, amount(of, tally.saved), ""});
            if (of.crisper)
                answer_.because.push_back({ClearLine::crisper_first, rounded(fine) - plain, of.ingredient, {}, ""});
        }
        if (tally.packs > 0) {
            const Money paid = rounded(tally.packs * of.pack_price);
            answer_.because.push_back({ClearLine::to_buy, -paid, of.ingredient, amount(of, tally.packs * of.pack), ""});
            answer_.to_buy.push_back(
                {of.ingredient, amount(of, tally.packs * of.pack), static_cast<int>(tally.packs), paid});
        }
        if (of.danger > tally.saved) bin(number, of, tally);
    }

    void bin(int number, const ClearThing& of, const ClearTally& tally) {
        const auto eaten = value_.eaten_by_meal(number);
        ClearBin bin;
        bin.ingredient = of.ingredient;
        bin.amount = amount(of, of.danger - tally.saved);
        bin.price = of.danger_price - price(of, tally.saved);
        bin.part_of = tally.saved > 0;
        bool first = true;
        bool frozen_before = false;
        for (std::size_t b = 0; b < of.batches.size(); ++b) {
            const ClearBatch& batch = of.batches[b];
            std::int64_t left = batch.amount;
            for (const auto& meal : eaten) left -= meal[b];
            if (!batch.danger || left == 0) continue;
            const stock::Lot* lot = kitchen_.lot(batch.lot);
            frozen_before = frozen_before || (lot != nullptr && lot->state != stock::State::fresh);
            if (!first) continue;
            first = false;
            bin.by = today_ + basics::days{flow::day_of(batch.last)};
            bin.use_by = lot == nullptr || (lot->use_by && *lot->use_by <= bin.by);
        }
        bin.reason = why_tossed(number, of, tally, bin);
        last_way(of, frozen_before, bin);
        answer_.bin.push_back(std::move(bin));
    }

    /// What would have to be different: found by trying every dish that takes it.
    [[nodiscard]] std::string why_tossed(int number, const ClearThing& of, const ClearTally& tally, ClearBin& bin) {
        std::int64_t best = std::numeric_limits<std::int64_t>::min();
        int chosen = -1;
        bool any = false;
        for (std::size_t o = 0; o < game_.options.size(); ++o) {
            const ClearOption& option = game_.options[o];
            const auto need = std::find_if(option.needs.begin(), option.needs.end(),
                                           [&](const ClearNeed& n) { return n.thing == number; });
            if (need == option.needs.end() || danger_at(of, option.meal) == 0) continue;
            any = true;
            if (value_.clashes(static_cast<int>(o)) ||
                value_.plan()[static_cast<std::size_t>(option.meal)] == static_cast<int>(o))
                continue;
            const int before = value_.plan()[static_cast<std::size_t>(option.meal)];
            const std::int64_t now = value_.value();
            value_.set(option.meal, static_cast<int>(o));
            const bool helps = value_.sound() && value_.tally(number).saved > tally.saved;
            const std::int64_t less = value_.value() - now;
            value_.set(option.meal, before);
            if (!helps || less <= best) continue;
            best = less;
            chosen = static_cast<int>(o);
        }
        if (!any) return "no dish that may be had until then uses it";
        if (chosen < 0)
            return tally.saved > 0 ? "no other meal could take the rest"
                                   : "no meal could take it beside what is chosen";
        const ClearOption& option = game_.options[static_cast<std::size_t>(chosen)];
        const OpenMeal& meal = game_.meals[static_cast<std::size_t>(option.meal)];
        bin.costs_more = rounded(-best);
        return fmt::format("{} for {} on {} would take it", kitchen_.cookbook()[option.dish].name, name(meal.meal),
                           basics::short_day(meal.day));
    }

    void last_way(const ClearThing& of, bool frozen_before, ClearBin& bin) const {
        const auto& thing = ingredient(of);
        const Keeping& freezer = thing.keeps[static_cast<std::size_t>(Keep::freezer)];
        if (freezer.said == Keeping::Said::time && !frozen_before) {
            bin.way = LastWay::freeze;
            bin.freezer_days = freezer.time.days;
            return;
        }
        // Common practice: firm vegetables are pickled, leaves and starchy ones are not.
        const auto in = [&](const char* id) {
            const auto family = kitchen_.catalogue().family(id);
            return family && kitchen_.catalogue().belongs(of.ingredient, *family);
        };
        if (thing.kind != catalogue::Kind::raw || !in("vegetables")) return;
        constexpr std::array<const char*, 6> never{"salad-leaves", "leafy-greens", "sprouts",
                                                   "potatoes",     "mushrooms",    "frozen-vegetables"};
        if (std::none_of(never.begin(), never.end(), in)) bin.way = LastWay::pickle;
    }

    void own_lines(const ClearMeal& meal) {
        for (const ClearBecause& because : meal.because) {
            if (because.line == ClearLine::waste_avoided) continue;
            ClearBecause line = because;
            line.note = kitchen_.cookbook()[meal.dish].name + (because.note.empty() ? "" : ": " + because.note);
            answer_.because.push_back(std::move(line));
        }
    }

    void nothing(const ClearEmpty& empty) {
        for (const OpenMeal& meal : game_.meals) {
            if (meal.day != empty.day || meal.meal != empty.meal) continue;
            answer_.because.push_back({ClearLine::empty, rounded(-meal.empty), {}, {}, basics::short_day(meal.day)});
        }
    }

    const ClearGame& game_;
    const kitchen::Kitchen& kitchen_;
    ClearValue value_;
    basics::Day today_;
    ClearAnswer answer_;
};

}  // namespace

ClearAnswer clear_told(const ClearGame& game, const ClearPlan& plan, basics::Day today) {
    return Teller(game, plan, today).tell();
}

}  // namespace samebase::ask::detail
