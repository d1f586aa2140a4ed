// Looking back: what has not been had for a while, what was had most, what was spent, tossed and saved; and when
// something was had last.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "basics/day.hpp"
#include "kitchen/kitchen.hpp"
#include "kitchen/past.hpp"

namespace samebase::ask {

/// What dinners are counted by.
using HadBy = std::variant<cookbook::DishId, cookbook::BaseId, catalogue::FamilyId>;

struct LastHad {
    HadBy what;
    basics::Day last;
    int times = 0;  ///< ever
};

struct LookbackMonth {
    basics::Day first;        ///< of the month, or of the year where the span is longer than two years
    int dinners = 0;          ///< that were written down
    basics::Money spent;      ///< with what follows
    basics::Money estimated;  ///< nobody said what was paid: by the household's prices
    basics::Money tossed;
};

struct TossedFor {
    std::string reason;  ///< "" where none was said
    basics::Money money;
    std::vector<catalogue::IngredientId> things;  ///< dearest first
};

struct Saved {
    int lunches = 0;           ///< eaten at home: by eaters of lunches that were had, and serves of leftovers
    basics::Money lunches_by;  ///< a bought lunch each, less what these cost
    basics::Money rescued;     ///< the price of what was eaten on its last day or the day before
};

struct LookbackAnswer {
    basics::Span span;
    bool by_year = false;
    int dinners = 0;
    basics::Money spent;
    basics::Money estimated;
    basics::Money tossed;
    /// Of dinners that were ever had and are not planned: not in the last four weeks. What was had more than once comes
    /// first, then by the last day, then by identifier.
    std::vector<LastHad> dishes;
    std::vector<LastHad> bases;     ///< the same
    std::vector<LastHad> families;  ///< of mains, the same
    std::vector<LastHad> most;      ///< within the span: times of it; most first, then the latest, then by identifier
    std::vector<LookbackMonth> months;
    std::vector<TossedFor> tossed_for;  ///< dearest first
    Saved saved;
};

/// Costs one walk over history and past.
[[nodiscard]] LookbackAnswer ask_lookback(const kitchen::Kitchen& kitchen, const kitchen::Past& past, basics::Day today,
                                          const basics::Span& span);

/// Several things under one word: "lamb".
struct AnyOf {
    std::string words;
    std::vector<catalogue::IngredientId> things;
};

/// When something was had: a dish, a dish of a base, or a dish with an ingredient or a member of a family that is more
/// than its seasoning.
using WhenOf = std::variant<cookbook::DishId, cookbook::BaseId, catalogue::FamilyId, AnyOf>;

struct WhenAnswer {
    WhenOf of;
    std::vector<kitchen::Had> had;     ///< newest first
    std::vector<basics::Day> planned;  ///< dinners and lunches to come, in order
};

[[nodiscard]] WhenAnswer ask_when(const kitchen::Kitchen& kitchen, basics::Day today, const WhenOf& of);

}  // namespace samebase::ask
