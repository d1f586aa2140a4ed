// What the answers about cooking share: lines of sums, stand-ins and purchases, in words and as JSON.
#pragma once

#include <cmath>
#include <nlohmann/json_fwd.hpp>
#include <span>
#include <string>

#include "flow/parts.hpp"
#include "kitchen/kitchen.hpp"
#include "menu/line.hpp"
#include "show/json.hpp"
#include "show/words.hpp"

namespace samebase::show::detail {

/// "183 g corn tortillas for taco shells", or without the amounts.
[[nodiscard]] std::string stand_in_words(const flow::StandInUse& use, const kitchen::Kitchen& kitchen,
                                         bool with_amounts);

[[nodiscard]] Json stand_in_json(const flow::StandInUse& use, const kitchen::Kitchen& kitchen);
[[nodiscard]] Json scaled_json(std::span<const flow::Scaled> scaled, const kitchen::Kitchen& kitchen);
/// With what in place of what a planned meal is cooked.
[[nodiscard]] Json swaps_json(std::span<const kitchen::LineSwap> swaps, const kitchen::Kitchen& kitchen);
/// "2 bags plain flour", "1 tin tuna" of tinned tuna, "2 cucumbers" of what is sold singly.
[[nodiscard]] std::string purchase_words(const flow::Purchase& buy, const kitchen::Kitchen& kitchen);
[[nodiscard]] Json purchase_json(const flow::Purchase& buy, const kitchen::Kitchen& kitchen);

/// A cook's words for a line of worth: "kept from the bin".
[[nodiscard]] std::string_view plain_name(menu::Line line);

/// "proved best", "within 1.2 % of best".
[[nodiscard]] std::string how_good(bool proved_best, double gap);

/// "Wed 25", "Tue 1 ": a day at the head of a row.
[[nodiscard]] std::string row_day(basics::Day day);
inline constexpr std::size_t row_day_width = 6;

/// What a line of a sum is about: the thing with its amount, the note.
template <class Because>
std::string line_words(const Because& because, const kitchen::Kitchen& kitchen) {
    std::string what;
    if (because.of) {
        const bool much = because.amount && !because.amount->is_zero();
        what = much ? named(*because.amount, *because.of, kitchen) : kitchen.catalogue()[*because.of].name;
    }
    if (!because.note.empty()) what += (what.empty() ? "" : ": ") + because.note;
    return what;
}

template <class Because>
Json because_json(const Because& because, const kitchen::Kitchen& kitchen) {
    const catalogue::Ingredient* thing = because.of ? &kitchen.catalogue()[*because.of] : nullptr;
    return {{"line", name(because.line)},
            {"minor", because.money.minor},
            {"of", thing != nullptr ? Json(thing->id) : Json(nullptr)},
            {"amount", thing != nullptr && because.amount ? json_amount(*because.amount, *thing) : Json(nullptr)},
            {"note", because.note.empty() ? Json(nullptr) : Json(because.note)}};
}

/// How an answer of an optimiser begins: how good it is, and for which days.
template <class Answer>
Json optimised_json(const Answer& answer, const kitchen::Kitchen& kitchen) {
    return {{"value", json_money(answer.value, kitchen)},
            {"bound", json_money(answer.bound, kitchen)},
            {"proved_best", answer.proved_best},
            {"gap", std::round(answer.gap * 1e6) / 1e6},
            {"at_stake", json_money(answer.at_stake, kitchen)},
            {"from", json_day(answer.span.first)},
            {"until", json_day(answer.span.last)},
            {"horizon", json_day(answer.horizon)}};
}

}  // namespace samebase::show::detail
