// Whatever is done to a sound recipe, reading it gives a dish that can be read in, or problems that each have a place;
// it never crashes.
#include <fmt/format.h>
#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "exchange/detail/documents.hpp"
#include "exchange/imported.hpp"
#include "exchange/recipe.hpp"
#include "exchange/recipe_dish.hpp"
#include "support/law.hpp"
#include "support/shipped.hpp"

using namespace samebase;
using nlohmann::json;

namespace {

json sound() {
    return json::parse(R"json({"@context": "https://schema.org", "@graph": [{"@type": "WebPage"}, {
        "@type": ["Recipe"], "name": "Gandy dancers' pasta bake", "recipeYield": ["4", "4 servings"],
        "prepTime": "PT20M", "cookTime": "PT1H5M", "totalTime": "PT1H25M", "recipeCategory": "bake",
        "recipeIngredient": ["For the sauce:", "2 onions, chopped", "400 g tin chopped tomatoes", "Salt and pepper",
          "1/2 cup water", {"@type": "PropertyValue", "value": "3/4", "unitCode": "G21", "name": "milk"},
          "250 g penne", "100-150 g grated cheddar (optional)"],
        "recipeInstructions": [{"@type": "HowToSection", "name": "Sauce", "itemListElement": [
          {"@type": "HowToStep", "text": "Simmer."}]}, "Bake &frac12; hour."]}]
})json");
}

/// A value that may stand anywhere, or the odd one.
json odd_value() {
    static const std::vector<json> values{nullptr,
                                          true,
                                          0,
                                          -3,
                                          1e300,
                                          18446744073709551615ULL,
                                          "",
                                          "PT",
                                          "P1Y",
                                          "-1 onions",
                                          "1/0 cup milk",
                                          ":",
                                          ",",
                                          " and ",
                                          "9999999999999999999 kg onions",
                                          "lots of onions",
                                          "<p>",
                                          "&#0;",
                                          "\u00BD",
                                          json::array(),
                                          json::object(),
                                          {1, "x"},
                                          {{"@type", "HowToStep"}},
                                          {{"@value", "2 onions"}},
                                          {{"itemListElement", {{{"text", "y"}}}}},
                                          {{"name", "onion"}, {"value", {}}}};
    return values[*rc::gen::inRange<std::size_t>(0, values.size())];
}

/// Every value in the document.
void gather(json& value, std::vector<json*>& all) {
    all.push_back(&value);
    if (value.is_structured()) {
        for (auto& inner : value) gather(inner, all);
    }
}

/// One place of the document changed.
void change(json& document) {
    std::vector<json*> all;
    gather(document, all);
    json& at = *all[*rc::gen::inRange<std::size_t>(0, all.size())];
    if (at.is_string() && *rc::gen::arbitrary<bool>()) {
        auto text = at.get<std::string>();
        const auto place = *rc::gen::inRange<std::size_t>(0, text.size() + 1);
        const std::string more =
            *rc::gen::element<std::string>("", " ", "1", "-", "/", "(", ")", ",", "and", "\u00E9", "<", "&", "or");
        const auto rest = std::min(place + *rc::gen::inRange<std::size_t>(0, 4), text.size());
        at = fmt::format("{}{}{}", text.substr(0, place), more, text.substr(rest));
    } else if (at.is_array() && !at.empty() && *rc::gen::arbitrary<bool>()) {
        at.push_back(at[0]);
    } else {
        at = odd_value();
    }
}

void check_places(const basics::Problems& problems) {
    RC_ASSERT(!problems.empty());
    for (const auto& problem : problems) {
        RC_ASSERT(!problem.where.empty());
        RC_ASSERT(!problem.found.empty());
        RC_ASSERT(!problem.expected.empty());
        RC_ASSERT(basics::to_text(problem).size() < 2000U);
    }
}

/// Read as far as it goes; whether it became dishes.
bool read(const std::string& text) {
    const auto read = exchange::read_recipes(text, "r.json");
    if (!read) {
        check_places(read.error());
        return false;
    }
    const auto& known = tests::shipped();
    const auto dishes = exchange::dishes_of(read->recipes, {}, known);
    if (!dishes) {
        check_places(dishes.error());
        return false;
    }
    const auto addition = exchange::with_dishes("/nowhere", *dishes, false, known.cookbook);
    if (!addition) {
        check_places(addition.error());
        return false;
    }
    basics::Problems problems;
    const exchange::detail::Document document{"imported.json", json::parse(addition->draft.text)};
    const auto cookbook = exchange::detail::read_cookbook({}, {&document, 1}, known.catalogue, problems);
    for (const auto& problem : problems) RC_LOG() << basics::to_text(problem) << '\n';
    RC_ASSERT(problems.empty());
    RC_ASSERT(!cookbook.check(known.catalogue));
    RC_ASSERT(cookbook.dishes().size() == dishes->size());
    for (const auto& dish : *dishes) {
        const auto id = cookbook.dish(dish.id);
        RC_ASSERT(id.has_value());
        std::size_t in = 0;
        for (const auto& line : dish.lines) {
            if (!line.ingredient) continue;
            const auto& again = cookbook[*id].ingredients.at(in++);
            RC_ASSERT(again.ingredient == *line.ingredient);
            RC_ASSERT(again.amount == line.amount);
            RC_ASSERT(again.role == line.role);
        }
        RC_ASSERT(in == cookbook[*id].ingredients.size());
    }
    return true;
}

}  // namespace

TEST_CASE("a sound recipe with changes becomes a sound dish, or problems with places") {
    int became = 0;
    int failed = 0;
    tests::holds(600, [&] {
        json document = sound();
        for (int changes = *rc::gen::inRange(0, 4); changes > 0; --changes) change(document);
        (read(document.dump(-1, ' ', false, json::error_handler_t::replace)) ? became : failed) += 1;
    });
    CHECK(became > 50);  // or the law says nothing of dishes
    CHECK(failed > 50);
}

TEST_CASE("a text with bytes changed is read, or is a problem with a place") {
    const std::string whole = sound().dump();
    const std::string page = fmt::format("<html>\n<script type=\"application/ld+json\">\n{}\n</script></html>", whole);
    tests::holds(400, [&] {
        std::string text = *rc::gen::arbitrary<bool>() ? whole : page;
        for (int changes = *rc::gen::inRange(1, 5); changes > 0; --changes) {
            const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
            const auto kind = *rc::gen::inRange(0, 3);
            if (kind == 0) text[at] = static_cast<char>(*rc::gen::inRange(0, 256));
            if (kind == 1) text.erase(at, *rc::gen::inRange<std::size_t>(1, 30));
            if (kind == 2) text.resize(std::max<std::size_t>(at, 1));
            if (text.empty()) text.push_back(' ');
        }
        read(text);
    });
}
