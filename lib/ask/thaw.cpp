#include "ask/thaw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "ask/detail/ahead.hpp"
#include "ask/detail/entering.hpp"
#include "ask/detail/mend.hpp"
#include "flow/findings.hpp"
#include "stock/thaw.hpp"

namespace samebase::ask {

namespace {

using flow::ThawMove;
using Instead = TooLate::Instead;
using stock::ThawMethod;

std::int64_t milligrams(const kitchen::Kitchen& kitchen, catalogue::IngredientId id, std::int64_t amount) {
    const auto& thing = kitchen.catalogue()[id];
    const auto mass = catalogue::weight({thing.dimension, amount}, thing);
    return mass ? mass->value : 0;
}

/// Packs lie in the water side by side: the largest takes longest.
int water_minutes(const kitchen::Kitchen& kitchen, const ThawMove& move) {
    std::int64_t largest = 0;
    for (const std::int64_t weight : move.weights)
        largest = std::max(largest, milligrams(kitchen, move.ingredient, weight));
    return stock::cold_water_minutes(largest);
}

constexpr const char* fridge_rule =
    "In the fridge, at 5 degrees or below (Northern Territory Government): 24 hours for every 1.8 kg, at least 24 "
    "(USDA FSIS, restated by its extension services). Never on the bench (NSW Government).";
constexpr const char* water_rule =
    "In cold water: in a leakproof bag, the water changed every 30 minutes (University of Nebraska-Lincoln Extension "
    "citing USDA FSIS), never on the bench (NSW Government), and cooked at once.";
constexpr const char* microwave_rule =
    "In the microwave: cooked at once (Better Health Channel, Victoria); leftovers until they steam all through, 75 "
    "degrees (Food Safety Information Council).";
constexpr const char* again_rule =
    "What was thawed is not frozen again (Better Health Channel, Victoria, and Northern Territory Government, stricter "
    "than the United States); raw food may be once it is cooked.";

/// What must be known of a move.
std::vector<std::string> cautions(const kitchen::Kitchen& kitchen, const ThawMove& move, int minutes) {
    const auto& thing = kitchen.catalogue()[move.ingredient];
    if (move.method == ThawMethod::fridge) {
        return {fridge_rule,
                fmt::format("{} the {} by {}.", thing.kind == catalogue::Kind::raw ? "Cook" : "Use", thing.name,
                            basics::short_day(move.cook_by)),
                again_rule};
    }
    return {water_rule, fmt::format("The {} takes about {} minutes.", thing.name, minutes), again_rule};
}

/// The rules that the answer leans on, each once.
std::vector<std::string> rules(const ThawAnswer& answer) {
    const auto by = [&](ThawMethod method) {
        return std::any_of(answer.moves.begin(), answer.moves.end(),
                           [&](const TakeOut& out) { return out.move.method == method; });
    };
    const bool microwave = std::any_of(answer.late.begin(), answer.late.end(),
                                       [](const TooLate& late) { return late.instead == Instead::microwave; });
    std::vector<std::string> list;
    if (by(ThawMethod::fridge)) list.emplace_back(fridge_rule);
    if (by(ThawMethod::cold_water)) list.emplace_back(water_rule);
    if (microwave) list.emplace_back(microwave_rule);
    if (!list.empty()) list.emplace_back(again_rule);
    return list;
}

/// What a balance leaves frozen of one ingredient, pack by pack, the oldest lot first.
struct LeftFrozen {
    const stock::Lot* lot = nullptr;
    std::int64_t amount = 0;
    bool taken = false;
};

std::vector<LeftFrozen> left_frozen(const kitchen::Kitchen& kitchen, const flow::Part& part) {
    std::vector<LeftFrozen> list;
    for (const flow::Fate& fate : part.outcome.fates) {
        const stock::Lot* lot = kitchen.lot(fate.unit.lot);
        if (lot != nullptr && fate.unit.thaw_days > 0 && fate.from == flow::never)
            list.push_back({lot, fate.unit.amount});
    }
    std::stable_sort(list.begin(), list.end(), [](const LeftFrozen& a, const LeftFrozen& b) {
        return std::tuple(a.lot->arrived, a.lot->number) < std::tuple(b.lot->arrived, b.lot->number);
    });
    return list;
}

class Thawing {
  public:
    Thawing(const kitchen::Kitchen& kitchen, basics::Day today, basics::Span span)
        : kitchen_(kitchen),
          today_(today),
          balancer_(kitchen, {today, span.last}),
          balance_(balancer_.balance(balancer_.planned())),
          mender_(kitchen, today, balancer_, balance_) {
        answer_.span = {std::max(span.first, today), span.last};
        answer_.fridge = kitchen::place_of(kitchen.household, {stock::PlaceKind::fridge});
    }

    ThawAnswer answer() && {
        for (const ThawMove& move : flow::thaw_moves(kitchen_, balance_)) {
            if (answer_.span.contains(move.for_day)) add(move);
        }
        for (const flow::Finding& finding : flow::findings(kitchen_, balance_)) {
            if (finding.kind == flow::Finding::Kind::not_thawed && answer_.span.contains(finding.day))
                too_late(finding);
        }
        for (flow::FrozenUse& use : flow::frozen_uses(kitchen_, balance_)) {
            if (answer_.span.contains(use.day)) answer_.from_frozen.push_back(use);
        }
        std::stable_sort(answer_.moves.begin(), answer_.moves.end(), [](const TakeOut& a, const TakeOut& b) {
            return std::tuple(a.move.day, a.move.for_day, a.move.lot) <
                   std::tuple(b.move.day, b.move.for_day, b.move.lot);
        });
        std::stable_sort(answer_.late.begin(), answer_.late.end(), [](const TooLate& a, const TooLate& b) {
            return std::tuple(a.day, a.meal, a.ingredient) < std::tuple(b.day, b.meal, b.ingredient);
        });
        answer_.cautions = rules(answer_);
        return std::move(answer_);
    }

  private:
    void add(const ThawMove& move) {
        const bool water = move.method != ThawMethod::fridge;
        const int minutes = water ? water_minutes(kitchen_, move) : 0;
        const bool too_long = minutes > most_cold_water_minutes;
        if (!too_long) answer_.moves.push_back({move, minutes, water, cautions(kitchen_, move, minutes)});
        if (!water) return;
        TooLate& late = answer_.late.emplace_back(about(move));
        if (!too_long) late.instead = Instead::cold_water;
    }

    static TooLate about(const ThawMove& move) {
        TooLate late;
        late.ingredient = move.ingredient;
        late.amount = move.amount;
        late.day = move.for_day;
        late.meal = move.for_meal;
        late.dish = move.for_dish;
        late.lot = move.lot;
        late.packs = move.packs;
        return late;
    }

    void too_late(const flow::Finding& finding) {
        TooLate late;
        late.ingredient = finding.ingredient;
        late.amount = finding.amount;
        late.day = finding.day;
        late.meal = finding.meal;
        late.dish = finding.dish;
        auto& left = frozen_left(finding.ingredient);
        const auto oldest = std::find_if(left.begin(), left.end(), [](const LeftFrozen& pack) { return !pack.taken; });
        if (oldest != left.end()) late.lot = oldest->lot->number;
        if (in_cold_water(finding, left)) {
            late.instead = Instead::cold_water;
        } else if (const int packs = for_the_microwave(finding, left, late.lot); packs > 0) {
            late.instead = Instead::microwave;
            late.packs = packs;
        } else if (auto mend = mender_.mend(finding)) {
            late.instead = Instead::mend;
            late.mend = std::move(mend);
        }
        answer_.late.push_back(std::move(late));
    }

    std::vector<LeftFrozen>& frozen_left(catalogue::IngredientId id) {
        const auto [place, fresh] = left_.try_emplace(id);
        const flow::Part* part = balance_.part(id);
        if (fresh && part != nullptr) place->second = left_frozen(kitchen_, *part);
        return place->second;
    }

    /// Enough packs, on the day of a dinner, of what is not cooked yet; nothing is taken where there are not.
    bool in_cold_water(const flow::Finding& finding, std::vector<LeftFrozen>& left) {
        const auto& thing = kitchen_.catalogue()[finding.ingredient];
        if (thing.kind == catalogue::Kind::cooked || finding.meal != kitchen::Meal::dinner) return false;
        std::vector<LeftFrozen*> packs;
        std::int64_t amount = 0;
        for (LeftFrozen& pack : left) {
            if (amount >= finding.amount) break;
            const int minutes = stock::cold_water_minutes(milligrams(kitchen_, finding.ingredient, pack.amount));
            if (pack.taken || minutes > most_cold_water_minutes) continue;
            packs.push_back(&pack);
            amount += pack.amount;
        }
        if (amount < finding.amount) return false;
        for (LeftFrozen* pack : packs) {
            pack->taken = true;
            put_in_water(finding, *pack);
        }
        return true;
    }

    void put_in_water(const flow::Finding& finding, const LeftFrozen& pack) {
        const auto same = std::find_if(answer_.moves.begin(), answer_.moves.end(), [&](const TakeOut& other) {
            return other.late && other.move.lot == pack.lot->number && other.move.for_day == finding.day &&
                   other.move.for_meal == finding.meal && other.move.for_dish == finding.dish;
        });
        TakeOut fresh;
        TakeOut& out = same != answer_.moves.end() ? *same : fresh;
        out.move.lot = pack.lot->number;
        out.move.ingredient = finding.ingredient;
        out.move.amount += pack.amount;
        ++out.move.packs;
        out.move.weights.push_back(pack.amount);
        out.move.from = pack.lot->place;
        out.move.day = finding.day;
        out.move.method = ThawMethod::cold_water;
        out.move.for_day = finding.day;
        out.move.for_meal = finding.meal;
        out.move.for_dish = finding.dish;
        out.move.cook_by = finding.day;
        out.minutes = water_minutes(kitchen_, out.move);
        out.late = true;
        out.cautions = cautions(kitchen_, out.move, out.minutes);
        if (same == answer_.moves.end()) answer_.moves.push_back(std::move(fresh));
    }

    /// Packs of that lot, where they are thin and enough; today only, because it is cooked at once.
    int for_the_microwave(const flow::Finding& finding, std::vector<LeftFrozen>& left, stock::LotNumber lot) const {
        const auto& thing = kitchen_.catalogue()[finding.ingredient];
        const bool thin = thing.in_serves || thing.thaw == catalogue::Thaw::flat;
        if (!thin || finding.day != today_) return 0;
        std::vector<LeftFrozen*> packs;
        std::int64_t amount = 0;
        // By hand packs are taken from the last on.
        for (auto pack = left.rbegin(); pack != left.rend() && amount < finding.amount; ++pack) {
            if (pack->taken || pack->lot->number != lot) continue;
            packs.push_back(&*pack);
            amount += pack->amount;
        }
        if (amount < finding.amount) return 0;
        for (LeftFrozen* pack : packs) pack->taken = true;
        return static_cast<int>(packs.size());
    }

    const kitchen::Kitchen& kitchen_;
    basics::Day today_;
    flow::Balancer balancer_;
    flow::Balance balance_;
    detail::Mender mender_;
    std::map<catalogue::IngredientId, std::vector<LeftFrozen>> left_;
    ThawAnswer answer_;
};

}  // namespace

basics::Result<ThawAnswer> ask_thaw(const kitchen::Kitchen& kitchen, basics::Day today, basics::Span span) {
    if (const auto ahead = detail::ends_ahead("thaw", span, today); !ahead) return tl::make_unexpected(ahead.error());
    return Thawing(kitchen, today, span).answer();
}

basics::Result<kitchen::Change> thaw_done(const kitchen::At& at, const ThawAnswer& answer) {
    detail::Load fridge{answer.fridge, ThawMethod::fridge, {}};
    detail::Load water{answer.fridge, ThawMethod::cold_water, {}};
    for (const TakeOut& out : answer.moves) {
        if (out.move.day == at.day)
            (out.move.method == ThawMethod::fridge ? fridge : water).add(out.move.lot, out.move.weights);
    }
    return detail::entered(at, "thaw", "nothing is left to take out", {fridge, water});
}

}  // namespace samebase::ask
