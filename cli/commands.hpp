// The table of commands. Each has a file of its own that reads its arguments, loads, asks and shows.
#pragma once

#include <CLI/App.hpp>
#include <functional>
#include <string>

#include "context.hpp"

namespace samebase::cli {

/// Set by the command that was parsed; main runs it.
struct Chosen {
    std::function<Outcome(const Context&)> run;
};

void add_tonight(CLI::App& app, Chosen& chosen);
void add_recipe(CLI::App& app, Chosen& chosen);
void add_else(CLI::App& app, Chosen& chosen);
void add_plan(CLI::App& app, Chosen& chosen);
void add_week(CLI::App& app, Chosen& chosen);
void add_dishes(CLI::App& app, Chosen& chosen);
void add_names(CLI::App& app, Chosen& chosen);
void add_swap(CLI::App& app, Chosen& chosen);
void add_balance(CLI::App& app, Chosen& chosen);
void add_clear(CLI::App& app, Chosen& chosen);
void add_lunches(CLI::App& app, Chosen& chosen);
void add_thaw(CLI::App& app, Chosen& chosen);
void add_carry(CLI::App& app, Chosen& chosen);
void add_got(CLI::App& app, Chosen& chosen);
void add_moved(CLI::App& app, Chosen& chosen);
void add_opened(CLI::App& app, Chosen& chosen);
void add_out(CLI::App& app, Chosen& chosen);
void add_cooked(CLI::App& app, Chosen& chosen);
void add_ate(CLI::App& app, Chosen& chosen);
void add_tossed(CLI::App& app, Chosen& chosen);
void add_count(CLI::App& app, Chosen& chosen);
void add_list(CLI::App& app, Chosen& chosen);
void add_sheet(CLI::App& app, Chosen& chosen);
void add_prices(CLI::App& app, Chosen& chosen);
void add_lookback(CLI::App& app, Chosen& chosen);
void add_household(CLI::App& app, Chosen& chosen);
void add_stock(CLI::App& app, Chosen& chosen);
void add_undo(CLI::App& app, Chosen& chosen);
void add_log(CLI::App& app, Chosen& chosen);
void add_export(CLI::App& app, Chosen& chosen);
void add_import(CLI::App& app, Chosen& chosen);
void add_backup(CLI::App& app, Chosen& chosen);
void add_check(CLI::App& app, Chosen& chosen);
void add_demo(CLI::App& app, Chosen& chosen);
void add_new(CLI::App& app, Chosen& chosen);
void add_help(CLI::App& app, Chosen& chosen);
void add_completion(CLI::App& app, Chosen& chosen);

/// All of them, in the order of the help.
void add_commands(CLI::App& app, Chosen& chosen);

}  // namespace samebase::cli
