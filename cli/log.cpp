// samebase log: what happened, newest first.
#include "show/log.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "ledger.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> words;
    int limit = 15;
};

std::string lower(std::string text) {
    for (char& c : text) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return text;
}

/// Whether every word stands in the line, as it is or as a part of a word.
bool holds(const std::string& line, const std::vector<std::string>& words) {
    const std::string in = lower(line);
    return std::all_of(words.begin(), words.end(),
                       [&](const std::string& word) { return in.find(lower(word)) != std::string::npos; });
}

Outcome run(const Arguments& arguments, const Context& context) {
    constexpr int all = 1'000'000'000;
    const auto limit = static_cast<std::size_t>(arguments.limit);
    const auto folder = context.folder();
    if (!folder) return tl::make_unexpected(folder.error());
    auto store = store::Store::open(store::file_in(*folder), store::Mode::read);
    if (!store) return failure(store_failed, store.error());
    if (const auto today = context.today()) tell_of_future(*store, *today);
    const auto log = store->log(arguments.words.empty() ? arguments.limit : all);
    if (!log) return failure(store_failed, log.error());
    std::vector<show::LogRow> rows;
    for (const auto& [command, undone_by] : *log) {
        if (rows.size() == limit) break;
        if (!holds(command.line, arguments.words)) continue;
        rows.push_back({command.number, command.day, command.name, command.line, command.undoes, undone_by});
    }
    if (rows.empty() && !arguments.words.empty())
        return failure(not_understood,
                       {{"log", "nothing that happened names that", "words of its line", std::nullopt}});
    context.answer([&](const show::Manner&) { return show::text(rows); }, [&] { return show::json(rows); });
    return answered;
}

}  // namespace

void add_log(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("log", "what happened, newest first: log, log mince");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("words", arguments->words, "only what names these");
    command->add_option("--limit", arguments->limit, "so many of the newest")
        ->check(CLI::Range(1, 1'000'000))
        ->capture_default_str();
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
