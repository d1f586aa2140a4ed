// samebase import recipe FILE, which hangs under `import`.
#pragma once

#include <CLI/App.hpp>

#include "commands.hpp"

namespace samebase::cli {

void add_import_recipe(CLI::App& import, Chosen& chosen);

}  // namespace samebase::cli
