// The role of an ingredient in a dish that says none, and the kinds of such a dish: as recipe_dish.hpp says.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "catalogue/role.hpp"
#include "exchange/recipe_dish.hpp"

namespace samebase::exchange::detail {

class Roles {
  public:
    explicit Roles(const kitchen::Knowledge& knowledge);

    struct Guess {
        catalogue::Role role;
        const char* from;
    };
    [[nodiscard]] Guess of(catalogue::IngredientId id) const;

  private:
    using Counts = std::array<int, catalogue::role_count>;

    const catalogue::Catalogue* catalogue_;
    std::vector<Counts> counts_;  ///< [ingredient][role]: dishes in which it has that role
};

/// Where nothing is main, the heaviest is.
void need_a_main(std::vector<DishLine>& lines, const catalogue::Catalogue& catalogue);

/// Kinds whose word stands in one of the texts, in the order of dish_kinds().
[[nodiscard]] std::vector<std::string> kinds_named(const std::vector<std::string>& texts);
/// The kind that most dishes on the base have, the first of several; none where there is no dish on it.
[[nodiscard]] std::vector<std::string> kind_on(cookbook::BaseId base, const cookbook::Cookbook& cookbook);

}  // namespace samebase::exchange::detail
