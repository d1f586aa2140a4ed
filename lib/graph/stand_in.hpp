// Stand-ins as they are stated: an ingredient, a family, or several ingredients together that can do another's work.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "catalogue/role.hpp"

namespace samebase::graph {

/// Parts per million: ratios and fits where they must be the same on every machine.
using Ppm = std::int64_t;
inline constexpr Ppm one = 1'000'000;

struct Part {
    catalogue::Of of;
    Ppm ratio = one;  ///< mass used for each unit of mass replaced
};

/// One statement. Two or more parts are a mixture, which is for one ingredient and made of ingredients.
struct Statement {
    catalogue::Of replaces;
    catalogue::RoleSet roles = catalogue::every_role;
    double fit = 0.5;  ///< in (0, 1); without meaning where `never` is set
    std::vector<Part> parts;
    bool both_ways = false;
    bool never = false;
    int adds_minutes = 0;  ///< how much longer the dish takes with it, from start to table
    std::string note;
};

}  // namespace samebase::graph
