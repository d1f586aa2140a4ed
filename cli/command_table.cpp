#include "command_table.hpp"

#include <CLI/Option.hpp>

namespace samebase::cli {

namespace {

CommandRow row_of(const CLI::App& command, const std::string& name) {
    CommandRow row{name, command.get_description(), {}, {}};
    for (const CLI::Option* option : command.get_options()) {
        const bool takes_value = option->get_items_expected_max() > 0;
        const std::string type = option->get_type_name();  // a check's bounds stand behind a colon
        const OptionRow one{option->get_lnames().empty() ? "" : "--" + option->get_lnames().front(),
                            takes_value ? type.substr(0, type.find(':')) : "", option->get_description()};
        if (one.name.empty()) {
            row.words.push_back({option->get_name(true), "", one.text});
        } else {
            row.options.push_back(one);
        }
    }
    return row;
}

void add(const CLI::App& command, const std::string& name, std::vector<CommandRow>& table) {
    table.push_back(row_of(command, name));
    for (const CLI::App* inner : command.get_subcommands([](const CLI::App*) { return true; }))
        add(*inner, name.empty() ? inner->get_name() : name + " " + inner->get_name(), table);
}

}  // namespace

std::vector<CommandRow> command_table(const CLI::App& app) {
    std::vector<CommandRow> table;
    add(app, "", table);
    return table;
}

}  // namespace samebase::cli
