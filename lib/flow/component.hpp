// One ingredient over the days of a plan: what there is of it and for how long, what asks for it, what can be bought,
// and how the one meets the other best. Every balance is a set of these.
//
// Time runs in slots, three a day: lunch, shopping, dinner. What is best, in this order: the least unmet (by price, an
// earlier day first), the least spent plus the price of what is tossed, the lowest lot numbers used.
#pragma once

#include <compare>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "basics/money.hpp"
#include "catalogue/catalogue.hpp"
#include "kitchen/household.hpp"
#include "stock/lot.hpp"

namespace samebase::flow {

/// Days from the first day of the balance x 3 + lunch 0, shopping 1, dinner 2.
using Slot = int;
inline constexpr Slot never = std::numeric_limits<Slot>::max();
[[nodiscard]] constexpr Slot lunch_of(int day) {
    return 3 * day;
}
[[nodiscard]] constexpr Slot shopping_of(int day) {
    return 3 * day + 1;
}
[[nodiscard]] constexpr Slot dinner_of(int day) {
    return 3 * day + 2;
}
[[nodiscard]] constexpr int day_of(Slot slot) {
    return slot / 3;
}

/// Something that is used as one: a loose lot, a pack of a lot, what a dish leaves.
struct Unit {
    stock::LotNumber lot = 0;  ///< 0: not in stock yet
    std::int64_t amount = 0;   ///< above 0
    basics::Money price{};     ///< of all of it
    Slot first = 0;  ///< from when and until when it can be used, both included; `never` where nothing ends it
    Slot last = never;
    int opened_days = -1;  ///< once opened it is good on that day and so many more; below 0: opening changes nothing
    int thaw_days = 0;  ///< above 0: frozen, and then opening changes nothing; taken out as a whole, it can be used so
                        ///< many days later at the earliest
    int thawed_days = 0;      ///< and on so many more
    bool cold_water = false;  ///< may be thawed in cold water instead, for the first day's dinner only

    friend bool operator==(const Unit&, const Unit&) = default;
};

/// What asks for an amount at a slot.
struct Want {
    Slot slot = 0;
    std::int64_t amount = 0;  ///< above 0

    friend bool operator==(const Want&, const Want&) = default;
};

/// What can be bought, in whole packs, at shopping slots.
struct Offer {
    std::int64_t pack = 0;  ///< above 0
    basics::Money price{};
    std::vector<Slot> slots{};  ///< in order
    int keeps_days = -1;  ///< after the day of shopping; below 0: longer than any balance (it can be frozen, or is dry)
    int opened_days = -1;
    bool frozen = false;  ///< raw meat and fish: what is not eaten at once is frozen on the day that it is bought

    friend bool operator==(const Offer&, const Offer&) = default;
};

struct Component {
    catalogue::IngredientId ingredient;
    std::vector<Unit> units;  ///< in the order of lots
    std::vector<Want> wants;  ///< in the order of slots
    std::optional<Offer> offer;
    basics::Money unit_price;  ///< of `unit_amount`: what unmet amounts are priced by
    std::int64_t unit_amount = 1;
    int days = 1;  ///< of the balance, at least 1

    friend bool operator==(const Component&, const Component&) = default;
};

/// What is decided: everything else follows, see carry_out().
struct Decisions {
    std::vector<int> ready_day;   ///< by unit: the first day that a frozen one can be used; below 0: left frozen
    std::vector<int> opened_day;  ///< by unit: the day it is opened; below 0: not
    std::vector<int> packs;       ///< by slot of the offer
    /// By pack bought, in the order of slots, the day that it is opened (below 0: not); empty where opening changes
    /// nothing.
    std::vector<int> bought_opened_day;

    friend bool operator==(const Decisions&, const Decisions&) = default;
};

struct Use {
    int want = 0;
    int unit = 0;  ///< position in Outcome::units
    std::int64_t amount = 0;

    friend bool operator==(const Use&, const Use&) = default;
};

/// A unit as the decisions leave it: packs that are bought follow those of the component.
struct Fate {
    Unit unit;
    Slot from = 0;  ///< as decided
    Slot to = never;
    bool bought = false;
    std::int64_t used = 0;
    std::int64_t tossed = 0;

    [[nodiscard]] std::int64_t left() const { return unit.amount - used - tossed; }
    /// What ends it: a unit that stays sealed or frozen keeps its own end.
    [[nodiscard]] Slot end() const { return from == never ? unit.last : to; }
};

/// What a component comes to. Smaller is better.
struct Value {
    std::vector<std::int64_t> unmet;  ///< amounts by day
    basics::Money cost;               ///< spent plus the price of what is tossed

    friend auto operator<=>(const Value&, const Value&) = default;
};

struct Outcome {
    Decisions decisions;
    std::vector<Fate> fates;
    std::vector<Use> uses;            ///< in the order of wants
    std::vector<std::int64_t> unmet;  ///< by want
    basics::Money spent;
    basics::Money tossed;  ///< the price of it
    basics::Money kept;    ///< the price of what is good at the end
    bool proved = true;    ///< whether no other decisions do better

    [[nodiscard]] Value value(const Component& component) const;
};

/// What decisions come to: exact, in integers. Of what may be used at a slot, what ends first goes first; equal ends go
/// by lot. Only where that tosses something while something cheaper is used, the cheaper is left: as much is met on
/// every day, and the price of what is tossed is the least that any order of use comes to (but for the rounding of its
/// lines).
[[nodiscard]] Outcome carry_out(const Component& component, const Decisions& decisions);

/// exact: proved best where there are few combinations, or at most eight units to decide of over some weeks; beyond
/// that the rule's decisions, bettered one by one and pair by pair. All of it within limits in work, so that it
/// repeats. quick: the rule, or all combinations where there are at most 400. Both say where the outcome is not proved.
enum class Effort : std::uint8_t { quick, exact };

/// The best outcome. First expired, first out where nothing has to be decided; a quick rule where a bound proves it
/// best; every combination where there are few; else an integer programme on the solver room, or exchanges.
[[nodiscard]] Outcome best(const Component& component, Effort effort = Effort::exact);

/// Invariants of an outcome: amounts are conserved for every unit and want, every use lies within its unit's time,
/// packs bought are whole, nothing is thawed sooner than it can be.
[[nodiscard]] std::optional<std::string> check(const Component& component, const Outcome& outcome);

}  // namespace samebase::flow
