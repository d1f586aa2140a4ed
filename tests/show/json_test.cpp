// The JSON of the answers: every key is there, and the lines of a sum make its worth.
#include "show/json.hpp"

#include <set>

#include "show/else.hpp"
#include "show/tonight.hpp"
#include "support/demo.hpp"

using namespace samebase;
using show::Json;
using tests::demo;
using tests::demo_day;

namespace {

using Keys = std::set<std::string>;

Keys keys(const Json& object) {
    Keys found;
    REQUIRE(object.is_object());
    for (const auto& [key, value] : object.items()) found.insert(key);
    return found;
}

void each_has(const Json& list, const Keys& expected) {
    REQUIRE(list.is_array());
    for (const auto& row : list) CHECK(keys(row) == expected);
}

const Keys alternative_keys{"dish",    "label", "ready_meal", "needs_trip", "same_base", "likeness",
                            "minutes", "worth", "because",    "uses",       "stand_ins", "scaled",
                            "to_buy",  "lacks", "leaves",     "cautions"};

void is_whole(const Json& a) {
    CHECK(keys(a) == alternative_keys);
    CHECK(keys(a["worth"]) == Keys{"minor", "currency"});
    each_has(a["because"], {"line", "minor", "of", "amount", "note"});
    each_has(a["uses"], {"ingredient", "label", "lot", "amount", "state", "use_by", "best_by", "use_first"});
    each_has(a["stand_ins"], {"for", "use", "role", "fit", "note"});
    for (const auto& use : a["stand_ins"]) each_has(use["use"], {"ingredient", "label", "amount"});
    each_has(a["scaled"], {"ingredient", "label", "amount", "times"});
    each_has(a["to_buy"], {"ingredient", "label", "amount", "packs", "minor"});
    each_has(a["lacks"], {"ingredient", "label", "amount"});
    each_has(a["leaves"], {"ingredient", "label", "serves", "use_by"});
    std::int64_t sum = 0;
    for (const auto& line : a["because"]) sum += line["minor"].get<std::int64_t>();
    CHECK(sum == a["worth"]["minor"].get<std::int64_t>());
    CHECK(a["minutes"].is_null() == a["ready_meal"].get<bool>());
}

ask::ElseQuestion about_mince(basics::Day day) {
    return {.day = day,
            .using_ = catalogue::Of{tests::thing("beef-mince")},
            .lot = {},
            .instead_of = {},
            .serves = {},
            .left = 2};
}

}  // namespace

TEST_CASE("the JSON of else has every key, and its lines add up") {
    const auto answer = ask::ask_else(demo(), demo_day, about_mince(demo_day + basics::days{2}));
    REQUIRE(answer);
    const Json document = show::json(*answer, demo());
    CHECK(keys(document) == Keys{"question", "with_trip", "alternatives"});
    CHECK(keys(document["question"]) ==
          Keys{"day", "using", "kind", "lot", "instead_of", "planned", "serves", "left", "horizon"});
    CHECK(document["question"]["day"] == "2026-11-27");
    CHECK(document["question"]["using"] == Json::array({"beef-mince"}));
    CHECK(document["question"]["planned"] == "pizza-prosciutto-squash");
    CHECK(document["question"]["lot"].is_null());
    REQUIRE(document["alternatives"].size() == answer->alternatives.size());
    REQUIRE_FALSE(answer->alternatives.empty());
    for (const auto& a : document["alternatives"]) is_whole(a);
}

TEST_CASE("the JSON of why not has every key, whether or not the dish is among the answers") {
    const auto in = ask::why_not(demo(), demo_day, about_mince(demo_day), tests::dish("meat-loaf"));
    const auto out = ask::why_not(demo(), demo_day, about_mince(demo_day), tests::dish("pumpkin-and-ginger-soup"));
    REQUIRE(in);
    REQUIRE(out);
    const Json found = show::json(*in, demo());
    const Json absent = show::json(*out, demo());
    const Keys expected{"dish", "label", "ruled_out_by", "position", "alternative"};
    CHECK(keys(found) == expected);
    CHECK(keys(absent) == expected);
    is_whole(found["alternative"]);
    // Positions are counted from 1 where people see them.
    CHECK(found["position"] == *in->position + 1);
    CHECK(absent["position"].is_null());
    CHECK(absent["alternative"].is_null());
    CHECK(absent["ruled_out_by"].size() == 1);
}

TEST_CASE("the JSON of tonight has every key") {
    for (int i = 0; i < 4; ++i) {
        const Json document = show::json(ask::ask_tonight(demo(), demo_day + basics::days{i}), demo());
        CHECK(keys(document) == Keys{"day", "dinner", "standing_kind", "eaters", "lunches", "take_out", "use_first",
                                     "short", "past_use_by", "shopping", "cooked", "tomorrow", "soak", "occasion",
                                     "guests", "cautions"});
        const Keys meal{"dish", "label", "ready_meal", "serves", "minutes", "swaps"};
        CHECK(keys(document["dinner"]) == meal);
        each_has(document["lunches"], meal);
        each_has(document["take_out"], {"lot", "ingredient", "label", "amount", "packs", "from", "to", "day", "method",
                                        "for", "cook_by", "cautions"});
        for (const auto& move : document["take_out"]) CHECK(keys(move["for"]) == Keys{"day", "meal", "dish"});
        const Keys danger{"ingredient", "label", "lot", "amount", "price", "by", "limit"};
        each_has(document["use_first"], danger);
        each_has(document["past_use_by"], danger);
        each_has(document["short"], {"ingredient", "label", "amount", "day", "dish"});
    }
}

TEST_CASE("amounts have UCUM units, and no more than three decimals") {
    const auto& catalogue = demo().catalogue();
    const auto& mince = catalogue[tests::thing("beef-mince")];
    const auto& serves = catalogue[tests::thing("leftover-chilli")];
    CHECK(show::json_amount({measure::Dimension::mass, 500'000}, mince).dump() == R"({"value":500,"unit":"g"})");
    CHECK(show::json_amount({measure::Dimension::mass, 1}, mince).dump() == R"({"value":0.001,"unit":"g"})");
    CHECK(show::json_amount({measure::Dimension::volume, 2'500}, mince).dump() == R"({"value":2.5,"unit":"mL"})");
    CHECK(show::json_amount({measure::Dimension::pieces, 3'000}, mince).dump() == R"({"value":3,"unit":"1"})");
    CHECK(show::json_amount({measure::Dimension::pieces, 1'500}, serves).dump() == R"({"value":1.5,"unit":"{serve}"})");
    CHECK(show::json_money({-40}, demo()).dump() == R"({"minor":-40,"currency":"AUD"})");
    CHECK(show::json_day(std::nullopt).is_null());
    CHECK(show::json_day(demo_day) == "2026-11-25");
}

TEST_CASE("problems have every key, with null where there is no hint") {
    const basics::Problems problems{{"a", "b", "c", std::nullopt}, {"d", "e", "f", "g"}};
    CHECK(
        show::json_problems(problems).dump() ==
        R"({"problems":[{"where":"a","found":"b","expected":"c","hint":null},{"where":"d","found":"e","expected":"f","hint":"g"}]})");
}
