// The question of ask/lunches.hpp as plain numbers: open lunches, what each may come from, and what there is of each
// thing. Built once; the search and the programme look at nothing else.
//
// Money here is in thousandths of the smallest unit. Times count two a day: lunch 2 x day, dinner 2 x day + 1.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "ask/lunches.hpp"
#include "flow/balance.hpp"

namespace samebase::ask::detail {

/// Times as bits.
using LunchTimes = std::uint64_t;
inline constexpr int never_time = 1'000'000;

/// What is left of one unit of stock once everything that stands has eaten.
struct LunchBatch {
    std::int64_t amount = 0;
    LunchTimes when = 0;
    flow::Slot last = flow::never;
    stock::LotNumber lot = 0;
    std::optional<cookbook::DishId> dish;  ///< for what is cooked: as what
    std::optional<basics::Day> made;       ///< by a dinner that is yet to be cooked
    bool danger = false;
    basics::Money price;  ///< of the amount
};

struct LunchThing {
    catalogue::IngredientId ingredient;
    std::vector<LunchBatch> batches;  ///< what ends first first, then by lot
    std::int64_t danger = 0;
    std::int64_t keeps = 0;
    basics::Money danger_price;
    basics::Money keeps_price;
    double worth = 0;       ///< thousandths of money for an amount that is saved
    double cost = 0;        ///< and for one that would keep
    std::int64_t pack = 0;  ///< 0: cannot be bought
    std::int64_t pack_price = 0;
    std::int64_t plan_buys = 0;  ///< what the plan lacks of it from `buys_from` on

    [[nodiscard]] std::int64_t there_at(int time) const;
    /// Packs beyond the plan's own, where lunches lack so much.
    [[nodiscard]] std::int64_t packs_for(std::int64_t lacks) const;
    /// What the plan's own packs and so many more leave for lunches.
    [[nodiscard]] std::int64_t bought_with(std::int64_t packs) const;
};

/// Frozen packs of one lot with as many serves each.
struct LunchPack {
    catalogue::IngredientId ingredient;
    stock::LotNumber lot = 0;
    cookbook::DishId dish;
    std::int64_t size = 0;  ///< in thousandths of a serve
    std::int64_t price = 0;
    int count = 0;
    int first = 0;  ///< the first time that one can be eaten
};

struct LunchNeed {
    int thing = 0;
    std::int64_t amount = 0;

    friend bool operator==(const LunchNeed&, const LunchNeed&) = default;
};

/// Something that gives lunches: a leftover on a day, a kind of frozen pack on a day, a dinner that may be cooked
/// larger, a dish cooked on a day.
struct LunchSource {
    LunchKind kind = LunchKind::leftover;
    basics::Day day;  ///< of the lunch; of the dinner that is larger
    cookbook::DishId dish;
    std::optional<catalogue::IngredientId> of;  ///< what is left of it
    int time = 0;                               ///< at which it eats
    std::vector<std::vector<LunchNeed>> needs;  ///< by serves, from none on; each in the order of things
    int minutes = 0;                            ///< of the dish that is cooked
    int pack = -1;                              ///< position in LunchGame::packs
    std::size_t row = 0;                        ///< of the plan, of the dinner that is larger
    std::vector<kitchen::LineSwap> swaps{};     ///< what is cooked in place of what is not there
};

struct LunchOption {
    int slot = 0;
    int source = -1;          ///< below 0: bought
    std::int64_t fixed = 0;   ///< what it is worth by itself
    std::int64_t lately = 0;  ///< of that, what having had it lately takes away
};

struct LunchSlot {
    basics::Day day;
    std::size_t person = 0;
    std::vector<int> options;  ///< the first is bought
    int refused = 0;           ///< sources of that day that this person may not have, or does not like
};

/// Serves of these sources that cannot be had together: the balance would lack something.
using LunchCut = std::vector<std::pair<int, int>>;

struct LunchGame {
    const kitchen::Kitchen* kitchen = nullptr;
    basics::Day today;
    basics::Span span;
    basics::Day horizon;
    int times = 0;
    int buys_from = never_time;  ///< the first time at which something that is bought can be eaten
    std::int64_t bought = 0;     ///< the price of a bought lunch
    std::int64_t minute = 0;
    std::int64_t again = 0;        ///< a person's part of having the same on the next day
    std::vector<LunchSlot> slots;  ///< in the order of (day, person)
    std::vector<LunchOption> options;
    std::vector<LunchSource> sources;
    std::vector<LunchPack> packs;
    std::vector<LunchThing> things;  ///< in the order of ingredients
    std::vector<int> position;       ///< by ingredient handle: in things; below 0: not counted
    std::vector<LunchStanding> standing;
    std::vector<LunchCut> cuts;
    std::unique_ptr<flow::Balancer> balancer;
    flow::Balance before;

    /// What it costs one person to have the two; nothing where they are not the same, or far enough apart.
    [[nodiscard]] std::int64_t again_cost(const LunchOption& a, const LunchOption& b) const;
    /// How long what a dinner leaves keeps: what the catalogue says, and no longer than the stricter guess.
    [[nodiscard]] int keeps_days(catalogue::IngredientId id) const;
    [[nodiscard]] int lunch_time(basics::Day day) const { return 2 * static_cast<int>((day - today).count()); }
};

inline constexpr int lunch_minutes = 20;  ///< a day, for nothing: common practice
inline constexpr int minutes_a_larger_serve = 2;

[[nodiscard]] std::unique_ptr<LunchGame> lunch_game(const kitchen::Kitchen& kitchen, basics::Day today,
                                                    basics::Span span);

}  // namespace samebase::ask::detail
