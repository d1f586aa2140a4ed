#include "measure/measure_set.hpp"

#include <algorithm>
#include <string>

namespace samebase::measure {

namespace {

using Sizes = std::array<Size, measure_set_count>;

constexpr std::array<std::string_view, measure_set_count> set_names{"australian-metric", "metric-15", "us-customary",
                                                                    "imperial"};

constexpr Sizes in_all(std::int64_t numerator, std::int64_t denominator = 1) {
    const Size size{numerator, denominator};
    return {size, size, size, size};
}

constexpr Sizes in_sets(Size metric, Size us, Size imperial) {
    return {metric, metric, us, imperial};
}

// The US cup is 236588.2365 uL (US gallon / 16 = 231 cubic inches / 16, the inch 25.4 mm), the imperial gallon 4546090
// uL. The avoirdupois pound is 453592.37 mg (agreement of 1959).
constexpr std::int64_t us_cup = 473'176'473;      // over 2000
constexpr std::int64_t imperial_cup = 2'273'045;  // over 8: ten fluid ounces
constexpr std::int64_t pound = 45'359'237;        // over 100

constexpr std::array units{
    Unit{"mg", Dimension::mass, false, in_all(1)},
    Unit{"g", Dimension::mass, false, in_all(1000)},
    Unit{"kg", Dimension::mass, false, in_all(1'000'000)},
    Unit{"oz", Dimension::mass, false, in_all(pound, 1600)},
    Unit{"lb", Dimension::mass, false, in_all(pound, 100)},
    Unit{"mL", Dimension::volume, false, in_all(1000)},
    Unit{"cL", Dimension::volume, false, in_all(10'000)},
    Unit{"dL", Dimension::volume, false, in_all(100'000)},
    Unit{"L", Dimension::volume, false, in_all(1'000'000)},
    Unit{"cup", Dimension::volume, false, in_sets({250'000, 1}, {us_cup, 2000}, {imperial_cup, 8})},
    Unit{"tablespoon",
         Dimension::volume,
         false,
         {Size{20'000, 1}, Size{15'000, 1}, Size{us_cup, 32'000}, Size{imperial_cup, 128}}},
    Unit{"dessertspoon", Dimension::volume, false, in_sets({10'000, 1}, {us_cup, 48'000}, {imperial_cup, 192})},
    Unit{"teaspoon", Dimension::volume, false, in_sets({5000, 1}, {us_cup, 96'000}, {imperial_cup, 384})},
    // Common practice: a dash is an eighth of a teaspoon, a pinch a sixteenth, and twenty drops are a millilitre.
    Unit{"dash", Dimension::volume, false, in_sets({625, 1}, {us_cup, 768'000}, {imperial_cup, 3072})},
    Unit{"pinch", Dimension::volume, false, in_sets({625, 2}, {us_cup, 1'536'000}, {imperial_cup, 6144})},
    Unit{"drop", Dimension::volume, false, in_all(50)},
    Unit{"fluid ounce", Dimension::volume, false, in_sets({imperial_cup, 80}, {us_cup, 16'000}, {imperial_cup, 80})},
    Unit{"gill", Dimension::volume, false, in_sets({imperial_cup, 16}, {us_cup, 4000}, {imperial_cup, 16})},
    Unit{"pint", Dimension::volume, false, in_sets({imperial_cup, 4}, {us_cup, 1000}, {imperial_cup, 4})},
    Unit{"quart", Dimension::volume, false, in_sets({imperial_cup, 2}, {us_cup, 500}, {imperial_cup, 2})},
    Unit{"gallon", Dimension::volume, false, in_sets({4'546'090, 1}, {us_cup, 125}, {4'546'090, 1})},
};

struct Word {
    std::string_view written;
    std::string_view unit;
};

// Words that differ from the unit's name in more than case or a plural "s".
constexpr std::array unit_words{
    Word{"gm", "g"},
    Word{"gr", "g"},
    Word{"gram", "g"},
    Word{"gramme", "g"},
    Word{"kilo", "kg"},
    Word{"kilogram", "kg"},
    Word{"kilogramme", "kg"},
    Word{"milligram", "mg"},
    Word{"ounce", "oz"},
    Word{"pound", "lb"},
    Word{"millilitre", "mL"},
    Word{"milliliter", "mL"},
    Word{"cc", "mL"},
    Word{"mil", "mL"},
    Word{"centilitre", "cL"},
    Word{"centiliter", "cL"},
    Word{"decilitre", "dL"},
    Word{"deciliter", "dL"},
    Word{"litre", "L"},
    Word{"liter", "L"},
    Word{"lt", "L"},
    Word{"ltr", "L"},
    Word{"c", "cup"},
    Word{"tb", "tablespoon"},
    Word{"tbl", "tablespoon"},
    Word{"tbs", "tablespoon"},
    Word{"tbsp", "tablespoon"},
    Word{"tblsp", "tablespoon"},
    Word{"tsp", "teaspoon"},
    Word{"dsp", "dessertspoon"},
    Word{"dstsp", "dessertspoon"},
    Word{"dashes", "dash"},
    Word{"pinches", "pinch"},
    Word{"floz", "fluid ounce"},
    Word{"fl oz", "fluid ounce"},
    Word{"fluid oz", "fluid ounce"},
    Word{"fl ounce", "fluid ounce"},
    Word{"pt", "pint"},
    Word{"qt", "quart"},
    Word{"gal", "gallon"},
};

// What is counted, by its singular name; a plural in "s" needs no row of its own.
constexpr std::array<std::string_view, 49> count_names{
    "bag",    "ball",   "bar",    "block", "bottle",   "box",    "branch", "bulb",  "bunch",   "can",
    "carton", "clove",  "cube",   "ear",   "envelope", "fillet", "floret", "glass", "handful", "head",
    "jar",    "knob",   "leaf",   "loaf",  "log",      "pack",   "piece",  "pot",   "punnet",  "rack",
    "rasher", "roll",   "sachet", "scoop", "segment",  "serve",  "sheet",  "slab",  "slice",   "spear",
    "sprig",  "square", "stalk",  "stick", "strip",    "tray",   "tub",    "tube",  "wedge"};

constexpr std::array count_words{
    Word{"boxes", "box"},    Word{"branches", "branch"}, Word{"bunches", "bunch"},    Word{"tin", "can"},
    Word{"filet", "fillet"}, Word{"glasses", "glass"},   Word{"handsful", "handful"}, Word{"leaves", "leaf"},
    Word{"loaves", "loaf"},  Word{"packet", "pack"},     Word{"package", "pack"},     Word{"pkg", "pack"},
    Word{"pkt", "pack"},     Word{"pc", "piece"},        Word{"serving", "serve"},    Word{"portion", "serve"},
    Word{"rib", "stalk"},
};

std::optional<Unit> unit_named(std::string_view text) {
    const auto same = [&](const Unit& unit) {
        return std::equal(unit.name.begin(), unit.name.end(), text.begin(), text.end(),
                          [](char a, char b) { return (a == 'L' ? 'l' : a) == b; });
    };
    if (const auto* unit = std::find_if(units.begin(), units.end(), same); unit != units.end()) return *unit;
    const auto is_text = [&](const Word& word) { return word.written == text; };
    if (const auto* word = std::find_if(unit_words.begin(), unit_words.end(), is_text); word != unit_words.end()) {
        const auto named = [&](const Unit& unit) { return unit.name == word->unit; };
        return *std::find_if(units.begin(), units.end(), named);
    }
    const auto counted = [](std::string_view name) { return Unit{name, Dimension::pieces, true, in_all(1000)}; };
    if (const auto* found = std::find(count_names.begin(), count_names.end(), text); found != count_names.end()) {
        return counted(*found);
    }
    if (const auto* word = std::find_if(count_words.begin(), count_words.end(), is_text); word != count_words.end()) {
        return counted(word->unit);
    }
    return std::nullopt;
}

constexpr std::size_t longest_word = 16;

}  // namespace

std::string_view name(MeasureSet set) {
    return set_names[static_cast<std::size_t>(set)];
}

std::optional<MeasureSet> read_measure_set(std::string_view text) {
    for (const MeasureSet set : measure_sets) {
        if (name(set) == text) return set;
    }
    return std::nullopt;
}

std::optional<Unit> find_unit(std::string_view word) {
    if (!word.empty() && word.back() == '.') word.remove_suffix(1);
    if (word.empty() || word.size() > longest_word) return std::nullopt;
    if (word == "T") return unit_named("tablespoon");
    if (word == "t") return unit_named("teaspoon");
    std::string folded(word);
    for (char& letter : folded) {
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    }
    if (const auto unit = unit_named(folded)) return unit;
    if (folded.size() < 2 || folded.back() != 's') return std::nullopt;
    folded.pop_back();
    return unit_named(folded);
}

}  // namespace samebase::measure
