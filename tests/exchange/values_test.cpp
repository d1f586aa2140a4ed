// Identifiers, keys and values that a document may not have: the whole text of each message.
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "exchange/tiny_documents.hpp"

using namespace samebase;
using nlohmann::json;
using tests::said;
using tests::without;
using Lines = std::vector<std::string>;

namespace {

constexpr const char* families = "catalogue/families.json";
constexpr const char* ingredients = "catalogue/ingredients.json";
constexpr const char* stand_ins = "stand_ins/all.json";
constexpr const char* dishes = "dishes/all.json";
constexpr const char* kitchen_json = "kitchen.json";
constexpr const char* stock_json = "stock.json";

}  // namespace

TEST_CASE("an identifier that occurs more than once is reported each time") {
    tests::TinyDocuments tiny;
    for (const char* place : {"/places/1/id", "/places/2/id"}) tiny[kitchen_json][json::json_pointer(place)] = "chest";
    tiny[kitchen_json]["/people/1/id"_json_pointer] = "kim";
    CHECK(tiny.problems() ==
          Lines{"kitchen.json, /people/1 (Lee): 'kim' once more; expected an identifier that occurs once",
                "kitchen.json, /places/1: 'chest' once more; expected an identifier that occurs once",
                "kitchen.json, /places/2: 'chest' once more; expected an identifier that occurs once"});
    CHECK(said(ingredients, "/ingredients/1/id", "beef-mince") ==
          Lines{"catalogue/ingredients.json, /ingredients/1: 'beef-mince' once more; expected an identifier that "
                "occurs once"});
    CHECK(said(dishes, "/dishes/1/id", "meat-loaf") ==
          Lines{"dishes/all.json, /dishes/1: 'meat-loaf' once more; expected an identifier that occurs once"});
    CHECK(said(stock_json, "/lots/1/lot", 1) ==
          Lines{"stock.json, /lots/1: '1' once more; expected an identifier that occurs once"});
    CHECK(
        said(families, "/families/4", {{"id", "onion"}, {"name", "onions"}}) ==
        Lines{"catalogue: 'onion' is both a family and an ingredient; expected documents that agree with one another"});
    CHECK(said(kitchen_json, "/standing_nights/1", {{"day", "wed"}, {"kinds", {"pie"}}}) ==
          Lines{"kitchen.json, /standing_nights/1/day: 'wed' once more; expected one standing night for a weekday; "
                "several kinds take turns"});
}

TEST_CASE("a key that is needed and absent is reported") {
    CHECK(without(families, "/families") ==
          Lines{"catalogue/families.json, /: neither 'families' nor 'ingredients'; expected one of the two lists"});
    CHECK(without(ingredients, "/ingredients/3/id") ==
          Lines{"catalogue/ingredients.json, /ingredients/3: no 'id'; expected the key 'id'"});
    CHECK(without(ingredients, "/ingredients/3/kind") ==
          Lines{"catalogue/ingredients.json, /ingredients/3: no 'kind'; expected the key 'kind'"});
    CHECK(without(ingredients, "/ingredients/0/pack/price") ==
          Lines{"catalogue/ingredients.json, /ingredients/0/pack: no 'price'; expected the guide price in cents"});
    CHECK(without(stand_ins, "/stand_ins") ==
          Lines{"stand_ins/all.json, /: no 'stand_ins'; expected the key 'stand_ins'"});
    CHECK(without(stand_ins, "/stand_ins/0/fit") ==
          Lines{"stand_ins/all.json, /stand_ins/0: no 'fit'; expected the key 'fit'"});
    CHECK(without(stand_ins, "/stand_ins/0/use") ==
          Lines{"stand_ins/all.json, /stand_ins/0: nothing to use; expected at least one thing under 'use'"});
    CHECK(without(dishes, "/dishes/1/serves") ==
          Lines{"dishes/all.json, /dishes/1: no 'serves'; expected the key 'serves'"});
    CHECK(without(dishes, "/dishes/1/meals") == Lines{"dishes/all.json, /dishes/1: no meal; expected 'meals' and "
                                                      "'ingredients', or neither on a night without cooking"});
    CHECK(without(dishes, "/dishes/1/ingredients") ==
          Lines{"dishes/all.json, /dishes/1: no ingredients; expected 'meals' and 'ingredients', or neither on a night "
                "without cooking"});
    CHECK(without(dishes, "/dishes/1/ingredients/0/role") ==
          Lines{"dishes/all.json, /dishes/1/ingredients/0: no 'role'; expected the key 'role'"});
    CHECK(without(kitchen_json, "/samebase") == Lines{"kitchen.json, /: no 'samebase'; expected the key 'samebase'"});
    CHECK(without(kitchen_json, "/name") == Lines{"kitchen.json, /: no 'name'; expected the key 'name'"});
    CHECK(without(kitchen_json, "/people/1/home") ==
          Lines{"kitchen.json, /people/1 (Lee): neither 'home' nor 'roster'; expected the meals that this person is "
                "home for"});
    CHECK(without(kitchen_json, "/places/0/kind") ==
          Lines{"kitchen.json, /places/0: no 'kind'; expected the key 'kind'"});
    CHECK(without(kitchen_json, "/prices/0/price") ==
          Lines{"kitchen.json, /prices/0: no 'price'; expected what was paid, in the smallest unit of the currency"});
    CHECK(without(stock_json, "/lots/0/lot") == Lines{"stock.json, /lots/0: no 'lot'; expected the key 'lot'"});
    CHECK(without(stock_json, "/lots/0/packs") == Lines{"stock.json, /lots/0: no 'amount'; expected the key 'amount'"});
    CHECK(without(stock_json, "/lots/0/arrived") ==
          Lines{"stock.json, /lots/0: no 'arrived'; expected the key 'arrived'"});
    CHECK(without(stock_json, "/plan/0/day") == Lines{"stock.json, /plan/0: no 'day'; expected the key 'day'"});
}

TEST_CASE("a value out of range, or none of the known words, is reported with what may stand there") {
    CHECK(said(families, "/families/1/siblings", 1) ==
          Lines{"catalogue/families.json, /families/1/siblings: 1; expected a number from 0.001 to 0.999"});
    CHECK(said(families, "/families/1/cook_to", 75.5) ==
          Lines{"catalogue/families.json, /families/1/cook_to: 75.5; expected a whole number from 40 to 120"});
    CHECK(said(families, "/families/1/keeps/fridge", "2 days") ==
          Lines{"catalogue/families.json, /families/1/keeps/fridge: '2 days'; expected a keeping time such as '2 days "
                "use-by' or '90 days best-by', or null"});
    CHECK(said(families, "/families/1/keeps/fride", "2 days use-by") ==
          Lines{"catalogue/families.json, /families/1/keeps: unknown key 'fride'; expected one of: pantry, fridge, "
                "crisper, freezer, thawed, opened; did you mean 'fridge'?"});
    CHECK(said(families, "/families/1/thaw", "flatt") ==
          Lines{"catalogue/families.json, /families/1/thaw: 'flatt'; expected one of: flat, block, from-frozen; did "
                "you mean 'flat'?"});
    CHECK(said(ingredients, "/ingredients/0/id", "Beef mince") ==
          Lines{"catalogue/ingredients.json, /ingredients/0/id: 'Beef mince'; expected an identifier: lower case "
                "letters, digits and hyphens"});
    CHECK(said(ingredients, "/ingredients/0/name", "") ==
          Lines{"catalogue/ingredients.json, /ingredients/0/name: empty text; expected some text"});
    CHECK(said(ingredients, "/ingredients/0/kind", "fresh") ==
          Lines{"catalogue/ingredients.json, /ingredients/0/kind: 'fresh'; expected one of: raw, made, cooked"});
    CHECK(said(ingredients, "/ingredients/0/counted_in", "kg") ==
          Lines{"catalogue/ingredients.json, /ingredients/0/counted_in: 'kg'; expected one of: g, mL, piece, serve"});
    CHECK(said(ingredients, "/ingredients/2/season", "13-2") ==
          Lines{"catalogue/ingredients.json, /ingredients/2/season: '13-2'; expected months such as '11-3' or '3-5, "
                "9-11'"});
    CHECK(said(ingredients, "/ingredients/2/density", 1e300) ==
          Lines{"catalogue/ingredients.json, /ingredients/2/density: 1e+300; expected a number from 0.01 to 25"});
    CHECK(said(ingredients, "/ingredients/2/edible", 0) ==
          Lines{"catalogue/ingredients.json, /ingredients/2/edible: 0; expected a number from 0.05 to 1"});
    CHECK(said(ingredients, "/ingredients/0/pack/price", 18446744073709551615U) ==
          Lines{"catalogue/ingredients.json, /ingredients/0/pack/price: 18446744073709551615; expected a whole number "
                "from 0 to 100000000"});
    CHECK(said(stand_ins, "/stand_ins/0/fit", 1.5) ==
          Lines{"stand_ins/all.json, /stand_ins/0/fit: 1.5; expected a number from 0.001 to 0.999"});
    CHECK(said(stand_ins, "/stand_ins/0/role/0", "maine") ==
          Lines{"stand_ins/all.json, /stand_ins/0/role/0: 'maine'; expected one of: main, body, starch, binder, sauce, "
                "seasoning, topping, side; did you mean 'main'?"});
    CHECK(said(dishes, "/dishes/0/kinds/0", "loave") ==
          Lines{"dishes/all.json, /dishes/0/kinds/0: 'loave'; expected one of: roast, mince, loaf, pasta, pie, curry, "
                "soup, stew, traybake, stir-fry, salad, pizza, flatbread, pancakes, fish, eggs, pulses, rice, grill, "
                "burgers, dumplings, potatoes, noodles, sausages, sandwich, toast, leftovers, bake, fritters, "
                "snack-plate"});
    CHECK(said(dishes, "/dishes/0/serves", 0) ==
          Lines{"dishes/all.json, /dishes/0/serves: 0; expected a whole number from 1 to 1000"});
    CHECK(said(dishes, "/dishes/0/meals/0", "supper") ==
          Lines{"dishes/all.json, /dishes/0/meals/0: 'supper'; expected one of: dinner, lunch"});
    CHECK(said(dishes, "/dishes/0/measures", "metric") ==
          Lines{"dishes/all.json, /dishes/0/measures: 'metric'; expected one of: australian-metric, metric-15, "
                "us-customary, imperial"});
    CHECK(said(dishes, "/dishes/0/ingredients/1/scale", json::array({0.5})) ==
          Lines{"dishes/all.json, /dishes/0/ingredients/1/scale: a list of 1; expected two numbers: the least and the "
                "most, as factors"});
    CHECK(said(dishes, "/dishes/0/ingredients/1/scale/0", 1.5) ==
          Lines{"dishes/all.json, /dishes/0/ingredients/1/scale/0: 1.5; expected a number from 0 to 1"});
    CHECK(said(kitchen_json, "/samebase", 2) ==
          Lines{"kitchen.json, /samebase: 2; expected 1, the version of the form in which this is written"});
    CHECK(said(kitchen_json, "/currency", "dollars") ==
          Lines{"kitchen.json, /currency: 'dollars'; expected three capital letters (ISO 4217), such as 'AUD'"});
    CHECK(said(kitchen_json, "/hemisphere", "down under") ==
          Lines{"kitchen.json, /hemisphere: 'down under'; expected one of: south, north"});
    CHECK(said(kitchen_json, "/places/1/kind", "frige") ==
          Lines{"kitchen.json, /places/1/kind: 'frige'; expected one of: far-freezer, near-freezer, fridge, crisper, "
                "pantry; did you mean 'fridge'?"});
    CHECK(said(kitchen_json, "/places/1/litres", -1) ==
          Lines{"kitchen.json, /places/1/litres: -1; expected a number from 0.1 to 100000"});
    CHECK(said(kitchen_json, "/people/0/eats", std::nan("")) ==
          Lines{"kitchen.json, /people/0/eats (Kim): null; expected a number from 0.05 to 5"});
    CHECK(said(kitchen_json, "/people/0/marks/0/mark", 4) ==
          Lines{"kitchen.json, /people/0/marks/0/mark (Kim): 4; expected a whole number from -3 to 3"});
    CHECK(said(kitchen_json, "/people/0/roster/0/mon/0", "tea") ==
          Lines{"kitchen.json, /people/0/roster/0/mon/0 (Kim): 'tea'; expected one of: lunch, dinner"});
    CHECK(
        said(kitchen_json, "/people/0/roster/0/monday", json::array()) ==
        Lines{"kitchen.json, /people/0/roster/0 (Kim): unknown key 'monday'; expected one of: sun, mon, tue, wed, thu, "
              "fri, sat"});
    CHECK(said(kitchen_json, "/standing_nights/0/day", "weds") ==
          Lines{"kitchen.json, /standing_nights/0/day: 'weds'; expected one of: sun, mon, tue, wed, thu, fri, sat; did "
                "you mean 'wed'?"});
    CHECK(said(kitchen_json, "/standing_nights/0/kinds/0", "tacos") ==
          Lines{"kitchen.json, /standing_nights/0/kinds/0: 'tacos'; expected one of: roast, mince, loaf, pasta, pie, "
                "curry, soup, stew, traybake, stir-fry, salad, pizza, flatbread, pancakes, fish, eggs, pulses, rice, "
                "grill, burgers, dumplings, potatoes, noodles, sausages, sandwich, toast, leftovers, bake, fritters, "
                "snack-plate"});
    CHECK(said(kitchen_json, "/shopping_days/0", "friday") ==
          Lines{"kitchen.json, /shopping_days/0: 'friday'; expected one of: sun, mon, tue, wed, thu, fri, sat"});
    CHECK(said(stock_json, "/lots/0/lot", 0) ==
          Lines{"stock.json, /lots/0/lot: 0; expected a whole number from 1 to 9007199254740992"});
    CHECK(said(stock_json, "/lots/0/state", "frosen") ==
          Lines{"stock.json, /lots/0/state: 'frosen'; expected one of: fresh, frozen, thawing, thawed; did you mean "
                "'frozen'?"});
    CHECK(said(stock_json, "/lots/3/thaw", "bench") ==
          Lines{"stock.json, /lots/3/thaw: 'bench'; expected one of: fridge, cold-water, microwave"});
    CHECK(said(stock_json, "/plan/0/meal", "breakfast") ==
          Lines{"stock.json, /plan/0/meal: 'breakfast'; expected one of: lunch, dinner"});
    CHECK(said(stock_json, "/plan/0/serves", 0) ==
          Lines{"stock.json, /plan/0/serves: 0; expected a whole number from 1 to 1000"});
}

TEST_CASE("statements that contradict one another are reported") {
    CHECK(said(families, "/families/0/parent", "mince") ==
          Lines{"catalogue: family 'meat' is its own ancestor; expected documents that agree with one another"});
    CHECK(said(families, "/families/0/siblings", 0.9) ==
          Lines{"catalogue: family 'mince' has a fit of siblings below that of its parent 'meat'; expected documents "
                "that agree with one another"});
    CHECK(said(ingredients, "/ingredients/6/counted_in", "g") ==
          Lines{"catalogue: 'cold-mince': what is cooked, and only that, is counted in serves; expected documents that "
                "agree with one another"});
    CHECK(said(dishes, "/dishes/0/leaves", "onion") ==
          Lines{"dishes/all.json, /dishes/0/leaves: 'onion' is not of kind cooked; expected a leftover: an ingredient "
                "of kind cooked"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/of", "onion") ==
          Lines{"dishes: dish 'meat-loaf' has nothing that is the 'mince' of its base 'mince-and-onion'; expected "
                "documents that agree with one another"});
    CHECK(said(stand_ins, "/stand_ins/0/use/0/of", "beef-mince") ==
          Lines{"stand_ins/all.json, /stand_ins/0: something that stands in for itself; expected another ingredient or "
                "family"});
    CHECK(said(stand_ins, "/stand_ins/1/use/0/of", "mince") ==
          Lines{"stand_ins/all.json, /stand_ins/1: a mixture with a family in it; expected a mixture of ingredients, "
                "for one ingredient"});
    CHECK(said(stand_ins, "/stand_ins/1/both_ways", true) ==
          Lines{"stand_ins/all.json, /stand_ins/1: a mixture that holds both ways; expected both_ways only with one "
                "thing to use"});
}

TEST_CASE("a note or a time does not hold both ways") {
    const std::string said_of_it =
        "stand_ins/all.json, /stand_ins/0: both_ways with a note or with minutes; expected one stand-in for each way; "
        "a "
        "note and a time say how to use one of the two; say the other way in an entry of its own";
    CHECK(said(stand_ins, "/stand_ins/0/note", "milder") == Lines{said_of_it});
    CHECK(said(stand_ins, "/stand_ins/0/adds_minutes", 20) == Lines{said_of_it});
    CHECK(said(stand_ins, "/stand_ins/0/both_ways", false).empty());
}
