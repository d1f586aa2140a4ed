// samebase backup FILE: a copy of the ledger as it is now, while others write.
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "ledger.hpp"
#include "show/json.hpp"

namespace samebase::cli {

namespace {

Outcome run(const std::string& file, const Context& context) {
    const auto folder = context.folder();
    if (!folder) return tl::make_unexpected(folder.error());
    std::error_code error;
    const std::filesystem::path parent = std::filesystem::absolute(file, error).parent_path();
    if (std::filesystem::exists(file, error)) {
        return failure(not_understood,
                       {{file, "is there already", "a new file", "choose another name, or move it away"}});
    }
    if (!std::filesystem::is_directory(parent, error)) {
        return failure(not_understood,
                       {{file, "its folder does not exist", "a new file in a folder that does", std::nullopt}});
    }
    auto store = store::Store::open(store::file_in(*folder), store::Mode::read);
    if (!store) return failure(store_failed, store.error());
    if (const auto done = store->backup(file); !done) return failure(store_failed, done.error());
    context.answer([&](const show::Manner&) { return fmt::format("A copy of the ledger is in {}.\n", file); },
                   [&] {
                       return show::Json{{"file", file}};
                   });
    return answered;
}

}  // namespace

void add_backup(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("backup", "a copy of the ledger (kitchen.db) in a new file, while others write");
    auto file = std::make_shared<std::string>();
    command->add_option("file", *file, "a new file")->required()->type_name("FILE");
    run_with(*command, chosen, file, run);
}

}  // namespace samebase::cli
