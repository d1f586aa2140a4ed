#include "kitchen/detail/whole.hpp"

#include <algorithm>
#include <cstdlib>
#include <tuple>
#include <vector>

#include "basics/exact.hpp"

namespace samebase::kitchen::detail {

namespace {

using catalogue::IngredientId;

constexpr std::int64_t piece = 1000;
constexpr std::int64_t quarter = 250;
/// How far from what is written any dish bears it, in thousandths: a main, a tin. Common practice.
constexpr std::int64_t main_tolerance = 100;
constexpr std::int64_t tin_tolerance = 250;

std::int64_t to_steps(std::int64_t wanted, std::int64_t step) {
    return std::max(step, (wanted + step / 2) / step * step);
}

struct Stocked {
    std::vector<std::int64_t> packs;  ///< whole ones
    bool loose = false;               ///< there is some that is in no packs
};

/// Packs that can be used as they are stand in front, in the order in which they are eaten. Frozen ones follow, the
/// smallest first, so that any as many are enough; with `thawed_only` they are left out where there are others.
Stocked in_stock(const Kitchen& kitchen, IngredientId ingredient, bool thawed_only) {
    Stocked stocked;
    std::vector<const stock::Lot*> ready;
    std::vector<std::int64_t> frozen;
    const auto whole = [](const stock::Lot& lot) { return lot.packs.size() - (lot.part_of > 0 ? 1 : 0); };
    for (const stock::Lot& lot : kitchen.lots) {
        if (lot.ingredient != ingredient) continue;
        stocked.loose = stocked.loose || (lot.packs.empty() && lot.there());
        if (lot.state != stock::State::frozen) {
            if (!lot.packs.empty()) ready.push_back(&lot);
        } else {
            frozen.insert(frozen.end(), lot.packs.begin(), lot.packs.begin() + static_cast<std::ptrdiff_t>(whole(lot)));
        }
    }
    const auto key = [](const stock::Lot* lot) {
        const auto eat_by = lot->eat_by();
        return std::tuple(!eat_by, eat_by.value_or(basics::Day{}), lot->number);
    };
    std::sort(ready.begin(), ready.end(), [&](const auto* a, const auto* b) { return key(a) < key(b); });
    for (const stock::Lot* lot : ready) {
        for (std::size_t i = whole(*lot); i-- > 0;) stocked.packs.push_back(lot->packs[i]);
    }
    if (thawed_only && !stocked.packs.empty()) return stocked;
    std::sort(frozen.begin(), frozen.end());
    stocked.packs.insert(stocked.packs.end(), frozen.begin(), frozen.end());
    return stocked;
}

/// So many packs of those in stock, and beyond them of those that are sold; 0 where neither is known.
std::int64_t weight_of(const std::vector<std::int64_t>& stocked, std::int64_t sold, std::int64_t count) {
    std::int64_t sum = 0;
    for (std::int64_t i = 0; i < count; ++i) {
        const bool there = static_cast<std::size_t>(i) < stocked.size();
        const std::int64_t pack = there ? stocked[static_cast<std::size_t>(i)] : sold;
        if (pack == 0) return 0;
        sum += pack;
    }
    return sum;
}

bool borne(const cookbook::DishIngredient& line, std::int64_t tolerance, std::int64_t wanted, std::int64_t amount) {
    const std::int64_t least = std::min<std::int64_t>(line.least_thousandths, 1000 - tolerance);
    const std::int64_t most = std::max<std::int64_t>(line.most_thousandths, 1000 + tolerance);
    return amount >= basics::fits(basics::scale(wanted, least, 1000)) &&
           amount <= basics::fits(basics::scale(wanted, most, 1000));
}

/// The joints or birds whose weight is nearest to what is wanted: one, or as many as make it up.
std::int64_t joints(std::vector<std::int64_t> stocked, std::int64_t sold, std::int64_t wanted) {
    const std::int64_t usual = stocked.empty() ? sold : stocked.front();
    if (usual == 0) return wanted;
    // Half a serve more is no reason for a second bird: from two thirds of one on it is.
    const std::int64_t count = std::max<std::int64_t>(1, (wanted + usual / 3) / usual);
    if (count == 1 && !stocked.empty()) {
        return *std::min_element(stocked.begin(), stocked.end(), [&](std::int64_t a, std::int64_t b) {
            return std::pair(std::abs(a - wanted), a) < std::pair(std::abs(b - wanted), b);
        });
    }
    const std::int64_t sum = weight_of(stocked, sold, count);
    return sum == 0 ? wanted : sum;
}

}  // namespace

bool cooked_whole(const catalogue::Ingredient& ingredient) {
    return ingredient.thaw == catalogue::Thaw::block && ingredient.kind == catalogue::Kind::raw;
}

std::int64_t whole_pieces(const catalogue::Ingredient& thing, std::int64_t wanted) {
    if (wanted <= 0 || thing.in_serves || thing.dimension != measure::Dimension::pieces) return wanted;
    const bool egg = thing.counted_allergens().has(catalogue::Allergen::egg);
    return to_steps(wanted, egg ? piece : quarter);
}

std::int64_t whole(const Kitchen& kitchen, const cookbook::DishIngredient& line, std::int64_t wanted) {
    const catalogue::Ingredient& thing = kitchen.catalogue()[line.ingredient];
    if (wanted <= 0 || thing.in_serves) return wanted;
    if (thing.dimension == measure::Dimension::pieces) return whole_pieces(thing, wanted);
    const bool tinned = thing.pack && (thing.pack->name == "tin" || thing.pack->name == "can");
    const bool meat = thing.thaw == catalogue::Thaw::flat && line.role == catalogue::Role::main;
    const bool joint = cooked_whole(thing) && line.role == catalogue::Role::main;
    if (!tinned && !meat && !joint) return wanted;
    const std::int64_t sold = thing.pack ? thing.pack->amount.value() : 0;
    Stocked stocked = in_stock(kitchen, line.ingredient, joint);
    if (stocked.loose) return wanted;  // it can be cut or weighed out
    if (joint) return joints(std::move(stocked.packs), sold, wanted);
    const std::int64_t usual = stocked.packs.empty() ? sold : stocked.packs.front();
    if (usual == 0) return wanted;
    const std::int64_t count = (wanted + usual / 2) / usual;
    const std::int64_t amount = weight_of(stocked.packs, sold, count);
    return amount > 0 && borne(line, tinned ? tin_tolerance : main_tolerance, wanted, amount) ? amount : wanted;
}

}  // namespace samebase::kitchen::detail
