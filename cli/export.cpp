// samebase export [FILE]: the whole kitchen as one JSON document, or its stock as CSV.
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "exchange/file.hpp"
#include "exchange/stock_csv.hpp"
#include "exchange/whole.hpp"
#include "ledger.hpp"
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

Outcome run(const Arguments& arguments, const Context& context) {
    std::error_code error;
    if (!arguments.file.empty() && fs::exists(arguments.file, error)) {
        return failure(not_understood,
                       {{arguments.file, "is there already", "a new file", "choose another name, or move it away"}});
    }
    const auto text = arguments.stock_csv ? stock_table(context) : whole_kitchen(context);
    if (!text) return tl::make_unexpected(text.error());
    if (arguments.file.empty()) {
        print_document(*text);
        return answered;
    }
    if (const auto written = exchange::write_file(arguments.file, *text); !written)
        return failure(store_failed, written.error());
    const char* what = arguments.stock_csv ? "The stock" : "The whole kitchen";
    context.answer([&](const show::Manner&) { return fmt::format("{} is in {}.\n", what, arguments.file); },
                   [&] {
                       return show::Json{{"file", arguments.file}};
                   });
    return answered;
}

}  // namespace

void add_export(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("export", "the whole kitchen as one JSON document, or its stock as CSV");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("file", arguments->file, "a new file (else standard output)")->type_name("FILE");
    command->add_flag("--stock-csv", arguments->stock_csv, "what is in stock, as a table for spreadsheets");
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
