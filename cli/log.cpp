// samebase log: what happened, newest first.
#include "show/log.hpp"

#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "ledger.hpp"

namespace samebase::cli {

namespace {

Outcome run(int limit, const Context& context) {
    const auto folder = context.folder();
    if (!folder) return tl::make_unexpected(folder.error());
    auto store = store::Store::open(store::file_in(*folder), store::Mode::read);
    if (!store) return failure(store_failed, store.error());
    if (const auto today = context.today()) tell_of_future(*store, *today);
    const auto log = store->log(limit);
    if (!log) return failure(store_failed, log.error());
    std::vector<show::LogRow> rows;
    for (const auto& [command, undone_by] : *log) {
        rows.push_back({command.number, command.day, command.name, command.line, command.undoes, undone_by});
    }
    context.answer([&](const show::Manner&) { return show::text(rows); }, [&] { return show::json(rows); });
    return answered;
}

}  // namespace

void add_log(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("log", "what happened, newest first");
    constexpr int usual = 15;
    auto limit = std::make_shared<int>(usual);
    command->add_option("--limit", *limit, "so many of the newest")
        ->check(CLI::Range(1, 1'000'000))
        ->capture_default_str();
    run_with(*command, chosen, limit, run);
}

}  // namespace samebase::cli
