#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <sstream>

#include "kitchen/changes.hpp"
#include "meaning.hpp"

namespace samebase::cli {

namespace {

constexpr std::uint8_t by_ingredient = 0;
constexpr std::uint8_t by_dish = 2;
constexpr std::size_t most_named = 5;
constexpr std::size_t most_found = 8;  // of names that a search gives

std::vector<std::string> split_words(const std::string& text) {
    std::vector<std::string> words;
    std::istringstream stream(text);
    for (std::string word; stream >> word;) words.push_back(word);
    return words;
}

constexpr std::array<std::string_view, 6> sizes{"big", "extra", "large", "medium", "small", "whole"};

/// Whether leftovers may be meant where nothing is said of serves.
bool can_be_served(Doing doing) {
    return doing == Doing::eating || doing == Doing::tossing;
}

/// Takes a word off the front where more words follow; whether it was there.
bool took(std::string& words, std::string_view first) {
    if (words.size() <= first.size() + 1 || !words.starts_with(first) || words[first.size()] != ' ') return false;
    words.erase(0, first.size() + 1);
    return true;
}

}  // namespace

bool comes_in(const catalogue::Ingredient& thing, const std::string& container) {
    const auto is = [&](const std::string& word) {
        return word == container || (word == "tin" && container == "can") || (word == "packet" && container == "pack");
    };
    const auto words = thing.pack ? split_words(thing.pack->name) : std::vector<std::string>{};
    if (std::any_of(words.begin(), words.end(), is)) return true;
    return std::any_of(thing.piece_mg.begin(), thing.piece_mg.end(),
                       [&](const auto& piece) { return is(piece.first); });
}

/// What words match in one index.
struct Things::Few {
    std::vector<Thing> things;
    bool whole = false;  ///< the words are a whole name without a slip
    bool slips = false;
    std::string name;  ///< the name that fits best
};

void Things::Index::add(const kitchen::Kitchen& kitchen, const Thing& thing, bool by_label) {
    if (std::find(things.begin(), things.end(), thing) != things.end()) return;
    const auto key = static_cast<std::uint32_t>(things.size());
    things.push_back(thing);
    const auto& ingredient = kitchen.catalogue()[thing.ingredient];
    if (!thing.dish || by_label) add_ingredient(ingredient, key, by_ingredient, names);
    if (!thing.dish || ingredient.kind != catalogue::Kind::cooked) return;
    const auto& dish = kitchen.cookbook()[*thing.dish];
    names.add(key, by_dish, dish.name);
    names.add(key, by_dish, spaced(dish.id));
    if (by_label) names.add(key, by_dish, kitchen::label(kitchen, thing.ingredient, thing.dish));
}

Things::Things(const kitchen::Kitchen& kitchen, std::optional<stock::PlaceId> place, Doing doing)
    : kitchen_(&kitchen), doing_(doing) {
    std::uint32_t key = 0;
    // The identifiers of ingredients are their keys here: no lookup of what was added already.
    for (const auto& ingredient : kitchen.catalogue().ingredients()) {
        everything_.things.push_back({catalogue::IngredientId{key}, {}, {}});
        add_ingredient(ingredient, key++, by_ingredient, everything_.names);
    }
    for (std::uint32_t d = 0; doing != Doing::buying && d < kitchen.cookbook().dishes().size(); ++d) {
        const auto& dish = kitchen.cookbook().dishes()[d];
        if (!dish.leaves) continue;
        everything_.things.push_back({*dish.leaves, cookbook::DishId{d}, {}});
        everything_.names.add(key, by_dish, dish.name);
        everything_.names.add(key++, by_dish, spaced(dish.id));
    }
    for (const auto& lot : kitchen.lots) {
        const bool cooked = kitchen.catalogue()[lot.ingredient].kind == catalogue::Kind::cooked;
        const Thing thing{lot.ingredient, cooked ? lot.dish : std::nullopt, {}};
        if (doing == Doing::buying && cooked) continue;
        stock_.add(kitchen, thing, true);
        if (!place || lot.place == *place) here_.add(kitchen, thing, true);
    }
    std::uint32_t family = 0;
    for (const auto& f : kitchen.catalogue().families()) families_.add(family++, 0, f.name);
    everything_.names.finish();
    here_.names.finish();
    stock_.names.finish();
    families_.finish();
}

Things::Few Things::few(const Index& index, const std::string& words, bool in_serves) const {
    const auto match = index.names.find(words);
    Few few;
    if (match.found.empty()) return few;
    few.slips = match.found.front().distance > 0;
    few.whole = match.whole && !few.slips;
    few.name = match.found.front().name;
    for (const auto& f : match.found) {
        const Thing& thing = index.things[f.key];
        if (std::find(few.things.begin(), few.things.end(), thing) == few.things.end()) few.things.push_back(thing);
    }
    const auto served = [&](const Thing& thing) { return kitchen_->catalogue()[thing.ingredient].in_serves; };
    const auto drop = [&](bool those_served) {
        const auto goes = [&](const Thing& thing) { return served(thing) == those_served; };
        if (!std::all_of(few.things.begin(), few.things.end(), goes)) std::erase_if(few.things, goes);
    };
    const std::vector<Thing> before = few.things;
    // What is counted in serves is a leftover; what is bought, counted or moved without that word is not.
    if (in_serves) drop(false);
    if (!in_serves && !can_be_served(doing_)) drop(true);
    // Where there may be more than a search gives, one that stays is not the only one.
    if (few.things.size() == 1 && before.size() >= most_found) few.things = before;
    const bool one = std::all_of(few.things.begin(), few.things.end(),
                                 [&](const Thing& thing) { return thing.ingredient == few.things.front().ingredient; });
    // Leftovers of several dishes under one name: all of them.
    if (one && few.things.size() > 1) few.things = {{few.things.front().ingredient, {}, {}}};
    return few;
}

std::optional<Things::Few> Things::in_stock(const std::string& words, bool in_serves) const {
    for (const Index* index : {&here_, &stock_}) {
        auto some = few(*index, words, in_serves);
        // "3 roasts" in a freezer are not three serves of cold roast.
        const bool leftover = some.things.size() == 1 && !in_serves && !some.whole && !can_be_served(doing_) &&
                              kitchen_->catalogue()[some.things.front().ingredient].in_serves;
        if (some.things.size() == 1 && !leftover) return some;
    }
    return std::nullopt;
}

bool Things::stocked(catalogue::IngredientId id) const {
    return std::any_of(stock_.things.begin(), stock_.things.end(),
                       [&](const Thing& thing) { return thing.ingredient == id; });
}

/// Whether the words are the name that the thing goes by, not another one.
bool Things::is_name(const std::string& words, const Thing& thing) const {
    const auto& ingredient = kitchen_->catalogue()[thing.ingredient];
    catalogue::NameIndex index;
    index.add(0, 0, ingredient.name);
    index.add(0, 0, spaced(ingredient.id));
    index.finish();
    const auto match = index.find(words);
    return match.whole && match.found.front().distance == 0;
}

std::string Things::label(const Thing& thing) const {
    return kitchen::label(*kitchen_, thing.ingredient, thing.dish);
}

tl::unexpected<Failure> Things::several(const std::string& words, const std::vector<Thing>& things) const {
    std::vector<std::string> names;
    for (const auto& thing : things) {
        if (names.size() < most_named) names.push_back(label(thing));
    }
    return failure(not_understood,
                   {{words, fmt::format("several things are called that: {}", quoted(names)), "one clear name", {}}});
}

tl::unexpected<Failure> Things::unknown(const std::string& words) const {
    std::vector<std::string> names;
    for (const auto& f : everything_.names.find(words).nearest) {
        std::string name = label(everything_.things[f.key]);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
    }
    const auto hint = names.empty() ? std::nullopt : std::optional("the nearest: " + quoted(names));
    return failure(not_understood, {{words, "nothing is called that", "the name of something to eat", hint}});
}

/// Another name of a thing that is not there may be a cook's general word for what is: a family of which one member is
/// there, or part of the name of the one thing that is.
tl::expected<Taken, Failure> Things::general(const std::string& words, const Taken& usual) const {
    if (doing_ == Doing::buying || stocked(usual.thing.ingredient) || is_name(words, usual.thing)) return usual;
    const auto& catalogue = kitchen_->catalogue();
    const auto family = families_.find(words);
    if (family.whole && family.found.size() == 1 && family.found.front().distance == 0) {
        const catalogue::FamilyId of{family.found.front().key};
        for (const Index* index : {&here_, &stock_}) {
            std::vector<Thing> members;
            for (const auto& thing : index->things) {
                if (catalogue.belongs(thing.ingredient, of)) members.push_back(thing);
            }
            if (members.size() == 1) return Taken{members.front()};
            if (members.size() > 1) return several(words, members);
        }
    }
    const auto there = in_stock(words, false);
    const bool alike = there && !there->slips &&
                       catalogue.ancestors(there->things.front().ingredient).back() ==
                           catalogue.ancestors(usual.thing.ingredient).back();
    if (alike) return Taken{there->things.front(), false};
    // "toast" where there is only another bread: asked about.
    std::vector<Thing> others;
    for (const auto& thing : stock_.things) {
        if (catalogue[thing.ingredient].family == catalogue[usual.thing.ingredient].family) others.push_back(thing);
    }
    return destroys(doing_) && others.size() == 1 ? Taken{others.front(), false} : usual;
}

tl::expected<Taken, Failure> Things::of_name(const std::string& words, bool in_serves) const {
    const auto all = few(everything_, words, in_serves);
    if (all.things.empty()) return unknown(words);
    const auto there = in_stock(words, in_serves);
    const auto served = [&](const Thing& thing) { return kitchen_->catalogue()[thing.ingredient].in_serves; };
    // Counted in serves, words of one leftover that is there are clear enough.
    if (in_serves && there && !there->slips && served(there->things.front()) &&
        !(all.whole && all.things.size() == 1 && served(all.things.front()))) {
        return Taken{there->things.front()};
    }
    // "1 pork roast" is not a serve of cold roast pork because its words turned around are.
    const bool turned_around = all.things.size() == 1 && !in_serves && !can_be_served(doing_) &&
                               served(all.things.front()) &&
                               words.substr(0, words.find(' ')) != all.name.substr(0, all.name.find(' '));
    if (turned_around) return several(words, all.things);
    if (all.things.size() == 1 && all.whole) return general(words, {all.things.front()});
    if (there) return Taken{there->things.front(), there->whole};
    if (all.things.size() == 1) return Taken{all.things.front(), false};
    return several(words, all.things);
}

/// The thing that comes in tins: by that word in its name, else because it does.
std::optional<Taken> Things::in_tins(const std::string& words) const {
    std::vector<Thing> loose;
    for (const char* form : {"tinned ", "canned ", ""}) {
        const auto some = few(everything_, form + words, false);
        std::vector<Thing> tins;
        for (const auto& thing : some.things) {
            if (comes_in(kitchen_->catalogue()[thing.ingredient], "can")) tins.push_back(thing);
        }
        if (tins.size() == 1 && some.whole) return Taken{tins.front()};
        if (loose.empty()) loose = std::move(tins);
    }
    return loose.size() == 1 ? std::optional(Taken{loose.front(), false}) : std::nullopt;
}

tl::expected<Taken, Failure> Things::taken(const std::string& words, const std::string& counted) const {
    if (const auto number = doing_ != Doing::buying ? lot_number(words) : std::nullopt) {
        const auto* lot = kitchen_->lot(*number);
        if (lot != nullptr) return Taken{Thing{lot->ingredient, lot->dish, number}};
        return failure(not_understood, {{words, "there is no such lot, or nothing is left of it", "the number of a lot",
                                         "'samebase stock' shows the numbers"}});
    }
    if (counted == "can") {
        if (const auto tin = in_tins(words)) return *tin;
        const auto other = of_name(words, false);
        if (!other) return other;
        return failure(not_understood, {{words, fmt::format("no {} in tins is known", label(other->thing)),
                                         "something that comes in tins",
                                         fmt::format("or say what size: '2 tins of 400 g {}'", words)}});
    }
    const bool in_serves = counted == "serve";
    auto result = of_name(words, in_serves);
    if (result && result->exact) return result;
    // A word before the name that is no part of it: how large they are, or how they are kept.
    std::string rest = words;
    const auto size = std::find_if(sizes.begin(), sizes.end(), [&](auto word) { return took(rest, word); });
    const bool frozen = took(rest, "frozen");
    if (size == sizes.end() && !frozen) return result;
    auto bare = of_name(rest, in_serves);
    if (!bare || !bare->exact) return result;
    bare->frozen = frozen;
    if (size != sizes.end()) bare->size = *size;
    return bare;
}

tl::expected<Thing, Failure> Things::meant(const std::string& words) const {
    return taken(words).map([](const Taken& taken) { return taken.thing; });
}

}  // namespace samebase::cli
