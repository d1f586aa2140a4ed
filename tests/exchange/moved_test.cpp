// Moving the days of a document: every one of them by as much, and nothing else.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "exchange/household.hpp"
#include "exchange/tiny_documents.hpp"

using namespace samebase;
using nlohmann::json;

TEST_CASE("every day of a document moves, over the ends of months and years, and nothing else does") {
    const json document = json::parse(
        R"({"a": "2026-12-31", "b": [{"day": "2028-02-28"}, "2026-02-30", "on 2026-01-01", 20260101], "2026-01-01": null})");
    CHECK(
        exchange::moved(document, basics::days{2}) ==
        json::parse(
            R"({"a": "2027-01-02", "b": [{"day": "2028-03-01"}, "2026-02-30", "on 2026-01-01", 20260101], "2026-01-01": null})"));
    CHECK(exchange::moved(exchange::moved(document, basics::days{700}), basics::days{-700}) == document);
    CHECK(exchange::moved(document, basics::days{0}) == document);
}

TEST_CASE("days of the week move with the days, as values and as keys") {
    const json document =
        json::parse(R"({"shopping_days": ["sat"], "home": {"mon": ["lunch"], "sun": []}, "name": "monday"})");
    CHECK(exchange::moved(document, basics::days{2}) ==
          json::parse(R"({"shopping_days": ["mon"], "home": {"wed": ["lunch"], "tue": []}, "name": "monday"})"));
    CHECK(exchange::moved(document, basics::days{-1}) ==
          json::parse(R"({"shopping_days": ["fri"], "home": {"sun": ["lunch"], "sat": []}, "name": "monday"})"));
    CHECK(exchange::moved(document, basics::days{700}) == document);
}

TEST_CASE("reading stock with a shift gives what reading the moved document gives") {
    tests::TinyDocuments tiny;
    const auto read = tiny.read();
    REQUIRE(read);
    const basics::days shift{45};
    const auto shifted =
        exchange::read_stock(tiny["stock.json"], "stock.json", *read->knowledge, read->household, shift);
    const auto moved = exchange::read_stock(exchange::moved(tiny["stock.json"], shift), "stock.json", *read->knowledge,
                                            read->household, basics::days{0});
    REQUIRE(shifted);
    REQUIRE(moved);
    CHECK(shifted->lots == moved->lots);
    CHECK(shifted->plan == moved->plan);
    CHECK(shifted->history == moved->history);
    CHECK(shifted->lots.front().arrived == read->stock.lots.front().arrived + shift);
}

TEST_CASE("values that nest 100,000 levels deep are moved, and reported where they stand, without recursion") {
    json deep = "2026-12-31";
    for (int i = 0; i < 100'000; ++i) {
        json outer = json::array();
        outer.push_back(std::move(deep));
        deep = std::move(outer);
    }
    json document = json::object();
    document["deep"] = std::move(deep);
    document["lots"] = 7;
    json later = exchange::moved(std::move(document), basics::days{1});
    const json* inside = &later["deep"];
    while (inside->is_array()) inside = &inside->front();
    CHECK(*inside == "2027-01-01");

    tests::TinyDocuments tiny;
    const auto read = tiny.read();
    REQUIRE(read);
    const auto stock = exchange::read_stock(later, "stock.json", *read->knowledge, read->household, basics::days{0});
    REQUIRE_FALSE(stock);
    CHECK(tests::lines(stock.error()) ==
          std::vector<std::string>{
              "stock.json, /: unknown key 'deep'; expected one of: samebase, around, lots, plan, history",
              "stock.json, /lots: 7; expected a list"});
}
