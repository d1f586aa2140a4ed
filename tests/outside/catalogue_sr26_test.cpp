// Densities, weights of pieces and edible shares of the catalogue against USDA SR26 (sr26_figures.hpp).
//
// Tolerances. Cups and spoons: 10 % either way, as how loosely a thing lies in a cup moves it by that. Pieces: 20 %, as
// shops sell other sizes in another country; what is compared is what is eaten of one, since SR26 weighs the edible
// part. Edible share: two hundredths. Where we differ by more on purpose, `differences` says why, and a difference that
// has gone is an error too.
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "outside/sr26_figures.hpp"
#include "support/shipped.hpp"
#include "support/table.hpp"

using namespace samebase;
using tests::Row;

namespace {

constexpr double us_cup = 236.588;  // mL

/// Our ingredient | what differs | why
constexpr const char* differences = R"(
mustard-seeds  | density | SR26 weighs them ground, ours are whole
garlic         | piece   | a clove is 5 g in Australian shops; SR26's 3 g is a small one
carrot         | piece   | Australian carrots are sold at 100 to 150 g; SR26's largest is 72 g
beetroot       | piece   | SR26's is 2 inches across; a loose one is bought larger
potato         | piece   | SR26 weighs it in its skin: our 180 g lie between its small (170 g) and its medium (213 g)
sweet-potato   | piece   | SR26's is 5 inches long; the red ones of Australian shops weigh 300 g and more
avocado        | piece   | SR26's 201 g are eaten of a fruit, Florida ones among them; a shop's weighs 200 g whole
eggplant       | piece   | SR26's is a fruit of 1 1/4 lb; ours is 450 g whole
asparagus      | piece   | a spear is sold trimmed: SR26's medium weighs our 16 g ready to cook
eggs           | edible  | counted and weighed without the shell
dates          | edible  | sold without pits
almonds        | edible  | sold without shells
walnuts        | edible  | sold without shells
pecans         | edible  | sold without shells
hazelnuts      | edible  | sold without shells
parsley        | edible  | the stems are chopped and eaten too
basil          | edible  | recipes measure the leaves
)";

/// "1 cup, chopped" in mL; "2 tbsp".
double millilitres(const std::string& measure) {
    const double count = std::strtod(measure.c_str(), nullptr);
    if (measure.find("tbsp") != std::string::npos || measure.find("tablespoon") != std::string::npos)
        return count * us_cup / 16;
    if (measure.find("tsp") != std::string::npos) return count * us_cup / 48;
    REQUIRE(measure.find("cup") != std::string::npos);
    return count * us_cup;
}

double grams_per_ml(const catalogue::Ingredient& thing) {
    return static_cast<double>(thing.conversion.mg_per_ml.value_or(0)) / 1000;
}

double edible(const catalogue::Ingredient& thing) {
    return thing.edible_thousandths / 1000.0;
}

/// What is eaten of one piece, in grams.
double eaten_of_one(const catalogue::Ingredient& thing, double refuse) {
    const double whole = static_cast<double>(thing.conversion.mg_per_piece.value_or(0)) / 1000;
    return refuse > 0 ? whole * edible(thing) : whole;
}

using Key = std::pair<std::string, std::string>;  // ingredient, what differs

std::map<Key, std::string> on_purpose() {
    std::map<Key, std::string> result;
    for (const Row& row : tests::read_table(differences)) result[{row[0], row[1]}] = row[2];
    return result;
}

}  // namespace

TEST_CASE("cups, spoons, pieces and edible shares are those of SR26") {
    const auto differ = on_purpose();
    std::set<Key> differed;
    std::set<std::string> ingredients;
    int figures = 0;
    for (const Row& row : tests::read_table(tests::sr26_figures)) {
        const catalogue::Ingredient& thing = tests::shipped_catalogue()[tests::shipped_ingredient(row[0])];
        ingredients.insert(row[0]);
        const double refuse = row.number(7);
        const auto check = [&](const std::string& what, const std::string& measure, double ours, double theirs,
                               bool near) {
            ++figures;
            if (differ.count({row[0], what}) != 0) {
                if (!near) differed.insert({row[0], what});
                return;
            }
            INFO(row[0] << ", " << what << " by " << measure << ": ours " << ours << ", published " << theirs << " ("
                        << row.source << ", NDB " << row[1] << ", " << row[2] << ")");
            CHECK(near);
        };
        if (!row[3].empty()) {
            const double theirs = row.number(4) / millilitres(row[3]);
            const double ours = grams_per_ml(thing);
            check("density", row[3], ours, theirs, std::abs(ours / theirs - 1) <= 0.10);
        }
        if (!row[5].empty()) {
            const double theirs = row.number(6) / std::strtod(row[5].c_str(), nullptr);
            const double ours = eaten_of_one(thing, refuse);
            check("piece", row[5], ours, theirs, std::abs(ours / theirs - 1) <= 0.20);
        }
        if (refuse > 0) {
            const double theirs = 1 - refuse / 100;
            check("edible", "refuse", edible(thing), theirs, std::abs(edible(thing) - theirs) <= 0.02 + 1e-9);
        }
    }
    CHECK(ingredients.size() >= 60);
    CHECK(figures >= 200);
    for (const auto& [key, why] : differ) {
        INFO(key.first << ", " << key.second << ", said to differ: " << why);
        CHECK(differed.count(key) == 1);
    }
}
