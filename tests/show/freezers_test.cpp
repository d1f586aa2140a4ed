// The answers about freezers in words and as JSON, where no kitchen of the command tests comes to it.
#include <nlohmann/json.hpp>
#include <sstream>

#include "show/carry.hpp"
#include "show/thaw.hpp"
#include "support/frozen.hpp"

using namespace samebase;
using tests::demo;
using tests::demo_day;

namespace {

ask::CarryAnswer two_walks(int bound) {
    ask::CarryAnswer answer;
    answer.span = {demo_day, demo_day + basics::days{30}};
    answer.near = tests::place("kitchen-freezer");
    answer.fridge = tests::place("fridge");
    answer.fullest = demo_day;
    answer.bound = bound;
    answer.by_rule = 2;
    for (const int day : {0, 9}) {
        ask::Carried carried;
        carried.lot = 15;
        carried.ingredient = tests::thing("beef-mince");
        carried.amount = 500'000;
        carried.packs = 1;
        carried.weights = {500'000};
        carried.room_ml = 550;
        carried.from = tests::place("cellar-freezer");
        carried.day = carried.need = carried.for_day = demo_day + basics::days{day};
        answer.walks.push_back({carried.from, carried.day, {carried}});
    }
    return answer;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

/// Wherever the lines are broken.
bool has(const std::string& text, const std::string& words) {
    std::istringstream in(text);
    std::string joined;
    for (std::string word; in >> word;) joined += (joined.empty() ? "" : " ") + word;
    return joined.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("walks that are not proved the fewest say how few there may be") {
    const auto open = two_walks(1);
    const std::string text = show::text(open, demo(), demo_day, {});
    CHECK(has(text, "twice, today and Fri 4 Dec: 2 packs, 1 L."));
    CHECK(has(text, "At least 1 walk is needed."));
    CHECK(has(text, "The room of the freezer above the fridge is not known"));
    const auto json = show::json(open, demo());
    CHECK(json["value"]["value"] == 2);
    CHECK(json["bound"]["value"] == 1);
    CHECK(json["proved_best"] == false);
    CHECK(json["gap"] == 0.5);
    CHECK(json["near_room"].is_null());
    const auto closed = two_walks(2);
    CHECK(has(show::text(closed, demo(), demo_day, {}), "Proved fewest."));
    CHECK(show::json(closed, demo())["gap"] == 0.0);
    for (const auto& line : lines_of(text)) CHECK(show::length(line) <= show::screen_width());
}

TEST_CASE("what is too late is told with what to do instead and the command for it") {
    ask::ThawAnswer answer;
    answer.span = {demo_day, demo_day};
    ask::TooLate late;
    late.ingredient = tests::thing("lamb-leg");
    late.amount = 1'900'000;
    late.day = demo_day;
    late.dish = tests::dish("roast-lamb-leg");
    answer.late.push_back(late);
    const std::string text = show::text(answer, demo(), demo_day, {});
    CHECK(text.starts_with("One thing is too late for the fridge. Nothing is to be taken out to thaw."));
    CHECK(has(text, "samebase else roast leg of lamb with pumpkin and peas"));
    CHECK(has(text, "Local food-safety advice and labels come first."));
    // A lunch has no `else`.
    answer.late.front().meal = kitchen::Meal::lunch;
    CHECK(show::json(answer, demo(), demo_day)["late"][0]["command"] == "samebase swap 2026-11-25 DISH --lunch");
    answer.late.front().instead = ask::TooLate::Instead::microwave;
    answer.late.front().lot = 19;
    answer.late.front().packs = 1;
    CHECK(show::json(answer, demo(), demo_day)["late"][0]["command"] ==
          "samebase moved 1 pack of lot 19 --to fridge --thaw microwave");
}
