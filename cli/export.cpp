// samebase export [FILE]: the whole kitchen as one JSON document, or its stock as CSV; export recipe DISH: dishes as
// schema.org writes recipes.
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "exchange/file.hpp"
#include "exchange/recipe_out.hpp"
#include "exchange/stock_csv.hpp"
#include "exchange/whole.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "output.hpp"
#include "show/json.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

struct Arguments {
    std::string file;
    bool stock_csv = false;
};

basics::Result<nlohmann::ordered_json> read_in_order(const fs::path& path, const std::string& name) {
    const auto text = exchange::read_file(path);
    if (!text) return tl::make_unexpected(text.error());
    if (const auto sound = exchange::parse(*text, name); !sound) return tl::make_unexpected(sound.error());
    return nlohmann::ordered_json::parse(*text);
}

tl::expected<std::string, Failure> whole_kitchen(const Context& context) {
    auto opened = open_kitchen(context, store::Mode::read);
    if (!opened) return tl::make_unexpected(opened.error());
    const fs::path folder = *context.folder();
    auto household = read_in_order(folder / "kitchen.json", "kitchen.json");
    if (!household) return failure(files_unsound, household.error());
    exchange::Whole whole{std::move(*household), {}, {}};
    for (const std::string& own : exchange::own_folders()) {
        const auto files = exchange::documents_in(folder / own);
        if (!files) return failure(files_unsound, files.error());
        for (const fs::path& file : *files) {
            const std::string path = fmt::format("{}/{}", own, file.filename().string());
            auto document = read_in_order(file, path);
            if (!document) return failure(files_unsound, document.error());
            whole.own.push_back({path, std::move(*document)});
        }
    }
    auto ledger = opened->store.export_all();
    if (!ledger) return failure(store_failed, ledger.error());
    whole.ledger = std::move(*ledger);
    return exchange::write_whole(whole);
}

tl::expected<std::string, Failure> stock_table(const Context& context) {
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    return exchange::write_stock_csv(kitchen->lots, *kitchen);
}

/// Into a new file, or to standard output where none is named. `what`: "The stock is".
Outcome give(const Context& context, const std::string& file, const char* what,
             const std::function<tl::expected<std::string, Failure>()>& write) {
    std::error_code error;
    if (!file.empty() && fs::exists(file, error)) {
        return failure(not_understood,
                       {{file, "is there already", "a new file", "choose another name, or move it away"}});
    }
    const auto text = write();
    if (!text) return tl::make_unexpected(text.error());
    if (file.empty()) {
        print_document(*text);
        return answered;
    }
    if (const auto written = exchange::write_file(file, *text); !written) return failure(store_failed, written.error());
    context.answer([&](const show::Manner&) { return fmt::format("{} in {}.\n", what, file); },
                   [&] {
                       return show::Json{{"file", file}};
                   });
    return answered;
}

Outcome run(const Arguments& arguments, const Context& context) {
    return give(context, arguments.file, arguments.stock_csv ? "The stock is" : "The whole kitchen is",
                [&] { return arguments.stock_csv ? stock_table(context) : whole_kitchen(context); });
}

struct RecipeArguments {
    std::vector<std::string> dishes;
    std::string file;
    bool all = false;
};

tl::expected<std::vector<cookbook::DishId>, Failure> dishes_meant(const RecipeArguments& arguments,
                                                                  const kitchen::Kitchen& kitchen) {
    std::vector<cookbook::DishId> dishes;
    const auto names = split_at_commas(joined(arguments.dishes));
    if (arguments.all == !names.empty()) {
        return failure(not_understood, {{"export recipe", arguments.all ? "dishes and --all" : "no dish",
                                         "dishes with commas between, or --all", std::nullopt}});
    }
    for (const std::string& words : names) {
        const auto dish = dish_meant(kitchen, words);
        if (!dish) return tl::make_unexpected(dish.error());
        dishes.push_back(*dish);
    }
    const auto all = static_cast<std::uint32_t>(kitchen.cookbook().dishes().size());
    for (std::uint32_t i = 0; arguments.all && i < all; ++i) {
        if (!kitchen.cookbook().dishes()[i].ingredients.empty()) dishes.push_back(cookbook::DishId{i});
    }
    return dishes;
}

Outcome run_recipe(const RecipeArguments& arguments, const Context& context) {
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto dishes = dishes_meant(arguments, *kitchen);
    if (!dishes) return tl::make_unexpected(dishes.error());
    return give(
        context, arguments.file, dishes->size() == 1 ? "The recipe is" : "The recipes are",
        [&]() -> tl::expected<std::string, Failure> { return exchange::write_recipes(*dishes, *kitchen->knowledge); });
}

void add_export_recipe(CLI::App& parent, Chosen& chosen) {
    auto* command = parent.add_subcommand("recipe", "dishes for other programs (schema.org JSON-LD)");
    auto arguments = std::make_shared<RecipeArguments>();
    command->add_option("dish", arguments->dishes, "dishes, with commas between: meat loaf, lasagne");
    command->add_flag("--all", arguments->all, "every dish of the cookbook");
    command->add_option("--to", arguments->file, "a new file (else standard output)")->type_name("FILE");
    run_with(*command, chosen, arguments, run_recipe);
}

}  // namespace

void add_export(CLI::App& app, Chosen& chosen) {
    auto* command =
        app.add_subcommand("export", "the whole kitchen as one JSON document, its stock as CSV, or recipes");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("file", arguments->file, "a new file (else standard output)")->type_name("FILE");
    command->add_flag("--stock-csv", arguments->stock_csv, "what is in stock, as a table for spreadsheets");
    command->callback([command, arguments, &chosen] {
        if (!command->get_subcommands().empty()) return;  // that one says what is run
        chosen.run = [arguments](const Context& context) { return run(*arguments, context); };
    });
    add_export_recipe(*command, chosen);
}

}  // namespace samebase::cli
