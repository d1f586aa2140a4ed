// Laws of the base graph, on every world of a kind and on random ones.
#include <fmt/format.h>
#include <rapidcheck/catch.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "graph/base_graph.hpp"
#include "graph/generated_worlds.hpp"
#include "graph/slow_costs.hpp"

using namespace samebase::graph;
using namespace samebase::tests;
using samebase::catalogue::Allergen;
using samebase::catalogue::AllergenSet;
using samebase::catalogue::IngredientId;

namespace {

/// What the graph says wrongly of costs, as the oracle has them; empty where all is right.
std::string wrong_costs(const SmallWorld& world) {
    const BaseGraph graph = world.graph();
    if (const auto reason = graph.check()) return *reason;
    const SlowCosts slow(world, graph.parameters());
    const auto nodes = all_nodes(world);
    for (const Node from : nodes) {
        const auto out = graph.costs_from(from);
        for (const Node to : nodes) {
            const auto expected = slow.cost(from, to);
            const auto as_row = expected ? static_cast<std::int32_t>(*expected) : BaseGraph::no_path;
            if (graph.cost(from, to) != expected) return "cost";
            if (out[BaseGraph::position(to)] != as_row) return "costs_from";
            if (graph.costs_to(to)[BaseGraph::position(from)] != as_row) return "costs_to";
            if (graph.forbidden(from.ingredient, to.ingredient, from.role) !=
                slow.forbidden(from.ingredient, to.ingredient, from.role)) {
                return "forbidden";
            }
        }
    }
    return {};
}

/// All answers of a world, to compare two.
std::vector<std::string> everything_answered(const SmallWorld& world) {
    const BaseGraph graph = world.graph();
    std::vector<std::string> result;
    for (const Node node : all_nodes(world)) {
        const auto found = graph.stand_ins(node, 0.01, {});
        std::string line = written(found, world.catalogue);
        for (const StandIn& stand_in : found) line += fmt::format(" {}{}", stand_in.cost, stand_in.note);
        result.push_back(line);
    }
    return result;
}

AllergenSet milk() {
    AllergenSet set;
    set.add(Allergen::milk);
    return set;
}

}  // namespace

TEST_CASE("costs are those of the oracle on every world of three things and up to two statements") {
    const std::vector<std::string> families{
        "family f siblings 0.3\n family g in f siblings 0.8\n",
        "family f siblings 0.6\n family g siblings 0.5\n",
        "family f\n family g in f\n",
    };
    std::vector<std::string> statements{""};
    for (const std::string replaced : {"p", "q", "f", "g"}) {
        for (const std::string used : {"p", "r", "f", "g"}) {
            if (replaced == used && replaced == "p") continue;
            statements.push_back(fmt::format("for {} use {} fit 0.7\n", replaced, used));
            statements.push_back(fmt::format("for {} use {} fit 0.4 as main sauce both ways\n", replaced, used));
            statements.push_back(fmt::format("for {} never {}\n", replaced, used));
        }
    }
    std::size_t worlds = 0;
    std::string first_wrong;
    for (const std::string& family : families) {
        for (const std::string& one : statements) {
            for (const std::string& other : statements) {
                const auto text = fmt::format("{}thing p in f\n thing q in g\n thing r in g\n{}{}", family, one, other);
                const std::string wrong = wrong_costs(small_world(text));
                if (!wrong.empty() && first_wrong.empty()) first_wrong = fmt::format("{} in\n{}", wrong, text);
                ++worlds;
            }
        }
    }
    INFO(first_wrong);
    CHECK(first_wrong.empty());
    CHECK(worlds == families.size() * 46 * 46);
}

TEST_CASE("base graph laws on random worlds") {
    rc::prop("costs are those of the oracle", [] {
        const auto text = *world_text();
        RC_ASSERT(wrong_costs(text.world()) == "");
    });

    rc::prop("no path is dearer than the way round, exactly", [] {
        const SmallWorld world = (*world_text()).world();
        const BaseGraph graph = world.graph();
        for (const Node a : all_nodes(world)) {
            for (const Node x : all_nodes(world)) {
                const auto first = graph.cost(a, x);
                if (!first) continue;
                for (const Node b : all_nodes(world)) {
                    const auto second = graph.cost(x, b);
                    if (!second) continue;
                    const auto direct = graph.cost(a, b);
                    RC_ASSERT(direct.has_value());
                    RC_ASSERT(*direct <= *first + *second);
                }
            }
        }
    });

    rc::prop("only a node itself costs nothing", [] {
        const SmallWorld world = (*world_text()).world();
        const BaseGraph graph = world.graph();
        for (const Node a : all_nodes(world)) {
            for (const Node b : all_nodes(world)) RC_ASSERT((graph.cost(a, b) == 0) == (a == b));
        }
    });

    rc::prop("the order of statements changes no answer", [] {
        auto text = *world_text();
        const auto before = everything_answered(text.world());
        for (std::size_t i = text.statements.size(); i > 1; --i) {
            const auto j = *rc::gen::inRange<std::size_t>(0, i);
            std::swap(text.statements[i - 1], text.statements[j]);
        }
        RC_ASSERT(everything_answered(text.world()) == before);
    });

    rc::prop("answers are all that is near enough, allowed and free of what is avoided, best first", [] {
        const SmallWorld world = (*world_text()).world();
        const BaseGraph graph = world.graph();
        const SlowCosts slow(world, graph.parameters());
        const double least = *rc::gen::elementOf(std::vector<double>{0.05, 0.3, 0.5, 0.64, 0.8});
        const AllergenSet avoid = *rc::gen::arbitrary<bool>() ? milk() : AllergenSet();
        for (const Node node : all_nodes(world)) {
            const auto found = graph.stand_ins(node, least, avoid);
            std::vector<IngredientId> single;
            for (std::size_t i = 0; i < found.size(); ++i) {
                RC_ASSERT(found[i].cost <= cost_of(least));
                RC_ASSERT((i == 0 || found[i - 1].cost <= found[i].cost));
                for (const auto& [used, ratio] : found[i].use) {
                    RC_ASSERT(used != node.ingredient);
                    RC_ASSERT(ratio > 0);
                    RC_ASSERT(world.catalogue[used].counted_allergens().shared_with(avoid).empty());
                }
                if (found[i].use.size() == 1) single.push_back(found[i].use[0].first);
            }
            std::vector<std::pair<Cost, IngredientId>> expected;
            for (std::uint32_t i = 0; i < world.catalogue.ingredients().size(); ++i) {
                const auto cost = slow.cost(node, {{i}, node.role});
                if (i == node.ingredient.value || !cost || *cost > cost_of(least)) continue;
                if (slow.forbidden(node.ingredient, {i}, node.role)) continue;
                if (!world.catalogue[IngredientId{i}].counted_allergens().shared_with(avoid).empty()) continue;
                expected.emplace_back(*cost, IngredientId{i});
            }
            std::sort(expected.begin(), expected.end());
            RC_ASSERT(single.size() == expected.size());
            for (std::size_t i = 0; i < single.size(); ++i) RC_ASSERT(single[i] == expected[i].second);
        }
    });
}
