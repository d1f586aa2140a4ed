// What is wrong in a document is reported where it stands, with what was found and what was expected, and the nearest
// known name: the whole text of each message.
#include <catch2/catch.hpp>
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
constexpr const char* bases = "bases/bases.json";
constexpr const char* dishes = "dishes/all.json";
constexpr const char* kitchen_json = "kitchen.json";
constexpr const char* stock_json = "stock.json";

}  // namespace

TEST_CASE("an unknown key is reported with the nearest known key") {
    CHECK(said(ingredients, "/ingredients/1/allergen", json::array()) ==
          Lines{"catalogue/ingredients.json, /ingredients/1: unknown key 'allergen'; expected one of: id, name, also, "
                "family, kind, counted_in, density, piece, pieces, edible, pack, allergens, season, season_north, "
                "staple, everyday, only_stand_in, meatless, keeps, cook_to, thaw, litres_per_kg, note; did you mean "
                "'allergens'?"});
    CHECK(said(kitchen_json, "/places/1/liters", 3) == Lines{"kitchen.json, /places/1: unknown key 'liters'; expected "
                                                             "one of: id, name, kind, litres; did you mean 'litres'?"});
    CHECK(said(kitchen_json, "/lodgers", json::array()) ==
          Lines{"kitchen.json, /: unknown key 'lodgers'; expected one of: samebase, name, currency, hemisphere, "
                "measures, people, places, usual_staples, staples, not_staples, standing_uses, standing_nights, "
                "occasions, prices, shopping_days, trips, shelves, minutes, worths, tell_from"});
    CHECK(said(dishes, "/dishes/0/ingredients/1/xyzzy", 1) ==
          Lines{"dishes/all.json, /dishes/0/ingredients/1: unknown key 'xyzzy'; expected one of: of, amount, role, "
                "prep, scale, optional"});
    CHECK(said(families, "/family", 1) ==
          Lines{"catalogue/families.json, /: unknown key 'family'; expected one of: families, sources"});
    CHECK(said(stock_json, "/lots/0/\x1b[2J\n\"", 1) ==
          Lines{"stock.json, /lots/0: unknown key '\\u001b[2J\\n\\\"'; expected one of: lot, of, dish, place, amount, "
                "packs, state, arrived, since, opened_on, thaw, thawed_on, use_by, paid, note"});
}

TEST_CASE("a name that nothing has is reported with the nearest name") {
    CHECK(said(dishes, "/dishes/0/ingredients/0/of", "beef-minse") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/of: 'beef-minse' is not an ingredient; expected the "
                "identifier of an ingredient of the catalogue; did you mean 'beef-mince'?"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/of", "zzzz") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/of: 'zzzz' is not an ingredient; expected the identifier of "
                "an ingredient of the catalogue"});
    CHECK(said(dishes, "/dishes/0/base", "mince-and-onions") ==
          Lines{"dishes/all.json, /dishes/0/base: 'mince-and-onions' is not a base; expected the identifier of a base, "
                "or null; did you mean 'mince-and-onion'?"});
    CHECK(said(dishes, "/dishes/0/leaves", "cold-minze") ==
          Lines{"dishes/all.json, /dishes/0/leaves: 'cold-minze' is not an ingredient; expected the identifier of an "
                "ingredient of the catalogue; did you mean 'cold-mince'?"});
    CHECK(said(dishes, "/dishes/0/separate/0/swap/0/use", "onoin") ==
          Lines{"dishes/all.json, /dishes/0/separate/0/swap/0/use: 'onoin' is not an ingredient; expected the "
                "identifier of an ingredient of the catalogue; did you mean 'onion'?"});
    CHECK(said(bases, "/bases/0/needs/0/of", "mincing") ==
          Lines{"bases/bases.json, /bases/0/needs/0/of: 'mincing' is neither an ingredient nor a family; expected the "
                "identifier of an ingredient or a family of the catalogue"});
    CHECK(said(stand_ins, "/stand_ins/0/for", "meet") ==
          Lines{"stand_ins/all.json, /stand_ins/0/for: 'meet' is neither an ingredient nor a family; expected the "
                "identifier of an ingredient or a family of the catalogue; did you mean 'meat'?"});
    CHECK(said(ingredients, "/ingredients/0/family", "mices") ==
          Lines{"catalogue/ingredients.json, /ingredients/0/family: 'mices' is not a family; expected the identifier "
                "of a family"});
    CHECK(said(families, "/families/1/parent", "meats") ==
          Lines{"catalogue/families.json, /families/1/parent: 'meats' is not a family; expected the identifier of a "
                "family, or null; did you mean 'meat'?"});
    CHECK(said(kitchen_json, "/people/0/dislikes/0", "milks") ==
          Lines{"kitchen.json, /people/0/dislikes/0 (Kim): 'milks' is neither an ingredient nor a family; expected the "
                "identifier of an ingredient or a family of the catalogue; did you mean 'milk'?"});
    CHECK(said(kitchen_json, "/people/0/marks/0/dish", "meatloaf") ==
          Lines{"kitchen.json, /people/0/marks/0/dish (Kim): 'meatloaf' is not a dish; expected the identifier of a "
                "dish of "
                "the cookbook; did you mean 'meat-loaf'?"});
    CHECK(
        said(kitchen_json, "/people/0/avoids/0", "peanuts") ==
        Lines{
            "kitchen.json, /people/0/avoids/0 (Kim): 'peanuts'; expected one of: gluten, wheat, crustacean, egg, fish, "
            "milk, mollusc, peanut, sesame, soy, lupin, celery, mustard, sulphites, almond, brazil-nut, cashew, "
            "hazelnut, macadamia, pecan, pine-nut, pistachio, walnut; did you mean 'peanut'?"});
    CHECK(said(stock_json, "/lots/0/place", "chset") ==
          Lines{"stock.json, /lots/0/place: 'chset' is not a place of this kitchen; expected the identifier of a "
                "place; did you mean 'chest'?"});
    CHECK(said(stock_json, "/lots/0/of", "beef") ==
          Lines{"stock.json, /lots/0/of: 'beef' is not an ingredient; "
                "expected the identifier of an ingredient of the catalogue; did you mean 'beef-mince'?"});
    CHECK(said(stock_json, "/plan/0/dish", "mince-on-toasts") ==
          Lines{"stock.json, /plan/0/dish: 'mince-on-toasts' is not a dish; expected the identifier of a dish of the "
                "cookbook; did you mean 'mince-on-toast'?"});
}

TEST_CASE("an amount that is no amount says why") {
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "-750 g") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '-750 g' is below nothing; expected an amount of 0 "
                "or more"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "0 g") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '0 g'; expected an amount above 0"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "99999999999999999 kg") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '99999999999999999 kg' is too large; expected at "
                "most 1000000000 kg, 1000000000 L or 1000000000000 pieces"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "9999999 kg") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '9999999 kg' is too large; expected at most 1000 "
                "tonnes, 1000000 L or 1000000000 pieces"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "10000000 packs") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '10000000 packs' is too large; expected at most 1000 "
                "tonnes, 1000000 L or 1000000000 pieces"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "1000000000000 packs") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '1000000000000 packs' is too large; expected at most "
                "1000 tonnes, 1000000 L or 1000000000 pieces"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "0 packs") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '0 packs'; expected an amount above 0"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "some") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: 'some'; expected an amount that can be weighed, "
                "measured or counted"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "750 gramz") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: 'gramz' in '750 gramz' is not a unit; expected a "
                "unit such as 'g', 'mL', 'cup' or 'pack', and nothing after it"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", std::string(50'000, '9')) ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: "
                "'999999999999999999999999999999999999999999999999999999999999...' is 50000 bytes long; expected an "
                "amount such as '500 g', '2 packs', '1 1/2 cups' or 'half', in at most 1000 bytes"});
    CHECK(said(dishes, "/dishes/0/ingredients/2/amount", "1000000000000") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/2/amount: '1000000000000' is too large; expected at most 1000 "
                "tonnes, 1000000 L or 1000000000 pieces"});
    CHECK(said(ingredients, "/ingredients/0/pack/amount", "0 g") ==
          Lines{"catalogue/ingredients.json, /ingredients/0/pack/amount: '0 g'; expected an amount above 0 of what the "
                "ingredient is counted in"});
    CHECK(said(ingredients, "/ingredients/0/pack/amount", "1 cup") ==
          Lines{"catalogue/ingredients.json, /ingredients/0/pack/amount: '1 cup'; expected an amount above 0 of what "
                "the ingredient is counted in"});
    CHECK(said(kitchen_json, "/prices/0/amount", "two") ==
          Lines{"kitchen.json, /prices/0/amount: 'two': for 'milk' the weight of one piece is not in the catalogue; "
                "expected a weight in g, to turn pieces into what it is counted in"});
    CHECK(said(stock_json, "/lots/0/packs", json::array({"900000 kg", "900000 kg"})) ==
          Lines{"stock.json, /lots/0/packs: packs that are too large together; expected at most 1000 tonnes, 1000000 L "
                "or 1000000000 pieces"});
    CHECK(said(stock_json, "/lots/0/packs", json::array()) ==
          Lines{"stock.json, /lots/0/packs: no packs; expected the true weight of each pack"});
    CHECK(said(stock_json, "/lots/0/amount", "1 kg") ==
          Lines{"stock.json, /lots/0: both 'packs' and 'amount'; expected one of the two"});
    CHECK(said(stock_json, "/lots/1/amount", "a heap") ==
          Lines{"stock.json, /lots/1/amount: 'heap' in 'a heap' is not a unit; expected a unit such as 'g', 'mL', "
                "'cup' or 'pack', and nothing after it"});
}

TEST_CASE("a conversion that the catalogue has no figure for names the ingredient and the figure") {
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "2 cups") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '2 cups': for 'beef-mince' its density is not in the "
                "catalogue; expected a density in g per mL, to turn a volume into what it is counted in"});
    CHECK(said(dishes, "/dishes/0/ingredients/0/amount", "3") ==
          Lines{"dishes/all.json, /dishes/0/ingredients/0/amount: '3': for 'beef-mince' the weight of one piece is not "
                "in the catalogue; expected a weight in g, to turn pieces into what it is counted in"});
    CHECK(without(ingredients, "/ingredients/5/density") ==
          Lines{"dishes/all.json, /dishes/1/ingredients/3/amount: '1 pinch': for 'salt' its density is not in the "
                "catalogue; expected a density in g per mL, to turn a volume into what it is counted in"});
    CHECK(said(stock_json, "/lots/2/amount", "2 cups") ==
          Lines{"stock.json, /lots/2/amount: '2 cups': for 'cold-mince' its density is not in the catalogue; expected "
                "a density in g per mL, to turn a volume into what it is counted in"});
}

TEST_CASE("days that cannot be are reported") {
    CHECK(said(stock_json, "/lots/2/use_by", "2026-11-23") ==
          Lines{"stock.json, /lots/2/use_by: '2026-11-23' is before the day it came, '2026-11-24'; expected a day on "
                "or after the day it came"});
    CHECK(said(stock_json, "/lots/2/since", "2026-11-23") ==
          Lines{"stock.json, /lots/2/since: '2026-11-23' is before the day it came, '2026-11-24'; expected a day on or "
                "after the day it came"});
    CHECK(said(stock_json, "/lots/1/opened_on", "2026-11-19") ==
          Lines{"stock.json, /lots/1/opened_on: '2026-11-19' is before the day it came, '2026-11-20'; expected a day "
                "on or after the day it came"});
    CHECK(said(stock_json, "/lots/3/thawed_on", "2026-11-09") ==
          Lines{"stock.json, /lots/3/thawed_on: '2026-11-09' is before the day it came, '2026-11-10'; expected a day "
                "on or after the day it came"});
    CHECK(said(stock_json, "/lots/2/use_by", "2026-02-30") ==
          Lines{"stock.json, /lots/2/use_by: '2026-02-30'; expected a day such as 2026-12-04"});
    CHECK(said(stock_json, "/lots/2/arrived", "24 November") ==
          Lines{"stock.json, /lots/2/arrived: '24 November'; expected a day such as 2026-12-04"});
    CHECK(said(stock_json, "/around", "now") == Lines{"stock.json, /around: 'now'; expected a day such as 2026-12-04"});
    CHECK(said(kitchen_json, "/people/0/away/0/to", "2026-12-23") ==
          Lines{"kitchen.json, /people/0/away/0/to (Kim): '2026-12-23'; expected a day that is not before 'from'"});
    CHECK(said(kitchen_json, "/people/0/away/0/to", "2026-12-") ==
          Lines{"kitchen.json, /people/0/away/0/to (Kim): '2026-12-'; expected a day such as 2026-12-04"});
    CHECK(said(kitchen_json, "/occasions/0/day", "fri") ==
          Lines{"kitchen.json, /occasions/0/day: 'fri'; expected a day such as 2026-12-04"});
}
