// The commands and options as they are parsed, for whatever is made of them: completion and the manual page.
#pragma once

#include <CLI/App.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace samebase::cli {

struct OptionRow {
    std::string name;   ///< "--day"; of what needs no name ""
    std::string value;  ///< "DAY"; "" where it takes none
    std::string text;   ///< what it is for
};

struct CommandRow {
    std::string name;  ///< "else", "import recipe"; of the program itself ""
    std::string text;
    std::vector<OptionRow> options;
    std::vector<OptionRow> words;  ///< what is said without an option
};

/// The program itself first, then each command in the order of the help, and those within another behind it.
[[nodiscard]] std::vector<CommandRow> command_table(const CLI::App& app);

/// A script for bash, zsh or fish; nothing for another shell.
[[nodiscard]] std::optional<std::string> completion(const std::vector<CommandRow>& table, std::string_view shell);

/// The page for man(1), in roff.
[[nodiscard]] std::string manual_page(const std::vector<CommandRow>& table);

}  // namespace samebase::cli
