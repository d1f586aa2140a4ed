// What a dish is called once something stands in for what its name says.
#include "ask/detail/honest_name.hpp"

#include <catch2/catch.hpp>

#include "support/demo.hpp"

using namespace samebase;
using catalogue::Role;
using tests::demo;
using tests::dish;
using tests::thing;

namespace {

flow::StandInUse in_place(std::string_view of, std::string_view use, Role role) {
    return {.replaced = thing(of), .use = {{thing(use), measure::Mass{1000}}}, .role = role, .fit = 0.8, .note = {}};
}

std::string name(std::string_view of, const std::vector<flow::StandInUse>& stand_ins) {
    return ask::detail::honest_name(demo(), dish(of), stand_ins);
}

/// What the demo's cookbook calls it.
std::string written(std::string_view of) {
    return demo().cookbook()[dish(of)].name;
}

}  // namespace

TEST_CASE("a dish that holds what its name says keeps its name") {
    CHECK(name("rissoles", {}) == written("rissoles"));
    CHECK(name("rissoles", {in_place("beef-stock", "stock-powder", Role::sauce)}) == written("rissoles"));
}

TEST_CASE("what stands in for what the name says is named in its place") {
    REQUIRE(written("spirals-with-ham-leek-and-peas") == "spirals with ham, leek and peas");
    CHECK(name("spirals-with-ham-leek-and-peas", {in_place("leek", "onion", Role::body)}) ==
          "spirals with ham, onion and peas");
    CHECK(name("spirals-with-ham-leek-and-peas",
               {in_place("spirals", "penne", Role::starch), in_place("leek", "onion", Role::body)}) ==
          "penne with ham, onion and peas");
    CHECK(name("baked-penne-with-squash-and-mozzarella", {in_place("penne", "spirals", Role::starch)}) ==
          "baked spirals with button squash and mozzarella");
}
