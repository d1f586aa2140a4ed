// What the household commands share: an edit of kitchen.json that is checked, written with the ledger, and said in a
// line.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "exchange/household_edit.hpp"
#include "household_words.hpp"
#include "ledger.hpp"

namespace samebase::cli {

/// How an edit is said.
struct Edited {
    std::string line;
    std::vector<std::string> notes{};
};
using Edit = std::function<Understood<Edited>(const kitchen::At& at, exchange::HouseholdDocument& document)>;

/// Reads kitchen.json, edits it, checks what comes of it, and writes it.
[[nodiscard]] Outcome edit_household(const Context& context, const How& how, const Edit& edit);

/// The text of kitchen.json as a change that leads to it, where a kitchen of it is sound. Lots stay in places.
[[nodiscard]] Understood<kitchen::Change> household_change(const kitchen::At& at, std::string was, std::string becomes,
                                                           Edited said);

/// A command with words and an edit: `add(command, arguments)` adds its options.
struct HouseholdWords {
    std::vector<std::string> words;
    How how;
};

void add_household_people(CLI::App& household, Chosen& chosen);
void add_household_house(CLI::App& household, Chosen& chosen);
void add_household_remove(CLI::App& household, Chosen& chosen);
void add_household_edit(CLI::App& household, Chosen& chosen);

}  // namespace samebase::cli
