// samebase help TOPIC: the manual, and the options of a command.
#include <fmt/format.h>

#include <CLI/App.hpp>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "exchange/file.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "show/json.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

struct Topic {
    std::string name;   ///< of the file, with spaces: "words"
    std::string title;  ///< its first line
    fs::path file;
};

/// In the order of the numbers that their files begin with: "1-house.txt".
tl::expected<std::vector<Topic>, Failure> topics() {
    std::vector<Topic> list;
    std::error_code error;
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator(Context::data_folder() / "manual", error)) {
        if (entry.path().extension() == ".txt") files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    for (const fs::path& file : files) {
        const auto text = exchange::read_file(file);
        if (!text) return failure(files_unsound, text.error());
        const std::string stem = file.stem().string();
        list.push_back({stem.substr(stem.find('-') + 1), text->substr(0, text->find('\n')), file});
    }
    if (list.empty()) {
        return failure(files_unsound, {{(Context::data_folder() / "manual").string(), "no manual", "its pages",
                                        "SAMEBASE_DATA names the folder of the shipped data"}});
    }
    return list;
}

std::string contents(const std::vector<Topic>& list) {
    std::string out = "The manual. samebase help TOPIC shows a page:\n";
    for (const Topic& topic : list) out += fmt::format("  {:<8} {}\n", topic.name, topic.title);
    return out + "The commands: samebase --help. One of them: samebase help COMMAND.\n";
}

Outcome show_text(const Context& context, const std::string& topic, const std::string& text) {
    context.answer([&](const show::Manner&) { return text; },
                   [&] {
                       return show::Json{{"topic", topic}, {"text", text}};
                   });
    return answered;
}

Outcome run(const CLI::App& app, const std::vector<std::string>& words, const Context& context) {
    const std::string wanted = joined(words);
    const auto list = topics();
    if (!list) return tl::make_unexpected(list.error());
    if (wanted.empty()) return show_text(context, "contents", contents(*list));
    for (const Topic& topic : *list) {
        if (topic.name != wanted) continue;
        const auto text = exchange::read_file(topic.file);
        if (!text) return failure(files_unsound, text.error());
        return show_text(context, topic.name, *text);
    }
    for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
        if (command->get_name() == wanted) return show_text(context, wanted, command->help());
    }
    std::string known;
    for (const Topic& topic : *list) known += topic.name + ", ";
    return failure(not_understood, {{"help", fmt::format("'{}'", wanted), known + "or a command", std::nullopt}});
}

}  // namespace

void add_help(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("help", "the manual: help day");
    auto words = std::make_shared<std::vector<std::string>>();
    command->add_option("topic", *words, "a page of the manual, or a command");
    command->callback([&app, words, &chosen] {
        chosen.run = [&app, words](const Context& context) { return run(app, *words, context); };
    });
}

}  // namespace samebase::cli
