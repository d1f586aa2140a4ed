// samebase completion SHELL: scripts for shells, and the manual page, made from the table of commands. They are
// installed with the program.
#include <fmt/format.h>

#include <CLI/App.hpp>
#include <algorithm>

#include "command_table.hpp"
#include "commands.hpp"
#include "ledger.hpp"
#include "output.hpp"

namespace samebase::cli {

namespace {

using Table = std::vector<CommandRow>;

/// The first word of a command: what is completed behind "import" goes for "import recipe" too.
std::string first_word(const CommandRow& row) {
    return row.name.substr(0, row.name.find(' '));
}

/// What may follow the command: its options, and those of the commands within it with their names.
std::vector<OptionRow> behind(const Table& table, const std::string& command) {
    std::vector<OptionRow> all;
    for (const CommandRow& row : table) {
        if (first_word(row) != command) continue;
        if (row.name != command) all.push_back({row.name.substr(command.size() + 1), "", row.text});
        for (const OptionRow& option : row.options) {
            const bool there =
                std::any_of(all.begin(), all.end(), [&](const OptionRow& one) { return one.name == option.name; });
            if (!there) all.push_back(option);
        }
    }
    return all;
}

std::vector<const CommandRow*> commands(const Table& table) {
    std::vector<const CommandRow*> list;
    for (const CommandRow& row : table) {
        if (!row.name.empty() && row.name.find(' ') == std::string::npos) list.push_back(&row);
    }
    return list;
}

std::string names(const std::vector<OptionRow>& rows) {
    std::string words;
    for (const OptionRow& row : rows) words += (words.empty() ? "" : " ") + row.name;
    return words;
}

/// Within single quotes of a shell.
std::string quoted(const std::string& text) {
    std::string out;
    for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return "'" + out + "'";
}

bool takes_file(const OptionRow& option) {
    return option.value == "FILE" || option.value == "DIR";
}

std::string bash(const Table& table) {
    std::string all = names(table.front().options);
    std::string cases;
    for (const CommandRow* command : commands(table)) {
        all += " " + command->name;
        cases += fmt::format("        {}) words='{}' ;;\n", command->name, names(behind(table, command->name)));
    }
    return fmt::format(
        "# bash completion for samebase\n"
        "_samebase() {{\n"
        "    local current=${{COMP_WORDS[COMP_CWORD]}} command= words= i\n"
        "    for ((i = 1; i < COMP_CWORD; ++i)); do\n"
        "        case ${{COMP_WORDS[i]}} in\n"
        "            --kitchen | --today) ((++i)) ;;\n"
        "            -*) ;;\n"
        "            *)\n"
        "                command=${{COMP_WORDS[i]}}\n"
        "                break\n"
        "                ;;\n"
        "        esac\n"
        "    done\n"
        "    case $command in\n"
        "        '') words='{}' ;;\n"
        "{}"
        "    esac\n"
        "    mapfile -t COMPREPLY < <(compgen -W \"$words\" -- \"$current\")\n"
        "}}\n"
        "complete -o default -F _samebase samebase\n",
        all, cases);
}

std::string zsh_option(const OptionRow& option) {
    std::string plain = option.text;  // brackets would end it
    std::replace(plain.begin(), plain.end(), '[', '(');
    std::replace(plain.begin(), plain.end(), ']', ')');
    const std::string value =
        option.value.empty() ? "" : fmt::format(":{}:{}", option.value, takes_file(option) ? "_files" : "");
    return quoted(fmt::format("{}[{}]{}", option.name, plain, value));
}

std::string zsh(const Table& table) {
    std::string list;
    std::string cases;
    for (const CommandRow* command : commands(table)) {
        list += fmt::format("        {}\n", quoted(fmt::format("{}:{}", command->name, command->text)));
        cases += fmt::format("                {}) _arguments", command->name);
        std::string inner;
        for (const OptionRow& row : behind(table, command->name)) {
            if (row.name.starts_with("--")) {
                cases += " " + zsh_option(row);
            } else {
                inner += (inner.empty() ? "" : " ") + row.name;
            }
        }
        cases += inner.empty() ? " '*: :_files' ;;\n" : fmt::format(" '1: :({})' '*: :_files' ;;\n", inner);
    }
    std::string options;
    for (const OptionRow& option : table.front().options) options += " " + zsh_option(option);
    return fmt::format(
        "#compdef samebase\n"
        "_samebase() {{\n"
        "    local context state state_descr line\n"
        "    typeset -A opt_args\n"
        "    local -a commands\n"
        "    commands=(\n{}    )\n"
        "    _arguments -C{} '1: :->command' '*:: :->rest'\n"
        "    case $state in\n"
        "        command) _describe command commands ;;\n"
        "        rest)\n"
        "            case $words[1] in\n{}"
        "            esac\n"
        "            ;;\n"
        "    esac\n"
        "}}\n"
        "_samebase \"$@\"\n",
        list, options, cases);
}

std::string fish_option(const OptionRow& option, const std::string& where) {
    if (!option.name.starts_with("--"))
        return fmt::format("complete -c samebase{} -a {} -d {}\n", where, option.name, quoted(option.text));
    const char* value = option.value.empty() ? "" : takes_file(option) ? " -r" : " -x";
    return fmt::format("complete -c samebase{} -l {}{} -d {}\n", where, option.name.substr(2), value,
                       quoted(option.text));
}

std::string fish(const Table& table) {
    std::string out = "# fish completion for samebase\n";
    for (const OptionRow& option : table.front().options) out += fish_option(option, "");
    for (const CommandRow* command : commands(table)) {
        out += fmt::format("complete -c samebase -n __fish_use_subcommand -f -a {} -d {}\n", command->name,
                           quoted(command->text));
        const std::string where = fmt::format(" -n '__fish_seen_subcommand_from {}'", command->name);
        for (const OptionRow& row : behind(table, command->name)) out += fish_option(row, where);
    }
    return out;
}

Outcome run(const CLI::App& app, const std::string& shell) {
    const auto table = command_table(app);
    const auto script = shell == "man" ? std::optional(manual_page(table)) : completion(table, shell);
    if (!script) {
        return failure(not_understood,
                       {{"completion", fmt::format("'{}'", shell), "bash, zsh, fish or man", std::nullopt}});
    }
    print_document(*script);
    return answered;
}

}  // namespace

std::optional<std::string> completion(const Table& table, std::string_view shell) {
    if (shell == "bash") return bash(table);
    if (shell == "zsh") return zsh(table);
    if (shell == "fish") return fish(table);
    return std::nullopt;
}

void add_completion(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("completion", "the script for your shell, or the manual page: completion bash");
    auto shell = std::make_shared<std::string>();
    command->add_option("shell", *shell, "bash, zsh, fish or man")->required();
    command->callback(
        [&app, shell, &chosen] { chosen.run = [&app, shell](const Context&) { return run(app, *shell); }; });
}

}  // namespace samebase::cli
