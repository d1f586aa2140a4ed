#include "meaning.hpp"

#include <fmt/format.h>

#include <charconv>

#include "catalogue/names.hpp"

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

void add_ingredients(const kitchen::Kitchen& kitchen, NameIndex& index) {
    std::uint32_t key = 0;
    for (const auto& thing : kitchen.catalogue().ingredients()) {
        index.add(key, of_ingredient, thing.name);
        index.add(key, of_ingredient, spaced(thing.id));
        for (const auto& other : thing.also) index.add(key, of_ingredient, other);
        ++key;
    }
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

tl::expected<catalogue::Found, Failure> one_clear(const NameIndex& index, const std::string& words, const std::string& what) {
    const auto match = index.find(words);
    if (match.found.size() == 1) return match.found.front();
    if (!match.found.empty()) {
        return failure(not_understood, {{words, "several things are called that: " + quoted(match.found), "one clear name", std::nullopt}});
    }
    const auto hint = match.nearest.empty() ? std::nullopt : std::optional("the nearest: " + quoted(match.nearest));
    return failure(not_understood, {{words, "nothing is called that", what, hint}});
}

std::optional<stock::LotNumber> lot_number(const std::string& words) {
    constexpr std::string_view head = "lot ";
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
    return one_clear(index, words, "the name of a dish").map([](const catalogue::Found& found) { return cookbook::DishId{found.key}; });
}

tl::expected<basics::Day, Failure> day_meant(const std::string& text, basics::Day today, const std::string& where) {
    if (const auto day = basics::read_day(text, today)) return *day;
    return failure(not_understood, {{where, fmt::format("'{}'", text), "a day: 2026-12-04, fri, tomorrow, +3", std::nullopt}});
}

std::string joined(const std::vector<std::string>& words) {
    std::string result;
    for (const auto& word : words) result += (result.empty() ? "" : " ") + word;
    return result;
}

}  // namespace samebase::cli
