// Edits of the household's document, how it is laid out, and how two edits of it come together.
#include "exchange/household_edit.hpp"

#include <catch2/catch.hpp>

#include "exchange/household.hpp"
#include "exchange/tiny_documents.hpp"

using namespace samebase;
using exchange::HouseholdDocument;
using tests::TinyDocuments;

namespace {

basics::Day day(const char* text) {
    return *basics::read_iso_day(text);
}

HouseholdDocument small() {
    return HouseholdDocument::parse(R"({"samebase": 1, "name": "hut", "people": [], "shopping_days": ["sat"]})");
}

}  // namespace

TEST_CASE("a document is laid out with what fits on one line, lists of things a line each") {
    HouseholdDocument document = small();
    exchange::set_person(document, {"ann", "Ann", {}, {{"gluten"}}, {}, kitchen::Week{}});
    exchange::set_person(document, {"ben", "Ben", 500, {}, {}, kitchen::Week{}});
    CHECK(exchange::household_text(document) == R"({
  "samebase": 1,
  "name": "hut",
  "people": [
    {
      "id": "ann",
      "name": "Ann",
      "avoids": ["gluten"],
      "home": {"mon": [], "tue": [], "wed": [], "thu": [], "fri": [], "sat": [], "sun": []}
    },
    {
      "id": "ben",
      "name": "Ben",
      "eats": 0.5,
      "home": {"mon": [], "tue": [], "wed": [], "thu": [], "fri": [], "sat": [], "sun": []}
    }
  ],
  "shopping_days": ["sat"]
}
)");
    CHECK(HouseholdDocument::parse(exchange::household_text(document)) == document);
}

TEST_CASE("what is set replaces what was said of the same thing, and the rest stays") {
    HouseholdDocument document = small();
    CHECK(exchange::new_id(document, "people", "Zo\xC3\xAB the 2nd") == "zo-the-2nd");
    exchange::set_person(document, {"ann", "Ann", 500, {{"gluten"}}, {{"mushrooms"}}, {}});
    exchange::set_person(document, {"ann", "Ann", {}, {{}}, {}, {}});
    CHECK(document["people"].size() == 1);
    const auto& ann = document["people"][0];
    CHECK(ann["eats"] == 0.5);
    CHECK_FALSE(ann.contains("avoids"));
    CHECK(ann["dislikes"] == HouseholdDocument{"mushrooms"});
    CHECK(ann["home"]["sun"] == HouseholdDocument({"lunch", "dinner"}));
    CHECK(exchange::new_id(document, "people", "Ann") == "ann-2");
    exchange::set_mark(document, "ann", true, "tacos", 2);
    exchange::set_mark(document, "ann", true, "tacos", -3);
    CHECK(ann["marks"] == HouseholdDocument::parse(R"([{"dish": "tacos", "mark": -3}])"));
    exchange::set_mark(document, "ann", true, "tacos", 0);
    CHECK_FALSE(document["people"][0].contains("marks"));
    CHECK(exchange::remove_person(document, "ann"));
    CHECK_FALSE(exchange::remove_person(document, "ann"));
}

TEST_CASE("shopping days become trips as soon as one of them is changed") {
    HouseholdDocument document = small();
    exchange::set_trip(document, {std::nullopt, 1, day("2026-12-05"), kitchen::TripFor::bulk});
    CHECK_FALSE(document.contains("shopping_days"));
    CHECK(document["trips"] == HouseholdDocument::parse(R"([{"day": "sat"}, {"day": "2026-12-05", "for": "bulk"}])"));
    exchange::set_trip(document, {std::chrono::Saturday, 2, day("2026-12-05"), kitchen::TripFor::all});
    CHECK(document["trips"] == HouseholdDocument::parse(R"([{"day": "2026-12-05", "for": "bulk"},
                                                            {"day": "sat", "every": 2, "from": "2026-12-05"}])"));
    CHECK(exchange::remove_trip(document, std::chrono::Saturday, std::nullopt));
    CHECK_FALSE(exchange::remove_trip(document, std::chrono::Saturday, std::nullopt));
    CHECK(exchange::remove_trip(document, std::nullopt, day("2026-12-05")));
    CHECK(document["trips"].empty());
}

TEST_CASE("days away are taken back by any day of them") {
    HouseholdDocument document = small();
    exchange::set_person(document, {"ann", "Ann", {}, {}, {}, {}});
    const kitchen::Away away{{day("2026-12-12"), day("2026-12-14")}, kitchen::only(kitchen::Meal::lunch)};
    exchange::add_away(document, "ann", away);
    exchange::add_away(document, "ann", away);
    CHECK(document["people"][0]["away"] ==
          HouseholdDocument::parse(R"([{"from": "2026-12-12", "to": "2026-12-14", "meals": ["lunch"]}])"));
    CHECK_FALSE(exchange::remove_away(document, "ann", {day("2026-12-15"), day("2026-12-15")}));
    CHECK(exchange::remove_away(document, "ann", {day("2026-12-14"), day("2026-12-14")}));
}

TEST_CASE("two edits of different parts come together, two of the same part do not") {
    const auto base = HouseholdDocument::parse(
        R"({"name": "hut", "people": [{"id": "a", "eats": 1}, {"id": "b", "eats": 1}], "trips": [{"day": "sat"}]})");
    auto mine = base;
    auto theirs = base;
    mine["people"][0]["eats"] = 2;
    theirs["people"].push_back({{"id", "c"}});
    theirs["name"] = "house";
    const auto both = exchange::merged(base, mine, theirs);
    REQUIRE(both);
    CHECK((*both)["name"] == "house");
    CHECK((*both)["people"] ==
          HouseholdDocument::parse(R"([{"id": "a", "eats": 2}, {"id": "b", "eats": 1}, {"id": "c"}])"));
    theirs["people"][0]["eats"] = 3;
    CHECK_FALSE(exchange::merged(base, mine, theirs));
    theirs = base;
    mine["trips"].clear();
    theirs["trips"].push_back({{"day", "sun"}});
    CHECK_FALSE(exchange::merged(base, mine, theirs));
    theirs.erase("name");
    theirs["trips"] = mine["trips"];
    const auto less = exchange::merged(base, mine, theirs);
    REQUIRE(less);
    CHECK_FALSE(less->contains("name"));
}

TEST_CASE("trips are read from weekdays, dates and shopping days") {
    TinyDocuments tiny;
    tiny["kitchen.json"]["trips"] = nlohmann::json::parse(
        R"([{"day": "sat", "every": 2, "from": "2026-12-05", "for": "fresh"}, {"day": "2026-12-11", "for": "bulk"}])");
    tiny["kitchen.json"]["tell_from"] = 250;
    const auto read = tiny.read();
    REQUIRE(read);
    using kitchen::Trip;
    using kitchen::TripFor;
    CHECK(read->household.trips == std::vector<Trip>{{std::chrono::Friday, 1, {}, TripFor::all},
                                                     {std::chrono::Saturday, 2, day("2026-12-05"), TripFor::fresh},
                                                     {std::nullopt, 1, day("2026-12-11"), TripFor::bulk}});
    CHECK(read->household.tell_from == basics::Money{250});
}

TEST_CASE("what is wrong with a trip is told") {
    using Lines = std::vector<std::string>;
    const auto said = [](const char* trip) {
        TinyDocuments tiny;
        tiny["kitchen.json"]["trips"] = nlohmann::json::array({nlohmann::json::parse(trip)});
        return tiny.problems();
    };
    CHECK(said(R"({"day": "saturday"})") ==
          Lines{"kitchen.json, /trips/0/day: 'saturday'; expected a day of the week or a date: 'sat', '2026-12-05'"});
    CHECK(said(R"({"day": "sat", "every": 2})") ==
          Lines{"kitchen.json, /trips/0: every 2 weeks, and no 'from'; expected the date of the first of these trips"});
    CHECK(said(R"({"day": "2026-12-05", "from": "2026-12-05"})") ==
          Lines{"kitchen.json, /trips/0/from: 'from' beside a date; expected 'from' only with a day of the week"});
    CHECK(said(R"({"day": "2026-12-05", "every": 2})") ==
          Lines{"kitchen.json, /trips/0: 'every' beside a date; expected 'every' only with a day of the week"});
    CHECK(said(R"({"day": "sat", "for": "bulky"})") ==
          Lines{"kitchen.json, /trips/0/for: 'bulky'; expected one of: all, fresh, bulk; did you mean 'bulk'?"});
}

TEST_CASE("what is wrong with a person is told with the line and the name") {
    TinyDocuments tiny;
    const auto knowledge = tiny.read()->knowledge;
    const std::string text =
        "{\"samebase\": 1, \"name\": \"a \\\"hut\\\", by 2: [}\",\n \"people\": [\n"
        "  {\"id\": \"ann\", \"name\": \"Ann\", \"home\": {}},\n"
        "  {\"id\": \"dan\", \"name\": \"Dan\", \"home\": {},\n   \"dislikes\": [\"milk\",\n    \"milks\"]}]}";
    const auto household = exchange::read_household_text(text, "kitchen.json", *knowledge);
    REQUIRE_FALSE(household);
    REQUIRE(household.error().size() == 1);
    CHECK(household.error().front().where == "kitchen.json, line 6, /people/1/dislikes/1 (Dan)");
    CHECK(household.error().front().hint == "did you mean 'milk'?");
}
