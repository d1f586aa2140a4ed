// Household measures against what standards bodies publish. The figures are restated here, each with its source.
#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "measure/measure_set.hpp"
#include "measure/written.hpp"

using namespace samebase::measure;

namespace {

struct Figure {
    const char* text;    ///< an amount as written
    double value;        ///< millilitres or grams, as published
    double half_a_step;  ///< half of the last figure that the source gives: how far off a rounded figure may be
};

/// Millilitres or grams.
double read(const char* text, MeasureSet set) {
    const auto amount = read_amount(text, set);
    REQUIRE(amount);
    return static_cast<double>(std::get<Amount>(amount->amount).value()) / 1000.0;
}

void check_all(MeasureSet set, const std::vector<Figure>& figures) {
    for (const Figure& figure : figures) {
        INFO(figure.text << ": read " << read(figure.text, set) << ", published " << figure.value);
        CHECK(std::abs(read(figure.text, set) - figure.value) <= figure.half_a_step);
    }
}

constexpr double exact = 0.0005 + 1e-9;  // amounts are whole microlitres and milligrams, rounded once

}  // namespace

TEST_CASE("Australian cups and spoons are those of the metric set") {
    // NSW Health, Healthy Kids conversion chart, citing the cup and spoon sets of the Standards Association of
    // Australia: cup 250 mL, tablespoon 20 mL, teaspoon 5 mL, half a cup 125 mL, half a teaspoon 2.5 mL, a quarter
    // teaspoon 1.25 mL.
    check_all(MeasureSet::australian_metric, {{"1 cup", 250, exact},
                                              {"1 tablespoon", 20, exact},
                                              {"4 teaspoons", 20, exact},
                                              {"1 teaspoon", 5, exact},
                                              {"1/2 cup", 125, exact},
                                              {"1/2 teaspoon", 2.5, exact},
                                              {"1/4 teaspoon", 1.25, exact}});
    // The same chart gives a third of a cup as 80 mL and a quarter as 60 mL, as those cups are sold; exactly they are
    // 83.33 mL and 62.5 mL, and that is how they are read.
    check_all(MeasureSet::australian_metric, {{"1/3 cup", 83.333, exact}, {"1/4 cup", 62.5, exact}});
    CHECK(std::abs(read("1/3 cup", MeasureSet::australian_metric) - 80) < 5);
    CHECK(std::abs(read("1/4 cup", MeasureSet::australian_metric) - 60) < 5);
    // Australian cookery pages: elsewhere (New Zealand, United Kingdom, North America) the tablespoon is 15 mL.
    check_all(MeasureSet::metric_15, {{"1 cup", 250, exact}, {"1 tablespoon", 15, exact}, {"1 teaspoon", 5, exact}});
}

TEST_CASE("US customary measures are exact to the microlitre") {
    // From 1 US gallon = 231 cubic inches and 1 inch = 25.4 mm; the values printed in UCUM (ucum.org).
    check_all(MeasureSet::us_customary, {{"1 cup", 236.5882365, exact},
                                         {"1 tablespoon", 14.78676478125, exact},
                                         {"1 teaspoon", 4.92892159375, exact},
                                         {"1 fl oz", 29.5735295625, exact},
                                         {"1 pint", 473.176473, exact},
                                         {"1 quart", 946.352946, exact},
                                         {"1 gallon", 3785.411784, exact},
                                         {"1000 gallons", 3785411.784, exact}});
}

TEST_CASE("NIST's kitchen figures are ours, rounded") {
    // NIST, Metric Household Measures, and SP 430 (nist.gov): cup 237 mL, tablespoon 15 mL, teaspoon 4.9 mL, quarter
    // cup 59 mL, half cup 118 mL, pint 473 mL, quart 946 mL.
    check_all(MeasureSet::us_customary, {{"1 cup", 237, 0.5},
                                         {"1 tablespoon", 15, 0.5},
                                         {"1 teaspoon", 4.9, 0.05},
                                         {"1/4 cup", 59, 0.5},
                                         {"1/2 cup", 118, 0.5},
                                         {"1 pint", 473, 0.5},
                                         {"1 quart", 946, 0.5}});
}

TEST_CASE("US food labels round household measures by less than two in a hundred") {
    // 21 CFR 101.9(b)(5)(viii): for labels a cup is 240 mL, a tablespoon 15 mL, a teaspoon 5 mL, a fluid ounce 30 mL
    // and an ounce 28 g. These are for labels only: a US recipe is read in customary measures, and the two stay this
    // close.
    const std::vector<Figure> labels{
        {"1 cup", 240, 0}, {"1 tablespoon", 15, 0}, {"1 teaspoon", 5, 0}, {"1 fl oz", 30, 0}, {"1 oz", 28, 0}};
    for (const Figure& label : labels) {
        INFO(label.text);
        CHECK(std::abs(read(label.text, MeasureSet::us_customary) / label.value - 1) < 0.02);
    }
}

TEST_CASE("avoirdupois weights are the same in every set") {
    // International yard and pound agreement of 1959: the pound is 453.59237 g; an ounce is a sixteenth.
    for (const MeasureSet set : measure_sets) {
        check_all(set, {{"1 lb", 453.59237, exact}, {"1 oz", 28.349523125, exact}, {"16 oz", 453.59237, exact}});
    }
}

TEST_CASE("imperial measures follow from the gallon") {
    // The imperial gallon is 4546.09 mL; a pint is an eighth, a fluid ounce a hundred-and-sixtieth. The traditional
    // tablespoon is 5/8 of a fluid ounce (17.758 mL, conversion pages).
    check_all(MeasureSet::imperial, {{"1 gallon", 4546.09, exact},
                                     {"1 pint", 568.26125, exact},
                                     {"1 fl oz", 28.4130625, exact},
                                     {"1 tablespoon", 17.758, exact}});
    // The Australian chart rounds an imperial pint to 600 mL, a pound to 500 g and an ounce to 30 g for cookery.
    // Reading does not: it keeps the exact pint, so that nothing in stock is made up.
    check_all(MeasureSet::australian_metric, {{"1 pint", 568.26125, exact}});
}
