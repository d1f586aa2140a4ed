// What answers say of a cooking, whatever the question: the lots that it uses, what stands in for what, what is bought.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "basics/day.hpp"
#include "basics/money.hpp"
#include "catalogue/role.hpp"
#include "measure/amount.hpp"
#include "stock/lot.hpp"

namespace samebase::flow {

struct LotUse {
    catalogue::IngredientId ingredient;
    stock::LotNumber lot = 0;
    measure::Amount amount;
    stock::State state = stock::State::fresh;
    std::optional<basics::Day> use_by;
    std::optional<basics::Day> best_by;
    bool use_first = false;  ///< nothing in the plan would have eaten it in time
};

struct StandInUse {
    catalogue::IngredientId replaced;
    std::vector<std::pair<catalogue::IngredientId, measure::Amount>> use;
    catalogue::Role role = catalogue::Role::main;
    double fit = 0;
    std::string note;
};

/// A line of a dish of which less or more is cooked than it says, within what the recipe bears.
struct Scaled {
    catalogue::IngredientId ingredient;
    int thousandths = 1000;  ///< of what the dish says, rounded
    measure::Amount amount;  ///< with the scaling
};

struct Purchase {
    catalogue::IngredientId ingredient;
    measure::Amount amount;
    int packs = 0;
    basics::Money price;
};

}  // namespace samebase::flow
