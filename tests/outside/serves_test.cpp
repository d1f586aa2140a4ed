// Amounts per serve of every shipped dish against published serve sizes.
//
// A serve of meat, fish, eggs, pulses, tofu or nuts is that of the Australian guidelines below. The sum over what a
// dish is about (role main) is between 0.4 of a serve (a pizza or fried rice with a little bacon) and 2.5 (a joint that
// is also tomorrow's lunch), and over the whole dish at most 3.5; with as little or as much as a recipe says that it
// bears, between 0.3 and 3. Adults are advised to two to three serves a day (the same source). A leftover that is a
// meal by itself counts in its own serves: 0.4 to 1.6 of one. Dry and cooked weights of cereals, and whole weights of
// meals, are common practice: no published figure is used.
#include <catch2/catch.hpp>
#include <map>
#include <string>
#include <string_view>

#include "support/shipped.hpp"
#include "support/table.hpp"

using namespace samebase;
using catalogue::Role;
using tests::Row;

namespace {

/// Item | grams of a serve | condition | status | what we take | our families and ingredients.
/// The condition gives raw weights where the food is bought raw. Pulses that are bought dry: 60 g, which SR26's yields
/// (about 2.5) make 150 g of. Leftover roasts are cooked meat.
constexpr const char* published_serves = R"(
@ NHMRC, Eat for Health: Australian Dietary Guidelines (2013), Tables 2.11 and 2.12 (stored copy of the book page)
lean red meat, cooked    | 65  | about 90-100 g raw       | seen | 95  | red-meat mince offal sausages cured-meat
lean red meat, cooked    | 65  | about 90-100 g raw       | seen | 65  | cold-roast-beef cold-roast-lamb cold-roast-pork cold-corned-beef
lean red meat, cooked    | 65  | about 90-100 g raw       | seen | 65  | cold-ham-slices cooked-sausages
poultry, cooked          | 80  | about 100 g raw          | seen | 100 | poultry
poultry, cooked          | 80  | about 100 g raw          | seen | 80  | cold-roast-chicken cold-turkey
fish fillet, cooked      | 100 | about 115 g raw          | seen | 115 | white-fish oily-fish crustaceans molluscs
fish fillet, cooked      | 100 | about 115 g raw          | seen | 100 | smoked-fish tinned-fish cold-cooked-fish cold-cooked-salmon
eggs                     | 120 | 2 large eggs             | seen | 120 | all-eggs hard-boiled-eggs
legumes cooked or canned | 150 | 1 cup, meat alternative  | seen | 150 | cooked-pulses cooked-chickpeas cooked-lentils cooked-beans
legumes cooked or canned | 150 | 1 cup, meat alternative  | seen | 60  | dried-pulses
tofu                     | 170 |                          | seen | 170 | tofu-and-tempeh
nuts/seeds               | 30  |                          | seen | 30  | nuts peanuts peanut-butter
)";

/// Our family | least and most grams a serve where it is the dish's starch, uncooked. Common practice.
constexpr const char* common_starches = R"(
pasta      | 20 | 125
rice       | 10 | 100
grains     | 5  | 100
noodles    | 40 | 200
bread      | 20 | 125
flatbreads | 10 | 125
potatoes   | 35 | 350
)";

std::map<catalogue::IngredientId, double> grams_of_a_serve() {
    std::map<catalogue::IngredientId, double> result;
    for (const Row& row : tests::read_table(published_serves)) {
        for (const std::string& ours : tests::words(row[5])) {
            for (const auto id : tests::shipped_members(ours)) result[id] = row.number(4);
        }
    }
    return result;
}

/// What is eaten of it, in grams for one serve of the dish.
double eaten(const cookbook::DishIngredient& part, const cookbook::Dish& dish) {
    const catalogue::Ingredient& thing = tests::shipped_catalogue()[part.ingredient];
    const auto weight = catalogue::weight(part.amount, thing);
    INFO(dish.id << ", " << thing.id << ": the weight of " << part.written << " is not known");
    REQUIRE(weight);
    return static_cast<double>(weight->value) / 1000 * thing.edible_thousandths / 1000 / dish.serves;
}

}  // namespace

TEST_CASE("a dish holds a plausible number of published serves of what it is about") {
    const auto serve = grams_of_a_serve();
    const auto bones = tests::shipped_catalogue().family("bones");  // one serve of them is the bones of a roast
    REQUIRE(bones);
    int compared = 0;
    for (const cookbook::Dish& dish : tests::shipped().cookbook.dishes()) {
        double main = 0;
        double least = 0;  ///< of what it is about, as far down as the recipe bears it
        double most = 0;
        double whole = 0;
        double leftovers = 0;
        for (const auto& part : dish.ingredients) {
            const auto known = serve.find(part.ingredient);
            if (known != serve.end()) {
                const double serves = eaten(part, dish) / known->second;
                whole += serves;
                if (part.role != Role::main) continue;
                main += serves;
                least += serves * part.least_thousandths / 1000;
                most += serves * part.most_thousandths / 1000;
            } else if (part.role == Role::main && tests::shipped_catalogue()[part.ingredient].in_serves &&
                       !tests::shipped_catalogue().belongs(part.ingredient, *bones)) {
                leftovers += static_cast<double>(part.amount.value()) / 1000 / dish.serves;
            }
        }
        INFO(dish.id << ": " << main << " published serves in what it is about, " << whole << " in all, " << leftovers
                     << " serves of leftovers");
        CHECK(whole <= 3.5 + 1e-9);
        if (main + leftovers <= 0) continue;
        ++compared;
        CHECK(main <= 2.5 + 1e-9);
        CHECK(most <= 3 + 1e-9);
        CHECK(leftovers <= 1.6 + 1e-9);
        CHECK(main + leftovers >= 0.4 - 1e-9);
        CHECK(least + leftovers >= 0.3 - 1e-9);
    }
    CHECK(compared >= 400);
}

TEST_CASE("the starch of a dish is what people commonly eat of it") {
    for (const Row& row : tests::read_table(common_starches)) {
        const auto family = tests::shipped_catalogue().family(row[0]);
        REQUIRE(family);
        for (const cookbook::Dish& dish : tests::shipped().cookbook.dishes()) {
            double grams = 0;
            for (const auto& part : dish.ingredients) {
                const bool counts =
                    part.role == Role::starch && tests::shipped_catalogue().belongs(part.ingredient, *family);
                if (counts) grams += eaten(part, dish);
            }
            if (grams <= 0) continue;
            INFO(dish.id << ": " << grams << " g a serve of " << row[0]);
            CHECK(grams >= row.number(1));
            CHECK(grams <= row.number(2));
        }
    }
}

TEST_CASE("no dish is too little or too much to eat") {
    // Common practice: 200 to 900 g a serve for a dinner and 180 to 850 g for a lunch, the water of soups left out.
    for (const cookbook::Dish& dish : tests::shipped().cookbook.dishes()) {
        if (dish.ingredients.empty()) continue;  // a night without cooking
        double grams = 0;
        for (const auto& part : dish.ingredients) grams += eaten(part, dish);
        INFO(dish.id << ": " << grams << " g a serve");
        CHECK(grams >= (dish.dinner ? 200 : 180));
        CHECK(grams <= (dish.dinner ? 900 : 850));
    }
}
