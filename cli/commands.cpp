#include "commands.hpp"

namespace samebase::cli {

void add_commands(CLI::App& app, Chosen& chosen) {
    add_tonight(app, chosen);
    add_else(app, chosen);
    add_check(app, chosen);
    add_new(app, chosen);
    add_demo(app, chosen);
}

}  // namespace samebase::cli
