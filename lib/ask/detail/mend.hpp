// Mends of a balance's findings: something that a cook can do, tried out before it is said.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "ask/detail/candidate.hpp"
#include "flow/findings.hpp"
#include "kitchen/changes.hpp"

namespace samebase::ask {

/// One thing to do. Every mend has been tried: with it the finding is gone, of no ingredient more goes unmet than
/// before, and where the finding was about waste, less is spent and tossed together.
struct Mend {
    enum class Kind : std::uint8_t {
        discard,        ///< what is past its use-by goes to the bin
        stand_in,       ///< the dish is cooked with something else in place of what lacks
        exchange_days,  ///< two meals change places
        other_dish,     ///< another dish that night
        freeze,         ///< to a freezer today
        buy,            ///< packs more, bought today
        move            ///< to another place
    };
    Kind kind = Kind::discard;
    stock::LotNumber lot = 0;             ///< discard, freeze, move
    std::optional<stock::PlaceId> place;  ///< freeze, move: where to
    basics::Day day;                      ///< of the meal
    std::optional<basics::Day> other;     ///< exchange_days: with which
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::optional<cookbook::DishId> dish;       ///< stand_in: the dish; other_dish: the new one
    std::optional<catalogue::IngredientId> of;  ///< stand_in: what is replaced; buy: what is bought
    std::vector<std::pair<catalogue::IngredientId, measure::Amount>> use;  ///< stand_in: by what
    double fit = 0;                                                        ///< stand_in
    int packs = 0;                                                         ///< buy
    std::optional<measure::Amount> amount;  ///< freeze, where it is not all of the lot; buy: of all packs
    basics::Money price;                    ///< buy
    kitchen::Change change;                 ///< what it does to the kitchen; empty for a stand-in
    std::vector<flow::LineSwap> swaps;      ///< stand_in: for cook()
};

namespace detail {

/// Looks for mends of one balance, cheapest for the cook first: for what lacks a stand-in, days exchanged, another
/// dish, a purchase; for what ends in the bin days exchanged, another dish, the freezer. The kitchen, the balancer and
/// the balance outlive it.
class Mender {
  public:
    Mender(const kitchen::Kitchen& kitchen, basics::Day today, const flow::Balancer& balancer,
           const flow::Balance& before)
        : kitchen_(kitchen),
          today_(today),
          balancer_(balancer),
          before_(before),
          holds_(flow::held_allergens(kitchen)) {}

    /// Nothing where none of the ways helps.
    [[nodiscard]] std::optional<Mend> mend(const flow::Finding& finding) const;

  private:
    [[nodiscard]] std::optional<Mend> discard(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> stand_in(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> exchange_days(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> other_dish(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> dish_that_eats(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> freeze(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> buy(const flow::Finding& finding) const;
    [[nodiscard]] std::optional<Mend> move(const flow::Finding& finding) const;

    [[nodiscard]] bool helps(const flow::Finding& finding, const flow::Balance& after) const;
    [[nodiscard]] bool helps(const flow::Finding& finding, const kitchen::Kitchen& kitchen,
                             const flow::Balance& after) const;
    [[nodiscard]] bool nothing_else_lacks(const flow::Balance& after) const;
    [[nodiscard]] std::optional<Mend> tried(Mend mend, const flow::Finding& finding, const kitchen::Plan& takes,
                                            const kitchen::Plan& adds) const;
    [[nodiscard]] bool may_stand_on(const kitchen::Planned& row) const;
    [[nodiscard]] bool lately(cookbook::DishId dish, basics::Day day) const;
    [[nodiscard]] kitchen::At at() const { return {kitchen_, today_, next_lot_}; }

    const kitchen::Kitchen& kitchen_;
    basics::Day today_;
    const flow::Balancer& balancer_;
    const flow::Balance& before_;
    flow::Holds holds_;
    stock::LotNumber next_lot_ = 1'000'000'000;  ///< of lots that are only tried out
};

}  // namespace detail

}  // namespace samebase::ask
