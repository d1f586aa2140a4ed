// Several problems at once, and documents that are odd as a whole.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "exchange/file.hpp"
#include "exchange/knowledge.hpp"
#include "exchange/tiny_documents.hpp"

using namespace samebase;
using nlohmann::json;
using tests::said;
using Lines = std::vector<std::string>;

namespace {

constexpr const char* ingredients = "catalogue/ingredients.json";
constexpr const char* stand_ins = "stand_ins/all.json";
constexpr const char* bases = "bases/bases.json";
constexpr const char* dishes = "dishes/all.json";
constexpr const char* kitchen_json = "kitchen.json";
constexpr const char* stock_json = "stock.json";

}  // namespace

TEST_CASE("all problems of a document are reported, in the order in which they are found") {
    tests::TinyDocuments tiny;
    json& document = tiny[stock_json];
    document["/lots/0/place"_json_pointer] = "attic";
    document["/lots/1/amount"_json_pointer] = "-1 kg";
    document["/lots/2/use_by"_json_pointer] = "2026-11-01";
    document["/plan/0/dish"_json_pointer] = 7;
    document["/history/0/colour"_json_pointer] = "red";
    CHECK(tiny.problems() ==
          Lines{"stock.json, /lots/0/place: 'attic' is not a place of this kitchen; expected the identifier of a place",
                "stock.json, /lots/1/amount: '-1 kg' is below nothing; expected an amount of 0 or more",
                "stock.json, /lots/2/use_by: '2026-11-01' is before the day it came, '2026-11-24'; expected a day on "
                "or after the day it came",
                "stock.json, /plan/0/dish: 7; expected text",
                "stock.json, /history/0: unknown key 'colour'; expected one of: day, meal, dish"});
}

TEST_CASE("problems of several documents are reported together") {
    tests::TinyDocuments tiny;
    tiny[stand_ins]["/stand_ins/0/fit"_json_pointer] = "good";
    tiny[bases]["/bases/0/needs/0/role"_json_pointer] = "mane";
    tiny[dishes]["/dishes/2/minutes"_json_pointer] = -1;
    CHECK(tiny.problems() ==
          Lines{"stand_ins/all.json, /stand_ins/0/fit: 'good'; expected a number from 0.001 to 0.999",
                "bases/bases.json, /bases/0/needs/0/role: 'mane'; expected one of: main, body, starch, binder, sauce, "
                "seasoning, topping, side",
                "dishes/all.json, /dishes/2/minutes: -1; expected a whole number from 0 to 2880"});
}

TEST_CASE("documents that are not JSON are all named, each with its line") {
    const tests::Folder folder;
    folder.write("catalogue/families.json", "{\"families\": [\n{\"id\": \"meat\",");
    folder.write("catalogue/ingredients.json", "{\"ingredients\": [}");
    folder.write("dishes/mince.json", "");
    folder.write("bases/bases.json", "[]");
    const std::vector<std::filesystem::path> folders{folder.path(), folder.path() / "mine"};
    Lines found = tests::lines(exchange::load_knowledge(folders).error());
    REQUIRE(found.size() == 4);
    CHECK(found[0] == (folder.path() / "mine").string() + ": no such folder; expected a folder of documents");
    found.erase(found.begin());
    CHECK(
        found ==
        Lines{"catalogue/families.json, line 2, column 15: the document ends too early; expected a JSON document (RFC "
              "8259)",
              "catalogue/ingredients.json, line 1, column 18: this is not JSON; expected a JSON document (RFC 8259)",
              "dishes/mince.json, line 1, column 1: the document ends too early; expected a JSON document (RFC 8259)"});
}

TEST_CASE("a document that is no object is reported") {
    for (const char* name : {ingredients, stand_ins, kitchen_json, stock_json}) {
        for (const json& value : std::vector<json>{nullptr, 7, "x", json::array({1, 2})}) {
            tests::TinyDocuments tiny;
            tiny[name] = value;
            const std::string shown = value.is_array() ? "a list" : value.is_string() ? "'x'" : value.dump();
            CHECK(tiny.problems().front() == std::string(name) + ", /: " + shown + "; expected an object");
        }
    }
}

TEST_CASE("a long text in a document is shortened between two characters") {
    std::string long_name = "x";
    for (int i = 0; i < 40; ++i) long_name += "\xC3\xA9";
    const Lines found = said(dishes, "/dishes/0/ingredients/0/of", long_name);
    CHECK(found == Lines{"dishes/all.json, /dishes/0/ingredients/0/of: 'xééééééééééééééééééééééééééééé...' is not an "
                         "ingredient; expected the identifier of an ingredient of the catalogue"});
    CHECK_NOTHROW(json(found).dump());
}

TEST_CASE("a line of 50 MB gives one clear problem") {
    const tests::Folder folder;
    std::string line(50'000'000, 'x');
    tests::TinyDocuments tiny;
    tiny[dishes]["/dishes/0/ingredients/0/of"_json_pointer] = line;
    CHECK(tiny.problems() == Lines{"dishes/all.json, /dishes/0/ingredients/0/of: "
                                   "'xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx...' is not an "
                                   "ingredient; expected the identifier of an ingredient of the catalogue"});
    tiny = {};
    tiny[kitchen_json][line] = 1;
    CHECK(
        tiny.problems() ==
        Lines{
            "kitchen.json, /: unknown key 'xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx...'; expected "
            "one of: samebase, name, currency, hemisphere, measures, people, places, usual_staples, staples, "
            "not_staples, standing_uses, standing_nights, occasions, prices, shopping_days, trips, shelves, minutes, "
            "worths, "
            "tell_from"});
    tiny = {};
    tiny[stock_json]["/lots/0/packs/0"_json_pointer] = line;
    CHECK(tiny.problems() ==
          Lines{"stock.json, /lots/0/packs/0: 'xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx...' is "
                "50000000 bytes long; expected an amount such as '500 g', '2 packs', '1 1/2 cups' or 'half', in at "
                "most 1000 bytes"});
    line[0] = '"';
    CHECK(
        tests::lines(exchange::parse(line, "kitchen.json").error()) ==
        Lines{
            "kitchen.json, line 1, column 50000001: the document ends too early; expected a JSON document (RFC 8259)"});
}

TEST_CASE("of a great many problems a thousand are reported") {
    tests::TinyDocuments tiny;
    json& lines = tiny[dishes]["/dishes/0/ingredients"_json_pointer];
    for (int i = 0; i < 200'000; ++i) lines.push_back({{"of", "beef-minse"}, {"amount", "1 g"}, {"role", "main"}});
    const Lines found = tiny.problems();
    CHECK(found.size() == 1000);
    CHECK(found.back() ==
          "dishes/all.json, /dishes/0/ingredients/1003/of: 'beef-minse' is not an ingredient; expected the identifier "
          "of an ingredient of the catalogue; did you mean 'beef-mince'?");
}
