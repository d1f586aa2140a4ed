#include "commands.hpp"

#include "examples.hpp"

namespace samebase::cli {

void add_commands(CLI::App& app, Chosen& chosen) {
    add_tonight(app, chosen);
    add_recipe(app, chosen);
    add_else(app, chosen);
    add_week(app, chosen);
    add_plan(app, chosen);
    add_swap(app, chosen);
    add_balance(app, chosen);
    add_clear(app, chosen);
    add_lunches(app, chosen);
    add_thaw(app, chosen);
    add_carry(app, chosen);
    add_got(app, chosen);
    add_moved(app, chosen);
    add_opened(app, chosen);
    add_out(app, chosen);
    add_cooked(app, chosen);
    add_ate(app, chosen);
    add_tossed(app, chosen);
    add_count(app, chosen);
    add_list(app, chosen);
    add_sheet(app, chosen);
    add_prices(app, chosen);
    add_lookback(app, chosen);
    add_household(app, chosen);
    add_stock(app, chosen);
    add_dishes(app, chosen);
    add_names(app, chosen);
    add_undo(app, chosen);
    add_log(app, chosen);
    add_export(app, chosen);
    add_import(app, chosen);
    add_backup(app, chosen);
    add_check(app, chosen);
    add_new(app, chosen);
    add_demo(app, chosen);
    add_help(app, chosen);
    add_completion(app, chosen);
    add_examples(app);
}

}  // namespace samebase::cli
