// samebase dishes and samebase names: what may be typed.
#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "commands.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "show/words.hpp"

namespace samebase::cli {

namespace {

using Json = nlohmann::ordered_json;

struct Arguments {
    std::vector<std::string> words;
    bool all = false;
};

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

/// Every word of `wanted` stands in the text.
bool holds(const std::string& text, const std::vector<std::string>& wanted) {
    const std::string in = lower(text);
    return std::all_of(wanted.begin(), wanted.end(),
                       [&](const std::string& word) { return in.find(lower(word)) != std::string::npos; });
}

bool of_kind(const cookbook::Dish& dish, const std::vector<std::string>& words) {
    return words.size() == 1 &&
           std::find(dish.kinds.begin(), dish.kinds.end(), lower(words.front())) != dish.kinds.end();
}

std::vector<const cookbook::Dish*> chosen_dishes(const cookbook::Cookbook& cookbook,
                                                 const std::vector<std::string>& words) {
    std::vector<const cookbook::Dish*> list;
    for (const cookbook::Dish& dish : cookbook.dishes()) {
        if (!dish.dinner && !dish.lunch) continue;
        if (words.empty() || of_kind(dish, words) || holds(dish.name, words)) list.push_back(&dish);
    }
    std::sort(list.begin(), list.end(), [](const auto* a, const auto* b) { return a->name < b->name; });
    return list;
}

std::string kinds_text(const cookbook::Cookbook& cookbook) {
    std::map<std::string, int> kinds;
    int dinners = 0;
    for (const cookbook::Dish& dish : cookbook.dishes()) {
        dinners += dish.dinner ? 1 : 0;
        if (!dish.dinner) continue;
        for (const std::string& kind : dish.kinds) ++kinds[kind];
    }
    std::vector<std::string> words;
    for (const auto& [kind, count] : kinds) words.push_back(fmt::format("{} {}", kind, count));
    return show::wrapped(fmt::format("{} dinners by kind: {}.", dinners, fmt::join(words, ", ")), 2) +
           "\nSee some: samebase dishes pizza. All of them: samebase dishes --all\n";
}

std::string text_of(const std::vector<const cookbook::Dish*>& dishes) {
    std::string out;
    for (const cookbook::Dish* dish : dishes)
        out += show::wrapped(fmt::format("  {}, {} min{}", dish->name, dish->minutes, dish->dinner ? "" : ", a lunch"),
                             4) +
               "\n";
    return out;
}

Outcome run_dishes(const Arguments& arguments, const Context& context) {
    const auto knowledge = context.knowledge(context.folder().has_value());
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    const cookbook::Cookbook& cookbook = (*knowledge)->cookbook;
    const auto dishes = chosen_dishes(cookbook, arguments.words);
    if (dishes.empty()) {
        return failure(not_understood, {{joined(arguments.words), "no dish has that in its name or is of that kind",
                                         "a word of a name, or a kind of dish", "'samebase dishes' lists the kinds"}});
    }
    const bool kinds_only = arguments.words.empty() && !arguments.all;
    context.answer([&](const show::Manner&) { return kinds_only ? kinds_text(cookbook) : text_of(dishes); },
                   [&] {
                       Json list = Json::array();
                       for (const cookbook::Dish* dish : dishes) {
                           list.push_back({{"dish", dish->id},
                                           {"label", dish->name},
                                           {"kinds", dish->kinds},
                                           {"minutes", dish->minutes},
                                           {"dinner", dish->dinner},
                                           {"lunch", dish->lunch}});
                       }
                       return Json{{"dishes", std::move(list)}};
                   });
    return answered;
}

struct Name {
    std::string name;
    std::vector<std::string> also;
    std::string what;  ///< "ingredient", "family", "dish"
};

std::vector<Name> named_like(const kitchen::Knowledge& knowledge, const std::vector<std::string>& words) {
    std::vector<Name> list;
    for (const auto& thing : knowledge.catalogue.ingredients()) {
        const bool other = std::any_of(thing.also.begin(), thing.also.end(),
                                       [&](const std::string& name) { return holds(name, words); });
        if (other || holds(thing.name, words)) list.push_back({thing.name, thing.also, "ingredient"});
    }
    for (const auto& family : knowledge.catalogue.families()) {
        if (holds(family.name, words)) list.push_back({family.name, {}, "family"});
    }
    for (const auto& dish : knowledge.cookbook.dishes()) {
        if (holds(dish.name, words)) list.push_back({dish.name, {}, "dish"});
    }
    std::stable_sort(list.begin(), list.end(),
                     [](const Name& a, const Name& b) { return std::tie(a.what, a.name) < std::tie(b.what, b.name); });
    return list;
}

Outcome run_names(const Arguments& arguments, const Context& context) {
    if (arguments.words.empty())
        return failure(not_understood, {{"names", "no word is given", "a word, as in 'names mince'", std::nullopt}});
    const auto knowledge = context.knowledge(context.folder().has_value());
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    const auto names = named_like(**knowledge, arguments.words);
    if (names.empty()) {
        return failure(not_understood, {{joined(arguments.words), "nothing has that in its name", "part of a name",
                                         "'samebase dishes' lists dishes"}});
    }
    const auto text = [&](const show::Manner&) {
        std::string out;
        for (const std::string what : {"ingredient", "family", "dish"}) {
            std::vector<std::string> words;
            for (const Name& name : names) {
                if (name.what != what) continue;
                words.push_back(name.also.empty() ? name.name
                                                  : fmt::format("{} ({})", name.name, fmt::join(name.also, ", ")));
            }
            const std::string head = what == "ingredient" ? "Ingredients" : what == "family" ? "Families" : "Dishes";
            if (!words.empty()) out += show::wrapped(fmt::format("{}: {}", head, fmt::join(words, "; ")), 2) + "\n";
        }
        return out;
    };
    context.answer(text, [&] {
        Json list = Json::array();
        for (const Name& name : names) list.push_back({{"name", name.name}, {"also", name.also}, {"what", name.what}});
        return Json{{"names", std::move(list)}};
    });
    return answered;
}

}  // namespace

void add_dishes(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("dishes", "the dishes there are, by kind or by a word: dishes pizza");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("words", arguments->words, "a kind of dish, or words of a name");
    command->add_flag("--all", arguments->all, "every dish");
    run_with(*command, chosen, arguments, run_dishes);
}

void add_names(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("names", "what things are called here: names mince");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("words", arguments->words, "part of a name");
    run_with(*command, chosen, arguments, run_names);
}

}  // namespace samebase::cli
