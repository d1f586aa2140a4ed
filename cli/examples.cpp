#include "examples.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>

namespace samebase::cli {

namespace {

/// As they are typed behind `samebase`; the example belongs to the command that it begins with.
constexpr std::string_view examples[] = {
    "tonight",
    "tonight --done",
    "tonight --recipe",
    "recipe",
    "recipe meat loaf --serves 6",
    R"(recipe meat loaf --with "pork mince for beef mince, nothing for carrot")",
    "else beef mince",
    "else soup --day fri",
    "else beef mince --take 2",
    "else beef mince --why-not rissoles",
    "else lot 12",
    "week",
    "plan",
    "plan december",
    "swap fri meat loaf",
    "swap fri sun",
    "swap thu leftovers",
    R"(swap wed rissoles --with "lamb mince for beef mince")",
    "balance",
    "balance december",
    "balance 2026-12-01..2026-12-14",
    "clear",
    "clear --until fri --write",
    "lunches --days 3",
    "lunches --days 3 --write",
    "thaw",
    "thaw sat",
    "thaw --done",
    "carry december",
    "carry december --done",
    "got 2 kg beef mince @ 9/kg, 3 cabbages @ 4.65, 300 g ham use by 30 dec",
    "got 4 x 500 g lamb mince --in shed",
    "moved 2 packs mince from shed to fridge",
    "moved lot 2 --to freezer above the fridge",
    "opened milk",
    "out olive oil",
    "out olive oil --again",
    "cooked",
    "cooked meat loaf --left 2",
    "cooked spaghetti bolognese --used 700 g mince",
    "ate 2 bananas, cold roast chicken",
    "ate all the mixed leaves, lot 81",
    "tossed spinach --because slimy",
    "tossed lot 84",
    "tossed --past",
    "count near freezer: 14 mince, 5 white fish, 13.5 lamb mince, some parsley",
    "count fridge: 2 L milk, 12 eggs",
    "list",
    "list add 2 bread, 3 sponges",
    "list december",
    "list --got",
    R"(list --got --not "milk, apples")",
    R"(list --got --prices "milk 4.65")",
    "sheet week",
    "sheet week --html week.html",
    "prices milk",
    "lookback",
    "lookback 2026",
    "lookback lamb",
    "household",
    "household person Gus --avoid gluten --eats 0.5",
    R"(household person Bram --home "mon-fri dinner, sat-sun all")",
    "household away Tovi 12..14 dec",
    "household guests 25 dec 2 --avoid egg",
    "household mark Bram seafood -3",
    "household trip wed",
    "household trip sat --every 2 --from 5 dec fresh",
    "household trip 5 dec bulk",
    "household night thu mince",
    "household night thu mince soup",
    "household minutes tue 45",
    "household place barn freezer far-freezer --litres 200",
    "household use 750 mL milk --days mon-fri",
    "household staple plain flour",
    "household shelves bread, tins, vegetables",
    "household price mince 9.50/kg",
    "household price milk 4.55 for 2 L",
    "household remove person Tovi",
    "household remove trip sat",
    "household remove night tue",
    "household edit",
    "household edit dishes",
    "stock",
    "stock fridge",
    "dishes",
    "dishes pizza",
    "names mince",
    "undo",
    "log",
    "log --limit 3",
    "export kitchen-copy.json",
    "export --stock-csv stock.csv",
    "export recipe meat loaf",
    "import kitchen-copy.json",
    "import --stock-csv stock.csv",
    R"(import recipe page.html --kind bake --as "oil=olive oil" --role potatoes=main --amount "oil=2 tbsp" --yes)",
    "backup ledger-copy.db",
    "check",
    "check --data",
    "new our-kitchen",
    R"(new our-kitchen --person "Ann avoids gluten, dislikes mushrooms" --person Ben --trip "sat every 2 from 5 dec")",
    R"(new our-kitchen --people Ann,Ben --shopping sat,wed --night "tue mince" --minutes 45 --minutes "sat-sun 90")",
    R"(new our-kitchen --place "shed freezer: far-freezer 200 L" --place fridge --place pantry --trip "5 dec bulk")",
    "demo demo-kitchen",
    "help day",
    "completion bash",
};

void add_to(CLI::App& command, const std::string& path) {
    const auto own = command.get_subcommands([](CLI::App*) { return true; });
    const auto belongs = [](std::string_view example, const std::string& to) {
        return example == to || example.starts_with(to + " ");
    };
    std::string text = "Examples:";
    for (const auto example : examples) {
        if (!belongs(example, path)) continue;
        const bool to_another = std::any_of(own.begin(), own.end(), [&](const CLI::App* sub) {
            return belongs(example, fmt::format("{} {}", path, sub->get_name()));
        });
        if (!to_another) text += fmt::format("\n  samebase {}", example);
    }
    command.footer(text);
    for (auto* sub : own) add_to(*sub, fmt::format("{} {}", path, sub->get_name()));
}

}  // namespace

void add_examples(CLI::App& app) {
    for (auto* command : app.get_subcommands([](CLI::App*) { return true; })) add_to(*command, command->get_name());
}

}  // namespace samebase::cli
