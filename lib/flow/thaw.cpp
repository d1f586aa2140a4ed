#include "flow/thaw.hpp"

#include <algorithm>
#include <tuple>

namespace samebase::flow {

namespace {

/// The first want that a unit serves; nothing where it serves none.
std::optional<int> first_want(const Outcome& outcome, std::size_t unit) {
    const auto found = std::find_if(outcome.uses.begin(), outcome.uses.end(),
                                    [&](const Use& use) { return static_cast<std::size_t>(use.unit) == unit; });
    return found == outcome.uses.end() ? std::nullopt : std::optional(found->want);
}

void add_moves(const kitchen::Kitchen& kitchen, const Balance& balance, const Part& part,
               std::vector<ThawMove>& moves) {
    for (std::size_t u = 0; u < part.component.units.size(); ++u) {
        const Fate& fate = part.outcome.fates[u];
        const stock::Lot* lot = kitchen.lot(fate.unit.lot);
        if (fate.unit.thaw_days <= 0 || fate.from == never || lot == nullptr) continue;
        const auto want = first_want(part.outcome, u);
        if (!want) continue;
        const int ready = part.outcome.decisions.ready_day[u];
        const auto w = static_cast<std::size_t>(*want);
        ThawMove move;
        move.lot = lot->number;
        move.ingredient = lot->ingredient;
        move.amount = fate.unit.amount;
        move.packs = 1;
        move.from = lot->place;
        move.method = ready == 0 ? stock::ThawMethod::cold_water : stock::ThawMethod::fridge;
        move.day = balance.span.first + basics::days{ready == 0 ? 0 : ready - fate.unit.thaw_days};
        move.for_day = balance.span.first + basics::days{day_of(part.component.wants[w].slot)};
        move.for_meal = part.reasons[w].meal;
        move.for_dish = part.reasons[w].dish;
        move.cook_by = balance.span.first + basics::days{day_of(fate.to)};
        const auto same = std::find_if(moves.begin(), moves.end(), [&](const ThawMove& other) {
            return other.lot == move.lot && other.day == move.day && other.for_day == move.for_day &&
                   other.for_meal == move.for_meal;
        });
        if (same == moves.end()) {
            moves.push_back(move);
        } else {
            same->amount += move.amount;
            ++same->packs;
        }
    }
}

}  // namespace

std::vector<ThawMove> thaw_moves(const kitchen::Kitchen& kitchen, const Balance& balance) {
    std::vector<ThawMove> moves;
    for (const auto& part : balance.parts) add_moves(kitchen, balance, *part, moves);
    std::stable_sort(moves.begin(), moves.end(), [](const ThawMove& a, const ThawMove& b) {
        return std::tuple(a.day, a.for_day, a.lot) < std::tuple(b.day, b.for_day, b.lot);
    });
    return moves;
}

}  // namespace samebase::flow
