#include "ask/detail/lunches_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "ask/detail/at_table.hpp"
#include "ask/detail/candidate.hpp"
#include "basics/exact.hpp"
#include "basics/ranges.hpp"

namespace samebase::ask::detail {

namespace {

std::string counted(std::int64_t lunches) {
    return fmt::format("{} {}", lunches, lunches == 1 ? "lunch" : "lunches");
}

using basics::Money;
using cookbook::DishId;
using kitchen::Meal;

constexpr std::int64_t thousandths = 1000;
constexpr std::int64_t one_serve = 1000;

Money rounded(std::int64_t fine) {
    return {std::llround(static_cast<double>(fine) / static_cast<double>(thousandths))};
}

const LunchSource* source_of(const LunchGame& game, int option) {
    const int source = game.options[static_cast<std::size_t>(option)].source;
    return source < 0 ? nullptr : &game.sources[static_cast<std::size_t>(source)];
}

std::vector<flow::Cooking> cookings_of(const LunchGame& game, const LunchPlan& plan) {
    std::vector<flow::Cooking> cookings;
    for (const kitchen::Planned& row : plan_with(game, plan)) cookings.push_back(flow::cook(*game.kitchen, row));
    return cookings;
}

class Teller {
  public:
    Teller(const LunchGame& game, const LunchPlan& plan)
        : game_(game), kitchen_(*game.kitchen), plan_(plan), value_(game) {
        value_.set(plan);
    }

    LunchesAnswer tell() {
        answer_.span = game_.span;
        answer_.horizon = game_.horizon;
        answer_.standing = game_.standing;
        for (std::size_t t = 0; t < game_.things.size(); ++t) eaten_.push_back(value_.eaten(static_cast<int>(t)));
        for (std::size_t s = 0; s < plan_.size(); ++s) lunch(static_cast<int>(s));
        cooked();
        larger();
        bought();
        for (std::size_t t = 0; t < game_.things.size(); ++t) thing(static_cast<int>(t));
        packs();
        effort();
        own_lines();
        sums();
        rows();
        by_the_balance();
        notes();
        return std::move(answer_);
    }

  private:
    [[nodiscard]] const catalogue::Ingredient& ingredient(const LunchThing& of) const {
        return kitchen_.catalogue()[of.ingredient];
    }
    [[nodiscard]] measure::Amount amount(const LunchThing& of, std::int64_t value) const {
        return {ingredient(of).dimension, value};
    }
    [[nodiscard]] const LunchThing& thing_of(catalogue::IngredientId id) const {
        return game_.things[static_cast<std::size_t>(game_.position[id.index()])];
    }
    [[nodiscard]] static Money saved_price(const LunchThing& of, std::int64_t part) {
        return of.danger > 0 ? basics::share_of(of.danger_price, part, of.danger) : Money{};
    }
    [[nodiscard]] static Money kept_price(const LunchThing& of, std::int64_t part) {
        return of.keeps > 0 ? basics::share_of(of.keeps_price, part, of.keeps) : Money{};
    }

    void lunch(int slot) {
        const LunchSlot& open = game_.slots[static_cast<std::size_t>(slot)];
        Lunch lunch;
        lunch.day = open.day;
        lunch.person = open.person;
        const int option = plan_[static_cast<std::size_t>(slot)];
        if (const LunchSource* source = source_of(game_, option)) {
            lunch.kind = source->kind;
            lunch.dish = source->dish;
            where_from(*source, lunch);
            lines(slot, option, lunch);
        } else {
            lunch.reason = why_bought(open);
        }
        answer_.lunches.push_back(std::move(lunch));
    }

    [[nodiscard]] std::string why_bought(const LunchSlot& open) const {
        const std::string& name = kitchen_.household.people[open.person].name;
        if (open.options.size() > 1) return "what else could be had is not enough for it, or comes to more";
        if (open.refused > 0) return fmt::format("{} may have, or likes, nothing that could be had", name);
        return "nothing else could be had";
    }

    void where_from(const LunchSource& source, Lunch& lunch) {
        if (source.kind == LunchKind::larger) {
            lunch.made = source.day;
            lunch.use_by = source.day + basics::days{game_.keeps_days(*source.of)};
        } else if (source.kind == LunchKind::frozen_pack) {
            const LunchPack& pack = game_.packs[static_cast<std::size_t>(source.pack)];
            lunch.from_lot = pack.lot;
            lunch.pack = pack.size;
            lunch.use_by = lunch.day;
        } else if (source.kind == LunchKind::leftover) {
            serve_of(source, lunch);
        }
    }

    /// The next serve of what the day's lunches eat of a leftover, what ends first first.
    void serve_of(const LunchSource& source, Lunch& lunch) {
        const LunchThing& of = thing_of(*source.of);
        auto& here =
            eaten_[static_cast<std::size_t>(game_.position[source.of->index()])][static_cast<std::size_t>(source.time)];
        std::int64_t open = one_serve;
        const LunchBatch* most = nullptr;
        std::int64_t of_most = 0;
        std::int64_t saved = 0;
        for (std::size_t b = 0; b < of.batches.size() && open > 0; ++b) {
            const auto bite = std::min(open, here[b]);
            here[b] -= bite;
            open -= bite;
            if (of.batches[b].danger) saved += bite;
            if (bite <= of_most) continue;
            of_most = bite;
            most = &of.batches[b];
        }
        if (most != nullptr) {
            lunch.from_lot = most->lot;
            lunch.made = most->made;
            if (most->last != flow::never) lunch.use_by = game_.today + basics::days{flow::day_of(most->last)};
        }
        if (saved > 0)
            lunch.because.push_back(
                {LunchLine::waste_avoided, saved_price(of, saved), of.ingredient, amount(of, saved), ""});
        const std::int64_t kept = one_serve - saved;
        const Money price = kept_price(of, kept);
        if (price.minor != 0) lunch.because.push_back({LunchLine::kept, -price, of.ingredient, amount(of, kept), ""});
    }

    /// What the lunch is worth by itself.
    void lines(int slot, int option, Lunch& lunch) {
        const LunchOption& chosen = game_.options[static_cast<std::size_t>(option)];
        const std::int64_t little = lunch.kind == LunchKind::larger ? minutes_a_larger_serve * game_.minute : 0;
        std::int64_t lately = chosen.lately;
        for (std::size_t other = 0; other < plan_.size(); ++other) {
            if (static_cast<int>(other) < slot && game_.slots[other].person == lunch.person)
                lately += game_.again_cost(chosen, game_.options[static_cast<std::size_t>(plan_[other])]);
        }
        const auto line = [&](LunchLine which, std::int64_t fine, std::string note) {
            fine_[which] += fine;
            if (rounded(fine).minor != 0) lunch.because.push_back({which, rounded(fine), {}, {}, std::move(note)});
        };
        line(LunchLine::effort, -little, "a serve more at dinner");
        line(LunchLine::had_lately, -lately, "");
        line(LunchLine::liking, chosen.fixed + little + chosen.lately, "");
    }

    void cooked() {
        for (std::size_t s = 0; s < game_.sources.size(); ++s) {
            const LunchSource& source = game_.sources[s];
            const int serves = value_.serves(static_cast<int>(s));
            if (source.kind != LunchKind::cooked || serves == 0) continue;
            LunchCooked dish;
            dish.day = source.day;
            dish.dish = source.dish;
            for (std::size_t i = 0; i < plan_.size(); ++i) {
                if (source_of(game_, plan_[i]) == &source) dish.eaters.push_back(game_.slots[i].person);
            }
            const kitchen::Planned row{.day = source.day,
                                       .meal = Meal::lunch,
                                       .dish = source.dish,
                                       .ready_meal = false,
                                       .serves = serves,
                                       .left = 0,
                                       .swaps = source.swaps};
            dish.swaps = source.swaps;
            dish.cooking = flow::cook(kitchen_, row);
            saves(source, serves, dish);
            dish.cautions = at_table(kitchen_, row, dish.eaters).cautions;
            answer_.cooked.push_back(std::move(dish));
        }
        std::stable_sort(answer_.cooked.begin(), answer_.cooked.end(), [](const LunchCooked& a, const LunchCooked& b) {
            return std::tie(a.day, a.dish) < std::tie(b.day, b.dish);
        });
    }

    void saves(const LunchSource& source, int serves, LunchCooked& dish) {
        for (const LunchNeed& need : source.needs[static_cast<std::size_t>(serves)]) {
            const LunchThing& of = game_.things[static_cast<std::size_t>(need.thing)];
            auto& here = eaten_[static_cast<std::size_t>(need.thing)][static_cast<std::size_t>(source.time)];
            std::int64_t open = need.amount;
            std::int64_t saved = 0;
            for (std::size_t b = 0; b < of.batches.size(); ++b) {
                const auto bite = std::min(open, here[b]);
                here[b] -= bite;
                open -= bite;
                if (of.batches[b].danger) saved += bite;
            }
            if (saved > 0) dish.saves.emplace_back(of.ingredient, amount(of, saved));
        }
    }

    void larger() {
        for (std::size_t s = 0; s < game_.sources.size(); ++s) {
            const LunchSource& source = game_.sources[s];
            const int serves = value_.serves(static_cast<int>(s));
            if (source.kind == LunchKind::larger && serves > 0)
                answer_.larger.push_back({source.day, source.dish, serves});
        }
        std::stable_sort(answer_.larger.begin(), answer_.larger.end(), [](const LunchLarger& a, const LunchLarger& b) {
            return std::tie(a.day, a.dish) < std::tie(b.day, b.dish);
        });
    }

    void bought() {
        const auto open = static_cast<std::int64_t>(game_.slots.size());
        if (open == 0) return;
        answer_.all_bought = rounded(open * game_.bought);
        answer_.because.push_back({LunchLine::all_bought, answer_.all_bought, {}, {}, counted(open)});
        const auto count = std::count_if(answer_.lunches.begin(), answer_.lunches.end(),
                                         [](const Lunch& lunch) { return lunch.kind == LunchKind::bought; });
        if (count > 0)
            answer_.because.push_back({LunchLine::bought, -rounded(count * game_.bought), {}, {}, counted(count)});
    }

    void thing(int number) {
        const LunchThing& of = game_.things[static_cast<std::size_t>(number)];
        const LunchTally tally = value_.tally(number);
        if (tally.saved > 0)
            answer_.because.push_back(
                {LunchLine::waste_avoided, saved_price(of, tally.saved), of.ingredient, amount(of, tally.saved), ""});
        if (const Money price = kept_price(of, tally.kept); price.minor != 0)
            answer_.because.push_back({LunchLine::kept, -price, of.ingredient, amount(of, tally.kept), ""});
        if (tally.packs == 0) return;
        const Money paid = rounded(tally.packs * of.pack_price);
        answer_.because.push_back({LunchLine::to_buy, -paid, of.ingredient, amount(of, tally.packs * of.pack), ""});
        answer_.to_buy.push_back(
            {of.ingredient, amount(of, tally.packs * of.pack), static_cast<int>(tally.packs), paid});
    }

    void packs() {
        for (std::size_t s = 0; s < game_.sources.size(); ++s) {
            const LunchSource& source = game_.sources[s];
            const int thawed = source.pack >= 0 ? value_.thawed(static_cast<int>(s)) : 0;
            if (thawed == 0) continue;
            const LunchPack& pack = game_.packs[static_cast<std::size_t>(source.pack)];
            answer_.because.push_back(
                {LunchLine::kept, -rounded(thawed * pack.price), pack.ingredient,
                 measure::Amount{kitchen_.catalogue()[pack.ingredient].dimension, thawed * pack.size},
                 "from the freezer, as a whole"});
        }
    }

    void effort() {
        for (const basics::Day day : basics::days_of(game_.span)) {
            const Money money = rounded(value_.effort(day));
            if (money.minor != 0)
                answer_.because.push_back(
                    {LunchLine::effort,
                     -money,
                     {},
                     {},
                     fmt::format("{}: more than {} minutes", basics::short_day(day), lunch_minutes)});
        }
    }

    void own_lines() {
        const auto line = [&](LunchLine which, std::string note) {
            const Money money = rounded(fine_[which]);
            if (money.minor != 0) answer_.because.push_back({which, money, {}, {}, std::move(note)});
        };
        line(LunchLine::effort, fmt::format("larger dinners, {} minutes a serve", minutes_a_larger_serve));
        line(LunchLine::had_lately, "the same again, and what was had or is planned");
        line(LunchLine::liking, "marks of those who eat it");
        std::stable_sort(answer_.because.begin(), answer_.because.end(),
                         [](const auto& a, const auto& b) { return a.line < b.line; });
    }

    void sums() {
        for (const LunchBecause& because : answer_.because) {
            answer_.value += because.money;
            if (because.line == LunchLine::waste_avoided) answer_.saved += because.money;
            if (because.line == LunchLine::kept || because.line == LunchLine::to_buy ||
                because.line == LunchLine::bought)
                answer_.spent -= because.money;
        }
        answer_.at_stake = std::max(Money{1}, answer_.all_bought);
    }

    void rows() {
        for (const kitchen::Planned& row : plan_with(game_, plan_)) {
            if (game_.span.contains(row.day)) answer_.rows.push_back(row);
        }
    }

    /// What the full balance says beside the sum: what is taken out for them, and what else they send to the bin.
    void by_the_balance() {
        const flow::Balance after = game_.balancer->rebalance(game_.before, cookings_of(game_, plan_));
        answer_.extra_bin = std::max(Money{}, after.totals.tossed - game_.before.totals.tossed + answer_.saved);
        const auto was = flow::thaw_moves(kitchen_, game_.before);
        for (const flow::ThawMove& move : flow::thaw_moves(kitchen_, after)) {
            const bool before = std::any_of(was.begin(), was.end(), [&](const flow::ThawMove& other) {
                return std::tie(other.lot, other.day, other.packs, other.amount, other.for_day) ==
                       std::tie(move.lot, move.day, move.packs, move.amount, move.for_day);
            });
            if (!before) answer_.take_out.push_back(move);
        }
        cautions();
    }

    void caution(const std::string& words) {
        auto& all = answer_.cautions;
        if (std::find(all.begin(), all.end(), words) == all.end()) all.push_back(words);
    }

    void cautions() {
        for (const Lunch& lunch : answer_.lunches) {
            if (lunch.kind == LunchKind::bought || lunch.kind == LunchKind::cooked) continue;
            const auto of = *kitchen_.cookbook()[*lunch.dish].leaves;
            const flow::Cooking warmed = flow::cook(kitchen_, {.day = lunch.day,
                                                               .meal = Meal::lunch,
                                                               .dish = *lunch.dish,
                                                               .ready_meal = true,
                                                               .serves = 1,
                                                               .left = 0});
            std::vector<LotUse> uses;
            const stock::Lot* lot = kitchen_.lot(lunch.from_lot);
            if (lot != nullptr) {
                uses.push_back({of,
                                lot->number,
                                {kitchen_.catalogue()[of].dimension, one_serve},
                                lot->state,
                                lot->use_by,
                                lot->best_by,
                                false});
            }
            for (const std::string& words : safety_cautions(kitchen_, warmed, uses, game_.today)) caution(words);
            const auto avoids = kitchen_.household.people[lunch.person].avoids;
            if (!avoids.empty()) caution(fmt::format("No listed {}; read the labels.", catalogue::in_words(avoids)));
        }
        for (LunchCooked& dish : answer_.cooked) {
            for (const std::string& words : dish.cautions) caution(words);
            for (const std::string& words : safety_cautions(kitchen_, dish.cooking, {}, game_.today)) {
                dish.cautions.push_back(words);
                caution(words);
            }
        }
    }

    void notes() {
        const std::string last = basics::short_day(game_.span.last);
        if (kitchen_.cookbook().dishes().empty())
            answer_.notes.emplace_back("The cookbook is empty: lunches can only be bought.");
        if (!game_.slots.empty()) return;
        answer_.notes.push_back(game_.standing.empty()
                                    ? fmt::format("Nobody is home for lunch until {}.", last)
                                    : fmt::format("Everyone's lunch is planned until {}: nothing is open.", last));
    }

    const LunchGame& game_;
    const kitchen::Kitchen& kitchen_;
    const LunchPlan& plan_;
    LunchValue value_;
    std::vector<std::vector<std::vector<std::int64_t>>> eaten_;  ///< by thing, time and batch: what is not yet told
    std::map<LunchLine, std::int64_t> fine_;                     ///< what the lunches are worth by themselves
    LunchesAnswer answer_;
};

}  // namespace

kitchen::Plan plan_with(const LunchGame& game, const LunchPlan& plan) {
    struct Row {
        int serves = 0;
        std::vector<kitchen::LineSwap> swaps;
    };
    std::map<std::tuple<basics::Day, DishId, bool>, Row> chosen;
    std::map<std::size_t, int> more;
    for (const int option : plan) {
        const LunchSource* source = source_of(game, option);
        if (source == nullptr) continue;
        const basics::Day day =
            game.slots[static_cast<std::size_t>(game.options[static_cast<std::size_t>(option)].slot)].day;
        Row& row = chosen[{day, source->dish, source->kind != LunchKind::cooked}];
        ++row.serves;
        row.swaps = source->swaps;
        if (source->kind == LunchKind::larger) ++more[source->row];
    }
    kitchen::Plan rows;
    for (std::size_t r = 0; r < game.kitchen->plan.size(); ++r) {
        kitchen::Planned row = game.kitchen->plan[r];
        if (row.day < game.today || row.day > game.horizon) continue;
        if (const auto found = more.find(r); found != more.end()) row.left += found->second;
        rows.push_back(row);
    }
    for (const auto& [key, row] : chosen) {
        const auto& [day, dish, ready] = key;
        rows.push_back({.day = day,
                        .meal = Meal::lunch,
                        .dish = dish,
                        .ready_meal = ready,
                        .serves = row.serves,
                        .left = 0,
                        .swaps = row.swaps});
    }
    std::sort(rows.begin(), rows.end(), [](const kitchen::Planned& a, const kitchen::Planned& b) {
        return std::tie(a.day, a.meal, a.dish) < std::tie(b.day, b.meal, b.dish);
    });
    return rows;
}

std::vector<LunchCut> lacking_in_balance(const LunchGame& game, const LunchPlan& plan) {
    const flow::Balance after = game.balancer->rebalance(game.before, cookings_of(game, plan));
    LunchValue value(game);
    value.set(plan);
    std::vector<LunchCut> cuts;
    for (const auto& part : after.parts) {
        const flow::Part* before = game.before.part(part->component.ingredient);
        if (before == part.get()) continue;
        const auto now = part->outcome.value(part->component).unmet;
        const auto was = before == nullptr ? std::vector<std::int64_t>(now.size(), 0)
                                           : before->outcome.value(before->component).unmet;
        if (std::equal(now.begin(), now.end(), was.begin(), [](auto a, auto b) { return a <= b; })) continue;
        const int thing = game.position[part->component.ingredient.index()];
        LunchCut cut;
        for (std::size_t s = 0; s < game.sources.size(); ++s) {
            const LunchSource& source = game.sources[s];
            const int serves = value.serves(static_cast<int>(s));
            if (serves == 0) continue;
            const auto& needs = source.needs[static_cast<std::size_t>(serves)];
            const bool eats =
                std::any_of(needs.begin(), needs.end(), [&](const LunchNeed& n) { return n.thing == thing; });
            if (eats || source.of == part->component.ingredient) cut.emplace_back(static_cast<int>(s), serves);
        }
        if (!cut.empty()) cuts.push_back(std::move(cut));
    }
    return cuts;
}

LunchesAnswer lunches_told(const LunchGame& game, const LunchPlan& plan) {
    return Teller(game, plan).tell();
}

}  // namespace samebase::ask::detail
