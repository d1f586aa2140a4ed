// What must hold of everything that the shipped stand-ins answer, however many steps lie between: what goes in raw is
// cooked, dried beans are never taken for cooked ones, and no note is told of the wrong thing.
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <string_view>

#include "ask/detail/at_table.hpp"
#include "fifty_questions.hpp"
#include "support/shipped.hpp"

using namespace samebase;
using catalogue::IngredientId;
using catalogue::Kind;

namespace {

const catalogue::Catalogue& things() {
    return tests::shipped_catalogue();
}

/// Calls with what is replaced and what can do its work, for every ingredient in every role.
template <class Check>
void each_answer(Check check) {
    const graph::BaseGraph& graph = tests::shipped().graph;
    for (std::uint32_t i = 0; i < things().ingredients().size(); ++i) {
        for (const catalogue::Role role : catalogue::all_roles) {
            for (const auto& stand_in : graph.stand_ins({IngredientId{i}, role}, graph.parameters().least_fit, {}))
                check(IngredientId{i}, stand_in);
        }
    }
}

bool is_one_of(IngredientId id, const std::set<IngredientId>& ids) {
    return ids.count(id) > 0;
}

bool uses(const graph::StandIn& stand_in, const std::set<IngredientId>& ids) {
    return std::any_of(stand_in.use.begin(), stand_in.use.end(),
                       [&](const auto& part) { return is_one_of(part.first, ids); });
}

std::set<IngredientId> dried_beans() {
    std::set<IngredientId> beans;
    for (const char* id : {"dried-red-beans", "dried-white-beans", "dried-black-beans", "dried-chickpeas"})
        beans.insert(tests::shipped_ingredient(id));
    return beans;
}

/// Meat, fish and eggs as they are sold to be cooked.
bool raw(IngredientId id) {
    return things()[id].cook_to && things()[id].kind != Kind::cooked;
}

bool says_any_of(const std::string& note, const std::vector<std::string_view>& words) {
    return std::any_of(words.begin(), words.end(),
                       [&](std::string_view word) { return note.find(word) != std::string::npos; });
}

}  // namespace

TEST_CASE("dried beans, unsoaked, stood in for tinned ones") {
    const auto beans = dried_beans();
    const auto chickpeas = tests::shipped_ingredient("dried-chickpeas");
    std::size_t for_one_another = 0;
    each_answer([&](IngredientId replaced, const graph::StandIn& stand_in) {
        if (!uses(stand_in, beans)) return;
        const IngredientId used = stand_in.use.front().first;
        INFO(things()[used].id << " for " << things()[replaced].id);
        CHECK(is_one_of(replaced, beans));
        CHECK(says_any_of(stand_in.note, {"soaked"}));
        ++for_one_another;
        if (used == chickpeas) return;
        // Chickpeas go into patties without boiling; what must be boiled hard must not follow them there.
        CHECK(replaced != chickpeas);
        CHECK(says_any_of(stand_in.note, {"boiled hard for 10 minutes"}));
    });
    CHECK(for_one_another > 0);
}

TEST_CASE("no statement leads to dried beans but from dried beans") {
    const auto beans = dried_beans();
    for (const graph::Statement& statement : tests::shipped().graph.statements()) {
        if (statement.never) continue;
        const auto leads_to_one = [&](const catalogue::Of& of) {
            return std::any_of(beans.begin(), beans.end(), [&](IngredientId bean) { return things().is(bean, of); });
        };
        const bool uses_one = std::any_of(statement.parts.begin(), statement.parts.end(),
                                          [&](const graph::Part& part) { return leads_to_one(part.of); });
        INFO("for " << things().name(statement.replaces));
        if (uses_one) CHECK(leads_to_one(statement.replaces));
        if (statement.both_ways && leads_to_one(statement.replaces)) CHECK(uses_one);
    }
}

TEST_CASE("lentils from dry, for what is not dried, are boiled and add their time") {
    const auto family = things().family("dried-pulses");
    REQUIRE(family);
    std::size_t seen = 0;
    each_answer([&](IngredientId replaced, const graph::StandIn& stand_in) {
        if (things().belongs(replaced, *family) || !things().belongs(stand_in.use.front().first, *family)) return;
        INFO(things()[stand_in.use.front().first].id << " for " << things()[replaced].id);
        CHECK(stand_in.adds_minutes >= 15);
        ++seen;
    });
    CHECK(seen > 0);
}

TEST_CASE("raw meat, fish or egg in place of what is ready to eat came with no word of cooking") {
    std::size_t seen = 0;
    each_answer([&](IngredientId replaced, const graph::StandIn& stand_in) {
        const bool goes_in_raw =
            std::any_of(stand_in.use.begin(), stand_in.use.end(), [](const auto& part) { return raw(part.first); });
        if (raw(replaced) || !goes_in_raw) return;
        INFO(things()[stand_in.use.front().first].id << " for " << things()[replaced].id << ": " << stand_in.note);
        CHECK(says_any_of(stand_in.note, {"cooked", "degrees", "boiled", "fried", "grilled", "poached", "simmered",
                                          "until they are pink all through"}));
        ++seen;
    });
    CHECK(seen > 50);
}

TEST_CASE("sausages stood in for frankfurts \"only to be heated\"") {
    const auto frankfurts = tests::shipped_ingredient("frankfurts");
    const auto sausages = tests::shipped_ingredient("pork-sausages");
    std::size_t seen = 0;
    each_answer([&](IngredientId replaced, const graph::StandIn& stand_in) {
        const IngredientId used = stand_in.use.front().first;
        if (replaced == frankfurts && used == sausages) {
            CHECK(says_any_of(stand_in.note, {"75 degrees"}));
            ++seen;
        }
        if (used == sausages) CHECK_FALSE(says_any_of(stand_in.note, {"heated"}));
    });
    CHECK(seen > 0);
}

TEST_CASE("what only tastes of onion, or is eaten raw, stood in for it in a pot") {
    const auto among = [](const char* replaced, const char* used, catalogue::Role role) {
        const graph::BaseGraph& graph = tests::shipped().graph;
        const auto found =
            graph.stand_ins({tests::shipped_ingredient(replaced), role}, graph.parameters().least_fit, {});
        return std::any_of(found.begin(), found.end(), [&](const graph::StandIn& stand_in) {
            return stand_in.use.front().first == tests::shipped_ingredient(used);
        });
    };
    using catalogue::Role;
    CHECK_FALSE(among("onion", "onion-powder", Role::body));
    CHECK(among("onion", "onion-powder", Role::seasoning));
    CHECK_FALSE(among("onion", "celery", Role::body));
    CHECK_FALSE(among("tomato", "capsicum", Role::body));
    CHECK_FALSE(among("tomato", "cucumber", Role::body));
    CHECK(among("tomato", "cucumber", Role::side));
    CHECK_FALSE(among("broccoli", "choy-sum", Role::body));
    CHECK_FALSE(among("tomato-sauce", "chilli-sauce", Role::sauce));
}

TEST_CASE("sausages that hold wheat have a stand-in without") {
    catalogue::AllergenSet gluten;
    gluten.add(catalogue::Allergen::gluten);
    for (const char* id : {"beef-sausages", "pork-sausages", "lamb-sausages", "chicken-sausages"}) {
        const auto found =
            tests::shipped().graph.stand_ins({tests::shipped_ingredient(id), catalogue::Role::main}, 0.9, gluten);
        INFO(id);
        REQUIRE(found.size() == 1);
        CHECK(things()[found.front().use.front().first].id == "gluten-free-sausages");
    }
}

TEST_CASE("someone who avoids gluten was refused sausages, though some are without") {
    const auto question = tests::read_question({{"ask", "potato"},
                                                {"amount", "2 kg"},
                                                {"month", 6},
                                                {"expect", nlohmann::json::array()},
                                                {"avoids", "gluten"},
                                                {"who", "one"}});
    const auto today = tests::asked_on(question);
    const auto kitchen = tests::kitchen_of(question, today);
    const auto table = ask::detail::at_table(
        kitchen, {.day = today, .dish = tests::shipped_dish("bangers-mash-onion-gravy"), .serves = {}});
    CHECK(table.refused.empty());
    REQUIRE_FALSE(table.cautions.empty());
    CHECK(table.cautions.front() ==
          "A serve apart for Ada (no listed gluten; read the labels): cook those sausages in a pan of their own: keep "
          "it, "
          "its pan and its spoon from touching the rest.");
}
