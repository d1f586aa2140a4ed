// What may be typed, below the help of each command. Each example works in the demo kitchen;
// tests/commands/help_test.py runs them all.
#pragma once

#include <CLI/App.hpp>

namespace samebase::cli {

/// Puts the examples of each command, and of each of its own commands, below its help. After all are added.
void add_examples(CLI::App& app);

}  // namespace samebase::cli
