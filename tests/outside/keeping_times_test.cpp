// Keeping times of the catalogue against published ones (keeping_figures.hpp).
//
// What hurts goes by the strictest source: a use-by is at most the upper end of every published range that covers the
// ingredient there. What is a matter of quality lies within the published ones: a best-by is no less than the least
// lower end and no more than the greatest upper end. A month is 30 days and a week 7. "2 weeks or more" has no upper
// end; of "5 days max" and "up to 3 months" the lower end is 0. Where a source says that a thing does not go there, we
// say so too.
#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "outside/keeping_figures.hpp"
#include "support/shipped.hpp"
#include "support/table.hpp"

using namespace samebase;
using catalogue::Keep;
using catalogue::Keeping;
using catalogue::Limit;
using tests::Row;

namespace {

struct Range {
    int lower = 0;
    int upper = 0;
    bool never = false;
    std::string told;  ///< as the source has it
};

bool holds(const std::string& text, const char* part) {
    return text.find(part) != std::string::npos;
}

int unit_days(const std::string& unit) {
    if (holds(unit, "month")) return 30;
    if (holds(unit, "week")) return 7;
    REQUIRE(holds(unit, "day"));
    return 1;
}

/// The row's range in days. "variable (1-3 months)" is read as what stands in the brackets.
Range range_of(const Row& row) {
    Range range;
    range.told = row[0] + ", " + row[1] + " " + row[2] + ", " + row[3] + " (" + row.source + "; " + row[4] + ")";
    if (holds(row[1], "not freeze")) {
        range.never = true;
        return range;
    }
    const auto bracket = row[1].find('(');
    const std::string value = bracket == std::string::npos ? row[1] : row[1].substr(bracket + 1);
    const int unit = unit_days(row[2].empty() ? value : row[2]);
    const auto dash = value.find('-');
    range.lower = std::stoi(value) * unit;
    range.upper = dash == std::string::npos ? range.lower : std::stoi(value.substr(dash + 1)) * unit;
    if (holds(row[2], "max") || holds(row[3], "up to") || holds(row[3], "longest")) range.lower = 0;
    if (holds(row[2], "or more")) range.upper = std::numeric_limits<int>::max();
    return range;
}

using Where = std::pair<catalogue::IngredientId, Keep>;

std::map<Where, std::vector<Range>> read_ranges(const char* table) {
    std::map<Where, std::vector<Range>> ranges;
    for (const Row& row : tests::read_table(table)) {
        const Range range = range_of(row);
        for (const std::string& place : tests::words(row[5])) {
            const auto keep = catalogue::read_keep(place);
            INFO(range.told);
            REQUIRE(keep);
            for (const std::string& ours : tests::words(row[6])) {
                for (const auto id : tests::shipped_members(ours)) ranges[{id, *keep}].push_back(range);
            }
        }
    }
    return ranges;
}

void check(const Where& where, const std::vector<Range>& ranges) {
    const Keeping ours = tests::keeping(where.first, where.second);
    const std::string& id = tests::shipped_catalogue()[where.first].id;
    int least = std::numeric_limits<int>::max();
    int most = 0;
    std::string all;
    for (const Range& range : ranges) {
        INFO(id << ", " << catalogue::name(where.second) << ": ours " << ours.time.days
                << " days; published: " << range.told);
        if (range.never) {
            CHECK(ours.said != Keeping::Said::time);
            continue;
        }
        least = std::min(least, range.lower);
        most = std::max(most, range.upper);
        all += "\n  " + range.told;
        if (ours.said == Keeping::Said::time && ours.time.limit == Limit::use_by) CHECK(ours.time.days <= range.upper);
    }
    if (all.empty() || ours.said != Keeping::Said::time || ours.time.limit != Limit::best_by) return;
    INFO(id << ", " << catalogue::name(where.second) << ": ours " << ours.time.days << " days; published:" << all);
    CHECK(ours.time.days >= least);
    CHECK(ours.time.days <= most);
}

std::set<catalogue::IngredientId> check_all(const char* table) {
    std::set<catalogue::IngredientId> covered;
    for (const auto& [where, ranges] : read_ranges(table)) {
        check(where, ranges);
        covered.insert(where.first);
    }
    return covered;
}

}  // namespace

TEST_CASE("fridge and freezer lives keep to the published ones") {
    CHECK(check_all(tests::cold_storage_figures).size() >= 150);
}

TEST_CASE("vegetables and fruit and bread keep as long as they are said to in a home") {
    CHECK(check_all(tests::vegetable_life_figures).size() >= 40);
}

TEST_CASE("nothing raw that spoils is without a use-by in the fridge") {
    // Where no published row says otherwise, meat and fish that are bought raw or cooked go by safety, not by looks.
    for (const char* family :
         {"mince", "red-meat", "offal", "poultry", "sausages", "cured-meat", "white-fish", "oily-fish", "crustaceans",
          "molluscs", "cold-roast-meat", "cold-cooked-mince", "cold-fish"}) {
        for (const auto id : tests::shipped_members(family)) {
            const Keeping ours = tests::keeping(id, Keep::fridge);
            INFO(tests::shipped_catalogue()[id].id);
            CHECK(ours.said == Keeping::Said::time);
            CHECK(ours.time.limit == Limit::use_by);
        }
    }
}
