#include <fmt/format.h>

#include "command_table.hpp"

namespace samebase::cli {

namespace {

/// Text in roff: nothing in it is a request or an escape.
std::string roff(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '\\') {
            out += "\\e";
        } else if (c == '-') {
            out += "\\-";
        } else {
            out += c;
        }
    }
    return out.starts_with('.') || out.starts_with('\'') ? "\\&" + out : out;
}

std::string item(const std::string& head, const std::string& text) {
    return fmt::format(".TP\n{}\n{}\n", head, roff(text));
}

std::string option(const OptionRow& row) {
    const std::string value = row.value.empty() ? "" : fmt::format(" \\fI{}\\fR", roff(row.value));
    return item(fmt::format("\\fB{}\\fR{}", roff(row.name), value), row.text);
}

std::string words(const CommandRow& command) {
    std::string all;
    for (const OptionRow& word : command.words) all += fmt::format(" [\\fI{}\\fR]", roff(word.name));
    return all;
}

}  // namespace

std::string manual_page(const std::vector<CommandRow>& table) {
    const CommandRow& program = table.front();
    std::string out = fmt::format(
        ".TH SAMEBASE 1 \"\" \"samebase {}\" \"User Commands\"\n"
        ".SH NAME\nsamebase \\- recipe substitution and leftover matching for one household kitchen\n"
        ".SH SYNOPSIS\n\\fBsamebase\\fR [\\fIOPTIONS\\fR] [\\fICOMMAND\\fR [\\fIARGUMENTS\\fR]]\n"
        ".SH DESCRIPTION\n{}\nWith no command it answers what is for dinner. Words need no quotes: samebase else beef "
        "mince.\n.PP\nA manual for cooks is printed by \\fBsamebase help\\fR \\fITOPIC\\fR.\n.SH OPTIONS\n",
        SAMEBASE_VERSION, roff(program.text));
    for (const OptionRow& row : program.options) out += option(row);
    out += ".SH COMMANDS\n";
    for (const CommandRow& command : table) {
        if (command.name.empty()) continue;
        out += fmt::format(".SS \\fB{}\\fR{}\n{}\n", roff(command.name), words(command), roff(command.text));
        for (const OptionRow& word : command.words) {
            if (!word.text.empty()) out += item(fmt::format("\\fI{}\\fR", roff(word.name)), word.text);
        }
        for (const OptionRow& row : command.options) {
            if (row.name != "--help") out += option(row);
        }
    }
    out += ".SH EXIT STATUS\n";
    out += item("0", "answered");
    out += item("1", "answered, and something needs attention");
    out += item("2", "not understood");
    out += item("3", "the kitchen's files are unsound");
    out += item("4", "the store could not be read or written");
    out += ".SH ENVIRONMENT\n";
    out += item("SAMEBASE_KITCHEN", "the kitchen's folder, where --kitchen does not say it");
    out += item("SAMEBASE_DATA", "the folder of the shipped data, where it is not beside the program");
    out += item("NO_COLOR", "no colours, whatever it is set to");
    out += ".SH FILES\n";
    out += item("kitchen.json", "who the household is; its folder is the kitchen");
    out += item("kitchen.db", "stock, plan and history");
    return out;
}

}  // namespace samebase::cli
