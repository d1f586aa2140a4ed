// samebase demo DIR: writes the shipped demo kitchen, its dates moved so that its stock is fresh today.
#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "kitchen/begin.hpp"
#include "show/json.hpp"
#include "store/store.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

basics::Result<nlohmann::json> shipped(const char* name) {
    return exchange::read_file(Context::data_folder() / "demo" / name).and_then([&](const std::string& text) {
        return exchange::parse(text, fmt::format("demo/{}", name));
    });
}

/// The days from the day that the demo is written around to today.
basics::days shift_of(const nlohmann::json& stock, basics::Day today) {
    const auto around = basics::read_iso_day(stock.value("around", ""));
    return around ? today - *around : basics::days{0};
}

/// Writes both files into a folder that has neither.
Outcome write(const fs::path& folder, const nlohmann::json& household_document, const nlohmann::json& stock_document,
              basics::days shift, basics::Day today, const std::shared_ptr<const kitchen::Knowledge>& knowledge) {
    const auto household = exchange::read_household(household_document, "demo/kitchen.json", *knowledge);
    if (!household) return failure(files_unsound, household.error());
    auto stock = exchange::read_stock(stock_document, "demo/stock.json", *knowledge, *household, shift);
    if (!stock) return failure(files_unsound, stock.error());
    auto store = store::Store::open(store::file_in(folder), store::Mode::write);
    if (!store) return failure(store_failed, store.error());
    const auto done =
        store::carry_out(*store, knowledge, *household, today,
                         [&](const kitchen::At& at, const store::State&) -> basics::Result<kitchen::Change> {
                             return kitchen::begin(at, stock->lots, stock->plan, stock->history);
                         });
    if (!done) return failure(store_failed, done.error());
    const auto written = exchange::write_file(folder / "kitchen.json", household_document.dump(2) + "\n");
    if (!written) return failure(store_failed, written.error());
    return answered;
}

Outcome run(const std::string& name, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto knowledge = context.knowledge(false);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    const auto household = shipped("kitchen.json");
    const auto stock = shipped("stock.json");
    if (!household) return failure(files_unsound, household.error());
    if (!stock) return failure(files_unsound, stock.error());
    const fs::path folder = name;
    std::error_code error;
    if (fs::exists(folder / "kitchen.json", error) || fs::exists(store::file_in(folder), error)) {
        return failure(not_understood,
                       {{name, "there is a kitchen here already", "a new or empty folder", std::nullopt}});
    }
    fs::create_directories(folder, error);
    if (error) return failure(store_failed, {{name, error.message(), "a folder that can be made", std::nullopt}});
    const auto shift = shift_of(*stock, *today);
    const auto outcome = write(folder, exchange::moved(*household, shift), *stock, shift, *today, *knowledge);
    if (!outcome) return outcome;
    context.answer(
        [&](const show::Manner&) {
            return fmt::format("The demo kitchen is in {}. Try: samebase --kitchen {} else beef mince\n", name, name);
        },
        [&] {
            return show::Json{{"kitchen", name}};
        });
    return answered;
}

}  // namespace

void add_demo(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("demo", "write the demo kitchen into a new folder, its stock fresh today");
    auto folder = std::make_shared<std::string>();
    command->add_option("dir", *folder, "the folder")->required()->type_name("DIR");
    command->callback(
        [folder, &chosen] { chosen.run = [folder](const Context& context) { return run(*folder, context); }; });
}

}  // namespace samebase::cli
