// Dishes that a kitchen takes in: added to `dishes/imported.json` all or none, never over another dish unasked, and
// read back with every check that the shipped ones go through.
#include "exchange/imported.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "exchange/file.hpp"
#include "exchange/knowledge.hpp"
#include "exchange/tiny_documents.hpp"
#include "support/shipped.hpp"

using namespace samebase;
namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;
using Lines = std::vector<std::string>;

namespace {

const fs::path data{SAMEBASE_SOURCE_DIR "/data"};

exchange::RecipeDish dish(const std::string& id, const std::string& of = "onion") {
    exchange::RecipeDish result;
    result.place = "r.json, recipe 1";
    result.id = id;
    result.name = id;
    result.document = Json::parse(R"({"id": "", "name": "a dish", "base": null, "meals": ["dinner"], "kinds": ["soup"],
        "serves": 2, "minutes": 10, "hands_on": 5, "leaves": null, "freezes": false,
        "ingredients": [{"of": "", "amount": "2", "role": "main"}], "method": ["Cook it for as long as it takes, and then some."]})");
    result.document["id"] = id;
    result.document["ingredients"][0]["of"] = of;
    return result;
}

Lines said(const basics::Problems& problems) {
    Lines lines;
    for (const auto& problem : problems) lines.push_back(basics::to_text(problem));
    return lines;
}

/// What the kitchen's folder and the shipped data are together, with the draft where there is one.
auto known(const tests::Folder& folder, const exchange::Draft* draft = nullptr) {
    const std::vector<fs::path> folders{data, folder.path()};
    return exchange::load_knowledge(folders, draft);
}

basics::Result<exchange::Addition> with(const tests::Folder& folder, const std::vector<exchange::RecipeDish>& dishes,
                                        bool replace = false) {
    const auto knowledge = known(folder);
    REQUIRE(knowledge);
    return exchange::with_dishes(folder.path(), dishes, replace, (*knowledge)->cookbook);
}

}  // namespace

TEST_CASE("dishes are added, read back, and added to") {
    const tests::Folder folder;
    const auto first = with(folder, {dish("our-soup"), dish("our-stew", "carrot")});
    REQUIRE(first);
    CHECK(first->replaced.empty());
    CHECK_FALSE(fs::exists(folder.path() / "dishes"));
    const auto draft = known(folder, &first->draft);
    REQUIRE(draft);
    CHECK((*draft)->cookbook.dish("our-stew"));
    REQUIRE(exchange::write_addition(*first));
    const auto before = known(folder);
    REQUIRE(before);
    CHECK((*before)->cookbook.dishes().size() == tests::shipped().cookbook.dishes().size() + 2);
    const auto more = with(folder, {dish("our-pie")});
    REQUIRE(more);
    REQUIRE(exchange::write_addition(*more));
    const auto after = known(folder);
    REQUIRE(after);
    CHECK((*after)->cookbook.dish("our-soup"));
    CHECK((*after)->cookbook.dish("our-pie"));
}

TEST_CASE("what was written by hand into the document stays, in its order") {
    const tests::Folder folder;
    Json own = dish("our-soup").document;
    own["gap"] = 9;
    folder.write("dishes/imported.json", Json{{"sources", {"the tin by the stove"}}, {"dishes", {own}}}.dump());
    const auto addition = with(folder, {dish("our-pie")});
    REQUIRE(addition);
    const Json document = Json::parse(addition->draft.text);
    CHECK(document["sources"] == Json{"the tin by the stove"});
    CHECK(document["dishes"][0] == own);
    CHECK(document["dishes"][1] == dish("our-pie").document);
    CHECK(document.begin().key() == "sources");
}

TEST_CASE("a dish that is there is replaced in its place only where that is asked") {
    const tests::Folder folder;
    REQUIRE(exchange::write_addition(*with(folder, {dish("our-soup"), dish("our-pie")})));
    const auto refused = with(folder, {dish("our-soup", "carrot"), dish("our-new")});
    REQUIRE_FALSE(refused);
    CHECK(said(refused.error()) ==
          Lines{"r.json, recipe 1: the dish 'our-soup' was taken in before; expected a dish that is not there yet; say "
                "--replace to put this in its place, or --name NAME"});
    const auto replaced = with(folder, {dish("our-soup", "carrot"), dish("our-new")}, true);
    REQUIRE(replaced);
    CHECK(replaced->replaced == Lines{"our-soup"});
    const Json document = Json::parse(replaced->draft.text);
    REQUIRE(document["dishes"].size() == 3);
    CHECK(document["dishes"][0]["ingredients"][0]["of"] == "carrot");
    CHECK(document["dishes"][2]["id"] == "our-new");
}

TEST_CASE("neither a shipped dish nor one written by hand is replaced, nor are two of one name added") {
    const tests::Folder folder;
    folder.write("dishes/ours.json", Json{{"dishes", {dish("our-soup").document}}}.dump());
    const auto refused = with(folder, {dish("meat-loaf"), dish("our-soup"), dish("twin"), dish("twin")}, true);
    REQUIRE_FALSE(refused);
    CHECK(said(refused.error()) ==
          Lines{"r.json, recipe 1: there is a dish 'meat-loaf' that was not taken in; expected a name of its own; say "
                "--name NAME",
                "r.json, recipe 1: there is a dish 'our-soup' that was not taken in; expected a name of its own; say "
                "--name NAME",
                "r.json, recipe 1: 'twin' once more; expected recipes with names of their own; take one of them with "
                "--which N, or name it with --name NAME"});
}

TEST_CASE("a draft goes through every check of the kitchen's documents") {
    const tests::Folder folder;
    const auto addition = with(folder, {dish("our-soup", "unicorn")});
    REQUIRE(addition);
    const auto knowledge = known(folder, &addition->draft);
    REQUIRE_FALSE(knowledge);
    CHECK(said(knowledge.error()) == Lines{(folder.path() / "dishes/imported.json").string() +
                                           ", /dishes/0/ingredients/0/of: 'unicorn' is not an ingredient; expected the "
                                           "identifier of an ingredient of the catalogue"});
}
