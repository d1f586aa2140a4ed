#include "import_recipe.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <utility>

#include "exchange/file.hpp"
#include "exchange/imported.hpp"
#include "exchange/knowledge.hpp"
#include "exchange/recipe.hpp"
#include "exchange/recipe_dish.hpp"
#include "exchange/remembered.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "output.hpp"
#include "recipe_report.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

struct Arguments {
    std::string file;
    std::size_t which = 0;  ///< 0: all
    std::vector<std::string> as;
    std::vector<std::string> skip;
    std::vector<std::string> roles;
    std::vector<std::string> amounts;
    std::vector<std::string> kinds;
    std::string name;
    std::string base;
    std::string leaves;
    std::string measures;
    int serves = 0;   ///< 0: as the recipe says
    int minutes = 0;  ///< 0: the same
    bool dinner = false;
    bool lunch = false;
    bool freezes = false;
    bool replace = false;
    bool settle = false;
    How how;
};

/// "olive oil=vegetable oil" in two.
exchange::RecipeWords::Pairs pairs_of(const std::vector<std::string>& texts, const char* option, const char* like,
                                      basics::Problems& problems) {
    exchange::RecipeWords::Pairs pairs;
    for (const std::string& text : texts) {
        const auto at = text.find('=');
        if (at == std::string::npos || at == 0 || at + 1 == text.size()) {
            problems.push_back({option, fmt::format("'{}'", text), like, std::nullopt});
        } else {
            pairs.emplace_back(text.substr(0, at), text.substr(at + 1));
        }
    }
    return pairs;
}

tl::expected<exchange::RecipeWords, Failure> words_of(const Arguments& arguments, const kitchen::Household& household) {
    exchange::RecipeWords words;
    basics::Problems problems;
    words.as = pairs_of(arguments.as, "--as", "WORDS=INGREDIENT, as in 'olive oil=vegetable oil'", problems);
    words.roles = pairs_of(arguments.roles, "--role", "WORDS=ROLE, as in 'potatoes=main'", problems);
    words.amounts = pairs_of(arguments.amounts, "--amount", "WORDS=AMOUNT, as in 'oil=2 tbsp'", problems);
    words.skip = arguments.skip;
    words.kinds = arguments.kinds;
    if (!arguments.name.empty()) {
        const auto name = remark({arguments.name}, "--name");
        if (!name) problems.insert(problems.end(), name.error().problems.begin(), name.error().problems.end());
        if (arguments.name.size() > exchange::longest_name) {
            problems.push_back({"--name", fmt::format("{} bytes", arguments.name.size()),
                                fmt::format("at most {} bytes", exchange::longest_name), std::nullopt});
        }
        words.name = arguments.name;
    }
    if (!arguments.base.empty()) words.base = arguments.base;
    if (!arguments.leaves.empty()) words.leaves = arguments.leaves;
    words.freezes = arguments.freezes;
    if (arguments.serves > 0) words.serves = arguments.serves;
    if (arguments.minutes > 0) words.minutes = arguments.minutes;
    words.lunch = arguments.lunch;
    words.dinner = arguments.dinner || !arguments.lunch;
    words.measures = household.measures;
    if (!arguments.measures.empty()) {
        const auto set = measure::read_measure_set(arguments.measures);
        if (!set) {
            problems.push_back({"--measures", fmt::format("'{}'", arguments.measures),
                                "australian-metric, metric-15, us-customary or imperial", std::nullopt});
        }
        words.measures = set.value_or(words.measures);
    }
    if (!problems.empty()) return failure(not_understood, std::move(problems));
    return words;
}

/// The recipes that are asked for.
tl::expected<exchange::Recipes, Failure> recipes_of(const Arguments& arguments) {
    const auto text = exchange::read_file(arguments.file);
    if (!text) return failure(not_understood, text.error());
    auto read = exchange::read_recipes(*text, arguments.file);
    if (!read) return failure(not_understood, std::move(read.error()));
    auto& recipes = read->recipes;
    if (arguments.which > recipes.size()) {
        return failure(not_understood,
                       {{"--which", fmt::format("{}", arguments.which),
                         fmt::format("1 to {}, as many as {} holds", recipes.size(), arguments.file), std::nullopt}});
    }
    if (arguments.which > 0) recipes = {recipes[arguments.which - 1]};
    if (recipes.size() > 1 && !arguments.name.empty()) {
        return failure(not_understood, {{"--name", fmt::format("one name for {} recipes", recipes.size()), "one recipe",
                                         "say --which N"}});
    }
    return std::move(*read);
}

/// The kitchen with these dishes, as it will be read from now on: with all checks.
struct Added {
    exchange::Addition addition;
    std::shared_ptr<const kitchen::Knowledge> knowledge;
};

tl::expected<Added, Failure> added(const Arguments& arguments, const fs::path& folder,
                                   const std::vector<exchange::RecipeDish>& dishes,
                                   const cookbook::Cookbook& cookbook) {
    auto addition = exchange::with_dishes(folder, dishes, arguments.replace, cookbook);
    if (!addition) return failure(not_understood, addition.error());
    const std::vector<fs::path> folders{Context::data_folder(), folder};
    auto after = exchange::load_knowledge(folders, &addition->draft);
    if (!after) return failure(not_understood, after.error());
    return Added{std::move(*addition), std::move(*after)};
}

/// Writes what is added to the documents as they are now: another import may have been here since they were read.
tl::expected<void, Failure> write(const Arguments& arguments, const Context& context, const fs::path& folder,
                                  const std::vector<exchange::RecipeDish>& dishes,
                                  const std::map<std::string, catalogue::IngredientId>& said) {
    const auto lock = exchange::lock_folder(folder);
    if (!lock) return failure(store_failed, lock.error());
    const auto knowledge = context.knowledge(true);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    const auto now = added(arguments, folder, dishes, (*knowledge)->cookbook);
    if (!now) return tl::make_unexpected(now.error());
    if (const auto written = exchange::write_addition(now->addition); !written)
        return failure(store_failed, written.error());
    if (said.empty()) return {};
    if (const auto kept = exchange::remember(folder, said, **knowledge); !kept)
        return failure(store_failed, kept.error());
    return {};
}

using Said = std::map<std::string, catalogue::IngredientId>;

/// Asks once what a line's ingredient is: a number of the nearest, a name, or "-" to leave the line out. Nothing at the
/// end of the input.
std::optional<std::string> answer_to(const exchange::LineQuestion& question, const kitchen::Knowledge& knowledge) {
    std::string choices;
    for (std::size_t i = 0; i < question.nearest.size(); ++i)
        choices += fmt::format("{} {}, ", i + 1, question.nearest[i]);
    std::string asked = fmt::format(
        "{}\n  What is '{}'? {}another name, or - to leave the line out: ", question.written, question.name, choices);
    for (;;) {
        const auto words = ask(asked);
        if (!words || words->empty()) return std::nullopt;
        for (std::size_t i = 0; i < question.nearest.size(); ++i) {
            if (*words == fmt::format("{}", i + 1)) return question.nearest[i];
        }
        if (*words == "-" || exchange::ingredient_called(*words, knowledge)) return words;
        asked = fmt::format("  Nothing is called '{}'. Another name, or -: ", *words);
    }
}

/// Settles with the cook what every line is, and returns what is to be remembered.
Said settled(const exchange::Recipes& recipes, const kitchen::Knowledge& knowledge, exchange::RecipeWords& words) {
    Said said;
    for (const auto& question : exchange::unclear_lines(recipes.recipes, words, knowledge)) {
        if (said.contains(question.name)) continue;  // two recipes call it so
        const auto answer = answer_to(question, knowledge);
        if (!answer) break;
        if (*answer == "-") {
            words.skip.push_back(question.words);
            continue;
        }
        words.remembered[question.name] = *answer;
        said.emplace(question.name, *exchange::ingredient_called(*answer, knowledge));
    }
    return said;
}

/// Shows the dishes, asks where somebody is there, and writes.
Outcome take_in(const Arguments& arguments, const Context& context, const fs::path& folder, const RecipeReport& report,
                const Said& said) {
    const How& how = arguments.how;
    const bool ask = !how.yes && !how.dry_run;
    const std::string shown = text(report);
    if (ask) {
        if (context.wants_json()) {
            tell(shown);
        } else {
            print(shown);
        }
        std::fflush(stdout);
        const auto count = report.dishes.size();
        if (!agreed(count == 1 ? "Take it in?" : fmt::format("Take in these {} dishes?", count))) {
            return failure(not_understood, {{"import recipe", "not agreed to", "yes", "nothing was changed"}});
        }
    }
    if (!how.dry_run) {
        const auto written = write(arguments, context, folder, report.dishes, said);
        if (!written) return tl::make_unexpected(written.error());
    }
    context.answer([&](const show::Manner&) { return (ask ? std::string() : shown) + last_line(report); },
                   [&] { return json(report); });
    return answered;
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (!arguments.how.yes && !arguments.how.dry_run && !on_terminal()) {
        return failure(not_understood, {{"import recipe", "nobody is there to agree to what was read",
                                         "--dry-run to look at it, --yes to write it", std::nullopt}});
    }
    if (arguments.settle && !on_terminal()) {
        return failure(not_understood, {{"import recipe --settle", "nobody is there to be asked", "a terminal",
                                         "--as 'WORDS=INGREDIENT' says what a line is"}});
    }
    const auto folder = context.folder();
    if (!folder) return tl::make_unexpected(folder.error());
    const auto knowledge = context.knowledge(true);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    const auto household = context.household(**knowledge);
    if (!household) return tl::make_unexpected(household.error());
    auto words = words_of(arguments, *household);
    if (!words) return tl::make_unexpected(words.error());
    auto remembered = exchange::read_remembered(*folder, **knowledge);
    if (!remembered) return failure(files_unsound, remembered.error());
    words->remembered = std::move(*remembered);
    const auto recipes = recipes_of(arguments);
    if (!recipes) return tl::make_unexpected(recipes.error());
    Said said;
    if (arguments.settle) said = settled(*recipes, **knowledge, *words);
    const auto dishes = exchange::dishes_of(recipes->recipes, *words, **knowledge);
    if (!dishes) return failure(not_understood, dishes.error());
    const auto now = added(arguments, *folder, *dishes, (*knowledge)->cookbook);
    if (!now) return tl::make_unexpected(now.error());
    return take_in(arguments, context, *folder,
                   {*now->knowledge, *dishes, now->addition, recipes->passed_over, arguments.how.dry_run}, said);
}

void add_repeatable(CLI::App& command, const char* option, std::vector<std::string>& into, const char* type,
                    const char* help) {
    command.add_option(option, into, help)->type_name(type)->allow_extra_args(false);
}

}  // namespace

void add_import_recipe(CLI::App& import, Chosen& chosen) {
    auto* command = import.add_subcommand(
        "recipe", "recipes (schema.org JSON-LD, a page of the web, plain text) as dishes of yours");
    auto arguments = std::make_shared<Arguments>();
    command
        ->add_option("file", arguments->file,
                     "JSON, a page of the web as it was saved, or a title, lines and a method as text")
        ->required()
        ->type_name("FILE");
    command->add_option("--which", arguments->which, "only the N-th recipe of the file")
        ->type_name("N")
        ->check(CLI::Range(1, 1'000'000));
    add_repeatable(*command, "--as", arguments->as, "WORDS=INGREDIENT", "what a line's ingredient is: 'oil=olive oil'");
    add_repeatable(*command, "--skip", arguments->skip, "WORDS", "a line to leave out");
    add_repeatable(*command, "--role", arguments->roles, "WORDS=ROLE", "what it does in the dish: 'potatoes=main'");
    add_repeatable(*command, "--amount", arguments->amounts, "WORDS=AMOUNT", "how much it is: 'oil=2 tbsp'");
    add_repeatable(*command, "--kind", arguments->kinds, "KIND",
                   "what a standing night may ask for: pasta, soup, bake ...");
    command->add_option("--serves", arguments->serves, "how many it serves")
        ->type_name("N")
        ->check(CLI::Range(1, 1000));
    command->add_option("--minutes", arguments->minutes, "from start to table")
        ->type_name("N")
        ->check(CLI::Range(1, 2880));
    command->add_option("--name", arguments->name, "what the dish is called here")->type_name("NAME");
    command->add_option("--base", arguments->base, "the base that it starts from")->type_name("ID");
    command
        ->add_option("--leaves", arguments->leaves,
                     "what serves that nobody ate become, a leftover's name (else nothing is kept)")
        ->type_name("LEFTOVER");
    command->add_flag("--freezes", arguments->freezes, "whole serves freeze well");
    command->add_option("--measures", arguments->measures, "how large its cups and spoons are (else as the kitchen's)")
        ->type_name("SET");
    command->add_flag("--dinner", arguments->dinner, "it is a dinner (as it is where nothing is said)");
    command->add_flag("--lunch", arguments->lunch, "it is a lunch");
    command->add_flag("--replace", arguments->replace, "in place of the dish of that name that was taken in before");
    command->add_flag("--settle", arguments->settle, "ask what is not clear, and remember the answers");
    add_dry_run(*command, arguments->how);
    add_yes(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
