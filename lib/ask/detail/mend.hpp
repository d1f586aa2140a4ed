// Mends of a balance's findings: something that a cook can do, tried out before it is said.
#pragma once

#include <optional>

#include "ask/balance.hpp"
#include "ask/detail/worth.hpp"
#include "flow/cooking.hpp"

namespace samebase::ask::detail {

/// Looks for mends of one balance, cheapest for the cook first: for what lacks a stand-in, days exchanged, another
/// dish, a purchase; for what ends in the bin days exchanged, the freezer, another dish. No dinner is given up for a
/// finding of cents. The kitchen, the balancer and the balance outlive it.
class Mender {
  public:
    Mender(const kitchen::Kitchen& kitchen, basics::Day today, const flow::Balancer& balancer,
           const flow::Balance& before)
        : kitchen_(kitchen),
          today_(today),
          balancer_(balancer),
          before_(before),
          kept_before_(kept(kitchen, before)),
          holds_(flow::held_allergens(kitchen)) {}

    /// Nothing where none of the ways helps.
    [[nodiscard]] std::optional<Mend> mend(const flow::Finding& finding) const;

  private:
    /// No dinner is given up for less, and no stand-in may cost more than it saves by more.
    static constexpr basics::Money a_little{100};
    [[nodiscard]] static bool about_a_meal(const flow::Finding& finding);

    [[nodiscard]] std::optional<Mend> discard(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> stand_in(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> exchange_days(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> other_dish(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> dish_that_eats(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> freeze(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> buy(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> move(const flow::Finding& finding) const;

    [[nodiscard]] bool helps(const flow::Finding& finding, const kitchen::Kitchen& kitchen, const flow::Balance& after,
                             Mend& mend) const;
    [[nodiscard]] bool gone_or_smaller(const flow::Finding& finding, const kitchen::Kitchen& kitchen,
                                       const flow::Balance& after) const;
    [[nodiscard]] bool worth_its_cost(const flow::Finding& finding, const Mend& mend) const;
    [[nodiscard]] basics::Money net_cost(const kitchen::Kitchen& kitchen, const flow::Balance& after) const;
    [[nodiscard]] std::vector<std::pair<catalogue::IngredientId, basics::Money>> more_tossed(
        const flow::Balance& after) const;
    [[nodiscard]] std::optional<Mend> put_away(const flow::Finding& finding, const kitchen::Item& item,
                                               Mend mend) const;
    [[nodiscard]] bool nothing_else_lacks(const flow::Balance& after) const;
    [[nodiscard]] std::optional<Mend> tried(Mend mend, const flow::Finding& finding, const kitchen::Plan& takes,
                                            const kitchen::Plan& adds) const;
    [[nodiscard]] std::optional<Mend> dish_instead(const flow::Finding& finding, const kitchen::Plan& takes,
                                                   const kitchen::Planned& instead) const;
    /// The kitchen and its balance once a change is carried out.
    struct Changed {
        kitchen::Kitchen kitchen;
        flow::Balance balance;
    };
    [[nodiscard]] Changed carried_out(const kitchen::Change& change) const;
    [[nodiscard]] bool may_stand_on(const kitchen::Planned& row) const;
    [[nodiscard]] bool lately(cookbook::DishId dish, basics::Day day) const;
    [[nodiscard]] kitchen::At at() const { return {kitchen_, today_, next_lot_}; }

    const kitchen::Kitchen& kitchen_;
    basics::Day today_;
    const flow::Balancer& balancer_;
    const flow::Balance& before_;
    basics::Money kept_before_;
    flow::Holds holds_;
    stock::LotNumber next_lot_ = 1'000'000'000;  ///< of lots that are only tried out
};

}  // namespace samebase::ask::detail
