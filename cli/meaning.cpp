#include "meaning.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "flow/balance.hpp"
#include "kitchen/changes.hpp"
#include "show/terminal.hpp"

namespace samebase::cli {

using catalogue::NameIndex;

std::string spaced(std::string id) {
    for (char& c : id) c = c == '-' ? ' ' : c;
    return id;
}

void add_ingredient(const catalogue::Ingredient& thing, std::uint32_t key, std::uint8_t rank, NameIndex& index) {
    index.add(key, rank, thing.name);
    index.add(key, rank, spaced(thing.id));
    for (const auto& other : thing.also) index.add(key, rank, other);
}

std::string quoted(const std::vector<std::string>& names) {
    std::string result;
    for (const auto& name : names) result += fmt::format("{}'{}'", result.empty() ? "" : ", ", name);
    return result;
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

namespace {

enum Rank : std::uint8_t { of_ingredient, of_family, of_dish };

void add_dishes(const kitchen::Kitchen& kitchen, NameIndex& index) {
    std::uint32_t key = 0;
    for (const auto& dish : kitchen.cookbook().dishes()) {
        index.add(key, of_dish, dish.name);
        index.add(key++, of_dish, spaced(dish.id));
    }
}

void add_ingredients(const kitchen::Kitchen& kitchen, NameIndex& index) {
    std::uint32_t key = 0;
    for (const auto& thing : kitchen.catalogue().ingredients()) add_ingredient(thing, key++, of_ingredient, index);
    key = 0;
    for (const auto& family : kitchen.catalogue().families()) {
        index.add(key, of_family, family.name);
        index.add(key++, of_family, spaced(family.id));
    }
}

/// What the cook knows them by: names, never identifiers, each once.
std::string labels(const kitchen::Kitchen& kitchen, const std::vector<catalogue::Found>& found) {
    std::vector<std::string> names;
    for (const auto& f : found) {
        std::string name = f.rank == of_ingredient ? kitchen.catalogue()[catalogue::IngredientId{f.key}].name
                           : f.rank == of_family   ? kitchen.catalogue()[catalogue::FamilyId{f.key}].name
                                                   : kitchen.cookbook()[cookbook::DishId{f.key}].name;
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
    }
    return quoted(names);
}

/// "fish cakes" for "fish cakes with asparagus and poached eggs": what stands before the first word of what goes with
/// it.
std::string head_of(const std::string& dish) {
    std::size_t end = dish.find(',');
    for (const char* word : {" with ", " on ", " in ", " from ", " under "}) end = std::min(end, dish.find(word));
    return dish.substr(0, end);
}

/// Of several dishes the only one whose name begins with these words and goes on with what is beside it.
std::optional<catalogue::Found> by_head(const kitchen::Kitchen& kitchen, const std::vector<catalogue::Found>& found,
                                        const std::string& words) {
    constexpr std::size_t most_listed = 7;  // of more there may be others
    if (words.find(' ') == std::string::npos || found.size() > most_listed) return std::nullopt;
    NameIndex heads;
    for (const auto& f : found) {
        if (f.rank != of_dish) return std::nullopt;
        heads.add(f.key, f.rank, head_of(kitchen.cookbook()[cookbook::DishId{f.key}].name));
    }
    heads.finish();
    const auto match = heads.find(words);
    if (!match.whole || match.found.size() != 1) return std::nullopt;
    return match.found.front();
}

bool blank(const std::string& words) {
    return words.find_first_not_of(' ') == std::string::npos;
}

tl::expected<catalogue::Found, Failure> one_clear(const kitchen::Kitchen& kitchen, const NameIndex& index,
                                                  const std::string& words, const std::string& what) {
    if (blank(words)) return failure(not_understood, {{"arguments", "nothing is named", what, std::nullopt}});
    const auto match = index.find(words);
    if (match.found.size() == 1) return match.found.front();
    if (const auto head = by_head(kitchen, match.found, words)) return *head;
    if (!match.found.empty()) {
        return failure(not_understood, {{words, "several things are called that: " + labels(kitchen, match.found),
                                         "one clear name", std::nullopt}});
    }
    const auto hint =
        match.nearest.empty() ? std::nullopt : std::optional("the nearest: " + labels(kitchen, match.nearest));
    return failure(not_understood, {{words, "nothing is called that", what, hint}});
}

}  // namespace

tl::expected<Meant, Failure> meant(const kitchen::Kitchen& kitchen, const std::string& words) {
    if (const auto lot = lot_number(words)) return Meant{*lot};
    NameIndex index;
    add_ingredients(kitchen, index);
    add_dishes(kitchen, index);
    index.finish();
    return one_clear(kitchen, index, words, "the name of an ingredient, a family, a dish, or 'lot' and a number")
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
    return one_clear(kitchen, index, words, "the name of a dish").map([](const catalogue::Found& found) {
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
    return failure(not_understood,
                   {{blank(words) ? "arguments" : words, blank(words) ? "no place is named" : "no place is called that",
                     fmt::format("one of {}", fmt::join(known, ", ")), std::nullopt}});
}

tl::expected<catalogue::IngredientId, Failure> one_of_meant(const kitchen::Kitchen& kitchen,
                                                            const std::vector<catalogue::IngredientId>& few,
                                                            const std::string& words, const std::string& what) {
    NameIndex index;
    for (const auto id : few) add_ingredient(kitchen.catalogue()[id], id.value, of_ingredient, index);
    index.finish();
    return one_clear(kitchen, index, words, what).map([](const catalogue::Found& f) {
        return catalogue::IngredientId{f.key};
    });
}

tl::expected<basics::Day, Failure> day_meant(const std::string& text, basics::Day today, const std::string& where) {
    if (const auto day = basics::read_day(text, today)) return *day;
    return failure(not_understood,
                   {{where, fmt::format("'{}'", text), "a day: fri, 4 dec, tomorrow, +3, 2026-12-04", std::nullopt}});
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
    if (show::is_plain_line(text)) return text;
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
