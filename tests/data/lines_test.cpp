// Written ingredient lines, from the text to the entry of the catalogue. Two tables: awkward lines of our own
// (awkward_lines.json), of which none may be taken for something else; and three hundred lines drawn by seed from the
// ingredient lines that the outside test reads (three_hundred_lines.json), labelled by hand before any answer was seen.
// The rules of reading were written by looking at other lines than these.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <iostream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "exchange/detail/recipe_ingredient.hpp"
#include "exchange/file.hpp"
#include "measure/line.hpp"
#include "support/shipped.hpp"

using namespace samebase;
using namespace samebase::tests;

namespace {

/// What the line is taken for: "salt+black-pepper", "water", "-" where it is refused.
std::string meaning(const std::string& line, measure::MeasureSet set) {
    static const exchange::detail::Names names(shipped_catalogue());
    const auto read = measure::read_line(line, set);
    if (!read) return "-";
    if (exchange::detail::is_water(read->name)) return "water";
    const auto id = [&](const measure::WrittenLine& one) {
        const auto called = names.of(one);
        return called.ingredient ? shipped_catalogue()[*called.ingredient].id : std::string("-");
    };
    const auto two = names.two_things(*read, set);
    return two.empty() ? id(*read) : id(two[0]) + "+" + id(two[1]);
}

bool among(const std::string& answer, const std::string& right) {
    std::istringstream in(right);
    for (std::string one; std::getline(in, one, '|');) {
        if (one == answer) return true;
    }
    return false;
}

/// Whether the line's amount and unit are those of the label; "" is none.
bool right_amount(const std::string& line, const std::string& label, measure::MeasureSet set) {
    const auto read = measure::read_line(line, set);
    if (!read) return false;
    if (label.empty()) return !read->amount;
    const auto expected = measure::read_amount(label, set);
    REQUIRE(expected);
    return read->amount && read->amount->amount == expected->amount && read->amount->counted == expected->counted;
}

nlohmann::json lines_of(const std::string& name) {
    const std::string path = SAMEBASE_SOURCE_DIR "/tests/data/" + name;
    return exchange::parse(exchange::read_file(path).value(), path).value().at("lines");
}

}  // namespace

TEST_CASE("Compound and awkward lines are read right or refused") {
    constexpr auto set = measure::MeasureSet::australian_metric;
    const auto rows = lines_of("awkward_lines.json");
    CHECK(rows.size() >= 120);
    int answered = 0;
    for (const auto& row : rows) {
        const std::string line = row.at(0);
        const std::string right = row.at(1);
        const std::string answer = meaning(line, set);
        INFO(line << " is taken for " << answer << ", not for " << right);
        CHECK((answer == "-" || among(answer, right)));
        answered += answer == "-" ? 0 : 1;
        if (row.at(2) != "" && answer != "-") CHECK(right_amount(line, row.at(2), set));
    }
    CHECK(answered >= 63);
    std::cout << answered << " of " << rows.size() << " awkward lines are taken for something\n";
}

// Before the rules of reading were mended 238 of 263 were found, 241 of 243 answers were right and 295 amounts; when
// these lines were asked for the first time afterwards, 246, 250 of 250 and 296. The aims: 85, 97 and 97 of 100.
TEST_CASE("Three hundred lines that nobody tuned on: what is found, and what is right of it") {
    constexpr auto set = measure::MeasureSet::us_customary;
    const auto rows = lines_of("three_hundred_lines.json");
    REQUIRE(rows.size() == 300);
    int ours = 0;  // of which there is an entry
    int found = 0;
    int answered = 0;
    int right_answers = 0;
    int amounts = 0;
    for (const auto& row : rows) {
        const std::string line = row.at(1);
        const std::string right = row.at(2);
        const std::string answer = meaning(line, set);
        const bool good = among(answer, right);
        if (answer != "-") {
            ++answered;
            right_answers += good ? 1 : 0;
        }
        if (!among("-", right)) {
            ++ours;
            found += good ? 1 : 0;
        }
        const bool amount = right_amount(line, row.at(3), set);
        amounts += amount ? 1 : 0;
        if (!good || !amount)
            std::cout << "  " << line << ": " << answer << ", " << right << (amount ? "" : ", amount") << '\n';
    }
    std::cout << fmt::format(
        "three hundred lines: {} of {} that are ours are found, {} of {} answers are right, "
        "{} of 300 amounts are right\n",
        found, ours, right_answers, answered, amounts);
    CHECK(100 * found >= 92 * ours);
    CHECK(100 * right_answers >= 99 * answered);
    CHECK(amounts >= 295);
}
