// The balance of a kitchen over days: every planned meal and standing use against the stock, what the plan leaves and
// what can be bought. One component an ingredient; changing one dish recomputes only the components that it touches.
#pragma once

#include <map>
#include <memory>
#include <span>
#include <vector>

#include "basics/day.hpp"
#include "flow/component.hpp"
#include "flow/cooking.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::flow {

/// Why a want is there, beside the component's wants.
struct Reason {
    std::optional<cookbook::DishId> dish;  ///< nothing: a standing use
    kitchen::Meal meal = kitchen::Meal::dinner;

    friend bool operator==(const Reason&, const Reason&) = default;
};

struct Part {
    Component component;
    std::vector<Reason> reasons;  ///< by want
    Outcome outcome;
};

struct Totals {
    basics::Money unmet;
    basics::Money spent;
    basics::Money tossed;
    basics::Money kept;

    friend bool operator==(const Totals&, const Totals&) = default;
};

struct Balance {
    basics::Span span;
    std::vector<Cooking> cookings;  ///< in the order of (day, meal)
    std::vector<std::shared_ptr<const Part>>
        parts;  ///< in the order of ingredients; those without stock and wants are left out
    Totals totals;

    [[nodiscard]] const Part* part(catalogue::IngredientId ingredient) const;
};

/// The price of what is unmet in one component.
[[nodiscard]] basics::Money unmet_price(const Component& component, const Outcome& outcome);

/// What has been solved, for an asker that compares many plans that want much the same. For balances of one effort.
class Memory {
  public:
    /// Nothing: this component has not been met.
    [[nodiscard]] const Outcome* outcome(const Component& component) const;
    void keep(std::shared_ptr<const Part> part);

  private:
    std::map<catalogue::IngredientId, std::vector<std::shared_ptr<const Part>>> parts_;
};

class Balancer {
  public:
    /// Reads the stock of the kitchen on the first day of the span. The kitchen outlives the balancer. Where many
    /// balances are compared, all are made with the same effort. A span of more than six weeks is balanced quickly,
    /// whatever the effort: outcomes that are not the best for sure say so.
    Balancer(const kitchen::Kitchen& kitchen, basics::Span span, Effort effort = Effort::exact);

    /// The balance of these meals and the standing uses. An ingredient of `buy_at_once` may also be bought on the first
    /// day, whether or not that is a shopping day.
    [[nodiscard]] Balance balance(std::vector<Cooking> cookings,
                                  std::span<const catalogue::IngredientId> buy_at_once = {}) const;

    /// The same as balance(cookings, buy_at_once), where `before` is a balance of this balancer without anything bought
    /// at once: only the ingredients of meals that are in one of the two and not in the other, and those bought at
    /// once, are looked at. With a memory, none of them is solved twice.
    [[nodiscard]] Balance rebalance(const Balance& before, std::vector<Cooking> cookings,
                                    std::span<const catalogue::IngredientId> buy_at_once = {},
                                    Memory* memory = nullptr) const;

    /// The meals of the kitchen's plan within the span.
    [[nodiscard]] std::vector<Cooking> planned() const;

    [[nodiscard]] basics::Span span() const { return span_; }

    /// What there is of an ingredient and what can be bought of it, without wants.
    [[nodiscard]] const Component& stock(catalogue::IngredientId id) const { return stock_[id.index()]; }
    /// Whether amounts of it count: not those of a staple that is there, nor of what is there in a rough amount.
    [[nodiscard]] bool counted(catalogue::IngredientId id) const { return !uncounted_[id.index()]; }

  private:
    struct Draft;
    [[nodiscard]] std::vector<catalogue::IngredientId> all_ingredients() const;
    [[nodiscard]] std::vector<Draft> drafts(std::span<const Cooking> cookings,
                                            std::span<const catalogue::IngredientId> of,
                                            std::span<const catalogue::IngredientId> buy_at_once) const;
    [[nodiscard]] std::shared_ptr<const Part> solved(Draft draft, Memory* memory = nullptr) const;

    const kitchen::Kitchen* kitchen_;
    basics::Span span_;
    Effort effort_;
    std::vector<Component> stock_;  ///< by ingredient handle: units and offer, no wants
    std::vector<bool> uncounted_;   ///< by ingredient handle: a staple that is there, or there in a rough amount
};

/// The later of the second shopping day and the seventh day: how far worth looks.
[[nodiscard]] basics::Day horizon(const kitchen::Kitchen& kitchen, basics::Day today);

}  // namespace samebase::flow
