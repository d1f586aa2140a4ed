// samebase check: is my data sound?
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "commands.hpp"
#include "show/json.hpp"
#include "store/store.hpp"

namespace samebase::cli {

namespace {

bool all_of_it(const cookbook::Dish& dish, const std::function<bool(catalogue::IngredientId)>& is) {
    return std::all_of(dish.ingredients.begin(), dish.ingredients.end(),
                       [&](const auto& line) { return line.optional || is(line.ingredient); });
}

/// How many everyday dinners, or lunches, there are of each kind, in the order of their names.
show::Json everyday_by_kind(const kitchen::Knowledge& knowledge, bool cookbook::Dish::*meal) {
    std::map<std::string, int> found;
    for (const auto& dish : knowledge.cookbook.dishes()) {
        if (!(dish.*meal) || !cookbook::everyday(dish, knowledge.catalogue)) continue;
        for (const auto& kind : dish.kinds) ++found[kind];
    }
    return show::Json(found);
}

/// Leftovers that are eaten again in fewer than five ways: dishes that have the same first kind are one way.
std::int64_t seldom_eaten_again(const kitchen::Knowledge& knowledge) {
    std::map<catalogue::IngredientId, std::set<std::string>> ways;
    for (std::uint32_t i = 0; i < knowledge.catalogue.ingredients().size(); ++i) {
        const catalogue::IngredientId id{i};
        if (knowledge.catalogue[id].kind == catalogue::Kind::cooked) ways[id];
    }
    for (const auto& dish : knowledge.cookbook.dishes()) {
        for (const auto& line : dish.ingredients) {
            const auto eaten = ways.find(line.ingredient);
            if (eaten != ways.end() && !line.optional && !dish.kinds.empty()) eaten->second.insert(dish.kinds.front());
        }
    }
    return std::count_if(ways.begin(), ways.end(), [](const auto& way) { return way.second.size() < 5; });
}

/// What there is, counted.
show::Json counts(const kitchen::Knowledge& knowledge) {
    const auto& catalogue = knowledge.catalogue;
    std::set<std::string> kinds;
    std::int64_t leftovers = 0;
    std::int64_t dinners = 0;
    std::int64_t lunches = 0;
    std::int64_t meatless = 0;
    std::int64_t without_gluten = 0;
    std::int64_t quick = 0;
    std::int64_t everyday_dinners = 0;
    std::int64_t from_leftovers = 0;
    std::int64_t unusual = 0;
    std::int64_t everyday_lunches = 0;
    constexpr int quick_minutes = 30;
    for (const auto& thing : catalogue.ingredients()) leftovers += thing.kind == catalogue::Kind::raw ? 0 : 1;
    for (const auto& dish : knowledge.cookbook.dishes()) {
        kinds.insert(dish.kinds.begin(), dish.kinds.end());
        const bool everyday = cookbook::everyday(dish, catalogue);
        lunches += dish.lunch ? 1 : 0;
        everyday_lunches += dish.lunch && everyday ? 1 : 0;
        if (!dish.dinner) continue;
        ++dinners;
        everyday_dinners += everyday ? 1 : 0;
        const bool eats_up = !all_of_it(dish, [&](auto id) { return catalogue[id].kind != catalogue::Kind::cooked; });
        from_leftovers += eats_up ? 1 : 0;
        unusual += eats_up || everyday ? 0 : 1;
        meatless += all_of_it(dish, [&](auto id) { return catalogue.meatless(id); }) ? 1 : 0;
        without_gluten += cookbook::allergens(dish, catalogue).has(catalogue::Allergen::gluten) ? 0 : 1;
        quick += dish.minutes <= quick_minutes ? 1 : 0;
    }
    return {{"ingredients", catalogue.ingredients().size()},
            {"made_or_cooked", leftovers},
            {"families", catalogue.families().size()},
            {"stand_ins", knowledge.graph.statements().size()},
            {"bases", knowledge.cookbook.bases().size()},
            {"kinds", kinds.size()},
            {"dinners", dinners},
            {"meatless_dinners", meatless},
            {"dinners_without_listed_gluten", without_gluten},
            {"dinners_within_30_minutes", quick},
            {"everyday_dinners", everyday_dinners},
            {"dinners_from_leftovers", from_leftovers},
            {"dinners_that_need_something_unusual", unusual},
            {"leftovers_with_fewer_than_five_ways", seldom_eaten_again(knowledge)},
            {"lunches", lunches},
            {"everyday_lunches", everyday_lunches}};
}

std::string sentence(const show::Json& counts) {
    std::string text;
    for (const auto& [key, value] : counts.items()) {
        std::string name = key == "stand_ins" ? "stand-ins" : key;
        std::replace(name.begin(), name.end(), '_', ' ');
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", value.get<std::int64_t>(), name);
    }
    return text;
}

std::string by_kind(std::string_view what, const show::Json& counts) {
    return show::wrapped(fmt::format("Everyday {} by kind: {}.", what, sentence(counts))) + "\n";
}

Outcome check_data(const Context& context) {
    const auto knowledge = context.knowledge(false);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    if (const auto reason = (*knowledge)->graph.check()) {
        return failure(files_unsound, {{"stand_ins", *reason, "a sound base graph", std::nullopt}});
    }
    const auto found = counts(**knowledge);
    const auto dinners = everyday_by_kind(**knowledge, &cookbook::Dish::dinner);
    const auto lunches = everyday_by_kind(**knowledge, &cookbook::Dish::lunch);
    context.answer(
        [&](const show::Manner&) {
            return show::wrapped(fmt::format("The shipped data is sound: {}.", sentence(found))) + "\n\n" +
                   by_kind("dinners", dinners) + by_kind("lunches", lunches);
        },
        [&] {
            return show::Json{{"sound", true},
                              {"counts", found},
                              {"everyday_dinners_by_kind", dinners},
                              {"everyday_lunches_by_kind", lunches}};
        });
    return answered;
}

Outcome check_kitchen(const Context& context) {
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    if (const auto reason = kitchen->check()) {
        return failure(files_unsound, {{"kitchen", *reason, "documents that agree with one another", std::nullopt}});
    }
    auto store = store::Store::open(store::file_in(*context.folder()), store::Mode::read);
    if (!store) return failure(store_failed, store.error());
    const auto ledger = store->check();
    if (!ledger) return failure(store_failed, ledger.error());
    auto found = counts(*kitchen->knowledge);
    found["people"] = kitchen->household.people.size();
    found["places"] = kitchen->household.places.size();
    found["lots"] = kitchen->lots.size();
    found["planned"] = kitchen->plan.size();
    found["had"] = kitchen->history.size();
    found["commands"] = ledger->commands;
    found["entries"] = ledger->entries;
    context.answer(
        [&](const show::Manner&) {
            return show::wrapped(fmt::format("{} is sound: {}.", kitchen->household.name, sentence(found))) + "\n";
        },
        [&] {
            return show::Json{{"sound", true}, {"counts", found}};
        });
    return answered;
}

}  // namespace

void add_check(CLI::App& app, Chosen& chosen) {
    auto* command =
        app.add_subcommand("check", "is my data sound? every problem of every document, and the ledger recomputed");
    auto data = std::make_shared<bool>(false);
    command->add_flag("--data", *data, "only what is shipped: catalogue, stand-ins, bases, dishes");
    command->callback([data, &chosen] {
        chosen.run = [data](const Context& context) { return *data ? check_data(context) : check_kitchen(context); };
    });
}

}  // namespace samebase::cli
