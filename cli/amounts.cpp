#include "amounts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <sstream>

#include "ledger.hpp"
#include "show/words.hpp"
#include "stock/packs.hpp"

namespace samebase::cli {

namespace {

using measure::Amount;
using measure::Dimension;
using measure::Written;
using Words = std::vector<std::string>;

Words words_of(const std::string& text) {
    Words words;
    std::istringstream stream(text);
    for (std::string word; stream >> word;) words.push_back(word);
    return words;
}

std::string part(const Words& words, std::size_t from, std::size_t to) {
    return joined({words.begin() + static_cast<std::ptrdiff_t>(from), words.begin() + static_cast<std::ptrdiff_t>(to)});
}

/// The longest run of words from `from` on, before `end`, that is an amount; how many they are, 0 where there is none.
std::size_t longest_amount(const Words& words, std::size_t from, std::size_t end, measure::MeasureSet set,
                           Written& into) {
    constexpr std::size_t most = 8;
    for (std::size_t to = std::min(end, from + most); to > from; --to) {
        if (auto read = measure::read_amount(part(words, from, to), set)) {
            into = std::move(*read);
            return to - from;
        }
    }
    return 0;
}

bool is_weight(const Written& written) {
    const auto* amount = std::get_if<Amount>(&written.amount);
    return amount != nullptr && amount->dimension() != Dimension::pieces;
}

bool is_count(const std::optional<Written>& written) {
    return written && std::holds_alternative<Amount>(written->amount) && !is_weight(*written);
}

constexpr std::array<std::string_view, 18> containers{"bag",    "block",  "bottle", "box",  "bunch", "can",
                                                      "carton", "head",   "jar",    "loaf", "net",   "pack",
                                                      "pot",    "punnet", "tin",    "tray", "tub",   "tube"};

bool is_container(const std::string& word) {
    return std::find(containers.begin(), containers.end(), word) != containers.end();
}

/// After the amount: "of 500 g", "x 500 g", "weighing 7.3 kg", "(7.3 kg)", or after a weight "in 14 packs".
std::size_t read_sizes(Words& words, std::size_t at, measure::MeasureSet set, Said& said) {
    if (at + 1 >= words.size()) return at;
    Written written;
    if (words[at].front() == '(') {
        std::size_t close = at;
        while (close < words.size() && words[close].back() != ')') ++close;
        if (close == words.size()) return at;
        std::string inside = part(words, at, close + 1);
        const auto read = measure::read_amount(inside.substr(1, inside.size() - 2), set);
        if (!read || !is_weight(*read) || !is_count(said.amount)) return at;
        said.total = std::get<Amount>(read->amount);
        return close + 1;
    }
    const std::string& word = words[at];
    const std::size_t count = longest_amount(words, at + 1, words.size(), set, written);
    if (count == 0) return at;
    if (is_count(said.amount) && is_weight(written)) {
        if (word == "of" || word == "x" || word == "×") said.each = std::get<Amount>(written.amount);
        if (word == "weighing") said.total = std::get<Amount>(written.amount);
        return said.each || said.total ? at + 1 + count : at;
    }
    if (word == "in" && said.amount && is_weight(*said.amount) && is_container(written.counted)) {
        said.total = std::get<Amount>(said.amount->amount);
        said.amount = std::move(written);
        return at + 1 + count;
    }
    return at;
}

std::optional<Dimension> as_pieces(const catalogue::Ingredient& thing) {
    if (thing.dimension == Dimension::pieces || thing.conversion.mg_per_piece) return Dimension::pieces;
    return std::nullopt;
}

/// Whether what is in stock of it, in that place or else anywhere, is in packs; nothing where there is none.
std::optional<bool> stocked_in_packs(const kitchen::Kitchen& kitchen, const Thing& thing,
                                     std::optional<stock::PlaceId> place) {
    std::optional<bool> here;
    std::optional<bool> anywhere;
    for (const auto& lot : kitchen.lots) {
        if (lot.ingredient != thing.ingredient || lot.rough || (thing.lot && lot.number != *thing.lot)) continue;
        anywhere = anywhere.value_or(false) || !lot.packs.empty();
        if (place && lot.place == *place) here = here.value_or(false) || !lot.packs.empty();
    }
    return here ? here : anywhere;
}

/// What the largest pack of it weighs that is in stock, there or anywhere; 0 where there is none.
std::int64_t pack_in_stock(const kitchen::Kitchen& kitchen, const Thing& thing, std::optional<stock::PlaceId> place) {
    std::int64_t largest = 0;
    for (const auto& lot : kitchen.lots) {
        if (lot.ingredient == thing.ingredient && (!place || lot.place == *place))
            largest = std::max(largest, stock::whole_pack(lot));
    }
    return largest;
}

/// Whether a bare number of it is packs.
bool counted_in_packs(const kitchen::Kitchen& kitchen, const Thing& thing, std::optional<stock::PlaceId> place) {
    const auto& what = kitchen.catalogue()[thing.ingredient];
    if (what.dimension == Dimension::pieces) return false;
    if (stocked_in_packs(kitchen, thing, place).value_or(false)) return true;
    if (!as_pieces(what)) return true;
    if (!what.pack) return false;
    constexpr std::int64_t least_by_the_piece = 15'000;  // mg: nobody counts blueberries
    const bool meat = what.thaw == catalogue::Thaw::flat || what.thaw == catalogue::Thaw::block;
    return what.kind != catalogue::Kind::raw || meat || *what.conversion.mg_per_piece < least_by_the_piece;
}

tl::expected<Amount, Failure> own_amount(const Amount& amount, const catalogue::Ingredient& what,
                                         const std::string& text) {
    auto own = catalogue::in_own_dimension(amount, what);
    if (own) return *own;
    for (auto& problem : own.error()) problem.where = text;
    return failure(not_understood, std::move(own.error()));
}

}  // namespace

tl::expected<Said, Failure> read_said(const std::string& text, measure::MeasureSet set) {
    Words words = words_of(text);
    Said said{text, {}, {}, {}, {}};
    std::size_t at = 0;
    const auto is = [&](std::size_t i, std::string_view word) { return i < words.size() && words[i] == word; };
    if (is(0, "all") && words.size() > 1) {
        at = is(1, "the") || is(1, "of") ? 2 : 1;
    } else if (!(is(0, "lot") && words.size() == 2)) {
        Written written;
        const bool times = is(1, "x") || is(1, "×");
        if (const auto count = longest_amount(words, 0, times ? 1 : words.size(), set, written); count > 0) {
            said.amount = std::move(written);
            at = read_sizes(words, count, set, said);
        } else if (is(0, "no") && words.size() > 1) {
            said.amount = Written{Amount{Dimension::pieces, 0}, {}, {}};
            at = 1;
        } else if (is(0, "a") || is(0, "an")) {
            said.amount = Written{Amount{Dimension::pieces, 1000}, {}, {}};
            at = 1;
        } else if (!words.empty() && words[0].find_first_of("-0123456789") == 0) {
            auto read = measure::read_amount(words[0], set);
            if (!read) {
                for (auto& problem : read.error()) problem.where = text;
                return failure(not_understood, std::move(read.error()));
            }
        }
    }
    if (said.amount && said.amount->upper) {
        return failure(not_understood, {{text, "is a range", "one amount", std::nullopt}});
    }
    said.name = part(words, std::min(at, words.size()), words.size());
    if (said.name.empty())
        return failure(not_understood,
                       {{text, "does not say what of", "an amount and a name: 2 kg beef mince", std::nullopt}});
    return said;
}

tl::expected<basics::Money, Failure> read_money(const std::string& text, const std::string& currency,
                                                const std::string& where) {
    const std::size_t digits = show::money({}, currency).find('.') == std::string::npos ? 0 : 2;
    const auto wrong = [&] {
        const std::string example = digits == 0 ? "1450" : "14.50";
        return failure(not_understood,
                       {{where, fmt::format("'{}'", text), fmt::format("money such as {}", example), std::nullopt}});
    };
    std::string figures = text;
    if (!figures.empty() && figures.front() == '$') figures.erase(0, 1);
    const auto point = std::min(figures.find('.'), figures.size());
    const std::size_t after = point == figures.size() ? 0 : figures.size() - point - 1;
    if (after > digits || (point < figures.size() && after == 0)) return wrong();
    if (point < figures.size()) figures.erase(point, 1);
    figures.append(digits - after, '0');
    if (figures.size() <= digits || figures.size() > 11) return wrong();
    std::int64_t minor = 0;
    for (const char c : figures) {
        if (c < '0' || c > '9') return wrong();
        minor = minor * 10 + (c - '0');
    }
    return basics::Money{minor};
}

tl::expected<std::int64_t, Failure> read_serves(const std::string& text, const std::string& where) {
    const auto read = measure::read_amount(text, measure::MeasureSet::australian_metric);
    constexpr std::int64_t most = 1'000'000;
    if (read && !read->upper && is_count(*read) && (read->counted.empty() || read->counted == "serve")) {
        const std::int64_t value = std::get<Amount>(read->amount).value();
        if (value > 0 && value <= most) return value;
    }
    return failure(not_understood,
                   {{where, fmt::format("'{}'", text), "a number of serves above 0, at most 1000", std::nullopt}});
}

tl::expected<kitchen::Quantity, Failure> quantity_of(const kitchen::Kitchen& kitchen, const Thing& thing,
                                                     const Said& said, std::optional<stock::PlaceId> place) {
    kitchen::Quantity quantity;
    if (!said.amount) return quantity;
    const auto& what = kitchen.catalogue()[thing.ingredient];
    if (const auto* rough = std::get_if<measure::Rough>(&said.amount->amount)) {
        quantity.rough = *rough;
        return quantity;
    }
    const Amount amount = std::get<Amount>(said.amount->amount);
    const std::string& counted = said.amount->counted;
    const bool named_piece = what.piece_mg.contains(counted);
    const bool bare = counted.empty() && amount.dimension() == Dimension::pieces;
    const bool container =
        !named_piece && (is_container(counted) || (what.pack && counted == what.pack->name && counted != "each"));
    const bool packs = said.each || said.total || container || (bare && counted_in_packs(kitchen, thing, place));
    if (packs && what.in_serves && !said.total && !said.each &&
        !stocked_in_packs(kitchen, thing, place).value_or(false)) {
        return failure(not_understood,
                       {{said.text, "is counted in serves", fmt::format("'2 serves {}'", said.name), std::nullopt}});
    }
    if (packs) {
        quantity.packs = amount.value();
        if (!said.total) return quantity;
        auto own = own_amount(*said.total, what, said.text);
        if (!own) return tl::make_unexpected(own.error());
        quantity.amount = *own;
        return quantity;
    }
    catalogue::Ingredient by_name = what;
    if (named_piece) by_name.conversion.mg_per_piece = what.piece_mg.at(counted);
    Amount spoken = amount;
    if (named_piece && what.dimension == Dimension::pieces) {
        const auto mass = catalogue::weight(amount, by_name);
        if (mass) spoken = *mass;
    }
    auto own = own_amount(spoken, named_piece && what.dimension != Dimension::pieces ? by_name : what, said.text);
    if (!own) return tl::make_unexpected(own.error());
    quantity.amount = *own;
    return quantity;
}

tl::expected<std::optional<Amount>, Failure> PackSizes::size_for(const kitchen::At& at, const store::State& facts,
                                                                 const Thing& thing, const Said& said,
                                                                 Things::For what_for,
                                                                 std::optional<stock::PlaceId> place) {
    const auto& what = at.kitchen.catalogue()[thing.ingredient];
    if (said.each) {
        auto own = own_amount(*said.each, what, said.text);
        if (!own) return tl::make_unexpected(own.error());
        if (own->value() > 0) asked_[thing.ingredient] = *own;
        return std::optional(*own);
    }
    if (const auto known = asked_.find(thing.ingredient); known != asked_.end()) return std::optional(known->second);
    const std::int64_t in_stock = pack_in_stock(at.kitchen, thing, std::nullopt);
    // Packs that are there weigh what they weigh.
    if (what_for == Things::For::stock && pack_in_stock(at.kitchen, thing, place) > 0) return std::optional<Amount>();
    if (const auto remembered = store::remembered_pack(facts, at.kitchen.catalogue(), thing.ingredient))
        return std::optional(*remembered);
    if (what_for == Things::For::stock && in_stock > 0) return std::optional(Amount{what.dimension, in_stock});
    if (what.pack || what.in_serves) return std::optional<Amount>();
    if (in_stock > 0) return std::optional(Amount{what.dimension, in_stock});
    if (!on_terminal()) {
        return failure(not_understood,
                       {{said.text, fmt::format("nobody has said how large a pack of {} is", what.name), "a pack size",
                         fmt::format("say it once and it is remembered: '2 packs of 500 g {}'", what.name)}});
    }
    while (true) {
        const auto line = ask(fmt::format("How large is one pack of {} (500 g, 1 L, 6)?", what.name));
        if (!line)
            return failure(not_understood,
                           {{said.text, "the size of a pack was not said", "a pack size", std::nullopt}});
        const auto read = measure::read_amount(*line, at.kitchen.household.measures);
        const auto* amount = read ? std::get_if<Amount>(&read->amount) : nullptr;
        const auto own =
            amount != nullptr ? catalogue::in_own_dimension(*amount, what) : basics::Result<Amount>(Amount{});
        if (!own || own->value() <= 0) continue;
        asked_[thing.ingredient] = *own;
        return std::optional(*own);
    }
}

std::vector<kitchen::FactEdit> PackSizes::learned() const {
    std::vector<kitchen::FactEdit> edits;
    for (const auto& [ingredient, amount] : asked_) {
        edits.push_back({true, {kitchen::Fact::Kind::pack, ingredient, amount.value(), {}}});
    }
    return edits;
}

tl::expected<std::vector<Wanted>, Failure> read_things(const kitchen::At& at, const store::State& facts,
                                                       const std::string& line, std::optional<stock::PlaceId> place,
                                                       Things::For what_for, PackSizes& packs) {
    const auto parts = split_at_commas(line);
    if (parts.empty())
        return failure(not_understood,
                       {{"arguments", "nothing is named", "what, as in '2 kg beef mince, 3 cabbages'", std::nullopt}});
    const Things things(at.kitchen, place, what_for);
    std::vector<Wanted> result;
    for (const std::string& text : parts) {
        auto said = read_said(text, at.kitchen.household.measures);
        if (!said) return tl::make_unexpected(said.error());
        auto thing = things.meant(said->name, said->amount && said->amount->counted == "serve");
        if (!thing) return tl::make_unexpected(thing.error());
        auto quantity = quantity_of(at.kitchen, *thing, *said, place);
        if (!quantity) return tl::make_unexpected(quantity.error());
        std::optional<Amount> pack;
        if (quantity->packs && !quantity->amount) {
            auto size = packs.size_for(at, facts, *thing, *said, what_for, place);
            if (!size) return tl::make_unexpected(size.error());
            pack = *size;
        }
        result.push_back({*thing, std::move(*said), *quantity, pack});
    }
    return result;
}

std::vector<kitchen::Item> items_of(const std::vector<Wanted>& things, std::optional<stock::PlaceId> from) {
    std::vector<kitchen::Item> items;
    for (const Wanted& wanted : things) {
        kitchen::What what{wanted.thing.lot, wanted.thing.ingredient, wanted.thing.dish, from};
        items.push_back({what, wanted.quantity, wanted.pack});
    }
    return items;
}

}  // namespace samebase::cli
