// Who may have which lunch, and whom the lunches that are planned serve.
#pragma once

#include <span>
#include <vector>

#include "ask/lunches.hpp"
#include "flow/cooking.hpp"

namespace samebase::ask::detail {

class LunchTable {
  public:
    /// The kitchen outlives the table.
    explicit LunchTable(const kitchen::Kitchen& kitchen);

    /// Cooked for them: with a serve apart where the dish defines one, and with these in place of what it asks for.
    [[nodiscard]] bool may_have_cooked(std::size_t person, cookbook::DishId dish,
                                       std::span<const kitchen::LineSwap> with = {}) const;
    /// The common serve, as it is left over; and whatever else any lot or planned dish of that leftover may hold.
    [[nodiscard]] bool may_have_left(std::size_t person, catalogue::IngredientId of, cookbook::DishId dish) const;
    /// Whether what is left of a dish is called that, and is not a by-product of cooking: a lunch as it is.
    [[nodiscard]] bool is_lunch(catalogue::IngredientId of) const { return is_lunch_[of.index()]; }
    /// A dish that leaves it; nothing where none does.
    [[nodiscard]] std::optional<cookbook::DishId> left_by(catalogue::IngredientId of) const {
        return left_by_[of.index()];
    }
    [[nodiscard]] const flow::Holds& holds() const { return holds_; }

    /// Those whom planned lunches of the span serve, in the order of (day, person).
    [[nodiscard]] std::vector<LunchStanding> standing(basics::Span span) const;

  private:
    [[nodiscard]] bool dislikes(const kitchen::Person& person, catalogue::IngredientId of) const;
    [[nodiscard]] bool dislikes_dish(const kitchen::Person& person, const cookbook::Dish& dish,
                                     const flow::Serve& serve, std::span<const kitchen::LineSwap> with) const;
    [[nodiscard]] bool common_serve_suits(const kitchen::Person& person, cookbook::DishId dish) const;
    void seat(basics::Day day, std::vector<LunchStanding>& seats) const;

    const kitchen::Kitchen& kitchen_;
    flow::Holds holds_;
    std::vector<bool> is_lunch_;                            ///< by ingredient handle
    std::vector<std::optional<cookbook::DishId>> left_by_;  ///< by ingredient handle: the first of the cookbook
    std::vector<std::vector<cookbook::DishId>> cooked_as_;  ///< by ingredient handle: by its lots and by the plan
};

}  // namespace samebase::ask::detail
