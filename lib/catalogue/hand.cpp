#include "catalogue/hand.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>

#include "measure/written.hpp"

namespace samebase::catalogue {

namespace {

using measure::Amount;
using measure::Dimension;

constexpr std::int64_t whole = 1000;             // thousandths of a piece
constexpr std::int64_t teaspoon_ul = 5'000;      // metric
constexpr std::int64_t tablespoon_ul = 20'000;   // Australian
constexpr std::int64_t smallest_piece = 60'000;  // mg: below, it is measured by weight
constexpr std::int64_t large_piece = 100'000;    // mg: from here on it is cut into quarters
constexpr std::int64_t most_pieces = 6 * whole;  // more are weighed
constexpr std::int64_t halves_from = 2 * whole;  // from here on quarters are not told apart
constexpr std::int64_t wholes_from = 4 * whole;

/// "1/4", "2 1/2", "3", of a count in quarters.
std::string quarters(std::int64_t count) {
    constexpr std::array<std::string_view, 4> parts{"", "1/4", "1/2", "3/4"};
    const auto part = parts[static_cast<std::size_t>(count % 4)];
    if (part.empty()) return fmt::format("{}", count / 4);
    return count < 4 ? std::string(part) : fmt::format("{} {}", count / 4, part);
}

std::int64_t rounded(std::int64_t value, std::int64_t step) {
    return (value + step / 2) / step * step;
}

/// How finely so many pieces of that size are told apart.
std::int64_t step(std::int64_t thousandths, std::optional<std::int64_t> mg_per_piece) {
    if (mg_per_piece.value_or(0) < large_piece || thousandths >= wholes_from) return whole;
    return thousandths >= halves_from ? whole / 2 : whole / 4;
}

/// In thousandths; at least the smallest part, where there is any.
std::int64_t pieces_in_hand(std::int64_t thousandths, std::optional<std::int64_t> mg_per_piece) {
    const std::int64_t finest = step(thousandths, mg_per_piece);
    return thousandths == 0 ? 0 : std::max(finest, rounded(thousandths, finest));
}

std::string pieces(std::int64_t thousandths) {
    return quarters(thousandths / (whole / 4));
}

/// Pieces of what is kept by weight, where that is how a hand measures it.
std::optional<std::int64_t> as_pieces(const Amount& amount, const Ingredient& thing) {
    const auto weight = thing.conversion.mg_per_piece;
    if (thing.measured != Measured::pieces || thing.dimension != Dimension::mass || !weight) return std::nullopt;
    if (*weight < smallest_piece || amount.value() > most_pieces / whole * *weight) return std::nullopt;
    const std::int64_t exact = amount.value() * whole / *weight;
    const std::int64_t count = rounded(exact, step(exact, weight));
    return count == 0 ? std::nullopt : std::optional<std::int64_t>(count);
}

/// The volume of less than a tablespoon of what is measured with spoons.
std::optional<std::int64_t> below_a_tablespoon(const Amount& amount, const Ingredient& thing) {
    std::int64_t ul = amount.value();
    if (amount.dimension() == Dimension::mass) {
        const auto density = thing.conversion.mg_per_ml;
        if (thing.measured != Measured::spoons || !density || *density == 0) return std::nullopt;
        if (amount.value() >= tablespoon_ul * *density / whole * 2) return std::nullopt;
        ul = amount.value() * whole / *density;
    }
    return ul < tablespoon_ul + teaspoon_ul / 2 ? std::optional<std::int64_t>(ul) : std::nullopt;
}

std::string spoons(std::int64_t ul, bool liquid) {
    constexpr std::int64_t quarter = teaspoon_ul / 4;
    if (ul < quarter / 2) return liquid ? "a little" : "a pinch";
    const std::int64_t fine = ul < teaspoon_ul ? quarter : teaspoon_ul / 2;
    const std::int64_t count = std::max(quarter, rounded(ul, fine));
    return count >= tablespoon_ul ? "1 tbsp" : quarters(count / quarter) + " tsp";
}

/// Of a serve or a piece, singular up to one.
bool several(std::int64_t thousandths) {
    return thousandths > whole;
}

/// How many pieces its text counts; nothing where it is text of another kind.
std::optional<std::int64_t> counted(const Amount& amount, const Ingredient& thing) {
    if (thing.in_serves) return std::nullopt;
    if (amount.dimension() == Dimension::pieces) return pieces_in_hand(amount.value(), thing.conversion.mg_per_piece);
    return amount.dimension() == Dimension::mass ? as_pieces(amount, thing) : std::nullopt;
}

bool listed(const Ingredient& thing, const std::string& name) {
    return std::find(thing.also.begin(), thing.also.end(), name) != thing.also.end();
}

}  // namespace

std::string name_of(const Ingredient& ingredient, bool more_than_one) {
    const std::string& name = ingredient.name;
    if (name.empty()) return name;
    if (more_than_one) {
        for (const char* ending : {"s", "es"}) {
            if (listed(ingredient, name + ending)) return name + ending;
        }
        return name;
    }
    for (const std::size_t cut : {std::size_t{1}, std::size_t{2}}) {
        if (name.size() > cut && name.back() == 's' && listed(ingredient, name.substr(0, name.size() - cut)))
            return name.substr(0, name.size() - cut);
    }
    return name;
}

std::string serves_in_hand(std::int64_t thousandths) {
    const std::int64_t count = thousandths == 0 ? 0 : std::max(whole / 2, rounded(thousandths, whole / 2));
    return fmt::format("{} {}", pieces(count), count > 0 && !several(count) ? "serve" : "serves");
}

std::string weighed(const Amount& amount, const Ingredient& ingredient) {
    if (amount.value() < 0) return "-" + weighed({amount.dimension(), -amount.value()}, ingredient);
    if (ingredient.in_serves) return serves_in_hand(amount.value());
    if (const auto count = amount.dimension() == Dimension::pieces ? counted(amount, ingredient) : std::nullopt)
        return pieces(*count);
    return amount.value() % whole == 0 ? measure::write_kindly(amount) : measure::write_rounded(amount);
}

std::string weighed_named(const Amount& amount, const Ingredient& ingredient) {
    if (amount.dimension() == Dimension::pieces) return in_hand_named(amount, ingredient);
    return fmt::format("{} {}", weighed(amount, ingredient), ingredient.name);
}

std::string in_hand(const Amount& amount, const Ingredient& ingredient) {
    if (amount.value() < 0) return "-" + in_hand({amount.dimension(), -amount.value()}, ingredient);
    if (ingredient.in_serves || amount.is_zero()) return weighed(amount, ingredient);
    if (const auto count = counted(amount, ingredient)) return pieces(*count);
    if (const auto ul = below_a_tablespoon(amount, ingredient))
        return spoons(*ul, amount.dimension() == Dimension::volume);
    return measure::write_rounded(amount);
}

std::string in_hand_named(const Amount& amount, const Ingredient& ingredient) {
    const std::string much = in_hand(amount, ingredient);
    if (amount.value() > 0) {
        if (const auto count = counted(amount, ingredient))
            return fmt::format("{} {}", much, name_of(ingredient, several(*count)));
    }
    return fmt::format("{} {}{}", much, much == "a pinch" ? "of " : "", ingredient.name);
}

std::string packs_in_hand(std::int64_t thousandths) {
    const std::int64_t count = thousandths == 0 ? 0 : std::max(whole / 2, rounded(thousandths, whole / 2));
    if (count == whole / 2) return "half a pack";
    return fmt::format("{} {}", pieces(count), count == whole ? "pack" : "packs");
}

}  // namespace samebase::catalogue
