#include "measure/measure_set.hpp"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

using namespace samebase::measure;

TEST_CASE("the names of measure sets are read as they are written, and nothing else is") {
    const std::vector<std::string> names{"australian-metric", "metric-15", "us-customary", "imperial"};
    std::vector<std::string> written;
    for (const MeasureSet set : measure_sets) {
        written.emplace_back(name(set));
        CHECK(read_measure_set(name(set)) == set);
    }
    CHECK(written == names);
    CHECK_FALSE(read_measure_set("metric"));
    CHECK_FALSE(read_measure_set("Imperial"));
    CHECK_FALSE(read_measure_set(""));
}

TEST_CASE("every written form of a unit finds it") {
    const std::vector<std::pair<std::string, std::vector<std::string>>> forms{
        {"g", {"g", "G", "g.", "gm", "gms", "gram", "grams", "Grams"}},
        {"kg", {"kg", "Kg", "KG", "kgs", "kilo", "kilos", "kilogram", "kilograms"}},
        {"mg", {"mg", "milligrams"}},
        {"oz", {"oz", "oz.", "ounce", "ounces"}},
        {"lb", {"lb", "lbs", "lb.", "pound", "pounds"}},
        {"mL", {"mL", "ml", "ML", "mls", "millilitre", "milliliters", "cc"}},
        {"dL", {"dL", "dl", "decilitre"}},
        {"L", {"L", "l", "litre", "litres", "liter", "liters", "ltr"}},
        {"cup", {"cup", "cups", "Cups", "c", "c."}},
        {"tablespoon", {"tablespoon", "tablespoons", "tbsp", "Tbsp", "tbsps", "tbs", "Tbs.", "tb", "T"}},
        {"teaspoon", {"teaspoon", "teaspoons", "tsp", "tsps", "t"}},
        {"dessertspoon", {"dessertspoon", "dessertspoons"}},
        {"fluid ounce", {"fluid ounce", "fluid ounces", "fl oz", "floz"}},
        {"pint", {"pint", "pints", "pt"}},
        {"quart", {"quart", "quarts", "qt"}},
        {"gallon", {"gallon", "gallons", "gal"}},
        {"pinch", {"pinch", "pinches"}},
        {"dash", {"dash", "dashes"}},
        {"drop", {"drop", "drops"}},
        {"clove", {"clove", "cloves"}},
        {"can", {"can", "cans", "tin", "tins"}},
        {"pack", {"pack", "packs", "packet", "packets", "package", "packages", "pkg"}},
        {"bunch", {"bunch", "bunches"}},
        {"stalk", {"stalk", "stalks", "rib", "ribs"}},
        {"stick", {"stick", "sticks"}},
        {"leaf", {"leaf", "leaves"}},
        {"loaf", {"loaf", "loaves"}},
        {"handful", {"handful", "handfuls", "handsful"}},
        {"serve", {"serve", "serves", "serving", "servings", "portion", "portions"}},
        {"glass", {"glass", "glasses"}},
    };
    for (const auto& [name, words] : forms) {
        for (const auto& word : words) {
            INFO(word);
            const auto unit = find_unit(word);
            REQUIRE(unit);
            CHECK(unit->name == name);
            CHECK(unit->counted == (unit->dimension == Dimension::pieces));
        }
    }
    for (const char* word : {"", ".", "s", "gg", "onion", "cup of", "glas", "a very long word indeed"}) {
        CHECK_FALSE(find_unit(word));
    }
}

TEST_CASE("sizes keep their ratios exactly in every set") {
    const auto times = [](const char* word, MeasureSet set, std::int64_t factor) {
        const Size size = find_unit(word)->size(set);
        return std::pair{static_cast<long double>(size.numerator) * static_cast<long double>(factor), size.denominator};
    };
    // larger == factor * smaller, by cross-multiplying; the products are below 2^63 and so exact.
    const auto same = [&](const char* larger, std::int64_t factor, const char* smaller, MeasureSet set) {
        const auto [left, below] = times(larger, set, 1);
        const auto [right, under] = times(smaller, set, factor);
        return left * static_cast<long double>(under) == right * static_cast<long double>(below);
    };
    for (const MeasureSet set : measure_sets) {
        INFO(name(set));
        CHECK(same("teaspoon", 16, "pinch", set));
        CHECK(same("teaspoon", 8, "dash", set));
        CHECK(same("pint", 4, "gill", set));
        CHECK(same("quart", 2, "pint", set));
        CHECK(same("gallon", 4, "quart", set));
        CHECK(same("lb", 16, "oz", set));
        CHECK(same("L", 1000, "mL", set));
    }
    CHECK(same("tablespoon", 4, "teaspoon", MeasureSet::australian_metric));
    CHECK(same("dessertspoon", 2, "teaspoon", MeasureSet::australian_metric));
    for (const MeasureSet set : {MeasureSet::metric_15, MeasureSet::us_customary, MeasureSet::imperial}) {
        CHECK(same("tablespoon", 3, "teaspoon", set));
        CHECK(same("dessertspoon", 2, "teaspoon", set));
    }
    CHECK(same("cup", 16, "tablespoon", MeasureSet::us_customary));
    CHECK(same("cup", 10, "fluid ounce", MeasureSet::imperial));
    CHECK(same("pint", 20, "fluid ounce", MeasureSet::imperial));
    CHECK(same("pint", 16, "fluid ounce", MeasureSet::us_customary));
}
