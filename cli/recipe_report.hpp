// How the dishes that were read from recipes are shown: each line as it was written and as it was read.
#pragma once

#include <string>
#include <vector>

#include "exchange/imported.hpp"
#include "exchange/recipe_dish.hpp"
#include "kitchen/kitchen.hpp"
#include "show/json.hpp"

namespace samebase::cli {

struct RecipeReport {
    const kitchen::Knowledge& knowledge;
    const std::vector<exchange::RecipeDish>& dishes;
    const exchange::Addition& addition;
    const basics::Problems& passed_over;
    bool dry_run = false;
};

/// The dishes and their lines; `asking`: nothing is written yet.
[[nodiscard]] std::string text(const RecipeReport& report);
/// Where they have been written, or that they have not.
[[nodiscard]] std::string last_line(const RecipeReport& report);
[[nodiscard]] show::Json json(const RecipeReport& report);

}  // namespace samebase::cli
