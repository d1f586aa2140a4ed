// Foods of a national survey as ingredients in grams: United States Department of Agriculture, Food and Nutrient
// Database for Dietary Studies, 2003-2004; US public domain. The foods are not shipped: they are looked for in the
// folder that SAMEBASE_OUTSIDE_DATA names, else beside the repository.
#pragma once

#include <filesystem>
#include <istream>
#include <string_view>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "cookbook/cookbook.hpp"

namespace samebase::tests {

/// The fit of siblings in each kind of family of the survey's ingredients; the outer never above the inner.
struct SurveyFits {
    double group = 0;  ///< a food group: "Dairy and Egg Products"
    double head = 0;   ///< the first part of the description: "CHEESE"
    double kind = 0;   ///< the first two parts: "CHEESE,CHEDDAR"
};

/// Each food is a dish of one serve, its id the food code; every ingredient has the role `main`, and stands once in a
/// food.
struct Survey {
    catalogue::Catalogue catalogue;
    cookbook::Cookbook foods;
};

[[nodiscard]] std::filesystem::path survey_path();
[[nodiscard]] Survey read_survey(std::istream& file, const SurveyFits& fits);

/// The first three digits of the food code: the survey's own grouping of like foods.
[[nodiscard]] inline std::string_view food_group(const cookbook::Dish& food) {
    return std::string_view(food.id).substr(0, 3);
}

/// Half of the foods, every second one of each group in an order drawn with a fixed seed: true for the second half.
[[nodiscard]] std::vector<bool> second_half_of(const cookbook::Cookbook& foods);

}  // namespace samebase::tests
