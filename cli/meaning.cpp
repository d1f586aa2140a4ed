#include "meaning.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "basics/sorted.hpp"
#include "flow/balance.hpp"
#include "kitchen/changes.hpp"

namespace samebase::cli {

namespace {

using catalogue::NameIndex;

enum Rank : std::uint8_t { of_ingredient, of_family, of_dish };

std::string spaced(std::string id) {
    for (char& c : id) c = c == '-' ? ' ' : c;
    return id;
}

void add_dishes(const kitchen::Kitchen& kitchen, NameIndex& index) {
    std::uint32_t key = 0;
    for (const auto& dish : kitchen.cookbook().dishes()) {
        index.add(key, of_dish, dish.name);
        index.add(key++, of_dish, spaced(dish.id));
    }
}

void add_ingredient(const catalogue::Ingredient& thing, std::uint32_t key, NameIndex& index) {
    index.add(key, of_ingredient, thing.name);
    index.add(key, of_ingredient, spaced(thing.id));
    for (const auto& other : thing.also) index.add(key, of_ingredient, other);
}

void add_ingredients(const kitchen::Kitchen& kitchen, NameIndex& index) {
    std::uint32_t key = 0;
    for (const auto& thing : kitchen.catalogue().ingredients()) add_ingredient(thing, key++, index);
    key = 0;
    for (const auto& family : kitchen.catalogue().families()) {
        index.add(key, of_family, family.name);
        index.add(key++, of_family, spaced(family.id));
    }
}

std::string quoted(const std::vector<catalogue::Found>& found) {
    std::string result;
    for (const auto& f : found) result += fmt::format("{}'{}'", result.empty() ? "" : ", ", f.name);
    return result;
}

tl::expected<catalogue::Found, Failure> one_clear(const NameIndex& index, const std::string& words,
                                                  const std::string& what) {
    const auto match = index.find(words);
    if (match.found.size() == 1) return match.found.front();
    if (!match.found.empty()) {
        return failure(not_understood, {{words, "several things are called that: " + quoted(match.found),
                                         "one clear name", std::nullopt}});
    }
    const auto hint = match.nearest.empty() ? std::nullopt : std::optional("the nearest: " + quoted(match.nearest));
    return failure(not_understood, {{words, "nothing is called that", what, hint}});
}

std::optional<stock::LotNumber> lot_number(std::string words) {
    constexpr std::string_view of = "of ";
    constexpr std::string_view head = "lot ";
    if (words.starts_with(of)) words.erase(0, of.size());
    if (words.rfind(head, 0) != 0) return std::nullopt;
    stock::LotNumber number = 0;
    const char* end = words.data() + words.size();
    const auto [stop, error] = std::from_chars(words.data() + head.size(), end, number);
    if (error != std::errc{} || stop != end) return std::nullopt;
    return number;
}

}  // namespace

tl::expected<Meant, Failure> meant(const kitchen::Kitchen& kitchen, const std::string& words) {
    if (const auto lot = lot_number(words)) return Meant{*lot};
    NameIndex index;
    add_ingredients(kitchen, index);
    add_dishes(kitchen, index);
    index.finish();
    return one_clear(index, words, "the name of an ingredient, a family, a dish, or 'lot' and a number")
        .map([](const catalogue::Found& found) -> Meant {
            if (found.rank == of_ingredient) return catalogue::IngredientId{found.key};
            if (found.rank == of_family) return catalogue::FamilyId{found.key};
            return cookbook::DishId{found.key};
        });
}

tl::expected<cookbook::DishId, Failure> dish_meant(const kitchen::Kitchen& kitchen, const std::string& words) {
    NameIndex index;
    add_dishes(kitchen, index);
    index.finish();
    return one_clear(index, words, "the name of a dish").map([](const catalogue::Found& found) {
        return cookbook::DishId{found.key};
    });
}

tl::expected<stock::PlaceId, Failure> place_meant(const kitchen::Kitchen& kitchen, const std::string& words) {
    NameIndex index;
    const auto& places = kitchen.household.places;
    for (std::uint32_t key = 0; key < places.size(); ++key) {
        index.add(key, 0, places[key].name);
        index.add(key, 0, spaced(places[key].id));
        index.add(key, 0, spaced(std::string(name(places[key].kind))));
    }
    index.finish();
    const auto match = index.find(words);
    if (match.found.size() == 1) return stock::PlaceId{match.found.front().key};
    std::vector<std::string> known;
    for (const auto& f : match.found) known.push_back(fmt::format("'{}'", places[f.key].name));
    if (!match.found.empty()) {
        return failure(not_understood,
                       {{words, fmt::format("several places are called that: {}", fmt::join(known, ", ")),
                         "one clear place", std::nullopt}});
    }
    for (const auto& place : places) known.push_back(fmt::format("'{}'", place.name));
    return failure(not_understood, {{words, "no place is called that", fmt::format("one of {}", fmt::join(known, ", ")),
                                     std::nullopt}});
}

tl::expected<catalogue::IngredientId, Failure> one_of_meant(const kitchen::Kitchen& kitchen,
                                                            const std::vector<catalogue::IngredientId>& few,
                                                            const std::string& words, const std::string& what) {
    NameIndex index;
    for (const auto id : few) add_ingredient(kitchen.catalogue()[id], id.value, index);
    index.finish();
    return one_clear(index, words, what).map([](const catalogue::Found& f) { return catalogue::IngredientId{f.key}; });
}

void Things::Index::add(const kitchen::Kitchen& kitchen, const Thing& thing, bool by_label) {
    if (std::find(things.begin(), things.end(), thing) != things.end()) return;
    const auto key = static_cast<std::uint32_t>(things.size());
    things.push_back(thing);
    const auto& ingredient = kitchen.catalogue()[thing.ingredient];
    if (!thing.dish || by_label) add_ingredient(ingredient, key, names);
    if (!thing.dish || ingredient.kind != catalogue::Kind::cooked) return;
    const auto& dish = kitchen.cookbook()[*thing.dish];
    names.add(key, of_dish, dish.name);
    names.add(key, of_dish, spaced(dish.id));
    if (by_label) names.add(key, of_dish, kitchen::label(kitchen, thing.ingredient, thing.dish));
}

Things::Things(const kitchen::Kitchen& kitchen, std::optional<stock::PlaceId> place, For what_for)
    : kitchen_(&kitchen), for_(what_for) {
    std::uint32_t key = 0;
    // The identifiers of ingredients are their keys here: no lookup of what was added already.
    for (const auto& ingredient : kitchen.catalogue().ingredients()) {
        everything_.things.push_back({catalogue::IngredientId{key}, {}, {}});
        add_ingredient(ingredient, key++, everything_.names);
    }
    for (std::uint32_t d = 0; for_ == For::stock && d < kitchen.cookbook().dishes().size(); ++d) {
        const auto& dish = kitchen.cookbook().dishes()[d];
        if (!dish.leaves) continue;
        everything_.things.push_back({*dish.leaves, cookbook::DishId{d}, {}});
        everything_.names.add(key, of_dish, dish.name);
        everything_.names.add(key++, of_dish, spaced(dish.id));
    }
    for (const auto& lot : kitchen.lots) {
        const bool cooked = kitchen.catalogue()[lot.ingredient].kind == catalogue::Kind::cooked;
        const Thing thing{lot.ingredient, cooked ? lot.dish : std::nullopt, {}};
        if (for_ == For::buying && cooked) continue;
        stock_.add(kitchen, thing, true);
        if (!place || lot.place == *place) here_.add(kitchen, thing, true);
    }
    everything_.names.finish();
    here_.names.finish();
    stock_.names.finish();
}

std::vector<Thing> Things::found(const Index& index, const catalogue::Match& match, bool in_serves) const {
    std::vector<Thing> result;
    for (const auto& f : match.found) {
        const Thing& thing = index.things[f.key];
        if (std::find(result.begin(), result.end(), thing) == result.end()) result.push_back(thing);
    }
    const auto counted_otherwise = [&](const Thing& thing) {
        return !kitchen_->catalogue()[thing.ingredient].in_serves;
    };
    if (in_serves && !std::all_of(result.begin(), result.end(), counted_otherwise))
        std::erase_if(result, counted_otherwise);
    const bool one = !result.empty() && std::all_of(result.begin(), result.end(), [&](const Thing& thing) {
        return thing.ingredient == result.front().ingredient;
    });
    // Leftovers of several dishes under one name: all of them.
    if (one && result.size() > 1) result = {{result.front().ingredient, {}, {}}};
    return result;
}

std::optional<Thing> Things::in_stock(const std::string& words, bool in_serves) const {
    for (const Index* index : {&here_, &stock_}) {
        const auto few = found(*index, index->names.find(words), in_serves);
        if (few.size() == 1) return few.front();
    }
    return std::nullopt;
}

/// Whether what is in stock is meant rather than what the words say more exactly.
bool Things::rather(const Thing& stocked, const Thing& thing) const {
    const auto& catalogue = kitchen_->catalogue();
    return catalogue[stocked.ingredient].kind == catalogue::Kind::cooked ||
           catalogue[stocked.ingredient].family == catalogue[thing.ingredient].family;
}

tl::expected<Thing, Failure> Things::meant(const std::string& words, bool in_serves) const {
    if (const auto number = for_ == For::stock ? lot_number(words) : std::nullopt) {
        const auto* lot = kitchen_->lot(*number);
        if (lot != nullptr) return Thing{lot->ingredient, lot->dish, number};
        return failure(not_understood, {{words, "there is no such lot, or nothing is left of it", "the number of a lot",
                                         "'samebase stock' shows the numbers"}});
    }
    const auto match = everything_.names.find(words);
    const auto all = found(everything_, match, in_serves);
    if (all.empty()) {
        return one_clear(everything_.names, words, "the name of something to eat").map([](const auto&) {
            return Thing{};
        });
    }
    const auto stocked = in_stock(words, in_serves);
    if (all.size() == 1) {
        const auto same = [&](const Thing& thing) { return thing.ingredient == all.front().ingredient; };
        const bool there = std::any_of(stock_.things.begin(), stock_.things.end(), same);
        const bool counts_otherwise = in_serves && !kitchen_->catalogue()[all.front().ingredient].in_serves;
        const bool other =
            for_ == For::stock && stocked && (!there || counts_otherwise) && rather(*stocked, all.front());
        return other ? *stocked : all.front();
    }
    if (stocked) return *stocked;
    return failure(not_understood, {{words, fmt::format("several things are called that: {}", quoted(match.found)),
                                     "one clear name", std::nullopt}});
}

tl::expected<basics::Day, Failure> day_meant(const std::string& text, basics::Day today, const std::string& where) {
    if (const auto day = basics::read_day(text, today)) return *day;
    return failure(not_understood,
                   {{where, fmt::format("'{}'", text), "a day: 2026-12-04, fri, tomorrow, +3", std::nullopt}});
}

tl::expected<basics::Span, Failure> span_meant(const std::string& text, basics::Day today, const std::string& where) {
    constexpr int most_days = 2 * 366;
    const auto span = basics::read_span(text, today);
    if (span && span->length() <= most_days) return *span;
    if (span) {
        return failure(not_understood, {{where, fmt::format("'{}' is {} days long", text, span->length()),
                                         "at most two years", std::nullopt}});
    }
    const auto dots = text.find("..");
    const auto first = basics::read_day(text.substr(0, dots), today);
    const auto last = dots == std::string::npos ? std::nullopt : basics::read_day(text.substr(dots + 2), today);
    if (first && last) {
        return failure(not_understood, {{where, fmt::format("'{}' ends before it begins", text), "the first day first",
                                         fmt::format("{}..{}", basics::iso(*last), basics::iso(*first))}});
    }
    return failure(not_understood,
                   {{where, fmt::format("'{}'", text),
                     "a month, a year, a week or days: december, 2026-12, 2027, week, 2026-12-01..2026-12-24, fri",
                     std::nullopt}});
}

tl::expected<basics::Span, Failure> span_or_horizon(const std::string& text, const kitchen::Kitchen& kitchen,
                                                    basics::Day today, const std::string& where) {
    if (text.empty()) return basics::Span{today, flow::horizon(kitchen, today)};
    return span_meant(text, today, where);
}

std::string joined(const std::vector<std::string>& words) {
    std::string result;
    for (const auto& word : words) result += (result.empty() ? "" : " ") + word;
    return result;
}

tl::expected<std::string, Failure> remark(const std::vector<std::string>& words, const std::string& where) {
    const std::string text = joined(words);
    std::size_t more = 0;  // bytes that the present character goes on for
    bool fine = true;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        const bool goes_on = (byte & 0xC0U) == 0x80U;
        fine = fine && goes_on == (more > 0) && byte >= 0x20 && byte != 0x7F && byte < 0xF5 && byte != 0xC0 &&
               byte != 0xC1;
        if (goes_on) {
            more -= more > 0 ? 1 : 0;
        } else {
            more = byte < 0xC0 ? 0 : byte < 0xE0 ? 1 : byte < 0xF0 ? 2 : 3;
        }
    }
    if (fine && more == 0) return text;
    return failure(not_understood, {{where, "is not plain text", "one line of UTF-8", std::nullopt}});
}

std::vector<std::string> split_at_commas(const std::string& text) {
    std::vector<std::string> parts;
    for (std::size_t at = 0; at <= text.size();) {
        const auto comma = std::min(text.find(',', at), text.size());
        std::string part = text.substr(at, comma - at);
        at = comma + 1;
        const auto first = part.find_first_not_of(' ');
        if (first == std::string::npos) continue;
        parts.push_back(part.substr(first, part.find_last_not_of(' ') - first + 1));
    }
    return parts;
}

}  // namespace samebase::cli
