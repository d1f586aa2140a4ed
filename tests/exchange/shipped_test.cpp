// The documents that are shipped, and the examples that data/README.md shows, read without a problem.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "exchange/knowledge.hpp"
#include "exchange/tiny_documents.hpp"

using namespace samebase;
using Lines = std::vector<std::string>;

namespace {

const std::filesystem::path data = std::filesystem::path(SAMEBASE_SOURCE_DIR) / "data";

/// The indented blocks of a Markdown text that start so, without their indent.
std::vector<std::string> blocks(const std::string& text, std::string_view start) {
    std::vector<std::string> result;
    std::istringstream in(text);
    bool inside = false;
    for (std::string line; std::getline(in, line);) {
        const bool indented = line.starts_with("    ");
        if (indented && !inside && std::string_view(line).substr(4).starts_with(start)) result.emplace_back();
        if (indented && !result.empty() && (inside || result.back().empty())) result.back() += line.substr(4) + "\n";
        inside = indented;
    }
    return result;
}

std::shared_ptr<const kitchen::Knowledge> shipped() {
    static const auto loaded = exchange::load_knowledge(std::vector{data});
    if (!loaded) FAIL(tests::lines(loaded.error()).front());
    return *loaded;
}

Lines problems_of(const nlohmann::json& household, const nlohmann::json& stock) {
    const auto home = exchange::read_household(household, "kitchen.json", *shipped());
    if (!home) return tests::lines(home.error());
    auto stocked = exchange::read_stock(stock, "stock.json", *shipped(), *home, basics::days{0});
    if (!stocked) return tests::lines(stocked.error());
    const kitchen::Kitchen kitchen{shipped(), *home, stocked->lots, stocked->plan, {}, stocked->history};
    const auto broken = kitchen.check();
    return broken ? Lines{*broken} : Lines{};
}

}  // namespace

TEST_CASE("the shipped documents read without a problem") {
    CHECK(shipped()->catalogue.ingredients().size() >= 180);
    CHECK(shipped()->catalogue.families().size() >= 40);
    CHECK(shipped()->graph.statements().size() >= 100);
    CHECK(shipped()->cookbook.bases().size() >= 25);
    CHECK(shipped()->cookbook.dishes().size() >= 130);
}

TEST_CASE("the demo kitchen reads without a problem, and so does its copy at another time") {
    const auto read = [](const char* name) {
        const auto text = exchange::read_file(data / "demo" / name);
        if (!text) FAIL(tests::lines(text.error()).front());
        const auto document = exchange::parse(*text, name);
        if (!document) FAIL(tests::lines(document.error()).front());
        return *document;
    };
    const auto household = read("kitchen.json");
    const auto stock = read("stock.json");
    CHECK(problems_of(household, stock) == Lines{});
    const basics::days shift{400};
    CHECK(problems_of(exchange::moved(household, shift), exchange::moved(stock, shift)) == Lines{});
}

TEST_CASE("the whole documents that data/README.md shows read without a problem") {
    const auto text = exchange::read_file(data / "README.md");
    REQUIRE(text);
    const auto shown = blocks(*text, R"({"samebase")");
    REQUIRE(shown.size() == 2);
    CHECK(problems_of(nlohmann::json::parse(shown[0]), nlohmann::json::parse(shown[1])) == Lines{});
}
