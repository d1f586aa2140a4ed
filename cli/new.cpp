// samebase new DIR: starts an empty kitchen by asking a few questions on a terminal, or from options.
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "show/json.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

struct Arguments {
    std::string folder;
    std::string name;
    std::string currency = "AUD";
    std::string hemisphere = "south";
    std::string measures = "australian-metric";
    std::vector<std::string> people;
    std::vector<std::string> shopping_days;
};

/// An identifier from a name: letters and figures in lower case, the rest hyphens.
std::string id_of(const std::string& name) {
    std::string id;
    for (const char c : name) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (letter) {
            id += c;
        } else if (c >= 'A' && c <= 'Z') {
            id += static_cast<char>(c - 'A' + 'a');
        } else if (!id.empty() && id.back() != '-') {
            id += '-';
        }
    }
    while (!id.empty() && id.back() == '-') id.pop_back();
    return id.empty() ? "someone" : id;
}

std::string ask(const std::string& question, const std::string& otherwise) {
    std::cerr << question << (otherwise.empty() ? ": " : fmt::format(" [{}]: ", otherwise));
    std::string line;
    std::getline(std::cin, line);
    return line.empty() ? otherwise : line;
}

std::vector<std::string> split(const std::string& text) {
    std::vector<std::string> parts;
    std::string part;
    for (const char c : text + ",") {
        if (c != ',') {
            if (c != ' ' || !part.empty()) part += c;
            continue;
        }
        while (!part.empty() && part.back() == ' ') part.pop_back();
        if (!part.empty()) parts.push_back(part);
        part.clear();
    }
    return parts;
}

void ask_what_is_missing(Arguments& arguments) {
    if (arguments.name.empty()) arguments.name = ask("What is this kitchen called", "Our kitchen");
    if (arguments.people.empty()) arguments.people = split(ask("Who eats here (names with commas)", ""));
    if (arguments.shopping_days.empty()) arguments.shopping_days = split(ask("Shopping days (sat, wed ...)", "sat"));
}

nlohmann::ordered_json document(const Arguments& arguments) {
    using Json = nlohmann::ordered_json;
    const Json both = {"lunch", "dinner"};
    Json home = Json::object();
    for (const auto* day : {"mon", "tue", "wed", "thu", "fri", "sat", "sun"}) home[day] = both;
    Json people = Json::array();
    std::vector<std::string> ids;
    for (const std::string& name : arguments.people) {
        std::string id = id_of(name);
        while (std::find(ids.begin(), ids.end(), id) != ids.end()) id += "-2";
        ids.push_back(id);
        people.push_back(
            {{"id", id}, {"name", name}, {"avoids", Json::array()}, {"dislikes", Json::array()}, {"home", home}});
    }
    const auto place = [](const char* id, const char* name, const char* kind) {
        return Json{{"id", id}, {"name", name}, {"kind", kind}};
    };
    return {
        {"samebase", 1},
        {"name", arguments.name.empty() ? "Our kitchen" : arguments.name},
        {"currency", arguments.currency},
        {"hemisphere", arguments.hemisphere},
        {"measures", arguments.measures},
        {"people", people},
        {"places",
         Json::array({place("far-freezer", "far freezer", "far-freezer"),
                      place("near-freezer", "near freezer", "near-freezer"), place("fridge", "fridge", "fridge"),
                      place("crisper", "crisper", "crisper"), place("pantry", "pantry", "pantry")})},
        {"standing_nights", Json::array()},
        {"shopping_days", arguments.shopping_days.empty() ? std::vector<std::string>{"sat"} : arguments.shopping_days}};
}

Outcome run(Arguments arguments, const Context& context) {
    const auto knowledge = context.knowledge(false);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    const fs::path folder = arguments.folder;
    std::error_code error;
    if (fs::exists(folder / "kitchen.json", error)) {
        return failure(not_understood,
                       {{arguments.folder, "there is a kitchen here already", "a new or empty folder", std::nullopt}});
    }
    if (isatty(STDIN_FILENO) != 0 && isatty(STDERR_FILENO) != 0) ask_what_is_missing(arguments);
    const auto kitchen = document(arguments);
    const auto household = exchange::read_household(kitchen, "kitchen.json", **knowledge);
    if (!household) return failure(not_understood, household.error());
    fs::create_directories(folder, error);
    if (error)
        return failure(store_failed, {{arguments.folder, error.message(), "a folder that can be made", std::nullopt}});
    const auto written = exchange::write_file(folder / "kitchen.json", kitchen.dump(2) + "\n");
    if (!written) return failure(store_failed, written.error());
    context.answer(
        [&](const show::Manner&) {
            return fmt::format(
                "An empty kitchen for {} is in {}: kitchen.json says who eats, where food is kept, and the rules; edit "
                "it freely.\n",
                arguments.people.size(), arguments.folder);
        },
        [&] {
            return show::Json{{"kitchen", arguments.folder}};
        });
    return answered;
}

}  // namespace

void add_new(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("new", "start an empty kitchen: asks on a terminal, or takes options");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("dir", arguments->folder, "the folder")->required()->type_name("DIR");
    command->add_option("--name", arguments->name, "what the kitchen is called");
    command->add_option("--people", arguments->people, "who eats here, with commas")->delimiter(',');
    command->add_option("--shopping", arguments->shopping_days, "shopping days, with commas: sat,wed")->delimiter(',');
    command->add_option("--currency", arguments->currency, "three letters (ISO 4217)");
    command->add_option("--hemisphere", arguments->hemisphere, "south or north, for seasons");
    command->add_option("--measures", arguments->measures, "australian-metric, metric-15, us-customary or imperial");
    command->callback([arguments, &chosen] {
        chosen.run = [arguments](const Context& context) { return run(*arguments, context); };
    });
}

}  // namespace samebase::cli
