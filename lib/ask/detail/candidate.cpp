#include "ask/detail/candidate.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "ask/detail/veto.hpp"
#include "basics/exact.hpp"
#include "kitchen/night.hpp"
#include "kitchen/soaking.hpp"

namespace samebase::ask::detail {

namespace {

using catalogue::AllergenSet;
using catalogue::IngredientId;
using cookbook::DishIngredient;

class Builder {
  public:
    Builder(const Setting& setting, cookbook::DishId id)
        : setting_(setting), kitchen_(*setting.kitchen), id_(id), dish_(kitchen_.cookbook()[id]) {}

    Candidate build() {
        planned_ = kitchen::Planned{.day = setting_.question.day,
                                    .meal = setting_.meal,
                                    .dish = id_,
                                    .ready_meal = false,
                                    .serves = setting_.question.serves,
                                    .left = setting_.question.left};
        cooking_ = flow::cook(kitchen_, planned_, {}, &setting_.holds);
        result_.swaps = setting_.swaps;
        serve_all_alike();
        decide_avoided();
        if (!use_the_named() || !free_of_avoided()) return std::move(result_);
        fit_amounts();
        fill_in_missing();
        rule_out_what_soaks();
        if (made_of_leftovers() && !has_leftovers())
            result_.ruled_out.emplace_back("it is made of leftovers, and there are none for it");
        result_.cooking = flow::cook(kitchen_, planned_, result_.swaps, &setting_.holds);
        if (result_.ruled_out.empty()) check_serves();
        if (result_.ruled_out.empty()) check_vetoes();
        return std::move(result_);
    }

  private:
    [[nodiscard]] const std::string& name_of(IngredientId id) const { return kitchen_.catalogue()[id].name; }

    /// What soaks overnight is no answer for the same day.
    void rule_out_what_soaks() {
        if (setting_.question.day > setting_.today) return;
        for (const IngredientId soaked : kitchen::soaked_overnight(kitchen_, id_, result_.swaps))
            result_.ruled_out.push_back(fmt::format("{} had to soak the night before", name_of(soaked)));
    }

    /// A serve apart that everyone at the table needs is how the dish is cooked, for all.
    void serve_all_alike() {
        if (setting_.eaters.empty()) return;
        for (const cookbook::SeparateServe& serve : dish_.separate) {
            const bool needed = std::all_of(setting_.eaters.begin(), setting_.eaters.end(), [&](std::size_t eater) {
                const auto apart = serve_of(kitchen_.household.people[eater].avoids).apart;
                return std::find(apart.begin(), apart.end(), &serve) != apart.end();
            });
            const bool guests_may = std::all_of(serve.swaps.begin(), serve.swaps.end(), [&](const auto& swap) {
                return setting_.holds[swap.second.index()].shared_with(setting_.guests_avoid).empty();
            });
            if (!needed || !guests_may) continue;
            for (const DishIngredient& line : dish_.ingredients) {
                const auto swap = std::find_if(serve.swaps.begin(), serve.swaps.end(),
                                               [&](const auto& s) { return s.first == line.ingredient; });
                if (swap == serve.swaps.end() || line.optional || swapped(line.ingredient)) continue;
                const auto cost = kitchen_.graph().cost({line.ingredient, line.role}, {swap->second, line.role});
                put_in_place(line, {.use = {{swap->second, graph::one}}, .cost = cost.value_or(0), .note = {}});
            }
        }
    }

    /// What every stand-in must be free of: what someone avoids who gets no separate serve.
    void decide_avoided() {
        strict_ = setting_.guests_avoid;
        AllergenSet holds;
        for (const DishIngredient& line : dish_.ingredients) {
            if (!line.optional) holds.add(setting_.holds[line.ingredient.index()]);
        }
        for (const std::size_t eater : setting_.eaters) {
            const kitchen::Person& person = kitchen_.household.people[eater];
            for (const catalogue::Allergen allergen : person.avoids.members()) {
                if (!holds.has(allergen) || separate_for(allergen) == nullptr) strict_.add(allergen);
            }
        }
    }

    [[nodiscard]] const cookbook::SeparateServe* separate_for(catalogue::Allergen allergen) const {
        const auto found = std::find_if(dish_.separate.begin(), dish_.separate.end(),
                                        [&](const auto& serve) { return serve.avoids == allergen; });
        return found == dish_.separate.end() ? nullptr : &*found;
    }

    [[nodiscard]] bool named(IngredientId id) const { return is_any(kitchen_.catalogue(), id, setting_.using_); }

    /// The dish must be of the kind and use what was named: it has it, or a line of it for which that stands in well.
    bool use_the_named() {
        const auto& kind = setting_.kind;
        if (!kind.empty() && std::find(dish_.kinds.begin(), dish_.kinds.end(), kind) == dish_.kinds.end()) {
            result_.ruled_out.push_back(fmt::format("it is not of the kind {}", kind));
            return false;
        }
        const auto uses_it = [&](const DishIngredient& line) {
            return !line.optional && named(line.ingredient) && !served_as_something_else(line.ingredient);
        };
        if (setting_.using_.empty() || std::any_of(dish_.ingredients.begin(), dish_.ingredients.end(), uses_it))
            return true;
        const auto put_in = [&](const catalogue::Of& of) { return put_in_the_named(std::get_if<IngredientId>(&of)); };
        if (std::any_of(setting_.using_.begin(), setting_.using_.end(), put_in)) return true;
        std::vector<std::string> names;
        for (const auto& of : setting_.using_) names.push_back(kitchen_.catalogue().name(of));
        const auto what = fmt::to_string(fmt::join(names, " or "));
        result_.ruled_out.push_back(
            fmt::format("it uses no {}, and nothing in it that {} could replace well", what, what));
        return false;
    }

    /// In place of the line that it stands in for best; false where there is none.
    bool put_in_the_named(const IngredientId* asked) {
        std::optional<graph::StandIn> best;
        const DishIngredient* replaced = nullptr;
        const double least_fit = kitchen_.graph().parameters().least_fit_of_named;
        for (const DishIngredient& line : dish_.ingredients) {
            if (asked == nullptr || line.optional || line.role == catalogue::Role::seasoning) continue;
            // From the side of what is named: one row of costs a role serves every dish.
            const auto costs = kitchen_.graph().costs_to({*asked, line.role});
            const auto cost = costs[graph::BaseGraph::position({line.ingredient, line.role})];
            if (cost == graph::BaseGraph::no_path || cost > graph::cost_of(least_fit)) continue;
            for (auto& stand_in : stand_ins_for(line, least_fit)) {
                if (stand_in.use.size() != 1 || stand_in.use.front().first != *asked) continue;
                if (!best || stand_in.cost < best->cost) {
                    best = std::move(stand_in);
                    replaced = &line;
                }
                break;
            }
        }
        if (!best) return false;
        put_in_place(*replaced, *best);
        return true;
    }

    /// What stand-ins for a line must be free of: what is avoided without a separate serve, and what a separate serve
    /// would not take away again because it leaves this line as it is.
    [[nodiscard]] AllergenSet avoided_in(const DishIngredient& line) const {
        AllergenSet avoid = strict_;
        for (const cookbook::SeparateServe& serve : dish_.separate) {
            const bool covered = std::any_of(serve.swaps.begin(), serve.swaps.end(),
                                             [&](const auto& swap) { return swap.first == line.ingredient; });
            if (!covered && someone_avoids(serve.avoids)) avoid.add(serve.avoids);
        }
        return avoid;
    }

    [[nodiscard]] bool someone_avoids(catalogue::Allergen allergen) const {
        return std::any_of(setting_.eaters.begin(), setting_.eaters.end(),
                           [&](std::size_t eater) { return kitchen_.household.people[eater].avoids.has(allergen); });
    }

    /// Stand-ins for a line that the day has the time for, free of what must be avoided there, in this kitchen's stock
    /// too. What was asked about is replaced by nothing but another of its family, where a family was asked about.
    [[nodiscard]] std::vector<graph::StandIn> stand_ins_for(const DishIngredient& line, double least_fit) const {
        const AllergenSet avoid = avoided_in(line);
        const bool asked_about = named(line.ingredient);
        auto found = kitchen_.graph().stand_ins({line.ingredient, line.role}, least_fit, avoid);
        std::erase_if(found, [&](const graph::StandIn& stand_in) {
            if (!time_for(stand_in, dish_, kitchen_.household, setting_.question.day, setting_.meal)) return true;
            return std::any_of(stand_in.use.begin(), stand_in.use.end(), [&](const auto& part) {
                return !setting_.holds[part.first.index()].shared_with(avoid).empty() ||
                       (asked_about && !named(part.first));
            });
        });
        return found;
    }

    void put_in_place(const DishIngredient& line, const graph::StandIn& stand_in) {
        StandInUse use{
            .replaced = line.ingredient, .use = {}, .role = line.role, .fit = stand_in.fit(), .note = stand_in.note};
        auto swap = as_written(line, stand_in);
        for (auto& [ingredient, amount] : swap.use) {
            if (swap.use.size() == 1) amount = taken(line, ingredient, amount);
            use.use.emplace_back(ingredient, measure::Amount{kitchen_.catalogue()[ingredient].dimension, amount});
        }
        result_.stand_ins.push_back(std::move(use));
        result_.stand_in_shares.push_back(share_of(line));
        result_.swaps.push_back(std::move(swap));
    }

    /// With nothing taken less of.
    [[nodiscard]] flow::LineSwap as_written(const DishIngredient& line, const graph::StandIn& stand_in) const {
        return flow::swap_of(kitchen_.catalogue(), dish_, line.ingredient, stand_in.use, cooking_.serves_thousandths);
    }

    /// How much goes in of what does the work of a line that needs so much of it: of what is not all there as much as
    /// there is, where the line bears it.
    [[nodiscard]] std::int64_t taken(const DishIngredient& line, IngredientId id, std::int64_t needed) const {
        const auto is_there = there(id);
        if (setting_.in_danger.empty() || is_there >= needed || is_there < least(line, needed)) return needed;
        return is_there;
    }

    [[nodiscard]] std::int64_t least(const DishIngredient& line, std::int64_t needed) const {
        return setting_.in_danger.empty() ? needed : basics::scale_up(needed, line.least_thousandths, 1000);
    }

    /// Less where not all is there, more of what is in danger, as the lines bear it.
    void fit_amounts() {
        if (setting_.in_danger.empty()) return;
        for (const DishIngredient& line : dish_.ingredients) {
            if (line.optional || swapped(line.ingredient) || stands_twice(line.ingredient)) continue;
            const auto needed = line_amount(line);
            const auto most = std::min(basics::fits(basics::scale(needed, line.most_thousandths, 1000)),
                                       setting_.in_danger[line.ingredient.index()]);
            const auto fitted = std::max(taken(line, line.ingredient, needed), most > needed ? most : 0);
            if (fitted == needed || needed == 0) continue;
            result_.scaled.push_back({line.ingredient,
                                      static_cast<int>(basics::fits(basics::scale(1000, fitted, needed))),
                                      {kitchen_.catalogue()[line.ingredient].dimension, fitted}});
            result_.swaps.push_back({line.ingredient, {{line.ingredient, fitted}}, cooking_.serves_thousandths});
        }
    }

    [[nodiscard]] bool stands_twice(IngredientId id) const {
        return std::count_if(dish_.ingredients.begin(), dish_.ingredients.end(),
                             [&](const DishIngredient& line) { return line.ingredient == id; }) > 1;
    }

    /// The amount of all lines of that ingredient for the serves that are cooked.
    [[nodiscard]] std::int64_t line_amount(const DishIngredient& line) const {
        return flow::of_the_dish(dish_, line.ingredient, cooking_.serves_thousandths);
    }

    /// The line's weight in the dish's profile, from 0 to 1.
    [[nodiscard]] double share_of(const DishIngredient& line) const {
        double total = 0;
        double own = 0;
        for (const auto& weighted : kitchen_.knowledge->profiles[id_.index()]) {
            total += static_cast<double>(weighted.weight);
            if (weighted.node == graph::Node{line.ingredient, line.role}) own = static_cast<double>(weighted.weight);
        }
        return total > 0 ? own / total : 0;
    }

    [[nodiscard]] std::size_t stand_ins() const { return result_.stand_ins.size(); }

    [[nodiscard]] bool served_as_something_else(IngredientId id) const {
        return std::any_of(result_.stand_ins.begin(), result_.stand_ins.end(),
                           [&](const StandInUse& use) { return use.replaced == id; });
    }

    [[nodiscard]] bool swapped(IngredientId id) const {
        return std::any_of(result_.swaps.begin(), result_.swaps.end(), [&](const auto& swap) { return swap.of == id; });
    }

    /// What holds something that someone avoids without a separate serve is replaced for all.
    bool free_of_avoided() {
        for (const DishIngredient& line : dish_.ingredients) {
            const auto shared = setting_.holds[line.ingredient.index()].shared_with(strict_);
            if (line.optional || shared.empty() || swapped(line.ingredient)) continue;
            const auto stand_ins = stand_ins_for(line, kitchen_.graph().parameters().least_fit);
            const auto best =
                std::find_if(stand_ins.begin(), stand_ins.end(), [&](const auto& s) { return can_be_had(s); });
            // A dish that is planned as it is written stays what it is: sausages are not mince because mince is there.
            constexpr double much_worse = 0.1;
            const bool as_planned = setting_.in_danger.empty() && best != stand_ins.end();
            const double least = as_planned ? best->fit() - much_worse : 0;
            const auto there = std::find_if(stand_ins.begin(), stand_ins.end(),
                                            [&](const auto& s) { return s.fit() >= least && in_stock(line, s); });
            const auto chosen = there != stand_ins.end() ? there : best;
            if (chosen == stand_ins.end()) {
                result_.ruled_out.push_back(
                    fmt::format("{} has {}, which someone at the table avoids, and nothing free of it does its work",
                                name_of(line.ingredient), catalogue::in_words(shared)));
                return false;
            }
            put_in_place(line, *chosen);
        }
        return true;
    }

    [[nodiscard]] bool is_cooked(IngredientId id) const {
        return kitchen_.catalogue()[id].kind == catalogue::Kind::cooked;
    }

    [[nodiscard]] bool made_of_leftovers() const {
        return std::find(dish_.kinds.begin(), dish_.kinds.end(), "leftovers") != dish_.kinds.end() &&
               std::any_of(dish_.ingredients.begin(), dish_.ingredients.end(),
                           [&](const DishIngredient& line) { return !line.optional && is_cooked(line.ingredient); });
    }

    /// Whether something cooked goes into it, as it stands or in place of something.
    [[nodiscard]] bool has_leftovers() const {
        return std::any_of(dish_.ingredients.begin(), dish_.ingredients.end(), [&](const DishIngredient& line) {
            if (line.optional) return false;
            const auto use = std::find_if(result_.stand_ins.begin(), result_.stand_ins.end(),
                                          [&](const StandInUse& u) { return u.replaced == line.ingredient; });
            if (use == result_.stand_ins.end()) return is_cooked(line.ingredient);
            return std::any_of(use->use.begin(), use->use.end(),
                               [&](const auto& part) { return is_cooked(part.first); });
        });
    }

    [[nodiscard]] bool in_stock(const DishIngredient& line, const graph::StandIn& stand_in) const {
        const auto swap = as_written(line, stand_in);
        return std::all_of(swap.use.begin(), swap.use.end(), [&](const auto& use) {
            return there(use.first) >= (swap.use.size() == 1 ? least(line, use.second) : use.second);
        });
    }

    [[nodiscard]] std::int64_t there(IngredientId id) const {
        return kitchen_.taken_as_there(id) ? std::numeric_limits<std::int64_t>::max() : setting_.available[id.index()];
    }

    [[nodiscard]] bool can_be_had(const graph::StandIn& stand_in) const {
        return std::all_of(stand_in.use.begin(), stand_in.use.end(),
                           [&](const auto& part) { return kitchen_.catalogue()[part.first].pack.has_value(); });
    }

    /// A line that is not there, with what could be done about it.
    struct Missing {
        const DishIngredient* line = nullptr;
        std::optional<basics::Money> price;  ///< to buy it
        std::optional<graph::StandIn> stand_in;
        std::int64_t saved = 0;  ///< by the stand-in, against buying
    };

    /// Those that cannot be bought first, then what something in stock does as well, then those whose stand-in saves
    /// most; else as they come.
    [[nodiscard]] std::vector<Missing> missing() const {
        std::vector<Missing> list;
        for (const DishIngredient& line : dish_.ingredients) {
            if (line.optional || swapped(line.ingredient)) continue;
            const auto needed = line_amount(line);
            if (there(line.ingredient) >= needed) continue;
            const bool comes_in_time = setting_.can_be_bought_before[line.ingredient.index()];
            if (comes_in_time && setting_.in_danger.empty()) continue;
            Missing one{&line, price_of_missing(line.ingredient, needed), best_in_stock(line), 0};
            if (comes_in_time && !as_good(one)) continue;
            if (one.price && one.stand_in) one.saved = one.price->minor - loss(line, *one.stand_in);
            list.push_back(std::move(one));
        }
        std::stable_sort(list.begin(), list.end(), [&](const Missing& a, const Missing& b) {
            if (a.price.has_value() != b.price.has_value()) return !a.price;
            if (as_good(a) != as_good(b)) return as_good(a);
            return a.saved > b.saved;
        });
        return list;
    }

    /// What does the work nearly as well is used up before anything is bought.
    [[nodiscard]] bool as_good(const Missing& missing) const {
        constexpr double close = 0.9;
        return setting_.stock_first && missing.stand_in && missing.stand_in->fit() >= close;
    }

    /// What is not there is replaced by what is, where that is as good, costs less than buying it, or nothing is to be
    /// bought; else it is bought.
    void fill_in_missing() {
        for (const Missing& one : missing()) {
            const bool enough = stand_ins() >= kitchen_.graph().parameters().most_stand_ins;
            if (one.stand_in &&
                (!one.price || (!enough && (setting_.question.from_stock || as_good(one) || one.saved > 0)))) {
                put_in_place(*one.line, *one.stand_in);
            } else if (setting_.can_be_bought_before[one.line->ingredient.index()]) {
                continue;
            } else if (one.price) {
                result_.bought_at_once.push_back(one.line->ingredient);
            } else {
                result_.ruled_out.push_back(
                    fmt::format("there is no {}, it cannot be bought, and nothing here does its work",
                                name_of(one.line->ingredient)));
            }
        }
        const auto buy_parts = [&](const StandInUse& use) {
            for (const auto& [ingredient, amount] : use.use) {
                if (there(ingredient) < amount.value() && !setting_.can_be_bought_before[ingredient.index()]) {
                    result_.bought_at_once.push_back(ingredient);
                }
            }
        };
        for (const StandInUse& use : result_.stand_ins) buy_parts(use);
        buy_for_separate_serves();
        if (stand_ins() > kitchen_.graph().parameters().most_stand_ins)
            result_.ruled_out.push_back(fmt::format("{} things in it would have to be something else", stand_ins()));
    }

    void buy_for_separate_serves() {
        for (const flow::Needed& need : flow::cook(kitchen_, planned_, result_.swaps, &setting_.holds).needs) {
            const auto& bought = result_.bought_at_once;
            if (there(need.ingredient) >= need.amount || setting_.can_be_bought_before[need.ingredient.index()] ||
                std::find(bought.begin(), bought.end(), need.ingredient) != bought.end()) {
                continue;
            }
            if (kitchen_.catalogue()[need.ingredient].pack) {
                result_.bought_at_once.push_back(need.ingredient);
            } else {
                result_.ruled_out.push_back(
                    fmt::format("there is not enough {}, and it cannot be bought", name_of(need.ingredient)));
            }
        }
    }

    [[nodiscard]] std::optional<basics::Money> price_of_missing(IngredientId id, std::int64_t needed) const {
        const auto& pack = kitchen_.catalogue()[id].pack;
        if (!pack || kitchen_.catalogue()[id].kind == catalogue::Kind::cooked) return std::nullopt;
        const auto packs = basics::scale_up(needed - std::max<std::int64_t>(0, there(id)), 1, pack->amount.value());
        return kitchen::price(kitchen_, id, basics::fits(basics::multiply(packs, pack->amount.value())));
    }

    [[nodiscard]] std::optional<graph::StandIn> best_in_stock(const DishIngredient& line) const {
        for (auto& stand_in : stand_ins_for(line, kitchen_.graph().parameters().least_fit)) {
            if (in_stock(line, stand_in)) return std::move(stand_in);
        }
        return std::nullopt;
    }

    [[nodiscard]] std::int64_t loss(const DishIngredient& line, const graph::StandIn& stand_in) const {
        return std::llround(share_of(line) * (1 - stand_in.fit()) *
                            static_cast<double>(kitchen_.household.worths.fussiness.minor));
    }

    /// The last word on allergens: what each eater's serve really holds.
    void check_serves() {
        AllergenSet said;
        for (const std::size_t eater : setting_.eaters) {
            const kitchen::Person& person = kitchen_.household.people[eater];
            if (person.avoids.empty()) continue;
            keep_optional_away(person);
            const AllergenSet common = serve_of({}).holds.shared_with(person.avoids);
            if (common.empty()) {
                said.add(person.avoids);
                continue;
            }
            const flow::Serve serve = serve_of(person.avoids);
            if (!serve.holds.shared_with(person.avoids).empty()) {
                result_.ruled_out.push_back(fmt::format("{} avoids {}, and no serve of it is without", person.name,
                                                        catalogue::in_words(common)));
                continue;
            }
            std::string notes;
            for (const cookbook::SeparateServe* apart : serve.apart) {
                if (!apart->note.empty()) notes += ": " + apart->note;
            }
            result_.cautions.push_back(
                fmt::format("A serve apart for {} (no listed {}; read the labels){}: keep it, its pan and its spoon "
                            "from touching the rest.",
                            person.name, catalogue::in_words(common), notes));
        }
        const AllergenSet guests = serve_of({}).holds.shared_with(setting_.guests_avoid);
        if (!guests.empty()) result_.ruled_out.push_back("a guest avoids " + catalogue::in_words(guests));
        said.add(setting_.guests_avoid);
        if (!said.empty() && result_.ruled_out.empty()) {
            result_.cautions.push_back(fmt::format("No listed {}; read the labels.", catalogue::in_words(said)));
        }
    }

    /// What someone will not eat is not put before them. What lies on top or beside is left off their plate; what was
    /// asked about is the cook's own wish, and only said.
    void check_vetoes() {
        for (const std::size_t eater : setting_.eaters) {
            const kitchen::Person& person = kitchen_.household.people[eater];
            if (will_not_eat(person, id_)) result_.vetoed.push_back(person.name + " will not eat it");
            for (const flow::Needed& need : result_.cooking.needs) {
                if (!will_not_eat(kitchen_, person, need.ingredient)) continue;
                const std::string& what = name_of(need.ingredient);
                if (lies_apart(need.ingredient)) {
                    result_.cautions.push_back(fmt::format("Leave the {} off {}'s plate.", what, person.name));
                } else if (named(need.ingredient)) {
                    result_.cautions.push_back(fmt::format("{} does not eat {}: a serve without.", person.name, what));
                } else {
                    result_.vetoed.push_back(fmt::format("{} does not eat {}", person.name, what));
                }
            }
        }
    }

    /// Whether all that it does in the dish is done on top or beside.
    [[nodiscard]] bool lies_apart(IngredientId id) const {
        return std::none_of(dish_.ingredients.begin(), dish_.ingredients.end(), [&](const DishIngredient& line) {
            const bool apart = line.role == catalogue::Role::topping || line.role == catalogue::Role::side;
            if (line.optional || apart) return false;
            const auto use = std::find_if(result_.stand_ins.begin(), result_.stand_ins.end(),
                                          [&](const StandInUse& u) { return u.replaced == line.ingredient; });
            if (use == result_.stand_ins.end()) return line.ingredient == id;
            return std::any_of(use->use.begin(), use->use.end(), [&](const auto& part) { return part.first == id; });
        });
    }

    [[nodiscard]] flow::Serve serve_of(AllergenSet avoids) const {
        return flow::serve_for(dish_, avoids, result_.swaps, setting_.holds);
    }

    /// What may be left out is not counted, and must not come onto that plate.
    void keep_optional_away(const kitchen::Person& person) {
        for (const DishIngredient& line : dish_.ingredients) {
            const auto shared = setting_.holds[line.ingredient.index()].shared_with(person.avoids);
            if (!line.optional || shared.empty()) continue;
            result_.cautions.push_back(fmt::format("Keep the {} ({}) from {}'s plate, or leave it out.",
                                                   name_of(line.ingredient), catalogue::in_words(shared), person.name));
        }
    }

    const Setting& setting_;
    const kitchen::Kitchen& kitchen_;
    cookbook::DishId id_;
    const cookbook::Dish& dish_;
    kitchen::Planned planned_;
    flow::Cooking cooking_;
    AllergenSet strict_;
    Candidate result_;
};

}  // namespace

Candidate candidate(const Setting& setting, cookbook::DishId dish) {
    return Builder(setting, dish).build();
}

bool time_for(const graph::StandIn& stand_in, const cookbook::Dish& dish, const kitchen::Household& household,
              basics::Day day, kitchen::Meal meal) {
    if (stand_in.adds_minutes == 0) return true;
    return meal == kitchen::Meal::dinner && dish.minutes + stand_in.adds_minutes <= kitchen::minutes_of(household, day);
}

bool is_any(const catalogue::Catalogue& catalogue, IngredientId id, const std::vector<catalogue::Of>& of) {
    return std::any_of(of.begin(), of.end(), [&](const catalogue::Of& what) { return catalogue.is(id, what); });
}

bool starts_from(const kitchen::Kitchen& kitchen, const cookbook::Dish& dish, const catalogue::Of& what) {
    if (!dish.base) return false;
    const auto& catalogue = kitchen.catalogue();
    const auto& needs = kitchen.cookbook()[*dish.base].needs;
    return std::any_of(needs.begin(), needs.end(), [&](const cookbook::BaseNeed& need) {
        if (const auto* ingredient = std::get_if<IngredientId>(&what)) return catalogue.is(*ingredient, need.of);
        const auto members = catalogue.members(std::get<catalogue::FamilyId>(what));
        return std::any_of(members.begin(), members.end(),
                           [&](IngredientId member) { return catalogue.is(member, need.of); });
    });
}

std::vector<std::string> disliked(const kitchen::Kitchen& kitchen, const kitchen::Person& person,
                                  const flow::Cooking& cooking) {
    std::vector<std::string> names;
    for (const flow::Needed& need : cooking.needs) {
        const bool dislikes = std::any_of(person.dislikes.begin(), person.dislikes.end(), [&](const catalogue::Of& of) {
            return kitchen.catalogue().is(need.ingredient, of);
        });
        if (dislikes) names.push_back(kitchen.catalogue()[need.ingredient].name);
    }
    return names;
}

}  // namespace samebase::ask::detail
